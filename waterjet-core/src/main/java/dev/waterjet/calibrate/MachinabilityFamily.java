package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.material.Material;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Machinability model with the machinability and some exponents free. */
record MachinabilityFamily(Material start, MachinabilityFeed published, List<FeedExponent> freed) implements Family {

    static final String MACHINABILITY = "machinability";

    MachinabilityFamily {
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(published, "model");
        freed = List.copyOf(freed);
    }

    @Override
    public List<Start> starts(List<TestCut> cuts) {
        List<Start> starts = new ArrayList<>();
        starts.add(new Start(MACHINABILITY, start.machinabilitySi(), true));
        for (FeedExponent exponent : freed) {
            starts.add(new Start(exponent.label(), published.exponent(exponent), false));
        }
        return starts;
    }

    @Override
    public FeedModel model(double[] parameters, double scatter, Evidence evidence) {
        MachinabilityFeed model = published.withModelUncertainty(scatter).withEvidence(evidence);
        for (int j = 0; j < freed.size(); j++) {
            model = model.withExponent(freed.get(j), parameters[j + 1]);
        }
        return model;
    }

    @Override
    public Material material(double[] parameters, double relativeUncertainty, Evidence evidence) {
        return start.withMachinability(parameters[0], relativeUncertainty, evidence);
    }
}
