package dev.waterjet.evidence;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

class EvidenceTest {

    private static final Source LOG = Source.of("Log of the Hollow Ridge workshop, 2024");

    private static ValidityRange<?> pressures() {
        return ValidityRange.of("pressure", Kind.PRESSURE, megapascals(100), megapascals(400));
    }

    @Test
    void aSourceIsAValue() {
        ValueContract.of(() -> LOG)
                .tells("citation", Source::citation, "Log of the Hollow Ridge workshop, 2024")
                .change("place", source -> source.at("page 7"), Source::place, "page 7")
                .differs("citation", Source.of("Log of the ring workshop, 2024"))
                .check();
        assertThat(LOG).hasToString("Log of the Hollow Ridge workshop, 2024");
        assertThat(LOG.at("page 7")).hasToString("Log of the Hollow Ridge workshop, 2024, page 7");
        assertThat(LOG.at("page 7").describe())
                .isEqualTo(Map.of(
                        "type", "source", "citation", "Log of the Hollow Ridge workshop, 2024", "place", "page 7"));
    }

    @Test
    void evidenceIsAValue() {
        ValueContract.of(() -> Evidence.of(EvidenceGrade.FITTED, LOG))
                .tells("grade", Evidence::grade, EvidenceGrade.FITTED)
                .tells("source", Evidence::source, LOG)
                .change("note", evidence -> evidence.withNote("From six cuts."), Evidence::note, "From six cuts.")
                .change(
                        "ranges",
                        evidence -> evidence.withRanges(pressures()),
                        Evidence::ranges,
                        List.<ValidityRange<?>>of(pressures()))
                .differs("grade", Evidence.of(EvidenceGrade.ASSUMED, LOG))
                .differs("source", Evidence.of(EvidenceGrade.FITTED, LOG.at("page 7")))
                .check();
    }

    @Test
    void evidenceReadsAsOneLine() {
        Evidence evidence = Evidence.of(EvidenceGrade.FROM_MEMORY, LOG);

        assertThat(evidence).hasToString("from memory: Log of the Hollow Ridge workshop, 2024");
        assertThat(evidence.withNote("Recalled with doubt."))
                .hasToString("from memory: Log of the Hollow Ridge workshop, 2024. Recalled with doubt.");
        assertThat(evidence.describe()).containsEntry("grade", "from-memory").doesNotContainKey("note");
    }

    @Test
    void aCautionIsAValue() {
        ValueContract.of(() -> Caution.warning("thin-sheet", "The feed is held."))
                .tells("weight", Caution::weight, Caution.Weight.WARNING)
                .tells("code", Caution::code, "thin-sheet")
                .tells("text", Caution::text, "The feed is held.")
                .differs("weight", Caution.notice("thin-sheet", "The feed is held."))
                .differs("heavier weight", Caution.danger("thin-sheet", "The feed is held."))
                .differs("code", Caution.warning("soft-sheet", "The feed is held."))
                .differs("text", Caution.warning("thin-sheet", "The feed is not held."))
                .says("thin-sheet: The feed is held.")
                .check();
    }

    @Test
    void cautionsRangeFromLightToHeavy() {
        assertThat(Caution.notice("a", "b").weight())
                .isLessThan(Caution.warning("a", "b").weight());
        assertThat(Caution.warning("a", "b").weight())
                .isLessThan(Caution.danger("a", "b").weight());
    }

    @Test
    void aRangeIsAValue() {
        ValueContract.of(() -> ValidityRange.of("pressure", Kind.PRESSURE, megapascals(100), megapascals(400)))
                .tells("input", ValidityRange::input, "pressure")
                .tells("lowest", ValidityRange::lowest, megapascals(100))
                .tells("highest", ValidityRange::highest, megapascals(400))
                .differs("input", ValidityRange.of("supply", Kind.PRESSURE, megapascals(100), megapascals(400)))
                .differs("lowest", ValidityRange.of("pressure", Kind.PRESSURE, megapascals(90), megapascals(400)))
                .differs("highest", ValidityRange.of("pressure", Kind.PRESSURE, megapascals(100), megapascals(410)))
                .says("pressure 100000000 Pa to 400000000 Pa")
                .check();
        assertThat(ValidityRange.of("modulus", Kind.RATIO, Kind.RATIO.of(1), Kind.RATIO.of(2)))
                .isNotEqualTo(ValidityRange.of("modulus", Kind.LENGTH, Kind.LENGTH.of(1), Kind.LENGTH.of(2)));
    }

    @Test
    void aRangeHoldsItsEndsAndWhatLiesBetween() {
        ValidityRange<?> range = ValidityRange.of("thickness", Kind.LENGTH, millimetres(3), millimetres(100));

        assertThat(range.holds(Math.nextDown(0.003))).isFalse();
        assertThat(range.holds(0.003)).isTrue();
        assertThat(range.holds(0.1)).isTrue();
        assertThat(range.holds(Math.nextUp(0.1))).isFalse();
        assertThat(range.holds(Double.NaN)).isFalse();
    }

    @Test
    void aValueOutsideItsRangeDrawsACaution() {
        var range = ValidityRange.of("thickness", Kind.LENGTH, millimetres(3), millimetres(100));

        assertThat(range.check(0.1, Units.MILLIMETRE)).isEmpty();
        assertThat(range.check(0.2, Units.MILLIMETRE))
                .contains(Caution.notice(
                        "outside-range",
                        "thickness 200 mm lies outside 3 mm to 100 mm, where this model was established"));
        assertThat(range.check(0.002, Units.INCH).orElseThrow().text())
                .contains("thickness 0.07874 in lies outside 0.1181 in to 3.937 in");
    }

    @Test
    void aRangeMayBeOneValueButNotLess() {
        assertThat(ValidityRange.of("thickness", Kind.LENGTH, millimetres(3), millimetres(3))
                        .holds(0.003))
                .isTrue();
        assertThatThrownBy(() -> ValidityRange.of("thickness", Kind.LENGTH, millimetres(4), millimetres(3)))
                .isInstanceOfSatisfying(
                        DomainException.class, refused -> assertThat(refused.code()).isEqualTo("must-be-at-least"));
    }

    @Test
    void gradesSpeakAsReportsPrintThem() {
        assertThat(EvidenceGrade.values())
                .extracting(EvidenceGrade::words)
                .containsExactly(
                        "published", "fitted", "derived", "from memory", "common practice, no source", "assumed");
    }
}
