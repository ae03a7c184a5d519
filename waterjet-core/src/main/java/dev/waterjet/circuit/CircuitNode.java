package dev.waterjet.circuit;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;

/**
 * Node of a circuit: a volume, 0 or more, with the ends of lines, pumps, heads and valves. Absolute pressures in Pa.
 *
 * <p>Lines bring in S - G p, with the sum G of A/a over the line ends and S that of what arrives. With a volume the mass M(p) in it
 * takes the mean of the flows at both ends of the step, by Newton's method; without one the flows balance, a quadratic equation in
 * the root of the gauge pressure.
 */
final class CircuitNode {

    /** Band above the opening pressure in which a relief valve opens, relative to it: assumed. */
    private static final double RELIEF_BAND = 0.02;

    private static final int MAX_STEPS = 30;
    private static final double SETTLED_PA = 1;

    private final String name;
    private final IsentropeKernel isentrope;
    private final double referencePa;

    /** Root of twice the density at rest: an orifice takes Cd A times this times the root of the gauge pressure. */
    private final double rootOfDensity;

    private final List<PumpMotion> pumps = new ArrayList<>();
    private final List<Valve> valves = new ArrayList<>();
    private final List<ReliefValve> reliefValves = new ArrayList<>();
    private double volumeM3;
    private double wallCompliancePerPa;
    private boolean isReservoir;

    private double admittance;
    private double arriving;

    private double pressurePa;
    private double outflow;

    /** Flow from pumps, or from a reservoir. */
    private double supply;

    private double flowIn;

    private double massAtStart;

    /** Change of the mass in the vessel by its balance; small, so that thousands of steps do not add up their rounding. */
    private double massGained;

    private record Valve(double effectiveAreaM2, Opening opening) {}

    /** Relief valve: its opening follows the pressure with a lag of first order. */
    private static final class ReliefValve {
        private final double effectiveAreaM2;
        private final double opensPa;
        private final double lagS;
        private double opening;

        ReliefValve(double effectiveAreaM2, double opensPa, double lagS) {
            this.effectiveAreaM2 = effectiveAreaM2;
            this.opensPa = opensPa;
            this.lagS = lagS;
        }

        double target(double gaugePa) {
            return Math.min(1, Math.max(0, (gaugePa - opensPa) / (RELIEF_BAND * opensPa)));
        }
    }

    CircuitNode(String name, IsentropeKernel isentrope, double restDensityKgPerM3, double referencePa) {
        this.name = name;
        this.isentrope = isentrope;
        this.referencePa = referencePa;
        this.rootOfDensity = Math.sqrt(2 * restDensityKgPerM3);
        this.pressurePa = referencePa;
    }

    static double effectiveArea(Orifice orifice) {
        double boreM = orifice.boreSi();
        return orifice.dischargeCoefficient().si() * Math.PI / 4 * boreM * boreM;
    }

    String name() {
        return name;
    }

    void hold() {
        isReservoir = true;
    }

    boolean isReservoir() {
        return isReservoir;
    }

    void add(CircuitParts.Vessel vessel) {
        volumeM3 = Kind.VOLUME.si(vessel.attenuator().volume());
        wallCompliancePerPa = Kind.COMPRESSIBILITY.si(vessel.attenuator().wallCompliance());
    }

    void add(PumpMotion pump) {
        pumps.add(pump);
    }

    void add(CircuitParts.Outlet outlet) {
        valves.add(new Valve(effectiveArea(outlet.orifice()), new Opening(outlet.openingAtStart(), outlet.events())));
    }

    void add(CircuitParts.Relief valve) {
        reliefValves.add(new ReliefValve(effectiveArea(valve.seat()), valve.opensPa(), valve.lagS()));
    }

    void addLineEnd(double impedance) {
        admittance += 1 / impedance;
    }

    /** Storage of the vessel per pressure: V (1/w^2 + rho chi), in kg/Pa. */
    double storagePerPa(double atPa) {
        return volumeM3 * (isentrope.perPressure(atPa) + isentrope.density(atPa) * wallCompliancePerPa);
    }

    /** Flow of the pumps at their mean less that through heads and valves, with openings before the first event. */
    double meanInflow(double atPa) {
        double flow = 0;
        for (PumpMotion pump : pumps) {
            flow += pump.meanFlow(atPa);
        }
        return flow - steadyCoefficient(atPa) * rootOfGauge(atPa);
    }

    private double steadyCoefficient(double atPa) {
        double area = 0;
        for (Valve valve : valves) {
            area += valve.effectiveAreaM2 * valve.opening.at(Double.NEGATIVE_INFINITY);
        }
        for (ReliefValve valve : reliefValves) {
            area += valve.effectiveAreaM2 * valve.target(gauge(atPa));
        }
        return area * rootOfDensity;
    }

    /**
     * Admittance of vessel, heads and valves to small changes of pressure about a steady state, in kg/(s Pa). Relief valves open with
     * their lag.
     */
    Complex admittance(double atPa, double angularHz) {
        double root = Math.max(1, rootOfGauge(atPa));
        Complex sum = new Complex(steadyCoefficient(atPa) / (2 * root), angularHz * storagePerPa(atPa));
        for (ReliefValve valve : reliefValves) {
            double target = valve.target(gauge(atPa));
            if (target > 0 && target < 1) {
                double perPa = valve.effectiveAreaM2 * rootOfDensity * root / (RELIEF_BAND * valve.opensPa);
                sum = sum.add(new Complex(perPa).divide(new Complex(1, angularHz * valve.lagS)));
            }
        }
        return sum;
    }

    private static double gauge(double atPa) {
        return atPa - IsentropeKernel.ATMOSPHERE_PA;
    }

    private static double rootOfGauge(double atPa) {
        return Math.sqrt(Math.max(0, gauge(atPa)));
    }

    /** Starts at a steady pressure, with the flow that lines bring in. */
    void start(double startPa, double lineFlow) {
        pressurePa = startPa;
        for (ReliefValve valve : reliefValves) {
            valve.opening = valve.target(gauge(startPa));
        }
        outflow = steadyCoefficient(startPa) * rootOfGauge(startPa);
        supply = outflow - lineFlow;
        flowIn = lineFlow - outflow;
        massAtStart = massAt(startPa);
    }

    void clearArriving() {
        arriving = 0;
    }

    void arrive(double pressure, double impedance) {
        arriving += pressure / impedance;
    }

    /** Solves for the end of a step, once all lines have brought what arrives; returns the mass supplied in the step. */
    double advance(double timeS, double stepS) {
        double pumped = 0;
        for (PumpMotion pump : pumps) {
            pumped += pump.advance(stepS, pressurePa);
        }
        double coefficient = coefficient(timeS, stepS);
        double before = supply;
        if (isReservoir) {
            pressurePa = referencePa;
        } else if (volumeM3 > 0) {
            pressurePa = balanceVolume(pumped, coefficient, stepS);
        } else {
            pressurePa = balanceFlows(arriving + pumped / stepS, coefficient);
        }
        outflow = coefficient * rootOfGauge(pressurePa);
        double flowBefore = flowIn;
        flowIn = arriving - admittance * pressurePa - outflow;
        if (volumeM3 > 0) {
            massGained += pumped + stepS / 2 * (flowBefore + flowIn);
            supply = pumped / stepS;
            return pumped;
        }
        supply = pumps.isEmpty() && !isReservoir ? 0 : -flowIn;
        return stepS / 2 * (before + supply);
    }

    private double coefficient(double timeS, double stepS) {
        double area = 0;
        for (Valve valve : valves) {
            area += valve.effectiveAreaM2 * valve.opening.at(timeS);
        }
        for (ReliefValve valve : reliefValves) {
            valve.opening += (valve.target(gauge(pressurePa)) - valve.opening) * -Math.expm1(-stepS / valve.lagS);
            area += valve.effectiveAreaM2 * valve.opening;
        }
        return area * rootOfDensity;
    }

    private double balanceFlows(double incoming, double coefficient) {
        double above = incoming - admittance * IsentropeKernel.ATMOSPHERE_PA;
        if (above <= 0) {
            return incoming / admittance;
        }
        // stable also where one of the terms vanishes
        double root = 2 * above / (coefficient + Math.sqrt(coefficient * coefficient + 4 * admittance * above));
        return IsentropeKernel.ATMOSPHERE_PA + root * root;
    }

    private double balanceVolume(double pumped, double coefficient, double stepS) {
        double target = massGained + pumped + stepS / 2 * (flowIn + arriving);
        double p = pressurePa;
        for (int i = 0; i < MAX_STEPS; i++) {
            Require.between(
                    "absolute pressure in the vessel",
                    p,
                    0,
                    IsentropeKernel.MAX_PRESSURE_PA,
                    Units.MEGAPASCAL,
                    "range of the equation of state");
            double root = rootOfGauge(p);
            double missing = massAt(p) - massAtStart + stepS / 2 * (admittance * p + coefficient * root) - target;
            double slope = storagePerPaWithWall(p) + stepS / 2 * (admittance + coefficient / (2 * Math.max(1, root)));
            double change = missing / slope;
            p -= change;
            if (Math.abs(change) < SETTLED_PA) {
                return p;
            }
        }
        return p;
    }

    private double storagePerPaWithWall(double atPa) {
        double wall = 1 + wallCompliancePerPa * (atPa - referencePa);
        return volumeM3 * (isentrope.perPressure(atPa) * wall + isentrope.density(atPa) * wallCompliancePerPa);
    }

    private double massAt(double atPa) {
        return volumeM3 > 0 ? volumeM3 * isentrope.density(atPa) * (1 + wallCompliancePerPa * (atPa - referencePa)) : 0;
    }

    double mass() {
        return massAt(pressurePa);
    }

    double pressure() {
        return pressurePa;
    }

    /** Flow through heads and valves, in kg/s. */
    double outflow() {
        return outflow;
    }

    /** Flow from pumps or the reservoir, in kg/s. */
    double supply() {
        return supply;
    }
}
