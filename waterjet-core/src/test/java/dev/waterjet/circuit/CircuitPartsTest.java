package dev.waterjet.circuit;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.circuit.Circuits.TAP;
import static dev.waterjet.circuit.Circuits.around380;
import static dev.waterjet.circuit.Circuits.attenuator;
import static dev.waterjet.circuit.Circuits.closing;
import static dev.waterjet.circuit.Circuits.line;
import static dev.waterjet.circuit.Circuits.orifice;
import static dev.waterjet.circuit.Circuits.pump;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.hydraulics.Intensifier;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.measure.Kind;
import dev.waterjet.water.Water;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which parts make a circuit, in which order its nodes are named, and what is said about a run. */
class CircuitPartsTest {

    private static final SupplyLine.Section LINE = line(4.8, 14.4, 5);
    private static final PumpDrive PUMP = PumpDrive.of(pump(3, 0));
    private static final PumpDrive INTENSIFIER =
            PumpDrive.of(Intensifier.of(20, Kind.VOLUME.of(1e-4)), megapascals(380), Kind.FREQUENCY.of(1));

    /** Each adds a part with a name. */
    static Stream<Function<String, CircuitBuilder>> partsWithNames() {
        return Stream.of(
                name -> held().vessel(name, attenuator(1)),
                name -> held().pump(name, PUMP),
                name -> held().line("h", name, LINE),
                name -> held().line(name, "h", LINE),
                name -> held().head(name, orifice(0.3)),
                name -> held().shutHead(name, orifice(0.3)),
                name -> held().reliefValve(name, orifice(0.3), megapascals(400), seconds(0.01)),
                name -> around380().reservoir(name));
    }

    private static CircuitBuilder held() {
        return around380().reservoir("r").line("r", "h", LINE);
    }

    /** A blank name, one that is too long, and one that is as long as it may be. */
    @ParameterizedTest
    @MethodSource("partsWithNames")
    void everyPartIsAtANamedNode(Function<String, CircuitBuilder> part) {
        assertRefused(() -> part.apply("").build(), "not-a-node");
        assertRefused(() -> part.apply(" \t").build(), "not-a-node");
        String longest = "x".repeat(80);
        assertThat(assertRefused(() -> part.apply(longest + "x").build(), "not-a-node")
                        .parameters())
                .containsEntry("limit", 80L);
        assertThatCode(() -> part.apply(longest)).doesNotThrowAnyException();
    }

    @Test
    void nodesAreNamedInTheOrderOfTheKindsOfParts() {
        Circuit circuit = around380()
                .reliefValve("relief", orifice(0.3), megapascals(400), seconds(0.01))
                .shutHead("head", orifice(0.3), ValveEvent.opening(seconds(1), seconds(0)))
                .line("relief", "head", LINE)
                .line("vessel", "relief", LINE)
                .line("pump", "relief", LINE)
                .line("reservoir", "pump", LINE)
                .vessel("vessel", attenuator(1))
                .pump("pump", PUMP)
                .reservoir("reservoir")
                .build();
        assertThat(circuit.nodes()).containsExactly("reservoir", "pump", "vessel", "relief", "head");
        assertThat(circuit.describe().get("nodes")).isEqualTo(circuit.nodes());
        Map<String, Object> described = circuit.describe();
        assertThat((List<?>) described.get("reservoirs")).hasSize(1);
        assertThat((List<?>) described.get("lines")).hasSize(4);
    }

    @Test
    void nodesThatNoLineJoinsAreCounted() {
        assertRefused(
                () -> held().head("a", orifice(0.3)).head("b", orifice(0.3)).build(),
                "must-be-at-most",
                "number of nodes that no line joins to \"r\"",
                0);
        assertRefused(
                () -> held().reliefValve("a", orifice(0.3), megapascals(1), seconds(1))
                        .build(),
                "must-be-at-most");
        assertRefused(() -> held().line("a", "b", LINE).build(), "must-be-at-most");
        assertRefused(() -> held().vessel("a", attenuator(1)).build(), "must-be-at-most");
        assertThat(held().line("a", "b", LINE).line("b", "h", LINE).build().nodes())
                .containsExactly("r", "h", "a", "b");
    }

    @Test
    void pumpsAndVesselsStandWhereTheyCan() {
        assertRefused(
                () -> around380().vessel("v", attenuator(1)).build(),
                "must-be-at-least",
                "number of pumps and reservoirs",
                1);
        // the attenuator of an intensifier is at its own node
        assertRefused(
                () -> around380()
                        .pump("p", INTENSIFIER)
                        .line("p", "v", LINE)
                        .vessel("v", attenuator(1))
                        .build(),
                "must-be-at-least",
                "number of vessels at the intensifier",
                1);
        assertThat(around380()
                        .pump("p", INTENSIFIER)
                        .vessel("p", attenuator(1))
                        .build()
                        .nodes())
                .containsExactly("p");
        assertThat(around380()
                        .pump("p", PUMP)
                        .vessel("p", attenuator(1))
                        .build()
                        .nodes())
                .containsExactly("p");
        assertRefused(
                () -> around380().pump("p", PUMP).head("p", orifice(0.3)).build(),
                "must-be-at-least",
                "number of lines and vessels at a pump",
                1);
        assertRefused(
                () -> around380()
                        .pump("p", PUMP)
                        .line("a", "b", LINE)
                        .vessel("a", attenuator(1))
                        .build(),
                "must-be-at-least",
                "number of lines and vessels at a pump",
                1);
        assertThat(around380().pump("p", PUMP).line("h", "p", LINE).build().nodes())
                .containsExactly("p", "h");
        assertRefused(() -> held().pump("r", PUMP).build(), "must-be-at-most", "number of reservoirs at a pump", 0);
        assertRefused(
                () -> held().vessel("r", attenuator(1)).build(),
                "must-be-at-most",
                "number of vessels and reservoirs at node \"r\"",
                1);
        assertRefused(
                () -> held().vessel("h", attenuator(1))
                        .vessel("h", attenuator(1))
                        .build(),
                "must-be-at-most",
                "number of vessels and reservoirs at node \"h\"",
                1);
        assertRefused(
                () -> held().line("h", "h", LINE), "must-be-at-most", "number of ends of a supply line at one node", 1);
        assertRefused(
                () -> held().line("h", "k", LINE.withLength(metres(0))),
                "must-be-above",
                "length of the supply line",
                0);
        assertRefused(
                () -> held().reliefValve("h", orifice(0.3), megapascals(0), seconds(1)),
                "must-be-above",
                "opening pressure of the relief valve",
                0);
        assertRefused(
                () -> held().reliefValve("h", orifice(0.3), megapascals(1), seconds(0)),
                "must-be-above",
                "lag of the relief valve",
                0);
    }

    @Test
    void referenceAndRunHaveLimits() {
        assertRefused(
                () -> Circuit.around(megapascals(900.1), TAP).reservoir("r").build(),
                "must-be-at-most",
                "reference pressure of the circuit",
                900e6);
        assertThat(Circuit.around(megapascals(900), TAP).reservoir("r").build().nodes())
                .containsExactly("r");
        assertRefused(
                () -> Circuit.around(megapascals(0), TAP).reservoir("r").build(),
                "must-be-above",
                "reference pressure of the circuit",
                0);
        assertRefused(
                () -> Circuit.around(megapascals(3), Water.stable().atSi(3.2e6, 293.15))
                        .reservoir("r")
                        .build(),
                "must-be-at-most",
                "pressure of the water at rest",
                3.101325e6);
        Circuit circuit = held().head("h", orifice(0.3)).build();
        double step = circuit.stepS(80);
        assertRefused(() -> circuit.run(seconds(200_001 * step)), "must-be-at-most", "number of steps", 200_000);
        assertRefused(
                () -> circuit.run(seconds(190_000 * circuit.stepS(2000)), 2000),
                "must-be-at-most",
                "number of steps times reaches",
                1e8);
        assertRefused(() -> circuit.run(seconds(1), 0), "must-be-at-least", "number of reaches", 1);
        assertRefused(() -> circuit.run(seconds(1), 2001), "must-be-at-most", "number of reaches", 2000);
        assertRefused(() -> circuit.run(seconds(0)), "must-be-above", "duration of the run", 0);
        // steps fill the duration; one that ends within rounding of a step takes no other
        assertThat(circuit.run(seconds(10 * step)).times().size()).isEqualTo(11);
        assertThat(circuit.run(seconds(10.2 * step)).times().size()).isEqualTo(12);
        PressureHistory fine = circuit.run(seconds(3 * circuit.stepS(2000)), 2000);
        assertThat(fine.times().size()).isEqualTo(4);
        for (int i = 0; i < 4; i++) {
            assertThat(fine.times().si(i)).isEqualTo(i * circuit.stepS(2000), within(1e-15));
        }
    }

    private static Caution caution(PressureHistory history, String code) {
        return history.cautions().stream()
                .filter(caution -> caution.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    private static double parameter(Caution caution, String key) {
        return (double) Objects.requireNonNull(caution.message().parameters().get(key));
    }

    /** A vessel that empties, fast or for a short time, with a line or without one. */
    @ParameterizedTest
    @ValueSource(doubles = {0.3, 0.9})
    void pressureFarBelowTheReferenceIsSaid(double bore) {
        CircuitBuilder parts = around380()
                .vessel("v", attenuator(0.5))
                .line("v", "h", line(4.8, 14.4, 5))
                .pump("v", PumpDrive.of(pump(3, 0)))
                .reliefValve("v", orifice(0.5), megapascals(375), seconds(0.005))
                .shutHead("h", orifice(bore), ValveEvent.opening(seconds(0.01), seconds(0.01)));
        PressureHistory history = parts.build().run(seconds(0.5), 10);
        double lowest = Double.POSITIVE_INFINITY;
        double highest = 0;
        for (String node : history.pressures().keySet()) {
            lowest = Math.min(lowest, Kind.PRESSURE.si(history.lowest(node)));
            highest = Math.max(highest, Kind.PRESSURE.si(history.highest(node)));
        }
        assertThat(highest).isLessThan(1.2 * 380e6);
        List<String> codes = history.cautions().stream().map(Caution::code).toList();
        if (lowest < 0.8 * 380e6) {
            Caution far = caution(history, "far-from-reference");
            assertThat(parameter(far, "lowest_Pa")).isEqualTo(lowest);
            assertThat(parameter(far, "highest_Pa")).isEqualTo(highest);
            assertThat(parameter(far, "reference_Pa")).isEqualTo(380e6, within(1e-6));
            assertThat(bore).isEqualTo(0.9);
        } else {
            assertThat(codes).containsExactly("ideal-circuit", "quasi-steady-friction");
            assertThat(bore).isEqualTo(0.3);
        }
    }

    @Test
    void pressureFarAboveTheReferenceIsSaid() {
        PressureHistory history = around380()
                .vessel("v", attenuator(0.1))
                .line("v", "h", line(4.8, 14.4, 5))
                .pump("v", PumpDrive.of(pump(3, 0)))
                .head("h", orifice(0.33), closing(0, 0))
                .reliefValve("v", orifice(0.5), megapascals(470), seconds(0.005))
                .build()
                .run(seconds(0.5), 10);
        assertThat(parameter(caution(history, "far-from-reference"), "highest_Pa"))
                .isGreaterThan(1.2 * 380e6);
        assertThat(parameter(caution(history, "far-from-reference"), "lowest_Pa"))
                .isGreaterThan(0.8 * 380e6);
    }

    /** A vessel alone has no line whose reference it could leave. */
    @Test
    void withoutALineThereIsNoReferenceToLeave() {
        PressureHistory history = around380()
                .vessel("v", attenuator(0.1))
                .pump("v", PumpDrive.of(pump(3, 0)))
                .head("v", orifice(0.33), closing(0, 0))
                .reliefValve("v", orifice(0.5), megapascals(470), seconds(0.005))
                .build()
                .run(seconds(0.5));
        assertThat(Kind.PRESSURE.si(history.highest("v"))).isGreaterThan(1.2 * 380e6);
        assertThat(history.cautions()).extracting(Caution::code).containsExactly("ideal-circuit");
    }

    @Test
    void shortLineIsAdjustedAndColumnsThatSeparateAreSaid() {
        Circuit two = around380()
                .reservoir("r")
                .line("r", "m", line(4.8, 14.4, 20))
                .line("m", "h", line(4.8, 14.4, 2.7))
                .head("h", orifice(0.33))
                .build();
        // 0.5 ms pass in 1 m of 20 m, so that 2.7 m have three reaches, 0.9 of a true one
        PressureHistory coarse = two.run(seconds(0.005), 10);
        assertThat(parameter(caution(coarse, "wave-speed-adjusted"), "change")).isEqualTo(0.1, within(1e-9));
        assertThat(two.run(seconds(0.005), 200).cautions())
                .extracting(Caution::code)
                .containsExactly("ideal-circuit", "quasi-steady-friction");
        // a head that shuts at once in a line of low pressure
        PressureHistory parted = Circuit.around(megapascals(1), TAP)
                .reservoir("r")
                .line("r", "h", line(4.8, 14.4, 20))
                .head("h", orifice(2), closing(0, 0))
                .build()
                .run(seconds(0.05), 20);
        double lowest = Kind.PRESSURE.si(parted.lowest("h"));
        assertThat(lowest).isNegative();
        assertThat(parameter(caution(parted, "water-column-separates"), "lowest_Pa"))
                .isEqualTo(lowest);
    }
}
