package dev.waterjet.kerf;

import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.ThresholdFeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** ln(u_sep(z)/u) by the feed model of the cut, and by the power law where it has no feed. */
class DoseExcessTest {

    private static CutConditions threshold() {
        CutConditions cut = Kerfs.steel(10);
        return cut.withFeedModel(
                ThresholdFeed.of(cut.material(), cut.jet(), 2e-9, megapascals(60), millimetresPerMinute(60)));
    }

    @ParameterizedTest
    @CsvSource({"2, 10", "10, 30", "10, 5", "25, 100"})
    void theExcessIsThatOfTheFeedsAndItsInverse(double depthMm, double separatedMm) {
        CutConditions cut = threshold();
        DoseExcess excess = DoseExcess.of(cut);
        double z = depthMm * 1e-3;
        double h = separatedMm * 1e-3;
        double expected = Math.log(cut.separationFeedSi(z) / cut.separationFeedSi(h));

        assertThat(excess.at(z, h)).isCloseTo(expected, within(1e-9));
        assertThat(excess.separationDepth(z, expected)).isCloseTo(h, withinPercentage(1e-6));
        // this law is no power of exponent 1.15
        assertThat(Math.abs(expected - 1.15 * Math.log(h / z))).isGreaterThan(0.02);
        double step = 1e-3 * z;
        double slope =
                (Math.log(cut.separationFeedSi(z + step)) - Math.log(cut.separationFeedSi(z - step))) / (2 * step);
        assertThat(excess.slope(z, h)).isCloseTo(slope, withinPercentage(0.01));
        assertThat(excess.slope(z, h)).isNegative();
    }

    @Test
    void atTheTopSideTheExcessHasNoLimit() {
        assertThat(DoseExcess.of(threshold()).at(0, 0.01)).isInfinite().isPositive();
    }

    /** (A/z)^k. */
    @Test
    void aPowerLawIsItsFormula() {
        DoseExcess power = new DoseExcess.OfPower(1.4);

        assertThat(power.at(0.01, 0.03)).isCloseTo(1.4 * Math.log(3), within(1e-12));
        assertThat(power.separationDepth(0.01, 1.4 * Math.log(3))).isCloseTo(0.03, within(1e-12));
        double step = 1e-6;
        assertThat(power.slope(0.01, 0.03))
                .isCloseTo((power.at(0.01 + step, 0.03) - power.at(0.01 - step, 0.03)) / (2 * step), within(1e-4));
    }

    /** A jet below its threshold has no feed: machinability's exponent takes its place. */
    @Test
    void withoutAFeedTheReferenceTakesItsPlace() {
        CutConditions cut = Kerfs.steel(10);
        DoseExcess none = DoseExcess.of(cut.withFeedModel(
                ThresholdFeed.of(cut.material(), cut.jet(), 2e-9, megapascals(600), millimetresPerMinute(60))));

        assertThat(none.at(0.01, 0.03)).isCloseTo(1.15 * Math.log(3), within(1e-12));
        assertThat(none.separationDepth(0.01, 1.15 * Math.log(3))).isCloseTo(0.03, within(1e-12));
    }
}
