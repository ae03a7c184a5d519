package dev.waterjet.motion;

import org.apache.commons.math3.util.FastMath;

/** Speeding up and slowing down along a length, in m, s. Ramps with jerk start and end without acceleration. */
final class RampKernel {

    private RampKernel() {}

    /** Peak of a trapezoid between two speeds over a length: sqrt((2 a1 a2 s + a2 v0^2 + a1 v1^2)/(a1 + a2)). */
    static double trapezoidPeak(double v0, double v1, double up, double down, double lengthM) {
        return Math.sqrt((2 * up * down * lengthM + down * v0 * v0 + up * v1 * v1) / (up + down));
    }

    /** Radius that rounds a corner within a deviation e: e sin(T/2)/(1 - sin(T/2)), T the angle between the edges. */
    static double roundingRadius(double deviationM, double sineOfHalfInteriorAngle) {
        return deviationM * sineOfHalfInteriorAngle / (1 - sineOfHalfInteriorAngle);
    }

    /** Time of a ramp with jerk between two speeds. */
    static double rampTime(double v0, double v1, double acceleration, double jerk) {
        double change = Math.abs(v1 - v0);
        return change * jerk >= acceleration * acceleration
                ? change / acceleration + acceleration / jerk
                : 2 * Math.sqrt(change / jerk);
    }

    /** Length of a ramp with jerk: its mean speed lies midway. */
    static double rampLength(double v0, double v1, double acceleration, double jerk) {
        return (v0 + v1) / 2 * rampTime(v0, v1, acceleration, jerk);
    }

    /** Fastest speed that a ramp with jerk reaches from a speed over a length. */
    static double rampReach(double v0, double lengthM, double acceleration, double jerk) {
        double change = acceleration * acceleration / jerk;
        double fullLength = (2 * v0 + change) * acceleration / jerk;
        if (lengthM >= fullLength) {
            // (2 v0 + c)/2 (c/a + a/j) = s, solved for the change of speed c
            double linear = v0 + change / 2;
            double constant = 2 * acceleration * lengthM - 2 * v0 * change;
            return v0 + constant / (linear + Math.sqrt(linear * linear + constant));
        }
        // (2 v0 + c) sqrt(c/j) = s: with x = sqrt(c), x^3 + 2 v0 x = s sqrt(j) has one real root
        double right = lengthM * Math.sqrt(jerk);
        if (v0 <= 1e-12 * Math.cbrt(right * right)) {
            double root = Math.cbrt(right);
            return v0 + root * root;
        }
        double scale = Math.sqrt(2 * v0 / 3);
        double root = 2 * scale * FastMath.sinh(FastMath.asinh(right / (2 * scale * scale * scale)) / 3);
        return v0 + root * root;
    }

    /** Fastest speed up to a cap between two ramps with jerk over a length. The length must suffice for one ramp. */
    static double rampPeak(double v0, double v1, double cap, double lengthM, double acceleration, double jerk) {
        double low = Math.max(v0, v1);
        double high = cap;
        double over = spare(v0, v1, high, lengthM, acceleration, jerk);
        if (over >= 0) {
            return cap;
        }
        double under = spare(v0, v1, low, lengthM, acceleration, jerk);
        if (under <= 0) {
            return low;
        }
        // false position that halves the weight of an end kept twice (Illinois)
        int kept = 0;
        for (int i = 0; i < 100 && high - low > 1e-14 * high; i++) {
            double middle = low + (high - low) * (under / (under - over));
            if (!(middle > low && middle < high)) {
                middle = (low + high) / 2;
            }
            double spare = spare(v0, v1, middle, lengthM, acceleration, jerk);
            if (spare >= 0) {
                low = middle;
                under = spare;
                over = kept == 1 ? over / 2 : over;
                kept = 1;
                if (spare <= 1e-15 * lengthM) {
                    break;
                }
            } else {
                high = middle;
                over = spare;
                under = kept == -1 ? under / 2 : under;
                kept = -1;
            }
        }
        return low;
    }

    private static double spare(double v0, double v1, double peak, double lengthM, double acceleration, double jerk) {
        return lengthM - rampLength(v0, peak, acceleration, jerk) - rampLength(peak, v1, acceleration, jerk);
    }
}
