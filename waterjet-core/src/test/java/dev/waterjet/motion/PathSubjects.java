package dev.waterjet.motion;

import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.measure.Kind;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Subjects;
import java.util.Map;

/** Subjects of the reference suite in this package. */
public final class PathSubjects implements Subjects {

    @Override
    public Map<String, Subject> subjects() {
        return Map.of(
                "smooth-time", PathSubjects::smoothTime,
                "trapezoid-time", PathSubjects::trapezoidTime,
                "rounding-radius",
                        in -> length(roundingRadius(
                                in.si("deviation", Kind.LENGTH), in.si("interior-angle", Kind.ANGLE) / 2)),
                "arc-lag-error",
                        in -> length(LagGeometry.TANGENT.arcErrorSi(
                                in.si("lag", Kind.LENGTH), in.si("radius", Kind.LENGTH))),
                "arc-lag-allowed",
                        in -> length(LagGeometry.TANGENT.arcLagSi(
                                in.si("error", Kind.LENGTH), in.si("radius", Kind.LENGTH))));
    }

    private static Computed trapezoidTime(Inputs in) {
        return time(in, limits(in));
    }

    private static Computed smoothTime(Inputs in) {
        return time(in, limits(in).withJerk(Kind.JERK.of(in.si("jerk", Kind.JERK))));
    }

    private static MachineLimits limits(Inputs in) {
        return MachineLimits.of(Kind.SPEED.of(10), Kind.ACCELERATION.of(in.si("acceleration", Kind.ACCELERATION)));
    }

    private static Computed time(Inputs in, MachineLimits machine) {
        MotionCurve motion = MotionSolver.solve(
                new PathPieces(1).line(in.si("distance", Kind.LENGTH), 0),
                FeedCaps.same(in.si("speed", Kind.SPEED), 0),
                machine.dynamics(),
                MotionSettings.defaults().withStepsPerJerkTime(64));
        return Computed.of(Kind.TIME, Kind.TIME.of(motion.timeS()));
    }

    /** With unit acceleration the speed on the rounding arc is the root of its radius. */
    private static double roundingRadius(double deviationM, double halfInteriorRad) {
        double speed = TurnKernel.arcCornerSpeed(
                1, deviationM, Double.POSITIVE_INFINITY, Math.cos(halfInteriorRad), Math.sin(halfInteriorRad));
        return speed * speed;
    }

    private static Computed length(double si) {
        return Computed.of(Kind.LENGTH, Kind.LENGTH.of(si));
    }
}
