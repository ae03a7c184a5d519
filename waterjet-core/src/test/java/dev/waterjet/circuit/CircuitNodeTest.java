package dev.waterjet.circuit;

import static dev.waterjet.circuit.Circuits.TAP;
import static dev.waterjet.circuit.Circuits.around380;
import static dev.waterjet.circuit.Circuits.attenuator;
import static dev.waterjet.circuit.Circuits.line;
import static dev.waterjet.circuit.Circuits.megapascalsOf;
import static dev.waterjet.circuit.Circuits.orifice;
import static dev.waterjet.circuit.Circuits.pump;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.measure.Kind;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Flow and storage of a node: as derivatives, by closed forms, and in a run. */
class CircuitNodeTest {

    private static final double REFERENCE_PA = 380.101325e6;
    private static final double ATMOSPHERE_PA = 101_325;
    private static final IsentropeKernel ISENTROPE = new IsentropeKernel(TAP);
    private static final Orifice SEAT = orifice(0.4);
    private static final double LAG_S = 0.004;

    private static CircuitNode node() {
        return new CircuitNode("node", ISENTROPE, TAP.densitySi(), REFERENCE_PA);
    }

    private static CircuitNode withHeadAndReliefValve() {
        CircuitNode node = node();
        node.add(new CircuitParts.Outlet("node", orifice(0.3), 0.8, List.of()));
        node.add(new CircuitParts.Relief("node", SEAT, 370e6, LAG_S));
        return node;
    }

    /** Shut below 370 MPa, open from 377.4 MPa on, and half open between. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 150, 369, 371, 374, 377, 378, 500})
    void admittanceIsTheDerivativeOfTheFlow(double gaugeMpa) {
        CircuitNode node = withHeadAndReliefValve();
        double p = gaugeMpa * 1e6 + ATMOSPHERE_PA;
        double h = 1e3;
        double slope = (node.meanInflow(p - h) - node.meanInflow(p + h)) / (2 * h);
        assertThat(node.admittance(p, 0).getReal()).isEqualTo(slope, within(1e-6 * slope));
        assertThat(node.admittance(p, 0).getImaginary()).isZero();
    }

    /** Neither a head nor a valve lets anything back. */
    @Test
    void nothingFlowsBelowTheAtmosphere() {
        CircuitNode node = withHeadAndReliefValve();
        assertThat(node.meanInflow(0.5 * ATMOSPHERE_PA)).isZero();
        node.start(0.5 * ATMOSPHERE_PA, 0);
        assertThat(node.outflow()).isZero();
    }

    /** A lag of first order divides the admittance of the valve by 1 + i w T; the head has none. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 40, 900})
    void reliefValveFollowsWithItsLag(double angularHz) {
        CircuitNode head = node();
        head.add(new CircuitParts.Outlet("node", orifice(0.3), 0.8, List.of()));
        double p = 374e6 + ATMOSPHERE_PA;
        CircuitNode half = withHeadAndReliefValve();
        double area = Math.PI / 4 * 0.65 * 0.0004 * 0.0004;
        double gauge = 374e6;
        // opening (p - 370 MPa)/(2 % of 370 MPa), and what flows through it at that opening
        double open = (374 - 370) / (0.02 * 370);
        double atOpening = area * open * Math.sqrt(2 * TAP.densitySi() * gauge) / (2 * gauge);
        double byOpening = area * Math.sqrt(2 * TAP.densitySi() * gauge) / (0.02 * 370e6);
        Complex expected = new Complex(atOpening).add(new Complex(byOpening).divide(new Complex(1, angularHz * LAG_S)));
        Complex valve = half.admittance(p, angularHz).subtract(head.admittance(p, angularHz));
        assertThat(valve.subtract(expected).abs()).isLessThan(1e-9 * expected.abs());
    }

    @Test
    void storageIsTheChangeOfMass() {
        CircuitNode node = node();
        node.add(new CircuitParts.Vessel("node", attenuator(1.3)));
        double h = 1e4;
        node.start(REFERENCE_PA + h, 0);
        double above = node.mass();
        node.start(REFERENCE_PA - h, 0);
        double below = node.mass();
        double slope = (above - below) / (2 * h);
        assertThat(node.storagePerPa(REFERENCE_PA)).isEqualTo(slope, within(1e-6 * slope));
        assertThat(node.admittance(REFERENCE_PA, 7).getImaginary()).isEqualTo(7 * slope, within(1e-5 * slope));
        double chi = Kind.COMPRESSIBILITY.si(attenuator(1.3).wallCompliance());
        double density = ISENTROPE.at(300e6).densitySi();
        node.start(300e6, 0);
        assertThat(node.mass()).isEqualTo(1.3e-3 * density * (1 - chi * (REFERENCE_PA - 300e6)), within(1e-11));
    }

    /** A vessel that nothing joins keeps its mass; what a head takes lowers it by as much, at a falling pressure. */
    @Test
    void blowDownOfAVesselFollowsItsQuadrature() {
        PressureHistory history = around380()
                .vessel("vessel", attenuator(2))
                .reservoir("source")
                .line("source", "vessel", line(0.05, 9.6, 3))
                .shutHead("vessel", orifice(0.4), ValveEvent.opening(seconds(0), seconds(0)))
                .build()
                .run(seconds(0.5));
        double taken = Math.PI / 4 * 0.65 * 0.0004 * 0.0004 * Math.sqrt(2 * TAP.densitySi());
        double wall = Kind.COMPRESSIBILITY.si(attenuator(2).wallCompliance());
        double gauge = 380e6;
        int last = history.times().size() - 1;
        double timeS = history.times().si(last);
        int steps = 20_000;
        for (int i = 0; i < steps; i++) {
            double half = gauge - rate(gauge, taken, wall) * timeS / steps / 2;
            gauge -= rate(half, taken, wall) * timeS / steps;
        }
        // the capillary feeds a little
        assertThat(history.pressure("vessel").si(last)).isEqualTo(gauge, within(2e-3 * gauge));
        assertThat(gauge).isLessThan(360e6);
    }

    private static double rate(double gauge, double taken, double wall) {
        double p = gauge + ATMOSPHERE_PA;
        double storage =
                2e-3 * (ISENTROPE.perPressure(p) * (1 + wall * (p - REFERENCE_PA)) + ISENTROPE.density(p) * wall);
        return taken * Math.sqrt(gauge) / storage;
    }

    /** Series and its derivative against the equation of state, at pressures between its nodes. */
    @ParameterizedTest
    @ValueSource(doubles = {0.101325, 7, 63, 222, 380, 641, 999})
    void isentropeIsThatOfTheEquationOfState(double megapascals) {
        double p = megapascals * 1e6;
        double density = ISENTROPE.at(p).densitySi();
        double speed = Kind.SPEED.si(ISENTROPE.at(p).soundSpeed());
        assertThat(ISENTROPE.density(p)).isEqualTo(density, within(1e-10 * density));
        assertThat(ISENTROPE.perPressure(p)).isEqualTo(1 / (speed * speed), within(1e-8 / (speed * speed)));
    }

    /** Where a relief valve is half open, it damps; the Fourier sum has it as the run has it. */
    @Test
    void rippleBehindAHalfOpenReliefValveIsThatOfTheRun() {
        for (double lagS : new double[] {0.0005, 0.01}) {
            Circuit circuit = around380()
                    .vessel("vessel", attenuator(0.5))
                    .pump("vessel", PumpDrive.of(pump(3, 0.2)))
                    .head("vessel", orifice(0.26))
                    .reliefValve("vessel", orifice(0.5), megapascals(380), seconds(lagS))
                    .build();
            double byFourier = megapascalsOf(circuit.ripple().at("vessel"));
            PressureHistory settled = circuit.run(seconds(2)).between(seconds(1.6), seconds(2));
            assertThat(megapascalsOf(settled.ripple("vessel"))).isEqualTo(byFourier, within(0.03 * byFourier));
        }
    }

    /** A reservoir holds its pressure: no ripple there, and that of the pump on the other end of the line is the run's. */
    @Test
    void reservoirHasNoRipple() {
        Circuit circuit = around380()
                .pump("pump", PumpDrive.of(pump(3, 0)))
                .vessel("pump", attenuator(0.5))
                .line("pump", "head", line(2.4, 9.6, 4))
                .line("head", "reservoir", line(2.4, 9.6, 7))
                .reservoir("reservoir")
                .head("head", orifice(0.33))
                .build();
        PressureRipple ripple = circuit.ripple();
        assertThat(megapascalsOf(ripple.at("reservoir"))).isEqualTo(0, within(1e-9));
        PressureHistory settled = circuit.run(seconds(0.8), 40).between(seconds(0.5), seconds(0.8));
        assertThat(settled.ripple("reservoir").getValue().doubleValue()).isZero();
        for (String node : List.of("pump", "head")) {
            double byFourier = megapascalsOf(ripple.at(node));
            assertThat(megapascalsOf(settled.ripple(node))).isEqualTo(byFourier, within(0.04 * byFourier));
        }
    }
}
