package dev.waterjet.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.reference.VirtualCutRow;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SimulateReferenceTest {

    static Stream<VirtualCutRow> rows() {
        return VirtualCutRow.matching("dose of.*|half width.*|wall .*|tilt.*|residual lag.*");
    }

    @ParameterizedTest
    @MethodSource("rows")
    void dosesWallsAndTiltsAgreeWithTheReference(VirtualCutRow row) {
        assertThat(SimulateCases.compute(row).orElseThrow())
                .isCloseTo(row.value(), within(row.relativeTolerance() * Math.abs(row.value())));
    }
}
