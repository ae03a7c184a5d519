package dev.waterjet.uncertainty;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;

/**
 * Variance-based sensitivity study for any function: shares of the variance of the result by input (Sobol 1993). First-order
 * indices follow the estimator of Saltelli et al., Comput. Phys. Commun. 181 (2010) 259-270, total ones by that of Jansen
 * (1999); both from memory. Immutable; the same seed gives the same bits, whatever the number of threads.
 */
public final class SobolStudy {

    private static final int USUAL_TRIALS = 1 << 16;
    private static final int MOST_TRIALS = 1 << 24;

    private final Measurand measurand;
    private final UncertainInputs inputs;
    private final RunSettings settings;

    private SobolStudy(Measurand measurand, UncertainInputs inputs, RunSettings settings) {
        this.measurand = Objects.requireNonNull(measurand, "measurand");
        this.inputs = Objects.requireNonNull(inputs, "inputs");
        this.settings = settings;
        if (inputs.isCorrelated()) {
            throw new IllegalArgumentException(
                    "shares of variance are defined for independent inputs only; these are correlated");
        }
    }

    /**
     * Returns a study of 65 536 trials on all processors, with seed 1. Each trial takes as many evaluations
     * as there are inputs, plus two.
     *
     * @param measurand the function, thread-safe
     * @param inputs its inputs, none correlated
     * @return the study
     */
    public static SobolStudy of(Measurand measurand, UncertainInputs inputs) {
        return new SobolStudy(measurand, inputs, RunSettings.usual(USUAL_TRIALS, MOST_TRIALS));
    }

    /**
     * Returns this study with another number of trials.
     *
     * @param trials 2 to 16.8 million
     * @return the study
     */
    public SobolStudy withTrials(int trials) {
        return new SobolStudy(measurand, inputs, settings.withTrials(trials));
    }

    /**
     * Returns this study with another seed.
     *
     * @param seed any number
     * @return the study
     */
    public SobolStudy withSeed(long seed) {
        return new SobolStudy(measurand, inputs, settings.withSeed(seed));
    }

    /**
     * Returns this study on another number of threads.
     *
     * @param threads 1 to 1024
     * @return the study
     */
    public SobolStudy withThreads(int threads) {
        return new SobolStudy(measurand, inputs, settings.withThreads(threads));
    }

    /**
     * Returns this study with a listener that receives progress.
     *
     * @param progress the listener
     * @return the study
     */
    public SobolStudy withProgress(Progress progress) {
        return new SobolStudy(measurand, inputs, settings.withProgress(progress));
    }

    /**
     * Runs the study. The call blocks until done; an interrupt ends it with a {@link java.util.concurrent.CancellationException}.
     *
     * @return the shares
     * @throws dev.waterjet.measure.DomainException if the measurand gives no finite number
     */
    public SobolIndices run() {
        int count = inputs.size();
        double[][] factor = inputs.factor();
        double[] atA = new double[settings.trials()];
        double[] atB = new double[settings.trials()];
        double[][] mixed = new double[count][settings.trials()];
        Blocks.run(settings, count + 2L, (block, from, to) -> {
            Draws draws = Draws.of(settings.seed(), block);
            double[] scores = new double[count];
            double[] a = new double[count];
            double[] b = new double[count];
            for (int i = from; i < to; i++) {
                inputs.draw(draws, factor, scores, a);
                inputs.draw(draws, factor, scores, b);
                atA[i] = result(a);
                atB[i] = result(b);
                for (int k = 0; k < count; k++) {
                    double kept = a[k];
                    a[k] = b[k];
                    mixed[k][i] = result(a);
                    a[k] = kept;
                }
            }
        });
        return SobolIndices.of(inputs.names(), atA, atB, mixed);
    }

    private double result(double[] at) {
        return Require.finite("result of a trial", measurand.of(at), Units.ONE);
    }
}
