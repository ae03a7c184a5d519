package dev.waterjet.circuit;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.water.WaterState;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.measure.quantity.Pressure;

/** One run of a circuit over time, from the steady state on. */
final class CircuitRun {

    /** Relative distance from the reference beyond which wave speed and density of the lines no longer hold. */
    private static final double FAR = 0.2;

    private static final double MAX_ADJUSTMENT = 0.02;

    private final double stepS;
    private final double referencePa;
    private final List<CircuitNode> nodes = new ArrayList<>();
    private final List<LineWaves> lines = new ArrayList<>();
    private double massIn;
    private double massOut;

    CircuitRun(CircuitParts parts, CircuitWater water, double stepS) {
        this.stepS = stepS;
        this.referencePa = water.referencePa();
        IsentropeKernel isentrope = water.isentrope();
        double rest = water.atRest().densitySi();
        List<String> names = parts.nodes();
        names.forEach(name -> nodes.add(new CircuitNode(name, isentrope, rest, referencePa)));
        parts.reservoirs().forEach(name -> nodes.get(names.indexOf(name)).hold());
        parts.vessels()
                .forEach(vessel -> nodes.get(names.indexOf(vessel.node())).add(vessel));
        parts.pumps()
                .forEach(pump ->
                        nodes.get(names.indexOf(pump.node())).add(PumpMotion.of(pump.drive(), isentrope, rest)));
        parts.outlets()
                .forEach(outlet -> nodes.get(names.indexOf(outlet.node())).add(outlet));
        parts.relief().forEach(valve -> nodes.get(names.indexOf(valve.node())).add(valve));
        WaterState inLines = isentrope.at(referencePa);
        for (CircuitParts.Line line : parts.lines()) {
            int from = names.indexOf(line.from());
            int to = names.indexOf(line.to());
            LineWaves waves = new LineWaves(from, to, line.section(), inLines, stepS);
            lines.add(waves);
            nodes.get(from).addLineEnd(waves.impedance());
            nodes.get(to).addLineEnd(waves.impedance());
        }
    }

    List<CircuitNode> nodes() {
        return nodes;
    }

    List<LineWaves> lines() {
        return lines;
    }

    /** Sets every node and line to the steady state. */
    void start() {
        SteadyFlow steady = new SteadyFlow(nodes, lines, referencePa);
        steady.solve();
        double[] flowIn = new double[nodes.size()];
        for (int j = 0; j < lines.size(); j++) {
            LineWaves line = lines.get(j);
            double flow = steady.flow(j);
            line.start(steady.pressure(line.from()), flow);
            flowIn[line.from()] -= flow;
            flowIn[line.to()] += flow;
        }
        for (int i = 0; i < nodes.size(); i++) {
            nodes.get(i).start(steady.pressure(i), flowIn[i]);
        }
    }

    /** Advances everything to a time. */
    void advance(double timeS) {
        for (CircuitNode node : nodes) {
            node.clearArriving();
        }
        for (LineWaves line : lines) {
            line.advance();
            nodes.get(line.from()).arrive(line.arrivingAtBegin(), line.impedance());
            nodes.get(line.to()).arrive(line.arrivingAtEnd(), line.impedance());
        }
        for (CircuitNode node : nodes) {
            double before = node.outflow();
            massIn += node.advance(timeS, stepS);
            massOut += stepS / 2 * (before + node.outflow());
        }
        for (LineWaves line : lines) {
            line.finish(nodes.get(line.from()).pressure(), nodes.get(line.to()).pressure());
        }
    }

    double mass() {
        double mass = 0;
        for (CircuitNode node : nodes) {
            mass += node.mass();
        }
        for (LineWaves line : lines) {
            mass += line.mass();
        }
        return mass;
    }

    PressureHistory history(int count) {
        int size = nodes.size();
        double[] times = new double[count + 1];
        double[][] pressures = new double[size][count + 1];
        double[][] flows = new double[size][count + 1];
        start();
        double massAtStart = mass();
        record(0, pressures, flows);
        for (int k = 1; k <= count; k++) {
            times[k] = k * stepS;
            advance(times[k]);
            record(k, pressures, flows);
        }
        Map<String, QuantityArray<Pressure>> pressureOf = new LinkedHashMap<>();
        Map<String, QuantityArray<MassFlow>> flowOf = new LinkedHashMap<>();
        for (int i = 0; i < size; i++) {
            pressureOf.put(nodes.get(i).name(), QuantityArray.ofSi(Kind.PRESSURE, pressures[i]));
            flowOf.put(nodes.get(i).name(), QuantityArray.ofSi(Kind.MASS_FLOW, flows[i]));
        }
        double missing = mass() - massAtStart - massIn + massOut;
        return new PressureHistory(
                QuantityArray.ofSi(Kind.TIME, times),
                pressureOf,
                flowOf,
                Math.abs(missing) / massAtStart,
                cautions(pressures));
    }

    private void record(int k, double[][] pressures, double[][] flows) {
        for (int i = 0; i < nodes.size(); i++) {
            CircuitNode node = nodes.get(i);
            pressures[i][k] = node.pressure() - IsentropeKernel.ATMOSPHERE_PA;
            flows[i][k] = node.outflow() - node.supply();
        }
    }

    private List<Caution> cautions(double[][] pressures) {
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (double[] ofNode : pressures) {
            for (double pressure : ofNode) {
                lowest = Math.min(lowest, pressure);
                highest = Math.max(highest, pressure);
            }
        }
        List<Caution> cautions = new ArrayList<>(List.of(CircuitCautions.IDEAL));
        double gaugePa = referencePa - IsentropeKernel.ATMOSPHERE_PA;
        if (!lines.isEmpty()) {
            cautions.add(CircuitCautions.QUASI_STEADY);
            if (lowest < (1 - FAR) * gaugePa || highest > (1 + FAR) * gaugePa) {
                cautions.add(CircuitCautions.farFromReference(lowest, highest, gaugePa));
            }
        }
        double adjustment = lines.stream()
                .mapToDouble(line -> Math.abs(line.adjustment()))
                .max()
                .orElse(0);
        if (adjustment > MAX_ADJUSTMENT) {
            cautions.add(CircuitCautions.adjusted(adjustment));
        }
        if (lowest < 0) {
            cautions.add(CircuitCautions.belowAtmosphere(lowest));
        }
        return cautions;
    }
}
