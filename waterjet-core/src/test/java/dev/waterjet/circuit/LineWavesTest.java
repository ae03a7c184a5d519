package dev.waterjet.circuit;

import static dev.waterjet.circuit.Circuits.TAP;
import static dev.waterjet.circuit.Circuits.around380;
import static dev.waterjet.circuit.Circuits.attenuator;
import static dev.waterjet.circuit.Circuits.line;
import static dev.waterjet.circuit.Circuits.orifice;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.hydraulics.FrictionCorrelation;
import dev.waterjet.hydraulics.Intensifier;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.measure.Kind;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One line by closed forms, and lines in networks. */
class LineWavesTest {

    private static final WaterState WATER = Water.stable().atEntropySi(380.101325e6, TAP.entropySi());
    private static final SupplyLine.Section SECTION = line(4.8, 14.4, 20);
    private static final double AREA = Math.PI / 4 * 4.8e-3 * 4.8e-3;

    private static LineWaves waves(double stepS) {
        return new LineWaves(0, 1, SECTION.withFittings(3), WATER, stepS);
    }

    /** With reaches that fit the length, the mass of a rigid line at rest changes by A L dp/a^2. */
    @Test
    void massAndEnergyFollowPressureAndFlow() {
        double speed = Kind.SPEED.si(SECTION.waveSpeed(WATER));
        LineWaves line = waves(20 / speed / 7);
        assertThat(line.reaches()).isEqualTo(7);
        assertThat(line.adjustment()).isEqualTo(0, within(1e-12));
        line.start(WATER.pressureSi(), 0);
        double rest = line.mass();
        assertThat(rest).isEqualTo(WATER.densitySi() * AREA * 20, within(1e-12));
        assertThat(line.energy()).isZero();
        for (double excess : new double[] {-3e6, 5e6}) {
            line.start(WATER.pressureSi() + excess, 0);
            double stored = AREA * 20 * excess / (speed * speed);
            assertThat(line.mass() - rest).isEqualTo(stored, within(1e-9 * Math.abs(stored)));
            assertThat(line.energy())
                    .isEqualTo(stored * excess / (2 * WATER.densitySi()), within(1e-9 * line.energy()));
        }
        line.leaveFrictionOut();
        line.start(WATER.pressureSi(), -0.04);
        assertThat(line.energy()).isEqualTo(0.04 * 0.04 * 20 / (2 * WATER.densitySi() * AREA), within(1e-12));
        assertThat(line.mass()).isEqualTo(rest, within(1e-12));
        assertThat(line.quarterWaveHz()).isEqualTo(speed / 80, within(1e-9));
    }

    /** Waves pass whole reaches, so that their speed is changed to fit. */
    @ParameterizedTest
    @ValueSource(doubles = {0.4, 0.6, 1.4, 2.45, 7.3, 60.49})
    void reachesFitTheLength(double ideal) {
        double speed = Kind.SPEED.si(SECTION.waveSpeed(WATER));
        double stepS = 20 / speed / ideal;
        LineWaves line = waves(stepS);
        double reaches = Math.max(1, Math.round(ideal));
        assertThat(line.reaches()).isEqualTo((int) reaches);
        assertThat(line.adjustment()).isEqualTo(ideal / reaches - 1, within(1e-12));
        assertThat(line.impedance()).isEqualTo(20 / (reaches * stepS) / AREA, within(1e-3));
    }

    @Test
    void lossIsThatOfTheLineAndTurnsWithTheFlow() {
        LineWaves line = waves(1e-4);
        for (double flow : new double[] {0.001, 0.02, 0.07}) {
            double loss = SupplyLine.of(SECTION.withFittings(3))
                    .withFrictionCorrelation(FrictionCorrelation.HAALAND)
                    .loss(Kind.MASS_FLOW.of(flow), WATER)
                    .si();
            assertThat(line.loss(flow)).isEqualTo(loss, within(1e-9 * loss));
            assertThat(line.loss(-flow)).isEqualTo(-line.loss(flow));
        }
        assertThat(line.loss(0)).isZero();
        line.leaveFrictionOut();
        assertThat(line.loss(0.05)).isZero();
    }

    /** Slow changes meet the slope of the loss; a line without friction has the impedance of a shut or an open end. */
    @ParameterizedTest
    @ValueSource(doubles = {-0.06, -0.01, 0.03, 0.06})
    void admittancesAreThoseOfALine(double flow) {
        LineWaves line = waves(1e-4);
        double h = 1e-4 * Math.abs(flow);
        double slope = (line.loss(flow + h) - line.loss(flow - h)) / (2 * h);
        Complex[] slow = line.admittances(flow, 1e-3);
        assertThat(slow[0].getReal()).isEqualTo(1 / slope, within(1e-4 / slope));
        assertThat(slow[1].getReal()).isEqualTo(-1 / slope, within(1e-4 / slope));
        line.leaveFrictionOut();
        double speed = Kind.SPEED.si(SECTION.waveSpeed(WATER));
        for (double hertz : new double[] {3, 11, 40}) {
            double phase = 2 * Math.PI * hertz * 20 / speed;
            Complex[] ends = line.admittances(flow, 2 * Math.PI * hertz);
            double admittance = AREA / speed;
            assertThat(ends[0].getImaginary()).isEqualTo(-admittance / Math.tan(phase), within(1e-9 * ends[0].abs()));
            assertThat(ends[1].getImaginary()).isEqualTo(admittance / Math.sin(phase), within(1e-9 * ends[1].abs()));
            assertThat(ends[0].getReal()).isEqualTo(0, within(1e-12 * ends[0].abs()));
        }
    }

    /** A pulse runs along a line without friction, doubles at its end, and comes back from a shut one as it went, from an open one reversed. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void pulseComesBackFromTheEnd(boolean isShut) {
        LineWaves line = waves(20 / Kind.SPEED.si(SECTION.waveSpeed(WATER)) / 8);
        line.leaveFrictionOut();
        double rest = WATER.pressureSi();
        line.start(rest, 0);
        double pulse = 4e6;
        for (int step = 1; step <= 17; step++) {
            line.advance();
            // after the pulse the begin lets all pass that comes back
            double begin = step == 1 ? rest + pulse : (line.arrivingAtBegin() + rest) / 2;
            double end = isShut ? line.arrivingAtEnd() : rest;
            line.finish(begin, end);
            double back = step == 17 ? (isShut ? pulse : -pulse) : 0;
            assertThat(begin - rest).isEqualTo(step == 1 ? pulse : back, within(1e-3));
            double atEnd = isShut ? end - rest : line.flowAtEnd() * line.impedance();
            assertThat(atEnd).isEqualTo(step == 9 ? 2 * pulse : 0, within(1e-3));
            assertThat(line.flowAtBegin() * line.impedance()).isEqualTo(step == 1 ? pulse : -back, within(1e-3));
        }
    }

    /** Nothing moves in a circuit whose valves stay as they are: two ways to one head, fittings, a vessel and a valve half open. */
    @Test
    void steadyStateStays() {
        Circuit circuit = around380()
                .reservoir("source")
                .line("source", "long", line(2.4, 9.6, 30).withFittings(4))
                .line("source", "head", line(2.0, 9.6, 12))
                .line("head", "long", line(1.6, 9.6, 5))
                .vessel("long", attenuator(0.3))
                .reliefValve("long", orifice(0.2), megapascals(375), seconds(0.003))
                .head("head", orifice(0.3))
                .build();
        PressureHistory history = circuit.run(seconds(0.2), 40);
        int last = history.times().size() - 1;
        for (String node : circuit.nodes()) {
            assertThat(Kind.PRESSURE.si(history.ripple(node))).as(node).isLessThan(20);
            assertThat(history.massFlow(node).si(last))
                    .isEqualTo(history.massFlow(node).si(0), within(1e-9));
        }
        assertThat(history.pressure("long").si(0)).isBetween(375e6, 380e6);
        CircuitRun run = circuit.started(circuit.stepS(40));
        double[] in = new double[3];
        for (LineWaves line : run.lines()) {
            assertThat(line.flowAtEnd()).isEqualTo(line.flowAtBegin());
            in[line.from()] -= line.flowAtBegin();
            in[line.to()] += line.flowAtEnd();
            assertThat(run.nodes().get(line.from()).pressure()
                            - run.nodes().get(line.to()).pressure())
                    .isEqualTo(line.loss(line.flowAtBegin()), within(1.0));
        }
        for (int i = 0; i < 3; i++) {
            CircuitNode node = run.nodes().get(i);
            assertThat(in[i] + node.supply() - node.outflow()).isEqualTo(0, within(1e-9));
        }
    }

    /** A step is short enough for pump and reversal, and waves take a whole number of steps along the longest line. */
    @Test
    void stepResolvesPumpsAndLines() {
        double longest = 20 / Kind.SPEED.si(SECTION.waveSpeed(WATER));
        Circuit held = around380()
                .reservoir("r")
                .line("r", "h", line(4.8, 14.4, 20))
                .line("h", "k", line(4.8, 14.4, 2))
                .head("k", orifice(0.3))
                .build();
        assertThat(held.stepS(80)).isEqualTo(longest / 80, within(1e-12));
        assertThat(held.stepS(160)).isEqualTo(longest / 160, within(1e-12));
        // 0.5 ms at most, in whole reaches
        assertThat(held.stepS(1)).isEqualTo(longest / Math.ceil(longest / 5e-4), within(1e-12));
        Circuit lineless = around380().reservoir("r").head("r", orifice(0.3)).build();
        assertThat(lineless.stepS(80)).isEqualTo(5e-4);
        assertThat(stepOf(0.004, 0.6)).isLessThanOrEqualTo(0.004 / 20);
        assertThat(stepOf(0.0004, 0.6)).isLessThanOrEqualTo(0.0004 / 20);
        assertThat(stepOf(0, 0.6)).isEqualTo(5e-4);
        assertThat(stepOf(0, 10)).isBetween(1e-5, 1e-4);
        PumpMotion.Crank crank = new PumpMotion.Crank(Circuits.pump(5, 0), new IsentropeKernel(TAP), 998);
        assertThat(crank.plungerHz()).isEqualTo(50, within(1e-9));
        assertThat(crank.longestStep()).isBetween(1 / (50 * 1000.0), 1 / (50 * 50.0));
    }

    private static double stepOf(double reversalS, double strokesPerS) {
        Intensifier intensifier = Intensifier.of(20, Kind.VOLUME.of(1e-4)).withReversalTime(seconds(reversalS));
        return around380()
                .vessel("v", attenuator(1))
                .pump("v", PumpDrive.of(intensifier, megapascals(380), Kind.FREQUENCY.of(strokesPerS)))
                .head("v", orifice(0.33))
                .build()
                .stepS(1);
    }
}
