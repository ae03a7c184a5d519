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
import java.util.function.Consumer;
import javax.measure.Quantity;
import javax.measure.quantity.Acceleration;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import org.jspecify.annotations.Nullable;

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

    /** Checked content, and the serial form. An absent limit is null. */
    private record Values(
            double speedX,
            double speedY,
            double accelerationX,
            double accelerationY,
            @Nullable Double jerkX,
            @Nullable Double jerkY,
            @Nullable Double pathAcceleration,
            @Nullable Double pathJerk,
            CornerRule.Kind corner,
            double deviationM,
            @Nullable Double jumpX,
            @Nullable Double jumpY,
            double minimumFeed)
            implements Serializable {

        Values {
            speedX = Require.positive("maximum speed of the x axis", speedX, Units.METRE_PER_SECOND);
            speedY = Require.positive("maximum speed of the y axis", speedY, Units.METRE_PER_SECOND);
            accelerationX =
                    Require.positive("acceleration of the x axis", accelerationX, Units.METRE_PER_SQUARE_SECOND);
            accelerationY =
                    Require.positive("acceleration of the y axis", accelerationY, Units.METRE_PER_SQUARE_SECOND);
            jerkX = optional("jerk of the x axis", jerkX, Kind.JERK);
            jerkY = optional("jerk of the y axis", jerkY, Kind.JERK);
            pathAcceleration = optional("acceleration along the path", pathAcceleration, Kind.ACCELERATION);
            pathJerk = optional("jerk", pathJerk, Kind.JERK);
            Objects.requireNonNull(corner, "corner");
            deviationM = Require.positive("deviation at a corner", deviationM, Units.MILLIMETRE);
            jumpX = optional("jump of the speed of the x axis", jumpX, Kind.SPEED);
            jumpY = optional("jump of the speed of the y axis", jumpY, Kind.SPEED);
            minimumFeed = Require.notNegative("minimum feed rate", minimumFeed, Units.MILLIMETRE_PER_MINUTE);
        }

        private static @Nullable Double optional(String name, @Nullable Double si, Kind<?> kind) {
            return si == null ? null : Require.positive(name, si, kind.siUnit());
        }

        private Object readResolve() {
            return new MachineLimits(this);
        }
    }

    /** Values in which one can be changed. */
    private static final class Draft {

        double speedX;
        double speedY;
        double accelerationX;
        double accelerationY;

        @Nullable
        Double jerkX;

        @Nullable
        Double jerkY;

        @Nullable
        Double pathAcceleration;

        @Nullable
        Double pathJerk;

        CornerRule.Kind corner;
        double deviationM;

        @Nullable
        Double jumpX;

        @Nullable
        Double jumpY;

        double minimumFeed;

        Draft(Values from) {
            speedX = from.speedX;
            speedY = from.speedY;
            accelerationX = from.accelerationX;
            accelerationY = from.accelerationY;
            jerkX = from.jerkX;
            jerkY = from.jerkY;
            pathAcceleration = from.pathAcceleration;
            pathJerk = from.pathJerk;
            corner = from.corner;
            deviationM = from.deviationM;
            jumpX = from.jumpX;
            jumpY = from.jumpY;
            minimumFeed = from.minimumFeed;
        }

        Values values() {
            return new Values(
                    speedX,
                    speedY,
                    accelerationX,
                    accelerationY,
                    jerkX,
                    jerkY,
                    pathAcceleration,
                    pathJerk,
                    corner,
                    deviationM,
                    jumpX,
                    jumpY,
                    minimumFeed);
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
        double v = Kind.SPEED.si(speed);
        double a = Kind.ACCELERATION.si(acceleration);
        return new MachineLimits(new Values(
                v,
                v,
                a,
                a,
                null,
                null,
                null,
                null,
                CornerRule.Kind.ARC,
                DEFAULT_DEVIATION_M,
                null,
                null,
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
        return with(draft -> {
            draft.speedX = Kind.SPEED.si(x);
            draft.speedY = Kind.SPEED.si(y);
        });
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
        return with(draft -> {
            draft.accelerationX = Kind.ACCELERATION.si(x);
            draft.accelerationY = Kind.ACCELERATION.si(y);
        });
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
        return with(draft -> {
            draft.jerkX = Kind.JERK.si(x);
            draft.jerkY = Kind.JERK.si(y);
        });
    }

    /**
     * Returns these limits with a limit of acceleration along the path, beside those of the axes.
     *
     * @param acceleration maximum rate of change of the feed rate, above 0
     * @return the limits with that acceleration
     */
    public MachineLimits withPathAcceleration(Quantity<Acceleration> acceleration) {
        Objects.requireNonNull(acceleration, "acceleration");
        return with(draft -> draft.pathAcceleration = Kind.ACCELERATION.si(acceleration));
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
        return with(draft -> draft.pathJerk = Kind.JERK.si(jerk));
    }

    /**
     * Returns these limits with another minimum feed rate. A plan that requires less runs at this one and has a finding.
     *
     * @param feed minimum feed rate that the machine keeps evenly, 0 or more
     * @return the limits with that feed rate
     */
    public MachineLimits withMinimumFeed(Quantity<Speed> feed) {
        Objects.requireNonNull(feed, "feed");
        return with(draft -> draft.minimumFeed = Kind.SPEED.si(feed));
    }

    private MachineLimits with(Consumer<Draft> change) {
        Draft draft = new Draft(values);
        change.accept(draft);
        return new MachineLimits(draft.values());
    }

    private MachineLimits withCorner(
            CornerRule.Kind rule, double deviationM, @Nullable Double jumpX, @Nullable Double jumpY) {
        return with(draft -> {
            draft.corner = rule;
            draft.deviationM = deviationM;
            draft.jumpX = jumpX;
            draft.jumpY = jumpY;
        });
    }

    /**
     * Returns these limits for a control that rounds corners by a tangent arc within a deviation.
     *
     * @param deviation maximum distance from the corner, above 0
     * @return the limits with that rule
     */
    public MachineLimits withCornerDeviation(Quantity<Length> deviation) {
        Objects.requireNonNull(deviation, "deviation");
        return withCorner(CornerRule.Kind.ARC, Kind.LENGTH.si(deviation), null, null);
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
        return withCorner(CornerRule.Kind.PULSE, Kind.LENGTH.si(deviation), null, null);
    }

    /**
     * {@return these limits for a control that stops at each corner which it cannot round within its deviation at full
     * feed rate}
     */
    public MachineLimits withStopAtCorners() {
        return withCorner(CornerRule.Kind.STOP, values.deviationM, null, null);
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
        return withCorner(CornerRule.Kind.JUMP, values.deviationM, Kind.SPEED.si(x), Kind.SPEED.si(y));
    }

    /** {@return the maximum jerk along and across the path; empty if it has no limit} */
    public Optional<Quantity<Jerk>> jerk() {
        return Optional.ofNullable(values.pathJerk).map(Kind.JERK::of);
    }

    /** {@return the minimum feed rate that the machine keeps evenly} */
    public Quantity<Speed> minimumFeed() {
        return Kind.SPEED.of(values.minimumFeed);
    }

    /** {@return the maximum distance of the motion from a corner of the path} */
    public Quantity<Length> cornerDeviation() {
        return Kind.LENGTH.of(values.deviationM);
    }

    double minimumFeedSi() {
        return values.minimumFeed;
    }

    DynamicLimits dynamics() {
        double jerk = orInfinite(values.pathJerk);
        return new DynamicLimits(
                new AxisLimits(values.speedX, values.accelerationX, orInfinite(values.jerkX)),
                new AxisLimits(values.speedY, values.accelerationY, orInfinite(values.jerkY)),
                new PathLimits(orInfinite(values.pathAcceleration), Double.POSITIVE_INFINITY, jerk, jerk),
                new CornerRule(values.corner, values.deviationM, orInfinite(values.jumpX), orInfinite(values.jumpY)));
    }

    private static double orInfinite(@Nullable Double limit) {
        return limit == null ? Double.POSITIVE_INFINITY : limit;
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("machine limits")
                .put("speed_x", Kind.SPEED, values.speedX)
                .put("speed_y", Kind.SPEED, values.speedY)
                .put("acceleration_x", Kind.ACCELERATION, values.accelerationX)
                .put("acceleration_y", Kind.ACCELERATION, values.accelerationY)
                .put("corner_rule", values.corner)
                .put("corner_deviation", Kind.LENGTH, values.deviationM)
                .put("minimum_feed", Kind.SPEED, values.minimumFeed);
        put(description, "jerk_x", Kind.JERK, values.jerkX);
        put(description, "jerk_y", Kind.JERK, values.jerkY);
        put(description, "path_acceleration", Kind.ACCELERATION, values.pathAcceleration);
        put(description, "jerk", Kind.JERK, values.pathJerk);
        put(description, "corner_jump_x", Kind.SPEED, values.jumpX);
        put(description, "corner_jump_y", Kind.SPEED, values.jumpY);
        return description.map();
    }

    private static void put(Description description, String key, Kind<?> kind, @Nullable Double si) {
        if (si != null) {
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
        return "machine, axes up to " + QuantityText.forPeople(Kind.SPEED, Kind.SPEED.of(values.speedX)) + " and "
                + QuantityText.forPeople(Kind.SPEED, Kind.SPEED.of(values.speedY));
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
