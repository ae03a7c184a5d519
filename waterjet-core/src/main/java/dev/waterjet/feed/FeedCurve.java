package dev.waterjet.feed;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Feed rate over thickness, with its uncertainty.
 *
 * @param thicknesses thicknesses, each above 0
 * @param feeds feed rate for each thickness, each 0 or more; 0 where the jet does not cut
 * @param relativeUncertainty relative standard uncertainty of each feed rate, 0 or more
 */
public record FeedCurve(QuantityArray<Length> thicknesses, QuantityArray<Speed> feeds, double relativeUncertainty)
        implements Described, Serializable {

    /**
     * Checks that there is a feed rate for each thickness, and their values.
     *
     * @param thicknesses thicknesses, each above 0
     * @param feeds feed rate for each thickness, each 0 or more; 0 where the jet does not cut
     * @param relativeUncertainty relative standard uncertainty of each feed rate, 0 or more
     */
    public FeedCurve {
        Objects.requireNonNull(thicknesses, "thicknesses");
        Objects.requireNonNull(feeds, "feeds");
        Require.between(
                "number of feed rates",
                feeds.size(),
                thicknesses.size(),
                thicknesses.size(),
                Units.ONE,
                "the number of thicknesses");
        for (int i = 0; i < feeds.size(); i++) {
            requireThickness(thicknesses.si(i));
            Require.notNegative("feed rate", feeds.si(i), Units.MILLIMETRE_PER_MINUTE);
        }
        relativeUncertainty =
                Require.notNegative("relative uncertainty of a feed rate", relativeUncertainty, Units.ONE);
    }

    static double requireThickness(double thicknessM) {
        return Require.positive("thickness", thicknessM, Units.MILLIMETRE);
    }

    /** {@return the number of points} */
    public int size() {
        return feeds.size();
    }

    /**
     * Returns one point with its uncertainty.
     *
     * @param index index from 0
     * @return the feed rate
     */
    public Estimate<Speed> feed(int index) {
        return Estimate.withinFactor(Kind.SPEED, feeds.si(index), relativeUncertainty, List.of());
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("feed curve")
                .put("thicknesses", thicknesses)
                .put("feeds", feeds)
                .put("relative_uncertainty", relativeUncertainty)
                .map();
    }

    @Override
    public String toString() {
        return "feed curve of " + size() + " points";
    }
}
