package dev.waterjet.measure;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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
    void whatIsAllowedComesBack(String check, double si) {
        assertThat(check(check).applyAsDouble(si)).isEqualTo(si);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "positive | 0 | gap is 0 m; it must be above 0 m",
                "positive | -1 | gap is -1 m; it must be above 0 m",
                "positive | NaN | gap is NaN m; it must be above 0 m",
                "positive | Infinity | it must be a finite number",
                "not negative | -4.9e-324 | it must be at least 0 m",
                "above 2 | 2 | gap is 2 m; it must be above 2 m",
                "above 2 | Infinity | gap is Infinity m; it must be at most 1.79769e+308 m (it must be a finite number)",
                "at least 2 | 1 | gap is 1 m; it must be at least 2 m",
                "at least 2 | NaN | gap is NaN m; it must be at least 2 m",
                "at least 2 | Infinity | it must be a finite number",
                "at most 2 | 3 | gap is 3 m; it must be at most 2 m",
                "at most 2 | NaN | gap is NaN m; it must be at most 2 m",
                "at most 2 | -Infinity | gap is -Infinity m; it must be at most 2 m",
                "2 to 3 | 1.5 | gap is 1.5 m; it must be at least 2 m",
                "2 to 3 | 3.5 | gap is 3.5 m; it must be at most 3 m",
                "2 to 3 | NaN | gap is NaN m; it must be at least 2 m",
                "finite | Infinity | it must be at most 1.79769e+308 m (it must be a finite number)",
                "finite | -Infinity | it must be at least -1.79769e+308 m (it must be a finite number)",
                "finite | NaN | it must be a finite number",
            })
    void whatIsNotIsRefused(String check, double si, String message) {
        assertThatThrownBy(() -> check(check).applyAsDouble(si))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining(message);
    }

    @Test
    void aRelativeUncertaintyOfThreeStillTellsSomething() {
        assertThat(Require.relativeUncertainty("taper", 3, "look again")).isEqualTo(3);
        assertThat(Require.relativeUncertainty("taper", 0, "look again")).isZero();
        assertThatThrownBy(() -> Require.relativeUncertainty("taper", 3.5, "look again"))
                .hasMessage("relative uncertainty of the taper is 3.5; it must be at most 3 (look again)");
        assertThatThrownBy(() -> Require.relativeUncertainty("taper", -0.1, "look again"))
                .isInstanceOf(DomainException.class);
    }

    @Test
    void theExceptionCarriesWhatTheMessageSays() {
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> Require.between("stand-off", 0.02, 0.001, 0.01, Units.MILLIMETRE, "it would splash"))
                .withMessage("stand-off is 20 mm; it must be at most 10 mm (it would splash)")
                .satisfies(e -> {
                    assertThat(e.quantity()).isEqualTo("stand-off");
                    assertThat(e.value()).isEqualTo(20);
                    assertThat(e.limit()).isEqualTo(10);
                    assertThat(e.unit()).isEqualTo("mm");
                });
    }

    /** 1.001 m is 1000.9999999999999 mm in doubles; a reader wants 1001. */
    @Test
    void aValueIsToldInFullOnlyWhereItWouldReadLikeItsLimit() {
        assertThatThrownBy(() -> Require.atMost("thickness", 1.001, 1, Units.MILLIMETRE, ""))
                .hasMessage("thickness is 1001 mm; it must be at most 1000 mm");
        assertThatThrownBy(() -> Require.atMost("thickness", 1.00000001, 1, Units.METRE, ""))
                .hasMessage("thickness is 1.00000001 m; it must be at most 1 m");
        assertThatThrownBy(() -> Require.atMost("count", 100_000_001, 100_000_000, Units.ONE, ""))
                .hasMessage("count is 100000001; it must be at most 100000000");
    }
}
