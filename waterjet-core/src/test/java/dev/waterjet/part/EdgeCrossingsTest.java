package dev.waterjet.part;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Crossings, distances and windings of edges against searches along the edges. */
class EdgeCrossingsTest {

    private final double[] places = new double[4];

    private static EdgeCursor random(Random random, double size) {
        EdgeCursor edge = new EdgeCursor();
        double x = size * random.nextDouble();
        double y = size * random.nextDouble();
        if (random.nextBoolean()) {
            edge.line(x, y, size * random.nextDouble(), size * random.nextDouble());
        } else {
            double r = size * (0.1 + random.nextDouble());
            double from = 6.28 * random.nextDouble();
            double sweep = (random.nextBoolean() ? 1 : -1) * (0.2 + 5.9 * random.nextDouble());
            double cx = x - r * Math.cos(from);
            double cy = y - r * Math.sin(from);
            edge.arc(x, y, cx + r * Math.cos(from + sweep), cy + r * Math.sin(from + sweep), cx, cy, sweep);
        }
        return edge;
    }

    /** Which side of the line or circle of an edge a point lies on; relative to the size of the edge. */
    private static double side(EdgeCursor edge, double x, double y) {
        return edge.isArc()
                ? Math.hypot(x - edge.centreX(), y - edge.centreY()) / edge.radius() - 1
                : (edge.endX() - edge.startX()) * (y - edge.startY())
                        - (x - edge.startX()) * (edge.endY() - edge.startY());
    }

    /** Places at which one edge passes from side to side of the other's line or circle, and lies on the other. */
    private static List<double[]> passages(EdgeCursor edge, EdgeCursor other, double size) {
        List<double[]> found = new ArrayList<>();
        int n = 600;
        for (int i = 0; i < n; i++) {
            double from = (double) i / n;
            double to = (i + 1.0) / n;
            double atStart = side(other, edge.xAt(from), edge.yAt(from));
            if (atStart * side(other, edge.xAt(to), edge.yAt(to)) < 0) {
                for (int halving = 0; halving < 50; halving++) {
                    double middle = (from + to) / 2;
                    boolean isBefore = atStart * side(other, edge.xAt(middle), edge.yAt(middle)) > 0;
                    from = isBefore ? middle : from;
                    to = isBefore ? to : middle;
                }
                double x = edge.xAt(from);
                double y = edge.yAt(from);
                if (nearest(other, x, y) < 1e-3 * size && other.distance(x, y) < 1e-9 * size) {
                    found.add(new double[] {x, y});
                }
            }
        }
        return found;
    }

    private static double nearest(EdgeCursor edge, double x, double y) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= 4000; i++) {
            least = Math.min(least, Math.hypot(edge.xAt(i / 4000.0) - x, edge.yAt(i / 4000.0) - y));
        }
        return least;
    }

    /** Edges of metres and of tenths of a millimetre. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 1e-4})
    void crossingsAreThePassagesOfOneEdgeThroughTheOther(double size) {
        Random random = new Random(21);
        int two = 0;
        for (int round = 0; round < 300; round++) {
            EdgeCursor a = random(random, size);
            EdgeCursor b = random(random, size);
            List<double[]> expected = passages(a, b, size);
            int count = a.crossings(b, places);
            assertThat(count).isEqualTo(expected.size());
            for (double[] place : expected) {
                double least = Math.hypot(places[0] - place[0], places[1] - place[1]);
                least = count > 1 ? Math.min(least, Math.hypot(places[2] - place[0], places[3] - place[1])) : least;
                assertThat(least).isLessThan(1e-9 * size);
            }
            two += count == 2 ? 1 : 0;
            double sampled = nearestPair(a, b);
            double apart = EdgeKernel.distance(a, b, places);
            assertThat(apart).isBetween(sampled - 0.02 * size, sampled + 1e-12);
            assertThat(apart == 0).isEqualTo(count > 0);
        }
        assertThat(two).isGreaterThan(4);
    }

    private static double nearestPair(EdgeCursor a, EdgeCursor b) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= 300; i++) {
            least = Math.min(least, b.distance(a.xAt(i / 300.0), a.yAt(i / 300.0)));
            least = Math.min(least, a.distance(b.xAt(i / 300.0), b.yAt(i / 300.0)));
        }
        return least;
    }

    /** Exact distances where the nearest places are inner ones: beyond a line, outside and inside circles. */
    @Test
    void distancesBetweenInnerPlacesAreThoseOfRadiiAndCentres() {
        EdgeCursor arc = new EdgeCursor();
        EdgeCursor other = new EdgeCursor();
        for (int turn = -1; turn <= 1; turn += 2) {
            // upper half of a circle of 2 about (1, 1)
            arc.arc(1 + 2 * turn, 1, 1 - 2 * turn, 1, 1, 1, turn * Math.PI);
            other.line(-5, 4.5, 7, 4.5);
            assertThat(EdgeKernel.distance(arc, other, places)).isCloseTo(1.5, within(1e-15));
            assertThat(EdgeKernel.distance(other, arc, places)).isCloseTo(1.5, within(1e-15));
            other.line(1, 2.4, 1.2, 2.4);
            assertThat(EdgeKernel.distance(arc, other, places)).isCloseTo(2 - Math.hypot(0.2, 1.4), within(1e-15));
            // lower half of a circle of 1 about (4, 6), outside; and a whole one within
            other.arc(3, 6, 5, 6, 4, 6, Math.PI);
            assertThat(EdgeKernel.distance(arc, other, places)).isCloseTo(Math.hypot(3, 5) - 3, within(1e-14));
            assertThat(EdgeKernel.distance(other, arc, places)).isCloseTo(Math.hypot(3, 5) - 3, within(1e-14));
            other.arc(1.5, 1.5, 1.5, 1.5, 1, 1.5, -2 * Math.PI);
            assertThat(EdgeKernel.distance(arc, other, places)).isCloseTo(1, within(1e-14));
            assertThat(EdgeKernel.distance(other, arc, places)).isCloseTo(1, within(1e-14));
            // of one centre, side by side and not
            other.arc(1, 4, -2, 1, 1, 1, Math.PI / 2);
            assertThat(EdgeKernel.distance(arc, other, places)).isCloseTo(1, within(1e-14));
            other.arc(1, -2, 2.5, 1 - Math.sqrt(6.75), 1, 1, Math.PI / 6);
            double ofEnds = Math.hypot(3 - 2.5, Math.sqrt(6.75));
            assertThat(EdgeKernel.distance(arc, other, places)).isCloseTo(ofEnds, within(1e-14));
        }
    }

    @Test
    void edgesMeetAtTheirEndsAndWhereTheyTouch() {
        EdgeCursor a = new EdgeCursor();
        EdgeCursor b = new EdgeCursor();
        a.line(0, 0, 2, 0);
        for (double x : new double[] {0, 1, 2}) {
            b.line(x, 0, x + 0.5, 3);
            assertThat(a.crossings(b, places)).isEqualTo(1);
            assertThat(places[0]).isCloseTo(x, within(1e-15));
            assertThat(b.crossings(a, places)).isEqualTo(1);
        }
        for (double x : new double[] {-1e-6, 2 + 1e-6}) {
            b.line(x, -1, x, 1);
            assertThat(a.crossings(b, places)).isZero();
            assertThat(b.crossings(a, places)).isZero();
        }
        // a circle on the line; a line that ends on a circle, from outside and inside
        b.arc(2, 1, 2, 1, 1, 1, 2 * Math.PI);
        assertThat(a.crossings(b, places)).isEqualTo(1);
        assertThat(places[0]).isCloseTo(1, within(1e-15));
        assertThat(places[1]).isCloseTo(0, within(1e-15));
        a.line(5, 1, 2, 1);
        assertThat(a.crossings(b, places)).isEqualTo(1);
        assertThat(places[0]).isCloseTo(2, within(1e-15));
        a.line(1.5, 1, 2, 1);
        assertThat(b.crossings(a, places)).isEqualTo(1);
        a.line(1.5, 1, 1.9, 1);
        assertThat(b.crossings(a, places)).isZero();
        a.line(0, 2 + 1e-6, 9, 2 + 1e-6);
        assertThat(b.crossings(a, places)).isZero();
        // two circles that touch from outside, and one within the other
        a.arc(4, 1, 4, 1, 3, 1, 2 * Math.PI);
        assertThat(b.crossings(a, places)).isEqualTo(1);
        assertThat(places[0]).isCloseTo(2, within(1e-12));
        a.arc(2, 1, 2, 1, 1.5, 1, 2 * Math.PI);
        assertThat(b.crossings(a, places)).isEqualTo(1);
        a.arc(1.9, 1, 1.9, 1, 1.5, 1, 2 * Math.PI);
        assertThat(b.crossings(a, places)).isZero();
        assertThat(a.crossings(b, places)).isZero();
    }

    /** Arcs of one circle share a stretch, or only an end. */
    @Test
    void arcsOfOneCircleShareTheEndsOfTheirCommonStretch() {
        EdgeCursor a = new EdgeCursor();
        EdgeCursor b = new EdgeCursor();
        for (int turn = -1; turn <= 1; turn += 2) {
            a.arc(2, 0, -2, 0, 0, 0, turn * Math.PI);
            double from = Math.PI * 0.75;
            b.arc(2 * Math.cos(from), turn * 2 * Math.sin(from), 0, -2 * turn, 0, 0, turn * 0.75 * Math.PI);
            assertThat(a.crossings(b, places)).isEqualTo(2);
            assertThat(places[0]).isCloseTo(-2, within(1e-9));
            assertThat(places[2]).isCloseTo(2 * Math.cos(from), within(1e-9));
            assertThat(places[3]).isCloseTo(turn * 2 * Math.sin(from), within(1e-9));
            assertThat(EdgeKernel.distance(a, b, places)).isZero();
            b.arc(2 * Math.cos(4), turn * 2 * Math.sin(4), 0, -2 * turn, 0, 0, turn * (1.5 * Math.PI - 4));
            assertThat(a.crossings(b, places)).isZero();
            assertThat(EdgeKernel.distance(a, b, places)).isCloseTo(4 * Math.sin((4 - Math.PI) / 2), within(1e-12));
        }
    }

    @Test
    void theMiddleOfAChordOfANotchIsOutsideInAnyDirection() {
        for (int quarter = 0; quarter < 4; quarter++) {
            // a square with a notch half round in its right side
            Contour notched = Contour.fromSi(-4, -4)
                    .lineToSi(4, -4)
                    .lineToSi(4, -2)
                    .arcToSi(4, 2, 4, 0, Side.RIGHT)
                    .lineToSi(4, 4)
                    .lineToSi(-4, 4)
                    .close()
                    .rotatedBy(Kind.ANGLE.of(quarter * Math.PI / 2));
            double x = Math.rint(Math.cos(quarter * Math.PI / 2));
            double y = Math.rint(Math.sin(quarter * Math.PI / 2));
            for (Contour contour : new Contour[] {notched, notched.reversed()}) {
                for (double off : new double[] {-1.5, 0, 1}) {
                    assertThat(contour.isAround(Point.ofSi(4 * x - off * y, 4 * y + off * x)))
                            .isFalse();
                }
                assertThat(contour.isAround(Point.ofSi(1.9 * x, 1.9 * y))).isTrue();
                assertThat(contour.isAround(Point.ofSi(4.1 * x, 4.1 * y))).isFalse();
            }
        }
    }

    /** Number of turns of the direction from a point to a path, by steps along it. */
    private static int turns(Contour contour, double x, double y) {
        EdgeCursor edge = new EdgeCursor();
        double sum = 0;
        double before = Double.NaN;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            for (int k = 0; k <= 60; k++) {
                double at = Math.atan2(edge.yAt(k / 60.0) - y, edge.xAt(k / 60.0) - x);
                sum += Double.isNaN(before) ? 0 : Math.IEEEremainder(at - before, 2 * Math.PI);
                before = at;
            }
        }
        return (int) Math.rint(sum / (2 * Math.PI));
    }

    /** Points level with vertices and beside arcs, within contours that wind more than once and in both directions. */
    @Test
    void theWindingNumberIsTheNumberOfTurns() {
        Random random = new Random(4);
        int[] seen = new int[9];
        for (int round = 0; round < 80; round++) {
            ContourBuilder builder = Contour.fromSi(random.nextInt(5), random.nextInt(5));
            int x = -1;
            int y = -1;
            for (int i = 0; i < 6; i++) {
                int toX = random.nextInt(5);
                int toY = random.nextInt(5);
                if (toX == x && toY == y) {
                    toX++;
                }
                if (i > 0 && random.nextBoolean()) {
                    // half a turn about the middle
                    Side turn = random.nextBoolean() ? Side.LEFT : Side.RIGHT;
                    builder.arcToSi(toX, toY, (x + toX) / 2.0, (y + toY) / 2.0, turn);
                } else if (i > 0) {
                    builder.lineToSi(toX, toY);
                } else {
                    builder = Contour.fromSi(toX, toY);
                }
                x = toX;
                y = toY;
            }
            Contour contour;
            try {
                contour = builder.close();
            } catch (GeometryException e) {
                continue;
            }
            EdgeTree tree = EdgeTree.of(contour);
            for (int i = 0; i < 40; i++) {
                double px = (random.nextInt(28) - 4) / 4.0;
                double py = (random.nextInt(28) - 4) / 4.0;
                if (tree.distance(px, py, 9, tree.walk(), new EdgeCursor()) > 0.05) {
                    int turns = turns(contour, px, py);
                    assertThat(ContourGeometry.winding(contour, px, py)).isEqualTo(turns);
                    assertThat(contour.isAround(Point.ofSi(px, py))).isEqualTo(turns != 0);
                    seen[4 + turns]++;
                }
            }
        }
        assertThat(seen[3]).isGreaterThan(100);
        assertThat(seen[5]).isGreaterThan(100);
        assertThat(seen[2] + seen[6]).isGreaterThan(5);
    }
}
