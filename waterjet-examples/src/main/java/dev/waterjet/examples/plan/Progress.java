package dev.waterjet.examples.plan;

/** Hears how far a long work has come. */
@FunctionalInterface
public interface Progress {

    /** Says nothing. */
    Progress SILENT = (done, of) -> {};

    /**
     * Tells how far the work has come.
     *
     * @param done cutting blocks planned
     * @param of cutting blocks in all
     */
    void at(int done, int of);
}
