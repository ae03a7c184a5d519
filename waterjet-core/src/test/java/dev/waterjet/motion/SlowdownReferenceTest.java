package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.kerf.CutFrontSetting;
import dev.waterjet.reference.VirtualCutRow;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SlowdownReferenceTest {

    private static final Map<SlowdownReason, String> WORDS = Map.of(
            SlowdownReason.STRAIGHT_FEED, "none",
            SlowdownReason.TOLERANCE, "tol",
            SlowdownReason.LEAST_ERROR, "least",
            SlowdownReason.SEPARATION, "part");

    static Stream<VirtualCutRow> rows() {
        return VirtualCutRow.matching("effective feed.*|reach ahead.*|predicted notch|trailer factor|corner feed by.*");
    }

    @ParameterizedTest
    @MethodSource("rows")
    void errorsAndFeedsAgreeWithTheReference(VirtualCutRow row) {
        assertThat(computed(row)).isCloseTo(row.value(), within(row.relativeTolerance() * row.value()));
    }

    private static double computed(VirtualCutRow row) {
        SlowdownErrors errors = new SlowdownErrors(CutFrontSetting.profile(row), row.parameter("u1"));
        double[] numbers = VirtualCutRow.numbers(row.argument().replaceAll("u[12]", ""));
        double slow = row.parameter("u2");
        return switch (row.quantity()) {
            case "effective feed of a slow zone" -> errors.effectiveFeed(slow, Math.abs(numbers[0]) * 1e-3);
            case "reach ahead of the end" ->
                errors.reach(slow, numbers[0] * errors.front().exitLagSi(slow));
            case "predicted notch" -> errors.notch(slow, Math.toRadians(numbers[0]));
            case "trailer factor" -> TractrixCorner.factor(Math.toRadians(numbers[0]));
            case "corner feed by the rule" -> corner(row, numbers).feedMPerS();
            default -> throw new IllegalStateException(row.quantity());
        };
    }

    private static Slowdown corner(VirtualCutRow row, double[] numbers) {
        SlowdownPolicy policy = new SlowdownPolicy(
                CutFrontSetting.profile(row), row.parameter("u1"), numbers[1], SlowdownRules.cautious());
        return policy.corner(Math.toRadians(numbers[0]), row.argument().contains("inside"));
    }

    static Stream<VirtualCutRow> corners() {
        return VirtualCutRow.matching("corner feed by.*");
    }

    @ParameterizedTest
    @MethodSource("corners")
    void theReasonAgreesWithTheReference(VirtualCutRow row) {
        SlowdownReason reason =
                corner(row, VirtualCutRow.numbers(row.argument())).reason();

        assertThat(row.argument()).endsWith(": " + WORDS.get(reason));
    }
}
