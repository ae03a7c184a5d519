package dev.waterjet.motion;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Jerk;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Acceleration;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Limits of a machine: speed and acceleration of each axis, jerk, and the rule by which its control passes corners. They are
 * those of the machine as it is set up; its manual and its maker state them.
 *
 * <pre>{@code
 * MachineLimits machine = MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(0.5))
 *         .withJerk(Kind.JERK.of(5))
 *         .withCornerDeviation(millimetres(0.02));
 * }</pre>
 *
 * <p>On an arc the acceleration of each axis is that of the tangential and the centripetal part together.
 */
public final class MachineLimits implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Common practice, no source. */
    private static final double DEFAULT_DEVIATION_M = 1e-5;

    private static final double DEFAULT_MINIMUM_FEED_M_PER_S = 0.001 / 60;

    /** Checked content, and the serial form. */
    private record Values(DynamicLimits dynamics, double minimumFeed) implements Serializable {

        Values {
            finite("x", dynamics.x());
            finite("y", dynamics.y());
            Require.finite("deviation at a corner", dynamics.corner().deviationM(), Units.MILLIMETRE);
            minimumFeed = Require.notNegative("minimum feed rate", minimumFeed, Units.MILLIMETRE_PER_MINUTE);
        }

        private static void finite(String axis, AxisLimits limits) {
            Require.finite("maximum speed of the " + axis + " axis", limits.speedMPerS(), Units.METRE_PER_SECOND);
            Require.finite(
                    "acceleration of the " + axis + " axis",
                    limits.accelerationMPerS2(),
                    Units.METRE_PER_SQUARE_SECOND);
        }

        private Object readResolve() {
            return new MachineLimits(this);
        }
    }

    private final transient Values values;

    private MachineLimits(Values values) {
        this.values = values;
    }

    /**
     * Returns the limits of a machine with two equal axes and without a limit of jerk. Its control rounds corners within
     * 0.01 mm by an arc, and keeps feed rates from 1 mm/min on (both common practice, no source).
     *
     * @param speed maximum speed of each axis, above 0
     * @param acceleration maximum acceleration of each axis, above 0
     * @return the limits
     */
    public static MachineLimits of(Quantity<Speed> speed, Quantity<Acceleration> acceleration) {
        Objects.requireNonNull(acceleration, "acceleration");
        Objects.requireNonNull(speed, "speed");
        AxisLimits axis = AxisLimits.NONE
                .withSpeed(positive("maximum speed of an axis", Kind.SPEED, speed))
                .withAcceleration(positive("acceleration of an axis", Kind.ACCELERATION, acceleration));
        return new MachineLimits(new Values(
                new DynamicLimits(axis, axis, PathLimits.NONE, CornerRule.arc(DEFAULT_DEVIATION_M)),
                DEFAULT_MINIMUM_FEED_M_PER_S));
    }

    /**
     * Returns these limits with axes of different speed.
     *
     * @param x maximum speed of the x axis, above 0
     * @param y maximum speed of the y axis, above 0
     * @return the limits with those speeds
     */
    public MachineLimits withAxisSpeeds(Quantity<Speed> x, Quantity<Speed> y) {
        Objects.requireNonNull(x, "x");
        Objects.requireNonNull(y, "y");
        DynamicLimits old = values.dynamics;
        return with(old.withAxes(
                old.x().withSpeed(positive("maximum speed of the x axis", Kind.SPEED, x)),
                old.y().withSpeed(positive("maximum speed of the y axis", Kind.SPEED, y))));
    }

    /**
     * Returns these limits with axes of different acceleration.
     *
     * @param x maximum acceleration of the x axis, above 0
     * @param y maximum acceleration of the y axis, above 0
     * @return the limits with those accelerations
     */
    public MachineLimits withAxisAccelerations(Quantity<Acceleration> x, Quantity<Acceleration> y) {
        Objects.requireNonNull(x, "x");
        Objects.requireNonNull(y, "y");
        DynamicLimits old = values.dynamics;
        return with(old.withAxes(
                old.x().withAcceleration(positive("acceleration of the x axis", Kind.ACCELERATION, x)),
                old.y().withAcceleration(positive("acceleration of the y axis", Kind.ACCELERATION, y))));
    }

    /**
     * Returns these limits with a limit of jerk for each axis.
     *
     * @param x maximum jerk of the x axis, above 0
     * @param y maximum jerk of the y axis, above 0
     * @return the limits with those jerks
     */
    public MachineLimits withAxisJerks(Quantity<Jerk> x, Quantity<Jerk> y) {
        Objects.requireNonNull(x, "x");
        Objects.requireNonNull(y, "y");
        DynamicLimits old = values.dynamics;
        return with(old.withAxes(
                old.x().withJerk(positive("jerk of the x axis", Kind.JERK, x)),
                old.y().withJerk(positive("jerk of the y axis", Kind.JERK, y))));
    }

    /**
     * Returns these limits with a limit of acceleration along the path, beside those of the axes.
     *
     * @param acceleration maximum rate of change of the feed rate, above 0
     * @return the limits with that acceleration
     */
    public MachineLimits withPathAcceleration(Quantity<Acceleration> acceleration) {
        Objects.requireNonNull(acceleration, "acceleration");
        double limit = positive("acceleration along the path", Kind.ACCELERATION, acceleration);
        return with(values.dynamics.withPath(values.dynamics.path().withAcceleration(limit)));
    }

    /**
     * Returns these limits with a limit of jerk along and across the path: acceleration rises and falls in ramps, also
     * where it turns on an arc or at a corner.
     *
     * @param jerk maximum jerk, above 0
     * @return the limits with that jerk
     */
    public MachineLimits withJerk(Quantity<Jerk> jerk) {
        Objects.requireNonNull(jerk, "jerk");
        double limit = positive("jerk", Kind.JERK, jerk);
        return with(
                values.dynamics.withPath(values.dynamics.path().withJerk(limit).withVectorJerk(limit)));
    }

    /**
     * Returns these limits with another minimum feed rate. A plan that requires less runs at this one and has a finding.
     *
     * @param feed minimum feed rate that the machine keeps evenly, 0 or more
     * @return the limits with that feed rate
     */
    public MachineLimits withMinimumFeed(Quantity<Speed> feed) {
        Objects.requireNonNull(feed, "feed");
        return new MachineLimits(new Values(values.dynamics, Kind.SPEED.si(feed)));
    }

    private MachineLimits with(DynamicLimits dynamics) {
        return new MachineLimits(new Values(dynamics, values.minimumFeed));
    }

    private static <Q extends Quantity<Q>> double positive(String name, Kind<Q> kind, Quantity<Q> limit) {
        return Require.positive(name, kind.si(limit), kind.siUnit());
    }

    private static double deviation(Quantity<Length> deviation) {
        return Require.positive("deviation at a corner", Kind.LENGTH.si(deviation), Units.MILLIMETRE);
    }

    /**
     * Returns these limits for a control that rounds corners by a tangent arc within a deviation.
     *
     * @param deviation maximum distance from the corner, above 0
     * @return the limits with that rule
     */
    public MachineLimits withCornerDeviation(Quantity<Length> deviation) {
        Objects.requireNonNull(deviation, "deviation");
        return with(values.dynamics.withCorner(CornerRule.arc(deviation(deviation))));
    }

    /**
     * Returns these limits for a control that blends corners by a pulse of acceleration within a deviation: with a limit of
     * jerk the pulse rises and falls in ramps.
     *
     * @param deviation maximum distance from the corner, above 0
     * @return the limits with that rule
     */
    public MachineLimits withCornerPulse(Quantity<Length> deviation) {
        Objects.requireNonNull(deviation, "deviation");
        return with(values.dynamics.withCorner(CornerRule.pulse(deviation(deviation))));
    }

    /**
     * {@return these limits for a control that stops at each corner which it cannot round within its deviation at full
     * feed rate}
     */
    public MachineLimits withStopAtCorners() {
        return with(values.dynamics.withCorner(
                CornerRule.stop(values.dynamics.corner().deviationM())));
    }

    /**
     * Returns these limits for a control that lets the speed of each axis jump at a corner.
     *
     * @param x maximum jump of the speed of the x axis, above 0
     * @param y maximum jump of the speed of the y axis, above 0
     * @return the limits with that rule
     */
    public MachineLimits withCornerJump(Quantity<Speed> x, Quantity<Speed> y) {
        Objects.requireNonNull(x, "x");
        Objects.requireNonNull(y, "y");
        return with(values.dynamics.withCorner(CornerRule.jump(
                values.dynamics.corner().deviationM(),
                positive("jump of the speed of the x axis", Kind.SPEED, x),
                positive("jump of the speed of the y axis", Kind.SPEED, y))));
    }

    /** {@return the maximum jerk along and across the path; empty if it has no limit} */
    public Optional<Quantity<Jerk>> jerk() {
        double jerk = values.dynamics.path().jerkMPerS3();
        return jerk < Double.POSITIVE_INFINITY ? Optional.of(Kind.JERK.of(jerk)) : Optional.empty();
    }

    /** {@return the minimum feed rate that the machine keeps evenly} */
    public Quantity<Speed> minimumFeed() {
        return Kind.SPEED.of(values.minimumFeed);
    }

    /** {@return the maximum distance of the motion from a corner of the path} */
    public Quantity<Length> cornerDeviation() {
        return Kind.LENGTH.of(values.dynamics.corner().deviationM());
    }

    double minimumFeedSi() {
        return values.minimumFeed;
    }

    DynamicLimits dynamics() {
        return values.dynamics;
    }

    @Override
    public Map<String, Object> describe() {
        AxisLimits x = values.dynamics.x();
        AxisLimits y = values.dynamics.y();
        PathLimits path = values.dynamics.path();
        CornerRule corner = values.dynamics.corner();
        Description description = Description.of("machine limits")
                .put("speed_x", Kind.SPEED, x.speedMPerS())
                .put("speed_y", Kind.SPEED, y.speedMPerS())
                .put("acceleration_x", Kind.ACCELERATION, x.accelerationMPerS2())
                .put("acceleration_y", Kind.ACCELERATION, y.accelerationMPerS2())
                .put("corner_rule", corner.kind())
                .put("corner_deviation", Kind.LENGTH, corner.deviationM())
                .put("minimum_feed", Kind.SPEED, values.minimumFeed);
        put(description, "jerk_x", Kind.JERK, x.jerkMPerS3());
        put(description, "jerk_y", Kind.JERK, y.jerkMPerS3());
        put(description, "path_acceleration", Kind.ACCELERATION, path.accelerationMPerS2());
        put(description, "jerk", Kind.JERK, path.jerkMPerS3());
        put(description, "corner_jump_x", Kind.SPEED, corner.jumpXMPerS());
        put(description, "corner_jump_y", Kind.SPEED, corner.jumpYMPerS());
        return description.map();
    }

    private static void put(Description description, String key, Kind<?> kind, double si) {
        if (si < Double.POSITIVE_INFINITY) {
            description.put(key, kind, si);
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MachineLimits that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "machine, axes up to "
                + QuantityText.forPeople(Kind.SPEED, values.dynamics.x().speed()) + " and "
                + QuantityText.forPeople(Kind.SPEED, values.dynamics.y().speed());
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
