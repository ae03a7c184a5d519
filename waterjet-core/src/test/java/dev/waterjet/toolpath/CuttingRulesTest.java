package dev.waterjet.toolpath;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.quality.CutQuality;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Clearances: the defaults that the documentation states, each changed alone, and their bounds. */
class CuttingRulesTest {

    private static final CuttingRules RULES = CuttingRules.of(millimetres(0.8), millimetres(10));

    /** Kerf, plate, web: two kerf widths or a quarter of the thickness. */
    @ParameterizedTest
    @CsvSource({"0.8, 10, 2.5", "0.8, 6, 1.6", "1.2, 4, 2.4", "1, 8.04, 2.01"})
    void theDefaultsFollowFromKerfAndThickness(double kerf, double plate, double web) {
        Map<String, Object> described =
                CuttingRules.of(millimetres(kerf), millimetres(plate)).describe();

        assertThat((Double) described.get("kerf_width_m")).isCloseTo(kerf * 1e-3, within(1e-15));
        assertThat((Double) described.get("lead_length_m")).isEqualTo(0.003);
        assertThat((Double) described.get("lead_radius_m")).isEqualTo(0.0035);
        assertThat(described.get("lead_quality")).isEqualTo("very-coarse");
        assertThat((Double) described.get("pierce_clearance_m")).isCloseTo(1.25e-3 * kerf, within(1e-15));
        assertThat((Double) described.get("corner_clearance_m")).isCloseTo(2e-3 * kerf, within(1e-15));
        assertThat((Double) described.get("minimum_web_m")).isCloseTo(1e-3 * web, within(1e-15));
        CuttingRules rules = CuttingRules.of(millimetres(kerf), millimetres(plate));
        assertThat(Kind.LENGTH.si(rules.kerfWidth())).isCloseTo(kerf * 1e-3, within(1e-15));
        assertThat(Kind.LENGTH.si(rules.minimumWeb())).isCloseTo(web * 1e-3, within(1e-15));
    }

    private static void assertChanges(CuttingRules changed, Map<String, Object> expected) {
        // all changes before it stay
        CuttingRules all = RULES.withLead(millimetres(1), millimetres(2))
                .withLeadQuality(CutQuality.FINE)
                .withPierceClearance(millimetres(5))
                .withCornerClearance(millimetres(6))
                .withMinimumWeb(millimetres(7));
        Map<String, Object> values = new HashMap<>(all.describe());
        values.putAll(expected);
        assertThat(changed.describe()).isEqualTo(values);
    }

    @Test
    void oneChangeLeavesTheOthers() {
        CuttingRules all = RULES.withMinimumWeb(millimetres(7))
                .withCornerClearance(millimetres(6))
                .withPierceClearance(millimetres(5))
                .withLeadQuality(CutQuality.FINE)
                .withLead(millimetres(1), millimetres(2));

        assertChanges(all, Map.of());
        assertChanges(
                all.withLead(millimetres(8), millimetres(9)), Map.of("lead_length_m", 0.008, "lead_radius_m", 0.009));
        assertChanges(all.withPierceClearance(millimetres(8)), Map.of("pierce_clearance_m", 0.008));
        assertChanges(all.withCornerClearance(millimetres(8)), Map.of("corner_clearance_m", 0.008));
        assertChanges(all.withMinimumWeb(millimetres(8)), Map.of("minimum_web_m", 0.008));
        assertChanges(
                all.withLeadQuality(CutQuality.MEDIUM),
                Map.of(
                        "lead_quality",
                        Objects.requireNonNull(RULES.withLeadQuality(CutQuality.MEDIUM)
                                .describe()
                                .get("lead_quality"))));
    }

    @Test
    void values() {
        ValueContract.of(() -> RULES)
                .differs("kerf", CuttingRules.of(millimetres(0.9), millimetres(10)))
                .differs("length", RULES.withLead(millimetres(1), millimetres(3.5)))
                .differs("radius", RULES.withLead(millimetres(3), millimetres(1)))
                .differs("quality", RULES.withLeadQuality(CutQuality.FINE))
                .differs("pierce", RULES.withPierceClearance(millimetres(3)))
                .differs("corner", RULES.withCornerClearance(millimetres(3)))
                .differs("web", RULES.withMinimumWeb(millimetres(3)))
                .prints("0.8 mm")
                .check();
    }

    @Test
    void clearancesHaveTheirBounds() {
        assertThat(RULES.withPierceClearance(millimetres(0.4)).pierceClearanceSi())
                .isEqualTo(0.0004);
        assertNamed(() -> RULES.withPierceClearance(millimetres(0.3999)), "pierce clearance");
        assertThat(RULES.withCornerClearance(millimetres(0)).cornerClearanceSi())
                .isZero();
        assertThat(RULES.withLead(millimetres(0), millimetres(0)).leadRadiusSi())
                .isZero();
        assertNamed(() -> RULES.withCornerClearance(millimetres(-1e-3)), "corner clearance of a lead");
        assertNamed(() -> RULES.withLead(millimetres(-1e-3), millimetres(1)), "length of the straight lead");
        assertNamed(() -> RULES.withLead(millimetres(1), millimetres(-1e-3)), "radius of the lead");
        assertNamed(() -> RULES.withMinimumWeb(millimetres(0)), "minimum web");
        assertNamed(() -> CuttingRules.of(millimetres(0), millimetres(10)), "kerf width");
        assertNamed(() -> CuttingRules.of(millimetres(1), millimetres(0)), "thickness");
    }

    private static void assertNamed(ThrowingCallable call, String quantity) {
        Throwable thrown = catchThrowable(call);
        assertThat(thrown).isInstanceOf(DomainException.class);
        assertThat(((DomainException) thrown).quantity()).isEqualTo(quantity);
    }
}
