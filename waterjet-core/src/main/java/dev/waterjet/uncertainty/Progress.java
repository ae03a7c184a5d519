package dev.waterjet.uncertainty;

/** Listener for the progress of a long computation. */
@FunctionalInterface
public interface Progress {

    /**
     * Receives the progress. Working threads call it from time to time, one call at a time, with an increasing count.
     *
     * @param done number of evaluations done
     * @param total number of evaluations in all
     */
    void at(long done, long total);
}
