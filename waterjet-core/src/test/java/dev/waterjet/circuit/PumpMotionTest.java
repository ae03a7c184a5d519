package dev.waterjet.circuit;

import static dev.waterjet.circuit.Circuits.TAP;
import static dev.waterjet.circuit.Circuits.pump;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.hydraulics.Intensifier;
import dev.waterjet.measure.Kind;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Deliveries of pumps against a constant pressure, by closed forms. */
class PumpMotionTest {

    private static final IsentropeKernel ISENTROPE = new IsentropeKernel(TAP);
    private static final double VOLUME_M3 = 1e-4;
    private static final double REVERSAL_S = 0.03;
    private static final double ATMOSPHERE_PA = 101_325;

    private static IntensifierDrive intensifier() {
        return PumpDrive.of(
                Intensifier.of(20, Kind.VOLUME.of(VOLUME_M3)).withReversalTime(seconds(REVERSAL_S)),
                megapascals(380),
                Kind.FREQUENCY.of(0.8));
    }

    private static PumpMotion.Strokes strokes(IntensifierDrive drive) {
        return new PumpMotion.Strokes(drive, ISENTROPE, TAP.densitySi());
    }

    /** Share of the stroke that compresses, from densities of the equation of state. */
    private static double compressed(double gaugePa, double deadVolume) {
        double out = ISENTROPE.at(gaugePa + ATMOSPHERE_PA).densitySi();
        return (1 - TAP.densitySi() / out) * (1 + deadVolume);
    }

    /**
     * A stroke lasts the reversal, the compression at its speed and the delivery at its own, and brings the rest of the cylinder; also
     * where one step takes several strokes.
     */
    @ParameterizedTest
    @CsvSource({
        "300, 0, 0.8, false, 0.0007",
        "300, 0.1, 0.8, false, 0.0013",
        "300, 0.1, 6, false, 0.02",
        "200, 0.3, 3, false, 0.4",
        "370, 0, 0.8, true, 0.0007",
        "370, 0.2, 2, true, 3.1",
        "376, 0.2, 2, false, 0.011"
    })
    void strokesDeliverWhatIsNotCompressed(
            double gaugeMpa, double deadVolume, double compression, boolean isPrecompressed, double stepS) {
        IntensifierDrive drive =
                intensifier().withDeadVolume(deadVolume).withCompressionSpeed(Kind.FREQUENCY.of(compression));
        if (isPrecompressed) {
            drive = drive.withPrecompression();
        }
        double pa = gaugeMpa * 1e6 + ATMOSPHERE_PA;
        double begin = compressed(gaugeMpa * 1e6, deadVolume);
        // 2 % below 380 MPa the oil pump begins to slow down
        double speed = 0.8 * Math.min(1, (380 - gaugeMpa) / (0.02 * 380));
        double periodS = REVERSAL_S + (isPrecompressed ? 0 : begin / compression) + (1 - begin) / speed;
        double perStroke = (1 - begin) * VOLUME_M3 * ISENTROPE.at(pa).densitySi();
        PumpMotion.Strokes motion = strokes(drive);
        double mass = 0;
        int steps = (int) Math.ceil(25 * periodS / stepS);
        for (int i = 1; i <= steps; i++) {
            mass += motion.advance(stepS, pa);
            double periods = i * stepS / periodS;
            double inPeriod = (periods - Math.floor(periods)) * periodS;
            // a period begins with the delivery
            double expected = perStroke * Math.floor(periods)
                    + Math.min(
                            perStroke,
                            inPeriod * speed * VOLUME_M3 * ISENTROPE.at(pa).densitySi());
            assertThat(mass).isEqualTo(expected, within(1e-6 * perStroke * (1 + periods)));
        }
    }

    @Test
    void intensifierStopsAtItsPressure() {
        for (double gauge : new double[] {380e6, 500e6}) {
            assertThat(intensifier().strokesPerS(gauge)).isZero();
            assertThat(strokes(intensifier()).meanFlow(gauge + ATMOSPHERE_PA)).isZero();
            assertThat(strokes(intensifier()).advance(2, gauge + ATMOSPHERE_PA)).isZero();
        }
        assertThat(intensifier().strokesPerS(376.2e6)).isEqualTo(0.4, within(1e-12));
        assertThat(intensifier().strokesPerS(300e6)).isEqualTo(0.8);
        // the mean that the steady state takes is that of the delivery alone
        double pa = 300e6 + ATMOSPHERE_PA;
        assertThat(strokes(intensifier()).meanFlow(pa))
                .isEqualTo(0.8 * VOLUME_M3 * ISENTROPE.at(pa).densitySi(), within(1e-11));
    }

    /** With dead volume beyond the stroke the pump compresses only. */
    @Test
    void cylinderThatOnlyCompressesDeliversNothing() {
        IntensifierDrive drive = intensifier().withDeadVolume(20);
        assertThat(drive.deliveryPosition(1.1)).isEqualTo(1);
        assertThat(drive.deliveryPosition(1)).isZero();
        assertThat(drive.deliveryPosition(1.01)).isEqualTo(21 * (1 - 1 / 1.01), within(1e-14));
        PumpMotion.Strokes motion = strokes(drive);
        assertThat(motion.advance(5, 300e6)).isZero();
        assertThat(motion.advance(0.1, 300e6)).isZero();
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-4, 0.0017, 0.04, 0.1})
    void crankDeliversItsMeanInEachTurn(double stepS) {
        double pa = 350e6;
        PumpMotion.Crank crank = new PumpMotion.Crank(pump(3, 0.4), ISENTROPE, TAP.densitySi());
        double mean = crank.meanFlow(pa);
        double mass = 0;
        int steps = (int) Math.round(2 / stepS);
        for (int i = 0; i < steps; i++) {
            mass += crank.advance(stepS, pa);
        }
        // within what one plunger delivers
        assertThat(mass).isEqualTo(mean * steps * stepS, within(mean / crank.plungerHz()));
        double[] masses = crank.masses(50, pa);
        assertThat(masses).hasSize(50);
        double sum = 0;
        for (double part : masses) {
            sum += part;
        }
        assertThat(sum).isEqualTo(mean / crank.plungerHz(), within(1e-12));
    }

    /** From the angle at which it starts, the pump is ahead of its mean as much as behind. */
    @ParameterizedTest
    @CsvSource({"2, 0", "3, 0", "3, 0.5", "4, 1", "5, 0.2", "7, 0"})
    void runStartsWhereTheDeliveryIsEven(int plungers, double deadVolume) {
        double pa = 380e6;
        PumpMotion.Crank crank = new PumpMotion.Crank(pump(plungers, deadVolume), ISENTROPE, TAP.densitySi());
        double mean = crank.meanFlow(pa);
        int parts = 4000;
        double stepS = 1 / crank.plungerHz() / parts;
        double excess = 0;
        double sum = 0;
        double largest = 0;
        for (int i = 0; i < parts; i++) {
            double before = excess;
            excess += crank.advance(stepS, pa) - mean * stepS;
            sum += (before + excess) / (2 * parts);
            largest = Math.max(largest, Math.abs(excess));
        }
        assertThat(excess).isEqualTo(0, within(1e-9 * mean / crank.plungerHz()));
        assertThat(sum).isEqualTo(0, within(0.01 * largest));
    }

    /** Share by share of the definition: the motion that began last, from where the valve was. */
    @Test
    void openingFollowsTheMotionThatBeganLast() {
        List<ValveEvent> events = List.of(
                new ValveEvent(seconds(5), seconds(0), 0.3),
                new ValveEvent(seconds(1), seconds(2), 0),
                new ValveEvent(seconds(2), seconds(4), 1),
                new ValveEvent(seconds(7), seconds(1), 0.8),
                new ValveEvent(seconds(7.5), seconds(0.1), 0.2),
                new ValveEvent(seconds(7.5), seconds(2), 0.4),
                new ValveEvent(seconds(20), seconds(1), 1));
        Opening opening = new Opening(0.6, events);
        List<ValveEvent> ordered = events.stream()
                .sorted(java.util.Comparator.comparingDouble(ValveEvent::beginS))
                .toList();
        for (double time = -0.5; time < 23; time += 0.05) {
            double at = time + 1e-4;
            assertThat(opening.at(at)).as("at " + at).isEqualTo(share(ordered, ordered.size(), at), within(1e-12));
        }
        assertThat(opening.at(5)).isEqualTo(0.3);
        assertThat(opening.at(Double.NEGATIVE_INFINITY)).isEqualTo(0.6);
        assertThat(new Opening(0.6, List.of()).at(3)).isEqualTo(0.6);
        assertThat(new Opening(0.6, List.of(new ValveEvent(seconds(0), seconds(0), 0.1))).at(0))
                .isEqualTo(0.1);
    }

    private static double share(List<ValveEvent> ordered, int count, double time) {
        int last = count - 1;
        while (last >= 0 && ordered.get(last).beginS() > time) {
            last--;
        }
        if (last < 0) {
            return 0.6;
        }
        ValveEvent event = ordered.get(last);
        double before = share(ordered, last, event.beginS());
        double done = event.durationS() > 0 ? Math.min(1, (time - event.beginS()) / event.durationS()) : 1;
        return before + (event.opening() - before) * done;
    }
}
