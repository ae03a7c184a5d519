package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.reference.CornerCase;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which slowdown stands where along a path; the slowdowns themselves are those of the policy of an edge. */
class ProcessPlacesTest {

    private static final double THICKNESS = 0.025;
    private static final KerfProfile PROFILE = CornerCase.profile(THICKNESS);
    private static final double STRAIGHT = PROFILE.front().separationFeedSi(3 * THICKNESS);
    private static final QualityFeeds FEEDS =
            QualityFeeds.same(Kind.SPEED.of(STRAIGHT)).with(CutQuality.FINE, Kind.SPEED.of(0.6 * STRAIGHT));
    private static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM)
            .withLagTolerance(Measures.millimetres(0.2))
            .withOutsideCornerTolerance(Measures.millimetres(0.3));
    private static final EdgeRequirement FINE =
            EdgeRequirement.of(CutQuality.FINE).withLagTolerance(Measures.millimetres(0.15));
    /** No feed keeps it, so that each corner and bend is a slowdown. */
    private static final EdgeRequirement TIGHT = MEDIUM.withLagTolerance(Measures.millimetres(1e-3));

    private static final double FLATTENING = 2e-5;

    private static EdgePolicy policy(EdgeRequirement requirement) {
        return new EdgePolicy(requirement, FEEDS, PROFILE, SlowdownSettings.upright(SlowdownRules.cautious()));
    }

    private static Slowdown corner(EdgeRequirement requirement, double turn, boolean isInside) {
        return Objects.requireNonNull(policy(requirement).corner(turn, isInside));
    }

    private static Slowdown arc(EdgeRequirement requirement, double radius, double length, boolean isInside) {
        return Objects.requireNonNull(policy(requirement).arc(radius, length, isInside));
    }

    private static Slowdown end(EdgeRequirement requirement) {
        return Objects.requireNonNull(policy(requirement).end());
    }

    /** Slowdowns of a walk, in order, and its edges. */
    private record Walk(PathPlaces places, List<Integer> slowdowns, List<Integer> edges) {
        static Walk of(Contour path, Side part, boolean isLoop, boolean endsInScrap, double reachFactor) {
            EdgePolicy[] policies =
                    path.requirements().stream().map(ProcessPlacesTest::policy).toArray(EdgePolicy[]::new);
            PathPlaces places =
                    new ProcessPlaces(path, isLoop, part, policies, FLATTENING, reachFactor).walk(endsInScrap);
            List<Integer> slowdowns = new ArrayList<>();
            List<Integer> edges = new ArrayList<>();
            for (int i = 0; i < places.count(); i++) {
                (places.errorM(i) == PathPlaces.NO_ERROR ? edges : slowdowns).add(i);
            }
            return new Walk(places, slowdowns, edges);
        }

        static Walk of(Contour path, Side part) {
            return of(path, part, false, true, 1);
        }

        void requireSlowdown(int index, double from, double to, Slowdown expected, FeedLimit limit) {
            int i = slowdowns.get(index);
            assertThat(places.startM(i)).isCloseTo(from, within(1e-12));
            assertThat(places.endM(i)).isCloseTo(to, within(1e-12));
            assertThat(places.feedMPerS(i)).isEqualTo(expected.feedMPerS());
            assertThat(places.reachM(i)).isEqualTo(Math.max(1e-6, expected.zoneM()));
            assertThat(places.errorM(i)).isEqualTo(expected.predictedErrorM());
            assertThat(places.toleranceM(i)).isEqualTo(expected.toleranceM());
            assertThat(FeedLimit.ofCode(places.code(i)))
                    .isEqualTo(expected.reason() == SlowdownReason.SEPARATION ? FeedLimit.SEPARATION : limit);
        }
    }

    private static ContourBuilder start(EdgeRequirement requirement) {
        return Contour.fromSi(0, 0).requirement(requirement).lineToSi(0.1, 0);
    }

    private static ContourBuilder turned(ContourBuilder builder, double turn, double length) {
        return builder.lineToSi(0.1 + length * Math.cos(turn), length * Math.sin(turn));
    }

    @ParameterizedTest
    @CsvSource({"1.5, LEFT", "1.5, RIGHT", "-0.9, LEFT", "-0.9, RIGHT", "0.3, LEFT", "-0.3, LEFT"})
    void aCornerIsInsideOrOutsideByTheSideOfThePart(double turn, Side part) {
        Walk walk = Walk.of(turned(start(MEDIUM), turn, 0.05).open(), part);
        boolean isInside = turn * part.sign() < 0;

        assertThat(walk.slowdowns).hasSize(1);
        walk.requireSlowdown(
                0,
                0.1,
                0.1,
                corner(MEDIUM, Math.abs(turn), isInside),
                isInside ? FeedLimit.LAG_AT_INSIDE_CORNER : FeedLimit.LAG_AT_OUTSIDE_CORNER);
        assertThat(walk.edges).hasSize(2);
        int second = walk.edges.get(1);
        assertThat(walk.places.startM(second)).isCloseTo(0.1, within(1e-12));
        assertThat(walk.places.endM(second)).isCloseTo(0.15, within(1e-12));
        assertThat(walk.places.feedMPerS(second)).isEqualTo(STRAIGHT);
        assertThat(walk.places.reachM(second)).isEqualTo(PROFILE.front().exitLagSi(STRAIGHT));
    }

    @Test
    void betweenTwoQualitiesTheSlowerCornerHolds() {
        Slowdown medium = corner(MEDIUM, 1, true);
        Slowdown fine = corner(FINE, 1, true);
        Slowdown slower = medium.feedMPerS() < fine.feedMPerS() ? medium : fine;
        assertThat(medium.feedMPerS()).isNotEqualTo(fine.feedMPerS());
        Contour one = turned(start(MEDIUM).requirement(FINE), 1, 0.05).open();
        Contour other = turned(start(FINE).requirement(MEDIUM), 1, 0.05).open();

        Walk.of(one, Side.RIGHT).requireSlowdown(0, 0.1, 0.1, slower, FeedLimit.LAG_AT_INSIDE_CORNER);
        Walk.of(other, Side.RIGHT).requireSlowdown(0, 0.1, 0.1, slower, FeedLimit.LAG_AT_INSIDE_CORNER);
    }

    @Test
    void aTurnWithASagittaBelowTheFlatteningIsNoCorner() {
        double length = 0.004;
        double limit = 8 * FLATTENING / length;
        assertThat(Walk.of(turned(start(TIGHT), limit * 1.001, length).open(), Side.RIGHT).slowdowns)
                .hasSize(1);
        assertThat(Walk.of(turned(start(TIGHT), limit * 0.999, length).open(), Side.RIGHT).slowdowns)
                .isEmpty();
        assertThat(Walk.of(turned(start(TIGHT), 0.9e-7, 1e4).open(), Side.RIGHT).slowdowns)
                .isEmpty();
    }

    @Test
    void leadsHaveNoCornersButWhereOneLeavesThePart() {
        EdgeRequirement lead = MEDIUM.asLead();
        Contour in = turned(start(lead).requirement(MEDIUM), 1, 0.05).open();
        Contour out = turned(start(MEDIUM).requirement(lead), 1, 0.05).open();

        assertThat(Walk.of(in, Side.LEFT).slowdowns).isEmpty();
        assertThat(Walk.of(in, Side.RIGHT).slowdowns).isEmpty();
        assertThat(Walk.of(out, Side.LEFT).slowdowns).isEmpty();
        Walk.of(out, Side.RIGHT).requireSlowdown(0, 0.1, 0.1, corner(MEDIUM, 1, true), FeedLimit.LAG_AT_INSIDE_CORNER);
    }

    /** Cut-off tips: two or three joints that follow one another within twice the spread of the dose. */
    @ParameterizedTest
    @CsvSource({"1, LEFT", "1, RIGHT", "-1, LEFT", "-1, RIGHT"})
    void smallTurnsNearOneAnotherAreOneBend(double sign, Side part) {
        double step = 5e-5;
        ContourBuilder builder = start(MEDIUM);
        double x = 0.1;
        double y = 0;
        for (int i = 1; i <= 3; i++) {
            double length = i == 3 ? 0.05 : step;
            x += length * Math.cos(sign * 0.4 * i);
            y += length * Math.sin(sign * 0.4 * i);
            builder.lineToSi(x, y);
        }
        Walk walk = Walk.of(builder.open(), part);
        boolean isInside = sign * part.sign() < 0;

        assertThat(walk.slowdowns).hasSize(1);
        walk.requireSlowdown(
                0,
                0.1,
                0.1 + 2 * step,
                arc(MEDIUM, 2 * step / 1.2, 2 * step, isInside),
                isInside ? FeedLimit.LAG_AT_INSIDE_CORNER : FeedLimit.LAG_AT_OUTSIDE_CORNER);
    }

    private static Walk joints(double between, double first, double second) {
        return Walk.of(
                start(TIGHT)
                        .lineToSi(0.1 + between * Math.cos(first), between * Math.sin(first))
                        .lineToSi(
                                0.1 + between * Math.cos(first) + 0.05 * Math.cos(first + second),
                                between * Math.sin(first) + 0.05 * Math.sin(first + second))
                        .open(),
                Side.RIGHT);
    }

    @Test
    void turnsFarApartToBothSidesOrOfRoundingAreNoBend() {
        double spread = PROFILE.spreadSi();
        double turn = 4 * FLATTENING / spread;
        assertThat(joints(1.99 * spread, turn * 0.9, turn * 0.9).slowdowns).hasSize(1);
        assertThat(joints(2.01 * spread, turn * 0.9, turn * 0.9).slowdowns).isEmpty();
        assertThat(joints(0.1 * spread, turn, -turn).slowdowns).isEmpty();
        assertThat(joints(0.1 * spread, turn, 0.5e-7).slowdowns).isEmpty();
        assertThat(joints(0.1 * spread, 0.5e-7, turn).slowdowns).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"LEFT, LEFT", "LEFT, RIGHT", "RIGHT, LEFT", "RIGHT, RIGHT"})
    void anArcIsSlowOverItsLength(Side turn, Side part) {
        double radius = 0.003;
        double toY = turn.sign() * radius;
        for (EdgeRequirement second : List.of(MEDIUM, MEDIUM.asLead())) {
            Contour path = start(MEDIUM)
                    .requirement(second)
                    .arcToSi(0.1 + radius, toY, 0.1, toY, turn)
                    .open();
            Walk walk = Walk.of(path, part);
            boolean isInside = turn.sign() * part.sign() < 0;
            double length = radius * Math.PI / 2;
            if (second.isLead() && !isInside) {
                assertThat(walk.slowdowns).isEmpty();
            } else {
                walk.requireSlowdown(0, 0.1, 0.1 + length, arc(MEDIUM, radius, length, isInside), FeedLimit.LAG_ON_ARC);
            }
        }
        Contour leadIn = Contour.fromSi(0, 0)
                .requirement(MEDIUM.asLead())
                .arcToSi(radius, toY, 0, toY, turn)
                .requirement(MEDIUM)
                .lineToSi(radius, toY + turn.sign() * 0.05)
                .open();
        assertThat(Walk.of(leadIn, part).slowdowns).isEmpty();
    }

    @Test
    void anEndThatNothingOverlapsIsSeparated() {
        Contour path = start(MEDIUM).open();
        Walk free = Walk.of(path, Side.LEFT, false, false, 1);

        free.requireSlowdown(0, 0.1, 0.1, end(MEDIUM), FeedLimit.SEPARATION);
        assertThat(Walk.of(path, Side.LEFT, false, true, 1).slowdowns).isEmpty();
        Contour lead = start(MEDIUM.asLead()).open();
        assertThat(Walk.of(lead, Side.LEFT, false, false, 1).slowdowns).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"LEFT", "RIGHT"})
    void theSeamOfALoopIsACornerAtBothEnds(Side part) {
        Contour path = Contour.fromSi(0, 0)
                .requirement(MEDIUM)
                .lineToSi(0.1, 0)
                .lineToSi(0.05, 0.08)
                .lineToSi(0, 0)
                .open();
        Walk walk = Walk.of(path, part, true, false, 1);
        double turn = Math.PI - Math.atan2(0.08, 0.05);
        boolean isInside = part == Side.RIGHT;
        FeedLimit limit = isInside ? FeedLimit.LAG_AT_INSIDE_CORNER : FeedLimit.LAG_AT_OUTSIDE_CORNER;
        Slowdown corner = corner(MEDIUM, turn, isInside);
        double length = walk.places.endM(walk.places.count() - 1);

        walk.requireSlowdown(0, 0, 0, corner, limit);
        int last = walk.slowdowns.size() - 1;
        assertThat(last).isEqualTo(3);
        Slowdown end = end(MEDIUM);
        boolean isSeam = corner.feedMPerS() <= end.feedMPerS();
        walk.requireSlowdown(last, length, length, isSeam ? corner : end, isSeam ? limit : FeedLimit.SEPARATION);
        assertThat(Walk.of(path, part, true, true, 1).slowdowns).hasSize(2);
    }

    @Test
    void theReachIsAFactorOfTheZoneAndNeverNone() {
        Contour path = turned(start(MEDIUM), 1, 0.05).open();
        for (double factor : new double[] {0, 0.5, 3}) {
            Walk walk = Walk.of(path, Side.LEFT, false, true, factor);
            double zone = corner(MEDIUM, 1, false).zoneM();
            assertThat(walk.places.reachM(walk.slowdowns.get(0)))
                    .isCloseTo(Math.max(1e-6, factor * zone), within(1e-15));
        }
    }

    @Test
    void aSlowdownThatChangesNothingIsLeftOut() {
        EdgeRequirement loose = EdgeRequirement.of(CutQuality.MEDIUM).withLagTolerance(Measures.millimetres(50));
        Slowdown corner = corner(loose, 0.2, false);
        assertThat(corner.feedMPerS()).isEqualTo(STRAIGHT);

        assertThat(Walk.of(turned(start(loose), 0.2, 0.05).open(), Side.LEFT).slowdowns)
                .isEmpty();
    }
}
