package dev.waterjet.circuit;

import dev.waterjet.hydraulics.Attenuator;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.water.WaterState;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Time;

/** Builder of a {@link Circuit}. A node exists once a part names it. */
public final class CircuitBuilder {

    private final double referencePa;
    private final WaterState atRest;
    private final List<String> reservoirs = new ArrayList<>();
    private final List<CircuitParts.Vessel> vessels = new ArrayList<>();
    private final List<CircuitParts.Pump> pumps = new ArrayList<>();
    private final List<CircuitParts.Line> lines = new ArrayList<>();
    private final List<CircuitParts.Outlet> outlets = new ArrayList<>();
    private final List<CircuitParts.Relief> relief = new ArrayList<>();

    CircuitBuilder(double referencePa, WaterState atRest) {
        this.referencePa = referencePa;
        this.atRest = atRest;
    }

    /**
     * Adds an ideal pump that holds the reference pressure at a node, whatever the flow.
     *
     * @param node name of the node
     * @return this builder
     */
    public CircuitBuilder reservoir(String node) {
        reservoirs.add(Objects.requireNonNull(node, "node"));
        return this;
    }

    /**
     * Adds an attenuator.
     *
     * @param node name of its node
     * @param attenuator the attenuator; its volume is that at the reference pressure
     * @return this builder
     */
    public CircuitBuilder vessel(String node, Attenuator attenuator) {
        vessels.add(new CircuitParts.Vessel(node, attenuator));
        return this;
    }

    /**
     * Adds a pump.
     *
     * @param node name of the node into which it delivers; that of an intensifier must have an attenuator
     * @param drive the pump
     * @return this builder
     */
    public CircuitBuilder pump(String node, PumpDrive drive) {
        pumps.add(new CircuitParts.Pump(node, drive));
        return this;
    }

    /**
     * Adds a section of supply line.
     *
     * @param from name of the node at its begin
     * @param to name of the node at its end
     * @param section the section, longer than 0; friction is by Haaland
     * @return this builder
     */
    public CircuitBuilder line(String from, String to, SupplyLine.Section section) {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        Objects.requireNonNull(section, "section");
        lines.add(new CircuitParts.Line(from, to, section));
        return this;
    }

    /**
     * Adds a head that is open at the start.
     *
     * @param node name of its node
     * @param orifice the orifice
     * @param events motions of its valve, in any order; a motion that begins ends the one before
     * @return this builder
     */
    public CircuitBuilder head(String node, Orifice orifice, ValveEvent... events) {
        outlets.add(new CircuitParts.Outlet(node, orifice, 1, List.of(Objects.requireNonNull(events, "events"))));
        return this;
    }

    /**
     * Adds a head or a dump valve that is shut at the start.
     *
     * @param node name of its node
     * @param orifice the orifice, of the bore of the valve for a dump valve
     * @param events motions of its valve
     * @return this builder
     */
    public CircuitBuilder shutHead(String node, Orifice orifice, ValveEvent... events) {
        outlets.add(new CircuitParts.Outlet(node, orifice, 0, List.of(Objects.requireNonNull(events, "events"))));
        return this;
    }

    /**
     * Adds a relief valve: it opens in proportion over the 2 % above its opening pressure (assumed), with a lag of first order.
     *
     * @param node name of its node
     * @param seat bore and discharge coefficient of the open valve
     * @param opens gauge pressure at which it begins to open, above 0
     * @param lag time constant of its motion, above 0; some ms (assumed)
     * @return this builder
     */
    public CircuitBuilder reliefValve(String node, Orifice seat, Quantity<Pressure> opens, Quantity<Time> lag) {
        Objects.requireNonNull(opens, "opens");
        Objects.requireNonNull(lag, "lag");
        relief.add(new CircuitParts.Relief(node, seat, Kind.PRESSURE.si(opens), Kind.TIME.si(lag)));
        return this;
    }

    /**
     * Returns the circuit.
     *
     * @return the circuit
     * @throws DomainException if there is neither pump nor reservoir, a node is not joined to the others, or the reference
     *     pressure is out of range
     */
    public Circuit build() {
        return Circuit.of(referencePa, atRest, new CircuitParts(reservoirs, vessels, pumps, lines, outlets, relief));
    }
}
