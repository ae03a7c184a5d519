package dev.waterjet.feed;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.WaterjetException;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/** A feed that is out of reach. It says which feed is the best that can be had, and by what. */
public final class CannotReachException extends WaterjetException {

    private static final long serialVersionUID = 1L;

    private final double wantedMPerS;
    private final double bestMPerS;

    /**
     * Made where a feed was sought and not found.
     *
     * @param wantedMPerS the feed wanted, in m/s
     * @param bestMPerS the best feed that can be had, in m/s; zero if the jet does not cut at all
     * @param means by what it was sought, such as {@code "pressure up to 600 MPa"}
     * @param where where the best is found, such as {@code "at 600 MPa"}
     */
    public CannotReachException(double wantedMPerS, double bestMPerS, String means, String where) {
        super(
                bestMPerS > 0
                        ? "a feed of " + text(wantedMPerS) + " cannot be reached by " + means + ": the best is "
                                + text(bestMPerS) + ", " + where
                        : "the jet does not cut at all by " + means);
        this.wantedMPerS = wantedMPerS;
        this.bestMPerS = bestMPerS;
    }

    private static String text(double feedMPerS) {
        return QuantityText.print(Kind.SPEED, Kind.SPEED.of(feedMPerS), Units.MILLIMETRE_PER_MINUTE, 5);
    }

    /**
     * The feed wanted.
     *
     * @return the feed, in m/s
     */
    public Quantity<Speed> wanted() {
        return Kind.SPEED.of(wantedMPerS);
    }

    /**
     * The best feed that can be had.
     *
     * @return the feed, in m/s; zero if the jet does not cut at all
     */
    public Quantity<Speed> best() {
        return Kind.SPEED.of(bestMPerS);
    }
}
