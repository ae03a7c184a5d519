package dev.waterjet.simulate;

import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FeedProfileTest {

    private static final Contour PATH = Contour.from(Point.millimetres(0, 0))
            .lineTo(Point.millimetres(30, 0))
            .lineTo(Point.millimetres(30, 50))
            .open();

    private static FeedProfile table() {
        return FeedProfile.asWritten(
                PATH,
                QuantityArray.ofSi(Kind.LENGTH, 0, 10e-3, 60e-3),
                QuantityArray.ofSi(Kind.SPEED, 1e-3, 4e-3, 2e-3));
    }

    private static HeadTilt tilt(double x, double y) {
        return HeadTilt.ofSi(x, y);
    }

    private static FeedProfile tilted(double secondM, double y) {
        return table().withTilts(
                        QuantityArray.ofSi(Kind.LENGTH, 10e-3, secondM), List.of(tilt(0.02, -0.04), tilt(0.06, y)));
    }

    /** 10 mm at 1 mm/s, 50 mm at 4 mm/s, 20 mm at 2 mm/s. */
    @Test
    void aTableHoldsFromItsDistancesOn() {
        FeedProfile profile = table();

        assertThat(List.of(0.0, 9.99e-3, 10e-3, 30e-3, 59.99e-3, 60e-3, 80e-3))
                .extracting(profile::feedAtSi)
                .containsExactly(1e-3, 1e-3, 4e-3, 4e-3, 4e-3, 2e-3, 2e-3);
        assertThat(profile.feedAtSi(-1e-3)).isEqualTo(1e-3);
        assertThat(profile.feedAtSi(81e-3)).isEqualTo(2e-3);
        assertThat(Kind.TIME.si(profile.time())).isCloseTo(10 + 12.5 + 10, within(1e-12));
        assertThat(profile.pieces()).isEqualTo(3);
        assertThat(profile.end(1)).isCloseTo(60e-3, within(1e-15));
        assertThat(List.of(profile.isStep(0), profile.isStep(1), profile.isStep(2)))
                .containsExactly(true, true, false);
    }

    @Test
    void dwellsAndARunningStartAreAddedOneByOne() {
        FeedProfile profile = table().withStartDwell(seconds(3))
                .withEndDwell(seconds(4))
                .afterSteadyFeed()
                .withTilts(QuantityArray.ofSi(Kind.LENGTH, 0), List.of(tilt(0.1, 0)));

        assertThat(profile.startDwell()).isEqualTo(3);
        assertThat(profile.endDwell()).isEqualTo(4);
        assertThat(Kind.TIME.si(profile.time())).isCloseTo(39.5, within(1e-12));
        assertThat(profile.approach()).isEqualTo(1e-3);
        assertThat(table().approach()).isZero();
        assertThat(profile.withStartDwell(seconds(1)).endDwell()).isEqualTo(4);
        assertThat(profile.withStartDwell(seconds(1)).approach()).isEqualTo(1e-3);
        assertThat(profile.withEndDwell(seconds(1)).startDwell()).isEqualTo(3);
        assertThat(profile.withEndDwell(seconds(1)).tiltAt(millimetres(5))).contains(tilt(0.1, 0));
        assertThat(table().withStartDwell(seconds(0))).isEqualTo(table());
        assertThat(Refusals.of(() -> table().withStartDwell(seconds(-1)))).isEqualTo("must-be-at-least");
        assertThat(Refusals.of(() -> table().withEndDwell(seconds(-1)))).isEqualTo("must-be-at-least");
    }

    /** Linear between 10 mm and 50 mm, constant beyond. */
    @ParameterizedTest
    @CsvSource({
        "0, 0.02, -0.04",
        "10, 0.02, -0.04",
        "20, 0.03, -0.02",
        "45, 0.055, 0.03",
        "50, 0.06, 0.04",
        "80, 0.06, 0.04"
    })
    void tiltsAreLinearBetweenTheirDistances(double mm, double x, double y) {
        HeadTilt tilt = tilted(50e-3, 0.04).tiltAt(millimetres(mm)).orElseThrow();

        assertThat(tilt.displacementX()).isCloseTo(x, within(1e-15));
        assertThat(tilt.displacementY()).isCloseTo(y, within(1e-15));
    }

    /** A head tilts 45 degrees at most along each axis: the displacement over depth is then 1. */
    @Test
    void impossibleTablesAreRefused() {
        QuantityArray<javax.measure.quantity.Length> start = QuantityArray.ofSi(Kind.LENGTH, 0);

        assertThat(table().withTilts(start, List.of(tilt(1, -1))).tiltAt(millimetres(1)))
                .contains(tilt(1, -1));
        for (HeadTilt far : List.of(tilt(1.001, 0), tilt(-1.001, 0), tilt(0, 1.001), tilt(0, -1.001))) {
            assertThat(Refusals.of(() -> table().withTilts(start, List.of(far))))
                    .isIn("must-be-at-most", "must-be-at-least");
        }
        assertThat(refusal(new double[] {0, 10e-3}, 1e-3)).isEqualTo("must-be-at-least");
        assertThat(refusal(new double[] {1e-6}, 1e-3)).isEqualTo("must-be-at-most");
        assertThat(refusal(new double[] {0, 10e-3}, 1e-3, 0)).isEqualTo("must-be-above");
        assertThat(refusal(new double[] {0, 10e-3, 10e-3}, 1e-3, 1e-3, 1e-3)).isEqualTo("must-be-above");
        assertThat(refusal(new double[] {0, 80e-3}, 1e-3, 1e-3)).isEqualTo("must-be-above");
        assertThat(refusal(new double[] {0, 90e-3, 95e-3}, 1e-3, 1e-3, 1e-3)).isEqualTo("must-be-at-most");
        assertThat(refusal(new double[] {0, 79e-3}, 1e-3, 1e-3)).isEqualTo("no refusal");
    }

    private static String refusal(double[] distances, double... feeds) {
        return Refusals.of(() -> FeedProfile.asWritten(
                PATH, QuantityArray.ofSi(Kind.LENGTH, distances), QuantityArray.ofSi(Kind.SPEED, feeds)));
    }

    @Test
    void profilesAreEqualByAllTheyHold() {
        FeedProfile plain = table();
        List<FeedProfile> others = List.of(
                FeedProfile.constant(PATH, Kind.SPEED.of(1e-3)),
                FeedProfile.constant(
                        Contour.from(Point.millimetres(0, 0))
                                .lineTo(Point.millimetres(0, 80))
                                .open(),
                        Kind.SPEED.of(1e-3)),
                FeedProfile.asWritten(
                        PATH,
                        QuantityArray.ofSi(Kind.LENGTH, 0, 11e-3, 60e-3),
                        QuantityArray.ofSi(Kind.SPEED, 1e-3, 4e-3, 2e-3)),
                FeedProfile.asWritten(
                        PATH,
                        QuantityArray.ofSi(Kind.LENGTH, 0, 10e-3, 60e-3),
                        QuantityArray.ofSi(Kind.SPEED, 1e-3, 4e-3, 2.1e-3)),
                plain.withStartDwell(seconds(1)),
                plain.withEndDwell(seconds(1)),
                plain.afterSteadyFeed(),
                tilted(50e-3, 0.04),
                tilted(50e-3, 0.05),
                tilted(51e-3, 0.04));

        assertThat(plain).isEqualTo(table()).hasSameHashCodeAs(table()).isNotEqualTo("a text");
        assertThat(tilted(50e-3, 0.04)).isEqualTo(tilted(50e-3, 0.04)).hasSameHashCodeAs(tilted(50e-3, 0.04));
        assertThat(others).doesNotContain(plain).doesNotHaveDuplicates();
        assertThat(others).anyMatch(other -> other.hashCode() != plain.hashCode());
        assertThat(new TiltTable(new double[] {1}, new double[] {2}, new double[] {3}))
                .hasSameHashCodeAs(new TiltTable(new double[] {1}, new double[] {2}, new double[] {3}));
        assertThat(plain).asString().contains("80 mm", "32.5 s");
    }

    /** From rest at 0.05 m/s2 to the feed rate of the quality and back, over one line: v^2 = 2 a s. */
    @Test
    void aPlannedLineSpeedsUpAndBrakes() {
        Contour line = Contour.fromSi(0, 0).lineToSi(30e-3, 0).open();
        FeedPlan plan = FeedPlanner.of(
                        MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(0.0005)), CornerPredictions.CUT)
                .plan(line, Side.LEFT);
        FeedProfile profile = FeedProfile.of(plan);
        double peak = plan.peakFeedSi(0);
        double ramp = peak * peak / (2 * 0.0005);

        assertThat(ramp).isBetween(1e-3, 14e-3);
        for (double share : new double[] {0.1, 0.5, 0.9}) {
            assertThat(profile.feedAtSi(share * ramp)).isCloseTo(peak * Math.sqrt(share), within(1e-9));
            assertThat(profile.feedAtSi(30e-3 - share * ramp)).isCloseTo(peak * Math.sqrt(share), within(1e-9));
            assertThat(profile.feedAtSi(ramp + share * (30e-3 - 2 * ramp))).isCloseTo(peak, within(1e-9));
        }
        assertThat(Kind.TIME.si(profile.time())).isCloseTo(Kind.TIME.si(plan.time()), within(1e-9));
        for (int i = 0; i < profile.pieces(); i++) {
            assertThat(profile.isStep(i)).isFalse();
        }
        assertThat(profile.approach()).isZero();
    }
}
