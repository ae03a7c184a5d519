package dev.waterjet.uncertainty;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;
import java.util.function.DoubleConsumer;

/**
 * Settings of a study: number of trials, seed, number of threads, listener.
 *
 * @param trials number of trials, 2 to {@code maximumTrials}
 * @param maximumTrials maximum number of trials of the study
 * @param seed any number
 * @param threads number of threads, 1 to 1024
 * @param progress listener that receives the share done, 0 to 1
 */
record RunSettings(int trials, int maximumTrials, long seed, int threads, DoubleConsumer progress) {

    private static final int MAX_THREADS = 1024;

    RunSettings {
        Require.between("number of trials", trials, 2, maximumTrials, Units.ONE, "");
        Require.between("number of threads", threads, 1, MAX_THREADS, Units.ONE, "");
        Objects.requireNonNull(progress, "progress");
    }

    /** Seed 1, all processors, no listener. */
    static RunSettings defaults(int trials, int maximumTrials) {
        int processors = Runtime.getRuntime().availableProcessors();
        return new RunSettings(trials, maximumTrials, 1, Math.min(MAX_THREADS, processors), share -> {});
    }

    RunSettings withTrials(int trials) {
        return new RunSettings(trials, maximumTrials, seed, threads, progress);
    }

    RunSettings withSeed(long seed) {
        return new RunSettings(trials, maximumTrials, seed, threads, progress);
    }

    RunSettings withThreads(int threads) {
        return new RunSettings(trials, maximumTrials, seed, threads, progress);
    }

    RunSettings withProgress(DoubleConsumer progress) {
        return new RunSettings(trials, maximumTrials, seed, threads, progress);
    }
}
