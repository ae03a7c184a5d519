package dev.waterjet.benchmarks;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.simulate.CutSimulator;
import dev.waterjet.simulate.FeedProfile;
import dev.waterjet.simulate.PredictedCut;
import dev.waterjet.toolpath.KerfOffset;
import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.special.Erf;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Predicted cut of one metre of contour at nine depths, beside a plain walk over all segments at one of its points. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 2)
public class SimulateBenchmark {

    private static final int SEGMENTS = 6000;
    private static final int STEPS = 30;

    private CutSimulator simulator;
    private FeedProfile profile;
    private Contour part;
    private double[] x;
    private double[] y;
    private double pace;
    private double spread;

    /** Draws a part of 0.96 m with corners and arcs, and a circle of segments of 0.15 mm for the plain walk. */
    @Setup
    public void draw() {
        CutConditions cut = CutConditions.of(
                CuttingHead.of(
                                Orifice.sapphire(Measures.millimetres(0.33)),
                                FocusingTube.of(Measures.millimetres(1.02), Measures.millimetres(102)))
                        .jet(Measures.megapascals(380), Abrasive.garnet(Mesh.of(80)), Measures.gramsPerMinute(450)),
                Workpiece.of(Materials.standard().get("mild-steel-a36"), Measures.millimetres(25)),
                MachinabilityFeed.published());
        double feed = cut.feedSi(3);
        KerfProfile kerf = KerfProfile.of(KerfModel.standard(), CutFront.of(LagModel.standard(), cut), cut.jet());
        simulator = CutSimulator.of(cut, KerfModel.standard(), LagModel.standard());
        part = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(200, 0))
                .arcTo(Point.millimetres(250, 50), Point.millimetres(200, 50), Side.LEFT)
                .lineTo(Point.millimetres(250, 150))
                .lineTo(Point.millimetres(200, 150))
                .lineTo(Point.millimetres(200, 100))
                .lineTo(Point.millimetres(100, 100))
                .lineTo(Point.millimetres(100, 150))
                .arcTo(Point.millimetres(50, 200), Point.millimetres(50, 150), Side.LEFT)
                .lineTo(Point.millimetres(0, 200))
                .close();
        profile = FeedProfile.constant(
                KerfOffset.of(Kind.LENGTH.of(kerf.halfWidthSi(0.0005, feed)))
                        .apply(part, Side.RIGHT)
                        .path()
                        .contour(),
                Kind.SPEED.of(feed));
        spread = kerf.spreadSi();
        pace = 1 / feed;
        x = new double[SEGMENTS + 1];
        y = new double[SEGMENTS + 1];
        for (int i = 0; i <= SEGMENTS; i++) {
            double angle = 2 * Math.PI * i / SEGMENTS;
            x[i] = 0.15 * Math.cos(angle);
            y[i] = 0.15 * Math.sin(angle);
        }
    }

    /** The whole prediction: 52,000 walls, worst places and their uncertainty. */
    @Benchmark
    public PredictedCut prediction() {
        return simulator.predict(profile, part, Side.LEFT);
    }

    /** A single wall: 30 doses on a line, each the sum over all segments of the path. */
    @Benchmark
    public double plainWalkOfOneWall() {
        double last = 0;
        for (int k = 0; k < STEPS; k++) {
            double at = 0.153 - k * 1e-4;
            double dose = 0;
            for (int i = 0; i < SEGMENTS; i++) {
                double dx = x[i + 1] - x[i];
                double dy = y[i + 1] - y[i];
                double length = Math.hypot(dx, dy);
                double along = ((at - x[i]) * dx - y[i] * dy) / length;
                double beside = ((at - x[i]) * dy + y[i] * dx) / length;
                double root = Math.sqrt(2) * spread;
                if (Math.abs(beside) < 6 * spread && along > -6 * spread && along < length + 6 * spread) {
                    dose += pace
                            / 2
                            * Math.exp(-beside * beside / (2 * spread * spread))
                            * (Erf.erf((length - along) / root) + Erf.erf(along / root));
                }
            }
            last = dose;
        }
        return last;
    }
}
