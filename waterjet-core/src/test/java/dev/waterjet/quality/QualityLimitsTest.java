package dev.waterjet.quality;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import dev.waterjet.quality.QualityScale.Measure;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Limits themselves, just beyond them, and in words. */
class QualityLimitsTest {

    private static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);

    @Test
    void aRequirementNamesEachOfItsLimits() {
        assertThat(MEDIUM).hasToString("medium");
        assertThat(MEDIUM.withLagTolerance(millimetres(0.05))).hasToString("medium, lag tolerance 0.05 mm");
        assertThat(MEDIUM.withOutsideCornerTolerance(millimetres(0.3)))
                .hasToString("medium, lag tolerance at outside corners 0.3 mm");
        assertThat(MEDIUM.withTaper(degrees(0.5)).withRoughness(micrometres(6)).asLead())
                .hasToString("medium, taper per side 0.5 °, roughness Ra at the exit 6 µm, lead");
        assertThat(MEDIUM.withPerpendicularityRange(2).withProfileHeightRange(3))
                .hasToString("medium, perpendicularity range 2, profile height range 3");
        assertThat(MEDIUM.withArcRadius(millimetres(5)).withMaximumFeed(millimetresPerMinute(400)))
                .hasToString("medium, radius of the smallest arc 5 mm, maximum feed rate 400 mm/min");
        assertThat(MEDIUM.withArcRadius(millimetres(5)).asLead().describe())
                .containsEntry("arc_radius_m", 0.005)
                .containsEntry("lead", true)
                .containsKey("quality")
                .doesNotContainKey("taper_rad");
    }

    /** ISO 9013:2017, ranges 5 to 1 of perpendicularity, from the coarsest quality to the finest. */
    @ParameterizedTest
    @EnumSource
    void withoutALagToleranceTheRangeOfItsQualityHolds(CutQuality quality) {
        double[][] lines = {{1.2, 0.035}, {0.8, 0.02}, {0.4, 0.01}, {0.15, 0.007}, {0.05, 0.003}};
        EdgeRequirement requirement = EdgeRequirement.of(quality);
        for (double thicknessMm : new double[] {0.7, 10, 84}) {
            double[] line = lines[java.util.Arrays.asList(CutQuality.values()).indexOf(quality)];
            double expected = (line[0] + line[1] * thicknessMm) / 1000;
            assertThat(requirement.lagToleranceSi(thicknessMm / 1000)).isEqualTo(expected, within(1e-15));
            assertThat(requirement.outsideCornerToleranceSi(thicknessMm / 1000)).isEqualTo(expected, within(1e-15));
            assertThat(requirement
                            .withOutsideCornerTolerance(millimetres(0.25))
                            .outsideCornerToleranceSi(thicknessMm / 1000))
                    .isEqualTo(0.25e-3, within(1e-18));
        }
    }

    @Test
    void aRefusedQualityNamesThoseThatThereAre() {
        assertThat(assertRefused(() -> CutQuality.parse("finest"), "unknown-cut-quality")
                        .parameters())
                .containsEntry("text", "finest")
                .containsEntry("known", "very coarse, coarse, medium, fine, very fine");
    }

    @Test
    void rangesAreThoseOfTheStandard() {
        assertThat(MEDIUM.withPerpendicularityRange(1).perpendicularityRange()).hasValue(1);
        assertThat(MEDIUM.withPerpendicularityRange(5).perpendicularityRange()).hasValue(5);
        assertThat(MEDIUM.withProfileHeightRange(4).profileHeightRange()).hasValue(4);
        assertRefused(() -> MEDIUM.withProfileHeightRange(0), "unknown-range");
        assertRefused(() -> MEDIUM.withPerpendicularityRange(6), "unknown-range", "perpendicularity range", 5);
        Iso9013 standard = Iso9013.forThickness(millimetres(10));
        assertRefused(() -> standard.perpendicularityLimit(0), "must-be-at-least", "range of perpendicularity", 1);
        assertRefused(() -> standard.perpendicularityLimit(6), "must-be-at-most", "range of perpendicularity", 5);
        assertRefused(() -> standard.profileHeightRange(micrometres(-1)), "must-be-at-least", "profile height", 0);
        assertThat(standard.describe()).containsEntry("thickness_m", 0.01).containsKey("evidence");
        assertThat(standard.evidence().note()).contains("agreement");
        assertThat(Iso9013.byAgreement().code()).isEqualTo("standard-by-agreement");
    }

    private static double edgeHeight(double thicknessMm) {
        return Kind.LENGTH.si(Iso9013.forThickness(millimetres(thicknessMm)).edgeHeight()) * 1000;
    }

    /** Up to 3 mm a tenth of the thickness, then steps that include their ends, to 300 mm. */
    @ParameterizedTest
    @ValueSource(doubles = {6, 10, 20, 40, 100, 150, 200, 250})
    void edgeHeightsRiseBehindTheEndOfAStep(double endMm) {
        assertThat(edgeHeight(endMm)).isEqualTo(edgeHeight(Math.nextDown(endMm)));
        assertThat(edgeHeight(Math.nextUp(endMm))).isGreaterThan(edgeHeight(endMm));
        assertThat(edgeHeight(0.4)).isEqualTo(0.04, within(1e-12));
        assertThat(edgeHeight(3)).isEqualTo(0.3, within(1e-12));
        assertThat(edgeHeight(300)).isEqualTo(edgeHeight(251), within(1e-12));
        assertRefused(() -> edgeHeight(Math.nextUp(300.0)), "must-be-at-most", "thickness", 0.3);
    }

    /** Each probability is that of the normal distribution between two limits, by Simpson's rule. */
    @Test
    void probabilityOfARangeIsTheIntegralOfItsSpread() {
        Iso9013 standard = Iso9013.forThickness(millimetres(20));
        double mean = 0.5e-3;
        double deviation = 0.4e-3;
        var odds = standard.perpendicularityProbabilities(Estimate.of(Kind.LENGTH, mean, deviation));
        double[] limits = {0.05 + 0.06, 0.15 + 0.14, 0.4 + 0.2, 0.8 + 0.4, 1.2 + 0.7};
        for (int i = 1; i < limits.length; i++) {
            assertThat(odds.get(i))
                    .isEqualTo(
                            integral((limits[i - 1] / 1000 - mean) / deviation, (limits[i] / 1000 - mean) / deviation),
                            within(1e-7));
        }
        assertThat(odds.get(5)).isEqualTo(integral((limits[4] / 1000 - mean) / deviation, 12), within(1e-7));
    }

    private static double integral(double from, double to) {
        int steps = 400;
        double sum = 0;
        for (int i = 0; i <= steps; i++) {
            double x = from + (to - from) * i / steps;
            sum += Math.exp(-x * x / 2) * (i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2);
        }
        return sum * (to - from) / steps / 3 / Math.sqrt(2 * Math.PI);
    }

    private static QualityProbabilities at(double index) {
        return new QualityProbabilities(Estimate.of(Kind.RATIO, index, 0.5), QualityIndexTable.standard());
    }

    /** A level is reached at its index, and within rounding of it. */
    @ParameterizedTest
    @EnumSource
    void aLevelIsReachedAtItsIndex(CutQuality quality) {
        double index = QualityIndexTable.standard().index(quality);
        assertThat(at(index).quality()).contains(quality);
        assertThat(at(index * (1 - 1e-13)).quality()).contains(quality);
        assertThat(at(index + 0.9).quality()).contains(quality);
        var below = at(index * (1 - 1e-9)).quality();
        if (quality == CutQuality.VERY_COARSE) {
            assertThat(below).isEmpty();
            assertThat(at(0.7)).hasToString("not separated at quality index 0.7");
        } else {
            assertThat(below.orElseThrow()).isLessThan(quality);
            assertThat(at(index)).hasToString(quality.label() + " at quality index " + (int) index);
        }
        assertThat(at(3.2).probabilities().get(quality))
                .isEqualTo(
                        integral((index - 3.2) / 0.5, quality == CutQuality.VERY_FINE ? 15 : (index + 1 - 3.2) / 0.5),
                        within(1e-6));
        assertThat(QualityIndexTable.standard().describe())
                .containsEntry(quality.label().replace(' ', '_'), index);
        assertThat(at(3.2).describe())
                .containsKeys("index", "table", "none", quality.label().replace(' ', '_'));
        assertThat(at(3.2).none()).isEqualTo(integral(-15, (1 - 3.2) / 0.5), within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"0.1, 2, 0.8", "2, 10, 2.5", "10, 400, 8"})
    void cutOffBelongsToItsSpanOfRoughness(double aboveUm, double toUm, double lengthMm) {
        for (double um : new double[] {aboveUm * (1 + 1e-9), toUm}) {
            assertThat(Kind.LENGTH.si(CutOff.forRa(micrometres(um)).length()) * 1000)
                    .isEqualTo(lengthMm, within(1e-12));
        }
        assertRefused(() -> CutOff.forRa(Kind.LENGTH.of(0.1e-6)), "must-be-above", "roughness Ra", 0.1e-6);
    }

    private static final String HEADING = "level,measure,above_thickness,to_thickness,constant,per_thickness\n";

    @Test
    void aScaleKnowsItsMeasuresAndLimits() {
        assertThat(Measure.PROFILE_HEIGHT.text()).isEqualTo("profile-height");
        assertThat(Measure.ROUGHNESS_RA.label()).isEqualTo("roughness ra");
        StringBuilder text = new StringBuilder(HEADING);
        for (Measure measure : Measure.values()) {
            text.append("ridge,").append(measure.text()).append(",1 mm,30 mm,20 um,0.001\n");
            text.append("ridge,").append(measure.text()).append(",1 mm,30 mm,30 um,0.001\n");
            text.append("hollow,").append(measure.text()).append(",1 mm,30 mm,25 um,0.001\n");
        }
        QualityScale scale = QualityScale.parse(text.toString());
        for (Measure measure : Measure.values()) {
            QualityScale.ForThickness tenMm = scale.forThickness(millimetres(10));
            assertThat(tenMm.level(measure, micrometres(30))).contains("ridge");
            assertThat(tenMm.level(measure, micrometres(40.1))).isEmpty();
            // the last limit lies inside the one before it and adds nothing
            Map<String, Double> odds = tenMm.probabilities(measure, Estimate.of(Kind.LENGTH, 40e-6, 5e-6));
            assertThat(odds.get("ridge")).isEqualTo(0.5, within(1e-9));
            assertThat(odds.get("hollow")).isZero();
            assertRefused(() -> tenMm.level(measure, micrometres(-1)), "must-be-at-least", measure.label(), 0);
        }
        assertThat(scale.describe().get("limits"))
                .asString()
                .contains("level=ridge")
                .contains("above_thickness_m=0.001")
                .contains("to_thickness_m=0.03")
                .contains("constant_m=2.0E-5")
                .contains("per_thickness=0.001");
        assertRefused(() -> scale.forThickness(millimetres(0)), "must-be-above", "thickness", 0);
        assertThat(assertRefused(() -> QualityScale.parse(HEADING + "a,gloss,0 mm,1 mm,1 mm,0\n"), "unknown-measure")
                        .parameters())
                .containsEntry("text", "gloss")
                .containsEntry("known", "perpendicularity, profile-height, roughness-ra");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "a,roughness-ra,-1 mm,9 mm,4 um,0 | line 2, column 16: must-be-at-least",
                "a,roughness-ra,0 mm,-9 mm,4 um,0 | line 2, column 21: must-be-at-least",
                "a,roughness-ra,0 mm,9 mm,-4 um,0 | line 2, column 26: must-be-at-least",
                "a,roughness-ra,0 mm,9 mm,4 um,-1 | line 2, column 31: must-be-at-least",
                "a,roughness,0 mm,9 mm,4 um,0 | line 2, column 3: unknown-measure",
                "a,roughness-ra,0 mm,9 mm,4 um | line 2, column 1: wrong-cell-count"
            })
    void faultsOfAScaleHaveTheirPlace(String row, String refusal) {
        assertThat(Refusals.of(() -> QualityScale.parse(HEADING + row + "\n"))).isEqualTo(refusal);
        assertThat(Refusals.of(() -> QualityScale.parse("# ours\n" + HEADING)))
                .isEqualTo("line 2, column 1: scale-without-level");
    }
}
