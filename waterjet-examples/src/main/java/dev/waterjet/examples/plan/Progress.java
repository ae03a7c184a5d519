package dev.waterjet.examples.plan;

/** Receiver of progress. */
@FunctionalInterface
public interface Progress {

    /** Ignores progress. */
    Progress SILENT = (done, of) -> {};

    /**
     * Receives progress.
     *
     * @param done cutting blocks planned
     * @param of total number of cutting blocks
     */
    void at(int done, int of);
}
