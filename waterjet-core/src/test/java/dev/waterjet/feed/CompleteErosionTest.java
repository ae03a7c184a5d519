package dev.waterjet.feed;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** The complete erosion model against optima that others published for it; units of the source are mm, kg and MPa. */
class CompleteErosionTest {

    private static final double PARTICLE = 3950;
    private static final double ROUNDNESS = 0.35;
    private static final double STRENGTH = 8142e6;

    /** 5 pi^2 883^2.5 / 3.95e-6^0.5 (0.9375/350000 + 0.96/114000)^2 mm/s: without the factor of 1000 between MPa and kg/(mm s2). */
    private static final double THRESHOLD_OF_SOURCE = 0.0708744;

    private static final Material TITANIUM = Materials.standard().get("titanium");
    private static final AbrasiveJet JET = CuttingHead.of(
                    Orifice.sapphire(millimetres(0.3)), FocusingTube.of(millimetres(0.9), millimetres(72)))
            .jet(megapascals(360), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(400));

    private record Optimum(List<String> header, CsvText.Row row) {

        double number(String column) {
            String cell = text(column);
            return cell.isEmpty() ? Double.NaN : Double.parseDouble(cell);
        }

        String text(String column) {
            return row.cells().get(header.indexOf(column));
        }

        double bore() {
            return number("tube_mm") / 1e3;
        }

        /** Momentum of the water shared with the particles, by the source: water of 1000 kg/m3 without compression. */
        double speed() {
            double water = number("water_kg_per_s");
            return 0.8
                    * Math.sqrt(2 * number("pressure_MPa") * 1e6 / 1000)
                    * water
                    / (water + number("abrasive_kg_per_s"));
        }

        double characteristic() {
            return PhysicsKernel.characteristicSpeed(STRENGTH, ROUNDNESS, PARTICLE);
        }

        double attackAngle() {
            return PhysicsKernel.attackAngle(
                    bore(),
                    PhysicsKernel.cuttingWear(
                            bore(),
                            speed(),
                            characteristic(),
                            number("abrasive_kg_per_s"),
                            number("feed_mm_per_s") / 1e3,
                            PARTICLE));
        }

        double initialAngle() {
            return PhysicsKernel.initialAngle(speed(), characteristic(), ROUNDNESS, 3);
        }

        double deformation() {
            return PhysicsKernel.deformationWear(
                    bore(),
                    speed(),
                    THRESHOLD_OF_SOURCE,
                    STRENGTH,
                    0.07,
                    number("abrasive_kg_per_s"),
                    number("feed_mm_per_s") / 1e3,
                    0.002);
        }
    }

    private static List<Optimum> optima() throws IOException {
        try (InputStream in = CompleteErosionTest.class.getResourceAsStream("/reference/erosion/optima-1989.csv")) {
            List<CsvText.Row> rows =
                    CsvText.parse(new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8));
            return rows.subList(1, rows.size()).stream()
                    .map(row -> new Optimum(rows.get(0).cells(), row))
                    .toList();
        }
    }

    @Test
    void publishedOptimaHaveTheirAnglesAndDepths() throws IOException {
        assertThat(optima()).hasSize(4);
        for (Optimum optimum : optima()) {
            double tolerance = optimum.number("tolerance");
            assertThat(optimum.initialAngle())
                    .isCloseTo(optimum.number("initial_angle"), within(tolerance * optimum.initialAngle()));
            assertThat(1e3 * optimum.deformation())
                    .isCloseTo(
                            optimum.number("deformation_depth_mm"),
                            within(tolerance * optimum.number("deformation_depth_mm")));
            if (!optimum.text("attack_angle").isEmpty()) {
                assertThat(optimum.attackAngle()).isCloseTo(optimum.number("attack_angle"), within(tolerance * 0.38));
            }
        }
    }

    /** The printed depth is 0.4 (d / a_t - 1 mm / a_0); where the front ends steeper than it begins, 0 is printed. */
    @Test
    void printedDepthsOfCuttingHaveAMillimetreForTheBore() throws IOException {
        for (Optimum optimum : optima()) {
            boolean isAbsent = optimum.attackAngle() > 1.005 * optimum.initialAngle();
            double printed =
                    isAbsent ? 0 : 0.4 * (1e3 * optimum.bore() / optimum.attackAngle() - 1 / optimum.initialAngle());

            assertThat(printed)
                    .isCloseTo(
                            optimum.number("printed_cutting_depth_mm"),
                            within(1e-9 + optimum.number("tolerance") * optimum.number("printed_cutting_depth_mm")));
            assertThat(1e3 * PhysicsKernel.cuttingWear(optimum.bore(), optimum.attackAngle(), optimum.initialAngle()))
                    .isLessThanOrEqualTo(printed + 1e-9);
        }
    }

    /** In SI it is larger than by the source in its units, by the root of 1000. */
    @Test
    void theThresholdOfTitaniumIsSmall() {
        ErosionFeed model = ErosionFeed.standard().withElasticThreshold(megapascals(883), megapascals(114_000), 0.2);
        double depth = Kind.LENGTH.si(model.deformationWear(JET, TITANIUM, millimetresPerMinute(100)));
        double without =
                Kind.LENGTH.si(ErosionFeed.standard().deformationWear(JET, TITANIUM, millimetresPerMinute(100)));

        assertThat(PhysicsKernel.elasticSpeed(883e6, PARTICLE, 0.9375 / 350e9 + 0.96 / 114e9))
                .isCloseTo(THRESHOLD_OF_SOURCE * Math.sqrt(1000), within(1e-5));
        assertThat(depth / without).isBetween(0.97, 1.0);
    }

    @Test
    void theCompleteModelIsInvertedAndCutsLess() {
        ErosionFeed complete = ErosionFeed.standard().withInitialAngle(3);

        for (double depth : new double[] {0.002, 0.01, 0.05}) {
            double feed = complete.separationFeedSi(JET, TITANIUM, depth);
            assertThat(complete.separationDepthSi(JET, TITANIUM, feed)).isCloseTo(depth, within(1e-9));
            assertThat(feed).isLessThan(ErosionFeed.standard().separationFeedSi(JET, TITANIUM, depth));
        }
        assertThat(complete)
                .isNotEqualTo(ErosionFeed.standard())
                .isEqualTo(ErosionFeed.standard().withInitialAngle(3));
        // fast: the front ends steeper than it begins, and only deformation is left
        assertThat(Kind.LENGTH.si(complete.cuttingWear(JET, TITANIUM, millimetresPerMinute(20_000))))
                .isZero();
    }

    @Test
    void impossibleConstantsAreRefused() {
        assertRefused(() -> ErosionFeed.standard().withInitialAngle(0), "must-be-above");
        assertRefused(
                () -> ErosionFeed.standard().withElasticThreshold(megapascals(800), megapascals(100_000), 0.6),
                "must-be-at-most");
    }
}
