package dev.waterjet.measure;

import static dev.waterjet.Refusals.codeOf;
import static dev.waterjet.Refusals.refusal;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RequireTest {

    private static DoubleUnaryOperator check(String name) {
        return switch (name) {
            case "positive" -> si -> Require.positive("gap", si, Units.METRE);
            case "not negative" -> si -> Require.notNegative("gap", si, Units.METRE);
            case "above 2" -> si -> Require.above("gap", si, 2, Units.METRE, "");
            case "at least 2" -> si -> Require.atLeast("gap", si, 2, Units.METRE, "");
            case "at most 2" -> si -> Require.atMost("gap", si, 2, Units.METRE, "");
            case "2 to 3" -> si -> Require.between("gap", si, 2, 3, Units.METRE, "");
            case "finite" -> si -> Require.finite("gap", si, Units.METRE);
            default -> throw new IllegalArgumentException(name);
        };
    }

    @ParameterizedTest
    @CsvSource({
        "positive, 4.9e-324",
        "positive, 1.7976931348623157e308",
        "not negative, 0",
        "not negative, 1.7976931348623157e308",
        "above 2, 2.0000000000000004",
        "at least 2, 2",
        "at least 2, 1.7976931348623157e308",
        "at most 2, 2",
        "at most 2, -1.7976931348623157e308",
        "2 to 3, 2",
        "2 to 3, 2.5",
        "2 to 3, 3",
        "finite, -1.7976931348623157e308",
    })
    void anAllowedValueIsReturned(String check, double si) {
        assertThat(check(check).applyAsDouble(si)).isEqualTo(si);
    }

    @ParameterizedTest
    @CsvSource({
        "positive, 0, must-be-above, 0",
        "positive, -1, must-be-above, 0",
        "positive, NaN, must-be-above, 0",
        "positive, Infinity, must-be-at-most, 1.7976931348623157e308",
        "not negative, -4.9e-324, must-be-at-least, 0",
        "above 2, 2, must-be-above, 2",
        "above 2, Infinity, must-be-at-most, 1.7976931348623157e308",
        "at least 2, 1, must-be-at-least, 2",
        "at least 2, NaN, must-be-at-least, 2",
        "at least 2, Infinity, must-be-at-most, 1.7976931348623157e308",
        "at most 2, 3, must-be-at-most, 2",
        "at most 2, NaN, must-be-at-most, 2",
        "at most 2, -Infinity, must-be-at-most, 2",
        "2 to 3, 1.5, must-be-at-least, 2",
        "2 to 3, 3.5, must-be-at-most, 3",
        "2 to 3, NaN, must-be-at-least, 2",
        "finite, Infinity, must-be-at-most, 1.7976931348623157e308",
        "finite, -Infinity, must-be-at-least, -1.7976931348623157e308",
        "finite, NaN, must-be-at-most, 1.7976931348623157e308",
    })
    void allElseIsRefusedWithItsLimit(String check, double si, String code, double limit) {
        DomainException refused =
                refusal(DomainException.class, () -> check(check).applyAsDouble(si));

        assertThat(refused.code()).isEqualTo(code);
        assertThat(refused.limit()).hasValue(limit);
    }

    @ParameterizedTest
    @ValueSource(strings = {"not negative", "finite", "-1 to 1", "at least -1", "at most 1", "above -1"})
    void aZeroHasNoSign(String check) {
        double zero = zeroCheck(check).applyAsDouble(-0.0);

        assertThat(Double.doubleToRawLongBits(zero)).isZero();
    }

    private static DoubleUnaryOperator zeroCheck(String name) {
        return switch (name) {
            case "-1 to 1" -> si -> Require.between("gap", si, -1, 1, Units.METRE, "");
            case "at least -1" -> si -> Require.atLeast("gap", si, -1, Units.METRE, "");
            case "at most 1" -> si -> Require.atMost("gap", si, 1, Units.METRE, "");
            case "above -1" -> si -> Require.above("gap", si, -1, Units.METRE, "");
            default -> check(name);
        };
    }

    @Test
    void aRelativeUncertaintyIsAtMostThree() {
        assertThat(Require.relativeUncertainty("taper", 3, "look again")).isEqualTo(3);
        assertThat(Require.relativeUncertainty("taper", 0, "look again")).isZero();
        assertThat(codeOf(() -> Require.relativeUncertainty("taper", 3.5, "look again")))
                .isEqualTo("must-be-at-most");
        assertThat(codeOf(() -> Require.relativeUncertainty("taper", -0.1, "look again")))
                .isEqualTo("must-be-at-least");
    }

    @Test
    void anIndexIsFromZeroToOneBelowTheSize() {
        assertThat(Require.index("edge", 0, 4)).isZero();
        assertThat(Require.index("edge", 3, 4)).isEqualTo(3);
        assertThat(codeOf(() -> Require.index("edge", 4, 4))).isEqualTo("no-such-index");
        assertThat(codeOf(() -> Require.index("edge", -1, 4))).isEqualTo("no-such-index");
        assertThat(refusal(DomainException.class, () -> Require.index("edge", 4, 4))
                        .parameters())
                .containsEntry("index", 4L)
                .containsEntry("last", 3L);
        assertThat(refusal(DomainException.class, () -> Require.index("edge", 0, 0))
                        .parameters())
                .containsEntry("what", "edge")
                .containsEntry("index", 0L);
    }

    @Test
    void theExceptionCarriesQuantityValueLimitAndUnit() {
        DomainException refused = refusal(
                DomainException.class,
                () -> Require.between("stand-off", 0.02, 0.001, 0.01, Units.MILLIMETRE, "it would splash"));

        assertThat(refused.quantity()).isEqualTo("stand-off");
        assertThat(refused.value()).hasValue(20);
        assertThat(refused.limit()).hasValue(10);
        assertThat(refused.unit()).isEqualTo("mm");
        assertThat(refused.parameters())
                .containsEntry("value_m", 0.02)
                .containsEntry("limit_m", 0.01)
                .containsEntry("reason", "it would splash");
    }
}
