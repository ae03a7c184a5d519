package dev.waterjet.motion;

import java.io.Serializable;

/**
 * Dynamic limits of the motion along the path whatever its direction, in SI. A limit that the machine does not have is
 * infinite.
 *
 * @param accelerationMPerS2 maximum rate of change of the feed, above 0
 * @param centripetalMPerS2 maximum centripetal acceleration on arcs and in corners, above 0
 * @param jerkMPerS3 maximum rate of change of the tangential acceleration, above 0
 * @param vectorJerkMPerS3 maximum magnitude of the jerk vector in steady motion on an arc, where the acceleration turns at
 *     a constant magnitude, and in the transition at a joint or corner, above 0
 */
record PathLimits(double accelerationMPerS2, double centripetalMPerS2, double jerkMPerS3, double vectorJerkMPerS3)
        implements Serializable {

    /** A path without limits of its own. */
    static final PathLimits NONE = new PathLimits(
            Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

    PathLimits {
        AxisLimits.requireAboveZero("maximum acceleration along the path", accelerationMPerS2);
        AxisLimits.requireAboveZero("maximum centripetal acceleration", centripetalMPerS2);
        AxisLimits.requireAboveZero("maximum jerk along the path", jerkMPerS3);
        AxisLimits.requireAboveZero("maximum magnitude of the jerk", vectorJerkMPerS3);
    }

    static PathLimits ofAcceleration(double accelerationMPerS2) {
        return new PathLimits(
                accelerationMPerS2, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    PathLimits withAcceleration(double acceleration) {
        return new PathLimits(acceleration, centripetalMPerS2, jerkMPerS3, vectorJerkMPerS3);
    }

    PathLimits withCentripetal(double centripetal) {
        return new PathLimits(accelerationMPerS2, centripetal, jerkMPerS3, vectorJerkMPerS3);
    }

    PathLimits withJerk(double jerk) {
        return new PathLimits(accelerationMPerS2, centripetalMPerS2, jerk, vectorJerkMPerS3);
    }

    PathLimits withVectorJerk(double vectorJerk) {
        return new PathLimits(accelerationMPerS2, centripetalMPerS2, jerkMPerS3, vectorJerk);
    }
}
