package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.FeedSweep;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.feed.SpecificEnergyFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import java.lang.management.ManagementFactory;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Here and not in the core's tests, as those see only the modules that the core needs. */
class SweepAllocationTest {

    private static final int POINTS = 200_000;

    /** Bytes allocated by the thread, as the virtual machine reports them: under one for each point. */
    @Test
    void aSweepMakesNoObjectPerPoint() {
        com.sun.management.ThreadMXBean threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        AbrasiveJet jet = CuttingHead.of(
                        Orifice.sapphire(millimetres(0.3)), FocusingTube.of(millimetres(0.9), millimetres(76)))
                .jet(megapascals(345), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(400));
        Workpiece plate = Workpiece.of(Materials.standard().get("mild-steel"), millimetres(12));
        for (FeedModel model : List.of(
                MachinabilityFeed.published(),
                MachinabilityFeed.publishedByWaterFlow(),
                SpecificEnergyFeed.ofSteel())) {
            FeedSweep sweep = FeedSweep.of(model, jet, plate, 3)
                    .overPressure(QuantityArray.evenly(Kind.PRESSURE, megapascals(200), megapascals(600), POINTS));
            double[] sum = new double[1];
            FeedSweep.Row adder = (p, o, t, m, h, q, feed) -> sum[0] += feed;
            sweep.each(adder);
            long before = threads.getThreadAllocatedBytes(Thread.currentThread().getId());
            sweep.each(adder);
            long taken = threads.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;

            assertThat(taken).as(model.name()).isLessThan(POINTS);
            assertThat(sum[0]).isPositive();
        }
    }
}
