package dev.waterjet.benchmarks;

import com.sun.management.ThreadMXBean;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryMXBean;
import java.util.Locale;
import java.util.function.Supplier;

/** Memory of feed plans along a million chords: what a plan keeps, and what is allocated for it. */
public final class LargePlan {

    private static final int CHORDS = 1_000_000;

    private LargePlan() {}

    /**
     * Prints bytes for each chord.
     *
     * @param args none
     */
    public static void main(String... args) {
        Contour waves = MotionBenchmark.waves(CHORDS);
        CutConditions cut = MotionBenchmark.CUT;
        MachineLimits machine = MachineLimits.of(Measures.metresPerSecond(0.3), Measures.metresPerSquareSecond(1));
        FeedPlanner planner = FeedPlanner.of(machine, cut);
        FeedPlanner smooth = planner.withMachine(machine.withJerk(Kind.JERK.of(50)));
        report("plan", () -> planner.plan(waves, Side.LEFT));
        report("plan with limited jerk", () -> smooth.plan(waves, Side.LEFT));
        report("plan of every chord as drawn", () -> planner.planAsDrawn(waves, Side.LEFT));
    }

    private static void report(String name, Supplier<FeedPlan> planned) {
        ThreadMXBean thread = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = used();
        long allocatedBefore = thread.getCurrentThreadAllocatedBytes();
        FeedPlan plan = planned.get();
        long allocated = thread.getCurrentThreadAllocatedBytes() - allocatedBefore;
        long kept = used() - before;
        System.out.printf(
                Locale.ROOT,
                "%s of a million chords: %.0f bytes kept and %.0f allocated for each, %.0f s of cutting%n",
                name,
                kept / (double) CHORDS,
                allocated / (double) CHORDS,
                Kind.TIME.si(plan.time()));
    }

    private static long used() {
        MemoryMXBean memory = ManagementFactory.getMemoryMXBean();
        for (int i = 0; i < 3; i++) {
            memory.gc();
        }
        return memory.getHeapMemoryUsage().getUsed();
    }
}
