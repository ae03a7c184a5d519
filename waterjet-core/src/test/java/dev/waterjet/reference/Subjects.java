package dev.waterjet.reference;

import java.util.Map;

/** What one package offers to be checked: a name for each computation that a row can ask for. */
public interface Subjects {

    /**
     * The computations by name.
     *
     * @return name to computation
     */
    Map<String, Subject> subjects();

    /** One computation. */
    @FunctionalInterface
    interface Subject {

        /**
         * Computes the answer to a row.
         *
         * @param inputs inputs of the row
         * @return the answer
         */
        Computed compute(Inputs inputs);
    }
}
