package dev.waterjet.feed;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/** Feed over thickness, with its uncertainty. */
public final class FeedCurve implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final QuantityArray<Length> thicknesses;
    private final QuantityArray<Speed> feeds;
    private final double relativeUncertainty;

    private FeedCurve(QuantityArray<Length> thicknesses, QuantityArray<Speed> feeds, double relativeUncertainty) {
        this.thicknesses = thicknesses;
        this.feeds = feeds;
        this.relativeUncertainty = relativeUncertainty;
    }

    static FeedCurve of(QuantityArray<Length> thicknesses, QuantityArray<Speed> feeds, double relativeUncertainty) {
        return new FeedCurve(thicknesses, feeds, relativeUncertainty);
    }

    /**
     * The thicknesses.
     *
     * @return the thicknesses in the order asked
     */
    public QuantityArray<Length> thicknesses() {
        return thicknesses;
    }

    /**
     * The feeds.
     *
     * @return a feed for each thickness
     */
    public QuantityArray<Speed> feeds() {
        return feeds;
    }

    /**
     * How many points the curve has.
     *
     * @return the count
     */
    public int size() {
        return feeds.size();
    }

    /**
     * One point with its uncertainty.
     *
     * @param index index from 0
     * @return the feed
     */
    public Estimate<Speed> feed(int index) {
        return Estimate.withinFactor(Kind.SPEED, feeds.si(index), relativeUncertainty, List.of());
    }

    /**
     * Relative standard uncertainty of each feed.
     *
     * @return the ratio
     */
    public double relativeUncertainty() {
        return relativeUncertainty;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("speed curve")
                .put("thicknesses", thicknesses)
                .put("feeds", feeds)
                .put("relative_uncertainty", relativeUncertainty)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FeedCurve that
                && thicknesses.equals(that.thicknesses)
                && feeds.equals(that.feeds)
                && relativeUncertainty == that.relativeUncertainty;
    }

    @Override
    public int hashCode() {
        return Objects.hash(thicknesses, feeds, relativeUncertainty);
    }

    @Override
    public String toString() {
        return "speed curve of " + size() + " points";
    }
}
