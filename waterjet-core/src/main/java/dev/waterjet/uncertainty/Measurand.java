package dev.waterjet.uncertainty;

/**
 * The function whose result is wanted. It must be thread-safe, and give the same result for the same inputs.
 */
@FunctionalInterface
public interface Measurand {

    /**
     * The result for one set of inputs.
     *
     * @param inputs the inputs, in the order in which they were named; not to be kept or changed
     * @return the result
     */
    double of(double[] inputs);
}
