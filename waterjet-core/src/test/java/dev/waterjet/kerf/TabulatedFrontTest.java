package dev.waterjet.kerf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.waterjet.evidence.Caution;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Kind;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Fronts from a table against concave hulls in closed form. */
class TabulatedFrontTest {

    private static final double C = 0.17;
    private static final double H = 0.025;
    /** Feed that separates the plate. */
    private static final double FASTEST = 4e-3;

    /** The law whose lag at the depth of 1 m is c/H times a rising function of the feed over the fastest, 1 there. */
    private static FrontLaw law(DoubleUnaryOperator shape) {
        return new FrontLaw(feed -> H / shape.applyAsDouble(feed / FASTEST), depth -> {
            double low = 1e-12;
            double high = 1e6;
            for (int i = 0; i < 200; i++) {
                double middle = Math.sqrt(low * high);
                boolean isBelow = shape.applyAsDouble(middle) < H / depth;
                low = isBelow ? middle : low;
                high = isBelow ? high : middle;
            }
            return low * FASTEST;
        });
    }

    private static CutFront front(DoubleUnaryOperator shape) {
        CutFront front = law(shape).front(C, H);
        assertThat(front).isInstanceOf(TabulatedFront.class);
        return front;
    }

    /** Rises as a root, then as a cube: the hull is the root up to a tangent, and from there a straight line. */
    private static double rootAndCube(double x) {
        return (Math.sqrt(x) + 2 * x * x * x) / 3;
    }

    private static double slope(double x) {
        return (0.5 / Math.sqrt(x) + 6 * x * x) / 3;
    }

    /** Where the tangent of the curve meets its end at (1, 1). */
    private static double tangentPoint() {
        double low = 1e-3;
        double high = 0.4;
        for (int i = 0; i < 100; i++) {
            double x = (low + high) / 2;
            boolean isBefore = slope(x) * (1 - x) + rootAndCube(x) > 1;
            low = isBefore ? x : low;
            high = isBefore ? high : x;
        }
        return low;
    }

    private static double hull(double x) {
        double at = tangentPoint();
        return x <= at ? rootAndCube(x) : rootAndCube(at) + slope(at) * (x - at);
    }

    private static double hullSlope(double x) {
        return slope(Math.min(x, tangentPoint()));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-5, 0.001, 0.02, 0.1, 0.15, 0.3, 0.6, 0.9, 0.999})
    void theLagIsThatOfTheConcaveHull(double x) {
        CutFront front = front(TabulatedFrontTest::rootAndCube);
        double feed = x * FASTEST;

        assertThat(front.exitLagSi(feed)).isCloseTo(C * H * hull(x), withinPercentage(1e-3));
        assertThat(front.travelTimeSi(feed, H)).isCloseTo(C * H * hullSlope(x) / FASTEST, withinPercentage(0.1));
        assertThat(front.feedForLagSi(C * H * hull(x), H)).isCloseTo(feed, withinPercentage(5e-3));
        assertThat(front.feedForLagSi(front.exitLagSi(feed), H)).isCloseTo(feed, withinPercentage(1e-7));
        boolean isOnTheCurve = x < tangentPoint();
        assertThat(front.cautions(feed).stream().map(Caution::code).toList().contains("front-law-not-concave"))
                .isEqualTo(!isOnTheCurve);
        assertThat(front.separationDepthSi(feed)).isCloseTo(H / rootAndCube(x), withinPercentage(1e-9));
        assertThat(front.separationFeedSi(H / rootAndCube(x))).isCloseTo(feed, withinPercentage(1e-9));
    }

    /** sup (L(u) - theta u) over all feeds, in fine steps. */
    @ParameterizedTest
    @ValueSource(doubles = {0.8, 1, 1.3, 1.6, 2, 3, 5, 20, 100})
    void theShortfallIsTheGreatestLagAboveALine(double times) {
        CutFront front = front(TabulatedFrontTest::rootAndCube);
        double unit = slope(tangentPoint());
        double theta = times * unit;
        double most = 0;
        for (int i = 0; i <= 40_000; i++) {
            double x = Math.exp(-15 * i / 40_000.0);
            most = Math.max(most, hull(x) - theta * x);
        }
        double found = front.shortfallSi(H, theta * C * H / FASTEST);
        if (times > 1) {
            assertThat(found).isCloseTo(C * H * most, withinPercentage(1e-3));
        } else if (times == 1) {
            assertThat(found).isCloseTo(C * H * most, withinPercentage(0.2));
        } else {
            assertThat(found).isGreaterThan(C * H * most);
        }
    }

    /** A lag that rises ever faster from 0.2 at rest: the hull is the line from there to the fastest feed. */
    @Test
    void aConvexLagIsTheLineFromRest() {
        CutFront front = front(x -> 0.2 + 0.8 * Math.pow(x, 1.3));
        for (double x : new double[] {1e-7, 1e-3, 0.1, 0.5, 0.99}) {
            double feed = x * FASTEST;
            assertThat(front.exitLagSi(feed)).isCloseTo(C * H * (0.2 + 0.8 * x), withinPercentage(1e-4));
            assertThat(front.travelTimeSi(feed, H)).isCloseTo(C * H * 0.8 / FASTEST, withinPercentage(1e-4));
            assertThat(front.feedForLagSi(C * H * (0.2 + 0.8 * x), H)).isCloseTo(feed, within(1e-6 * FASTEST));
        }
        assertThat(front.feedForLagSi(C * H * 0.19, H)).isZero();
        assertThat(front.shortfallSi(H, 1.01 * C * H * 0.8 / FASTEST)).isCloseTo(C * H * 0.2, withinPercentage(1e-4));
        assertThat(front.shortfallSi(H, 50 * C * H / FASTEST)).isCloseTo(C * H * 0.2, withinPercentage(1e-4));
        assertThat(front.cautions(FASTEST)).isEmpty();
        assertThat(front.cautions(0.5 * FASTEST)).extracting(Caution::code).contains("front-law-not-concave");
    }

    /** Above the feed that separates the plate the lag goes on as a power of the feed, with its value and slope there. */
    @Test
    void beyondTheFastestFeedTheLagGoesOnAsAPower() {
        CutFront front = front(x -> 0.6 * Math.sqrt(x) + 0.2 * Math.pow(x, 0.75) + 0.2 * Math.pow(x, 0.4));
        double n = 0.6 * 0.5 + 0.2 * 0.75 + 0.2 * 0.4;
        for (double x : new double[] {1, 1.5, 8}) {
            double feed = x * FASTEST;
            assertThat(front.exitLagSi(feed)).isCloseTo(C * H * Math.pow(x, n), withinPercentage(0.1));
            assertThat(front.travelTimeSi(feed, H))
                    .isCloseTo(C * H * n * Math.pow(x, n - 1) / FASTEST, withinPercentage(0.1));
            assertThat(front.feedForLagSi(C * H * Math.pow(x, n), H)).isCloseTo(feed, withinPercentage(0.3));
            assertThat(front.cautions(feed)).isEmpty();
        }
        double theta = 0.5 * C * H * n / FASTEST;
        double x = Math.pow(0.5, 1 / (n - 1));
        assertThat(front.shortfallSi(H, theta))
                .isCloseTo(C * H * (Math.pow(x, n) - 0.5 * n * x), withinPercentage(0.5));
    }

    /** Below a millionth of the fastest feed the lag is the tangent there: of a root half as large at rest. */
    @Test
    void nearRestTheLagIsTheTangentOfTheSlowestFeed() {
        CutFront front = front(x -> (Math.sqrt(x) + x) / 2);
        double slowest = C * H * Math.sqrt(1e-6) / 2;

        for (double x : new double[] {0, 1e-8, 5e-7, 9e-7}) {
            assertThat(front.exitLagSi(x * FASTEST + 1e-30))
                    .isCloseTo(slowest * (0.5 + 0.5 * x / 1e-6), withinPercentage(0.5));
            assertThat(front.travelTimeSi(x * FASTEST + 1e-30, H))
                    .isCloseTo(slowest * 0.5e6 / FASTEST, withinPercentage(1));
        }
        assertThat(front.exitLagSi(0)).isZero();
        assertThat(front.feedForLagSi(0.75 * slowest, H)).isCloseTo(0.5e-6 * FASTEST, withinPercentage(1));
        assertThat(front.feedForLagSi(0.4 * slowest, H)).isZero();
    }

    /** A law that is a power is recognized, with its own depths and lags. */
    @ParameterizedTest
    @ValueSource(doubles = {0.8, 1, 1.15, 2})
    void aPowerLawIsRecognized(double exponent) {
        CutFront front = law(x -> Math.pow(x, 1 / exponent)).front(C, H);

        assertThat(front).isInstanceOf(PowerLawFront.class);
        for (double x : new double[] {0.01, 0.4, 1, 3}) {
            double feed = x * FASTEST;
            double lag = C * H * Math.pow(x, exponent < 1 ? 1 : 1 / exponent);
            assertThat(front.separationDepthSi(feed)).isCloseTo(H * Math.pow(x, -1 / exponent), withinPercentage(1e-7));
            assertThat(front.exitLagSi(feed)).isCloseTo(lag, withinPercentage(1e-7));
        }
        assertThat(front).isEqualTo(law(x -> Math.pow(x, 1 / exponent)).front(C, H));
    }

    /** Of exponent 1 or less the signal is a delay: nothing is missing once its time is over, and all before. */
    @ParameterizedTest
    @ValueSource(doubles = {0.8, 1})
    void aDelayIsOverAfterItsTime(double exponent) {
        CutFront front = CutFrontTest.powerLaw(exponent);
        double delay = front.travelTimeSi(1e-3, H);

        assertThat(front.travelTimeSi(5e-3, H)).isEqualTo(delay);
        assertThat(front.shortfallSi(H, delay * (1 + 1e-9))).isZero();
        assertThat(front.shortfallSi(H, delay)).isZero();
        assertThat(front.shortfallSi(H, delay * (1 - 1e-9))).isInfinite();
        assertThat(CutFrontTest.powerLaw(1.3).shortfallSi(H, 0)).isInfinite();
        assertThat(front.cautions(1e-3).isEmpty()).isEqualTo(exponent == 1);
    }

    /** Between the feeds of the table its numbers are those of the law itself, and not of chords. */
    @ParameterizedTest
    @ValueSource(doubles = {1.05, 1.4, 2.2})
    void aPowerLawInATableKeepsItsDigits(double exponent) {
        CutFront closed = CutFrontTest.powerLaw(exponent);
        CutFront table = new TabulatedFront(
                closed.lagCoefficient(),
                closed.thicknessSi(),
                new FrontLaw(closed::separationDepthSi, closed::separationFeedSi));
        double fastest = closed.separationFeedSi(closed.thicknessSi());
        for (double x = 2e-5; x < 1; x *= 1.37) {
            double feed = x * fastest;
            double time = closed.travelTimeSi(feed, H);
            assertThat(table.exitLagSi(feed)).isCloseTo(closed.exitLagSi(feed), withinPercentage(1e-10));
            assertThat(table.travelTimeSi(feed, H)).isCloseTo(time, withinPercentage(1e-4));
            assertThat(table.shortfallSi(H, time)).isCloseTo(closed.shortfallSi(H, time), withinPercentage(1e-8));
            assertThat(table.feedForLagSi(closed.exitLagSi(feed), H)).isCloseTo(feed, withinPercentage(1e-9));
        }
    }

    /** One standard uncertainty up and down multiplies the number by exp of it. */
    @ParameterizedTest
    @ValueSource(doubles = {-1, 0, 0.5, 2})
    void profilesAreMovedByTheirUncertainties(double deviations) {
        CutFront front = CutFrontTest.powerLaw(1.15);
        KerfModel model = Kerfs.MODEL;
        double spread = model.doseRatio() * Math.exp(deviations * model.spread().doseRelative());
        double slope =
                model.spreadSlope() * Math.exp(deviations * model.spread().slopeRelative());
        double bore = Kerfs.JET.tubeExitBoreSi();
        KerfProfile wider = KerfProfile.ofDoseSpread(model, front, Kerfs.JET, deviations);
        KerfProfile steeper = KerfProfile.ofHalfAngle(model, front, Kerfs.JET, deviations);

        assertThat(wider.spreadSi()).isCloseTo(spread * bore, withinPercentage(1e-10));
        assertThat(wider.jetRadiusSi(0.01)).isCloseTo(bore / 2 + 0.012 * model.spreadSlope(), withinPercentage(1e-10));
        assertThat(steeper.spreadSi()).isCloseTo(model.doseRatio() * bore, withinPercentage(1e-10));
        assertThat(steeper.jetRadiusSi(0.01)).isCloseTo(bore / 2 + 0.012 * slope, withinPercentage(1e-10));
        assertThat(wider).asString().contains("mm at the top");
    }

    @Test
    void minimumFeaturesAndTiltsAreDescribed() {
        Kerf kerf = Kerfs.kerf(10, 2);
        double width = kerf.maximumWidth().si();

        assertThat(MinimumFeatures.of(kerf).describe())
                .containsKeys("kerf", "inner_radius", "slot", "web", "pierced_hole", "trepanned_hole");
        assertThat(MinimumFeatures.of(kerf).kerfsOverlapAt(Kind.LENGTH.of(width)))
                .isTrue();
        assertThat(MinimumFeatures.of(kerf).kerfsOverlapAt(Kind.LENGTH.of(1.001 * width)))
                .isFalse();
        assertThat(HeadTilt.upright().cautions()).isEmpty();
        assertThat(HeadTilt.ofSi(0.01, 0).cautions())
                .extracting(Caution::code)
                .containsExactly("leaning-front-unknown");
        assertThat(HeadTilt.ofSi(0.01, 0).describe()).containsKeys("displacement_x", "axis_z", "azimuth_rad");
        assertThat(HeadTilt.upright().describe()).doesNotContainKey("azimuth_rad");
        assertThat(HeadTilt.ofSi(0.01, 0.02).hashCode())
                .isNotEqualTo(HeadTilt.ofSi(0.02, 0.01).hashCode());
    }

    /** Within one, two and three spreads of the path lie 0.6827, 0.9545 and 0.9973 of the dose: the normal distribution. */
    @Test
    void theShareOfTheDoseIsThatOfTheNormalDistribution() {
        KerfProfile profile = KerfProfile.ofSi(CutFrontTest.powerLaw(1.15), 0.25e-3, 0.5e-3, 0.02);

        assertThat(profile.doseShareSi(0.25e-3)).isCloseTo(0.6827, within(5e-5));
        assertThat(profile.doseShareSi(0.5e-3)).isCloseTo(0.9545, within(5e-5));
        assertThat(profile.doseShareSi(-0.75e-3)).isCloseTo(-0.9973, within(5e-5));
    }

    /** A stand-off distance of 1.5 mm is 3.75 bores of 0.4 mm. */
    @Test
    void theCautionOfASmallBoreNamesItsStandOff() {
        CutConditions cut = Kerfs.cut(Kerfs.jet(0.15, 0.4, 1.5, 100, 380), "mild-steel", 3);
        Caution caution = Kerfs.MODEL.kerf(cut, Kind.SPEED.of(cut.feedSi(2))).cautions().stream()
                .filter(one -> one.code().equals("kerf-small-bore"))
                .findFirst()
                .orElseThrow();

        assertThat((double)
                        Objects.requireNonNull(caution.message().parameters().get("bores")))
                .isCloseTo(3.75, within(1e-9));
    }

    @Test
    void tiltsAndFrontsHaveTexts() {
        assertThat(Kerfs.MODEL.doseRelativeUncertainty())
                .isEqualTo(Kerfs.MODEL.spread().doseRelative());
        assertThat(MinimumFeatures.of(Kerfs.kerf(10, 2))).asString().contains("mm");
        assertThat(HeadTilt.ofSi(0.01, 0.02))
                .isEqualTo(HeadTilt.ofSi(0.01, 0.02))
                .isNotEqualTo(HeadTilt.ofSi(0.01, 0.03))
                .isNotEqualTo("a tilt");
        assertThat(HeadTilt.ofSi(0, Math.tan(Math.toRadians(3)))).asString().contains("3°");
        assertThat(CutFrontTest.powerLaw(1.25)).asString().contains("1.25");
        assertThat(front(TabulatedFrontTest::rootAndCube)).asString().contains("table");
        assertThat(Kerfs.MODEL.angleRelativeUncertainty())
                .isEqualTo(Kerfs.MODEL.spread().slopeRelative());
        assertThat(Kerfs.MODEL
                        .withHalfAngle(Kerfs.MODEL.halfAngle(), 0.123, Kerfs.OWN)
                        .angleRelativeUncertainty())
                .isEqualTo(0.123);
    }

    @Test
    void frontsAreEqualByTheirNumbers() {
        CutFront table = front(TabulatedFrontTest::rootAndCube);

        assertThat(table)
                .isEqualTo(front(TabulatedFrontTest::rootAndCube))
                .hasSameHashCodeAs(front(TabulatedFrontTest::rootAndCube))
                .isNotEqualTo(front(x -> (Math.sqrt(x) + x) / 2))
                .isNotEqualTo(law(TabulatedFrontTest::rootAndCube).front(2 * C, H))
                .isNotEqualTo(law(TabulatedFrontTest::rootAndCube).front(C, 0.9 * H))
                .isNotEqualTo(CutFrontTest.powerLaw(1.2));
        CutFront power = CutFront.powerLaw(LagModel.standard(), H, 1.2, 0.03);
        assertThat(power)
                .isEqualTo(CutFront.powerLaw(LagModel.standard(), H, 1.2, 0.03))
                .hasSameHashCodeAs(CutFront.powerLaw(LagModel.standard(), H, 1.2, 0.03))
                .isNotEqualTo(CutFront.powerLaw(LagModel.standard(), 2 * H, 1.2, 0.03))
                .isNotEqualTo(CutFront.powerLaw(LagModel.standard(), H, 1.3, 0.03))
                .isNotEqualTo(CutFront.powerLaw(LagModel.standard(), H, 1.2, 0.04))
                .isNotEqualTo(table);
        KerfProfile profile = KerfProfile.ofSi(power, 2e-4, 5e-4, 0.02);
        assertThat(profile)
                .isEqualTo(KerfProfile.ofSi(power, 2e-4, 5e-4, 0.02))
                .hasSameHashCodeAs(KerfProfile.ofSi(power, 2e-4, 5e-4, 0.02))
                .isNotEqualTo(KerfProfile.ofSi(table, 2e-4, 5e-4, 0.02))
                .isNotEqualTo(KerfProfile.ofSi(power, 3e-4, 5e-4, 0.02))
                .isNotEqualTo(KerfProfile.ofSi(power, 2e-4, 6e-4, 0.02))
                .isNotEqualTo(KerfProfile.ofSi(power, 2e-4, 5e-4, 0.03))
                .isNotEqualTo(power);
    }
}
