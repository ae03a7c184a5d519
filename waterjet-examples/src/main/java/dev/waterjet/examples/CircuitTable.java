package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.seconds;

import dev.waterjet.circuit.Circuit;
import dev.waterjet.circuit.PressureHistory;
import dev.waterjet.circuit.PressureRipple;
import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.chart.Chart;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Time;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Program that prints pressure and flow over time between pump and heads. */
@Command(
        name = "circuit",
        description = "Print pressure and flow over time at pump, manifold and heads: ripple, the surge of a head that"
                + " shuts, and the recovery after it. It sizes no relief valve and judges no part.")
final class CircuitTable extends Program {

    private static final Quantity<Pressure> RECOVERED = megapascals(1);

    @Mixin
    private CircuitOptions options = new CircuitOptions();

    @Option(
            names = "--duration",
            converter = Typed.Time.class,
            paramLabel = "<time>",
            description = "Time to compute. Default: 1 s.")
    private Quantity<Time> duration = seconds(1);

    @Option(
            names = "--reaches",
            paramLabel = "<number>",
            description = "Reaches of the longest line; more are finer and slower. Default: 80.")
    private int reaches = 80;

    @Option(names = "--svg", paramLabel = "<file>", description = "Draw the pressures over time to a file.")
    private Optional<Path> svg = Optional.empty();

    @Override
    protected Table table() {
        Circuit circuit = options.circuit();
        PressureHistory history = circuit.run(duration, reaches);
        Optional<PressureRipple> ripple = ripple(circuit);
        Table table = Table.of("Circuit over " + QuantityText.forPeople(Kind.TIME, duration))
                .words("node")
                .column("steady pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .column("lowest pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .column("highest pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .column("settled ripple", Kind.PRESSURE, Units.MEGAPASCAL, 3)
                .column("recovery", Kind.TIME, Units.SECOND, 3);
        for (String node : circuit.nodes()) {
            table.row(
                    node,
                    history.pressure(node).si(0),
                    Kind.PRESSURE.si(history.lowest(node)),
                    Kind.PRESSURE.si(history.highest(node)),
                    ripple.map(found -> OptionalDouble.of(Kind.PRESSURE.si(found.at(node))))
                            .orElse(OptionalDouble.empty()),
                    options.event()
                            .map(event -> OptionalDouble.of(Kind.TIME.si(history.recoveryTime(node, event, RECOVERED))))
                            .orElse(OptionalDouble.empty()));
        }
        table.note("Gauge pressures. Settled ripple: peak to peak with all heads open. Recovery: from the start of the"
                        + " valve motion until the")
                .note("pressure stays within 1 MPa of that at the end.");
        Set<Caution> cautions = new LinkedHashSet<>(history.cautions());
        ripple.ifPresent(found -> cautions.addAll(found.cautions()));
        cautions.forEach(caution -> table.note(signalWord(caution) + ": " + caution.text() + "."));
        draw(circuit, history);
        return table;
    }

    private static String signalWord(Caution caution) {
        String name = caution.severity().name();
        return name.charAt(0) + name.substring(1).toLowerCase(Locale.ROOT);
    }

    private static Optional<PressureRipple> ripple(Circuit circuit) {
        try {
            return Optional.of(circuit.ripple());
        } catch (NoSolutionException e) {
            // an intensifier has no periodic ripple
            return Optional.empty();
        }
    }

    /** The samples of all nodes, one after the other at each time. */
    @Override
    protected void printCsv(PrintWriter out) throws IOException {
        Circuit circuit = options.circuit();
        PressureHistory history = circuit.run(duration, reaches);
        Table table = Table.of("")
                .column("time", Kind.TIME, Units.SECOND, 4)
                .words("node")
                .column("gauge pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .column("mass flow", Kind.MASS_FLOW, Units.KILOGRAM_PER_MINUTE, 4);
        for (int i = 0; i < history.times().size(); i++) {
            for (String node : circuit.nodes()) {
                table.row(
                        history.times().si(i),
                        node,
                        history.pressure(node).si(i),
                        history.massFlow(node).si(i));
            }
        }
        table.writeCsv(out);
        draw(circuit, history);
    }

    private void draw(Circuit circuit, PressureHistory history) {
        if (svg.isEmpty()) {
            return;
        }
        Chart chart = Chart.of("Pressure over time", "Gauge pressure over time at pump, manifold and heads.")
                .x("time [s]")
                .y("gauge pressure [MPa]");
        List<String> nodes = circuit.nodes();
        for (String node : nodes) {
            chart.line(node, history.times().toSi(), history.pressure(node).to(Units.MEGAPASCAL));
        }
        TextFiles.write(svg.get(), chart.svg(860, 520));
    }
}
