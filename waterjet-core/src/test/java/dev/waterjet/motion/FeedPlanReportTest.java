package dev.waterjet.motion;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static dev.waterjet.motion.FeedPlanTest.MACHINE;
import static dev.waterjet.motion.FeedPlanTest.MEDIUM;
import static dev.waterjet.motion.FeedPlanTest.circle;
import static dev.waterjet.motion.FeedPlanTest.cut;
import static dev.waterjet.motion.FeedPlanTest.path;
import static dev.waterjet.motion.FeedPlanTest.planner;
import static dev.waterjet.motion.FeedPlanTest.seconds;
import static dev.waterjet.motion.FeedPlanTest.square;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Blocks, tolerances, findings, leads and cautions of feed plans. */
class FeedPlanReportTest {

    @Test
    void blocksFollowOneAnotherInPlace() {
        FeedPlan plan = planner("mild-steel-a36", 30).plan(path(5), Side.LEFT);
        List<PlanBlock> blocks = plan.blocks(0.03);
        for (int i = 1; i < blocks.size(); i++) {
            assertThat(Kind.LENGTH.si(
                            blocks.get(i).start().distance(blocks.get(i - 1).end())))
                    .isLessThan(1e-9);
            assertThat(Kind.LENGTH.si(blocks.get(i).startsAt()))
                    .isCloseTo(
                            Kind.LENGTH.si(blocks.get(i - 1).startsAt())
                                    + Kind.LENGTH.si(blocks.get(i - 1).length()),
                            within(1e-12));
        }
        assertThat(blocks.get(0).start()).isEqualTo(plan.contour().start());
        assertThat(blocks.get(blocks.size() - 1).end()).isEqualTo(plan.contour().end());
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 60, 400})
    void theEdgesAsDrawnTakeTheTimeOfThePlan(int chords) {
        Contour drawn = chords == 1 ? square(50, MEDIUM) : circle(12, chords, 1e-6, true);
        FeedPlan plan = planner("mild-steel-a36", 20).plan(drawn, Side.LEFT);
        List<SourceBlock> blocks = plan.sourceBlocks(0.03);
        double time = 0;
        double length = 0;
        int edge = 0;
        double share = 0;
        for (SourceBlock block : blocks) {
            assertThat(block.edge()).isBetween(edge, edge + 1);
            assertThat(block.from()).isCloseTo(block.edge() == edge ? share : 0, within(1e-12));
            edge = block.edge();
            share = block.to();
            time += Kind.LENGTH.si(block.length()) / Kind.SPEED.si(block.feed());
            length += Kind.LENGTH.si(block.length());
        }

        assertThat(edge).isEqualTo(drawn.size() - 1);
        assertThat(time).isCloseTo(seconds(plan), within(1e-6 * time));
        assertThat(length).isCloseTo(drawn.lengthSi(), within(1e-9));
        assertThat(blocks).hasSizeBetween(drawn.size(), drawn.size() + 8);
    }

    @Test
    void aLooserToleranceNeverTakesLonger() {
        double before = Double.POSITIVE_INFINITY;
        for (double tolerance : new double[] {0.05, 0.1, 0.3, 0.6, 1, 3}) {
            double time = seconds(planner("mild-steel-a36", 20)
                    .plan(square(60, MEDIUM.withLagTolerance(millimetres(tolerance))), Side.RIGHT));
            assertThat(time).isLessThanOrEqualTo(before * (1 + 1e-9));
            before = time;
        }
    }

    @Test
    void outsideCornersCanHaveATolerancesOfTheirOwn() {
        Contour corner = Contour.from(Point.millimetres(0, 0))
                .requirement(MEDIUM.withLagTolerance(millimetres(0.3)).withOutsideCornerTolerance(millimetres(2)))
                .lineTo(Point.millimetres(60, 0))
                .lineTo(Point.millimetres(60, 20))
                .open();
        FeedPlanner planner = planner("mild-steel-a36", 20).withSeparationAtCorners(false);

        assertThat(planner.plan(corner, Side.LEFT).feedAtSi(0.06))
                .isGreaterThan(1.5 * planner.plan(corner, Side.RIGHT).feedAtSi(0.06));
    }

    @Test
    void aToleranceOutOfReachIsAFindingWithItsPlace() {
        Contour corner = Contour.from(Point.millimetres(0, 0))
                .requirement(MEDIUM.withLagTolerance(millimetres(0.01)))
                .lineTo(Point.millimetres(60, 0))
                .lineTo(Point.millimetres(60, 20))
                .open();
        FeedPlan plan = planner("mild-steel-a36", 20).plan(corner, Side.RIGHT);

        assertThat(plan.findings()).anySatisfy(finding -> {
            assertThat(finding.code()).isEqualTo("bottom-edge-error");
            assertThat(finding.isSatisfied()).isFalse();
            assertThat(finding.place()).isEqualTo(Point.millimetres(60, 0));
            assertThat(finding.message().parameters().keySet().toString()).contains("value", "limit", "feed", "zone");
        });
        assertThat(planner("mild-steel-a36", 2)
                        .plan(square(100, MEDIUM), Side.LEFT)
                        .findings())
                .isEmpty();
    }

    @Test
    void theMinimumFeedOfTheMachineIsKeptAndFound() {
        MachineLimits coarse = MACHINE.withMinimumFeed(millimetresPerMinute(50));
        FeedPlan plan = FeedPlanner.of(coarse, cut("mild-steel-a36", 80)).plan(square(100, MEDIUM), Side.LEFT);

        assertThat(plan.findings()).extracting(finding -> finding.code()).contains("below-minimum-feed");
        assertThat(plan.feedAtSi(0.05)).isCloseTo(0.05 / 60, within(1e-12));
        assertThat(plan.limit(0)).isEqualTo(FeedLimit.MINIMUM_FEED);
    }

    @Test
    void leadsRunAtTheSeparationFeedUpToTheRunInOfTheEdge() {
        CutConditions cut = cut("mild-steel-a36", 20);
        Contour contour = Contour.from(Point.millimetres(-60, 0))
                .requirement(EdgeRequirement.of(CutQuality.FINE).asLead())
                .lineTo(Point.millimetres(0, 0))
                .requirement(EdgeRequirement.of(CutQuality.FINE))
                .lineTo(Point.millimetres(50, 0))
                .open();
        FeedPlan plan = FeedPlanner.of(MACHINE, cut).plan(contour, Side.LEFT);
        double fine = cut.feed(CutQuality.FINE).si();
        CutFront front = CutFront.of(LagModel.standard(), cut);

        assertThat(plan.limit(0)).isEqualTo(FeedLimit.LEAD);
        assertThat(plan.peakFeedSi(0))
                .isCloseTo(cut.feed(CutQuality.VERY_COARSE).si(), within(1e-12));
        assertThat(plan.feedAtSi(0.06 - 0.99 * front.exitLagSi(fine))).isLessThanOrEqualTo(fine * (1 + 1e-9));
        assertThat(plan.timeByLimit()).containsKey(FeedLimit.FRONT_RECOVERY);
    }

    @Test
    void aFrontThatFollowsThePathNeedsNoSlowdown() {
        FeedPlanner following = planner("mild-steel-a36", 30)
                .withLagGeometry(LagGeometry.FOLLOWING)
                .withSeparationAtCorners(false);
        FeedPlan plan = following.plan(square(100, MEDIUM), Side.RIGHT);

        assertThat(plan.timeByLimit()).doesNotContainKeys(FeedLimit.LAG_AT_INSIDE_CORNER, FeedLimit.LAG_ON_ARC);
    }

    @Test
    void cautionsOfTheModelsReachThePlan() {
        CutConditions rubber = CutConditions.of(
                cut("mild-steel-a36", 10).jet(),
                Workpiece.of(Material.of("rubber", 2000, 0.5, MaterialClass.SOFT), millimetres(20)),
                MachinabilityFeed.published());
        FeedPlan plan = FeedPlanner.of(MACHINE, rubber).plan(square(40, MEDIUM), Side.LEFT);

        assertThat(plan.cautions()).extracting(caution -> caution.code()).contains("unsure-machinability");
        assertThat(planner("mild-steel-a36", 100)
                        .plan(square(100, MEDIUM), Side.LEFT)
                        .cautions())
                .extracting(caution -> caution.code())
                .contains("lag-extrapolated");
    }

    @Test
    void distancesBeyondThePathAreRefused() {
        FeedPlan plan = planner("aluminium-6061-t6", 25).plan(square(40, MEDIUM), Side.LEFT);

        assertRefused(() -> plan.feedAt(metres(5)), "must-be-at-most", "distance along the path", 0.16);
        assertRefused(() -> plan.blocks(-0.1), "must-be-at-least");
        assertRefused(() -> plan.slowZones(0), "must-be-above");
        assertRefused(() -> plan.limit(plan.size()), "no-such-index");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 17, 45, 123})
    void aRotatedPartKeepsItsTime(double angleDegrees) {
        double angle = Kind.ANGLE.si(degrees(angleDegrees));
        MachineLimits quick = MachineLimits.of(metresPerSecond(10), metresPerSquareSecond(1000));
        double[][] corners = {{0.05, 0}, {0.05, 0.03}, {0, 0.03}};
        ContourBuilder builder = Contour.fromSi(0, 0).requirement(MEDIUM);
        for (double[] corner : corners) {
            builder.lineToSi(
                    corner[0] * Math.cos(angle) - corner[1] * Math.sin(angle),
                    corner[0] * Math.sin(angle) + corner[1] * Math.cos(angle));
        }
        FeedPlanner planner = FeedPlanner.of(quick, cut("granite", 30));
        double upright = seconds(
                planner.plan(Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(50, 30), MEDIUM), Side.LEFT));

        assertThat(seconds(planner.plan(builder.close(), Side.LEFT))).isCloseTo(upright, within(1e-3 * upright));
    }
}
