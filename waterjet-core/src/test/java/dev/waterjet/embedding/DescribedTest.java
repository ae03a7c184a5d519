package dev.waterjet.embedding;

import static dev.waterjet.Refusals.codeOf;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.waterjet.LibraryClasses;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class DescribedTest {

    private static final ObjectMapper MAPPER = new ObjectMapper();

    /** Inputs, and moves of a program, whose parts the caller has. */
    private static final List<String> INPUTS = List.of(
            "Arc",
            "Batch",
            "Comment",
            "ContourPlace",
            "CutFeeds",
            "Distribution",
            "FeedProfile",
            "FeedSweep",
            "JetOff",
            "JetOn",
            "KerfMeasurement",
            "LagMeasurement",
            "Line",
            "MeasuredSurface",
            "NozzleMotion",
            "OffsetOff",
            "OffsetOn",
            "Rapid",
            "RoughnessMeasurement",
            "SheetLayout",
            "Slats",
            "UncertainInputs");

    /** Models, which have evidence with a description. */
    private static final List<String> MODELS = List.of(
            "CutFront",
            "DeclinationFeed",
            "ErosionFeed",
            "FlowStrengths",
            "KerfModel",
            "KerfProfile",
            "LagModel",
            "MachinabilityFeed",
            "RoughnessModel",
            "SpecificEnergyFeed",
            "SurfaceModel",
            "ThresholdFeed");

    /** Types that compute. */
    private static final List<String> SERVICES = List.of(
            "Calibration",
            "CircuitBuilder",
            "ContourBuilder",
            "ContourConditioner",
            "CutSimulator",
            "CuttingCost",
            "CuttingOrder",
            "EdgeCursor",
            "FeedPlanner",
            "FeedSolver",
            "ForThickness",
            "HeadSelector",
            "HoldingTabs",
            "KerfOffset",
            "LeadPlacer",
            "LeastSquares",
            "MonteCarlo",
            "PartLocator",
            "PartPlanner",
            "PierceSelector",
            "ProgramChecks",
            "ProgramWriter",
            "Sheet",
            "SobolStudy");

    /** Tables, maps, units and texts. */
    private static final List<String> TABLES = List.of(
            "CsvText",
            "Description",
            "DeviationMap",
            "Kind",
            "Materials",
            "Measures",
            "QuantityText",
            "Require",
            "Row",
            "Scale",
            "Units");

    /** Kernels that are public for another package until it needs them no more. */
    private static final List<String> KERNELS = List.of(
            "ArcLagKernel",
            "BoxTree",
            "EdgeTree",
            "KerfShape",
            "LagKernel",
            "RoughnessKernel",
            "RoughnessNumbers",
            "Separation",
            "Walk");

    private static final List<Described> SAMPLES = Samples.all();

    static List<Described> serializableSamples() {
        return SAMPLES.stream().filter(Serializable.class::isInstance).toList();
    }

    static List<Described> samples() {
        return SAMPLES;
    }

    @ParameterizedTest
    @MethodSource("samples")
    void jacksonWritesTheDescription(Described sample) throws Exception {
        String json = MAPPER.writeValueAsString(sample);
        Map<String, Object> read = MAPPER.readValue(json, new TypeReference<>() {});

        assertThat(MAPPER.writeValueAsString(read)).isEqualTo(MAPPER.writeValueAsString(sample.describe()));
        assertThat(read.keySet()).containsExactlyElementsOf(sample.describe().keySet());
        assertThat(read.keySet().iterator().next()).isEqualTo("type");
    }

    @ParameterizedTest
    @MethodSource("samples")
    void aDescriptionIsPlain(Described sample) {
        isPlain(sample.describe());
    }

    @ParameterizedTest
    @MethodSource("samples")
    void aTextIsForPeople(Described sample) {
        assertThat(sample.toString()).isNotBlank().doesNotContain("@", "NaN");
    }

    private static void isPlain(Object value) {
        if (value instanceof Map<?, ?> map) {
            map.forEach((key, part) -> {
                assertThat((String) key).matches("[a-z][A-Za-z0-9_]*");
                isPlain(part);
            });
        } else if (value instanceof List<?> list) {
            list.forEach(DescribedTest::isPlain);
        } else if (value instanceof Double number) {
            assertThat(number).isFinite();
        } else {
            assertThat(value).isInstanceOfAny(String.class, Boolean.class, Long.class);
        }
    }

    @ParameterizedTest
    @MethodSource("serializableSamples")
    void javaSerialisationKeepsEverything(Described sample) throws Exception {
        Described copy = (Described) copy(sample);

        assertThat(copy.describe()).isEqualTo(sample.describe());
        assertThat(copy).hasToString(sample.toString());
    }

    private static Object copy(Object original) throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(original);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return in.readObject();
        }
    }

    @Test
    void everyDescribedTypeHasASample() {
        TreeSet<String> described = new TreeSet<>();
        for (Class<?> type : LibraryClasses.all()) {
            if (Described.class.isAssignableFrom(type) && !type.isInterface()) {
                described.add(type.getName());
            }
        }
        TreeSet<String> sampled = new TreeSet<>();
        samples().forEach(sample -> sampled.add(sample.getClass().getName()));

        TreeSet<String> missing = new TreeSet<>(described);
        missing.removeAll(sampled);
        assertThat(missing).as("described types without a sample").isEmpty();
    }

    @Test
    void everyAnswerIsDescribed() {
        TreeSet<String> plain = new TreeSet<>();
        for (Class<?> type : LibraryClasses.all()) {
            boolean isOfCalls = type.isInterface() || type.isEnum() || Throwable.class.isAssignableFrom(type);
            if (!isOfCalls && !Described.class.isAssignableFrom(type)) {
                plain.add(type.getSimpleName());
            }
        }
        INPUTS.forEach(plain::remove);
        MODELS.forEach(plain::remove);
        SERVICES.forEach(plain::remove);
        TABLES.forEach(plain::remove);
        KERNELS.forEach(plain::remove);
        assertThat(plain).isEmpty();
    }

    @Test
    void anEstimateReadsWell() throws Exception {
        assertThat(MAPPER.writeValueAsString(Estimate.of(Kind.SPEED, 0.01, 0)))
                .isEqualTo("{\"type\":\"estimate\",\"kind\":\"speed\",\"value_m_per_s\":0.01,"
                        + "\"standard_uncertainty_m_per_s\":0.0,\"spread\":\"normal\",\"lower_95_m_per_s\":0.01,"
                        + "\"upper_95_m_per_s\":0.01,\"cautions\":[]}");
    }

    @Test
    void whatCannotBeWrittenIsRefused() {
        Description description = Description.of("gauge").put("reading", Kind.PRESSURE, 1e5);

        assertThat(codeOf(() -> description.put("drift", Kind.PRESSURE, Double.NaN)))
                .isEqualTo("must-be-at-most");
        assertThat(codeOf(() -> description.put("reading", Kind.PRESSURE, 2e5))).isEqualTo("duplicate-key");
        assertThat(codeOf(() -> description.put("parts", List.of(new Object()))))
                .isEqualTo("no-description");
        assertThatThrownBy(() -> description.map().clear()).isInstanceOf(UnsupportedOperationException.class);
    }
}
