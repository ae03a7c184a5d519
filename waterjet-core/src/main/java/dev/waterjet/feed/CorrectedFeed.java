package dev.waterjet.feed;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;

/**
 * A model corrected for loading: its depth is multiplied by the square of eta(R)/eta(R<sub>0</sub>), with R<sub>0</sub> the
 * loading ratio at which the model is right.
 */
record CorrectedFeed(FeedModel model, MixingEfficiency mixing, double referenceLoading) implements ForwardingFeed {

    /** Keeps a jet choked with abrasive from a division by zero. */
    private static final double MIN_FACTOR = 1e-60;

    CorrectedFeed {
        Objects.requireNonNull(model, "model");
        Objects.requireNonNull(mixing, "mixing");
        referenceLoading = Require.positive("reference loading ratio", referenceLoading, Units.ONE);
    }

    private double factor(double loadingRatio) {
        double ratio = mixing.atSi(loadingRatio) / mixing.atSi(referenceLoading);
        return Math.max(MIN_FACTOR, ratio * ratio);
    }

    @Override
    public String name() {
        return model.name() + ", loaded";
    }

    @Override
    public Evidence evidence() {
        return Evidence.of(
                        EvidenceGrade.DERIVED,
                        Source.of(model.evidence().source().citation()))
                .withNote("Depth times the square of the decreasing mixing efficiency (derived); "
                        + mixing.evidence().grade().label() + ": "
                        + mixing.evidence().source().citation());
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return model.separationFeedSi(jet, material, depthM / factor(jet.loadingRatioSi()));
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return model.separationDepthSi(jet, material, feedMPerS) * factor(jet.loadingRatioSi());
    }

    @Override
    public double feedSi(JetSettings jet, Material material, double thicknessM, double index) {
        return model.feedSi(jet, material, thicknessM / factor(jet.loadingRatioSi()), index);
    }

    @Override
    public double indexSi(JetSettings jet, Material material, double thicknessM, double feedMPerS) {
        return model.indexSi(jet, material, thicknessM / factor(jet.loadingRatioSi()), feedMPerS);
    }

    @Override
    public String toString() {
        return name();
    }
}
