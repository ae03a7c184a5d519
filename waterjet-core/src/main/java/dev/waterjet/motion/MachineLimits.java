package dev.waterjet.motion;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Jerk;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Acceleration;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * What the machine can follow: speed and acceleration of each axis, and where wanted jerk along the path. They are those
 * of the machine as it is set up; its manual and its maker say which.
 */
public final class MachineLimits implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Share of the acceleration that may be spent across the path: 0.6 of it is then left along the path. */
    private static final double ACROSS_SHARE = 0.8;

    private static final double USUAL_DEVIATION_M = 1e-5;

    private final double speedXMPerS;
    private final double speedYMPerS;
    private final double accelerationXMPerS2;
    private final double accelerationYMPerS2;
    private final double jerkMPerS3;
    private final double deviationM;
    private final double leastFeedMPerS;

    private MachineLimits(double[] values) {
        this.speedXMPerS = Require.positive("greatest speed of the x axis", values[0], Units.METRE_PER_SECOND);
        this.speedYMPerS = Require.positive("greatest speed of the y axis", values[1], Units.METRE_PER_SECOND);
        this.accelerationXMPerS2 =
                Require.positive("acceleration of the x axis", values[2], Units.METRE_PER_SQUARE_SECOND);
        this.accelerationYMPerS2 =
                Require.positive("acceleration of the y axis", values[3], Units.METRE_PER_SQUARE_SECOND);
        this.jerkMPerS3 = values[4];
        this.deviationM = Require.positive("deviation in rounding a corner", values[5], Units.MILLIMETRE);
        this.leastFeedMPerS = Require.notNegative("least feed", values[6], Units.MILLIMETRE_PER_MINUTE);
    }

    /**
     * Two equal axes, without a limit of jerk. Corners are rounded within 0.01 mm and no feed falls below 1 mm/min
     * (common practice, no source); both can be changed.
     *
     * @param speed greatest speed of each axis
     * @param acceleration greatest acceleration of each axis
     * @return the limits
     */
    public static MachineLimits of(Quantity<Speed> speed, Quantity<Acceleration> acceleration) {
        double v = Kind.SPEED.si(speed);
        double a = Kind.ACCELERATION.si(acceleration);
        return new MachineLimits(new double[] {v, v, a, a, Double.POSITIVE_INFINITY, USUAL_DEVIATION_M, 0.001 / 60});
    }

    /**
     * These limits with axes of different speed.
     *
     * @param x greatest speed of the x axis
     * @param y greatest speed of the y axis
     * @return the limits with those speeds
     */
    public MachineLimits withAxisSpeeds(Quantity<Speed> x, Quantity<Speed> y) {
        double[] values = values();
        values[0] = Kind.SPEED.si(x);
        values[1] = Kind.SPEED.si(y);
        return new MachineLimits(values);
    }

    /**
     * These limits with axes of different acceleration.
     *
     * @param x greatest acceleration of the x axis
     * @param y greatest acceleration of the y axis
     * @return the limits with those accelerations
     */
    public MachineLimits withAxisAccelerations(Quantity<Acceleration> x, Quantity<Acceleration> y) {
        double[] values = values();
        values[2] = Kind.ACCELERATION.si(x);
        values[3] = Kind.ACCELERATION.si(y);
        return new MachineLimits(values);
    }

    /**
     * These limits with a limit of jerk along the path: acceleration then rises and falls in ramps.
     *
     * @param jerk greatest jerk along the path, above 0
     * @return the limits with that jerk
     */
    public MachineLimits withJerk(Quantity<Jerk> jerk) {
        double[] values = values();
        values[4] = Require.positive("jerk", Kind.JERK.si(jerk), Kind.JERK.siUnit());
        return new MachineLimits(values);
    }

    /**
     * These limits with another rounding of corners.
     *
     * @param deviation how far the machine may pass from a corner in rounding it, above 0
     * @return the limits with that deviation
     */
    public MachineLimits withCornerDeviation(Quantity<Length> deviation) {
        double[] values = values();
        values[5] = Kind.LENGTH.si(deviation);
        return new MachineLimits(values);
    }

    /**
     * These limits with another least feed. A path that would ask for less is refused.
     *
     * @param feed slowest feed that the machine keeps evenly, 0 or more
     * @return the limits with that least feed
     */
    public MachineLimits withMinimumFeed(Quantity<Speed> feed) {
        double[] values = values();
        values[6] = Kind.SPEED.si(feed);
        return new MachineLimits(values);
    }

    private double[] values() {
        return new double[] {
            speedXMPerS, speedYMPerS, accelerationXMPerS2, accelerationYMPerS2, jerkMPerS3, deviationM, leastFeedMPerS
        };
    }

    /**
     * Greatest jerk along the path.
     *
     * @return the jerk, in m/s3; empty if it has no limit
     */
    public Optional<Quantity<Jerk>> jerk() {
        return hasJerk() ? Optional.of(Kind.JERK.of(jerkMPerS3)) : Optional.empty();
    }

    /**
     * Slowest feed that the machine keeps evenly.
     *
     * @return the feed, in m/s
     */
    public Quantity<Speed> minimumFeed() {
        return Kind.SPEED.of(leastFeedMPerS);
    }

    /**
     * Greatest acceleration across the path, on arcs and in rounding corners: 0.8 of that of the weaker axis, so that
     * 0.6 of it is left along the path.
     *
     * @return the acceleration, in m/s2
     */
    public Quantity<Acceleration> centripetalAcceleration() {
        return Kind.ACCELERATION.of(acrossSi());
    }

    boolean hasJerk() {
        return jerkMPerS3 < Double.POSITIVE_INFINITY;
    }

    double jerkSi() {
        return jerkMPerS3;
    }

    double speedXSi() {
        return speedXMPerS;
    }

    double speedYSi() {
        return speedYMPerS;
    }

    double accelerationXSi() {
        return accelerationXMPerS2;
    }

    double accelerationYSi() {
        return accelerationYMPerS2;
    }

    double acrossSi() {
        return ACROSS_SHARE * Math.min(accelerationXMPerS2, accelerationYMPerS2);
    }

    double deviationSi() {
        return deviationM;
    }

    double minimumFeedSi() {
        return leastFeedMPerS;
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("machine limits")
                .put("speed_x", Kind.SPEED, speedXMPerS)
                .put("speed_y", Kind.SPEED, speedYMPerS)
                .put("acceleration_x", Kind.ACCELERATION, accelerationXMPerS2)
                .put("acceleration_y", Kind.ACCELERATION, accelerationYMPerS2)
                .put("corner_deviation", Kind.LENGTH, deviationM)
                .put("least_feed", Kind.SPEED, leastFeedMPerS);
        return (hasJerk() ? description.put("jerk", Kind.JERK, jerkMPerS3) : description).map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MachineLimits that && Arrays.equals(values(), that.values());
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(values());
    }

    @Override
    public String toString() {
        return describe().toString();
    }
}
