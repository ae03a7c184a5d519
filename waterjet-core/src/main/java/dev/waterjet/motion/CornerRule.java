package dev.waterjet.motion;

import java.io.Serializable;
import java.util.Objects;

/**
 * Rule by which a machine passes a corner of its path. It is a property of the machine's control.
 *
 * @param kind kind of rule
 * @param deviationM distance by which the machine may leave the drawn path at a corner or at a joint of different
 *     curvature, in m, above 0
 * @param jumpXMPerS change of the x axis' speed that the rule {@link Kind#JUMP} allows, in m/s, above 0
 * @param jumpYMPerS change of the y axis' speed that the rule {@link Kind#JUMP} allows, in m/s, above 0
 */
record CornerRule(Kind kind, double deviationM, double jumpXMPerS, double jumpYMPerS) implements Serializable {

    /** Kinds of corner rule. */
    enum Kind {
        /** The machine stops at each corner that it cannot round within the deviation without slowing down. */
        STOP,
        /** The machine runs a tangent arc within the deviation. Its acceleration jumps at the ends of the arc. */
        ARC,
        /** The machine adds a pulse of acceleration across the corner, within the deviation and the jerk limit. */
        PULSE,
        /** The speed of each axis changes at once by no more than a given amount. */
        JUMP
    }

    CornerRule {
        Objects.requireNonNull(kind, "kind");
        AxisLimits.requireAboveZero("deviation at a corner", deviationM);
        AxisLimits.requireAboveZero("change of the x axis' speed at a corner", jumpXMPerS);
        AxisLimits.requireAboveZero("change of the y axis' speed at a corner", jumpYMPerS);
    }

    static CornerRule stop(double deviationM) {
        return new CornerRule(Kind.STOP, deviationM, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    static CornerRule arc(double deviationM) {
        return new CornerRule(Kind.ARC, deviationM, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    static CornerRule pulse(double deviationM) {
        return new CornerRule(Kind.PULSE, deviationM, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    static CornerRule jump(double deviationM, double jumpXMPerS, double jumpYMPerS) {
        return new CornerRule(Kind.JUMP, deviationM, jumpXMPerS, jumpYMPerS);
    }
}
