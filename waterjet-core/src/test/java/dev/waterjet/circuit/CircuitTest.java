package dev.waterjet.circuit;

import static dev.waterjet.circuit.Circuits.TAP;
import static dev.waterjet.circuit.Circuits.around380;
import static dev.waterjet.circuit.Circuits.attenuator;
import static dev.waterjet.circuit.Circuits.closing;
import static dev.waterjet.circuit.Circuits.line;
import static dev.waterjet.circuit.Circuits.megapascalsOf;
import static dev.waterjet.circuit.Circuits.orifice;
import static dev.waterjet.circuit.Circuits.pump;
import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.hydraulics.DirectDrivePump;
import dev.waterjet.hydraulics.FrictionCorrelation;
import dev.waterjet.hydraulics.Intensifier;
import dev.waterjet.hydraulics.OperatingPoint;
import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.Measures;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.List;
import javax.measure.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CircuitTest {

    private static final double ATMOSPHERE_MPA = 0.101325;

    private static Circuit twoHeads() {
        return Circuit.around(megapascals(380), TAP)
                .reservoir("pump")
                .line("pump", "manifold", line(4.8, 14.4, 20))
                .line("manifold", "head 1", line(2.4, 9.6, 3))
                .line("manifold", "head 2", line(2.4, 9.6, 3))
                .head("head 1", orifice(0.25), closing(0, 0.01))
                .head("head 2", orifice(0.25))
                .build();
    }

    private static Circuit ofPlungers(int plungers, double volumeL) {
        return around380()
                .vessel("attenuator", attenuator(volumeL))
                .pump("attenuator", PumpDrive.of(pump(plungers, 0.5)))
                .line("attenuator", "head", line(4.8, 14.4, 20))
                .head("head", orifice(0.33))
                .build();
    }

    /** Values from a program of the same method in another language. */
    @Test
    void valveOfOneHeadIsFeltAtTheOther() {
        PressureHistory history = twoHeads().run(seconds(0.08), 160);
        assertThat(history.pressure("head 1").si(0) / 1e6 + ATMOSPHERE_MPA).isEqualTo(379.017, within(0.01));
        assertThat(megapascalsOf(history.highest("head 1")) + ATMOSPHERE_MPA).isEqualTo(384.76, within(0.06));
        assertThat(megapascalsOf(history.highest("head 2")) + ATMOSPHERE_MPA).isEqualTo(383.26, within(0.06));
        assertThat(megapascalsOf(history.lowest("head 2")) + ATMOSPHERE_MPA).isEqualTo(375.3, within(0.06));
        assertThat(megapascalsOf(history.highest("manifold")) + ATMOSPHERE_MPA).isEqualTo(383.0, within(0.06));
        assertThat(history.massImbalance()).isLessThan(1e-12);
    }

    @Test
    void suddenStopRaisesThePressureByJoukowsky() {
        SupplyLine.Section section = line(4.8, 14.4, 20);
        PressureHistory history = around380()
                .reservoir("pump")
                .line("pump", "head", section)
                .head("head", orifice(0.33), closing(0, 0))
                .build()
                .run(seconds(0.05));
        Quantity<MassFlow> stopped = history.massFlow("head").get(0);
        WaterState water = Water.stable().atEntropySi(380.101325e6, TAP.entropySi());
        double surge = megapascalsOf(SupplyLine.of(section).surge(stopped, water));
        double rise = (history.pressure("head").si(1) - history.pressure("head").si(0)) / 1e6;
        // friction of one reach stays
        assertThat(rise).isEqualTo(surge, within(0.01));
        assertThat(history.massFlow("head").si(1)).isZero();
    }

    @Test
    void steadyStateAgreesWithTheOperatingPoint() {
        SupplyLine.Section section = line(2.4, 9.6, 30).withFittings(5);
        WaterState inLine = Water.stable().atEntropySi(380.101325e6, TAP.entropySi());
        // the operating point holds one temperature; water at rest of that temperature has the density of its flow
        WaterState warm = Water.stable().atSi(101_325, inLine.temperatureSi());
        PressureHistory history = Circuit.around(megapascals(380), warm)
                .reservoir("pump")
                .line("pump", "head", section)
                .head("head", orifice(0.33))
                .build()
                .run(seconds(0.01));
        OperatingPoint point = OperatingPoint.of(
                PumpSetting.of(megapascals(380), Measures.litresPerMinute(10)),
                SupplyLine.of(section).withFrictionCorrelation(FrictionCorrelation.HAALAND),
                Kind.TEMPERATURE.of(warm.temperatureSi()),
                List.of(orifice(0.33)));
        double loss = 380 - history.pressure("head").si(0) / 1e6;
        // compression warms the line of the circuit by another 10 K, which takes a quarter off the viscosity
        assertThat(loss).isEqualTo(380 - megapascalsOf(point.headPressure()), within(0.04 * loss));
        assertThat(history.massFlow("head").si(0)).isEqualTo(Kind.MASS_FLOW.si(point.massFlow()), within(1e-3 * 0.05));
    }

    @Test
    void steadyStateIsThatOfLineAndJet() {
        SupplyLine.Section section = line(2.4, 9.6, 30).withFittings(5);
        PressureHistory history = around380()
                .reservoir("pump")
                .line("pump", "head", section)
                .head("head", orifice(0.33))
                .build()
                .run(seconds(0.01));
        WaterState inLine = Water.stable().atEntropySi(380.101325e6, TAP.entropySi());
        Quantity<MassFlow> flow = history.massFlow("head").get(0);
        double loss = SupplyLine.of(section)
                .withFrictionCorrelation(FrictionCorrelation.HAALAND)
                .loss(flow, inLine)
                .si();
        assertThat(history.pressure("head").si(0)).isEqualTo(380e6 - loss, within(10.0));
        WaterJet jet = WaterJet.of(orifice(0.33), history.pressure("head").get(0), celsius(20));
        assertThat(Kind.MASS_FLOW.si(flow)).isEqualTo(jet.massFlowSi(), within(1e-9 * jet.massFlowSi()));
    }

    /** Pump that delivers without ripple, a head that shuts, and a relief valve that takes the flow. */
    @Test
    void reliefValveTakesTheFlowOfAShutHead() {
        DirectDrivePump even =
                DirectDrivePump.of(24, Kind.VOLUME.of(1), Kind.FREQUENCY.of(40)).withRodRatio(0);
        double out = Water.stable().atEntropySi(380.101325e6, TAP.entropySi()).densitySi();
        double flow = CircuitNode.effectiveArea(orifice(0.33)) * Math.sqrt(2 * TAP.densitySi() * 380e6);
        double perTurn = even.deliveredVolumeSi(0, 2 * Math.PI, out / TAP.densitySi()) * out;
        PressureHistory history = around380()
                .vessel("vessel", attenuator(1))
                .pump(
                        "vessel",
                        PumpDrive.of(
                                DirectDrivePump.of(24, Kind.VOLUME.of(flow / (40 * perTurn)), Kind.FREQUENCY.of(40))
                                        .withRodRatio(0)))
                .head("vessel", orifice(0.33), closing(0.1, 0.02))
                .reliefValve("vessel", orifice(0.5), megapascals(390), seconds(0.005))
                .build()
                .run(seconds(1));
        double end = history.pressure("vessel").si(history.times().size() - 1) / 1e6 + ATMOSPHERE_MPA;
        assertThat(end).isEqualTo(393.44, within(0.05));
        assertThat(megapascalsOf(history.highest("vessel")) + ATMOSPHERE_MPA).isEqualTo(393.8, within(0.4));
        PressureHistory settled = history.between(seconds(0.9), seconds(1));
        assertThat(settled.massFlow("vessel").stream().average().orElseThrow()).isEqualTo(0, within(1e-5));
        assertThat(history.massImbalance()).isLessThan(1e-12);
    }

    /** A head shuts, a dump valve of its size takes the flow, then both change back. */
    @Test
    void dumpValveTakesTheFlowUntilTheHeadOpensAgain() {
        PressureHistory history = around380()
                .vessel("vessel", attenuator(1))
                .pump("vessel", PumpDrive.of(pump(5, 0)))
                .line("vessel", "head", line(4.8, 14.4, 2))
                .line("vessel", "dump", line(4.8, 14.4, 2))
                .head("head", orifice(0.33), closing(0.1, 0.02), ValveEvent.opening(seconds(0.6), seconds(0.02)))
                .shutHead("dump", orifice(0.33), ValveEvent.opening(seconds(0.1), seconds(0.02)), closing(0.6, 0.02))
                .build()
                .run(seconds(1));
        assertThat(history.massImbalance()).isLessThan(1e-12);
        double area = CircuitNode.effectiveArea(orifice(0.33));
        for (double time : new double[] {0.05, 0.3, 0.5, 0.9}) {
            int i = (int) Math.round(time * (history.times().size() - 1));
            boolean isDumped = time > 0.12 && time < 0.6;
            String open = isDumped ? "dump" : "head";
            double byOrifice = area
                    * Math.sqrt(2 * TAP.densitySi() * history.pressure(open).si(i));
            assertThat(history.massFlow(open).si(i)).isEqualTo(byOrifice, within(1e-9));
            assertThat(history.massFlow(isDumped ? "head" : "dump").si(i)).isZero();
        }
        double before = mean(history.between(seconds(0.02), seconds(0.1)));
        assertThat(mean(history.between(seconds(0.3), seconds(0.6)))).isEqualTo(before, within(1e-3 * before));
        assertThat(mean(history.between(seconds(0.8), seconds(1)))).isEqualTo(before, within(1e-3 * before));
    }

    private static double mean(PressureHistory history) {
        return history.pressure("vessel").stream().average().orElseThrow();
    }

    private static IntensifierDrive intensifier() {
        return PumpDrive.of(
                Intensifier.of(20, Kind.VOLUME.of(1e-3 * 0.1)).withReversalTime(seconds(0.03)),
                megapascals(380),
                Kind.FREQUENCY.of(0.605722));
    }

    /** Values of a program in another language; the lowest pressure also by the quadrature of a blow-down over the gap. */
    @Test
    void intensifierDropsThePressureAtEachReversal() {
        assertThat(swing(intensifier(), 1)).isEqualTo(35.906, within(0.05));
        assertThat(swing(intensifier().withDeadVolume(0.1), 1)).isEqualTo(38.622, within(0.05));
        assertThat(swing(intensifier(), 2)).isEqualTo(18.869, within(0.05));
        assertThat(swing(intensifier().withPrecompression(), 1)).isEqualTo(5.722, within(0.02));
        assertThat(swing(intensifier().withCompressionSpeed(Kind.FREQUENCY.of(6)), 1))
                .isLessThan(12);
    }

    private static double swing(IntensifierDrive drive, double volumeL) {
        PressureHistory history = around380()
                .vessel("vessel", attenuator(volumeL))
                .pump("vessel", drive)
                .head("vessel", orifice(0.33))
                .build()
                .run(seconds(6));
        if (volumeL == 1) {
            assertThat(history.pressure("vessel").si(0) / 1e6 + ATMOSPHERE_MPA).isEqualTo(374.705, within(0.01));
        }
        assertThat(history.massImbalance()).isLessThan(1e-12);
        return megapascalsOf(history.ripple("vessel"));
    }

    @ParameterizedTest
    @CsvSource({"3, 1", "5, 1", "3, 0.25", "4, 2"})
    void rippleByFourierAgreesWithTheRun(int plungers, double volumeL) {
        Circuit circuit = ofPlungers(plungers, volumeL);
        PressureHistory settled = circuit.run(seconds(3), 160).between(seconds(2.5), seconds(3));
        PressureRipple ripple = circuit.ripple();
        for (String node : List.of("attenuator", "head")) {
            double byFourier = megapascalsOf(ripple.at(node));
            assertThat(megapascalsOf(settled.ripple(node))).isEqualTo(byFourier, within(0.03 * byFourier));
        }
        assertThat(settled.massImbalance()).isLessThan(1e-12);
    }

    @Test
    void resonanceOfALineIsAnnounced() {
        assertThat(ofPlungers(3, 1).ripple().cautions())
                .extracting(Caution::code)
                .contains("line-resonance");
        Circuit shortLine = around380()
                .vessel("attenuator", attenuator(1))
                .pump("attenuator", PumpDrive.of(pump(3, 0.5)))
                .line("attenuator", "head", line(4.8, 14.4, 1))
                .head("head", orifice(0.33))
                .build();
        assertThat(shortLine.ripple().cautions())
                .extracting(Caution::code)
                .containsExactly("ideal-circuit", "quasi-steady-friction");
    }

    @Test
    void attenuatorReducesTheRipple() {
        double small = megapascalsOf(ofPlungers(3, 0.5).ripple().at("attenuator"));
        double large = megapascalsOf(ofPlungers(3, 4).ripple().at("attenuator"));
        assertThat(large).isLessThan(small / 4);
    }

    @Test
    void finerReachesMoveThePeakLittle() {
        Circuit circuit = twoHeads();
        double coarse = megapascalsOf(circuit.run(seconds(0.06), 80).highest("head 1"));
        double fine = megapascalsOf(circuit.run(seconds(0.06), 160).highest("head 1"));
        assertThat(coarse - fine).isEqualTo(0, within(5e-3 * (fine - 379)));
    }

    @Test
    void orderAndNamesOfPartsDoNotMatter() {
        PressureHistory other = Circuit.around(megapascals(380), TAP)
                .head("b", orifice(0.25))
                .line("m", "b", line(2.4, 9.6, 3))
                .head("a", orifice(0.25), closing(0, 0.01))
                .line("a", "m", line(2.4, 9.6, 3))
                .line("m", "source", line(4.8, 14.4, 20))
                .reservoir("source")
                .build()
                .run(seconds(0.05));
        PressureHistory one = twoHeads().run(seconds(0.05));
        assertThat(Kind.PRESSURE.si(other.highest("a")))
                .isEqualTo(Kind.PRESSURE.si(one.highest("head 1")), within(1.0));
        assertThat(Kind.PRESSURE.si(other.lowest("b"))).isEqualTo(Kind.PRESSURE.si(one.lowest("head 2")), within(1.0));
    }

    @Test
    void recoveryTimeEndsInTheBand() {
        PressureHistory history = twoHeads().run(seconds(1));
        double slow = Kind.TIME.si(history.recoveryTime("head 2", seconds(0), megapascals(0.1)));
        double fast = Kind.TIME.si(history.recoveryTime("head 2", seconds(0), megapascals(2)));
        assertThat(slow).isGreaterThan(fast).isLessThan(1);
        PressureHistory later = history.between(seconds(slow), seconds(1));
        double last = history.pressure("head 2").si(history.times().size() - 1);
        assertThat(later.pressure("head 2").stream()
                        .map(p -> Math.abs(p - last))
                        .max()
                        .orElseThrow())
                .isLessThanOrEqualTo(0.1e6);
    }

    @Test
    void runsAreFastEnoughToBeUsed() {
        PressureHistory history = ofPlungers(3, 1).run(seconds(1));
        assertThat(history.times().size()).isBetween(8000, 13_000);
        assertThat(history.cautions())
                .extracting(Caution::code)
                .containsExactly("ideal-circuit", "quasi-steady-friction");
    }
}
