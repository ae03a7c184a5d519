package dev.waterjet.placement;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Point;
import java.io.Serializable;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Point probed on the machine, with the feature of the drawing on which it lies.
 *
 * @param feature kind of the feature
 * @param known place in the drawing: centre of the hole, or start of the edge
 * @param end end of the edge in the drawing; the centre again for a hole
 * @param radius radius of the hole for a point on its wall, 0 otherwise
 * @param probed point as probed, on the machine; for an edge or a wall the radius of the probe is already taken off
 * @param uncertainty standard uncertainty of the probing, and of the feature against its drawing; above 0
 */
public record ProbedPoint(
        Feature feature, Point known, Point end, Quantity<Length> radius, Point probed, Quantity<Length> uncertainty)
        implements Described, Serializable {

    /** Standard uncertainty where none is stated, in m. Assumed: a probe in a cutting machine. */
    private static final double DEFAULT_UNCERTAINTY_M = 20e-6;

    /** Kind of a probed feature. */
    public enum Feature {
        /** Centre of a hole or of a pin: both coordinates are known. */
        HOLE,
        /** Point on a straight edge, anywhere along its line: the distance from the line is known. */
        EDGE,
        /** Point on the wall of a hole or boss, anywhere around it: the distance from the centre is known. */
        WALL;

        /** {@return the name for people, in lower case} */
        public String label() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * Checks the components.
     *
     * @throws dev.waterjet.measure.DomainException if an edge has no length, a wall no radius, or the uncertainty is not above 0
     * @param feature kind of the feature
     * @param known place in the drawing: centre of the hole, or start of the edge
     * @param end end of the edge in the drawing; the centre again for a hole
     * @param radius radius of the hole for a point on its wall, 0 otherwise
     * @param probed point as probed, on the machine
     * @param uncertainty standard uncertainty, above 0
     */
    public ProbedPoint {
        Objects.requireNonNull(radius, "radius");
        Objects.requireNonNull(uncertainty, "uncertainty");
        Objects.requireNonNull(feature, "feature");
        Objects.requireNonNull(known, "known");
        Objects.requireNonNull(end, "end");
        Objects.requireNonNull(probed, "probed");
        double radiusM = Require.notNegative("radius of the probed wall", Kind.LENGTH.si(radius), Units.MILLIMETRE);
        if (feature == Feature.EDGE) {
            Require.positive("length of the probed edge", Kind.LENGTH.si(known.distance(end)), Units.MILLIMETRE);
        }
        if (feature == Feature.WALL) {
            Require.positive("radius of the probed wall", radiusM, Units.MILLIMETRE);
        }
        radius = Kind.LENGTH.of(radiusM);
        uncertainty = Kind.LENGTH.of(
                Require.positive("uncertainty of a probed point", Kind.LENGTH.si(uncertainty), Units.MILLIMETRE));
    }

    /**
     * Returns the probed centre of a hole, with a standard uncertainty of 20 &micro;m.
     *
     * @param known centre in the drawing
     * @param probed centre on the machine
     * @return the probed point
     */
    public static ProbedPoint hole(Point known, Point probed) {
        return new ProbedPoint(
                Feature.HOLE, known, known, Kind.LENGTH.of(0), probed, Kind.LENGTH.of(DEFAULT_UNCERTAINTY_M));
    }

    /**
     * Returns a probed point on a straight edge, with a standard uncertainty of 20 &micro;m.
     *
     * @param start start of the edge in the drawing
     * @param end end of the edge in the drawing
     * @param probed point on the machine, anywhere on the line of the edge
     * @return the probed point
     */
    public static ProbedPoint edge(Point start, Point end, Point probed) {
        Objects.requireNonNull(start, "start");
        return new ProbedPoint(
                Feature.EDGE, start, end, Kind.LENGTH.of(0), probed, Kind.LENGTH.of(DEFAULT_UNCERTAINTY_M));
    }

    /**
     * Returns a probed point on the wall of a hole or boss, with a standard uncertainty of 20 &micro;m.
     *
     * @param centre centre in the drawing
     * @param radius radius in the drawing, above 0
     * @param probed point on the machine, anywhere on the wall
     * @return the probed point
     */
    public static ProbedPoint wall(Point centre, Quantity<Length> radius, Point probed) {
        Objects.requireNonNull(centre, "centre");
        Objects.requireNonNull(radius, "radius");
        return new ProbedPoint(Feature.WALL, centre, centre, radius, probed, Kind.LENGTH.of(DEFAULT_UNCERTAINTY_M));
    }

    /**
     * Returns this point with another uncertainty.
     *
     * @param other standard uncertainty, above 0
     * @return the point with that uncertainty
     */
    public ProbedPoint withUncertainty(Quantity<Length> other) {
        Objects.requireNonNull(other, "other");
        return new ProbedPoint(feature, known, end, radius, probed, other);
    }

    /** Number of coordinates that it fixes. */
    int equations() {
        return feature == Feature.HOLE ? 2 : 1;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("probed point")
                .put("feature", feature)
                .put("known", known)
                .put("end", end)
                .put("radius", Kind.LENGTH, Kind.LENGTH.si(radius))
                .put("probed", probed)
                .put("uncertainty", Kind.LENGTH, Kind.LENGTH.si(uncertainty))
                .map();
    }

    @Override
    public String toString() {
        return feature.label() + " probed at " + probed;
    }
}
