package dev.waterjet.evidence;

import static dev.waterjet.Refusals.codeOf;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class EvidenceTest {

    private static final Source LOG = Source.of("Log of the Hollow Ridge workshop, 2024");

    private static ValidityRange<?> pressures() {
        return ValidityRange.of("pressure", Kind.PRESSURE, megapascals(100), megapascals(400));
    }

    @Test
    void aSourceIsAValue() {
        ValueContract.of(() -> LOG)
                .has("citation", Source::citation, "Log of the Hollow Ridge workshop, 2024")
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
                .has("grade", Evidence::grade, EvidenceGrade.FITTED)
                .has("source", Evidence::source, LOG)
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
        ValueContract.of(() -> Caution.warning(Message.of("thin-sheet", "The feed is held.")))
                .has("severity", Caution::severity, Caution.Severity.WARNING)
                .has("code", Caution::code, "thin-sheet")
                .has("text", Caution::text, "The feed is held.")
                .differs("severity", Caution.notice(Message.of("thin-sheet", "The feed is held.")))
                .differs("higher severity", Caution.danger(Message.of("thin-sheet", "The feed is held.")))
                .differs("code", Caution.warning(Message.of("soft-sheet", "The feed is held.")))
                .differs("text", Caution.warning(Message.of("thin-sheet", "The feed is not held.")))
                .prints("thin-sheet: The feed is held.")
                .check();
    }

    @Test
    void severitiesRise() {
        assertThat(Caution.notice(Message.of("a", "b")).severity())
                .isLessThan(Caution.warning(Message.of("a", "b")).severity());
        assertThat(Caution.warning(Message.of("a", "b")).severity())
                .isLessThan(Caution.danger(Message.of("a", "b")).severity());
    }

    @Test
    void aRangeIsAValue() {
        ValueContract.of(() -> ValidityRange.of("pressure", Kind.PRESSURE, megapascals(100), megapascals(400)))
                .has("input", ValidityRange::input, "pressure")
                .has("minimum", ValidityRange::minimum, megapascals(100))
                .has("maximum", ValidityRange::maximum, megapascals(400))
                .differs("input", ValidityRange.of("supply", Kind.PRESSURE, megapascals(100), megapascals(400)))
                .differs("minimum", ValidityRange.of("pressure", Kind.PRESSURE, megapascals(90), megapascals(400)))
                .differs("maximum", ValidityRange.of("pressure", Kind.PRESSURE, megapascals(100), megapascals(410)))
                .prints("pressure 100 MPa to 400 MPa")
                .check();
        assertThat(ValidityRange.of("modulus", Kind.RATIO, Kind.RATIO.of(1), Kind.RATIO.of(2)))
                .isNotEqualTo(ValidityRange.of("modulus", Kind.LENGTH, Kind.LENGTH.of(1), Kind.LENGTH.of(2)));
    }

    @Test
    void aRangeContainsItsEndsAndAllBetween() {
        ValidityRange<?> range = ValidityRange.of("thickness", Kind.LENGTH, millimetres(3), millimetres(100));

        assertThat(range.contains(Math.nextDown(0.003))).isFalse();
        assertThat(range.contains(0.003)).isTrue();
        assertThat(range.contains(0.1)).isTrue();
        assertThat(range.contains(Math.nextUp(0.1))).isFalse();
        assertThat(range.contains(Double.NaN)).isFalse();
    }

    @Test
    void aValueOutsideItsRangeDrawsACaution() {
        var range = ValidityRange.of("thickness", Kind.LENGTH, millimetres(3), millimetres(100));

        assertThat(range.check(0.1, Units.MILLIMETRE)).isEmpty();
        assertThat(range.check(0.2, Units.MILLIMETRE)).hasValueSatisfying(caution -> {
            assertThat(caution.severity()).isEqualTo(Caution.Severity.NOTICE);
            assertThat(caution.code()).isEqualTo("outside-range");
            assertThat(caution.message().parameters())
                    .containsExactly(
                            entry("input", "thickness"),
                            entry("value_m", 0.2),
                            entry("minimum_m", 0.003),
                            entry("maximum_m", 0.1));
        });
    }

    @Test
    void aRangeMayBeOneValueButNotLess() {
        assertThat(ValidityRange.of("thickness", Kind.LENGTH, millimetres(3), millimetres(3))
                        .contains(0.003))
                .isTrue();
        assertThat(codeOf(() -> ValidityRange.of("thickness", Kind.LENGTH, millimetres(4), millimetres(3))))
                .isEqualTo("must-be-at-least");
    }

    @Test
    void gradesHaveALabelForPeople() {
        assertThat(EvidenceGrade.values())
                .extracting(EvidenceGrade::label)
                .containsExactly(
                        "published", "fitted", "derived", "from memory", "common practice, no source", "assumed");
    }
}
