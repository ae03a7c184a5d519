package dev.waterjet.benchmarks;

import dev.waterjet.hydraulics.IsentropicJet;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
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

/** Water and its jet, beside the exponentials that the equation of state cannot do without. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
public class WaterBenchmark {

    /** Temperature of the water, in K. */
    public double temperatureK = 293.15;

    /** Density of the water, in kg/m3. */
    public double densityKgPerM3 = 1129.057;

    /** Absolute pressure of the water, in Pa. */
    public double pressurePa = 400e6;

    /** The baseline of a state: the 7 exponentials and 3 logarithms left of the equation in cold dense water, and no more. */
    @Benchmark
    public double exponentialsAlone() {
        double sum = 0;
        for (int i = 1; i <= 7; i++) {
            sum += Math.exp(-densityKgPerM3 / (300.0 * i));
        }
        for (int i = 1; i <= 3; i++) {
            sum += Math.log(temperatureK * i);
        }
        return sum;
    }

    /** The baseline of the fast speed: Bernoulli on plain doubles. */
    @Benchmark
    public double bernoulli() {
        return Math.sqrt(2 * pressurePa / densityKgPerM3);
    }

    /** A whole state from density and temperature. */
    @Benchmark
    public WaterState stateOfDensity() {
        return Water.metastable().atDensitySi(densityKgPerM3, temperatureK);
    }

    /** A whole state from pressure and temperature. */
    @Benchmark
    public WaterState stateOfPressure() {
        return Water.stable().atSi(pressurePa, temperatureK);
    }

    /** The isentropic jet, exactly, from pressure and temperature. */
    @Benchmark
    public double jetSpeed() {
        return IsentropicJet.from(Water.stable().atSi(pressurePa, temperatureK)).speedSi();
    }

    /** The isentropic jet by the fast formula. */
    @Benchmark
    public double fastJetSpeed() {
        return IsentropicJet.fastSpeedSi(pressurePa, temperatureK);
    }
}
