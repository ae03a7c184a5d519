package dev.waterjet.hydraulics;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Delivery of pumps by a sum over small angles, and of intensifiers over their strokes. */
class CrankDeliveryTest {

    private static final double VOLUME_M3 = 2e-6;
    private static final int STEPS = 40_000;

    /** Speed of a plunger as a share of the stroke for each rad, by the documented v/2 = (sin a - (l/2) sin 2a)/2. */
    private static double speed(double rodRatio, double a) {
        return (Math.sin(a) - rodRatio / 2 * Math.sin(2 * a)) / 2;
    }

    /** Sum over the angles at which each plunger has gone beyond the position where delivery begins. */
    private static double summed(
            int plungers, double rodRatio, double begin, double closesRad, double fromRad, double toRad) {
        double step = (toRad - fromRad) / STEPS;
        double sum = 0;
        for (int k = 0; k < plungers; k++) {
            for (int i = 0; i < STEPS; i++) {
                double a = (fromRad + (i + 0.5) * step + 2 * Math.PI * k / plungers) % (2 * Math.PI);
                double position = ((1 - Math.cos(a)) - rodRatio / 4 * (1 - Math.cos(2 * a))) / 2;
                boolean isDelivering = a < Math.PI ? position > begin : a < Math.PI + closesRad;
                sum += isDelivering ? speed(rodRatio, a) * step : 0;
            }
        }
        return sum;
    }

    @ParameterizedTest
    @CsvSource({
        "1, 0.2, 0, 1, 0, 0, 0, 6.283185307179586",
        "3, 0.2, 0.5, 1.12, 0, 0, 0.3, 2.9",
        "2, 0, 1.5, 1.2, 5, 3, 1.7, 20.1",
        "5, 0.5, 0.2, 1.05, 20, 0, 6.1, 6.9",
        "4, 0.3, 0, 1.2, 0, 25, 3.0, 3.9",
        "7, 0.1, 0.1, 1.3, 10, 12, 11, 13",
        "1, 0.25, 0.4, 1.1, 8, 15, 3.2, 9.7"
    })
    void deliveredVolumeIsTheSumOfThePlungers(
            int plungers,
            double rodRatio,
            double deadVolume,
            double densityRatio,
            double suctionDegrees,
            double deliveryDegrees,
            double fromRad,
            double toRad) {
        DirectDrivePump pump = DirectDrivePump.of(plungers, Kind.VOLUME.of(VOLUME_M3), Kind.FREQUENCY.of(10))
                .withRodRatio(rodRatio)
                .withDeadVolume(deadVolume)
                .withVolumetricEfficiency(0.9)
                .withValveTiming(degrees(suctionDegrees), degrees(deliveryDegrees));
        double s = Math.toRadians(suctionDegrees);
        double closed = ((1 - Math.cos(s)) - rodRatio / 4 * (1 - Math.cos(2 * s))) / 2;
        // what is in the cylinder at the closing of the suction valve shrinks by the ratio of densities
        double begin = 1 + deadVolume - (1 + deadVolume - closed) / densityRatio;
        double strokes = summed(plungers, rodRatio, begin, Math.toRadians(deliveryDegrees), fromRad, toRad);
        assertThat(pump.deliveredVolumeSi(fromRad, toRad, densityRatio) / (VOLUME_M3 * 0.9))
                .isEqualTo(strokes, within(2e-3 * plungers));
        double middle = (fromRad + toRad) / 2;
        assertThat(pump.deliveredVolumeSi(fromRad, middle, densityRatio)
                        + pump.deliveredVolumeSi(middle, toRad, densityRatio))
                .isEqualTo(pump.deliveredVolumeSi(fromRad, toRad, densityRatio), within(1e-18));
        assertThat(pump.deliveredVolumeSi(fromRad, fromRad, densityRatio)).isZero();
        assertRefused(() -> pump.deliveredVolumeSi(-0.1, 1, densityRatio), "must-be-at-least", "angle of the crank", 0);
        assertRefused(
                () -> pump.deliveredVolumeSi(1, 0.9, densityRatio), "must-be-at-least", "second angle of the crank", 1);
        assertRefused(() -> pump.deliveredVolumeSi(0, 1, 0.99), "must-be-at-least", "ratio of densities", 1);
    }

    /** Valves that close late let water back: least and greatest flow, and the fluctuation of the volume, from a dense sample. */
    @ParameterizedTest
    @CsvSource({"3, 0.2, 10, 0", "3, 0.2, 0, 12", "2, 0.4, 6, 20", "5, 0, 15, 8", "4, 0.5, 0, 0", "1, 0.3, 3, 9"})
    void rippleIsThatOfADenseSample(int plungers, double rodRatio, double suctionDegrees, double deliveryDegrees) {
        DirectDrivePump pump = DirectDrivePump.of(plungers, Kind.VOLUME.of(VOLUME_M3), Kind.FREQUENCY.of(10))
                .withRodRatio(rodRatio)
                .withValveTiming(degrees(suctionDegrees), degrees(deliveryDegrees));
        int samples = 20_000;
        double step = 2 * Math.PI / plungers / samples;
        double total = pump.deliveredVolumeSi(0, 2 * Math.PI / plungers, 1);
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        double lowest = 0;
        double highest = 0;
        for (int i = 0; i < samples; i++) {
            double flow = pump.deliveredVolumeSi(i * step, (i + 1) * step, 1) / step;
            least = Math.min(least, flow);
            most = Math.max(most, flow);
            double excess = pump.deliveredVolumeSi(0, (i + 1) * step, 1) - total * (i + 1) / samples;
            lowest = Math.min(lowest, excess);
            highest = Math.max(highest, excess);
        }
        double mean = total * plungers / (2 * Math.PI);
        assertThat(Kind.RATIO.si(pump.flowRipple())).isEqualTo((most - least) / mean, within(2e-3));
        assertThat(Kind.VOLUME.si(pump.fluctuatingVolume()))
                .isEqualTo(highest - lowest, within(2e-3 * plungers * VOLUME_M3));
        // what one turn delivers, ten times a second
        assertThat(Kind.VOLUME_FLOW.si(pump.flow())).isEqualTo(10 * plungers * total, within(1e-15));
        assertThat(pump.describe()).containsEntry("flow_m3_per_s", Kind.VOLUME_FLOW.si(pump.flow()));
        Compression little = Compression.isentropic(Water.stable().atSi(101_325, 293.15), megapascals(0.2));
        assertThat(Kind.VOLUME_FLOW.si(pump.flow(little)))
                .isEqualTo(Kind.VOLUME_FLOW.si(pump.flow()), within(1e-4 * 10 * plungers * total));
        assertThat(Kind.VOLUME.si(pump.fluctuatingVolume(little)))
                .isEqualTo(Kind.VOLUME.si(pump.fluctuatingVolume()), within(1e-3 * plungers * VOLUME_M3));
    }

    /** Between reversals an intensifier delivers all of a stroke in the time that is left. */
    @ParameterizedTest
    @ValueSource(doubles = {0.001, 0.02, 0.06, 0.3})
    void flowRippleOfAnIntensifierIsThatOfItsStrokes(double kgPerS) {
        WaterState tap = Water.stable().atSi(101_325, 293.15);
        Compression compression = Compression.isentropic(tap, megapascals(380));
        Intensifier intensifier = Intensifier.of(20, Kind.VOLUME.of(1e-4)).withReversalTime(seconds(0.05));
        var flow = Kind.MASS_FLOW.of(kgPerS);
        double perStroke = tap.densitySi() * 1e-4;
        double strokeS = perStroke / kgPerS;
        assertThat(Kind.FREQUENCY.si(intensifier.strokes(flow, tap))).isEqualTo(1 / strokeS, within(1e-9));
        double compressed = 1 - tap.densitySi() / compression.outlet().densitySi();
        assertThat(Kind.RATIO.si(intensifier.compressionFraction(compression))).isEqualTo(compressed, within(1e-12));
        double deliveringS = (strokeS - 0.05) * (1 - compressed);
        assertThat(Kind.RATIO.si(intensifier.flowRipple(flow, compression)))
                .isEqualTo(strokeS / deliveringS, within(1e-9 * strokeS / deliveringS));
        assertThat(Kind.VOLUME.si(intensifier.fluctuatingVolume(flow, compression)))
                .isEqualTo(
                        kgPerS * (strokeS - deliveringS) / compression.outlet().densitySi(), within(1e-14));
    }

    /** f of each correlation meets its own implicit or explicit form, and the two regimes join. */
    @ParameterizedTest
    @ValueSource(doubles = {4000, 12_345, 3e5, 1e8})
    void colebrookSolvesItsEquation(double reynolds) {
        for (double roughness : new double[] {0, 1e-5, 3e-3, 0.05}) {
            double f = FrictionCorrelation.COLEBROOK.factor(reynolds, roughness);
            assertThat(-2 * Math.log10(roughness / 3.7 + 2.51 / (reynolds * Math.sqrt(f))))
                    .isEqualTo(1 / Math.sqrt(f), within(1e-12 / Math.sqrt(f)));
            for (FrictionCorrelation other : FrictionCorrelation.values()) {
                assertThat(other.factor(reynolds, roughness)).isEqualTo(f, within(0.06 * f));
            }
        }
    }

    @Test
    void transitionIsALineBetweenItsEnds() {
        for (FrictionCorrelation correlation : FrictionCorrelation.values()) {
            if (correlation == FrictionCorrelation.CHURCHILL) {
                continue;
            }
            double laminar = correlation.factor(2300, 1e-3);
            double turbulent = correlation.factor(4000, 1e-3);
            assertThat(laminar).isEqualTo(64 / 2300.0, within(1e-15));
            assertThat(correlation.factor(2640, 1e-3)).isEqualTo(0.8 * laminar + 0.2 * turbulent, within(1e-14));
            assertThat(correlation.factor(Math.nextDown(4000.0), 1e-3)).isEqualTo(turbulent, within(1e-12));
            assertRefused(() -> correlation.factor(0, 1e-3), "must-be-above", "Reynolds number", 0);
            assertRefused(() -> correlation.factor(1e4, 0.051), "must-be-at-most", "relative roughness", 0.05);
        }
    }
}
