package dev.waterjet.examples;

import dev.waterjet.measure.AngularAcceleration;
import dev.waterjet.measure.AngularSpeed;
import dev.waterjet.measure.Jerk;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.motion.TiltingHead;
import dev.waterjet.plan.Setup;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Acceleration;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import picocli.CommandLine.Option;

/** Options of the machine: speed, acceleration, jerk, corners, delays, tilting head. */
final class MachineOptions {

    @Option(
            names = "--rapid-speed",
            converter = Typed.Speed.class,
            paramLabel = "<speed>",
            description = "Rapid traverse speed of the machine. Default: 10000 mm/min.")
    private Quantity<Speed> rapidSpeed = Measures.millimetresPerMinute(10_000);

    @Option(
            names = "--machine-acceleration",
            converter = Typed.Acceleration.class,
            paramLabel = "<acceleration>",
            description = "Acceleration of each axis. Default: 0.5 m/s2.")
    private Quantity<Acceleration> acceleration = Measures.metresPerSquareSecond(0.5);

    @Option(
            names = "--machine-jerk",
            converter = Typed.Jerk.class,
            paramLabel = "<jerk>",
            description = "Jerk of each axis, such as 20 m/s3. Default: not limited.")
    private Optional<Quantity<Jerk>> jerk = Optional.empty();

    @Option(
            names = "--corner-deviation",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Deviation from a corner that the control allows. Default: that of the library, 0.01 mm.")
    private Optional<Quantity<Length>> cornerDeviation = Optional.empty();

    @Option(
            names = "--per-pierce",
            converter = Typed.Time.class,
            paramLabel = "<time>",
            description = "Delay per pierce for lifting the head, valve and abrasive. Default: 0 s.")
    private Quantity<Time> perPierce = Measures.seconds(0);

    @Option(
            names = "--per-move",
            converter = Typed.Time.class,
            paramLabel = "<time>",
            description = "Delay per rapid traverse. Default: 0 s.")
    private Quantity<Time> perMove = Measures.seconds(0);

    @Option(
            names = "--tilt",
            converter = Typed.Angle.class,
            paramLabel = "<angle>",
            description = "Maximum inclination of a tilting head, such as 8 deg: it then compensates taper and lag."
                    + " Default: the head stays upright.")
    private Optional<Quantity<Angle>> tilt = Optional.empty();

    @Option(
            names = "--tilt-speed",
            converter = Typed.AngularSpeed.class,
            paramLabel = "<speed>",
            description = "Maximum angular speed of the tilting head. Default: 60 deg/s.")
    private Quantity<AngularSpeed> tiltSpeed = Kind.ANGULAR_SPEED.of(Math.toRadians(60));

    @Option(
            names = "--tilt-acceleration",
            converter = Typed.AngularAcceleration.class,
            paramLabel = "<acceleration>",
            description = "Maximum angular acceleration of the tilting head. Default: 300 deg/s2.")
    private Quantity<AngularAcceleration> tiltAcceleration = Kind.ANGULAR_ACCELERATION.of(Math.toRadians(300));

    @Option(
            names = "--tilt-lead",
            paramLabel = "<share>",
            description = "Lead angle over the one that compensates the lag at the exit, 0 to 1; 0 for side tilt alone."
                    + " Default: 0.828, which leaves the smallest lag over the depth.")
    private Optional<Double> lead = Optional.empty();

    MachineLimits limits() {
        MachineLimits limits = MachineLimits.of(rapidSpeed, acceleration);
        limits = jerk.map(limits::withJerk).orElse(limits);
        return cornerDeviation.map(limits::withCornerDeviation).orElse(limits);
    }

    /** A setup with the rapid traverse and the delays of the machine. */
    Setup on(Setup setup) {
        Setup on = setup.withRapidTraverse(rapidSpeed, acceleration).withDelays(perPierce, perMove);
        if (tilt.isEmpty()) {
            return on;
        }
        TiltingHead head = TiltingHead.of(tilt.get(), tiltSpeed, tiltAcceleration);
        return on.withTiltingHead(lead.map(head::withLead).orElse(head));
    }
}
