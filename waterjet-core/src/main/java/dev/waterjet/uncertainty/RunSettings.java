package dev.waterjet.uncertainty;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;

/**
 * Settings of a study: number of trials, seed, number of threads, listener.
 *
 * @param trials number of trials, 2 to {@code mostTrials}
 * @param mostTrials maximum number of trials of the study
 * @param seed any number
 * @param threads number of threads, 1 to 1024
 * @param progress listener that receives progress
 */
record RunSettings(int trials, int mostTrials, long seed, int threads, Progress progress) {

    private static final int MOST_THREADS = 1024;

    RunSettings {
        Require.between("number of trials", trials, 2, mostTrials, Units.ONE, "");
        Require.between("number of threads", threads, 1, MOST_THREADS, Units.ONE, "");
        Objects.requireNonNull(progress, "progress");
    }

    /** Seed 1, all processors, no listener. */
    static RunSettings usual(int trials, int mostTrials) {
        int processors = Runtime.getRuntime().availableProcessors();
        return new RunSettings(trials, mostTrials, 1, Math.min(MOST_THREADS, processors), (done, total) -> {});
    }

    RunSettings withTrials(int trials) {
        return new RunSettings(trials, mostTrials, seed, threads, progress);
    }

    RunSettings withSeed(long seed) {
        return new RunSettings(trials, mostTrials, seed, threads, progress);
    }

    RunSettings withThreads(int threads) {
        return new RunSettings(trials, mostTrials, seed, threads, progress);
    }

    RunSettings withProgress(Progress progress) {
        return new RunSettings(trials, mostTrials, seed, threads, progress);
    }
}
