package dev.waterjet.circuit;

import static dev.waterjet.circuit.Circuits.around380;
import static dev.waterjet.circuit.Circuits.attenuator;
import static dev.waterjet.circuit.Circuits.closing;
import static dev.waterjet.circuit.Circuits.line;
import static dev.waterjet.circuit.Circuits.orifice;
import static dev.waterjet.circuit.Circuits.pump;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.hydraulics.FrictionCorrelation;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.measure.Kind;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.SplittableRandom;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.apache.commons.math3.ode.sampling.StepHandler;
import org.apache.commons.math3.ode.sampling.StepInterpolator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Balances of mass and energy, and a line by an independent integrator. */
class CircuitBalanceTest {

    private static CircuitRun shut(double closingS) {
        Circuit circuit = around380()
                .reservoir("pump")
                .line("pump", "head", line(4.8, 14.4, 20))
                .head("head", orifice(0.33), closing(0, closingS))
                .build();
        return circuit.started(circuit.stepS(40));
    }

    /** Behind a shut valve and without friction nothing takes energy away. */
    @Test
    void lineWithoutFrictionKeepsItsEnergy() {
        CircuitRun run = shut(0);
        LineWaves line = run.lines().get(0);
        line.leaveFrictionOut();
        line.start(run.nodes().get(0).pressure(), line.flowAtBegin());
        double before = line.energy();
        double stepS = 20 / (40 * 2012.0);
        for (int i = 1; i <= 40_000; i++) {
            run.advance(i * stepS);
        }
        assertThat(line.energy()).isEqualTo(before, within(1e-12 * before));
    }

    @Test
    void frictionTakesEnergyOutOfALine() {
        CircuitRun run = shut(0);
        LineWaves line = run.lines().get(0);
        double stepS = 20 / (40 * 2012.0);
        double last = Double.POSITIVE_INFINITY;
        for (int period = 0; period < 20; period++) {
            for (int i = 1; i <= 160; i++) {
                run.advance((period * 160 + i) * stepS);
            }
            assertThat(line.energy()).isLessThan(last);
            last = line.energy();
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void noMassIsLostInAnyCircuit(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int plungers = 2 + random.nextInt(5);
        CircuitBuilder circuit = around380()
                .pump("p", PumpDrive.of(pump(plungers, random.nextDouble())))
                .line("p", "m", line(4.8, 14.4, 1 + 30 * random.nextDouble()))
                .reliefValve("m", orifice(0.6), megapascals(390), seconds(0.004));
        if (random.nextBoolean()) {
            circuit.vessel("p", attenuator(0.2 + random.nextDouble()));
        }
        for (int head = 0; head < 1 + random.nextInt(3); head++) {
            circuit.line("m", "h" + head, line(2.4, 9.6, 0.5 + 5 * random.nextDouble()));
            circuit.head(
                    "h" + head,
                    orifice(0.15 + 0.1 * random.nextDouble()),
                    closing(0.1 * random.nextDouble(), 0.02 * random.nextDouble()),
                    ValveEvent.opening(seconds(0.2), seconds(0.03 * random.nextDouble())));
        }
        PressureHistory history = circuit.build().run(seconds(0.4), 40);
        assertThat(history.massImbalance()).isLessThan(1e-12);
        double sum = 0;
        for (String node : history.massFlows().keySet()) {
            sum += history.massFlow(node).stream().sum();
        }
        // what comes in goes out, but for what the circuit stores
        assertThat(sum / history.times().size()).isEqualTo(0, within(0.02));
    }

    /** A line of cells with pressures, and flows between them, by an integrator with error control. */
    @Test
    void closingHeadAgreesWithAnIndependentIntegrator() {
        LumpedLine lumped = new LumpedLine(60);
        double[] peak = new double[1];
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-9, 1e-3, 1e-6, 1e-8);
        integrator.addStepHandler(new StepHandler() {
            @Override
            public void init(double t0, double[] y0, double t) {}

            @Override
            public void handleStep(StepInterpolator interpolator, boolean isLast) {
                interpolator.setInterpolatedTime(interpolator.getCurrentTime());
                peak[0] = Math.max(peak[0], lumped.headPa(interpolator.getInterpolatedState()));
            }
        });
        double[] state = lumped.start();
        integrator.integrate(lumped, 0, state, 0.03, state);
        PressureHistory history = around380()
                .reservoir("pump")
                .line("pump", "head", line(4.8, 14.4, 20))
                .head("head", orifice(0.33), closing(0, 0.02))
                .build()
                .run(seconds(0.03));
        double rise = Kind.PRESSURE.si(history.highest("head"))
                - history.pressure("head").si(0);
        double lumpedRise = peak[0] - 101_325 - history.pressure("head").si(0);
        // the cells smooth the front, less so the more there are
        assertThat(lumpedRise).isEqualTo(rise, within(0.015 * rise));
    }

    private static final class LumpedLine implements FirstOrderDifferentialEquations {

        private final int cells;
        private final SupplyLine.Section section = line(4.8, 14.4, 20);
        private final WaterState water = Water.stable().atEntropySi(380.101325e6, Circuits.TAP.entropySi());
        private final double areaM2 = Math.PI / 4 * 4.8e-3 * 4.8e-3;
        private final double speed = Kind.SPEED.si(section.waveSpeed(water));
        private final double cellM;

        LumpedLine(int cells) {
            this.cells = cells;
            this.cellM = 20.0 / cells;
        }

        @Override
        public int getDimension() {
            return 2 * cells;
        }

        private double lossPerM(double flow) {
            double factor = FrictionCorrelation.HAALAND.factor(
                    Math.abs(flow) * 4.8e-3 / (areaM2 * water.viscositySi()) + 1e-9, 1.5e-6 / 4.8e-3);
            return factor / 4.8e-3 * flow * Math.abs(flow) / (2 * water.densitySi() * areaM2 * areaM2);
        }

        double outflow(double time, double headPa) {
            double open = Math.max(0, 1 - time / 0.02);
            return open
                    * CircuitNode.effectiveArea(orifice(0.33))
                    * Math.sqrt(2 * Circuits.TAP.densitySi() * Math.max(0, headPa - 101_325));
        }

        double headPa(double[] state) {
            return state[cells - 1];
        }

        double[] start() {
            CircuitRun run = shut(0.02);
            double flow = run.lines().get(0).flowAtBegin();
            double[] state = new double[2 * cells];
            for (int i = 0; i < cells; i++) {
                state[i] = 380.101325e6 - lossPerM(flow) * (i + 0.5) * cellM;
                state[cells + i] = flow;
            }
            return state;
        }

        /** Pressures of cells, then the flow into each of them. */
        @Override
        public void computeDerivatives(double time, double[] y, double[] rate) {
            double capacity = cellM * areaM2 / (speed * speed);
            for (int i = 0; i < cells; i++) {
                double out = i + 1 < cells ? y[cells + i + 1] : outflow(time, y[i]);
                rate[i] = (y[cells + i] - out) / capacity;
                double before = i == 0 ? 380.101325e6 : y[i - 1];
                double length = i == 0 ? cellM / 2 : cellM;
                rate[cells + i] = areaM2 / length * (before - y[i]) - areaM2 * lossPerM(y[cells + i]);
            }
        }
    }
}
