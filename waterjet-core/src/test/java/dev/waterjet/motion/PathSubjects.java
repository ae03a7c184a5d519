package dev.waterjet.motion;

import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.measure.Kind;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Subjects;
import java.util.Map;

/** What the suite can ask of this package. */
public final class PathSubjects implements Subjects {

    @Override
    public Map<String, Subject> subjects() {
        return Map.of(
                "trapezoid-peak",
                        in -> speed(RampKernel.trapezoidPeak(
                                in.si("entry", Kind.SPEED),
                                in.si("exit", Kind.SPEED),
                                in.si("speeding-up", Kind.ACCELERATION),
                                in.si("slowing-down", Kind.ACCELERATION),
                                in.si("distance", Kind.LENGTH))),
                "smooth-time",
                        in -> Computed.of(Kind.TIME, Kind.TIME.of(smooth(in).time())),
                "rounding-radius",
                        in -> length(RampKernel.roundingRadius(
                                in.si("deviation", Kind.LENGTH), Math.sin(in.si("interior-angle", Kind.ANGLE) / 2))),
                "arc-lag-error",
                        in -> length(LagGeometry.TANGENT.arcErrorSi(
                                in.si("lag", Kind.LENGTH), in.si("radius", Kind.LENGTH))),
                "arc-lag-allowed",
                        in -> length(LagGeometry.TANGENT.arcLagSi(
                                in.si("error", Kind.LENGTH), in.si("radius", Kind.LENGTH))));
    }

    private static SmoothRun smooth(Inputs in) {
        SmoothRun run = new SmoothRun();
        run.set(
                0,
                0,
                in.si("speed", Kind.SPEED),
                in.si("distance", Kind.LENGTH),
                in.si("acceleration", Kind.ACCELERATION),
                in.si("jerk", Kind.JERK));
        return run;
    }

    private static Computed speed(double si) {
        return Computed.of(Kind.SPEED, Kind.SPEED.of(si));
    }

    private static Computed length(double si) {
        return Computed.of(Kind.LENGTH, Kind.LENGTH.of(si));
    }
}
