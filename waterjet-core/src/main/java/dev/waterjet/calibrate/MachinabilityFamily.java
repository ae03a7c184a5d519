package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.material.Material;
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
    public LeastSquares withParameters(LeastSquares fit, List<TestCut> cuts) {
        LeastSquares freedFit = fit.withPositiveParameter(MACHINABILITY, start.machinabilitySi());
        for (FeedExponent exponent : freed) {
            freedFit = freedFit.withParameter(exponent.label(), published.exponent(exponent));
        }
        return freedFit;
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
