package dev.waterjet.uncertainty;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;
import java.util.function.DoubleConsumer;

/**
 * Propagation of distributions by the Monte Carlo method (JCGM 101). Immutable; the same seed gives the same bits, whatever the number of
 * threads.
 *
 * <pre>{@code
 * UncertainInputs inputs = UncertainInputs.none()
 *         .with("pressure", Distribution.normal(380e6, 4e6))
 *         .with("bore", Distribution.uniform(0.32e-3, 0.34e-3));
 * MonteCarloResult flow = MonteCarlo.of(values -> Math.sqrt(values[0]) * values[1] * values[1], inputs).withSeed(7).run();
 * double relative = flow.standardUncertainty() / flow.mean();
 * }</pre>
 */
public final class MonteCarlo {

    private static final int DEFAULT_TRIALS = 200_000;
    private static final int MAX_TRIALS = 100_000_000;

    private final Measurand measurand;
    private final UncertainInputs inputs;
    private final RunSettings settings;

    private MonteCarlo(Measurand measurand, UncertainInputs inputs, RunSettings settings) {
        this.measurand = Objects.requireNonNull(measurand, "measurand");
        this.inputs = Objects.requireNonNull(inputs, "inputs");
        this.settings = settings;
    }

    /**
     * Returns a study of 200 000 trials on all processors, with seed 1.
     *
     * @param measurand the function, thread-safe
     * @param inputs its inputs
     * @return the study
     */
    public static MonteCarlo of(Measurand measurand, UncertainInputs inputs) {
        return new MonteCarlo(measurand, inputs, RunSettings.defaults(DEFAULT_TRIALS, MAX_TRIALS));
    }

    /**
     * Returns this study with another number of trials. JCGM 101 (7.2.2) recommends 10 000 divided by one minus the required
     * coverage.
     *
     * @param trials 2 to 100 million
     * @return the study
     */
    public MonteCarlo withTrials(int trials) {
        return new MonteCarlo(measurand, inputs, settings.withTrials(trials));
    }

    /**
     * Returns this study with another seed.
     *
     * @param seed any number
     * @return the study
     */
    public MonteCarlo withSeed(long seed) {
        return new MonteCarlo(measurand, inputs, settings.withSeed(seed));
    }

    /**
     * Returns this study on another number of threads.
     *
     * @param threads 1 to 1024
     * @return the study
     */
    public MonteCarlo withThreads(int threads) {
        return new MonteCarlo(measurand, inputs, settings.withThreads(threads));
    }

    /**
     * Returns this study with a listener that receives the share done. Working threads call it, one call at a time.
     *
     * @param progress listener, called with a rising share, above 0 to 1
     * @return the study
     */
    public MonteCarlo withProgress(DoubleConsumer progress) {
        return new MonteCarlo(measurand, inputs, settings.withProgress(Objects.requireNonNull(progress, "progress")));
    }

    /**
     * Runs the study. The call blocks until done; an interrupt ends it with a {@link java.util.concurrent.CancellationException}.
     *
     * @return the distribution of the result
     * @throws dev.waterjet.measure.DomainException if the measurand gives no finite number, or the correlations contradict
     *     each other
     */
    public MonteCarloResult run() {
        double[] results = new double[settings.trials()];
        double[][] factor = inputs.factor();
        DrawBatches.run(settings, (batch, from, to) -> {
            BatchRandom random = BatchRandom.of(settings.seed(), batch);
            double[] scores = new double[inputs.size()];
            double[] drawn = new double[inputs.size()];
            for (int i = from; i < to; i++) {
                inputs.draw(random, factor, scores, drawn);
                results[i] = Require.finite("result of a trial", measurand.of(drawn), Units.ONE);
            }
        });
        return MonteCarloResult.of(results);
    }
}
