package dev.waterjet.part;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.micrometres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ContourBuilderTest {

    private static final double CURVE = 2.5e-6;

    /** Repeated division of the control polygon (de Casteljau), in place of the powers of the parameter. */
    private static double[] divided(double[][] control, double t) {
        double[][] points = new double[control.length][];
        for (int i = 0; i < points.length; i++) {
            points[i] = control[i].clone();
        }
        for (int level = points.length - 1; level > 0; level--) {
            for (int i = 0; i < level; i++) {
                points[i][0] += t * (points[i + 1][0] - points[i][0]);
                points[i][1] += t * (points[i + 1][1] - points[i][1]);
            }
        }
        return points[0];
    }

    private static Contour spline(double[][] control) {
        return Contour.fromSi(control[0][0], control[0][1])
                .splineTo(
                        Point.ofSi(control[1][0], control[1][1]),
                        Point.ofSi(control[2][0], control[2][1]),
                        Point.ofSi(control[3][0], control[3][1]))
                .open();
    }

    /** Largest distance of the curve from the chords at equal steps of its parameter. */
    private static double deviation(Contour chords, double[][] control) {
        EdgeCursor edge = new EdgeCursor();
        double most = 0;
        for (int i = 0; i < chords.size(); i++) {
            chords.load(i, edge);
            for (int k = 0; k <= 8; k++) {
                double[] at = divided(control, (i + k / 8.0) / chords.size());
                most = Math.max(most, edge.distance(at[0], at[1]));
            }
        }
        return most;
    }

    @Test
    void chordsOfASplineEndOnItAndStayNearIt() {
        Random random = new Random(1);
        for (int round = 0; round < 100; round++) {
            double[][] control = new double[4][2];
            for (double[] point : control) {
                point[0] = 0.05 * random.nextDouble() - 0.02;
                point[1] = 0.05 * random.nextDouble() - 0.02;
            }
            Contour chords = spline(control);
            for (int i = 0; i <= chords.size(); i++) {
                double[] at = divided(control, (double) i / chords.size());
                assertThat(chords.xSi(i)).isCloseTo(at[0], within(1e-15));
                assertThat(chords.ySi(i)).isCloseTo(at[1], within(1e-15));
            }
            assertThat(deviation(chords, control)).isLessThanOrEqualTo(CURVE);
            assertThat(chords.isCurve(0)).isTrue();
            assertThat(chords.isCurve(chords.size() - 1)).isTrue();
        }
    }

    /** Of a parabola the bend is the same everywhere: its chords use the distance up, so that there are no more than needed. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 1, 2, 3, 4, 5, 6})
    void aParabolaHasNoMoreChordsThanItNeeds(double heading) {
        double cos = Math.cos(heading);
        double sin = Math.sin(heading);
        for (double height : new double[] {0.001, 0.01, 0.05}) {
            // x = t, y = h t (1 - t): control points at thirds of the width
            double[][] control = new double[4][];
            double[] y = {0, height / 3, height / 3, 0};
            for (int i = 0; i < 4; i++) {
                double x = 0.05 * i / 3;
                control[i] = new double[] {cos * x - sin * y[i], sin * x + cos * y[i]};
            }
            Contour chords = spline(control);
            double needed = Math.sqrt(2 * height / (8 * CURVE));
            assertThat((double) chords.size()).isBetween(needed, needed + 1.000001);
        }
    }

    /** A third power bends at one end alone; the chords go by that end, whichever it is. */
    @Test
    void theLargerBendOfBothEndsCounts() {
        double height = 0.02;
        double[][] control = {{0, 0}, {0.01, 0}, {0.02, 0}, {0.03, height}};
        Contour chords = spline(control);
        Contour back = spline(new double[][] {control[3], control[2], control[1], control[0]});

        // y = h t^3, y'' = 6 h t
        double needed = Math.sqrt(6 * height / (8 * CURVE));
        assertThat((double) chords.size()).isBetween(needed, needed + 1.000001);
        assertThat(back.size()).isEqualTo(chords.size());
        assertThat(deviation(chords, control)).isBetween(0.4 * CURVE, CURVE);
    }

    @Test
    void marksOfACurveEndWithIt() {
        Contour path = Contour.fromSi(0, 0)
                .lineToSi(0.01, 0)
                .splineTo(Point.ofSi(0.011, 0), Point.ofSi(0.012, 0.001), Point.ofSi(0.012, 0.002))
                .lineToSi(0.012, 0.01)
                .smoothThrough(List.of(Point.ofSi(0.011, 0.02), Point.ofSi(0.009, 0.03)))
                .lineToSi(0, 0.03)
                .asCurve(true)
                .lineToSi(-0.01, 0.03)
                .smoothThrough(List.of(Point.ofSi(-0.011, 0.02)))
                .lineToSi(-0.01, 0.01)
                .open();
        int n = path.size();

        assertThat(path.isCurve(0)).isFalse();
        assertThat(path.isCurve(1)).isTrue();
        assertThat(path.isCurve(n - 8)).isTrue();
        assertThat(path.isCurve(n - 7)).isFalse();
        assertThat(path.isCurve(n - 6)).isTrue();
        assertThat(path.isCurve(n - 5)).isTrue();
        assertThat(path.isCurve(n - 4)).isFalse();
        for (int i = n - 3; i < n; i++) {
            assertThat(path.isCurve(i)).isTrue();
        }
    }

    /** A spline whose control points coincide is refused; one with a doubled control point is drawn. */
    @Test
    void aSplineWithoutExtentIsRefused() {
        Point here = Point.ofSi(0.01, 0.02);
        assertRefused(() -> Contour.from(here).splineTo(here, here, here), "zero-length-edge");
        Contour straight = Contour.from(here)
                .splineTo(here, here, Point.ofSi(0.01 + 1e-3, 0.02))
                .open();
        assertThat(straight.lengthSi()).isCloseTo(1e-3, within(1e-12));
    }

    @Test
    void aShortArcOfACursorStaysAnArcAndAFullOneACircle() {
        EdgeCursor edge = new EdgeCursor();
        for (int turn = -1; turn <= 1; turn += 2) {
            for (double chord : new double[] {2e-9, 1e-7, 3e-6, 9.9e-6, 2e-5, 1e-3}) {
                double sweep = 2 * Math.asin(chord / 2 / 0.01);
                edge.arc(0.01, 0, 0.01 * Math.cos(sweep), turn * 0.01 * Math.sin(sweep), 0, 0, turn * sweep);
                Contour drawn = Contour.fromSi(0.01, 0).edgeTo(edge).open();
                assertThat(drawn.isArc(0)).isTrue();
                assertThat(Kind.ANGLE.si(drawn.edge(0).sweep())).isCloseTo(turn * sweep, within(1e-9));
            }
            edge.arc(0.01, 0, 0.01, 0, 0, 0, turn * 2 * Math.PI);
            assertThat(Contour.fromSi(0.01, 0).edgeTo(edge).open().lengthSi()).isCloseTo(0.02 * Math.PI, within(1e-12));
            EdgeCursor none = new EdgeCursor();
            none.arc(0.01, 0, 0.01, turn * 0.5e-9, 0, 0, turn * 5e-8);
            assertRefused(() -> Contour.fromSi(0.01, 0).edgeTo(none), "zero-length-edge");
            // nearly a full circle, whose ends are as near as those of a short arc
            edge.arc(0.01, 0, 0.01, -turn * 5e-6, 0, 0, turn * (2 * Math.PI - 5e-4));
            assertThat(Contour.fromSi(0.01, 0).edgeTo(edge).open().lengthSi()).isCloseTo(0.02 * Math.PI, within(1e-5));
        }
        edge.line(0, 0, 3, 4);
        assertThat(Contour.fromSi(0, 0).edgeTo(edge).open().lengthSi()).isEqualTo(5);
    }

    @Test
    void aContourClosesWithinItsGapAndNoFarther() {
        ContourBuilder open =
                Contour.fromSi(0, 0).lineToSi(0.01, 0).lineToSi(0.01, 0.01).lineToSi(3e-6, 4e-6);
        assertThat(assertRefused(() -> open.closeWithin(micrometres(4.9)), "open-contour")
                        .parameters())
                .hasEntrySatisfying("gap_m", gap -> assertThat((double) gap).isCloseTo(5e-6, within(1e-12)));
        assertThat(open.closeWithin(micrometres(5.1)).size()).isEqualTo(4);
        ContourBuilder met =
                Contour.fromSi(0, 0).lineToSi(0.01, 0).lineToSi(0.01, 0.01).lineToSi(0, 0.9e-9);
        assertThat(met.close().size()).isEqualTo(3);
        assertThat(met.close().end()).isEqualTo(Point.ofSi(0, 0));
        assertRefused(() -> Contour.fromSi(1, 1).closeWithin(micrometres(1)), "empty-path");
    }

    @Test
    void requirementsThatReturnHaveTheSamePlace() {
        EdgeRequirement fine = EdgeRequirement.of(CutQuality.FINE);
        EdgeRequirement coarse = EdgeRequirement.of(CutQuality.COARSE);
        ContourBuilder builder = Contour.fromSi(0, 0).requirement(fine);
        for (int i = 1; i <= 40; i++) {
            builder.requirement(i % 3 == 0 ? coarse : fine).lineToSi(i, i % 2);
        }
        Contour path = builder.open();
        for (int i = 1; i <= 40; i++) {
            assertThat(path.requirement(i - 1)).isEqualTo(i % 3 == 0 ? coarse : fine);
            assertThat(path.xSi(i)).isEqualTo(i);
            assertThat(path.ySi(i)).isEqualTo(i % 2);
        }
        assertThat(path.requirements()).hasSize(3);
    }

    /** The centre of an arc through three points is as far from each of them. */
    @Test
    void anArcThroughAPointPassesIt() {
        Random random = new Random(3);
        EdgeCursor edge = new EdgeCursor();
        for (int round = 0; round < 200; round++) {
            double[] p = random.doubles(6, -1, 1).toArray();
            Contour.fromSi(p[0], p[1])
                    .arcThrough(Point.ofSi(p[2], p[3]), Point.ofSi(p[4], p[5]))
                    .open()
                    .load(0, edge);
            double share = edge.shareAt(p[2], p[3]);
            assertThat(share).isBetween(1e-9, 1 - 1e-9);
            assertThat(edge.xAt(share)).isCloseTo(p[2], within(1e-8));
            assertThat(edge.yAt(share)).isCloseTo(p[3], within(1e-8));
        }
        ContourBuilder start = Contour.fromSi(0, 0);
        assertRefused(() -> start.arcThrough(Point.ofSi(1, 1e-13), Point.ofSi(2, 0)), "arc-through-line");
        assertThat(Contour.fromSi(0, 0)
                        .arcThrough(Point.ofSi(1, 1e-6), Point.ofSi(2, 0))
                        .open()
                        .isArc(0))
                .isTrue();
    }

    @Test
    void aCircleOfNoRadiusIsRefused() {
        assertRefused(
                () -> Contour.circle(Point.ofSi(0, 0), micrometres(0), EdgeRequirement.defaults()), "must-be-above");
        assertRefused(
                () -> Contour.polylineSi(new double[] {0}, new double[] {0}, EdgeRequirement.defaults()),
                "must-be-at-least");
        assertRefused(
                () -> Contour.polylineSi(new double[] {0, 1}, new double[] {0, 1, 2}, EdgeRequirement.defaults()),
                "must-be-at-most");
    }

    /** A zero has no sign: the same drawing with zeros of either sign is equal, also turned round and moved. */
    @Test
    void zerosOfEitherSignAreTheSame() {
        Contour plain = Contour.fromSi(0, 0)
                .lineToSi(1, 0)
                .lineToSi(0, 2)
                .arcToSi(0, -2, 0, 0, Side.LEFT)
                .lineToSi(0.5, 0)
                .open();
        Contour signed = Contour.fromSi(-0.0, -0.0)
                .lineToSi(1, -0.0)
                .lineToSi(-0.0, 2)
                .arcToSi(-0.0, -2, -0.0, -0.0, Side.LEFT)
                .lineToSi(0.5, -0.0)
                .open();
        assertThat(signed).isEqualTo(plain).hasSameHashCodeAs(plain);
        assertThat(signed.reversed()).isEqualTo(plain.reversed());
        assertThat(signed.reversed().reversed()).isEqualTo(plain);
        double[] zeros = {-0.0, 1, -0.0};
        assertThat(Contour.polylineSi(zeros, new double[] {-0.0, -0.0, 1}, EdgeRequirement.defaults()))
                .isEqualTo(
                        Contour.polylineSi(new double[] {0, 1, 0}, new double[] {0, 0, 1}, EdgeRequirement.defaults()));
        assertThat(zeros).containsExactly(-0.0, 1, -0.0);
    }

    /** A number that is not finite is refused wherever it stands, with the place as it was given. */
    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void numbersThatAreNotFiniteAreRefusedWhereverTheyStand(double number) {
        assertRefused(() -> Contour.fromSi(number, 0), "coordinate-not-finite");
        assertRefused(() -> Contour.fromSi(0, number), "coordinate-not-finite");
        ContourBuilder start = Contour.fromSi(1, 0);
        assertRefused(() -> start.lineToSi(number, 0), "coordinate-not-finite");
        assertRefused(() -> start.lineToSi(0, number), "coordinate-not-finite");
        assertRefused(() -> start.arcToSi(number, 1, 0, 0, Side.LEFT), "coordinate-not-finite");
        assertRefused(() -> start.arcToSi(0, number, 0, 0, Side.LEFT), "coordinate-not-finite");
        assertRefused(() -> start.arcToSi(0, 1, number, 0, Side.LEFT), "coordinate-not-finite");
        GeometryException refusal = (GeometryException)
                assertRefused(() -> start.arcToSi(0, 1, 0, number, Side.RIGHT), "coordinate-not-finite");
        assertThat(refusal.ySi()).isEqualTo(Double.valueOf(number));
        assertThat(start.arcToSi(0, 1, 0, 0, Side.LEFT).open().size()).isEqualTo(1);
    }

    /** Ends of an arc are one point up to a ten-thousandth of an inch along it; the radii may differ by ten micrometres. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.9, 2.5, 4.6})
    void anArcIsDrawnWithinItsRoundingAndRefusedBeyond(double heading) {
        double cos = Math.cos(heading);
        double sin = Math.sin(heading);
        for (Side turn : Side.values()) {
            for (double off : new double[] {-9.9e-6, 9.9e-6, -10.1e-6, 10.1e-6}) {
                // a quarter to the left of the start, nearer to the centre or farther
                double endX = -(0.02 + off) * sin;
                double endY = (0.02 + off) * cos;
                ContourBuilder builder = Contour.fromSi(0.02 * cos, 0.02 * sin);
                if (Math.abs(off) > 1e-5) {
                    GeometryException refusal = (GeometryException)
                            assertRefused(() -> builder.arcToSi(endX, endY, 0, 0, turn), "arc-radii-differ");
                    assertThat(refusal.parameters()).containsEntry("limit_m", 1e-5);
                } else {
                    EdgeCursor edge = new EdgeCursor();
                    builder.arcToSi(endX, endY, 0, 0, turn).open().load(0, edge);
                    double radius = Math.hypot(endX - edge.centreX(), endY - edge.centreY());
                    assertThat(edge.radius()).isCloseTo(radius, within(1e-12));
                    assertThat(Math.hypot(edge.centreX(), edge.centreY())).isLessThan(7.2e-6);
                    assertThat(edge.sweep()).isCloseTo(turn == Side.LEFT ? Math.PI / 2 : -1.5 * Math.PI, within(1e-3));
                }
            }
            for (double along : new double[] {-2.5e-6, 2.5e-6, -2.6e-6, 2.6e-6}) {
                Contour arc = Contour.fromSi(0.02 * cos, 0.02 * sin)
                        .arcToSi(0.02 * cos - along * sin, 0.02 * sin + along * cos, 0, 0, turn)
                        .open();
                boolean isShort = Math.abs(along) > 2.55e-6 && (along > 0) == (turn == Side.LEFT);
                assertThat(arc.lengthSi()).isCloseTo(isShort ? Math.abs(along) : 0.04 * Math.PI, within(6e-6));
            }
        }
    }
}
