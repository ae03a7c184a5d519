package dev.waterjet.circuit;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Frequency;
import javax.measure.quantity.Pressure;

/**
 * Pressure ripple of the settled circuit, by a Fourier sum about its steady state.
 *
 * @param plungerFrequency deliveries of all plungers per time, above 0
 * @param ripples pressure ripple by node, peak to peak
 * @param lineFrequencies frequency of a quarter wave of each line, <i>a</i>/(4 <i>L</i>); odd multiples resonate too
 * @param cautions cautions that apply, one or more
 */
public record PressureRipple(
        Quantity<Frequency> plungerFrequency,
        Map<String, Quantity<Pressure>> ripples,
        QuantityArray<Frequency> lineFrequencies,
        List<Caution> cautions)
        implements Described {

    private static final double NEAR = 0.3;
    private static final int HARMONICS = 5;

    /**
     * Checks the components.
     *
     * @param plungerFrequency deliveries of all plungers per time, above 0
     * @param ripples pressure ripple by node
     * @param lineFrequencies frequency of a quarter wave of each line
     * @param cautions cautions that apply
     */
    public PressureRipple {
        Objects.requireNonNull(plungerFrequency, "plungerFrequency");
        Objects.requireNonNull(ripples, "ripples");
        Objects.requireNonNull(cautions, "cautions");
        Require.positive("plunger frequency", Kind.FREQUENCY.si(plungerFrequency), Units.HERTZ);
        ripples = Collections.unmodifiableMap(new LinkedHashMap<>(ripples));
        Objects.requireNonNull(lineFrequencies, "lineFrequencies");
        cautions = List.copyOf(cautions);
    }

    /** Cautions for resonance: an odd multiple of a quarter wave close to a harmonic of the pump, one for each line. */
    static List<Caution> resonances(double plungerHz, double[] linesHz) {
        List<Caution> cautions = new ArrayList<>();
        for (double quarterHz : linesHz) {
            for (double line = quarterHz; line < (HARMONICS + NEAR) * plungerHz; line += 2 * quarterHz) {
                double harmonic = Math.max(1, Math.rint(line / plungerHz)) * plungerHz;
                if (harmonic < HARMONICS * plungerHz && Math.abs(line - harmonic) <= NEAR * harmonic) {
                    cautions.add(CircuitCautions.resonance(line, harmonic));
                    break;
                }
            }
        }
        return cautions;
    }

    /**
     * Returns the pressure ripple at a node.
     *
     * @param node name of the node
     * @return the pressure ripple, peak to peak
     * @throws NoSolutionException if there is no such node ({@code unknown-node})
     */
    public Quantity<Pressure> at(String node) {
        Quantity<Pressure> found = ripples.get(Objects.requireNonNull(node, "node"));
        if (found == null) {
            throw new NoSolutionException(Message.of("unknown-node", "unknown node {node}; the circuit has {nodes}")
                    .withInput("node", node)
                    .with("nodes", String.join(", ", ripples.keySet())));
        }
        return found;
    }

    @Override
    public Map<String, Object> describe() {
        List<Map<String, Object>> nodes = ripples.entrySet().stream()
                .map(node -> Description.of("node")
                        .put("name", node.getKey())
                        .put("ripple", Kind.PRESSURE, Kind.PRESSURE.si(node.getValue()))
                        .map())
                .toList();
        return Description.of("pressure ripple")
                .put("plunger_frequency", Kind.FREQUENCY, Kind.FREQUENCY.si(plungerFrequency))
                .put("nodes", nodes)
                .put("line_frequencies", lineFrequencies)
                .put("cautions", cautions)
                .map();
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("ripple");
        ripples.forEach((node, ripple) -> text.append(text.length() > 6 ? ", " : " ")
                .append(QuantityText.forPeople(Kind.PRESSURE, ripple))
                .append(" at ")
                .append(node));
        return text.toString();
    }
}
