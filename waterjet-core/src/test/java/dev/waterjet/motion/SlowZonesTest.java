package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Slow zones, merged blocks and edges as drawn against the feed of the plan, asked at many places. */
class SlowZonesTest {

    private static final int SAMPLES = 3_000;

    private static FeedPlan plan(long seed, boolean hasJerk) {
        FeedPlanner planner = FeedPlanTest.planner("mild-steel-a36", 20)
                .withMachine(hasJerk ? FeedPlanTest.MACHINE.withJerk(Kind.JERK.of(5)) : FeedPlanTest.MACHINE);
        return planner.plan(FeedPlanTest.path(seed), Side.LEFT);
    }

    private static final QualityFeeds FEEDS = QualityFeeds.of(FeedPlanTest.cut("mild-steel-a36", 20));

    private static double nominal(FeedPlan plan, double at) {
        Contour path = plan.contour();
        return FEEDS.feedSi(path.requirement(path.placeAtSi(at).edge()).quality());
    }

    @ParameterizedTest
    @CsvSource({"5, false, 0.9", "6, true, 0.7", "7, false, 1", "8, true, 0.99", "9, false, 0.3"})
    void slowZonesHoldEveryPlaceBelowTheShareAndNoOther(long seed, boolean hasJerk, double share) {
        FeedPlan plan = plan(seed, hasJerk);
        List<SlowZone> zones = plan.slowZones(share);
        double length = plan.contour().lengthSi();
        int zone = 0;
        int wrong = 0;
        for (int i = 0; i < SAMPLES; i++) {
            double at = length * (i + 0.5) / SAMPLES;
            while (zone < zones.size() && Kind.LENGTH.si(zones.get(zone).endsAt()) < at) {
                zone++;
            }
            boolean isInside =
                    zone < zones.size() && Kind.LENGTH.si(zones.get(zone).startsAt()) <= at;
            double ratio = plan.feedAtSi(at) / (share * nominal(plan, at));
            wrong += Math.abs(ratio - 1) > 1e-9 && isInside != ratio < 1 ? 1 : 0;
        }
        assertThat(wrong).isZero();
        double before = 0;
        for (SlowZone each : zones) {
            double from = Kind.LENGTH.si(each.startsAt());
            double to = Kind.LENGTH.si(each.endsAt());
            assertThat(from).isGreaterThanOrEqualTo(before).isLessThan(to);
            assertThat(Kind.TIME.si(each.time())).isCloseTo(plan.timeAtSi(to) - plan.timeAtSi(from), within(1e-9));
            assertThat(Kind.SPEED.si(each.meanFeed()))
                    .isCloseTo((to - from) / Kind.TIME.si(each.time()), within(1e-12));
            requireLeast(plan, each, from, to);
            before = to;
        }
    }

    private static void requireLeast(FeedPlan plan, SlowZone zone, double from, double to) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= 100; i++) {
            least = Math.min(least, plan.feedAtSi(Math.min(plan.contour().lengthSi(), from + (to - from) * i / 100)));
        }
        assertThat(Kind.SPEED.si(zone.minimumFeed())).isLessThanOrEqualTo(least * (1 + 1e-9));
        // the place named is on the path, and its feed is the least one, or a slowdown's just above it
        double[] place = place(plan, zone);
        assertThat(place[1]).isLessThan(1e-7);
        assertThat(plan.feedAtSi(place[0]))
                .isBetween(
                        Kind.SPEED.si(zone.minimumFeed()) - 1e-9,
                        Kind.SPEED.si(zone.minimumFeed()) * 1.15 + 0.1 * Kind.SPEED.si(zone.nominalFeed()));
        assertThat(zone.limit() == FeedLimit.PATH_END).isEqualTo(Kind.SPEED.si(zone.minimumFeed()) == 0);
    }

    /** Distance along the path of the point nearest to a zone's place on its edge, and how far off it is. */
    private static double[] place(FeedPlan plan, SlowZone zone) {
        EdgeCursor edge = new EdgeCursor();
        double start = 0;
        for (int i = 0; i < zone.edge(); i++) {
            plan.contour().load(i, edge);
            start += edge.length();
        }
        plan.contour().load(zone.edge(), edge);
        int nearest = 0;
        for (int i = 1; i <= 50; i++) {
            nearest = off(edge, i / 50.0, zone) < off(edge, nearest / 50.0, zone) ? i : nearest;
        }
        double low = Math.max(0, (nearest - 1) / 50.0);
        double high = Math.min(1, (nearest + 1) / 50.0);
        for (int i = 0; i < 60; i++) {
            double left = low + (high - low) / 3;
            double right = high - (high - low) / 3;
            boolean isLeft = off(edge, left, zone) < off(edge, right, zone);
            high = isLeft ? right : high;
            low = isLeft ? low : left;
        }
        double at = Math.min(plan.contour().lengthSi(), start + low * edge.length());
        return new double[] {at, off(edge, low, zone)};
    }

    private static double off(EdgeCursor edge, double share, SlowZone zone) {
        return Math.hypot(
                edge.xAt(share) - zone.place().xSi(),
                edge.yAt(share) - zone.place().ySi());
    }

    /** Up to 0.8 of the feed and back at 1 m/s2: v^2/2 = 0.5^2 V^2/2 is passed on both sides of the peak. */
    @Test
    void aPeakAboveTheShareLiesBetweenTwoZones() {
        double feed = 0.02;
        double length = 0.64 * feed * feed;
        FeedPlan plan = FeedPlanner.withoutLag(
                        MachineLimits.of(Kind.SPEED.of(1), Kind.ACCELERATION.of(1)),
                        QualityFeeds.same(Kind.SPEED.of(feed)))
                .plan(Contour.fromSi(0, 0).lineToSi(length, 0).open(), Side.LEFT);
        List<SlowZone> zones = plan.slowZones(0.5);

        assertThat(zones).hasSize(2);
        assertThat(Kind.LENGTH.si(zones.get(0).endsAt())).isCloseTo(0.25 * feed * feed / 2, within(1e-12));
        assertThat(Kind.LENGTH.si(zones.get(1).startsAt())).isCloseTo(length - 0.25 * feed * feed / 2, within(1e-12));
        assertThat(plan.slowZones(0.81)).hasSize(1);
    }

    @Test
    void theCauseOfASlowPlaceIsNamed() {
        EdgeRequirement medium = FeedPlanTest.MEDIUM.withLagTolerance(Measures.millimetres(0.1));
        Contour path = Contour.fromSi(0, 0)
                .requirement(medium)
                .lineToSi(0.1, 0)
                .lineToSi(0.1, 0.1)
                .arcToSi(0.104, 0.104, 0.104, 0.1, Side.RIGHT)
                .lineToSi(0.2, 0.104)
                .requirement(medium.withMaximumFeed(Kind.SPEED.of(0.0005)))
                .lineToSi(0.21, 0.104)
                .requirement(medium)
                .lineToSi(0.3, 0.104)
                .open();
        FeedPlan plan = FeedPlanTest.planner("mild-steel-a36", 20)
                .withMachine(MachineLimits.of(Kind.SPEED.of(10), Kind.ACCELERATION.of(100)))
                .withSeparationAtCorners(false)
                .plan(path, Side.LEFT);
        List<SlowZone> zones = plan.slowZones(0.95);

        assertThat(zones).extracting(SlowZone::limit).contains(FeedLimit.LAG_AT_OUTSIDE_CORNER, FeedLimit.LAG_ON_ARC);
        assertThat(zones.get(0).limit()).isEqualTo(FeedLimit.PATH_END);
        for (SlowZone zone : zones) {
            if (zone.limit() == FeedLimit.LAG_AT_OUTSIDE_CORNER) {
                assertThat(zone.place().xSi()).isCloseTo(0.1, within(1e-9));
                assertThat(zone.place().ySi()).isCloseTo(0, within(1e-9));
                assertThat(Kind.SPEED.si(zone.nominalFeed())).isCloseTo(nominal(plan, 0.05), within(1e-12));
            }
            if (zone.limit() == FeedLimit.LAG_ON_ARC) {
                // the middle of the arc
                assertThat(Math.hypot(zone.place().xSi() - 0.104, zone.place().ySi() - 0.1))
                        .isCloseTo(0.004, within(1e-6));
                assertThat(0.104 - zone.place().xSi()).isCloseTo(zone.place().ySi() - 0.1, within(1e-6));
            }
        }
    }

    /** Merged blocks are the fewest: none could take the next one of its edge. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.03, 0.5})
    void mergedBlocksAreTheFewestWithinTheShare(double share) {
        FeedPlan plan = plan(5, false);
        List<PlanBlock> merged = plan.blocks(share);
        int next = 0;
        for (int b = 0; b < merged.size(); b++) {
            PlanBlock block = merged.get(b);
            double end = Kind.LENGTH.si(block.startsAt()) + Kind.LENGTH.si(block.length());
            double low = Double.POSITIVE_INFINITY;
            double high = 0;
            double at = Kind.LENGTH.si(block.startsAt());
            while (next < plan.size() && at < end - 1e-12) {
                assertThat(plan.edge(next)).isEqualTo(block.edge());
                low = Math.min(low, plan.allowedSi(next));
                high = Math.max(high, plan.allowedSi(next));
                at += plan.lengthSi(next);
                next++;
            }
            assertThat(at).isCloseTo(end, within(1e-9));
            assertThat(high).isLessThanOrEqualTo(low * (1 + share));
            assertThat(Kind.SPEED.si(block.allowedFeed())).isCloseTo(high, within(1e-12));
            if (next < plan.size() && plan.edge(next) == block.edge()) {
                double more = plan.allowedSi(next);
                assertThat(Math.max(high, more)).isGreaterThan(Math.min(low, more) * (1 + share));
            }
        }
        assertThat(next).isEqualTo(plan.size());
    }

    /** Along a path planned as drawn, source blocks lie where the plan's times say. */
    @ParameterizedTest
    @CsvSource({"0, 6", "0.03, 6", "0.3, 7"})
    void edgesAsDrawnHaveTheTimesOfTheirPlaces(double share, long seed) {
        Contour path = FeedPlanTest.path(seed);
        FeedPlan plan = FeedPlanTest.planner("mild-steel-a36", 20).planAsDrawn(path, Side.RIGHT);
        double[] starts = new double[path.size() + 1];
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < path.size(); i++) {
            path.load(i, edge);
            starts[i + 1] = starts[i] + edge.length();
        }
        double last = plan.contour().lengthSi();
        int split = 0;
        SourceBlock before = null;
        for (SourceBlock block : plan.sourceBlocks(share)) {
            double length = starts[block.edge() + 1] - starts[block.edge()];
            double from = Math.min(last, starts[block.edge()] + block.from() * length);
            double to = Math.min(last, starts[block.edge()] + block.to() * length);
            double time = plan.timeAtSi(to) - plan.timeAtSi(from);
            assertThat(Kind.TIME.si(block.time())).isCloseTo(time, within(1e-9));
            assertThat(Kind.LENGTH.si(block.length())).isCloseTo(to - from, within(1e-9));
            assertThat(Kind.SPEED.si(block.feed())).isCloseTo((to - from) / time, within(1e-6));
            assertThat(block.limit()).isEqualTo(plan.limit(longest(plan, from, to)));
            double[] range = allowed(plan, from, to);
            assertThat(range[1]).isLessThanOrEqualTo(range[0] * (1 + share) * (1 + 1e-12));
            if (before != null && before.edge() == block.edge()) {
                split++;
                assertThat(block.from()).isEqualTo(before.to());
            }
            before = block;
        }
        assertThat(split).isPositive();
    }

    /** Block of the plan that has the longest share of a part. */
    private static int longest(FeedPlan plan, double from, double to) {
        int longest = 0;
        double most = 0;
        double at = 0;
        for (int i = 0; i < plan.size(); i++) {
            double end = at + plan.lengthSi(i);
            double own = Math.min(to, end) - Math.max(from, at);
            longest = own > most + 1e-12 ? i : longest;
            most = Math.max(most, own);
            at = end;
        }
        return longest;
    }

    /** Range of the maximum feeds of a part, but for what is shorter than 0.1 mm. */
    private static double[] allowed(FeedPlan plan, double from, double to) {
        double[] range = {Double.POSITIVE_INFINITY, 0};
        double at = 0;
        for (int i = 0; i < plan.size(); i++) {
            double end = at + plan.lengthSi(i);
            if (Math.min(to, end) - Math.max(from, at) > 1.001e-4) {
                range[0] = Math.min(range[0], plan.allowedSi(i));
                range[1] = Math.max(range[1], plan.allowedSi(i));
            }
            at = end;
        }
        return range;
    }

    @Test
    void aSlowerQualityOnALeadIsThatOfSeparation() {
        EdgeRequirement fine = EdgeRequirement.of(CutQuality.FINE);
        FeedPlanner planner = FeedPlanTest.planner("mild-steel-a36", 20);
        Contour path = Contour.fromSi(0, 0)
                .requirement(fine.asLead())
                .lineToSi(0.2, 0)
                .requirement(fine)
                .lineToSi(0.4, 0)
                .requirement(fine.withMaximumFeed(Kind.SPEED.of(1e-4)))
                .lineToSi(0.42, 0)
                .open();
        FeedPlan plan = planner.plan(path, Side.LEFT);

        assertThat(plan.feedAtSi(0.05))
                .isCloseTo(Kind.SPEED.si(planner.feeds().feed(CutQuality.VERY_COARSE)), within(1e-12));
        assertThat(plan.feedAtSi(0.3)).isCloseTo(Kind.SPEED.si(planner.feeds().feed(CutQuality.FINE)), within(1e-12));
        assertThat(plan.feedAtSi(0.41)).isCloseTo(1e-4, within(1e-12));
        assertThat(plan.timeByLimit())
                .containsKeys(FeedLimit.LEAD, FeedLimit.QUALITY, FeedLimit.REQUESTED, FeedLimit.FRONT_RECOVERY);
        assertThat(Kind.TIME.si(plan.timeLimitedBy(FeedLimit.LAG_ON_ARC))).isZero();
    }
}
