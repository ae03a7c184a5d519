package dev.waterjet.uncertainty;

/**
 * Function of uncertain inputs. It must be thread-safe, and give the same result for the same inputs.
 */
@FunctionalInterface
public interface Measurand {

    /**
     * Returns the result for one set of inputs.
     *
     * @param inputs the inputs, in the order in which they were named; not to be kept or changed
     * @return the result
     */
    double of(double[] inputs);
}
