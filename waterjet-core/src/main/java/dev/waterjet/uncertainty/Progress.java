package dev.waterjet.uncertainty;

/** Hears how far a long computation has come. */
@FunctionalInterface
public interface Progress {

    /**
     * Called now and then from the threads that work, one call at a time, with a count that only grows.
     *
     * @param done evaluations done
     * @param total evaluations in all
     */
    void at(long done, long total);
}
