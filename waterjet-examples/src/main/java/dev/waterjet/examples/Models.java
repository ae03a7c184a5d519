package dev.waterjet.examples;

import dev.waterjet.feed.DeclinationFeed;
import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.feed.SpecificEnergyFeed;
import dev.waterjet.measure.TextException;
import java.util.LinkedHashMap;
import java.util.Map;

/** Feed models by the names of the option {@code --model}. */
final class Models {

    /** Their names, for the descriptions of options. */
    static final String NAMES =
            "machinability, machinability-by-flow, erosion, specific-energy, declination-1.5, declination-1";

    private static final Map<String, FeedModel> BY_NAME = new LinkedHashMap<>();

    static {
        BY_NAME.put("machinability", MachinabilityFeed.published());
        BY_NAME.put("machinability-by-flow", MachinabilityFeed.publishedByWaterFlow());
        BY_NAME.put("erosion", ErosionFeed.standard());
        BY_NAME.put("specific-energy", SpecificEnergyFeed.ofSteel());
        BY_NAME.put("declination-1.5", DeclinationFeed.threeHalvesPower(MachinabilityFeed.published()));
        BY_NAME.put("declination-1", DeclinationFeed.linear(MachinabilityFeed.published()));
    }

    private Models() {}

    static FeedModel get(String name) {
        FeedModel model = BY_NAME.get(name);
        if (model == null) {
            throw new TextException("unknown model \"" + name + "\"; use one of " + NAMES);
        }
        return model;
    }
}
