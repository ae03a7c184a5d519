package dev.waterjet.kerf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.reference.VirtualCutRow;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CutFrontReferenceTest {

    static Stream<VirtualCutRow> rows() {
        return VirtualCutRow.matching(
                "H|L_ss|travel time|sigma|lag.*|corner feed for a lag|run-in length|straight half width");
    }

    @ParameterizedTest
    @MethodSource("rows")
    void theFrontAgreesWithTheReference(VirtualCutRow row) {
        assertThat(KerfCases.compute(row).orElseThrow())
                .isCloseTo(row.value(), within(row.relativeTolerance() * row.value()));
    }
}
