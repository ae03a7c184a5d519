package dev.waterjet.motion;

import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.kerf.LagFunction;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FeedPlanTest {

    private static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);

    /** A lag of 30 ms of travel: 1 mm at 2000 mm/min. */
    private static final LagFunction LAW = feed -> 0.03 * feed;

    private static final MachineLimits MACHINE = MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(1));
    private static final MachineLimits SMOOTH = MACHINE.withJerk(Kind.JERK.of(20));
    private static final QualityFeeds FEEDS =
            QualityFeeds.same(millimetresPerMinute(2000)).with(CutQuality.FINE, millimetresPerMinute(900));

    private static FeedPlanner planner(MachineLimits machine) {
        return FeedPlanner.of(machine, FEEDS, LAW);
    }

    private static Contour lShape() {
        return Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(60, 0))
                .lineTo(Point.millimetres(60, 20))
                .requirement(EdgeRequirement.of(CutQuality.FINE))
                .lineTo(Point.millimetres(25, 20))
                .arcTo(Point.millimetres(20, 25), Point.millimetres(25, 25), Side.RIGHT)
                .requirement(MEDIUM.withLagTolerance(millimetres(0.05)))
                .lineTo(Point.millimetres(20, 60))
                .lineTo(Point.millimetres(0, 60))
                .close();
    }

    private static Contour random(long seed) {
        Random random = new Random(seed);
        ContourBuilder builder = Contour.from(Point.millimetres(0, 0));
        double x = 0;
        double y = 0;
        double heading = 0;
        for (int i = 0; i < 60; i++) {
            builder.requirement(random.nextBoolean() ? MEDIUM : EdgeRequirement.of(CutQuality.FINE));
            double length = Math.exp(random.nextDouble() * 7 - 3);
            heading += random.nextGaussian() * (random.nextInt(4) == 0 ? 1.2 : 0.03);
            double toX = x + length * Math.cos(heading);
            double toY = y + length * Math.sin(heading);
            if (random.nextInt(4) == 0) {
                double bulge = length * (random.nextDouble() - 0.5);
                Point middle = Point.millimetres(
                        (x + toX) / 2 - bulge * Math.sin(heading), (y + toY) / 2 + bulge * Math.cos(heading));
                builder.arcThrough(middle, Point.millimetres(toX, toY));
            } else {
                builder.lineTo(Point.millimetres(toX, toY));
            }
            x = toX;
            y = toY;
        }
        return builder.open();
    }

    @Test
    void oneLineIsATrapezoid() {
        Contour line = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(100, 0))
                .open();
        FeedPlan plan = planner(MACHINE).plan(line, Side.LEFT);
        double v = 2.0 / 60;

        assertThat(Kind.TIME.si(plan.time())).isCloseTo(0.1 / v + v, within(1e-13));
        assertThat(plan.limit(0)).isEqualTo(FeedLimit.QUALITY);
        assertThat(Kind.TIME.si(plan.timeLimitedBy(FeedLimit.ACCELERATION))).isCloseTo(2 * v, within(1e-13));
        assertThat(Kind.SPEED.si(plan.feedAt(millimetres(0.125)))).isCloseTo(Math.sqrt(2 * 0.000125), within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void noLimitIsBrokenAnywhere(long seed) {
        for (MachineLimits machine : List.of(MACHINE, SMOOTH)) {
            Contour contour = random(seed);
            FeedPlan plan = planner(machine).plan(contour, Side.LEFT);
            EdgeCursor shape = new EdgeCursor();
            double weaker = machine.accelerationXSi();
            for (int i = 0; i < plan.size(); i++) {
                contour.load(plan.edge(i), shape);
                double entry = plan.entrySi(i);
                double exit = plan.exitSi(i);
                double most = plan.peakFeedSi(i);
                assertThat(most).isLessThanOrEqualTo(plan.allowedSi(i) * (1 + 1e-12));
                assertThat(Math.max(entry, exit)).isLessThanOrEqualTo(most * (1 + 1e-12));
                double change = Math.abs(exit * exit - entry * entry) / (2 * plan.lengthSi(i));
                double across = shape.isArc() ? most * most / shape.radius : 0;
                double along = shape.isArc()
                        ? weaker
                        : weaker / Math.max(Math.abs(shape.startDirectionX()), Math.abs(shape.startDirectionY()));
                // both together stay within what the axes have
                assertThat(Math.hypot(change, across)).isLessThanOrEqualTo(along * (1 + 1e-9));
                double grade = Kind.SPEED.si(
                        FEEDS.feed(contour.requirement(plan.edge(i)).quality()));
                assertThat(most).isLessThanOrEqualTo(grade * (1 + 1e-12));
            }
            assertThat(plan.entrySi(0)).isZero();
            assertThat(plan.exitSi(plan.size() - 1)).isZero();
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void timeIsTheIntegralOfDistanceOverFeed(long seed) {
        for (MachineLimits machine : List.of(MACHINE, SMOOTH)) {
            FeedPlan plan = planner(machine).plan(random(seed), Side.LEFT);
            double atM = 0;
            double sum = 0;
            for (int i = 0; i < plan.size(); i++) {
                int steps = 2000;
                double length = plan.lengthSi(i);
                double time = 0;
                // substitution s = l (3 t^2 - 2 t^3) takes the root at rest out of 1/v
                for (int k = 0; k < steps; k++) {
                    double t = (k + 0.5) / steps;
                    double s = atM + length * t * t * (3 - 2 * t);
                    time += 6 * t * (1 - t) * length / steps / Kind.SPEED.si(plan.feedAt(Kind.LENGTH.of(s)));
                }
                assertThat(plan.timeSi(i)).isCloseTo(time, within(2e-3 * time + 1e-9));
                atM += length;
                sum += plan.timeSi(i);
            }
            assertThat(Kind.TIME.si(plan.time())).isCloseTo(sum, within(1e-10));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24, 25, 26})
    void reversingAPathKeepsItsTime(long seed) {
        for (MachineLimits machine : List.of(MACHINE, SMOOTH)) {
            Contour contour = random(seed);
            double forward =
                    Kind.TIME.si(planner(machine).plan(contour, Side.LEFT).time());
            double back = Kind.TIME.si(
                    planner(machine).plan(contour.reversed(), Side.RIGHT).time());

            assertThat(back).isCloseTo(forward, within(machine.hasJerk() ? 0.02 * forward : 2e-3 * forward));
        }
    }

    @Test
    void reversingALinesAndArcsContourKeepsItsTimeExactly() {
        double forward = Kind.TIME.si(planner(MACHINE).plan(lShape(), Side.LEFT).time());
        double back = Kind.TIME.si(
                planner(MACHINE).plan(lShape().reversed(), Side.RIGHT).time());

        assertThat(back).isCloseTo(forward, within(1e-12 * forward));
    }

    @Test
    void jerkCostsTime() {
        assertThat(Kind.TIME.si(planner(SMOOTH).plan(lShape(), Side.LEFT).time()))
                .isGreaterThan(
                        Kind.TIME.si(planner(MACHINE).plan(lShape(), Side.LEFT).time()));
    }

    /** The bottom of the jet, a lag behind along the tangent, must stay within the tolerance at every sample. */
    @Test
    void theBottomOfAnArcStaysWithinItsToleranceBySweeping() {
        Contour circle = Contour.circle(Point.millimetres(0, 0), millimetres(2), MEDIUM);
        FeedPlan plan = planner(MACHINE).plan(circle, Side.LEFT);
        assertThat(plan.limit(plan.size() / 2)).isEqualTo(FeedLimit.LAG_ON_ARC);
        EdgeCursor shape = new EdgeCursor();
        circle.load(0, shape);
        double worst = 0;
        for (int k = 1; k < 5000; k++) {
            double share = k / 5000.0;
            double feed = Kind.SPEED.si(plan.feedAt(Kind.LENGTH.of(share * shape.length())));
            double lag = LAW.lagSi(feed);
            double x = shape.xAt(share) - lag * shape.directionXAt(share);
            double y = shape.yAt(share) - lag * shape.directionYAt(share);
            worst = Math.max(worst, Math.abs(Math.hypot(x, y) - 0.002));
        }

        assertThat(worst).isLessThanOrEqualTo(1e-4 * (1 + 1e-9)).isGreaterThan(0.99e-4);
    }

    @Test
    void cornersAreHeldOverTheOldLagOnBothSides() {
        Contour contour = lShape();
        FeedPlan plan = planner(MACHINE).plan(contour, Side.LEFT);
        double slow = LAW.feedSi(1e-4);
        double lag = LAW.lagSi(2.0 / 60);
        double corner = 0.06;

        for (double off : new double[] {-0.999, -0.5, -0.1, 0, 0.1, 0.5, 0.999}) {
            assertThat(Kind.SPEED.si(plan.feedAt(Kind.LENGTH.of(corner + off * lag))))
                    .isLessThanOrEqualTo(slow * (1 + 1e-9));
        }
        assertThat(Kind.SPEED.si(plan.feedAt(Kind.LENGTH.of(corner - 3 * lag)))).isGreaterThan(slow * 2);
        assertThat(Kind.SPEED.si(planner(MACHINE)
                        .withRecovery(0)
                        .plan(contour, Side.LEFT)
                        .feedAt(Kind.LENGTH.of(corner - 0.9 * lag))))
                .isGreaterThan(slow * 2);
    }

    @Test
    void recoveryAgreesWithTheLeastFeedWithinALagAtEverySample() {
        for (long seed = 31; seed < 35; seed++) {
            Contour contour = random(seed);
            QualityFeeds same = QualityFeeds.same(millimetresPerMinute(2000));
            // so quick a machine that only the front counts
            MachineLimits quick = MachineLimits.of(metresPerSecond(100), metresPerSquareSecond(1e9))
                    .withCornerDeviation(millimetres(10));
            FeedPlan held = FeedPlanner.of(quick, same, LAW).plan(contour, Side.LEFT);
            FeedPlan bare = FeedPlanner.of(quick, same, LAW).withRecovery(0).plan(contour, Side.LEFT);
            double lag = LAW.lagSi(2.0 / 60);
            double length = Kind.LENGTH.si(contour.length());
            int steps = 4000;
            for (int k = 40; k < steps - 40; k++) {
                double s = length * k / steps;
                double least = Double.POSITIVE_INFINITY;
                double wide = Double.POSITIVE_INFINITY;
                double atM = 0;
                for (int i = 0; i < bare.size(); i++) {
                    double end = atM + bare.lengthSi(i);
                    double feed = bare.allowedSi(i);
                    least = meets(atM, end, s, lag) ? Math.min(least, feed) : least;
                    wide = meets(atM, end, s, lag * 1.0626) ? Math.min(wide, feed) : wide;
                    if (i > 0 && Math.abs(atM - s) <= lag) {
                        least = Math.min(least, Math.max(bare.entrySi(i), 1e-12));
                    }
                    if (i > 0 && Math.abs(atM - s) <= lag * 1.0626) {
                        wide = Math.min(wide, Math.max(bare.entrySi(i), 1e-12));
                    }
                    atM = end;
                }
                double feed = Kind.SPEED.si(held.feedAt(Kind.LENGTH.of(s)));
                assertThat(feed).isLessThanOrEqualTo(least * (1 + 1e-6));
                assertThat(feed).isGreaterThanOrEqualTo(wide * (1 - 1e-6));
            }
        }
    }

    private static boolean meets(double from, double to, double s, double reach) {
        return from <= s + reach && to >= s - reach;
    }

    /** Fine samples are lowered where they stand; one long edge at the end has the spans copied and split instead. */
    @Test
    void bothWaysOfRecoveryAgree() {
        int n = 3000;
        double[] x = new double[n + 2];
        double[] y = new double[n + 2];
        for (int i = 0; i <= n; i++) {
            x[i] = 5e-5 * i;
            y[i] = 0.003 * Math.sin(x[i] * 300) + (i % 400 < 200 ? 0 : 5e-5);
        }
        x[n + 1] = x[n] + 0.05;
        y[n + 1] = y[n];
        Contour withTail = Contour.polylineSi(x, y, MEDIUM);
        Contour fine = Contour.polylineSi(Arrays.copyOf(x, n + 1), Arrays.copyOf(y, n + 1), MEDIUM);
        FeedPlan copied = planner(MACHINE).plan(withTail, Side.LEFT);
        FeedPlan inPlace = planner(MACHINE).plan(fine, Side.LEFT);
        boolean isHeld = false;
        for (int i = 0; i < n - 200; i++) {
            assertThat(inPlace.peakFeedSi(i)).isEqualTo(copied.peakFeedSi(i));
            isHeld |= inPlace.limit(i) == FeedLimit.FRONT_RECOVERY;
        }
        assertThat(isHeld).isTrue();
    }

    @Test
    void slowSpotsTellTheCornersAndWhy() {
        FeedPlan plan = planner(MACHINE).plan(lShape(), Side.LEFT);
        List<SlowZone> spots = plan.slowZones(0.9);

        assertThat(spots).hasSize(7);
        assertThat(spots.get(0).limit()).isEqualTo(FeedLimit.PATH_END);
        assertThat(spots.get(1).limit()).isEqualTo(FeedLimit.LAG_AT_OUTSIDE_CORNER);
        assertThat(spots.get(1).place()).isEqualTo(Point.millimetres(60, 0));
        assertThat(spots.get(1).edge()).isEqualTo(1);
        assertThat(Kind.SPEED.si(spots.get(1).minimumFeed())).isCloseTo(1e-4 / 0.03, within(1e-9));
        // the usual face after the fine arc waits for the front
        assertThat(spots.get(3).limit()).isEqualTo(FeedLimit.FRONT_RECOVERY);
        for (SlowZone spot : spots) {
            assertThat(Kind.SPEED.si(spot.mean())).isLessThan(0.9 * Kind.SPEED.si(spot.nominalFeed()));
            assertThat(Kind.SPEED.si(spot.mean()))
                    .isGreaterThanOrEqualTo(Kind.SPEED.si(spot.minimumFeed()) * (1 - 1e-12));
        }
        Contour mirrored = lShape();
        assertThat(planner(MACHINE)
                        .plan(mirrored, Side.RIGHT)
                        .slowZones(0.9)
                        .get(1)
                        .limit())
                .isEqualTo(FeedLimit.LAG_AT_INSIDE_CORNER);
    }

    @Test
    void aSampledCircleRunsLikeTheArc() {
        int n = 2000;
        double[] x = new double[n + 1];
        double[] y = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            x[i] = 0.004 * Math.cos(2 * Math.PI * i / n);
            y[i] = 0.004 * Math.sin(2 * Math.PI * i / n);
        }
        Contour arc = Contour.circle(Point.millimetres(0, 0), millimetres(4), MEDIUM);
        Contour sampled = Contour.polylineSi(x, y, MEDIUM);
        for (MachineLimits machine : List.of(MACHINE, SMOOTH)) {
            double ofArc = Kind.TIME.si(planner(machine).plan(arc, Side.LEFT).time());
            double ofSamples =
                    Kind.TIME.si(planner(machine).plan(sampled, Side.LEFT).time());
            assertThat(ofSamples).isCloseTo(ofArc, within(0.005 * ofArc));
        }
    }

    @Test
    void aCornerThatNoFeedSatisfiesIsToldWithItsPlace() {
        Contour contour = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(60, 0))
                .lineTo(Point.millimetres(60, 20))
                .open();
        MachineLimits slow = MACHINE.withMinimumFeed(millimetresPerMinute(500));

        assertThatThrownBy(() -> planner(slow).plan(contour, Side.RIGHT))
                .isInstanceOfSatisfying(GeometryException.class, e -> {
                    assertThat(e.code()).isEqualTo("lag-out-of-tolerance");
                    assertThat(e.edge()).isEqualTo(1);
                    assertThat(e.xSi()).isEqualTo(0.06);
                    assertThat(e.ySi()).isZero();
                });
    }

    @Test
    void outsideCornersCanHaveARoomOfTheirOwn() {
        EdgeRequirement wide = MEDIUM.withOutsideCornerTolerance(millimetres(0.5));
        Contour corner = Contour.from(Point.millimetres(0, 0))
                .requirement(wide)
                .lineTo(Point.millimetres(60, 0))
                .lineTo(Point.millimetres(60, 20))
                .open();

        assertThat(Kind.SPEED.si(planner(MACHINE).plan(corner, Side.LEFT).feedAt(millimetres(59.5))))
                .isCloseTo(5e-4 / 0.03, within(1e-9));
        assertThat(Kind.SPEED.si(planner(MACHINE).plan(corner, Side.RIGHT).feedAt(millimetres(59.5))))
                .isCloseTo(1e-4 / 0.03, within(1e-9));
    }

    @Test
    void leadsAreFreeOfLagButKeepTheirFeed() {
        EdgeRequirement lead =
                MEDIUM.withMaximumFeed(millimetresPerMinute(1000)).asLead();
        Contour contour = Contour.from(Point.millimetres(0, -10))
                .requirement(lead)
                .lineTo(Point.millimetres(0, 0))
                .requirement(MEDIUM)
                .lineTo(Point.millimetres(50, 0))
                .open();
        FeedPlan plan = planner(MACHINE).plan(contour, Side.LEFT);

        assertThat(plan.limit(0)).isEqualTo(FeedLimit.LEAD);
        assertThat(plan.peakFeedSi(0)).isCloseTo(1.0 / 60, within(1e-12));
        assertThat(plan.slowZones(0.9)).noneMatch(spot -> spot.limit() == FeedLimit.LAG_AT_INSIDE_CORNER);
    }
}
