package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
        assertThat(MotionCases.compute(row).orElseThrow())
                .isCloseTo(row.value(), within(row.relativeTolerance() * row.value()));
    }

    static Stream<VirtualCutRow> corners() {
        return VirtualCutRow.matching("corner feed by.*");
    }

    @ParameterizedTest
    @MethodSource("corners")
    void theReasonAgreesWithTheReference(VirtualCutRow row) {
        SlowdownReason reason = MotionCases.corner(row).reason();

        assertThat(row.argument()).endsWith(": " + WORDS.get(reason));
    }
}
