package dev.waterjet.fit;

/** Prediction of a model for the observations of a fit. It must be the same for the same parameters. */
@FunctionalInterface
public interface Response {

    /**
     * Predicts an observation.
     *
     * @param observation index of the observation, from 0
     * @param parameters the parameters, in the order in which they were added; not to be kept or changed
     * @return the prediction; the search avoids parameters for which it is not finite
     */
    double at(int observation, double[] parameters);
}
