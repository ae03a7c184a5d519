package dev.waterjet.benchmarks;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Feed along a wavy polyline with corners: the whole plan beside the plain forward and backward walk. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(
        value = 1,
        jvmArgsAppend = {"-Xms8g", "-Xmx8g", "-XX:+UseParallelGC"})
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
public class MotionBenchmark {

    static final CutConditions CUT = CutConditions.of(
            CuttingHead.of(
                            Orifice.sapphire(Measures.millimetres(0.33)),
                            FocusingTube.of(Measures.millimetres(1.02), Measures.millimetres(102)))
                    .jet(Measures.megapascals(380), Abrasive.garnet(Mesh.of(80)), Measures.gramsPerMinute(450)),
            Workpiece.of(Materials.standard().get("mild-steel-a36"), Measures.millimetres(10)),
            MachinabilityFeed.published());

    /** Number of segments. */
    @Param({"1000", "1000000"})
    public int segments;

    private Contour contour;
    private FeedPlanner planner;
    private FeedPlanner smooth;
    private double[] x;
    private double[] y;

    /** Draws the waves and sets up the planners. */
    @Setup
    public void draw() {
        contour = waves(segments);
        x = new double[segments + 1];
        y = new double[segments + 1];
        for (int i = 0; i <= segments; i++) {
            x[i] = contour.xSi(i);
            y[i] = contour.ySi(i);
        }
        MachineLimits machine = MachineLimits.of(Measures.metresPerSecond(0.3), Measures.metresPerSquareSecond(1));
        planner = FeedPlanner.of(machine, CUT);
        smooth = planner.withMachine(machine.withJerk(Kind.JERK.of(50)));
    }

    /** Waves of 20 mm in steps of 0.05 mm, with a right-angled step every thousand segments. */
    static Contour waves(int segments) {
        double[] x = new double[segments + 1];
        double[] y = new double[segments + 1];
        double level = 0;
        for (int i = 0; i <= segments; i++) {
            level += i % 1000 == 999 ? 0.005 : 0;
            x[i] = 5e-5 * i;
            y[i] = level + 0.002 * Math.sin(x[i] * 2 * Math.PI / 0.02);
        }
        return Contour.polylineSi(x, y, EdgeRequirement.of(CutQuality.MEDIUM));
    }

    /** The whole plan: limits of front and machine, recovery, both walks, times. */
    @Benchmark
    public FeedPlan plan() {
        return planner.plan(contour, Side.LEFT);
    }

    /** The whole plan with a limit of jerk. */
    @Benchmark
    public FeedPlan planWithJerk() {
        return smooth.plan(contour, Side.LEFT);
    }

    /** The yardstick: lengths, a cap at each node from the turn there, a walk forward and back, the sum of times. */
    @Benchmark
    public double plainWalks() {
        int n = segments;
        double[] length = new double[n];
        double[] square = new double[n + 1];
        double cap = 2.0 / 60;
        double beforeX = 0;
        double beforeY = 0;
        for (int i = 0; i < n; i++) {
            double dx = x[i + 1] - x[i];
            double dy = y[i + 1] - y[i];
            length[i] = Math.sqrt(dx * dx + dy * dy);
            double ux = dx / length[i];
            double uy = dy / length[i];
            double sine = Math.abs(beforeX * uy - beforeY * ux);
            square[i] = i == 0 ? 0 : Math.min(cap * cap, 0.8 * length[i] / Math.max(sine, 1e-9));
            beforeX = ux;
            beforeY = uy;
        }
        for (int i = 0; i < n; i++) {
            square[i + 1] = Math.min(square[i + 1], square[i] + 2 * length[i]);
        }
        for (int i = n - 1; i >= 0; i--) {
            square[i] = Math.min(square[i], square[i + 1] + 2 * length[i]);
        }
        double time = 0;
        for (int i = 0; i < n; i++) {
            double peak2 = Math.min(cap * cap, (square[i] + square[i + 1]) / 2 + length[i]);
            double peak = Math.sqrt(peak2);
            time += 2 * peak
                    - Math.sqrt(square[i])
                    - Math.sqrt(square[i + 1])
                    + (length[i] - (2 * peak2 - square[i] - square[i + 1]) / 2) / peak;
        }
        return time;
    }
}
