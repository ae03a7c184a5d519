package dev.waterjet.motion;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.ContourPlace;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FeedPlanTest {

    static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);
    static final MachineLimits MACHINE = MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(0.5));
    private static final MachineLimits WITH_JERK = MACHINE.withJerk(Kind.JERK.of(5));

    static CutConditions cut(String material, double thicknessMm) {
        return CutConditions.of(
                CuttingHead.of(
                                Orifice.sapphire(millimetres(0.33)),
                                FocusingTube.of(millimetres(1.02), millimetres(102)))
                        .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450)),
                Workpiece.of(Materials.standard().get(material), millimetres(thicknessMm)),
                MachinabilityFeed.published());
    }

    static FeedPlanner planner(String material, double thicknessMm) {
        return FeedPlanner.of(MACHINE, cut(material, thicknessMm));
    }

    private static FeedPlanner plain(double feedMPerS) {
        return FeedPlanner.withoutLag(MACHINE, QualityFeeds.same(metresPerSecond(feedMPerS)));
    }

    static double seconds(FeedPlan plan) {
        return Kind.TIME.si(plan.time());
    }

    static Contour square(double mm, EdgeRequirement requirement) {
        return Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(mm, mm), requirement);
    }

    static Contour path(long seed) {
        Random random = new Random(seed);
        ContourBuilder builder = Contour.from(Point.millimetres(0, 0));
        double x = 0;
        double y = 0;
        double heading = 0;
        for (int i = 0; i < 40; i++) {
            builder.requirement(random.nextBoolean() ? MEDIUM : EdgeRequirement.of(CutQuality.FINE));
            double length = Math.exp(random.nextDouble() * 4);
            heading += random.nextGaussian() * (random.nextInt(3) == 0 ? 1.2 : 0.03);
            double toX = x + length * Math.cos(heading);
            double toY = y + length * Math.sin(heading);
            if (random.nextInt(3) == 0) {
                double bulge = length * (random.nextDouble() - 0.5);
                builder.arcThrough(
                        Point.millimetres(
                                (x + toX) / 2 - bulge * Math.sin(heading), (y + toY) / 2 + bulge * Math.cos(heading)),
                        Point.millimetres(toX, toY));
            } else {
                builder.lineTo(Point.millimetres(toX, toY));
            }
            x = toX;
            y = toY;
        }
        return builder.open();
    }

    /**
     * An L of 40 mm with one inside corner and one rounding of 5 mm, offset by half the kerf: times of the plan by an
     * independent program for the same rule, without machine limits.
     */
    @ParameterizedTest
    @CsvSource({"mild-steel-a36, 25, 191, 174", "mild-steel-a36, 50, 508, 392", "aluminium-6061-t6, 50, 183, 141"})
    void aPartTakesTheTimesOfAnIndependentPlan(String material, double mm, double ruled, double unslowed) {
        CutConditions cut = cut(material, mm);
        double c = 0.6;
        Contour path = Contour.from(Point.millimetres(15, -c))
                .requirement(MEDIUM)
                .lineTo(Point.millimetres(40 + c, -c))
                .lineTo(Point.millimetres(40 + c, 20 + c))
                .lineTo(Point.millimetres(20 + c, 20 + c))
                .lineTo(Point.millimetres(20 + c, 40 + c))
                .lineTo(Point.millimetres(5, 40 + c))
                .arcTo(Point.millimetres(-c, 35), Point.millimetres(5, 35), Side.LEFT)
                .lineTo(Point.millimetres(-c, -c))
                .lineTo(Point.millimetres(15, -c))
                .requirement(MEDIUM.withMaximumFeed(cut.feed(CutQuality.MEDIUM).value())
                        .asLead())
                .lineTo(Point.millimetres(
                        17
                                + 2 * c
                                + 1e3
                                        * CutFront.of(LagModel.standard(), cut)
                                                .exitLagSi(cut.feed(CutQuality.MEDIUM)
                                                        .si())
                                - 2,
                        -c))
                .open();
        MachineLimits quick = MachineLimits.of(metresPerSecond(10), metresPerSquareSecond(100));

        assertThat(seconds(FeedPlanner.of(quick, cut).plan(path, Side.LEFT))).isCloseTo(ruled, within(0.05 * ruled));
        assertThat(seconds(FeedPlanner.withoutLag(quick, QualityFeeds.of(cut)).plan(path, Side.LEFT)))
                .isCloseTo(unslowed, within(0.02 * unslowed));
    }

    @ParameterizedTest
    @ValueSource(strings = {"aluminium-6061-t6", "mild-steel-a36", "granite"})
    void aSquareOfAnyThicknessIsPlanned(String material) {
        for (double mm : new double[] {2, 5, 10, 25, 50, 80, 150}) {
            FeedPlan plan = planner(material, mm).plan(square(100, MEDIUM), Side.LEFT);
            double straight = Kind.LENGTH.si(metres(0.4))
                    / cut(material, mm).feed(CutQuality.MEDIUM).si();
            double least = plan.slowZones(0.9999).stream()
                    .filter(zone -> zone.limit().isOfFront())
                    .mapToDouble(zone -> Kind.SPEED.si(zone.minimumFeed()) / Kind.SPEED.si(zone.nominalFeed()))
                    .min()
                    .orElse(1);

            assertThat(least).as("%s, %s mm", material, mm).isBetween(0.06, 1.0);
            assertThat(seconds(plan)).as("%s, %s mm", material, mm).isLessThan(1.4 * straight + 4);
        }
    }

    @ParameterizedTest
    @CsvSource({"VERY_COARSE, COARSE", "COARSE, MEDIUM", "MEDIUM, FINE", "FINE, VERY_FINE"})
    void aCoarserCutNeverTakesLonger(CutQuality coarser, CutQuality quality) {
        for (String material : List.of("mild-steel-a36", "aluminium-6061-t6")) {
            for (double mm : new double[] {5, 15, 30, 60, 100}) {
                double fine = seconds(planner(material, mm).plan(square(100, EdgeRequirement.of(quality)), Side.LEFT));
                double coarse =
                        seconds(planner(material, mm).plan(square(100, EdgeRequirement.of(coarser)), Side.LEFT));

                assertThat(coarse).as("%s, %s mm", material, mm).isLessThanOrEqualTo(fine);
            }
        }
    }

    static Contour circle(double radiusMm, int chords, double roundedToM, boolean isEven) {
        double[] x = new double[chords + 1];
        double[] y = new double[chords + 1];
        for (int i = 0; i <= chords; i++) {
            double shift = isEven ? 0 : (i % 2) * 0.9;
            double angle = 2 * Math.PI * Math.min(chords, i + (i == chords ? 0 : shift)) / chords;
            x[i] = rounded(radiusMm * 1e-3 * Math.cos(angle), roundedToM);
            y[i] = rounded(radiusMm * 1e-3 * Math.sin(angle), roundedToM);
        }
        x[chords] = x[0];
        y[chords] = y[0];
        return Contour.polylineSi(x, y, MEDIUM);
    }

    private static double rounded(double valueM, double toM) {
        return toM == 0 ? valueM : Math.rint(valueM / toM) * toM;
    }

    @ParameterizedTest
    @CsvSource({"20, 252", "20, 1257", "10, 200", "50, 2000", "3, 100"})
    void oneCircleHasOneTimeHoweverItIsSampled(double radiusMm, int chords) {
        for (MachineLimits machine : List.of(MACHINE, WITH_JERK)) {
            FeedPlanner planner = FeedPlanner.of(machine, cut("mild-steel-a36", 25));
            double arc = seconds(
                    planner.plan(Contour.circle(Point.millimetres(0, 0), millimetres(radiusMm), MEDIUM), Side.LEFT));

            assertThat(seconds(planner.plan(circle(radiusMm, chords, 0, true), Side.LEFT)))
                    .isCloseTo(arc, within(0.005 * arc));
            assertThat(seconds(planner.plan(circle(radiusMm, chords, 1e-6, true), Side.LEFT)))
                    .isCloseTo(arc, within(0.005 * arc));
            assertThat(seconds(planner.plan(circle(radiusMm, chords, 1e-6, false), Side.LEFT)))
                    .isCloseTo(arc, within(0.005 * arc));
        }
    }

    @Test
    void aJogBelowTheToleranceAndNoiseCostNothing() {
        double straight =
                seconds(plain(0.01).plan(Contour.fromSi(0, 0).lineToSi(0.1, 0).open(), Side.LEFT));
        for (double jog : new double[] {2e-9, 1e-7, 1e-6}) {
            Contour path = Contour.fromSi(0, 0)
                    .lineToSi(0.05, 0)
                    .lineToSi(0.05, jog)
                    .lineToSi(0.1, jog)
                    .open();
            assertThat(seconds(plain(0.01).plan(path, Side.LEFT))).isCloseTo(straight, within(1e-3));
        }
        Random random = new Random(3);
        double[] x = new double[2001];
        double[] y = new double[2001];
        for (int i = 0; i <= 2000; i++) {
            x[i] = 5e-5 * i;
            y[i] = 1e-6 * (2 * random.nextDouble() - 1);
        }
        assertThat(seconds(planner("mild-steel-a36", 10).plan(Contour.polylineSi(x, y, MEDIUM), Side.LEFT)))
                .isCloseTo(
                        seconds(planner("mild-steel-a36", 10)
                                .plan(Contour.fromSi(0, 0).lineToSi(0.1, 0).open(), Side.LEFT)),
                        within(0.05));
    }

    @Test
    void cornersChangeSmoothlyWithTheirTurn() {
        double before = 0;
        for (double turn = 8; turn <= 12; turn += 0.1) {
            double angle = Math.toRadians(turn);
            Contour path = Contour.fromSi(0, 0)
                    .lineToSi(0.05, 0)
                    .lineToSi(0.05 + 0.05 * Math.cos(angle), 0.05 * Math.sin(angle))
                    .open();
            double time = seconds(planner("mild-steel-a36", 50).plan(path, Side.RIGHT));
            if (before > 0) {
                assertThat(time).isCloseTo(before, within(0.01 * before));
            }
            before = time;
        }
    }

    @Test
    void theClosingCornerIsSlowedLikeTheOthers() {
        FeedPlan plan = planner("aluminium-6061-t6", 25).plan(square(40, MEDIUM), Side.LEFT);
        double atCorner = plan.feedAtSi(0.0395);

        assertThat(atCorner).isLessThan(0.9 * plan.feedAtSi(0.02));
        assertThat(plan.feedAtSi(0.16 - 0.0005)).isCloseTo(atCorner, within(1e-9));
        assertThat(plan.feedAtSi(0.0005)).isCloseTo(atCorner, within(1e-9));
    }

    @Test
    void theSlowZoneIsOneNewLagOnBothSides() {
        CutConditions cut = cut("mild-steel-a36", 25);
        CutFront front = CutFront.of(LagModel.standard(), cut);
        FeedPlan plan = planner("mild-steel-a36", 25)
                .plan(Contour.fromSi(0, 0).lineToSi(0.1, 0).lineToSi(0.1, 0.1).open(), Side.RIGHT);
        double slow = plan.feedAtSi(0.1);
        SlowZone corner = plan.slowZones(0.99).stream()
                .filter(zone -> zone.limit() == FeedLimit.LAG_AT_INSIDE_CORNER)
                .findFirst()
                .orElseThrow();

        assertThat(corner.place()).isEqualTo(Point.millimetres(100, 0));
        assertThat(Kind.LENGTH.si(corner.startsAt())).isCloseTo(0.1 - front.exitLagSi(slow), within(2e-5));
        assertThat(Kind.LENGTH.si(corner.endsAt())).isCloseTo(0.1 + front.exitLagSi(slow), within(2e-5));
        assertThat(Kind.TIME.si(plan.timeLimitedBy(FeedLimit.LAG_AT_INSIDE_CORNER)))
                .isCloseTo(2 * front.exitLagSi(slow) / slow, within(0.02));
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24, 25, 26})
    void reversingAPathKeepsItsTime(long seed) {
        Contour path = path(seed);
        FeedPlanner planner = planner("mild-steel-a36", 20).withMachine(MACHINE);
        // the free end of a path is slowed, its start over a pierced hole is not: a lead at both ends makes them alike
        Contour free = withLeads(path);
        double forward = seconds(planner.plan(free, Side.LEFT));
        double back = seconds(planner.plan(free.reversed(), Side.RIGHT));

        assertThat(back).isCloseTo(forward, within(2e-3 * forward));
    }

    /** Leads that go on straight: a lead-out that turns off is slowed, a lead-in is not. */
    private static Contour withLeads(Contour path) {
        EdgeCursor edge = new EdgeCursor();
        path.load(0, edge);
        ContourBuilder builder = Contour.fromSi(
                edge.startX() - 0.03 * edge.startDirectionX(), edge.startY() - 0.03 * edge.startDirectionY());
        builder.requirement(MEDIUM.asLead()).lineTo(path.start());
        for (int i = 0; i < path.size(); i++) {
            path.load(i, edge);
            builder.requirement(path.requirement(i)).edgeTo(edge);
        }
        return builder.requirement(MEDIUM.asLead())
                .lineToSi(edge.endX() + 0.03 * edge.endDirectionX(), edge.endY() + 0.03 * edge.endDirectionY())
                .open();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void noLimitOfAnAxisIsExceeded(long seed) {
        FeedPlan plan = FeedPlanner.withoutLag(
                        MachineLimits.of(metresPerSecond(0.2), metresPerSquareSecond(0.5))
                                .withAxisSpeeds(metresPerSecond(0.2), metresPerSecond(0.1)),
                        QualityFeeds.same(metresPerSecond(0.3)))
                .plan(path(seed), Side.LEFT);
        double length = plan.contour().lengthSi();
        int n = 40_000;
        EdgeCursor edge = new EdgeCursor();
        for (int i = 1; i < n; i++) {
            double at = length * i / n;
            ContourPlace place = plan.contour().placeAtSi(at);
            plan.contour().load(place.edge(), edge);
            double feed = plan.feedAtSi(at);
            assertThat(feed * Math.abs(edge.directionXAt(place.share()))).isLessThanOrEqualTo(0.2 * 1.0001);
            assertThat(feed * Math.abs(edge.directionYAt(place.share()))).isLessThanOrEqualTo(0.1 * 1.0001);
            double step = length / n / 10;
            if (at + step < length && plan.contour().placeAtSi(at + step).edge() == place.edge()) {
                double next = plan.feedAtSi(at + step);
                double along = (next * next - feed * feed) / (2 * step);
                double k = edge.isArc() ? Math.signum(edge.sweep()) / edge.radius() : 0;
                double tx = edge.directionXAt(place.share());
                double ty = edge.directionYAt(place.share());
                assertThat(Math.abs(along * tx - k * feed * feed * ty)).isLessThanOrEqualTo(0.5 * 1.02);
                assertThat(Math.abs(along * ty + k * feed * feed * tx)).isLessThanOrEqualTo(0.5 * 1.02);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void timesOfBlocksEdgesAndLimitsAddUp(long seed) {
        for (MachineLimits machine : List.of(MACHINE, WITH_JERK)) {
            FeedPlan plan = FeedPlanner.of(machine, cut("titanium", 12)).plan(path(seed), Side.LEFT);
            double blocks = 0;
            double length = 0;
            for (int i = 0; i < plan.size(); i++) {
                blocks += plan.timeSi(i);
                length += plan.lengthSi(i);
                assertThat(plan.peakFeedSi(i)).isLessThanOrEqualTo(plan.allowedSi(i) * (1 + 1e-9));
            }
            double edges = 0;
            for (int i = 0; i < plan.contour().size(); i++) {
                edges += Kind.TIME.si(plan.timeOfEdge(i));
            }
            double limits = plan.timeByLimit().values().stream()
                    .mapToDouble(Kind.TIME::si)
                    .sum();
            double merged = plan.blocks(0.03).stream()
                    .mapToDouble(block -> Kind.LENGTH.si(block.length()) / Kind.SPEED.si(block.meanFeed()))
                    .sum();

            assertThat(blocks).isCloseTo(seconds(plan), within(1e-9 * blocks));
            assertThat(edges).isCloseTo(seconds(plan), within(1e-9 * blocks));
            assertThat(limits).isCloseTo(seconds(plan), within(1e-9 * blocks));
            assertThat(merged).isCloseTo(seconds(plan), within(1e-9 * blocks));
            assertThat(length).isCloseTo(plan.contour().lengthSi(), within(1e-12));
        }
    }
}
