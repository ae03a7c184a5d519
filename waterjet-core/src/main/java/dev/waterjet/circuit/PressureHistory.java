package dev.waterjet.circuit;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Time;

/**
 * Gauge pressure and mass flow over time at every node of a circuit.
 *
 * @param times times of the samples, rising; the first sample is the steady state
 * @param pressures gauge pressures by node
 * @param massFlows mass flow out of the circuit by node: positive through heads and valves, negative from a pump or a reservoir, 0 at
 *     nodes with neither
 * @param massImbalance mass that the run has lost or gained, over the mass in the circuit at the start; rounding only
 * @param cautions cautions that apply, one or more
 */
public record PressureHistory(
        QuantityArray<Time> times,
        Map<String, QuantityArray<Pressure>> pressures,
        Map<String, QuantityArray<MassFlow>> massFlows,
        double massImbalance,
        List<Caution> cautions)
        implements Described {

    /**
     * Checks the components.
     *
     * @param times times of the samples, one or more
     * @param pressures gauge pressures by node, as many as times
     * @param massFlows mass flow out of the circuit by node, for the same nodes
     * @param massImbalance relative imbalance of mass, 0 or more
     * @param cautions cautions that apply
     * @throws dev.waterjet.measure.DomainException if the numbers of samples or of nodes differ
     */
    public PressureHistory {
        Objects.requireNonNull(times, "times");
        Objects.requireNonNull(pressures, "pressures");
        Objects.requireNonNull(massFlows, "massFlows");
        Objects.requireNonNull(cautions, "cautions");
        Require.atLeast("number of samples", times.size(), 1, Units.ONE, "");
        pressures = Collections.unmodifiableMap(new LinkedHashMap<>(pressures));
        massFlows = Collections.unmodifiableMap(new LinkedHashMap<>(massFlows));
        requireSize("number of nodes", massFlows.size(), pressures.size());
        for (Map.Entry<String, QuantityArray<Pressure>> node : pressures.entrySet()) {
            QuantityArray<MassFlow> flows = massFlows.get(node.getKey());
            requireSize("number of pressures", node.getValue().size(), times.size());
            requireSize("number of mass flows", flows == null ? 0 : flows.size(), times.size());
        }
        massImbalance = Require.notNegative("imbalance of mass", massImbalance, Units.ONE);
        cautions = List.copyOf(cautions);
    }

    private static void requireSize(String what, int size, int expected) {
        Require.between(what, size, expected, expected, Units.ONE, "one for each");
    }

    /**
     * Returns the gauge pressure at a node.
     *
     * @param node name of the node
     * @return a pressure for each time
     * @throws NoSolutionException if there is no such node ({@code unknown-node})
     */
    public QuantityArray<Pressure> pressure(String node) {
        return of(pressures, node);
    }

    /**
     * Returns the mass flow out of the circuit at a node.
     *
     * @param node name of the node
     * @return a mass flow for each time
     * @throws NoSolutionException as {@link #pressure}
     */
    public QuantityArray<MassFlow> massFlow(String node) {
        return of(massFlows, node);
    }

    private static <T> T of(Map<String, T> byNode, String node) {
        T found = byNode.get(Objects.requireNonNull(node, "node"));
        if (found == null) {
            throw new NoSolutionException(Message.of("unknown-node", "unknown node {node}; the circuit has {nodes}")
                    .withInput("node", node)
                    .with("nodes", String.join(", ", byNode.keySet())));
        }
        return found;
    }

    /**
     * Returns the highest pressure at a node.
     *
     * @param node name of the node
     * @return the gauge pressure
     * @throws NoSolutionException as {@link #pressure}
     */
    public Quantity<Pressure> highest(String node) {
        return Kind.PRESSURE.of(pressure(node).stream().max().orElseThrow());
    }

    /**
     * Returns the lowest pressure at a node.
     *
     * @param node name of the node
     * @return the gauge pressure
     * @throws NoSolutionException as {@link #pressure}
     */
    public Quantity<Pressure> lowest(String node) {
        return Kind.PRESSURE.of(pressure(node).stream().min().orElseThrow());
    }

    /**
     * Returns the pressure ripple at a node: highest less lowest pressure.
     *
     * @param node name of the node
     * @return the pressure ripple, peak to peak
     * @throws NoSolutionException as {@link #pressure}
     */
    public Quantity<Pressure> ripple(String node) {
        return Kind.PRESSURE.of(Kind.PRESSURE.si(highest(node)) - Kind.PRESSURE.si(lowest(node)));
    }

    /**
     * Returns the part of this history within a span of time, for the ripple before an event or the surge after it.
     *
     * @param from begin of the span, at most the last time
     * @param to end of the span, not before its begin
     * @return the samples of that span, one or more
     * @throws dev.waterjet.measure.DomainException if there is no sample in it
     */
    public PressureHistory between(Quantity<Time> from, Quantity<Time> to) {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        double[] all = times.toSi();
        int first = lowerBound(all, Kind.TIME.si(from));
        int end = lowerBound(all, Math.nextUp(Kind.TIME.si(to)));
        Require.atLeast("number of samples in the span of time", end - first, 1, Units.ONE, "");
        Map<String, QuantityArray<Pressure>> someOfPressures = new LinkedHashMap<>();
        Map<String, QuantityArray<MassFlow>> someOfFlows = new LinkedHashMap<>();
        for (String node : pressures.keySet()) {
            someOfPressures.put(
                    node,
                    QuantityArray.ofSi(
                            Kind.PRESSURE, Arrays.copyOfRange(pressure(node).toSi(), first, end)));
            someOfFlows.put(
                    node,
                    QuantityArray.ofSi(
                            Kind.MASS_FLOW, Arrays.copyOfRange(massFlow(node).toSi(), first, end)));
        }
        return new PressureHistory(
                QuantityArray.ofSi(Kind.TIME, Arrays.copyOfRange(all, first, end)),
                someOfPressures,
                someOfFlows,
                massImbalance,
                cautions);
    }

    private static int lowerBound(double[] sorted, double value) {
        int found = Arrays.binarySearch(sorted, value);
        return found < 0 ? -found - 1 : found;
    }

    /**
     * Returns the recovery time after an event: from then on until the pressure stays within a band about that of the last sample.
     *
     * @param node name of the node
     * @param event time of the event
     * @param band half width of the band, above 0
     * @return the time; 0 if the pressure never leaves the band
     * @throws NoSolutionException as {@link #pressure}
     */
    public Quantity<Time> recoveryTime(String node, Quantity<Time> event, Quantity<Pressure> band) {
        Objects.requireNonNull(event, "event");
        Objects.requireNonNull(band, "band");
        double bandPa = Require.positive("band of pressure", Kind.PRESSURE.si(band), Units.MEGAPASCAL);
        double eventS = Kind.TIME.si(event);
        QuantityArray<Pressure> pressure = pressure(node);
        int last = times.size() - 1;
        for (int i = last; i >= 0 && times.si(i) >= eventS; i--) {
            if (Math.abs(pressure.si(i) - pressure.si(last)) > bandPa) {
                return Kind.TIME.of(times.si(i + 1) - eventS);
            }
        }
        return Kind.TIME.of(0);
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("pressure history")
                .put("samples", times.size())
                .put("end", Kind.TIME, times.si(times.size() - 1));
        List<Map<String, Object>> nodes = pressures.keySet().stream()
                .map(node -> Description.of("node")
                        .put("name", node)
                        .put("lowest_pressure", Kind.PRESSURE, Kind.PRESSURE.si(lowest(node)))
                        .put("highest_pressure", Kind.PRESSURE, Kind.PRESSURE.si(highest(node)))
                        .map())
                .toList();
        return description
                .put("nodes", nodes)
                .put("mass_imbalance", massImbalance)
                .put("cautions", cautions)
                .map();
    }

    @Override
    public String toString() {
        return "pressure at " + pressures.size() + " nodes over "
                + QuantityText.forPeople(Kind.TIME, times.si(times.size() - 1));
    }
}
