package dev.waterjet.benchmarks;

import dev.waterjet.measure.Measures;
import dev.waterjet.part.ConditionedContour;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourConditioner;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.toolpath.KerfOffset;
import dev.waterjet.toolpath.OffsetResult;
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

/** Conditioning and offset of sampled contours, beside one pass over the coordinates that sums lengths and turns. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(
        value = 1,
        jvmArgsAppend = {"-Xms4g", "-Xmx4g", "-XX:+UseParallelGC"})
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class GeometryBenchmark {

    /** Number of chords. */
    @Param({"1000", "100000"})
    public int chords;

    private Contour circle;
    private Contour wave;
    private Contour conditionedWave;
    private double[] x;
    private double[] y;

    /** Draws a circle and a closed wave around it. */
    @Setup
    public void draw() {
        circle = closed(0);
        wave = closed(0.02);
        conditionedWave = ContourConditioner.defaults().condition(wave).contour();
    }

    private Contour closed(double amplitude) {
        x = new double[chords + 1];
        y = new double[chords + 1];
        double radius = 0.05 * chords / 6283.0;
        for (int i = 0; i <= chords; i++) {
            double angle = 2 * Math.PI * (i % chords) / chords;
            double r = radius * (1 + amplitude * Math.cos(40 * angle));
            x[i] = r * Math.cos(angle);
            y[i] = r * Math.sin(angle);
        }
        return Contour.polylineSi(x, y, EdgeRequirement.defaults());
    }

    /** Lines and arcs for the chords of a circle. */
    @Benchmark
    public ConditionedContour conditionCircle() {
        return ContourConditioner.defaults().condition(circle);
    }

    /** Lines and arcs for the chords of a wave. */
    @Benchmark
    public ConditionedContour conditionWave() {
        return ContourConditioner.defaults().condition(wave);
    }

    /** Path of the jet axis around the conditioned wave. */
    @Benchmark
    public OffsetResult offsetWave() {
        return KerfOffset.of(Measures.millimetres(0.5)).apply(conditionedWave, Side.RIGHT);
    }

    /** The yardstick: one pass over the coordinates. */
    @Benchmark
    public double plainPass() {
        double sum = 0;
        for (int i = 1; i < chords; i++) {
            double ax = x[i] - x[i - 1];
            double ay = y[i] - y[i - 1];
            double bx = x[i + 1] - x[i];
            double by = y[i + 1] - y[i];
            sum += Math.sqrt(ax * ax + ay * ay) + Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
        }
        return sum;
    }
}
