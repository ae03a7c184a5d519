package dev.waterjet.motion;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/**
 * Dynamic limits of one axis, in SI. A limit that the axis does not have is infinite.
 *
 * @param speedMPerS maximum speed, above 0
 * @param accelerationMPerS2 maximum acceleration, above 0
 * @param jerkMPerS3 maximum jerk (rate of change of the acceleration), above 0
 */
record AxisLimits(double speedMPerS, double accelerationMPerS2, double jerkMPerS3) implements Serializable {

    /** An axis without limits. */
    static final AxisLimits NONE =
            new AxisLimits(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

    AxisLimits {
        requireAboveZero("maximum speed of an axis", speedMPerS);
        requireAboveZero("maximum acceleration of an axis", accelerationMPerS2);
        requireAboveZero("maximum jerk of an axis", jerkMPerS3);
    }

    AxisLimits withSpeed(double speed) {
        return new AxisLimits(speed, accelerationMPerS2, jerkMPerS3);
    }

    AxisLimits withAcceleration(double acceleration) {
        return new AxisLimits(speedMPerS, acceleration, jerkMPerS3);
    }

    AxisLimits withJerk(double jerk) {
        return new AxisLimits(speedMPerS, accelerationMPerS2, jerk);
    }

    Quantity<Speed> speed() {
        return Kind.SPEED.of(speedMPerS);
    }

    boolean hasAcceleration() {
        return accelerationMPerS2 < Double.POSITIVE_INFINITY;
    }

    boolean hasJerk() {
        return jerkMPerS3 < Double.POSITIVE_INFINITY;
    }

    boolean isLimited() {
        return speedMPerS < Double.POSITIVE_INFINITY || hasAcceleration() || hasJerk();
    }

    /** Requires a limit above zero; infinity is allowed and means that there is no such limit. */
    static void requireAboveZero(String name, double valueSi) {
        if (!(valueSi > 0)) {
            throw new DomainException(name, valueSi, "above", 0, Units.ONE, "in SI units; infinite if there is none");
        }
    }
}
