package dev.waterjet.kerf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.reference.VirtualCutRow;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

@SuppressWarnings("StringSplitter")
class CutFrontReferenceTest {

    static Stream<VirtualCutRow> rows() {
        return VirtualCutRow.matching(
                "H|L_ss|travel time|sigma|lag.*|corner feed for a lag|run-in length|straight half width");
    }

    @ParameterizedTest
    @MethodSource("rows")
    void theFrontAgreesWithTheReference(VirtualCutRow row) {
        assertThat(computed(row)).isCloseTo(row.value(), within(row.relativeTolerance() * row.value()));
    }

    private static double computed(VirtualCutRow row) {
        CutFront front = CutFrontSetting.front(row);
        KerfProfile profile = CutFrontSetting.profile(row);
        String quantity = row.quantity();
        if (quantity.startsWith("lag after")) {
            boolean isStop = quantity.startsWith("lag after stop from ");
            int afterWord = isStop ? quantity.length() - 2 : quantity.indexOf("step ") + 5;
            double before = row.feed(quantity.substring(afterWord));
            double after = isStop ? 0 : row.feed(quantity.substring(quantity.indexOf(" to ")));
            return front.lagAfterStepSi(before, after, row.depth(), row.argument("t"));
        }
        if (quantity.startsWith("lag, feeds by pieces")) {
            return lagAtLastTime(front, row);
        }
        return switch (quantity) {
            case "H" -> front.separationDepthSi(row.feed(row.argument()));
            case "L_ss" -> front.exitLagSi(row.feed(row.argument()));
            case "travel time" -> front.travelTimeSi(row.feed(row.argument()), row.depth());
            case "sigma" -> profile.spreadSi();
            case "corner feed for a lag" -> front.feedForLagSi(row.argument("L_a"), front.thicknessSi());
            case "run-in length" -> front.runInSi(front.feedForLagSi(row.argument("L_a"), front.thicknessSi()));
            case "straight half width" -> profile.halfWidthSi(row.depth(), row.feed(row.argument()));
            default -> throw new IllegalStateException(quantity);
        };
    }

    private static double lagAtLastTime(CutFront front, VirtualCutRow row) {
        String[] lists = row.argument().split("feeds=");
        double[] times = VirtualCutRow.numbers(lists[0]);
        double[] feeds = Arrays.copyOf(VirtualCutRow.numbers(lists[1]), times.length - 1);
        NozzleMotion motion = NozzleMotion.fromRestSi(times, feeds);
        return front.lagAtSi(motion, row.depth(), motion.endSi());
    }
}
