package dev.waterjet.reference;

import java.util.Map;

/** Computations of one package that rows of the suite can name. */
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
