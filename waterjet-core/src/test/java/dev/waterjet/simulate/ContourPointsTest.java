package dev.waterjet.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Points along a contour, and the room of the part behind each, against geometry. */
class ContourPointsTest {

    private static final double OFFSET = 0.5e-3;

    /** Left turns at (40, 0), (40, 25) and (0, 25), an arc of 8 mm to the right, closed with a left turn at the start. */
    private static Contour closed() {
        return Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(40, 0))
                .lineTo(Point.millimetres(40, 25))
                .lineTo(Point.millimetres(0, 25))
                .lineTo(Point.millimetres(0, 16))
                .arcTo(Point.millimetres(0, 8), Point.millimetres(-3, 12), Side.RIGHT)
                .close();
    }

    private static ContourPoints points(Contour contour, int sign, ContourPoints.Spacing spacing) {
        double[] offset = new double[contour.size()];
        Arrays.fill(offset, OFFSET);
        return new ContourPoints(contour, sign, spacing, offset);
    }

    private static double start(Contour contour, int edge) {
        EdgeCursor cursor = new EdgeCursor();
        double start = 0;
        for (int i = 0; i < edge; i++) {
            contour.load(i, cursor);
            start += cursor.length();
        }
        return start;
    }

    /** On the outside of a convex part no corner has a fillet: all points lie on their edges at their distances. */
    @ParameterizedTest
    @ValueSource(ints = {1, -1})
    void pointsLieOnTheirEdgesWithNormalsToTheSide(int sign) {
        Contour part = closed();
        ContourPoints points = points(part, sign, ContourPoints.Spacing.even(0.4e-3));
        EdgeCursor edge = new EdgeCursor();
        int on = 0;
        for (int i = 0; i < points.count; i++) {
            part.load(points.edge[i], edge);
            double share = (points.distance[i] - start(part, points.edge[i])) / edge.length();
            double away = Math.hypot(points.x[i] - edge.xAt(share), points.y[i] - edge.yAt(share));
            assertThat(Math.hypot(points.normalX[i], points.normalY[i])).isCloseTo(1, within(1e-12));
            if (share > 1e-9 && share < 1 - 1e-9) {
                on++;
                assertThat(away).isLessThan(1e-12);
                double left =
                        edge.directionXAt(share) * points.normalY[i] - edge.directionYAt(share) * points.normalX[i];
                assertThat(left).isCloseTo(sign, within(1e-12));
            } else {
                // a place on a fillet has the distance of its corner, and the jet does not reach the corner
                assertThat(away).isBetween(0.01 * OFFSET, 3 * OFFSET);
            }
        }
        assertThat(on).isBetween((int) (part.lengthSi() / 0.4e-3) - 60, (int) (part.lengthSi() / 0.4e-3) + 12);
        assertThat(on == points.count).isEqualTo(sign < 0 && !hasReentrant(part, sign));
    }

    private static boolean hasReentrant(Contour part, int sign) {
        EdgeCursor before = new EdgeCursor();
        EdgeCursor after = new EdgeCursor();
        for (int i = 0; i < part.size(); i++) {
            part.load(i, before);
            part.load((i + 1) % part.size(), after);
            if (after.turnFrom(before) * sign > 0.03) {
                return true;
            }
        }
        return false;
    }

    /** Each point is in the middle of its step: steps add up to the edge, and all but the last are alike. */
    @ParameterizedTest
    @CsvSource({"0.4, 100", "0.37, 100", "3, 10", "25, 1", "0.0401, 990"})
    void stepsFillALine(double spacingMm, int least) {
        Contour line = Contour.fromSi(1, 2).lineToSi(1.024, 2.032).open();
        ContourPoints points = points(line, 1, ContourPoints.Spacing.even(spacingMm * 1e-3));
        double at = 0;
        double step = 0;
        for (int i = 0; i < points.count; i++) {
            step = 2 * (points.distance[i] - at);
            at += step;
            if (i < points.count - 1) {
                assertThat(step).isCloseTo(spacingMm * 1e-3, within(1e-12));
            }
        }
        assertThat(at).isCloseTo(40e-3, within(1e-12));
        assertThat(step / (spacingMm * 1e-3)).isBetween(0.5, 1.5 + 1e-9);
        assertThat(points.count).isGreaterThanOrEqualTo(least);
    }

    /** Wide on a line, a twentieth of the radius or the spacing of arcs on an arc, closest within 2 mm of corners. */
    @Test
    void pointsAreCloserOnArcsAndAtCorners() {
        Contour part = closed();
        ContourPoints points = points(part, -1, new ContourPoints.Spacing(0.5e-3, 0.15e-3, 0.05e-3, false));
        for (int i = 1; i < points.count; i++) {
            if (points.edge[i] != points.edge[i - 1]) {
                continue;
            }
            double step = points.distance[i] - points.distance[i - 1];
            double nearest = Double.POSITIVE_INFINITY;
            for (int k = 0; k <= part.size(); k++) {
                double corner = k == part.size() ? part.lengthSi() : start(part, k);
                nearest = Math.min(nearest, Math.abs(points.distance[i] - corner));
            }
            double most = points.edge[i] == 4 ? 0.15e-3 : 0.5e-3;
            if (nearest < 1.4e-3) {
                assertThat(step).isBetween(0.0499e-3, 0.0751e-3);
            } else if (nearest > 3e-3) {
                assertThat(step).isBetween(0.99 * most, 1.26 * most);
            }
        }
        Contour small = Contour.circle(Point.millimetres(0, 0), Kind.LENGTH.of(1e-3), EdgeRequirement.defaults());
        ContourPoints fine = points(small, -1, new ContourPoints.Spacing(0.5e-3, 0.15e-3, 0.05e-3, false));
        // a circle has no corner: 20 points on each radius of its length
        assertThat(fine.count).isBetween(124, 127);
    }

    /** Behind a fillet of 0.5 mm the first and the last 2 mm of what the jet reaches have the closest points. */
    @Test
    void pointsAreCloserBesideAFilletToo() {
        Contour square =
                Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(30, 20), EdgeRequirement.defaults());
        ContourPoints points = points(square, 1, new ContourPoints.Spacing(0.5e-3, 0.5e-3, 0.05e-3, false));
        int close = 0;
        int wide = 0;
        for (int i = 1; i < points.count; i++) {
            double from = points.distance[i - 1];
            double to = points.distance[i];
            if (points.edge[i] == 0 && points.edge[i - 1] == 0 && from > 0.51e-3 && to < 29.49e-3) {
                boolean isClose = from < 2.4e-3 || to > 27.6e-3;
                boolean isWide = from > 2.6e-3 && to < 27.4e-3;
                close += isClose ? 1 : 0;
                wide += isWide ? 1 : 0;
                assertThat(to - from).isBetween(isWide ? 0.49e-3 : 0.049e-3, isClose ? 0.076e-3 : 0.76e-3);
            }
        }
        assertThat(close).isBetween(70, 80);
        assertThat(wide).isBetween(47, 51);
    }

    @Test
    void openEndsAreNoCorners() {
        Contour bent =
                Contour.fromSi(0, 0).lineToSi(20e-3, 0).lineToSi(20e-3, -20e-3).open();
        ContourPoints points = points(bent, 1, new ContourPoints.Spacing(0.5e-3, 0.5e-3, 0.05e-3, false));

        assertThat(points.distance[1] - points.distance[0]).isCloseTo(0.5e-3, within(1e-12));
        int last = points.count - 1;
        assertThat(points.distance[last] - points.distance[last - 1]).isGreaterThan(0.37e-3);
        int before = 0;
        while (points.edge[before + 1] == 0) {
            before++;
        }
        assertThat(20e-3 - points.distance[before]).isLessThan(0.0376e-3);
        assertThat(points.distance[before + 1] - 20e-3).isCloseTo(0.025e-3, within(1e-12));
        assertThat(points.distance[before + 2] - 20e-3).isCloseTo(0.075e-3, within(1e-12));
    }

    /** The jet leaves a quarter of its own circle in a re-entrant right angle, half on each edge. */
    @Test
    void aReentrantCornerHasTheFilletOfTheJet() {
        Contour square =
                Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(30, 20), EdgeRequirement.defaults());
        ContourPoints points = points(square, 1, ContourPoints.Spacing.even(0.4e-3));
        double[][] centres = {{29.5e-3, 0.5e-3}, {29.5e-3, 19.5e-3}, {0.5e-3, 19.5e-3}, {0.5e-3, 0.5e-3}};
        double[] corner = {30e-3, 50e-3, 80e-3, 100e-3};
        for (int c = 0; c < 4; c++) {
            int before = 0;
            int after = 0;
            double last = 0;
            for (int i = 0; i < points.count; i++) {
                double dx = points.x[i] - centres[c][0];
                double dy = points.y[i] - centres[c][1];
                boolean isOn =
                        Math.abs(Math.hypot(dx, dy) - OFFSET) < 1e-12 && Math.abs(dx) > 1e-7 && Math.abs(dy) > 1e-7;
                if (isOn) {
                    // the first half belongs to the edge before the corner
                    assertThat(points.edge[i]).isEqualTo(before < 7 ? c : (c + 1) % 4);
                    before += points.edge[i] == c ? 1 : 0;
                    after += points.edge[i] == (c + 1) % 4 ? 1 : 0;
                    assertThat(points.distance[i])
                            .isCloseTo(c == 3 && points.edge[i] == 0 ? 0 : corner[c], within(1e-12));
                    assertThat(points.normalX[i]).isCloseTo(-dx / OFFSET, within(1e-9));
                    assertThat(points.normalY[i]).isCloseTo(-dy / OFFSET, within(1e-9));
                    double angle = Math.atan2(dy, dx);
                    double step = Math.IEEEremainder(angle - last, 2 * Math.PI);
                    assertThat(step).isCloseTo(before + after > 1 ? Math.PI / 28 : step, within(1e-9));
                    last = angle;
                }
            }
            // 90 degrees in steps of at most 0.12 rad: 14 of them
            assertThat(before).isEqualTo(7);
            assertThat(after).isEqualTo(7);
        }
        for (int i = 0; i < points.count; i++) {
            double x = points.x[i] + OFFSET * points.normalX[i];
            double y = points.y[i] + OFFSET * points.normalY[i];
            assertThat(Kind.LENGTH.si(square.clearance(Point.ofSi(x, y)))).isCloseTo(OFFSET, within(1e-12));
        }
        double[] onThePart = new double[4];
        assertThat(new ContourPoints(square, 1, ContourPoints.Spacing.even(0.4e-3), onThePart).count)
                .isBetween(248, 252);
        assertThat(new ContourPoints(square, -1, ContourPoints.Spacing.even(0.4e-3), onThePart).count)
                .isBetween(248, 252);
    }

    @Test
    void pointsBecomeWiderAbove100Metres() {
        ContourPoints.Spacing fine = ContourPoints.Spacing.fine(50, 0.2e-3);
        ContourPoints.Spacing wide = ContourPoints.Spacing.fine(250, 0.2e-3);

        assertThat(fine).isEqualTo(new ContourPoints.Spacing(0.2e-3, 0.1e-3, 0.05e-3, false));
        assertThat(wide).isEqualTo(new ContourPoints.Spacing(0.5e-3, 0.25e-3, 0.05e-3, false));
    }

    /** The largest disc that touches the contour at a point from the side of the part, in a search over all points. */
    @ParameterizedTest
    @CsvSource({"1, 6", "1, 30", "-1, 0.7", "-1, 6"})
    void theRoomBehindAPointIsTheLargestDiscThatTouchesThere(int sign, double limitMm) {
        Contour part = closed();
        ContourPoints points = points(part, sign, ContourPoints.Spacing.even(0.5e-3));
        double limit = limitMm * 1e-3;
        PartRoom room = new PartRoom(points, limit);
        int narrow = 0;
        for (int i = 0; i < points.count; i++) {
            double least = limit;
            for (int j = 0; j < points.count; j++) {
                double dx = points.x[j] - points.x[i];
                double dy = points.y[j] - points.y[i];
                double inwards = -(dx * points.normalX[i] + dy * points.normalY[i]);
                if (inwards > 0) {
                    least = Math.min(least, (dx * dx + dy * dy) / (2 * inwards));
                }
            }
            narrow += least < limit ? 1 : 0;
            assertThat(room.behind(i)).isCloseTo(least, within(1e-15));
        }
        assertThat(narrow).isPositive();
    }

    /** A strip of 6 mm has room for discs of 3 mm, wherever it lies. */
    @ParameterizedTest
    @CsvSource({"0, 0", "-37, 12", "1000, -4000"})
    void aStripHasRoomForDiscsOfHalfItsWidth(double xMm, double yMm) {
        Contour strip = Contour.rectangle(
                Point.millimetres(xMm, yMm), Point.millimetres(xMm + 60, yMm + 6), EdgeRequirement.defaults());
        ContourPoints points = points(strip, -1, ContourPoints.Spacing.even(0.1e-3));
        PartRoom room = new PartRoom(points, 10e-3);
        PartRoom little = new PartRoom(points, 2e-3);
        for (int i = 0; i < points.count; i++) {
            if (Math.abs(points.x[i] * 1e3 - xMm - 30) < 20) {
                assertThat(room.behind(i)).isCloseTo(3e-3, within(2e-6));
                assertThat(little.behind(i)).isEqualTo(2e-3);
            }
        }
    }
}
