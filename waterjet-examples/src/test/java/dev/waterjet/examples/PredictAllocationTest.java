package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.simulate.CutSimulator;
import dev.waterjet.simulate.DeviationMap;
import dev.waterjet.simulate.FeedProfile;
import java.lang.management.ManagementFactory;
import org.junit.jupiter.api.Test;

/** Here and not in the core's tests, as those see only the modules that the core needs. */
class PredictAllocationTest {

    /** Bytes allocated by the thread, as the virtual machine reports them: arrays alone, no object for a point or a wall. */
    @Test
    void aPredictionMakesArraysAlone() {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        CutConditions cut = CutConditions.of(
                CuttingHead.of(Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(80)))
                        .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450)),
                Workpiece.of(Materials.standard().get("mild-steel"), millimetres(25)),
                MachinabilityFeed.published());
        CutSimulator simulator = CutSimulator.of(cut, KerfModel.standard(), LagModel.standard());
        FeedProfile feeds = FeedProfile.constant(line(0.5e-3), Kind.SPEED.of(cut.feedSi(3)));
        Contour part = line(0);
        simulator.predict(feeds, part, Side.RIGHT);
        long before = threads.getThreadAllocatedBytes(Thread.currentThread().getId());
        DeviationMap map = simulator.predict(feeds, part, Side.RIGHT).map();
        long taken = threads.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;

        assertThat(map.size()).isGreaterThan(4000);
        assertThat((double) taken / map.size() / map.depths().size()).isLessThan(250);
    }

    private static Contour line(double yM) {
        double[] x = new double[1001];
        double[] y = new double[1001];
        for (int i = 0; i <= 1000; i++) {
            x[i] = i * 1e-3;
            y[i] = yM;
        }
        return Contour.polylineSi(x, y, EdgeRequirement.defaults());
    }
}
