package dev.waterjet.quality;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class EdgeRequirementTest {

    private static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);

    @Test
    void isItsQualityAndItsLimits() {
        ValueContract.of(() -> MEDIUM)
                .change("quality", it -> it.withQuality(CutQuality.FINE), EdgeRequirement::quality, CutQuality.FINE)
                .change(
                        "lag tolerance",
                        it -> it.withLagTolerance(millimetres(0.05)),
                        EdgeRequirement::lagTolerance,
                        Optional.of(millimetres(0.05)))
                .change(
                        "outside corners",
                        it -> it.withOutsideCornerTolerance(millimetres(0.3)),
                        EdgeRequirement::outsideCornerTolerance,
                        Optional.of(millimetres(0.3)))
                .change(
                        "arc radius",
                        it -> it.withArcRadius(millimetres(5)),
                        EdgeRequirement::arcRadius,
                        Optional.of(millimetres(5)))
                .change("taper", it -> it.withTaper(degrees(0.5)), EdgeRequirement::taper, Optional.of(degrees(0.5)))
                .change(
                        "roughness",
                        it -> it.withRoughness(micrometres(6)),
                        EdgeRequirement::roughness,
                        Optional.of(micrometres(6)))
                .change(
                        "perpendicularity",
                        it -> it.withPerpendicularityRange(2),
                        EdgeRequirement::perpendicularityRange,
                        OptionalInt.of(2))
                .change(
                        "profile height",
                        it -> it.withProfileHeightRange(3),
                        EdgeRequirement::profileHeightRange,
                        OptionalInt.of(3))
                .change(
                        "feed",
                        it -> it.withMaximumFeed(millimetresPerMinute(400)),
                        EdgeRequirement::maximumFeed,
                        Optional.of(millimetresPerMinute(400)))
                .change("lead", EdgeRequirement::asLead, EdgeRequirement::isLead, true)
                .check();
    }

    @Test
    void isMediumWhereNothingIsSpecified() {
        assertThat(EdgeRequirement.defaults()).isEqualTo(MEDIUM);
        assertThat(MEDIUM.lagTolerance()).isEmpty();
        assertThat(MEDIUM.lagToleranceSi(0.02)).isCloseTo(0.6e-3, within(1e-15));
        assertThat(MEDIUM.outsideCornerToleranceSi(0.02)).isCloseTo(0.6e-3, within(1e-15));
        assertThat(MEDIUM.maximumFeedSi()).isInfinite();
    }

    @Test
    void lagToleranceHoldsAtOutsideCornersToo() {
        EdgeRequirement close =
                MEDIUM.withOutsideCornerTolerance(millimetres(0.3)).withLagTolerance(millimetres(0.05));

        assertThat(close.outsideCornerTolerance()).isEmpty();
        assertThat(close.outsideCornerToleranceSi(0.02)).isEqualTo(5e-5);
    }

    @Test
    void limitsOutsideTheirRangeAreRefused() {
        refuses(() -> MEDIUM.withLagTolerance(millimetres(0)), "must-be-above");
        refuses(() -> MEDIUM.withOutsideCornerTolerance(millimetres(-1)), "must-be-above");
        refuses(() -> MEDIUM.withArcRadius(millimetres(0)), "must-be-above");
        refuses(() -> MEDIUM.withTaper(degrees(-0.1)), "must-be-at-least");
        refuses(() -> MEDIUM.withRoughness(micrometres(0)), "must-be-above");
        refuses(() -> MEDIUM.withMaximumFeed(millimetresPerMinute(0)), "must-be-above");
        refuses(() -> MEDIUM.withPerpendicularityRange(6), "unknown-range");
        refuses(() -> MEDIUM.withPerpendicularityRange(0), "unknown-range");
        refuses(() -> MEDIUM.withProfileHeightRange(5), "unknown-range");
    }

    private static void refuses(org.assertj.core.api.ThrowableAssert.ThrowingCallable call, String code) {
        assertThatThrownBy(call)
                .isInstanceOfSatisfying(
                        DomainException.class, e -> assertThat(e.code()).isEqualTo(code));
    }

    @Test
    void taperOfZeroIsALimit() {
        assertThat(MEDIUM.withTaper(degrees(0)).taper().map(Kind.ANGLE::si)).contains(0.0);
    }

    @ParameterizedTest
    @EnumSource
    void qualityIsReadFromItsLabel(CutQuality quality) {
        assertThat(CutQuality.parse(quality.label())).isEqualTo(quality);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Very Fine", " very-fine ", "very_fine", "VERY  FINE"})
    void qualityIsReadWhateverSeparatesItsWords(String text) {
        assertThat(CutQuality.parse(text)).isEqualTo(CutQuality.VERY_FINE);
    }

    @Test
    void anotherQualityIsRefused() {
        assertThatThrownBy(() -> CutQuality.parse("finest"))
                .isInstanceOfSatisfying(
                        TextException.class, e -> assertThat(e.code()).isEqualTo("unknown-cut-quality"));
    }
}
