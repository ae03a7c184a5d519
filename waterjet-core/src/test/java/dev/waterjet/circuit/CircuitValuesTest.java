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
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.hydraulics.Intensifier;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.quantity.Pressure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Values, results and their texts. */
class CircuitValuesTest {

    private static final Intensifier INTENSIFIER = Intensifier.of(20, Kind.VOLUME.of(1e-4));

    private static IntensifierDrive drive(double strokes) {
        return PumpDrive.of(INTENSIFIER, megapascals(380), Kind.FREQUENCY.of(strokes));
    }

    private static Circuit circuit(double referenceMpa, double relief, double lagS, ValveEvent... events) {
        return Circuit.around(megapascals(referenceMpa), TAP)
                .vessel("v", attenuator(1))
                .pump("v", drive(1))
                .line("v", "head", line(4.8, 14.4, 20))
                .head("head", orifice(0.33), events)
                .reliefValve("v", orifice(0.5), megapascals(relief), seconds(lagS))
                .build();
    }

    @Test
    void driveOfAnIntensifierIsAValue() {
        ValueContract.of(() -> drive(1))
                .change("precompression", IntensifierDrive::withPrecompression, IntensifierDrive::isPrecompressed, true)
                .change(
                        "compression speed",
                        drive -> drive.withCompressionSpeed(Kind.FREQUENCY.of(3)),
                        IntensifierDrive::compressionStrokesPerS,
                        3.0)
                .change("dead volume", drive -> drive.withDeadVolume(0.5), drive -> drive.deliveryPosition(2), 0.75)
                .has("strokes", drive -> drive.strokesPerS(0), 1.0)
                .has("volume", IntensifierDrive::strokeVolumeM3, 1e-4)
                .differs("strokes", drive(2))
                .differs("pressure", PumpDrive.of(INTENSIFIER, megapascals(390), Kind.FREQUENCY.of(1)))
                .prints("380 MPa")
                .check();
        assertThat(drive(1.5).withDeadVolume(0.25).describe())
                .containsEntry("strokes_Hz", 1.5)
                .containsEntry("compression_strokes_Hz", 1.5)
                .containsEntry("set_pressure_Pa", 380e6)
                .containsEntry("dead_volume_ratio", 0.25)
                .containsEntry("precompressed", false)
                .containsKey("intensifier");
        assertRefused(() -> drive(0), "must-be-above", "strokes at full oil flow", 0);
        assertRefused(
                () -> drive(1).withCompressionSpeed(Kind.FREQUENCY.of(0)),
                "must-be-above",
                "strokes during compression",
                0);
        assertRefused(() -> drive(1).withDeadVolume(100.1), "must-be-at-most", "dead volume over stroke volume", 100);
        assertRefused(() -> drive(1).withDeadVolume(-0.1), "must-be-at-least", "dead volume over stroke volume", 0);
        assertThat(drive(1).withDeadVolume(100).deliveryPosition(1)).isZero();
        assertRefused(
                () -> PumpDrive.of(INTENSIFIER, megapascals(0), Kind.FREQUENCY.of(1)),
                "must-be-above",
                "set pressure of the intensifier",
                0);
        assertThat(PumpDrive.of(pump(3, 0))).hasToString(pump(3, 0).toString());
        assertThat(PumpDrive.of(pump(3, 0)).describe()).containsKey("pump");
    }

    /** Two heads of which one or the other is shut. */
    private static Circuit pair(boolean isFirstShut) {
        CircuitBuilder circuit = around380().reservoir("r").line("r", "a", line(4.8, 14.4, 20));
        return isFirstShut
                ? circuit.shutHead("a", orifice(0.33)).head("r", orifice(0.33)).build()
                : circuit.head("a", orifice(0.33)).shutHead("r", orifice(0.33)).build();
    }

    @Test
    void circuitIsAValue() {
        ValueContract.of(() -> circuit(380, 390, 0.01, closing(1, 2)))
                .has("nodes", Circuit::nodes, List.of("v", "head"))
                .differs("reference", circuit(370, 390, 0.01, closing(1, 2)))
                .differs("event", circuit(380, 390, 0.01, closing(1, 3)))
                .differs("opening of the relief valve", circuit(380, 391, 0.01, closing(1, 2)))
                .differs("lag of the relief valve", circuit(380, 390, 0.02, closing(1, 2)))
                .differs("no event", circuit(380, 390, 0.01))
                .prints("2 nodes", "380 MPa")
                .check();
        assertThat(pair(true)).isNotEqualTo(pair(false));
        assertThat(pair(true).describe()).isNotEqualTo(pair(false).describe());
        Map<String, Object> described = circuit(380, 390, 0.01, closing(1, 2)).describe();
        assertThat(described).containsEntry("reference_pressure_Pa", 380e6).containsKey("water_at_rest");
        assertThat(described.get("nodes")).asString().contains("v").contains("head");
        assertThat(described.get("vessels")).asString().contains("node=v").contains("attenuator");
        assertThat(described.get("pumps")).asString().contains("node=v").contains("set_pressure");
        assertThat(described.get("lines")).asString().contains("node=v to head").contains("bore");
        assertThat(described.get("heads")).asString().contains("node=head").contains("orifice");
        assertThat(described.get("valve_events"))
                .asString()
                .contains("begin_s=1.0")
                .contains("duration_s=2.0");
        assertThat(described.get("relief_valves"))
                .asString()
                .contains("node=v", "orifice", "opens_Pa=3.9E8", "lag_s=0.01");
        assertThat(described.get("heads")).asString().contains("opening=1.0", "duration_s=2.0");
    }

    @Test
    void motionOfAValveIsAValue() {
        ValueContract.of(() -> new ValveEvent(seconds(2), seconds(0.5), 0.25))
                .has("begin", ValveEvent::beginS, 2.0)
                .has("duration", ValveEvent::durationS, 0.5)
                .has("opening", ValveEvent::opening, 0.25)
                .differs("begin", new ValveEvent(seconds(3), seconds(0.5), 0.25))
                .differs("duration", new ValveEvent(seconds(2), seconds(0.6), 0.25))
                .differs("opening", ValveEvent.closing(seconds(2), seconds(0.5)))
                .prints("0.25", "0.5 s", "2 s")
                .check();
        assertThat(ValveEvent.opening(seconds(1), seconds(2)).opening()).isEqualTo(1);
        assertThat(closing(1, 2).opening()).isZero();
        assertThat(new ValveEvent(seconds(2), seconds(0.5), 0.25).describe())
                .containsEntry("begin_s", 2.0)
                .containsEntry("duration_s", 0.5)
                .containsEntry("opening", 0.25);
        assertRefused(() -> closing(-1, 0), "must-be-at-least", "begin of the valve motion", 0);
        assertRefused(() -> closing(0, -1), "must-be-at-least", "duration of the valve motion", 0);
    }

    private static PressureHistory history(double[] times, double[] pressures, double[] flows, String flowNode) {
        Map<String, QuantityArray<Pressure>> byNode = new LinkedHashMap<>();
        byNode.put("head", QuantityArray.ofSi(Kind.PRESSURE, pressures));
        return new PressureHistory(
                QuantityArray.ofSi(Kind.TIME, times),
                byNode,
                Map.of(flowNode, QuantityArray.ofSi(Kind.MASS_FLOW, flows)),
                1e-15,
                List.of(CircuitCautions.IDEAL));
    }

    private static final PressureHistory HISTORY = history(
            new double[] {0, 1, 2, 3, 4, 5, 6},
            new double[] {300, 260, 330, 298, 290, 301, 300},
            new double[] {1, 2, 3, 4, 5, 6, 7},
            "head");

    @Test
    void historyAnswersFromItsSamples() {
        assertThat(Kind.PRESSURE.si(HISTORY.highest("head"))).isEqualTo(330);
        assertThat(Kind.PRESSURE.si(HISTORY.lowest("head"))).isEqualTo(260);
        assertThat(Kind.PRESSURE.si(HISTORY.ripple("head"))).isEqualTo(70);
        assertThat(HISTORY).hasToString("pressure at 1 nodes over 6 s");
        assertThat(HISTORY.describe())
                .containsEntry("samples", 7L)
                .containsEntry("end_s", 6.0)
                .containsEntry("mass_imbalance", 1e-15)
                .containsKey("cautions");
        assertThat(HISTORY.describe().get("nodes"))
                .asString()
                .contains("name=head")
                .contains("lowest_pressure_Pa=260.0")
                .contains("highest_pressure_Pa=330.0");
        assertThat(assertRefused(() -> HISTORY.massFlow("tail"), "unknown-node").parameters())
                .containsEntry("node", "tail")
                .containsEntry("nodes", "head");
    }

    /** Both ends of a span belong to it. */
    @ParameterizedTest
    @CsvSource({"0, 6, 0, 7", "1, 3, 1, 3", "0.5, 3.5, 1, 3", "2, 2, 2, 1", "5.5, 60, 6, 1", "-3, 0, 0, 1"})
    void spanOfAHistoryHasItsSamples(double from, double to, int first, int size) {
        PressureHistory span = HISTORY.between(seconds(from), seconds(to));
        assertThat(span.times().size()).isEqualTo(size);
        for (int i = 0; i < size; i++) {
            assertThat(span.times().si(i)).isEqualTo(first + i);
            assertThat(span.pressure("head").si(i))
                    .isEqualTo(HISTORY.pressure("head").si(first + i));
            assertThat(span.massFlow("head").si(i)).isEqualTo(first + i + 1);
        }
        assertThat(span.massImbalance()).isEqualTo(1e-15);
        assertThat(span.cautions()).isEqualTo(HISTORY.cautions());
    }

    @Test
    void emptySpansAndUnlikeLengthsAreRefused() {
        assertRefused(
                () -> HISTORY.between(seconds(1.2), seconds(1.8)),
                "must-be-at-least",
                "number of samples in the span of time",
                1);
        assertRefused(() -> HISTORY.between(seconds(7), seconds(8)), "must-be-at-least");
        double[] two = {1, 2};
        double[] three = {1, 2, 3};
        assertRefused(() -> history(three, two, three, "head"), "must-be-at-least", "number of pressures", 3);
        assertRefused(() -> history(two, two, three, "head"), "must-be-at-most", "number of mass flows", 2);
        assertRefused(() -> history(two, two, two, "tail"), "must-be-at-least", "number of mass flows", 2);
        assertRefused(() -> history(new double[0], two, two, "head"), "must-be-at-least", "number of samples", 1);
        assertRefused(
                () -> new PressureHistory(
                        HISTORY.times(), HISTORY.pressures(), Map.of(), 0, List.of(CircuitCautions.IDEAL)),
                "must-be-at-least",
                "number of nodes",
                1);
        assertRefused(
                () -> new PressureHistory(
                        HISTORY.times(), HISTORY.pressures(), HISTORY.massFlows(), -1, HISTORY.cautions()),
                "must-be-at-least",
                "imbalance of mass",
                0);
    }

    /** The first sample from which on none is farther than the band from the last. */
    @ParameterizedTest
    @CsvSource({
        "40, 0, 0",
        "30, 0, 2",
        "29, 0, 3",
        "10, 0, 3",
        "9.9, 0, 5",
        "0.5, 0, 6",
        "9.9, 3.5, 1.5",
        "9.9, 4, 1",
        "9.9, 4.5, 0",
        "0.5, 6, 0",
        "30, 1, 1",
        "30, 1.5, 0"
    })
    void recoveryEndsWithTheLastSampleOutOfTheBand(double band, double event, double expected) {
        assertThat(Kind.TIME.si(HISTORY.recoveryTime("head", seconds(event), Kind.PRESSURE.of(band))))
                .isEqualTo(expected);
    }

    @Test
    void bandOfARecoveryIsAboveZero() {
        assertRefused(
                () -> HISTORY.recoveryTime("head", seconds(0), megapascals(0)), "must-be-above", "band of pressure", 0);
    }

    private static PressureRipple ripple(String... nodes) {
        Map<String, javax.measure.Quantity<Pressure>> ripples = new LinkedHashMap<>();
        for (String node : nodes) {
            ripples.put(node, megapascals(2));
        }
        return new PressureRipple(
                Kind.FREQUENCY.of(30),
                ripples,
                QuantityArray.ofSi(Kind.FREQUENCY, 25, 90),
                List.of(CircuitCautions.IDEAL));
    }

    @Test
    void rippleNamesItsNodes() {
        assertThat(ripple("a", "b")).hasToString("ripple 2 MPa at a, 2 MPa at b");
        assertThat(ripple("a", "b").at("b")).isEqualTo(megapascals(2));
        assertThat(ripple("a").describe())
                .containsEntry("plunger_frequency_Hz", 30.0)
                .containsKeys("line_frequencies_Hz", "cautions");
        assertThat(ripple("a").describe().get("nodes"))
                .asString()
                .contains("name=a")
                .contains("ripple_Pa=2000000.0");
        assertThat(assertRefused(() -> ripple("a", "b").at("c"), "unknown-node").parameters())
                .containsEntry("node", "c")
                .containsEntry("nodes", "a, b");
        assertRefused(
                () -> new PressureRipple(
                        Kind.FREQUENCY.of(0), Map.of(), ripple("a").lineFrequencies(), List.of()),
                "must-be-above",
                "plunger frequency",
                0);
    }

    /** Odd multiples of the quarter wave against harmonics 1 to 4 of a pump of 100 Hz. */
    @ParameterizedTest
    @ValueSource(doubles = {100, 71, 129, 69, 30, 24, 10, 131, 139, 141, 151, 351, 449, 451, 600})
    void resonancesAreNearOddMultiples(double quarterHz) {
        List<Caution> cautions = PressureRipple.resonances(100, new double[] {quarterHz});
        double expectedLine = Double.NaN;
        double expectedPump = Double.NaN;
        // odd multiples from the lowest on, harmonics below the fifth
        for (int odd = 1; odd < 200 && Double.isNaN(expectedLine); odd += 2) {
            int harmonic = 1;
            for (int h = 2; h <= 9; h++) {
                if (Math.abs(odd * quarterHz - 100 * h) < Math.abs(odd * quarterHz - 100 * harmonic)) {
                    harmonic = h;
                }
            }
            if (harmonic < 5 && Math.abs(odd * quarterHz - 100 * harmonic) <= 30 * harmonic) {
                expectedLine = odd * quarterHz;
                expectedPump = 100 * harmonic;
            }
        }
        if (Double.isNaN(expectedLine)) {
            assertThat(cautions).isEmpty();
            assertThat(quarterHz).isGreaterThan(450);
        } else {
            assertThat(cautions).hasSize(1);
            assertThat((double) Objects.requireNonNull(
                            cautions.get(0).message().parameters().get("line_Hz")))
                    .isEqualTo(expectedLine, within(1e-9));
            assertThat(cautions.get(0).message().parameters()).containsEntry("pump_Hz", expectedPump);
        }
    }

    @Test
    void everyLineHasItsOwnResonance() {
        List<Caution> cautions = new ArrayList<>(PressureRipple.resonances(100, new double[] {100, 700, 90}));
        assertThat(cautions).hasSize(2);
        assertThat(cautions.get(1).message().parameters()).containsEntry("line_Hz", 90.0);
    }
}
