package dev.waterjet.benchmarks;

import dev.waterjet.circuit.Circuit;
import dev.waterjet.circuit.PressureHistory;
import dev.waterjet.circuit.PressureRipple;
import dev.waterjet.circuit.PumpDrive;
import dev.waterjet.circuit.ValveEvent;
import dev.waterjet.hydraulics.Attenuator;
import dev.waterjet.hydraulics.DirectDrivePump;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.water.Water;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** One second of a circuit: three plungers, an attenuator, 20 m of line, two heads, one of which shuts. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 2)
public class CircuitBenchmark {

    private final Circuit circuit = Circuit.around(
                    Measures.megapascals(380), Water.stable().atSi(101_325, 293.15))
            .vessel("pump", Attenuator.of(Kind.VOLUME.of(1e-3)))
            .pump(
                    "pump",
                    PumpDrive.of(DirectDrivePump.of(3, Kind.VOLUME.of(1.97e-6), Kind.FREQUENCY.of(10))
                            .withDeadVolume(0.5)))
            .line("pump", "manifold", line(4.8, 20))
            .line("manifold", "head 1", line(2.4, 3))
            .line("manifold", "head 2", line(2.4, 3))
            .head("head 1", Orifice.sapphire(Measures.millimetres(0.25)))
            .head(
                    "head 2",
                    Orifice.sapphire(Measures.millimetres(0.25)),
                    ValveEvent.closing(Measures.seconds(0.5), Measures.seconds(0.02)))
            .reliefValve(
                    "pump",
                    Orifice.sapphire(Measures.millimetres(0.6)),
                    Measures.megapascals(400),
                    Measures.seconds(0.005))
            .build();

    private static SupplyLine.Section line(double boreMm, double lengthM) {
        return SupplyLine.Section.ofBore(Measures.millimetres(boreMm)).withLength(Measures.metres(lengthM));
    }

    /** One second over time. */
    @Benchmark
    public PressureHistory oneSecond() {
        return circuit.run(Measures.seconds(1));
    }

    /** Ripple of the settled circuit by a Fourier sum. */
    @Benchmark
    public PressureRipple settledRipple() {
        return circuit.ripple();
    }
}
