package dev.waterjet.examples;

import dev.waterjet.measure.Jerk;
import dev.waterjet.measure.Measures;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.plan.Setup;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Acceleration;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import picocli.CommandLine.Option;

/** Options of the machine: speed, acceleration, jerk, corners, delays. */
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

    MachineLimits limits() {
        MachineLimits limits = MachineLimits.of(rapidSpeed, acceleration);
        limits = jerk.map(limits::withJerk).orElse(limits);
        return cornerDeviation.map(limits::withCornerDeviation).orElse(limits);
    }

    /** A setup with the rapid traverse and the delays of the machine. */
    Setup on(Setup setup) {
        return setup.withRapidTraverse(rapidSpeed, acceleration).withDelays(perPierce, perMove);
    }
}
