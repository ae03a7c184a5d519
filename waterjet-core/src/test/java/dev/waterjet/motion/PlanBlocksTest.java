package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Blocks against the places at which edges and caps end, and their limits against sums over all parts of a motion. */
class PlanBlocksTest {

    private static final double FREE = Double.POSITIVE_INFINITY;

    /** A path, its caps and its motion. */
    private record Plan(PathPieces pieces, FeedCaps caps, MotionCurve curve, PlanBlocks blocks) {
        static Plan random(Random random, double jerk) {
            PathPieces pieces = new PathPieces(4);
            double heading = 0;
            for (int i = 0; i < 12; i++) {
                double length = 0.004 + 0.03 * random.nextDouble();
                pieces.line(length * Math.cos(heading), length * Math.sin(heading));
                heading += random.nextInt(3) == 0 ? 0 : random.nextGaussian();
            }
            FeedCaps caps = new FeedCaps();
            double at = 0;
            while (at < pieces.lengthM()) {
                at += 0.02 * random.nextDouble();
                caps.until(at, 0.02 + 0.05 * random.nextDouble(), random.nextInt(8));
                // an end on a joint, or rounding beside it, and a cap without length
                double joint = pieces.startM(random.nextInt(13));
                if (joint > at + 1e-3 && joint < at + 0.02) {
                    at = joint + (random.nextInt(3) - 1) * 1e-13;
                    caps.until(at, 0.03, 2).until(at, 0.01, 3);
                }
            }
            caps.until(FREE, 0.04, 1);
            DynamicLimits limits = new DynamicLimits(
                    AxisLimits.NONE, AxisLimits.NONE, new PathLimits(0.3, FREE, jerk, FREE), CornerRule.arc(1e-4));
            MotionCurve curve = MotionSolver.solve(pieces, caps, limits, MotionSettings.defaults());
            return new Plan(pieces, caps, curve, new PlanBlocks(pieces, caps, curve));
        }

        int piece(double at) {
            int piece = 0;
            while (pieces.startM(piece + 1) < at) {
                piece++;
            }
            return piece;
        }

        int cap(double at) {
            int cap = 0;
            while (caps.untilM(cap) < at) {
                cap++;
            }
            return cap;
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void aBlockEndsWhereAnEdgeOrACapEnds(long seed) {
        Plan plan = Plan.random(new Random(seed), FREE);
        TreeSet<Double> ends = new TreeSet<>();
        for (int i = 1; i <= plan.pieces.count(); i++) {
            ends.add(plan.pieces.startM(i));
        }
        for (int i = 0; i < plan.caps.count(); i++) {
            double end = plan.caps.untilM(i);
            Double near = ends.floor(end + 1e-11);
            if (end < plan.pieces.lengthM() && (near == null || near < end - 1e-11)) {
                ends.add(end);
            }
        }
        PlanBlocks blocks = plan.blocks;
        assertThat(blocks.count()).isEqualTo(ends.size());
        int i = 0;
        for (double end : ends) {
            double middle = (blocks.startM(i) + end) / 2;
            assertThat(blocks.endM(i)).isCloseTo(end, within(1e-11));
            assertThat(blocks.edge(i)).isEqualTo(plan.piece(middle));
            assertThat(blocks.allowed(i)).isEqualTo(plan.caps.feedMPerS(plan.cap(middle)));
            assertThat(blocks.code(i)).isEqualTo(plan.caps.code(plan.cap(middle)));
            assertThat(blocks.at(middle)).isEqualTo(i);
            assertThat(blocks.at(blocks.startM(i))).isEqualTo(i);
            assertThat(blocks.shareOf(blocks.edge(i), middle))
                    .isCloseTo(
                            (middle - plan.pieces.startM(blocks.edge(i))) / plan.pieces.lengthM(blocks.edge(i)),
                            within(1e-12));
            boolean isFirst = i == 0 || blocks.edge(i - 1) != blocks.edge(i);
            assertThat(blocks.firstOfEdge(blocks.edge(i)) == i).isEqualTo(isFirst);
            i++;
        }
        assertThat(blocks.at(plan.pieces.lengthM())).isEqualTo(blocks.count() - 1);
        assertThat(blocks.shareOf(0, -1)).isZero();
        assertThat(blocks.shareOf(0, 100)).isEqualTo(1);
    }

    /** At 0.98 of the cap or more the cap governs, below it the limit of the motion; most of the time that of the block. */
    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14, 15, 16})
    void timesOfLimitsAreSumsOverPartsOfTheMotion(long seed) {
        Plan plan = Plan.random(new Random(seed), seed % 2 == 0 ? FREE : 5);
        PlanBlocks blocks = plan.blocks;
        MotionCurve curve = plan.curve;
        Map<FeedLimit, Double> total = new EnumMap<>(FeedLimit.class);
        for (int i = 0; i < blocks.count(); i++) {
            Map<FeedLimit, Double> own = new EnumMap<>(FeedLimit.class);
            for (int k = 0; k < curve.intervals(); k++) {
                double from = Math.max(blocks.startM(i), curve.placeM(k));
                double to = Math.min(blocks.endM(i), curve.placeM(k + 1));
                if (to > from) {
                    double time = curve.timeIn(k, to) - curve.timeIn(k, from);
                    boolean isAtCap = (to - from) / time >= 0.98 * blocks.allowed(i);
                    own.merge(FeedLimit.ofCode(isAtCap ? blocks.code(i) : curve.limitCode(k)), time, Double::sum);
                }
            }
            own.forEach((limit, time) -> total.merge(limit, time, Double::sum));
            double most = Collections.max(own.values());
            assertThat(own.get(blocks.limits().ofBlock(i))).isCloseTo(most, within(1e-9));
        }
        for (FeedLimit limit : FeedLimit.values()) {
            assertThat(blocks.limits().timeS(limit))
                    .as(limit.label())
                    .isCloseTo(total.getOrDefault(limit, 0.0), within(1e-9));
        }
    }

    /** A motion that runs at 0.98 of the cap is under the cap, whatever limit it names itself. */
    @Test
    void nearTheCapTheCapGoverns() {
        PathPieces pieces = new PathPieces(1).line(1, 0);
        FeedCaps caps = FeedCaps.same(0.1, 2);
        MotionCurve curve = new MotionCurve(4);
        byte jerk = GoverningLimit.PATH_JERK.code();
        curve.add(0.1, 0.01, GoverningLimit.PATH_ACCELERATION.code());
        curve.add(0.5, 0.0985 * 0.0985, jerk);
        curve.add(0.6, 0.0975 * 0.0975, jerk);
        curve.add(0.9, 0.0975 * 0.0975, jerk);
        curve.add(1, 0, GoverningLimit.Y_ACCELERATION.code());
        PlanBlocks blocks = new PlanBlocks(pieces, caps, curve);

        double atCap = curve.timeAt(0.6) - curve.timeAt(0.1);
        double below = curve.timeAt(0.9) - curve.timeAt(0.6);
        assertThat(blocks.limits().timeS(FeedLimit.ofCode((byte) 2))).isCloseTo(atCap, within(1e-9));
        assertThat(blocks.limits().timeS(FeedLimit.JERK)).isCloseTo(below, within(1e-9));
        assertThat(blocks.limits().timeS(FeedLimit.ACCELERATION))
                .isCloseTo(curve.timeS() - atCap - below, within(1e-9));
        assertThat(blocks.limits().ofBlock(0)).isEqualTo(FeedLimit.ofCode((byte) 2));
    }

    @Test
    void blocksOfOneEdgeAreJoined() {
        PathPieces pieces = new PathPieces(2).arc(1, 0, 0.05, -2).line(0.1 * Math.cos(-2), 0.1 * Math.sin(-2));
        FeedCaps caps = new FeedCaps()
                .until(0.02, 0.03, 1)
                .until(0.05, 0.01, 4)
                .until(0.09, 0.05, 2)
                .until(FREE, 0.02, 3);
        DynamicLimits limits = new DynamicLimits(
                AxisLimits.NONE, AxisLimits.NONE, PathLimits.ofAcceleration(0.3), CornerRule.arc(1e-4));
        MotionCurve curve = MotionSolver.solve(pieces, caps, limits, MotionSettings.defaults());
        PlanBlocks blocks = new PlanBlocks(pieces, caps, curve);
        double endX = 0.05 * Math.sin(2);
        double endY = -0.05 + 0.05 * Math.cos(2);
        ContourBuilder builder = Contour.fromSi(0, 0).arcToSi(endX, endY, 0, -0.05, Side.RIGHT);
        Contour path = builder.lineToSi(endX + 0.1 * Math.cos(-2), endY + 0.1 * Math.sin(-2))
                .open();
        PlanBlock block = blocks.block(path, 1, 2);

        assertThat(block.edge()).isZero();
        assertThat(Kind.LENGTH.si(block.startsAt())).isCloseTo(0.02, within(1e-12));
        assertThat(Kind.LENGTH.si(block.length())).isCloseTo(0.07, within(1e-12));
        assertThat(Kind.TIME.si(block.time())).isCloseTo(curve.timeAt(0.09) - curve.timeAt(0.02), within(1e-9));
        assertThat(Kind.SPEED.si(block.entryFeed())).isCloseTo(curve.feedAt(0.02), within(1e-12));
        assertThat(Kind.SPEED.si(block.exitFeed())).isCloseTo(curve.feedAt(0.09), within(1e-12));
        assertThat(Kind.SPEED.si(block.peakFeed())).isCloseTo(0.05, within(1e-12));
        assertThat(Kind.SPEED.si(block.allowedFeed())).isCloseTo(0.05, within(1e-12));
        // 30 mm at 10 mm/s take longer than the 40 mm at up to 50 mm/s
        assertThat(block.limit()).isEqualTo(FeedLimit.ofCode((byte) 4));
        assertThat(block.turn()).contains(Side.RIGHT);
        assertThat(Kind.LENGTH.si(block.centre().orElseThrow().distance(Point.ofSi(0, -0.05))))
                .isCloseTo(0, within(1e-12));
        assertThat(Kind.LENGTH.si(
                        block.start().distance(Point.ofSi(0.05 * Math.sin(0.4), -0.05 + 0.05 * Math.cos(0.4)))))
                .isCloseTo(0, within(1e-9));
        assertThat(Kind.LENGTH.si(block.end().distance(Point.ofSi(0.05 * Math.sin(1.8), -0.05 + 0.05 * Math.cos(1.8)))))
                .isCloseTo(0, within(1e-9));
        PlanBlock line = blocks.block(path, 4, 4);
        assertThat(line.edge()).isEqualTo(1);
        assertThat(line.turn()).isEmpty();
        assertThat(line.centre()).isEmpty();
        assertThat(line.start()).isEqualTo(Point.ofSi(endX, endY));
        assertThat(line.end()).isEqualTo(path.end());
        assertThat(Kind.SPEED.si(line.meanFeed())).isCloseTo(0.1 / (curve.timeS() - curve.timeAt(0.1)), within(1e-9));
    }
}
