package dev.waterjet.toolpath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Offsets of random shapes against what they are: the edge of the places at which the jet keeps its distance from every edge.
 * Which places those are is found point by point.
 */
class OffsetRegionTest {

    /** Places nearer to the edge of the region are not asked: loops below 0.06 mm are left out. */
    private static final double UNSURE_M = 2.5e-5;

    /** Whether the jet may be at a place, on its side of the contour: a signed distance, above zero if it may. */
    private interface Room {
        double at(double x, double y);
    }

    private static Room uniform(Contour contour, double offsetM) {
        return (x, y) -> Plane.distance(contour, x, y) - offsetM;
    }

    /** Paths of the jet, every loop; none if it fits nowhere. */
    private static List<ToolPath> paths(KerfOffset offset, Contour contour, Side side) {
        try {
            return offset.withNarrowPlaces(KerfOffset.NarrowPlaces.SPLIT)
                    .apply(contour, side)
                    .paths();
        } catch (GeometryException refused) {
            assertThat(refused.code()).isEqualTo("jet-does-not-fit");
            return List.of();
        }
    }

    private static void assertIsEdgeOfRoom(
            Contour contour, boolean isInside, List<ToolPath> paths, Room room, double tolerance) {
        for (ToolPath path : paths) {
            for (double[] at : Plane.samples(path.contour(), 12)) {
                assertThat(room.at(at[0], at[1])).isCloseTo(0, within(tolerance));
            }
        }
        double[][] part = Plane.chords(contour);
        List<double[][]> loops =
                paths.stream().map(path -> Plane.chords(path.contour())).toList();
        Random random = new Random(contour.size());
        double size = 0.03;
        for (int k = 0; k < 450; k++) {
            double x = size * (2 * random.nextDouble() - 1);
            double y = size * (2 * random.nextDouble() - 1);
            double free = room.at(x, y);
            if (Math.abs(free) > UNSURE_M && Plane.distance(contour, x, y) > UNSURE_M) {
                boolean isFree = Plane.isInside(part, x, y) == isInside && free > 0;
                long around = loops.stream()
                        .filter(loop -> Plane.isInside(loop, x, y))
                        .count();
                assertThat(around % 2 == 1).as("%s, %s: %s", x, y, free).isEqualTo(isInside == isFree);
            }
        }
    }

    @Test
    void aRoundOffsetIsWhereTheJetKeepsItsDistance() {
        int splits = 0;
        int fitsNowhere = 0;
        for (int seed = 0; seed < 40; seed++) {
            Random random = new Random(seed);
            Optional<Contour> ring = seed % 4 == 1
                    ? Optional.of(Plane.bar(random, 4 + random.nextInt(4), 0.006, 0.012))
                    : Plane.ring(random, 3 + random.nextInt(9), 0.02, 0.4);
            if (ring.isEmpty()) {
                continue;
            }
            Contour contour = seed % 2 == 0 ? ring.get() : ring.get().reversed();
            double offset = 0.0003 + (seed % 3 == 0 ? 0.009 : 0.0015) * random.nextDouble();
            for (boolean isInside : new boolean[] {true, false}) {
                Side side = isInside
                        ? contour.enclosedSide()
                        : contour.enclosedSide().opposite();
                List<ToolPath> paths = paths(KerfOffset.of(Kind.LENGTH.of(offset)), contour, side);
                assertIsEdgeOfRoom(contour, isInside, paths, uniform(contour, offset), 2e-7);
                splits += paths.size() > 1 ? 1 : 0;
                fitsNowhere += paths.isEmpty() ? 1 : 0;
                assertThat(paths).allMatch(path -> path.partSide() == side.opposite());
            }
        }
        assertThat(splits).isGreaterThan(3);
        assertThat(fitsNowhere).isPositive();
    }

    /** Strips beside the edges, and discs: at outer corners of the wider offset, elsewhere of the narrower. */
    private static Room perEdge(Contour contour, double[] offset, int side) {
        int n = contour.size();
        EdgeCursor edge = new EdgeCursor();
        EdgeCursor next = new EdgeCursor();
        double[] disc = new double[n];
        for (int i = 0; i < n; i++) {
            contour.load(i, edge);
            contour.load((i + 1) % n, next);
            double turn = side * next.turnFrom(edge);
            double other = offset[(i + 1) % n];
            disc[i] = turn < -0.05 ? Math.max(offset[i], other) : Math.min(offset[i], other);
        }
        return (x, y) -> {
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < n; i++) {
                contour.load(i, edge);
                boolean isOnSide = side * Plane.leftOf(edge, x, y) >= 0;
                least = Math.min(least, isOnSide ? Plane.beside(edge, x, y) - offset[i] : least);
                least = Math.min(least, Math.hypot(x - edge.endX(), y - edge.endY()) - disc[i]);
            }
            return least;
        };
    }

    /** Whether the images of two edges meet at every inner corner, before the wider one ends. */
    private static boolean meet(Contour contour, double[] offset, int side) {
        EdgeCursor edge = new EdgeCursor();
        EdgeCursor next = new EdgeCursor();
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            contour.load((i + 1) % contour.size(), next);
            double turn = side * next.turnFrom(edge);
            double one = offset[i];
            double other = offset[(i + 1) % contour.size()];
            if (turn > -0.05 && Math.cos(turn) * Math.max(one, other) > Math.min(one, other)) {
                return false;
            }
        }
        return true;
    }

    @Test
    void offsetsThatDifferByEdgeAreWhereTheJetKeepsEachOfThem() {
        int paths = 0;
        for (int seed = 0; seed < 90; seed++) {
            Random random = new Random(1000 + seed);
            Optional<Contour> ring = Plane.ring(random, 3 + random.nextInt(6), 0.02, seed % 2 == 0 ? 0 : 0.3);
            double[] offset = random.doubles(12, 4e-4, 1.2e-3).toArray();
            for (Side side : ring.isEmpty() ? new Side[0] : Side.values()) {
                Contour contour = seed % 4 < 2 ? ring.get() : ring.get().reversed();
                double[] each = Arrays.copyOf(offset, contour.size());
                if (meet(contour, each, side.sign())) {
                    List<ToolPath> found =
                            paths(KerfOffset.perEdge(QuantityArray.ofSi(Kind.LENGTH, each)), contour, side);
                    assertIsEdgeOfRoom(
                            contour, side == contour.enclosedSide(), found, perEdge(contour, each, side.sign()), 5e-7);
                    paths += found.size();
                }
            }
        }
        assertThat(paths).isGreaterThan(25);
    }

    /** Any inner corner, down to none: the path keeps each offset, and goes all the way round. */
    @Test
    void differingOffsetsJoinAtCornersOfAnyAngle() {
        for (int n = 3; n < 300; n += 1 + n / 3) {
            double radius = 0.02 + 0.002 * n;
            double[][] corners = new double[n][];
            for (int i = 0; i < n; i++) {
                double angle = 2 * Math.PI * i / n + 0.4;
                corners[i] = new double[] {radius * Math.cos(angle), radius * Math.sin(angle)};
            }
            Contour polygon = Plane.polygon(corners);
            double[] offset = new Random(n).doubles(n, 0.0005, 0.0006).toArray();
            for (Side side : Side.values()) {
                Contour path = KerfOffset.perEdge(QuantityArray.ofSi(Kind.LENGTH, offset))
                        .apply(polygon, side)
                        .path()
                        .contour();
                Room room = perEdge(polygon, offset, side.sign());
                double sign = side == polygon.enclosedSide() ? -1 : 1;

                for (double[] at : Plane.samples(path, 12)) {
                    assertThat(room.at(at[0], at[1])).as("%s corners", n).isBetween(-3e-6, 1e-4);
                }
                assertThat(path.lengthSi() - polygon.lengthSi()).isCloseTo(sign * 0.0035, within(3e-3));
            }
        }
    }

    /** Corners of a polygon with tangents drawn on: from the vertex out to the tip, or to the cut across it. */
    private static Room extended(Contour contour, double d, int side) {
        int n = contour.size();
        List<double[][]> tips = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            EdgeCursor edge = new EdgeCursor();
            EdgeCursor next = new EdgeCursor();
            contour.load(i, edge);
            contour.load((i + 1) % n, next);
            double turn = next.turnFrom(edge);
            if (turn * side < 0) {
                tips.add(tip(edge, next, Math.abs(turn), d, side));
            }
        }
        return (x, y) -> {
            double free = Plane.distance(contour, x, y) - d;
            for (double[][] tip : tips) {
                double away = Plane.distance(Plane.polygon(tip), x, y);
                free = Math.min(free, Plane.isInside(tip, x, y) ? -away : away);
            }
            return free;
        };
    }

    private static double[][] tip(EdgeCursor edge, EdgeCursor next, double turn, double d, int side) {
        double dx = Math.cos(Math.atan2(edge.endY() - edge.startY(), edge.endX() - edge.startX()));
        double dy = Math.sin(Math.atan2(edge.endY() - edge.startY(), edge.endX() - edge.startX()));
        double ex = Math.cos(Math.atan2(next.endY() - next.startY(), next.endX() - next.startX()));
        double ey = Math.sin(Math.atan2(next.endY() - next.startY(), next.endX() - next.startX()));
        double x = edge.endX();
        double y = edge.endY();
        double on = turn <= Math.PI / 2
                ? d * Math.tan(turn / 2)
                : (d * Math.sqrt(2) - d * Math.cos(turn / 2)) / Math.sin(turn / 2);
        double[] one = {x - side * d * dy + on * dx, y + side * d * dx + on * dy};
        double[] other = {x - side * d * ey - on * ex, y + side * d * ex - on * ey};
        double[] atStart = {x - side * d * dy, y + side * d * dx};
        double[] atEnd = {x - side * d * ey, y + side * d * ex};
        return turn <= Math.PI / 2
                ? new double[][] {{x, y}, atStart, one, atEnd}
                : new double[][] {{x, y}, atStart, one, other, atEnd};
    }

    @Test
    void extendedCornersReachTheTipOrTheCutAcrossIt() {
        int paths = 0;
        for (int seed = 0; seed < 40; seed++) {
            Random random = new Random(2000 + seed);
            Optional<Contour> ring = seed % 4 == 1
                    ? Optional.of(Plane.bar(random, 3 + random.nextInt(3), 0.006, 0.008))
                    : Plane.ring(random, 3 + random.nextInt(5), 0.02, 0);
            if (ring.isEmpty()) {
                continue;
            }
            Contour contour = seed % 2 == 0 ? ring.get() : ring.get().reversed();
            double offset = 0.0003 + 0.0015 * random.nextDouble();
            for (Side side : Side.values()) {
                Room room = extended(contour, offset, side.sign());
                KerfOffset extended =
                        KerfOffset.of(Kind.LENGTH.of(offset)).withCorners(KerfOffset.CornerStyle.EXTENDED);
                List<ToolPath> found = paths(extended, contour, side);
                for (ToolPath path : found) {
                    for (double[] at : Plane.samples(path.contour(), 12)) {
                        assertThat(Math.max(0, -room.at(at[0], at[1]))).isCloseTo(0, within(2e-7));
                    }
                }
                assertIsEdgeOfTips(contour, side == contour.enclosedSide(), found, room);
                paths += found.size();
            }
        }
        assertThat(paths).isGreaterThan(40);
    }

    private static void assertIsEdgeOfTips(Contour contour, boolean isInside, List<ToolPath> paths, Room room) {
        double[][] part = Plane.chords(contour);
        List<double[][]> loops =
                paths.stream().map(path -> Plane.chords(path.contour())).toList();
        for (double[] near : Plane.samples(contour, 10)) {
            for (int k = 0; k < 16; k++) {
                double x = near[0] + 0.0024 * Math.cos(k + near[1]) * (k + 1) / 16;
                double y = near[1] + 0.0024 * Math.sin(k + near[1]) * (k + 1) / 16;
                double free = room.at(x, y);
                boolean isOnSide = Plane.isInside(part, x, y) == isInside;
                if (Math.abs(free) > UNSURE_M && isOnSide) {
                    long around = loops.stream()
                            .filter(loop -> Plane.isInside(loop, x, y))
                            .count();
                    assertThat(around % 2 == 1).isEqualTo(isInside == free > 0);
                }
            }
        }
    }

    /** Open lines: outside a corner the path is longer by the arc, inside shorter by twice the tangent of half the turn. */
    @Test
    void theOffsetOfAnOpenLineStartsAndEndsBesideItsEnds() {
        for (int seed = 0; seed < 40; seed++) {
            Random random = new Random(seed);
            double heading = 6 * random.nextDouble();
            double x = 0;
            double y = 0;
            double offset = 0.0002 + 0.0008 * random.nextDouble();
            Side side = seed % 2 == 0 ? Side.LEFT : Side.RIGHT;
            double expected = 0;
            double firstX = -side.sign() * offset * Math.sin(heading);
            double firstY = side.sign() * offset * Math.cos(heading);
            ContourBuilder builder = Contour.fromSi(0, 0);
            int n = 2 + random.nextInt(4);
            for (int i = 0; i < n; i++) {
                double length = 0.01 + 0.01 * random.nextDouble();
                x += length * Math.cos(heading);
                y += length * Math.sin(heading);
                builder.lineToSi(x, y);
                double turn = i + 1 < n ? 1.2 * (random.nextDouble() - 0.5) : 0;
                double bend = turn * side.sign();
                expected += length + (bend < 0 ? -bend * offset : -2 * offset * Math.tan(bend / 2));
                heading += turn;
            }
            Contour line = builder.open();
            OffsetResult result = KerfOffset.of(Kind.LENGTH.of(offset)).apply(line, side);
            Contour path = result.path().contour();

            assertThat(path.isClosed()).isFalse();
            assertThat(path.lengthSi()).isCloseTo(expected, within(1e-9));
            assertThat(Math.hypot(path.xSi(0) - firstX, path.ySi(0) - firstY)).isLessThan(1e-12);
            assertThat(path.end().xSi()).isCloseTo(x - side.sign() * offset * Math.sin(heading), within(1e-12));
            assertThat(path.end().ySi()).isCloseTo(y + side.sign() * offset * Math.cos(heading), within(1e-12));
            for (double[] at : Plane.samples(path, 12)) {
                assertThat(Plane.distance(line, at[0], at[1])).isCloseTo(offset, within(1e-9));
            }
        }
    }

    /** Every piece lies opposite the stretch of the edge that it names, along the normal. */
    @Test
    void everyPieceLiesOppositeTheStretchThatItNames() {
        EdgeCursor piece = new EdgeCursor();
        EdgeCursor edge = new EdgeCursor();
        for (int seed = 0; seed < 40; seed++) {
            Random random = new Random(3000 + seed);
            Optional<Contour> ring = Plane.ring(random, 3 + random.nextInt(6), 0.02, 0.4);
            double d = 0.0003 + 0.0005 * random.nextDouble();
            for (Side side : ring.isEmpty() ? new Side[0] : Side.values()) {
                for (ToolPath path : paths(KerfOffset.of(Kind.LENGTH.of(d)), ring.get(), side)) {
                    for (int i = 0; i < path.size(); i++) {
                        path.contour().load(i, piece);
                        ring.get().load(path.sourceEdge(i).orElseThrow(), edge);
                        double[] from = Plane.at(edge, path.sourceStart(i));
                        double[] to = Plane.at(edge, path.sourceEnd(i));

                        assertThat(path.purpose(i)).isEqualTo(ToolPath.Purpose.CUT);
                        assertThat(path.sourceEnd(i)).isGreaterThanOrEqualTo(path.sourceStart(i));
                        assertThat(Math.hypot(piece.startX() - from[0], piece.startY() - from[1]))
                                .isCloseTo(d, within(5e-6));
                        assertThat(Math.hypot(piece.endX() - to[0], piece.endY() - to[1]))
                                .isCloseTo(d, within(5e-6));
                    }
                }
            }
        }
    }
}
