package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/**
 * A model with a highest feed of the caller's own, as a machine or a shop's experience with thin sheet sets it. A feed that
 * meets the limit carries a caution.
 */
public final class LimitedFeed implements ForwardingFeed {

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
                "the formula gives " + text(unlimitedMPerS)
                        + ", beyond its use in thin or soft sheet; the feed is held at" + " the stated limit of "
                        + text(limitMPerS));
    }

    private static String text(double feedMPerS) {
        return QuantityText.print(Kind.SPEED, Kind.SPEED.of(feedMPerS), Units.MILLIMETRE_PER_MINUTE, 4);
    }

    @Override
    public FeedModel model() {
        return model;
    }

    @Override
    public double maximumFeedSi() {
        return highestMPerS;
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
        return name() + ", at most " + text(highestMPerS);
    }
}
