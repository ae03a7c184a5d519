package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/**
 * A model with a highest feed of the caller's own, as a machine or a shop's experience with thin sheet sets it. A feed that
 * meets the limit carries a caution.
 */
public final class LimitedFeed implements FeedModel {

    private static final long serialVersionUID = 1L;

    private final FeedModel model;
    private final double highestMPerS;

    private LimitedFeed(FeedModel model, double highestMPerS) {
        this.model = Objects.requireNonNull(model, "model");
        this.highestMPerS = Require.positive("highest feed", highestMPerS, Units.MILLIMETRE_PER_MINUTE);
    }

    /**
     * A model with a highest feed.
     *
     * @param model the model
     * @param highest the highest feed, above zero
     * @return the model with that limit
     */
    public static LimitedFeed of(FeedModel model, Quantity<Speed> highest) {
        return new LimitedFeed(model, Kind.SPEED.si(highest));
    }

    static Caution caution(double unlimitedMPerS, double limitMPerS) {
        return Caution.warning(
                "thin-sheet",
                "the formula gives " + told(unlimitedMPerS)
                        + ", beyond its use in thin or soft sheet; the feed is held at" + " the stated limit of "
                        + told(limitMPerS));
    }

    private static String told(double feedMPerS) {
        return QuantityText.print(Kind.SPEED, Kind.SPEED.of(feedMPerS), Units.MILLIMETRE_PER_MINUTE, 4);
    }

    @Override
    public String name() {
        return model.name();
    }

    @Override
    public Evidence evidence() {
        return model.evidence();
    }

    @Override
    public double separationFeedSi(AbrasiveJet jet, Material material, double depthM) {
        return model.separationFeedSi(jet, material, depthM);
    }

    @Override
    public double separationDepthSi(AbrasiveJet jet, Material material, double feedMPerS) {
        return model.separationDepthSi(jet, material, feedMPerS);
    }

    @Override
    public double feedSi(AbrasiveJet jet, Material material, double thicknessM, double index) {
        return model.feedSi(jet, material, thicknessM, index);
    }

    @Override
    public double indexSi(AbrasiveJet jet, Material material, double thicknessM, double feedMPerS) {
        return model.indexSi(jet, material, thicknessM, feedMPerS);
    }

    @Override
    public double feedAtSi(
            AbrasiveJet jet,
            Material material,
            double pressurePa,
            double orificeM,
            double tubeM,
            double abrasiveKgPerS,
            double thicknessM,
            double index) {
        return model.feedAtSi(jet, material, pressurePa, orificeM, tubeM, abrasiveKgPerS, thicknessM, index);
    }

    @Override
    public double highestFeedSi() {
        return highestMPerS;
    }

    @Override
    public double relativeUncertainty(Material material) {
        return model.relativeUncertainty(material);
    }

    @Override
    public List<Caution> cautions(AbrasiveJet jet, Material material, double depthM, double feedMPerS) {
        return model.cautions(jet, material, depthM, feedMPerS);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof LimitedFeed that && model.equals(that.model) && highestMPerS == that.highestMPerS;
    }

    @Override
    public int hashCode() {
        return Objects.hash(model, highestMPerS);
    }

    @Override
    public String toString() {
        return name() + ", at most " + told(highestMPerS);
    }
}
