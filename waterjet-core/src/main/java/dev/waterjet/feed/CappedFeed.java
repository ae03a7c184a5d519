package dev.waterjet.feed;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;

/** A model with a maximum feed rate of the caller. */
record CappedFeed(FeedModel model, double maximumFeedSi) implements ForwardingFeed {

    CappedFeed {
        Objects.requireNonNull(model, "model");
        maximumFeedSi = Require.positive("maximum feed rate", maximumFeedSi, Units.MILLIMETRE_PER_MINUTE);
    }

    @Override
    public String toString() {
        return name() + ", at most " + QuantityText.forPeople(Kind.SPEED, maximumFeedSi);
    }
}
