package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import java.util.List;
import java.util.Objects;

/**
 * Feed model that is based on another one. It forwards the primitive methods of a feed model to that one, and overrides what
 * it changes.
 *
 * <pre>{@code
 * record Halved(FeedModel model) implements ForwardingFeed {
 *     @Override
 *     public double maximumFeedSi() {
 *         return model.maximumFeedSi() / 2;
 *     }
 * }
 * }</pre>
 */
public interface ForwardingFeed extends FeedModel {

    /** {@return the model that it is based on, always the same} */
    FeedModel model();

    @Override
    default String name() {
        return model().name();
    }

    @Override
    default Evidence evidence() {
        return model().evidence();
    }

    @Override
    default double separationFeedSi(JetSettings jet, Material material, double depthM) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return model().separationFeedSi(jet, material, depthM);
    }

    @Override
    default double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return model().separationDepthSi(jet, material, feedMPerS);
    }

    @Override
    default double relativeUncertainty(Material material) {
        return model().relativeUncertainty(material);
    }

    @Override
    default double feedSi(JetSettings jet, Material material, double thicknessM, double index) {
        return model().feedSi(jet, material, thicknessM, index);
    }

    @Override
    default double indexSi(JetSettings jet, Material material, double thicknessM, double feedMPerS) {
        return model().indexSi(jet, material, thicknessM, feedMPerS);
    }

    @Override
    default double maximumFeedSi() {
        return model().maximumFeedSi();
    }

    @Override
    default List<Caution> cautions(JetSettings jet, Material material, double depthM, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return model().cautions(jet, material, depthM, feedMPerS);
    }
}
