package dev.waterjet.fit;

/** What a model predicts for the observations of a fit. It must be the same for the same parameters. */
@FunctionalInterface
public interface Response {

    /**
     * Predicted value of an observation.
     *
     * @param observation index of the observation, from 0
     * @param parameters the parameters, in the order in which they were named; not to be kept or changed
     * @return the prediction; a value that is not finite counts as far off
     */
    double at(int observation, double[] parameters);
}
