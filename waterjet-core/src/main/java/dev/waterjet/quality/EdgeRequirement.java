package dev.waterjet.quality;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Requirement of a drawing on a cut surface: a cut quality, and optional limits on lag, taper, roughness and the ranges of
 * ISO 9013. A limit that is not stated is absent. Immutable.
 *
 * <pre>{@code
 * EdgeRequirement seat = EdgeRequirement.of(CutQuality.FINE)
 *         .withLagTolerance(millimetres(0.05))
 *         .withTaper(degrees(0.5))
 *         .withRoughness(micrometres(6));
 * }</pre>
 */
public final class EdgeRequirement implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final EdgeRequirement DEFAULTS = of(CutQuality.MEDIUM);

    /** Optional limits, kept in SI. */
    @SuppressWarnings("ImmutableEnumChecker")
    private enum Limit {
        LAG_TOLERANCE("lag tolerance", Kind.LENGTH, Units.MILLIMETRE),
        OUTSIDE_CORNER_TOLERANCE("lag tolerance at outside corners", Kind.LENGTH, Units.MILLIMETRE),
        ARC_RADIUS("radius of the smallest arc", Kind.LENGTH, Units.MILLIMETRE),
        TAPER("taper per side", Kind.ANGLE, Units.DEGREE),
        ROUGHNESS("roughness Ra at the exit", Kind.LENGTH, Units.MICROMETRE),
        PERPENDICULARITY_RANGE("perpendicularity range", Kind.RATIO, Units.ONE),
        PROFILE_HEIGHT_RANGE("profile height range", Kind.RATIO, Units.ONE),
        MAXIMUM_FEED("maximum feed rate", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE);

        private final String label;
        private final Kind<?> kind;
        private final Unit<?> unit;

        Limit(String label, Kind<?> kind, Unit<?> unit) {
            this.label = label;
            this.kind = kind;
            this.unit = unit;
        }

        double checked(double si) {
            return switch (this) {
                case TAPER -> Require.notNegative(label, si, unit);
                case PERPENDICULARITY_RANGE -> range(si, Iso9013.perpendicularityRanges());
                case PROFILE_HEIGHT_RANGE -> range(si, Iso9013.profileHeightRanges());
                default -> Require.positive(label, si, unit);
            };
        }

        private double range(double number, int coarsest) {
            if (number != Math.rint(number) || !(number >= 1 && number <= coarsest)) {
                throw new DomainException(
                        Message.of("unknown-range", "{quantity} is {value}; ISO 9013 has the ranges 1 to {limit}"),
                        label,
                        number,
                        coarsest,
                        unit);
            }
            return number;
        }

        String text(double si) {
            String value = QuantityText.round(Units.fromSi(si, unit), 4);
            return label + " " + value + (unit == Units.ONE ? "" : " " + Units.symbol(unit));
        }
    }

    /** Checked content, and the serial form. */
    private record Values(CutQuality quality, Map<Limit, Double> limits, boolean isLead) implements Serializable {

        Values {
            Objects.requireNonNull(quality, "quality");
            Map<Limit, Double> checked = new EnumMap<>(Limit.class);
            limits.forEach((limit, si) -> checked.put(limit, limit.checked(si)));
            limits = Map.copyOf(checked);
        }

        private Object readResolve() {
            return new EdgeRequirement(this);
        }
    }

    private final transient Values values;

    private EdgeRequirement(Values values) {
        this.values = values;
    }

    /**
     * Makes a requirement of a cut quality alone.
     *
     * @param quality cut quality
     * @return the requirement
     */
    public static EdgeRequirement of(CutQuality quality) {
        return new EdgeRequirement(new Values(quality, Map.of(), false));
    }

    /** {@return the requirement on an unspecified edge: cut quality medium} */
    public static EdgeRequirement defaults() {
        return DEFAULTS;
    }

    private EdgeRequirement with(Limit limit, double si) {
        Map<Limit, Double> changed = new EnumMap<>(Limit.class);
        changed.putAll(values.limits);
        changed.put(limit, si);
        if (limit == Limit.LAG_TOLERANCE) {
            changed.remove(Limit.OUTSIDE_CORNER_TOLERANCE);
        }
        return new EdgeRequirement(new Values(values.quality, changed, values.isLead));
    }

    /**
     * Returns this requirement with another cut quality.
     *
     * @param quality cut quality
     * @return the requirement with that quality
     */
    public EdgeRequirement withQuality(CutQuality quality) {
        return new EdgeRequirement(new Values(quality, values.limits, values.isLead));
    }

    /**
     * Returns this requirement with a lag tolerance, at outside corners too.
     *
     * @param tolerance maximum distance of the bottom edge from the edge as drawn, on arcs and at corners, above 0
     * @return the requirement with that tolerance
     */
    public EdgeRequirement withLagTolerance(Quantity<Length> tolerance) {
        Objects.requireNonNull(tolerance, "tolerance");
        return with(Limit.LAG_TOLERANCE, Kind.LENGTH.si(tolerance));
    }

    /**
     * Returns this requirement with another lag tolerance at outside corners. Without it an outside corner is slowed as
     * much as an inside one, because the side to which the bottom of the cut swings there is unknown. If it lags along the
     * new direction, it passes through scrap and leaves the part alone. If it follows the tractrix model, it cuts the
     * corner off, at a right angle by 0.48 of the lag; an inside corner is notched by the whole lag (all derived). So twice
     * the tolerance at outside corners keeps the part within the tolerance by either model, up to a right angle.
     *
     * @param tolerance maximum distance of the bottom edge from an outside corner as drawn, above 0
     * @return the requirement with that tolerance
     */
    public EdgeRequirement withOutsideCornerTolerance(Quantity<Length> tolerance) {
        Objects.requireNonNull(tolerance, "tolerance");
        return with(Limit.OUTSIDE_CORNER_TOLERANCE, Kind.LENGTH.si(tolerance));
    }

    /**
     * Returns this requirement with the radius of the smallest arc on which the lag tolerance holds, for a feed rate that
     * is found without a contour. A planner of a contour reads the radius of each edge instead.
     *
     * @param radius radius of the smallest arc, above 0
     * @return the requirement with that radius
     */
    public EdgeRequirement withArcRadius(Quantity<Length> radius) {
        Objects.requireNonNull(radius, "radius");
        return with(Limit.ARC_RADIUS, Kind.LENGTH.si(radius));
    }

    /**
     * Returns this requirement with a maximum taper, to either side: the kerf is neither wider at the top nor at the bottom
     * by more.
     *
     * @param perSide maximum taper per side of an upright head, half of the included angle, 0 or more
     * @return the requirement with that taper
     */
    public EdgeRequirement withTaper(Quantity<Angle> perSide) {
        Objects.requireNonNull(perSide, "perSide");
        return with(Limit.TAPER, Kind.ANGLE.si(perSide));
    }

    /**
     * Returns this requirement with a maximum roughness at the exit.
     *
     * @param ra Ra, above 0
     * @return the requirement with that roughness
     */
    public EdgeRequirement withRoughness(Quantity<Length> ra) {
        Objects.requireNonNull(ra, "ra");
        return with(Limit.ROUGHNESS, Kind.LENGTH.si(ra));
    }

    /**
     * Returns this requirement with a range of ISO 9013 for perpendicularity, which applies by agreement.
     *
     * @param range 1, the finest, to 5
     * @return the requirement with that range
     */
    public EdgeRequirement withPerpendicularityRange(int range) {
        return with(Limit.PERPENDICULARITY_RANGE, range);
    }

    /**
     * Returns this requirement with a range of ISO 9013 for the mean profile height, which applies by agreement.
     *
     * @param range 1, the finest, to 4
     * @return the requirement with that range
     */
    public EdgeRequirement withProfileHeightRange(int range) {
        return with(Limit.PROFILE_HEIGHT_RANGE, range);
    }

    /**
     * Returns this requirement with a maximum feed rate.
     *
     * @param feed maximum feed rate, above 0
     * @return the requirement with that feed rate
     */
    public EdgeRequirement withMaximumFeed(Quantity<Speed> feed) {
        Objects.requireNonNull(feed, "feed");
        return with(Limit.MAXIMUM_FEED, Kind.SPEED.si(feed));
    }

    /**
     * Returns this requirement for a lead, which is cut in scrap at a feed rate that separates the material.
     *
     * @return the requirement of a lead
     */
    public EdgeRequirement asLead() {
        return new EdgeRequirement(new Values(values.quality, values.limits, true));
    }

    /** {@return the cut quality} */
    public CutQuality quality() {
        return values.quality;
    }

    /** {@return the lag tolerance, if one is stated} */
    public Optional<Quantity<Length>> lagTolerance() {
        return si(Limit.LAG_TOLERANCE).map(Kind.LENGTH::of);
    }

    /**
     * Returns the lag tolerance in a workpiece. If none is stated, it is the perpendicularity or angularity tolerance of
     * ISO 9013: range 1 for the finest cut quality to range 5 for the coarsest. The ranges are published; their use for this
     * purpose is a choice of this project, and their use for waterjet cuts needs agreement. The standard leaves out a strip
     * at both edges of the cut surface; here the tolerance holds over the whole height.
     *
     * @param thicknessM thickness of the workpiece in m, above 0
     * @return maximum distance of the bottom edge from the edge as drawn, in m: as stated, or 0.05 mm + 0.003 h,
     *     0.15 mm + 0.007 h, 0.4 mm + 0.01 h, 0.8 mm + 0.02 h or 1.2 mm + 0.035 h from the finest quality to the coarsest
     */
    public double lagToleranceSi(double thicknessM) {
        return si(Limit.LAG_TOLERANCE).orElseGet(() -> byQuality(thicknessM));
    }

    @SuppressWarnings("EnumOrdinal") // qualities are listed from the coarsest, ranges from the finest
    private double byQuality(double thicknessM) {
        int range = Iso9013.perpendicularityRanges() - values.quality.ordinal();
        return Kind.LENGTH.si(Iso9013.forThickness(Kind.LENGTH.of(thicknessM)).perpendicularityLimit(range));
    }

    /** {@return the lag tolerance at outside corners, if one is stated apart from the other} */
    public Optional<Quantity<Length>> outsideCornerTolerance() {
        return si(Limit.OUTSIDE_CORNER_TOLERANCE).map(Kind.LENGTH::of);
    }

    /**
     * Returns the lag tolerance at outside corners in a workpiece.
     *
     * @param thicknessM thickness of the workpiece in m, above 0
     * @return the tolerance in m; that of {@link #lagToleranceSi} if none is stated
     */
    public double outsideCornerToleranceSi(double thicknessM) {
        return si(Limit.OUTSIDE_CORNER_TOLERANCE).orElseGet(() -> lagToleranceSi(thicknessM));
    }

    /** {@return the radius of the smallest arc, if one is stated} */
    public Optional<Quantity<Length>> arcRadius() {
        return si(Limit.ARC_RADIUS).map(Kind.LENGTH::of);
    }

    /** {@return the maximum taper per side, if one is stated} */
    public Optional<Quantity<Angle>> taper() {
        return si(Limit.TAPER).map(Kind.ANGLE::of);
    }

    /** {@return the maximum roughness Ra at the exit, if one is stated} */
    public Optional<Quantity<Length>> roughness() {
        return si(Limit.ROUGHNESS).map(Kind.LENGTH::of);
    }

    /** {@return the range of ISO 9013 for perpendicularity, if one is stated} */
    public OptionalInt perpendicularityRange() {
        return range(Limit.PERPENDICULARITY_RANGE);
    }

    /** {@return the range of ISO 9013 for the mean profile height, if one is stated} */
    public OptionalInt profileHeightRange() {
        return range(Limit.PROFILE_HEIGHT_RANGE);
    }

    /** {@return the maximum feed rate, if one is stated} */
    public Optional<Quantity<Speed>> maximumFeed() {
        return si(Limit.MAXIMUM_FEED).map(Kind.SPEED::of);
    }

    /** {@return the maximum feed rate in m/s; infinite if none is stated} */
    public double maximumFeedSi() {
        return si(Limit.MAXIMUM_FEED).orElse(Double.POSITIVE_INFINITY);
    }

    /** {@return whether the edge is a lead} */
    public boolean isLead() {
        return values.isLead;
    }

    private Optional<Double> si(Limit limit) {
        return Optional.ofNullable(values.limits.get(limit));
    }

    private OptionalInt range(Limit limit) {
        Double number = values.limits.get(limit);
        return number == null ? OptionalInt.empty() : OptionalInt.of(number.intValue());
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("edge requirement").put("quality", values.quality);
        for (Limit limit : Limit.values()) {
            si(limit).ifPresent(si -> description.put(limit.name().toLowerCase(Locale.ROOT), limit.kind, si));
        }
        return description.put("lead", values.isLead).map();
    }

    @Override
    public boolean equals(Object other) {
        // a contour compares the requirements of neighbouring edges, which are nearly always the same object
        return this == other || (other instanceof EdgeRequirement that && values.equals(that.values));
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(values.quality.label());
        for (Limit limit : Limit.values()) {
            si(limit).ifPresent(si -> text.append(", ").append(limit.text(si)));
        }
        return text.append(values.isLead ? ", lead" : "").toString();
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
