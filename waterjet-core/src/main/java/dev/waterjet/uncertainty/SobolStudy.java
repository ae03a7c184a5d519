package dev.waterjet.uncertainty;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;
import java.util.function.DoubleConsumer;
import org.apache.commons.math3.random.SobolSequenceGenerator;

/**
 * Variance-based sensitivity study for any function: shares of the variance of the result by input (Sobol 1993). First-order
 * indices follow the estimator of Saltelli et al., Comput. Phys. Commun. 181 (2010) 259-270, total ones by that of Jansen
 * (1999); both from memory. The points are those of Sobol's sequence, in randomly shifted copies (Cranley, Patterson 1976,
 * from memory), whose scatter gives the standard errors. Immutable; the same seed gives the same bits, whatever the number of threads.
 */
public final class SobolStudy {

    private static final int DEFAULT_TRIALS = 1 << 16;
    private static final int MAX_TRIALS = 1 << 24;

    /** The sequence has 1000 dimensions, two for each input. */
    private static final int MAX_INPUTS = 500;

    /** Randomly shifted copies of the sequence, whose scatter gives the standard errors. */
    private static final int SHIFTS = 16;

    private final Measurand measurand;
    private final UncertainInputs inputs;
    private final RunSettings settings;

    private SobolStudy(Measurand measurand, UncertainInputs inputs, RunSettings settings) {
        this.measurand = Objects.requireNonNull(measurand, "measurand");
        this.inputs = Objects.requireNonNull(inputs, "inputs");
        this.settings = settings;
        if (inputs.isCorrelated()) {
            throw new DomainException(
                    Message.of(
                            "correlated-inputs",
                            "shares of variance are defined for independent inputs only; these are correlated"),
                    "inputs");
        }
        Require.atMost("number of inputs", inputs.size(), MAX_INPUTS, Units.ONE, "");
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
        return new SobolStudy(measurand, inputs, RunSettings.defaults(DEFAULT_TRIALS, MAX_TRIALS));
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
     * Returns this study with a listener that receives the share done. Working threads call it, one call at a time.
     *
     * @param progress listener, called with a rising share, above 0 to 1
     * @return the study
     */
    public SobolStudy withProgress(DoubleConsumer progress) {
        return new SobolStudy(measurand, inputs, settings.withProgress(Objects.requireNonNull(progress, "progress")));
    }

    /**
     * Runs the study. The call blocks until done; an interrupt ends it with a {@link java.util.concurrent.CancellationException}.
     *
     * @return the shares
     * @throws dev.waterjet.measure.DomainException if the measurand gives no finite number
     */
    public SobolIndices run() {
        int count = inputs.size();
        int trials = settings.trials();
        int shifts = trials < 4 * SHIFTS ? 2 : SHIFTS;
        double[][] shift = shifts(shifts, 2 * count);
        double[] atA = new double[trials];
        double[] atB = new double[trials];
        double[][] mixed = new double[count][trials];
        DrawBatches.run(settings, (batch, from, to) -> {
            if (count == 0) {
                return;
            }
            SobolSequenceGenerator sequence = new SobolSequenceGenerator(2 * count);
            // the first point is all zeros, where a normal quantile is infinite
            double[] point = sequence.skipTo(1 + from / shifts);
            double[] shifted = new double[2 * count];
            double[] a = new double[count];
            double[] b = new double[count];
            for (int i = from; i < to; i++) {
                if (i > from && i % shifts == 0) {
                    point = sequence.nextVector();
                }
                for (int k = 0; k < shifted.length; k++) {
                    double moved = point[k] + shift[i % shifts][k];
                    shifted[k] = moved < 1 ? moved : moved - 1;
                }
                inputs.at(shifted, 0, a);
                inputs.at(shifted, count, b);
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
        return SobolIndices.of(inputs.names(), atA, atB, mixed, shifts);
    }

    private double[][] shifts(int count, int dimensions) {
        double[][] shifts = new double[count][dimensions];
        for (int r = 0; r < count; r++) {
            BatchRandom random = BatchRandom.of(settings.seed(), r);
            for (int k = 0; k < dimensions; k++) {
                shifts[r][k] = random.nextDouble();
            }
        }
        return shifts;
    }

    private double result(double[] at) {
        return Require.finite("result of a trial", measurand.of(at), Units.ONE);
    }
}
