package dev.waterjet.circuit;

import dev.waterjet.hydraulics.FrictionCorrelation;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.measure.Kind;
import dev.waterjet.water.WaterState;
import java.util.Arrays;
import org.apache.commons.math3.complex.Complex;

/**
 * Waves in one section of supply line by the method of characteristics: linear acoustics about a reference pressure, friction of
 * steady flow. Along dx = +-a dt the quantity p +- B m changes by friction only, with B = a/A and the mass flow m.
 *
 * <p>The friction of a reach is the mean of those at its ends, for both characteristics, so that the mass balance is exact.
 */
final class LineWaves {

    private static final double SMALL = 1e-6;

    /** Relative change of a flow for which a loss coefficient is kept: the turbulent one varies as its fifth root at most. */
    private static final double SAME_COEFFICIENT = 5e-4;

    private static final FrictionCorrelation CORRELATION = FrictionCorrelation.HAALAND;

    private final int from;
    private final int to;
    private final int reaches;
    private final double referencePa;
    private final double densityKgPerM3;
    private final double viscosityPaS;
    private final double boreM;
    private final double roughness;
    private final double areaM2;
    private final double lengthM;
    private final double adjustedMPerS;
    private final double trueMPerS;

    /** Friction factor times this plus the next, times m |m|, is the pressure loss of a reach. */
    private final double perFactor;

    private final double perFitting;

    /** B = a/A. */
    private final double impedance;

    private boolean hasFriction = true;
    private double[] pressures;
    private double[] flows;
    private double[] nextPressures;
    private double[] nextFlows;
    private final double[] losses;

    /** Loss coefficient of each point, and the flow at which it was taken. */
    private final double[] coefficients;

    private final double[] coefficientFlows;

    LineWaves(int from, int to, SupplyLine.Section section, WaterState water, double stepS) {
        this.from = from;
        this.to = to;
        this.referencePa = water.pressureSi();
        this.densityKgPerM3 = water.densitySi();
        this.viscosityPaS = water.viscositySi();
        this.boreM = Kind.LENGTH.si(section.bore());
        this.lengthM = Kind.LENGTH.si(section.length());
        this.roughness = Kind.LENGTH.si(section.roughness()) / boreM;
        this.areaM2 = Math.PI / 4 * boreM * boreM;
        this.trueMPerS = Kind.SPEED.si(section.waveSpeed(water));
        this.reaches = (int) Math.max(1, Math.round(lengthM / (trueMPerS * stepS)));
        this.adjustedMPerS = lengthM / (reaches * stepS);
        this.impedance = adjustedMPerS / areaM2;
        double perSquare = 1 / (2 * densityKgPerM3 * areaM2 * areaM2);
        this.perFactor = lengthM / reaches / boreM * perSquare;
        this.perFitting = section.lossCoefficient() / reaches * perSquare;
        this.pressures = new double[reaches + 1];
        this.flows = new double[reaches + 1];
        this.nextPressures = new double[reaches + 1];
        this.nextFlows = new double[reaches + 1];
        this.losses = new double[reaches + 1];
        this.coefficients = new double[reaches + 1];
        this.coefficientFlows = new double[reaches + 1];
    }

    int from() {
        return from;
    }

    int to() {
        return to;
    }

    int reaches() {
        return reaches;
    }

    double impedance() {
        return impedance;
    }

    /** Relative change of the wave speed by which reaches fit the length. */
    double adjustment() {
        return adjustedMPerS / trueMPerS - 1;
    }

    void leaveFrictionOut() {
        hasFriction = false;
        Arrays.fill(coefficientFlows, 0);
        Arrays.fill(coefficients, 0);
    }

    /** Lowest frequency of a quarter of a wave: a/(4 L). */
    double quarterWaveHz() {
        return trueMPerS / (4 * lengthM);
    }

    /**
     * Admittances of both ends to small changes about a steady flow: of an end by its own pressure, and by that of the other end,
     * with the sign of a flow into the line. Z and g of a line with friction R' for each length: Z = sqrt((i w/A + R')/(i w A/a^2)).
     */
    Complex[] admittances(double flowKgPerS, double angularHz) {
        double h = SMALL * Math.max(SMALL, Math.abs(flowKgPerS));
        double resistance = (loss(flowKgPerS + h) - loss(flowKgPerS - h)) / (2 * h * lengthM);
        Complex series = new Complex(resistance, angularHz / areaM2);
        Complex shunt = new Complex(0, angularHz * areaM2 / (trueMPerS * trueMPerS));
        Complex z = series.divide(shunt).sqrt();
        Complex length = series.multiply(shunt).sqrt().multiply(lengthM);
        Complex own = length.tanh().multiply(z).reciprocal();
        Complex other = length.sinh().multiply(z).reciprocal().negate();
        return new Complex[] {own, other};
    }

    /** Pressure loss of the whole section at a steady flow, in Pa. */
    double loss(double flowKgPerS) {
        return reaches * reachLoss(flowKgPerS);
    }

    private double reachLoss(double flowKgPerS) {
        double magnitude = Math.abs(flowKgPerS);
        return coefficient(magnitude) * flowKgPerS * magnitude;
    }

    private double coefficient(double magnitude) {
        return !hasFriction || magnitude == 0
                ? 0
                : CORRELATION.factor(magnitude * boreM / (areaM2 * viscosityPaS), roughness) * perFactor + perFitting;
    }

    /** Loss of a reach at the flow of a point; its coefficient changes by 1e-4 at most before it is taken anew. */
    private double reachLossAt(int point) {
        double flow = flows[point];
        double magnitude = Math.abs(flow);
        if (Math.abs(magnitude - coefficientFlows[point]) > SAME_COEFFICIENT * coefficientFlows[point]) {
            coefficients[point] = coefficient(magnitude);
            coefficientFlows[point] = magnitude;
        }
        return coefficients[point] * flow * magnitude;
    }

    /** Starts with a steady flow. */
    void start(double fromPa, double flowKgPerS) {
        double loss = reachLoss(flowKgPerS);
        for (int i = 0; i <= reaches; i++) {
            pressures[i] = fromPa - i * loss;
            flows[i] = flowKgPerS;
        }
    }

    /** Advances all points but the ends. */
    void advance() {
        for (int i = 0; i <= reaches; i++) {
            losses[i] = reachLossAt(i);
        }
        for (int i = 1; i < reaches; i++) {
            double plus = pressures[i - 1] + impedance * flows[i - 1] - (losses[i - 1] + losses[i]) / 2;
            double minus = pressures[i + 1] - impedance * flows[i + 1] + (losses[i] + losses[i + 1]) / 2;
            nextPressures[i] = (plus + minus) / 2;
            nextFlows[i] = (plus - minus) / (2 * impedance);
        }
    }

    /** Characteristic that arrives at the begin: p - B m. */
    double arrivingAtBegin() {
        return pressures[1] - impedance * flows[1] + (losses[0] + losses[1]) / 2;
    }

    /** Characteristic that arrives at the end: p + B m. */
    double arrivingAtEnd() {
        int last = reaches - 1;
        return pressures[last] + impedance * flows[last] - (losses[last] + losses[last + 1]) / 2;
    }

    /** Sets the ends after {@link #advance}, and makes the new time the present one. */
    void finish(double fromPa, double toPa) {
        nextFlows[0] = (fromPa - arrivingAtBegin()) / impedance;
        nextFlows[reaches] = (arrivingAtEnd() - toPa) / impedance;
        nextPressures[0] = fromPa;
        nextPressures[reaches] = toPa;
        double[] oldPressures = pressures;
        double[] oldFlows = flows;
        pressures = nextPressures;
        flows = nextFlows;
        nextPressures = oldPressures;
        nextFlows = oldFlows;
    }

    double flowAtBegin() {
        return flows[0];
    }

    double flowAtEnd() {
        return flows[reaches];
    }

    /** Mass in the section: rho A L + (A/a^2) times the integral of p - p_ref, in kg. */
    double mass() {
        double sum = 0;
        for (int i = 0; i <= reaches; i++) {
            sum += weight(i) * (pressures[i] - referencePa);
        }
        return areaM2 * (densityKgPerM3 * lengthM + sum * lengthM / reaches / (adjustedMPerS * adjustedMPerS));
    }

    /** Energy of pressure and flow about the reference: the integral of A p'^2/(2 rho a^2) + m^2/(2 rho A), in J. */
    double energy() {
        double sum = 0;
        for (int i = 0; i <= reaches; i++) {
            double excess = (pressures[i] - referencePa) * areaM2 / adjustedMPerS;
            sum += weight(i) * (excess * excess + flows[i] * flows[i]);
        }
        return sum * lengthM / reaches / (2 * densityKgPerM3 * areaM2);
    }

    private double weight(int i) {
        return i == 0 || i == reaches ? 0.5 : 1;
    }
}
