package dev.waterjet.benchmarks;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.TestCut;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** Fits to test cuts, beside means and sums of squares of plain doubles that give the same two or three numbers. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class CalibrationBenchmark {

    private static final int PLATES = 50;

    private final CutCoverage.Design measured = new CutCoverage.Design(20, 0, 0, false);
    private final CutCoverage.Design withPrior = new CutCoverage.Design(20, 0, 0, true);
    private final CutCoverage.Design ladder = new CutCoverage.Design(20, 0.1, 0, true);
    private final CutCoverage.Design plates = new CutCoverage.Design(2000, 0, PLATES, false);
    private final CutCoverage.Design ladderPlates = new CutCoverage.Design(2000, 0.1, PLATES, true);
    private final List<TestCut> ladderPlateCuts = drawn(ladderPlates);
    private final List<TestCut> measuredCuts = drawn(measured);
    private final List<TestCut> ladderCuts = drawn(ladder);
    private final List<TestCut> plateCuts = drawn(plates);
    private final double[] logFeeds = logFeeds(measuredCuts);
    private final double[] logFeedsOnPlates = logFeeds(plateCuts);

    private static List<TestCut> drawn(CutCoverage.Design design) {
        Random random = new Random(1);
        return design.draw(design.shop(random), random);
    }

    private static double[] logFeeds(List<TestCut> cuts) {
        return cuts.stream()
                .mapToDouble(cut -> Math.log(cut.feed().getValue().doubleValue()))
                .toArray();
    }

    /**
     * Fits the machinability to 20 measured cuts.
     *
     * @return the fit
     */
    @Benchmark
    public CalibratedFeed measured() {
        return measured.calibration().fit(measuredCuts);
    }

    /**
     * Computes mean and standard deviation of as many logarithms.
     *
     * @return both
     */
    @Benchmark
    public double[] measuredPlain() {
        return meanAndDeviation(logFeeds, 0, logFeeds.length);
    }

    /**
     * Fits 20 measured cuts with the prior of the catalogue.
     *
     * @return the fit
     */
    @Benchmark
    public CalibratedFeed withPrior() {
        return withPrior.calibration().fit(measuredCuts);
    }

    /**
     * Fits 20 intervals of a ladder with the prior of the catalogue.
     *
     * @return the fit
     */
    @Benchmark
    public CalibratedFeed ladder() {
        return ladder.calibration().fit(ladderCuts);
    }

    /**
     * Fits 2000 measured cuts on 50 plates.
     *
     * @return the fit
     */
    @Benchmark
    public CalibratedFeed plates() {
        return plates.calibration().fit(plateCuts);
    }

    /**
     * Fits 2000 intervals of ladders on 50 plates with the prior of the catalogue.
     *
     * @return the fit
     */
    @Benchmark
    public CalibratedFeed ladderOnPlates() {
        return ladderPlates.calibration().fit(ladderPlateCuts);
    }

    /**
     * Computes mean and standard deviation within and between as many plates: the analysis of variance of a balanced design, which
     * has a closed form.
     *
     * @return mean, deviation within and between plates
     */
    @Benchmark
    public double[] platesPlain() {
        double[] means = new double[PLATES];
        double[] byPlate = new double[logFeedsOnPlates.length];
        int each = byPlate.length / PLATES;
        for (int i = 0; i < byPlate.length; i++) {
            byPlate[i % PLATES * each + i / PLATES] = logFeedsOnPlates[i];
        }
        double within = 0;
        for (int g = 0; g < PLATES; g++) {
            double[] plate = meanAndDeviation(byPlate, g * each, (g + 1) * each);
            means[g] = plate[0];
            within += plate[1] * plate[1] / PLATES;
        }
        double[] between = meanAndDeviation(means, 0, PLATES);
        return new double[] {
            between[0], Math.sqrt(within), Math.sqrt(Math.max(0, between[1] * between[1] - within / each))
        };
    }

    private static double[] meanAndDeviation(double[] values, int from, int to) {
        double mean = 0;
        for (int i = from; i < to; i++) {
            mean += values[i] / (to - from);
        }
        double squares = 0;
        for (int i = from; i < to; i++) {
            squares += (values[i] - mean) * (values[i] - mean);
        }
        return new double[] {mean, Math.sqrt(squares / (to - from - 1))};
    }
}
