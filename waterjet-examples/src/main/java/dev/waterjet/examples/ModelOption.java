package dev.waterjet.examples;

import dev.waterjet.feed.FeedModel;
import picocli.CommandLine.Option;

/** Option of the feed model; mixed into every program that computes with one. */
final class ModelOption {

    @Option(
            names = "--model",
            paramLabel = "<model>",
            description = "Feed model: " + Models.NAMES
                    + ". A calibration of the material replaces it. Default: machinability.")
    private String name = "machinability";

    /** {@return the model} */
    FeedModel model() {
        return Models.get(name);
    }
}
