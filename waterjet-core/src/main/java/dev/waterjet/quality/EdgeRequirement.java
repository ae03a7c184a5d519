package dev.waterjet.quality;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * What is asked of an edge: the grade of its face, and how far the bottom of the cut may lie off the top where the jet
 * trails. An edge can also carry a feed of its own, and it can be a lead, which is cut in scrap.
 */
public final class EdgeRequirement implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final EdgeRequirement USUAL = of(CutQuality.MEDIUM);

    private final CutQuality grade;
    private final double toleranceM;
    private final double outsideToleranceM;
    private final double greatestFeedMPerS;
    private final boolean isLead;

    private EdgeRequirement(
            CutQuality grade, double toleranceM, double outsideToleranceM, double greatestFeedMPerS, boolean isLead) {
        this.grade = Objects.requireNonNull(grade, "grade");
        this.toleranceM = Require.positive("tolerance of an edge", toleranceM, Units.MILLIMETRE);
        this.outsideToleranceM =
                Require.positive("tolerance of an outside corner", outsideToleranceM, Units.MILLIMETRE);
        this.greatestFeedMPerS = greatestFeedMPerS;
        this.isLead = isLead;
    }

    /**
     * A grade, with a tolerance of 0.1 mm (common practice, no source).
     *
     * @param grade grade of the face
     * @return the finish
     */
    public static EdgeRequirement of(CutQuality grade) {
        double usual = Kind.LENGTH.si(Measures.millimetres(0.1));
        return new EdgeRequirement(grade, usual, usual, Double.POSITIVE_INFINITY, false);
    }

    /**
     * A medium face within 0.1 mm.
     *
     * @return the finish of an edge of which nothing is said
     */
    public static EdgeRequirement defaults() {
        return USUAL;
    }

    /**
     * This finish within another tolerance, at outside corners too.
     *
     * @param tolerance how far the path and the bottom of the cut may lie off the edge, above 0
     * @return the finish with that tolerance
     */
    public EdgeRequirement withTolerance(Quantity<Length> tolerance) {
        double si = Kind.LENGTH.si(tolerance);
        return new EdgeRequirement(grade, si, si, greatestFeedMPerS, isLead);
    }

    /**
     * This finish with a tolerance of its own at outside corners. Without it an outside corner is slowed as much as an
     * inside one, because it is not known which way the bottom swings there. If it lies behind along the new direction, it
     * passes through scrap and leaves the part alone. If it follows like a trailer, it cuts the corner off, at a right
     * angle by 0.48 of the lag; an inside corner is notched by the whole lag (all derived). So twice the tolerance at
     * outside corners keeps the part within the tolerance by either picture, up to a right angle; a test cut tells more.
     *
     * @param tolerance how far the bottom of the cut may lie off at an outside corner, above 0
     * @return the finish with that tolerance
     */
    public EdgeRequirement withOutsideCornerTolerance(Quantity<Length> tolerance) {
        return new EdgeRequirement(grade, toleranceM, Kind.LENGTH.si(tolerance), greatestFeedMPerS, isLead);
    }

    /**
     * This finish with a feed of its own: the feed never rises above it.
     *
     * @param feed the greatest feed, above 0
     * @return the finish with that feed
     */
    public EdgeRequirement withMaximumFeed(Quantity<Speed> feed) {
        double si = Require.positive("greatest feed of an edge", Kind.SPEED.si(feed), Units.MILLIMETRE_PER_MINUTE);
        return new EdgeRequirement(grade, toleranceM, outsideToleranceM, si, isLead);
    }

    /**
     * This finish for a lead: cut in scrap, but at a feed at which the jet parts the material.
     *
     * @return the finish of a lead
     */
    public EdgeRequirement asLead() {
        return new EdgeRequirement(grade, toleranceM, outsideToleranceM, greatestFeedMPerS, true);
    }

    /**
     * Grade of the face.
     *
     * @return the grade
     */
    public CutQuality quality() {
        return grade;
    }

    /**
     * How far the path and the bottom of the cut may lie off the edge.
     *
     * @return the tolerance, in m
     */
    public Quantity<Length> tolerance() {
        return Kind.LENGTH.of(toleranceM);
    }

    /**
     * How far the bottom of the cut may lie off at an outside corner.
     *
     * @return the tolerance, in m
     */
    public Quantity<Length> outsideCornerTolerance() {
        return Kind.LENGTH.of(outsideToleranceM);
    }

    /**
     * The feed that the edge carries itself.
     *
     * @return the greatest feed, in m/s; empty if the grade alone decides
     */
    public Optional<Quantity<Speed>> maximumFeed() {
        return greatestFeedMPerS < Double.POSITIVE_INFINITY
                ? Optional.of(Kind.SPEED.of(greatestFeedMPerS))
                : Optional.empty();
    }

    /**
     * Whether the edge is a lead.
     *
     * @return true for a lead
     */
    public boolean isLead() {
        return isLead;
    }

    public double outsideToleranceSi() {
        return outsideToleranceM;
    }

    public double toleranceSi() {
        return toleranceM;
    }

    public double maximumFeedSi() {
        return greatestFeedMPerS;
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("finish")
                .put("grade", grade)
                .put("tolerance", Kind.LENGTH, toleranceM)
                .put("outside_corner_tolerance", Kind.LENGTH, outsideToleranceM);
        maximumFeed().ifPresent(feed -> description.put("greatest_feed", Kind.SPEED, greatestFeedMPerS));
        return description.put("lead", isLead).map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof EdgeRequirement that
                && grade == that.grade
                && toleranceM == that.toleranceM
                && outsideToleranceM == that.outsideToleranceM
                && greatestFeedMPerS == that.greatestFeedMPerS
                && isLead == that.isLead;
    }

    @Override
    public int hashCode() {
        return Objects.hash(grade.name(), toleranceM, outsideToleranceM, greatestFeedMPerS, isLead);
    }

    @Override
    public String toString() {
        return grade.label() + " within " + QuantityText.print(Kind.LENGTH, tolerance(), Units.MILLIMETRE, 4)
                + (isLead ? ", lead" : "");
    }
}
