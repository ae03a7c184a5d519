package dev.waterjet.circuit;

import dev.waterjet.hydraulics.Attenuator;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;

/**
 * Parts of a circuit, each at a named node, and the rules by which they make a circuit.
 *
 * @param reservoirs nodes that are held at the reference pressure
 * @param vessels attenuators, one at a node
 * @param pumps pumps
 * @param lines sections of supply line
 * @param outlets heads and dump valves
 * @param relief relief valves
 */
record CircuitParts(
        List<String> reservoirs,
        List<Vessel> vessels,
        List<Pump> pumps,
        List<Line> lines,
        List<Outlet> outlets,
        List<Relief> relief)
        implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final int MAX_NAME = 80;

    CircuitParts {
        reservoirs = List.copyOf(reservoirs);
        vessels = List.copyOf(vessels);
        pumps = List.copyOf(pumps);
        lines = List.copyOf(lines);
        outlets = List.copyOf(outlets);
        relief = List.copyOf(relief);
        reservoirs.forEach(CircuitParts::requireName);
        Require.atLeast("number of pumps and reservoirs", pumps.size() + reservoirs.size(), 1, Units.ONE, "");
        requireStorage(vessels, pumps, lines, reservoirs);
        requireConnected(nodes(reservoirs, vessels, pumps, lines, outlets, relief), lines);
    }

    /** An attenuator. */
    record Vessel(String node, Attenuator attenuator) implements Serializable {
        private static final long serialVersionUID = 1L;

        Vessel {
            requireName(node);
            Objects.requireNonNull(attenuator, "attenuator");
        }
    }

    /** A pump. */
    record Pump(String node, PumpDrive drive) implements Serializable {
        private static final long serialVersionUID = 1L;

        Pump {
            requireName(node);
            Objects.requireNonNull(drive, "drive");
        }
    }

    /** A section of supply line between two nodes. */
    record Line(String from, String to, SupplyLine.Section section) implements Serializable {
        private static final long serialVersionUID = 1L;

        Line {
            requireName(from);
            requireName(to);
            Require.positive("length of the supply line", Kind.LENGTH.si(section.length()), Units.METRE);
            Require.atMost("number of ends of a supply line at one node", from.equals(to) ? 2 : 1, 1, Units.ONE, "");
        }
    }

    /** A head, or a dump valve. */
    record Outlet(String node, Orifice orifice, double openingAtStart, List<ValveEvent> events)
            implements Serializable {
        private static final long serialVersionUID = 1L;

        Outlet {
            requireName(node);
            Objects.requireNonNull(orifice, "orifice");
            openingAtStart = Require.between("opening of the valve", openingAtStart, 0, 1, Units.ONE, "");
            events = List.copyOf(events);
        }

        Map<String, Object> describe() {
            return described(node, orifice)
                    .put("opening", openingAtStart)
                    .put("events", events)
                    .map();
        }
    }

    /** A relief valve. */
    record Relief(String node, Orifice seat, double opensPa, double lagS) implements Serializable {
        private static final long serialVersionUID = 1L;

        Relief {
            requireName(node);
            Objects.requireNonNull(seat, "seat");
            opensPa = Require.positive("opening pressure of the relief valve", opensPa, Units.MEGAPASCAL);
            lagS = Require.positive("lag of the relief valve", lagS, Units.SECOND);
        }

        Map<String, Object> describe() {
            return described(node, seat)
                    .put("opens", Kind.PRESSURE, opensPa)
                    .put("lag", Kind.TIME, lagS)
                    .map();
        }
    }

    private static void requireName(String node) {
        Objects.requireNonNull(node, "node");
        if (node.isBlank() || node.length() > MAX_NAME) {
            throw new TextException(
                    Message.of("not-a-node", "{node} is not the name of a node; write 1 to {limit} characters")
                            .withInput("node", node)
                            .with("limit", MAX_NAME));
        }
    }

    private static void requireStorage(
            List<Vessel> vessels, List<Pump> pumps, List<Line> lines, List<String> reservoirs) {
        Set<String> holding = new HashSet<>(reservoirs);
        for (Vessel vessel : vessels) {
            Require.atMost(
                    "number of vessels and reservoirs at node \"" + vessel.node + "\"",
                    holding.add(vessel.node) ? 1 : 2,
                    1,
                    Units.ONE,
                    "");
        }
        for (Pump pump : pumps) {
            boolean needsVessel = pump.drive instanceof IntensifierDrive;
            boolean hasVessel = vessels.stream().anyMatch(vessel -> vessel.node.equals(pump.node));
            Require.atLeast(
                    "number of vessels at the intensifier",
                    hasVessel || !needsVessel ? 1 : 0,
                    1,
                    Units.ONE,
                    "its reversals need an attenuator");
            boolean isHeld = reservoirs.contains(pump.node);
            Require.atMost(
                    "number of reservoirs at a pump", isHeld ? 1 : 0, 0, Units.ONE, "its pressure would be fixed");
            boolean isJoined = hasVessel
                    || lines.stream().anyMatch(line -> line.from.equals(pump.node) || line.to.equals(pump.node));
            Require.atLeast("number of lines and vessels at a pump", isJoined ? 1 : 0, 1, Units.ONE, "");
        }
    }

    private static Set<String> nodes(
            List<String> reservoirs,
            List<Vessel> vessels,
            List<Pump> pumps,
            List<Line> lines,
            List<Outlet> outlets,
            List<Relief> relief) {
        Set<String> nodes = new LinkedHashSet<>(reservoirs);
        pumps.forEach(pump -> nodes.add(pump.node));
        vessels.forEach(vessel -> nodes.add(vessel.node));
        lines.forEach(line -> {
            nodes.add(line.from);
            nodes.add(line.to);
        });
        outlets.forEach(outlet -> nodes.add(outlet.node));
        relief.forEach(valve -> nodes.add(valve.node));
        return nodes;
    }

    private static void requireConnected(Set<String> nodes, List<Line> lines) {
        Set<String> reached = new HashSet<>();
        Deque<String> open = new ArrayDeque<>(List.of(nodes.iterator().next()));
        while (!open.isEmpty()) {
            String node = open.pop();
            if (reached.add(node)) {
                for (Line line : lines) {
                    if (line.from.equals(node)) {
                        open.push(line.to);
                    } else if (line.to.equals(node)) {
                        open.push(line.from);
                    }
                }
            }
        }
        Require.atMost(
                "number of nodes that no line joins to \"" + nodes.iterator().next() + "\"",
                nodes.size() - reached.size(),
                0,
                Units.ONE,
                "");
    }

    /** Names of all nodes: reservoirs, pumps, vessels, then as lines, outlets and relief valves name them. */
    List<String> nodes() {
        return List.copyOf(nodes(reservoirs, vessels, pumps, lines, outlets, relief));
    }

    /** Adds the parts with their nodes. */
    Description describe(Description description) {
        return description
                .put("nodes", nodes())
                .put("reservoirs", reservoirs)
                .put("vessels", described(vessels, Vessel::node, Vessel::attenuator))
                .put("pumps", described(pumps, Pump::node, Pump::drive))
                .put("lines", described(lines, line -> line.from + " to " + line.to, Line::section))
                .put("heads", outlets.stream().map(Outlet::describe).toList())
                .put(
                        "valve_events",
                        outlets.stream()
                                .flatMap(outlet -> outlet.events.stream())
                                .toList())
                .put("relief_valves", relief.stream().map(Relief::describe).toList());
    }

    private static <P> List<Map<String, Object>> described(
            List<P> parts, Function<P, String> node, Function<P, Described> part) {
        return parts.stream()
                .map(each -> described(node.apply(each), part.apply(each)).map())
                .toList();
    }

    private static Description described(String node, Described part) {
        return Description.of("part of a circuit").put("node", node).put("part", part);
    }
}
