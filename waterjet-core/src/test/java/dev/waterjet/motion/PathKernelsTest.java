package dev.waterjet.motion;

import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.kerf.LagFunction;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PathKernelsTest {

    private static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);
    private static final MachineLimits MACHINE = MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(1));
    private static final double INFINITE = Double.POSITIVE_INFINITY;
    private static final byte GRADE = FeedLimit.QUALITY.code();
    private static final byte RECOVERY = FeedLimit.FRONT_RECOVERY.code();

    @Test
    void slowPlacesStandWhileWithinReachAndNoNearerOneIsAsSlow() {
        RecoveryWindow slow = new RecoveryWindow(10);
        assertThat(slow.isEmpty()).isTrue();
        slow.enter(1);
        slow.walk(4);
        slow.enter(3);
        slow.walk(2);
        slow.enter(2);

        // the place of feed 3 is dropped: a nearer one is slower
        int slowest = slow.slowest(0, slow.walkedM(), 10);
        assertThat(slow.walkedM()).isEqualTo(6);
        assertThat(slow.placeM(slowest)).isZero();
        assertThat(slow.feedMPerS(slowest)).isEqualTo(1);
        int next = slow.slowest(slowest, 6, 6);
        assertThat(slow.feedMPerS(next)).isEqualTo(2);
        assertThat(slow.placeM(next)).isEqualTo(6);
        assertThat(slow.feedMPerS(slow.slowest(0, 12, 6))).isInfinite();
        slow.walk(4);
        assertThat(slow.feedMPerS(slow.slowest(0, 10, 10))).isEqualTo(2);
        slow.walk(6);
        assertThat(slow.isEmpty()).isTrue();
        // the next one counts afresh
        slow.walk(100);
        slow.enter(5);
        assertThat(slow.walkedM()).isZero();
    }

    @Test
    void manySlowPlacesWithinReachAreKept() {
        RecoveryWindow slow = new RecoveryWindow(100);
        for (int i = 0; i < 1000; i++) {
            slow.enter(i);
            slow.walk(1);
        }

        // the oldest within 100 is that of step 901
        int slowest = slow.slowest(0, slow.walkedM(), 100);
        assertThat(slow.feedMPerS(slowest)).isEqualTo(901);
        assertThat(slow.placeM(slowest)).isEqualTo(901);
        assertThat(slow.feedMPerS(slow.slowest(0, slow.walkedM(), 1.5))).isEqualTo(999);
    }

    @Test
    void spansAreCutIntoPiecesAndTheOthersStay() {
        Segments spans = new Segments(4);
        for (int i = 0; i < 4; i++) {
            spans.lengthM[i] = i + 1;
            spans.frontMPerS[i] = 10 + i;
            spans.machineMPerS[i] = 20 + i;
            spans.accelerationMPerS2[i] = 30 + i;
            spans.node(i, 40 + i, GRADE, 50 + i);
        }
        spans.node(4, 44, GRADE, 54);
        SegmentSplits pieces = new SegmentSplits();
        pieces.add(1, 0.5, 9, RECOVERY);
        pieces.add(1, 1.5, 11, GRADE);
        pieces.add(3, 1, 13, GRADE);
        pieces.add(3, 3, 8, RECOVERY);
        Segments cut = spans.cutInto(pieces);

        assertThat(cut.count).isEqualTo(6);
        assertThat(cut.edge).containsExactly(0, 1, 1, 2, 3, 3);
        assertThat(cut.lengthM).containsExactly(1, 0.5, 1.5, 3, 1, 3);
        assertThat(cut.frontMPerS).containsExactly(10, 9, 11, 12, 13, 8);
        assertThat(cut.frontLimit)
                .containsExactly(spans.frontLimit[0], RECOVERY, GRADE, spans.frontLimit[2], GRADE, RECOVERY);
        assertThat(cut.machineMPerS).containsExactly(20, 21, 21, 22, 23, 23);
        assertThat(cut.accelerationMPerS2).containsExactly(30, 31, 31, 32, 33, 33);
        assertThat(cut.nodeFrontMPerS).containsExactly(40, 41, INFINITE, 42, 43, INFINITE, 44);
        assertThat(cut.nodeMachineMPerS).containsExactly(50, 51, INFINITE, 52, 53, INFINITE, 54);
    }

    @Test
    void manyPiecesAreKeptInTheirOrder() {
        SegmentSplits pieces = new SegmentSplits();
        for (int i = 0; i < 100; i++) {
            pieces.add(i / 4, i, 2 * i, (byte) (i % 5));
        }

        assertThat(pieces.count()).isEqualTo(100);
        assertThat(pieces.spans()).isEqualTo(25);
        assertThat(pieces.span(99)).isEqualTo(24);
        assertThat(pieces.lengthM(17)).isEqualTo(17);
        assertThat(pieces.frontMPerS(17)).isEqualTo(34);
        assertThat(pieces.frontLimit(17)).isEqualTo((byte) 2);
    }

    /** What is surely rounded or tracked holds nothing up by the exact conditions, told here with angles. */
    @Test
    void gentleTurnsAreGentle() {
        LagFunction law = feed -> 0.03 * feed;
        EdgeLimits limits =
                new EdgeLimits(List.of(MEDIUM), QualityFeeds.same(millimetresPerMinute(2000)), law, MACHINE);
        double feed = 2.0 / 60;
        Random random = new Random(9);
        int rounded = 0;
        int tracked = 0;
        for (int i = 0; i < 2000; i++) {
            double turn = Math.toRadians(10) * Math.exp(-8 * random.nextDouble());
            double length = 1e-2 * Math.exp(-8 * random.nextDouble());
            double half = turn / 2;
            double radius = Math.min(1e-5 * Math.cos(half) / (1 - Math.cos(half)), length / 2 / Math.tan(half));
            if (limits.isSurelyRounded(0, Math.sin(turn), length)) {
                rounded++;
                assertThat(0.8 * radius).isGreaterThanOrEqualTo(feed * feed * (1 - 1e-9));
            }
            if (limits.isSurelyTracked(0, Math.sin(turn), length)) {
                tracked++;
                double curve = length / (2 * Math.sin(half));
                assertThat(LagGeometry.TANGENT.arcErrorSi(0.03 * feed, curve)).isLessThanOrEqualTo(1e-4 * (1 + 1e-9));
            }
        }
        assertThat(rounded).isBetween(100, 1900);
        assertThat(tracked).isBetween(100, 1900);
        assertThat(limits.fastestMPerS).isEqualTo(feed);
    }

    @Test
    void aPlanTellsItsBlocksAndLimits() {
        Contour line = Contour.fromSi(0, 0).lineToSi(0.1, 0).open();
        FeedPlan plan = FeedPlanner.of(MACHINE, QualityFeeds.same(millimetresPerMinute(1200)), LagFunction.none())
                .plan(line, Side.LEFT);

        assertThat(plan.contour()).isEqualTo(line);
        assertThat(plan.size()).isEqualTo(1);
        assertThat(plan.edge(0)).isZero();
        assertThat(plan.lengthSi(0)).isEqualTo(0.1);
        assertThat(plan.allowedSi(0)).isEqualTo(0.02);
        // 5 s at 20 mm/s but for 0.02 s up and down, each over 0.2 mm
        assertThat(Kind.TIME.si(plan.timeLimitedBy(FeedLimit.QUALITY))).isCloseTo(0.0996 / 0.02, within(1e-12));
        assertThat(Kind.TIME.si(plan.timeLimitedBy(FeedLimit.CENTRIPETAL))).isZero();
        assertThat(plan.timeByLimit()).containsOnlyKeys(FeedLimit.QUALITY, FeedLimit.ACCELERATION);
        assertThat(plan.describe()).containsEntry("blocks", 1L).containsKeys("time_s", "length_m", "limits");
        assertThat(plan.toString()).contains("blocks");
        assertThat(Kind.SPEED.si(plan.feedAt(millimetres(50)))).isEqualTo(0.02);
        assertThat(Kind.SPEED.si(plan.feedAt(millimetres(100)))).isZero();
        assertThat(Kind.SPEED.si(plan.feedAt(millimetres(200)))).isZero();
        assertThatThrownBy(() -> plan.feedAt(millimetres(-1)))
                .hasMessageStartingWith("distance along the path is -1 mm");
        assertThatThrownBy(() -> FeedPlanner.of(MACHINE, QualityFeeds.same(millimetresPerMinute(1)), LagFunction.none())
                        .withRecovery(-1))
                .hasMessageStartingWith("recovery of the front is -1");
        // a block so short that the feed is never reached tells the acceleration
        FeedPlan dot = FeedPlanner.of(MACHINE, QualityFeeds.same(millimetresPerMinute(1200)), LagFunction.none())
                .plan(Contour.fromSi(0, 0).lineToSi(1e-4, 0).open(), Side.LEFT);
        assertThat(dot.limit(0)).isEqualTo(FeedLimit.ACCELERATION);
        assertThat(dot.peakFeedSi(0)).isCloseTo(0.01, within(1e-15));
        assertThat(dot.timeByLimit()).containsOnlyKeys(FeedLimit.ACCELERATION);
    }

    @Test
    void aSlantedLineHasTheWeakerAxisDecide() {
        // 3 along x for 4 along y: x may run at 0.3/0.6, y at 0.2/0.8
        MachineLimits uneven = MACHINE.withAxisSpeeds(metresPerSecond(0.3), metresPerSecond(0.2))
                .withAxisAccelerations(metresPerSquareSecond(0.3), metresPerSquareSecond(2));
        FeedPlan plan = FeedPlanner.of(uneven, QualityFeeds.same(metresPerSecond(10)), LagFunction.none())
                .plan(Contour.fromSi(0, 0).lineToSi(3, 4).open(), Side.LEFT);

        assertThat(plan.allowedSi(0)).isCloseTo(0.25, within(1e-15));
        assertThat(plan.limit(0)).isEqualTo(FeedLimit.MACHINE_SPEED);
        // 0.3/0.6 = 0.5 m/s2 along the line: 5 m at 0.25 m/s, 0.5 s lost in speeding up and braking
        assertThat(Kind.TIME.si(plan.time())).isCloseTo(20.5, within(1e-12));
    }
}
