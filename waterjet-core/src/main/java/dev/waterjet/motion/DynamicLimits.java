package dev.waterjet.motion;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Objects;

/**
 * Everything that limits the motion of a machine: its axes, its path, its corner rule. Directions are unit vectors.
 *
 * @param x limits of the x axis
 * @param y limits of the y axis
 * @param path limits whatever the direction
 * @param corner rule by which corners are passed
 */
record DynamicLimits(AxisLimits x, AxisLimits y, PathLimits path, CornerRule corner) implements Serializable {

    DynamicLimits {
        Objects.requireNonNull(x, "x");
        Objects.requireNonNull(y, "y");
        Objects.requireNonNull(path, "path");
        Objects.requireNonNull(corner, "corner");
        boolean isLimited =
                path.accelerationMPerS2() < Double.POSITIVE_INFINITY || (x.hasAcceleration() && y.hasAcceleration());
        if (!isLimited) {
            throw new DomainException(
                    "maximum acceleration",
                    Double.POSITIVE_INFINITY,
                    "below",
                    Double.MAX_VALUE,
                    Units.METRE_PER_SQUARE_SECOND,
                    "along the path or on both axes");
        }
    }

    DynamicLimits withAxes(AxisLimits otherX, AxisLimits otherY) {
        return new DynamicLimits(otherX, otherY, path, corner);
    }

    DynamicLimits withPath(PathLimits other) {
        return new DynamicLimits(x, y, other, corner);
    }

    DynamicLimits withCorner(CornerRule other) {
        return new DynamicLimits(x, y, path, other);
    }

    /** Whether any limit of jerk shapes the motion along the path. */
    boolean hasJerk() {
        return path.jerkMPerS3() < Double.POSITIVE_INFINITY || x.hasJerk() || y.hasJerk();
    }

    /** Whether the limits on an arc depend on its direction. */
    boolean hasAxisLimits() {
        return x.isLimited() || y.isLimited();
    }

    double axisSpeed(double tx, double ty) {
        return Math.min(x.speedMPerS() / Math.abs(tx), y.speedMPerS() / Math.abs(ty));
    }

    GoverningLimit axisSpeedLimit(double tx, double ty) {
        return x.speedMPerS() / Math.abs(tx) <= y.speedMPerS() / Math.abs(ty)
                ? GoverningLimit.X_SPEED
                : GoverningLimit.Y_SPEED;
    }

    /** Acceleration along a straight path. */
    double tangentialAcceleration(double tx, double ty) {
        return Math.min(
                path.accelerationMPerS2(),
                Math.min(x.accelerationMPerS2() / Math.abs(tx), y.accelerationMPerS2() / Math.abs(ty)));
    }

    GoverningLimit tangentialAccelerationLimit(double tx, double ty) {
        double byX = x.accelerationMPerS2() / Math.abs(tx);
        double byY = y.accelerationMPerS2() / Math.abs(ty);
        if (path.accelerationMPerS2() <= Math.min(byX, byY)) {
            return GoverningLimit.PATH_ACCELERATION;
        }
        return byX <= byY ? GoverningLimit.X_ACCELERATION : GoverningLimit.Y_ACCELERATION;
    }

    /** Jerk along a straight path. */
    double tangentialJerk(double tx, double ty) {
        return Math.min(path.jerkMPerS3(), Math.min(x.jerkMPerS3() / Math.abs(tx), y.jerkMPerS3() / Math.abs(ty)));
    }

    GoverningLimit tangentialJerkLimit(double tx, double ty) {
        double byX = x.jerkMPerS3() / Math.abs(tx);
        double byY = y.jerkMPerS3() / Math.abs(ty);
        if (path.jerkMPerS3() <= Math.min(byX, byY)) {
            return GoverningLimit.PATH_JERK;
        }
        return byX <= byY ? GoverningLimit.X_JERK : GoverningLimit.Y_JERK;
    }

    /** Acceleration across the path, in the direction of the normal. */
    double normalAcceleration(double nx, double ny) {
        return Math.min(
                path.centripetalMPerS2(),
                Math.min(x.accelerationMPerS2() / Math.abs(nx), y.accelerationMPerS2() / Math.abs(ny)));
    }

    /** Jerk across the path, in the direction of the normal. */
    double normalJerk(double nx, double ny) {
        return Math.min(
                path.vectorJerkMPerS3(), Math.min(x.jerkMPerS3() / Math.abs(nx), y.jerkMPerS3() / Math.abs(ny)));
    }
}
