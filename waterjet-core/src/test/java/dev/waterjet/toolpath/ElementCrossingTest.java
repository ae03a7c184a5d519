package dev.waterjet.toolpath;

import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.part.EdgeCursor;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Shared points of lines and arcs against a walk along one of them that looks when it changes the side of the other. */
class ElementCrossingTest {

    private static final int STEPS = 3000;

    private static EdgeCursor line(double x0, double y0, double x1, double y1) {
        EdgeCursor edge = new EdgeCursor();
        edge.line(x0, y0, x1, y1);
        return edge;
    }

    private static EdgeCursor arc(double cx, double cy, double radius, double start, double sweep) {
        EdgeCursor edge = new EdgeCursor();
        edge.arc(
                cx + radius * Math.cos(start),
                cy + radius * Math.sin(start),
                cx + radius * Math.cos(start + sweep),
                cy + radius * Math.sin(start + sweep),
                cx,
                cy,
                sweep);
        return edge;
    }

    private static List<double[]> points(EdgeCursor a, EdgeCursor b) {
        ElementCrossing crossing = new ElementCrossing();
        crossing.find(a, b);
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i < crossing.count; i++) {
            points.add(new double[] {crossing.x[i], crossing.y[i]});
        }
        return points;
    }

    private static void assertPoints(EdgeCursor a, EdgeCursor b, double[]... expected) {
        for (List<double[]> found : List.of(points(a, b), points(b, a))) {
            assertThat(found).hasSameSizeAs(expected);
            for (double[] at : expected) {
                assertThat(found).anyMatch(one -> Math.hypot(one[0] - at[0], one[1] - at[1]) < 1e-8);
            }
        }
    }

    /** Where a walk along one element passes the line or circle of the other, within that one's ends. */
    private static List<double[]> walk(EdgeCursor on, EdgeCursor other) {
        List<double[]> found = new ArrayList<>();
        for (int k = 0; k < STEPS; k++) {
            double low = (double) k / STEPS;
            double high = (k + 1.0) / STEPS;
            if (side(on, other, low) * side(on, other, high) > 0) {
                continue;
            }
            for (int half = 0; half < 50; half++) {
                double middle = (low + high) / 2;
                if (side(on, other, low) * side(on, other, middle) <= 0) {
                    high = middle;
                } else {
                    low = middle;
                }
            }
            double[] at = Plane.at(on, low);
            if (Plane.distance(other, at[0], at[1]) < 1e-10) {
                found.add(at);
            }
        }
        return found;
    }

    private static double side(EdgeCursor on, EdgeCursor other, double share) {
        double[] at = Plane.at(on, share);
        return Plane.leftOf(other, at[0], at[1]);
    }

    private static EdgeCursor random(Random random) {
        double x = 0.02 * random.nextDouble();
        double y = 0.02 * random.nextDouble();
        double sign = random.nextBoolean() ? 1 : -1;
        return random.nextBoolean()
                ? line(x, y, 0.02 * random.nextDouble(), 0.02 * random.nextDouble())
                : arc(
                        x,
                        y,
                        0.002 + 0.01 * random.nextDouble(),
                        7 * random.nextDouble() - 3,
                        sign * (0.3 + 5.9 * random.nextDouble()));
    }

    @Test
    void crossingsAreWhereAWalkPassesTheOtherElement() {
        Random random = new Random(12);
        int[] seen = new int[3];
        for (int round = 0; round < 400; round++) {
            EdgeCursor a = random(random);
            EdgeCursor b = random(random);
            List<double[]> expected = walk(a, b);
            assertPoints(a, b, expected.toArray(new double[0][]));
            seen[expected.size()]++;
        }
        assertThat(seen[0]).isGreaterThan(50);
        assertThat(seen[1]).isGreaterThan(50);
        assertThat(seen[2]).isGreaterThan(8);
    }

    /** An end on the other element counts, if it is off by less than the tolerance; one that is off by more does not. */
    @Test
    void anEndOnTheOtherElementIsShared() {
        double touch = ElementCrossing.TOUCH_M;
        for (double turn = 0; turn < 6; turn += 0.7) {
            EdgeCursor base = turned(line(0, 0, 0.01, 0), turn);
            EdgeCursor bow = arc(0.002, 0.003, 0.005, turn, 2);
            double[] on = Plane.at(base, 0.3);
            double[] onBow = Plane.at(bow, 0.3);
            for (double off : new double[] {-0.9 * touch, 0, 0.9 * touch}) {
                assertPoints(base, standing(base, on, off), on);
                assertPoints(bow, radial(bow, onBow, off), onBow);
            }
            assertPoints(base, standing(base, on, 1.2 * touch));
            assertPoints(bow, radial(bow, onBow, 1.2 * touch));
        }
    }

    private static EdgeCursor turned(EdgeCursor edge, double turn) {
        double cos = Math.cos(turn);
        double sin = Math.sin(turn);
        return line(
                edge.startX() * cos - edge.startY() * sin,
                edge.startX() * sin + edge.startY() * cos,
                edge.endX() * cos - edge.endY() * sin,
                edge.endX() * sin + edge.endY() * cos);
    }

    private static EdgeCursor standing(EdgeCursor base, double[] on, double off) {
        double length = Math.hypot(base.endX() - base.startX(), base.endY() - base.startY());
        double nx = -(base.endY() - base.startY()) / length;
        double ny = (base.endX() - base.startX()) / length;
        return line(on[0] + off * nx, on[1] + off * ny, on[0] + 0.004 * nx, on[1] + 0.004 * ny);
    }

    private static EdgeCursor radial(EdgeCursor bow, double[] on, double off) {
        double nx = (on[0] - bow.centreX()) / bow.radius();
        double ny = (on[1] - bow.centreY()) / bow.radius();
        return line(on[0] + 0.004 * nx, on[1] + 0.004 * ny, on[0] + off * nx, on[1] + off * ny);
    }

    @Test
    void elementsOnOneLineShareTheEndsOfTheirCommonStretch() {
        for (double turn = 0; turn < 6; turn += 0.9) {
            EdgeCursor base = turned(line(0, 0, 0.01, 0), turn);
            double[] start = Plane.at(base, 0);
            double[] end = Plane.at(base, 1);
            double[] early = Plane.at(base, 0.4);
            double[] late = Plane.at(base, 0.7);
            double[] beyond = Plane.at(base, 1.5);
            double[] farther = Plane.at(base, 2);

            assertPoints(base, line(early[0], early[1], beyond[0], beyond[1]), early, end);
            assertPoints(base, line(late[0], late[1], early[0], early[1]), early, late);
            assertPoints(base, line(end[0], end[1], beyond[0], beyond[1]), end);
            assertPoints(base, line(end[0], end[1], start[0], start[1]), start, end);
            assertPoints(base, line(beyond[0], beyond[1], farther[0], farther[1]));
            assertPoints(base, turned(line(0, 2e-9, 0.01, 2e-9), turn));
        }
    }

    @Test
    void arcsOfOneCircleShareTheEndsOfTheirCommonStretch() {
        for (double start = -3; start < 3; start += 0.7) {
            EdgeCursor base = arc(0.001, 0.002, 0.003, start, 2);
            double[] from = Plane.at(base, 0);
            double[] to = Plane.at(base, 1);

            assertPoints(base, arc(0.001, 0.002, 0.003, start + 1, 2), Plane.at(base, 0.5), to);
            assertPoints(base, arc(0.001, 0.002, 0.003, start + 1, -2), Plane.at(base, 0.5), from);
            assertPoints(base, arc(0.001, 0.002, 0.003, start + 2, 3), to);
            assertPoints(base, arc(0.001, 0.002, 0.003, start + 2, 2 * Math.PI - 2), from, to);
            // both ends of each lie on the other
            assertPoints(
                    base,
                    arc(0.001, 0.002, 0.003, start + 1.5, 5),
                    from,
                    to,
                    Plane.at(base, 0.75),
                    Plane.at(base, (6.5 - 2 * Math.PI) / 2));
            assertPoints(base, arc(0.001, 0.002, 0.003, start + 2.5, 2));
            assertPoints(base, arc(0.001, 0.002, 0.0031, start, 2));
        }
    }

    /** Tangents: one point within the tolerance, two that are farther apart than it a little deeper, none a little off. */
    @Test
    void aTouchIsOnePoint() {
        double r = 0.004;
        for (double turn = 0.1; turn < 6; turn += 0.8) {
            double x = r * Math.cos(turn);
            double y = r * Math.sin(turn);
            EdgeCursor circle = arc(0, 0, r, turn - 2, 4);
            for (double off : new double[] {0, 9e-10}) {
                assertOnePoint(circle, tangent(x, y, turn, off, r), x, y);
                assertOnePoint(circle, arc(x * 2.5 + off * x / r, y * 2.5 + off * y / r, 1.5 * r, turn + 2, 2.2), x, y);
                assertOnePoint(circle, arc(x / 2 - off * x / r, y / 2 - off * y / r, r / 2, turn - 1, 2.2), x, y);
            }
            assertPoints(circle, tangent(x, y, turn, 1.2e-9, r));
            assertPoints(circle, arc(x * 2.5 + 2e-9 * x / r, y * 2.5 + 2e-9 * y / r, 1.5 * r, turn + 2, 2.2));
            assertPoints(circle, arc(x / 2 - 2e-9 * x / r, y / 2 - 2e-9 * y / r, r / 2, turn - 1, 2.2));
            assertThat(points(circle, tangent(x, y, turn, -1e-6, r))).hasSize(2);
        }
    }

    private static EdgeCursor tangent(double x, double y, double turn, double off, double r) {
        double px = x * (1 + off / r);
        double py = y * (1 + off / r);
        return line(px + r * Math.sin(turn), py - r * Math.cos(turn), px - r * Math.sin(turn), py + r * Math.cos(turn));
    }

    private static void assertOnePoint(EdgeCursor a, EdgeCursor b, double x, double y) {
        for (List<double[]> found : List.of(points(a, b), points(b, a))) {
            assertThat(found)
                    .singleElement()
                    .satisfies(
                            at -> assertThat(Math.hypot(at[0] - x, at[1] - y)).isLessThan(2e-9));
        }
    }
}
