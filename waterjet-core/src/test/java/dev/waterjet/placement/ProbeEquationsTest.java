package dev.waterjet.placement;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Equations of probed points against differences, and places against the conditions of a least square. */
class ProbeEquationsTest {

    private static final Point A = Point.millimetres(10, 20);
    private static final Point B = Point.millimetres(130, 45);
    private static final Point C = Point.millimetres(-20, 95);

    private static Point moved(RigidMove move, double xM, double yM, SplittableRandom random, double noiseM) {
        Point exact = move.apply(Point.ofSi(xM, yM));
        return Point.ofSi(exact.xSi() + noiseM * random.nextGaussian(), exact.ySi() + noiseM * random.nextGaussian());
    }

    /** Holes, edges and walls, each with an uncertainty of its own. */
    private static List<ProbedPoint> mixed(RigidMove move, long seed, double noiseM) {
        SplittableRandom random = new SplittableRandom(seed);
        List<ProbedPoint> points = new ArrayList<>();
        points.add(ProbedPoint.hole(A, moved(move, A.xSi(), A.ySi(), random, noiseM))
                .withUncertainty(micrometres(15)));
        for (double share : new double[] {0.2, 0.9}) {
            points.add(ProbedPoint.edge(
                            A,
                            B,
                            moved(
                                    move,
                                    A.xSi() + share * (B.xSi() - A.xSi()),
                                    A.ySi() + share * (B.ySi() - A.ySi()),
                                    random,
                                    noiseM))
                    .withUncertainty(micrometres(25)));
        }
        for (double angle : new double[] {0.4, 2.9}) {
            points.add(ProbedPoint.wall(
                    C,
                    millimetres(9),
                    moved(move, C.xSi() + 9e-3 * Math.cos(angle), C.ySi() + 9e-3 * Math.sin(angle), random, noiseM)));
        }
        return points;
    }

    private static double[] changed(double[] p, int k, double by) {
        double[] other = p.clone();
        other[k] += by;
        return other;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void theDerivativesAreThoseOfDifferences(long seed) {
        RigidMove move = RigidMove.of(degrees(40.0 * seed), Point.millimetres(300, -80));
        ProbeEquations equations = new ProbeEquations(mixed(move, seed, 2e-3));
        SplittableRandom random = new SplittableRandom(seed);
        double[] p = {7 * random.nextDouble(), random.nextDouble() - 0.5, random.nextDouble() - 0.5};
        double[][] jacobian = equations.jacobian(p);
        double[][] toShift = equations.toShift(p);
        double h = 1e-5;
        for (int k = 0; k < 3; k++) {
            double[] up = equations.values(changed(p, k, h));
            double[] down = equations.values(changed(p, k, -h));
            assertThat(up).hasSize(6);
            for (int row = 0; row < up.length; row++) {
                assertThat(jacobian[row][k])
                        .as("row %d, unknown %d", row, k)
                        .isCloseTo((up[row] - down[row]) / (2 * h), within(1e-3));
            }
            Point ahead = equations.shift(changed(p, k, h));
            Point behind = equations.shift(changed(p, k, -h));
            assertThat(toShift[0][k]).isEqualTo(k == 0 ? 1 : 0);
            assertThat(toShift[1][k]).isCloseTo((ahead.xSi() - behind.xSi()) / (2 * h), within(1e-9));
            assertThat(toShift[2][k]).isCloseTo((ahead.ySi() - behind.ySi()) / (2 * h), within(1e-9));
        }
    }

    /**
     * The search starts with the centre of the features on that of the probed points, in units of the distance of the farthest
     * probed point: middles (40, 50) of edges from (10, 20) to (70, 80) and a hole at (100, 50); probed at (0, 0), (60, 0) and
     * (0, 120).
     */
    @ParameterizedTest
    @ValueSource(doubles = {0, 30, -140})
    void theSearchStartsWithCentreOnCentre(double turnDeg) {
        Point from = Point.millimetres(10, 20);
        Point to = Point.millimetres(70, 80);
        ProbeEquations equations = new ProbeEquations(List.of(
                ProbedPoint.edge(from, to, Point.millimetres(0, 0)),
                ProbedPoint.edge(from, to, Point.millimetres(60, 0)),
                ProbedPoint.hole(Point.millimetres(100, 50), Point.millimetres(0, 120))));
        double turn = Math.toRadians(turnDeg);
        Point shift = equations.shift(equations.start(turn));
        double unit = Math.hypot(20e-3, 80e-3);

        assertThat(shift.xSi()).isCloseTo(20e-3 - 60e-3 * Math.cos(turn) + 50e-3 * Math.sin(turn), within(1e-15));
        assertThat(shift.ySi()).isCloseTo(40e-3 - 60e-3 * Math.sin(turn) - 50e-3 * Math.cos(turn), within(1e-15));
        assertThat(equations.shift(new double[] {turn, 1, 0}).xSi() - shift.xSi())
                .isCloseTo(unit, within(1e-15));
        assertThat(equations.shift(new double[] {turn, 0, 1}).ySi() - shift.ySi())
                .isCloseTo(unit, within(1e-15));
    }

    /** Points probed in one place have no size of their own: the unit is a metre. */
    @Test
    void pointsInOnePlaceAreMeasuredInMetres() {
        ProbeEquations equations = new ProbeEquations(List.of(ProbedPoint.hole(A, B), ProbedPoint.hole(C, B)));
        double[] start = equations.start(0);

        assertThat(equations.shift(new double[] {0, 1, 0}).xSi()
                        - equations.shift(start).xSi())
                .isCloseTo(1, within(1e-12));
    }

    private static double square(Location location, List<ProbedPoint> points, double turn, double dx, double dy) {
        RigidMove move = RigidMove.of(
                Kind.ANGLE.of(Kind.ANGLE.si(location.move().rotation()) + turn),
                Point.ofSi(
                        location.move().shift().xSi() + dx,
                        location.move().shift().ySi() + dy));
        double sum = 0;
        for (ProbedPoint point : points) {
            Point known = move.apply(point.known());
            Point end = move.apply(point.end());
            double x = point.probed().xSi() - known.xSi();
            double y = point.probed().ySi() - known.ySi();
            double residual = switch (point.feature()) {
                case HOLE -> Math.hypot(x, y);
                case WALL -> Math.hypot(x, y) - Kind.LENGTH.si(point.radius());
                case EDGE ->
                    ((end.xSi() - known.xSi()) * y - (end.ySi() - known.ySi()) * x)
                            / Math.hypot(end.xSi() - known.xSi(), end.ySi() - known.ySi());
            };
            sum += residual * residual / Math.pow(Kind.LENGTH.si(point.uncertainty()), 2);
        }
        return sum;
    }

    /** No turn and no shift makes the sum of squares smaller; to all figures of the place, its slope is 0. */
    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14, 15, 16})
    void thePlaceHasTheLeastSumOfSquares(long seed) {
        RigidMove move = RigidMove.of(degrees(25.0 * seed), Point.millimetres(500, 70));
        List<ProbedPoint> points = mixed(move, seed, 0.2e-3);
        Location location = PartLocator.locate(points, move);
        double least = square(location, points, 0, 0, 0);
        double h = 1e-7;
        for (double[] step : new double[][] {{h, 0, 0}, {0, h, 0}, {0, 0, h}, {h, 0.1 * h, -0.2 * h}}) {
            double up = square(location, points, step[0], step[1], step[2]);
            double down = square(location, points, -step[0], -step[1], -step[2]);
            assertThat(Math.min(up, down)).isGreaterThan(least);
            assertThat(up - down).isCloseTo(0, within(3e-4 * (up + down - 2 * least)));
        }
        // three of the six coordinates are more than necessary
        assertThat(location.degreesOfFreedom()).isEqualTo(3);
        assertThat(location.scatter()).isCloseTo(Math.sqrt(least / 3), within(1e-6 * Math.sqrt(least)));
    }

    /** Beside the least cost the rotation nearest to the expected one decides: turned by 180 degrees, two crossing lines are the same. */
    @ParameterizedTest
    @CsvSource({"0, 0", "0, 70", "0, -80", "0, 110", "0, 180", "35, 20", "35, 230", "-120, 100", "-120, -60"})
    void ofTwoPlacesThatFitAlikeTheOneNearestToTheExpectedIsTaken(double turnDeg, double expectedDeg) {
        Point corner = Point.millimetres(0, 0);
        Point right = Point.millimetres(90, 0);
        Point up = Point.millimetres(0, 60);
        RigidMove move = RigidMove.of(degrees(turnDeg), Point.millimetres(40, 30));
        SplittableRandom random = new SplittableRandom(8);
        for (double noise : new double[] {0, 30e-6}) {
            List<ProbedPoint> points = new ArrayList<>();
            for (double at : new double[] {10e-3, 40e-3, 80e-3}) {
                points.add(ProbedPoint.edge(corner, right, moved(move, at, 0, random, noise)));
                points.add(ProbedPoint.edge(corner, up, moved(move, 0, at, random, noise)));
            }
            Location location = PartLocator.locate(points, RigidMove.of(degrees(expectedDeg), Point.millimetres(0, 0)));
            double off = Math.IEEEremainder(
                    Kind.ANGLE.si(location.move().rotation()) - Math.toRadians(expectedDeg), 2 * Math.PI);
            double wrong =
                    Math.IEEEremainder(Kind.ANGLE.si(location.move().rotation()) - Math.toRadians(turnDeg), Math.PI);

            assertThat(Math.abs(off)).isLessThan(Math.PI / 2 + 0.01);
            assertThat(wrong).isCloseTo(0, within(2e-3));
            assertThat(location.move().shift().xSi()).isCloseTo(40e-3, within(0.2e-3));
            assertThat(location.move().shift().ySi()).isCloseTo(30e-3, within(0.2e-3));
        }
    }

    /** Two holes 50 µm farther apart than drawn scatter 1.77 times their 20 µm: all uncertainties are wider by that. */
    @Test
    void aScatterAboveTheUncertaintyWidensIt() {
        Point a = Point.millimetres(0, 0);
        Point b = Point.millimetres(120, 0);
        Location location =
                PartLocator.locate(List.of(ProbedPoint.hole(a, a), ProbedPoint.hole(b, Point.ofSi(0.12 + 50e-6, 0))));
        double widening = Math.sqrt(2) * 25 / 20;

        assertThat(Kind.ANGLE.si(location.rotationUncertainty()))
                .isCloseTo(widening * 20e-6 * Math.sqrt(2) / 0.120, within(1e-7));
        assertThat(Kind.LENGTH.si(location.uncertaintyAt(Point.millimetres(60, 0))))
                .isCloseTo(widening * 20e-6 / Math.sqrt(2), within(1e-9));
        assertThat(Kind.LENGTH.si(location.shiftXUncertainty()))
                .isCloseTo(widening * 20e-6 / Math.sqrt(2), within(1e-9));
        assertThat(Kind.LENGTH.si(location.shiftYUncertainty())).isCloseTo(widening * 20e-6, within(1e-8));
    }

    private static Location location(double covariance, double scatter, int freedom) {
        double[][] matrix = {{4e-8, 0, covariance}, {0, 1e-8, 0}, {covariance, 0, 9e-8}};
        return Location.of(RigidMove.none(), matrix, scatter, freedom, new double[] {1e-6});
    }

    /** A covariance is at most the product of the standard deviations: 2e-4 times 3e-4. */
    @Test
    void aCovarianceAboveTheStandardDeviationsIsRefused() {
        assertThat(Refusals.of(() -> location(6e-8, 1, 1))).isEqualTo("no refusal");
        assertThat(Refusals.of(() -> location(-6e-8, 1, 1))).isEqualTo("no refusal");
        assertThat(Refusals.of(() -> location(6.001e-8, 1, 1))).isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> location(-6.001e-8, 1, 1))).isEqualTo("must-be-at-least");
        assertThat(location(-0.0, 1, 1)).isEqualTo(location(0.0, 1, 1));
    }

    /** Up to 2.5 times the uncertainty is judged as chance. */
    @Test
    void aScatterAboveTwoAndAHalfIsADisagreement() {
        assertThat(location(0, 2.5, 1).cautions()).isEmpty();
        assertThat(location(0, 2.51, 1).cautions()).extracting(Caution::code).containsExactly("probes-disagree");
        assertThat(location(0, 0, 0).cautions()).extracting(Caution::code).containsExactly("no-further-point");
    }

    @Test
    void aProbedPointIsDescribedByItsFeature() {
        assertThat(ProbedPoint.wall(C, millimetres(9), A).describe())
                .containsEntry("feature", "wall")
                .containsEntry("radius_m", 9e-3)
                .containsEntry("uncertainty_m", 20e-6);
    }
}
