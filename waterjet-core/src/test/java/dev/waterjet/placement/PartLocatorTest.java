package dev.waterjet.placement;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PartLocatorTest {

    private static final Point A = Point.millimetres(10, 20);
    private static final Point B = Point.millimetres(130, 20);
    private static final Point C = Point.millimetres(10, 95);

    private static ProbedPoint hole(Point known, RigidMove move) {
        return ProbedPoint.hole(known, move.apply(known));
    }

    /** A point a given share along an edge, as probed after a move. */
    private static ProbedPoint onEdge(Point start, Point end, double share, RigidMove move) {
        return ProbedPoint.edge(
                start,
                end,
                move.apply(Point.ofSi(
                        start.xSi() + share * (end.xSi() - start.xSi()),
                        start.ySi() + share * (end.ySi() - start.ySi()))));
    }

    private static ProbedPoint onWall(Point centre, double radiusMm, double angle, RigidMove move) {
        return ProbedPoint.wall(
                centre,
                millimetres(radiusMm),
                move.apply(Point.ofSi(
                        centre.xSi() + radiusMm * 1e-3 * Math.cos(angle),
                        centre.ySi() + radiusMm * 1e-3 * Math.sin(angle))));
    }

    private static void isFound(Location location, RigidMove move) {
        assertThat(Math.IEEEremainder(
                        Kind.ANGLE.si(location.move().rotation()) - Kind.ANGLE.si(move.rotation()), 2 * Math.PI))
                .isCloseTo(0, within(1e-9));
        assertThat(location.move().shift().xSi()).isCloseTo(move.shift().xSi(), within(1e-9));
        assertThat(location.move().shift().ySi()).isCloseTo(move.shift().ySi(), within(1e-9));
        for (double residual : location.residuals().toSi()) {
            assertThat(residual).isCloseTo(0, within(1e-9));
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 0, 0", "0.4, 3, -2", "30, 400, 200", "-90, 1, 1", "137, -900, 60", "180, 5, 5"})
    void theMoveOfExactPointsComesBack(double turnDegrees, double xMm, double yMm) {
        RigidMove move = RigidMove.of(degrees(turnDegrees), Point.millimetres(xMm, yMm));

        isFound(PartLocator.locate(List.of(hole(A, move), hole(B, move))), move);
        isFound(PartLocator.locate(List.of(hole(A, move), hole(B, move), hole(C, move))), move);
        isFound(
                PartLocator.locate(
                        List.of(onEdge(A, B, 0.1, move), onEdge(A, B, 0.9, move), onEdge(A, C, 0.5, move)), move),
                move);
        isFound(
                PartLocator.locate(
                        List.of(
                                onEdge(A, B, 0.1, move),
                                onEdge(A, B, 0.9, move),
                                onWall(C, 12, 0.3, move),
                                onWall(C, 12, 2.3, move),
                                onWall(C, 12, 4.4, move)),
                        move),
                move);
    }

    /** Two holes that are 50 um farther apart than drawn: half of it at each, and no turn. */
    @Test
    void aDistanceThatDiffersShowsInTheResiduals() {
        Location location = PartLocator.locate(List.of(
                ProbedPoint.hole(A, A), ProbedPoint.hole(B, Point.ofSi(B.xSi() + 50e-6, B.ySi()))));

        assertThat(location.residuals().toSi()[0]).isCloseTo(25e-6, within(1e-9));
        assertThat(location.residuals().toSi()[1]).isCloseTo(25e-6, within(1e-9));
        assertThat(Kind.ANGLE.si(location.move().rotation())).isCloseTo(0, within(1e-9));
        assertThat(location.move().shift().xSi()).isCloseTo(25e-6, within(1e-9));
        assertThat(location.degreesOfFreedom()).isEqualTo(1);
        // residuals of 25 um each against 20 um, with one degree of freedom
        assertThat(location.scatter()).isCloseTo(Math.sqrt(2) * 25 / 20, withinPercentage(1e-6));
    }

    /** Holes at a distance d with u each: u sqrt 2/d of rotation, u/sqrt 2 in the middle between them (hand calculation). */
    @Test
    void theUncertaintyOfTwoHolesIsThatOfTheirDistance() {
        Location location = PartLocator.locate(List.of(
                ProbedPoint.hole(A, A).withUncertainty(micrometres(30)),
                ProbedPoint.hole(B, B).withUncertainty(micrometres(30))));

        assertThat(Kind.ANGLE.si(location.rotationUncertainty()))
                .isCloseTo(30e-6 * Math.sqrt(2) / 0.120, withinPercentage(1e-6));
        assertThat(Kind.LENGTH.si(location.uncertaintyAt(Point.millimetres(70, 20))))
                .isCloseTo(30e-6 / Math.sqrt(2), withinPercentage(1e-6));
        assertThat(Kind.LENGTH.si(location.uncertaintyAt(Point.millimetres(70, 520))))
                .isCloseTo(
                        Math.hypot(30e-6 / Math.sqrt(2), 0.5 * 30e-6 * Math.sqrt(2) / 0.120), withinPercentage(1e-6));
    }

    /** The stated uncertainties against the spread over 400 repeats with noise; a standard deviation is known within 3.5 %. */
    @Test
    void uncertaintiesAreTheSpreadOfRepeatedProbing() {
        RigidMove move = RigidMove.of(degrees(25), Point.millimetres(300, 120));
        List<ProbedPoint> exact = List.of(
                hole(A, move),
                onEdge(A, B, 0.2, move),
                onEdge(A, B, 0.8, move),
                onEdge(B, C, 0.4, move),
                onWall(C, 15, 1, move));
        SplittableRandom random = new SplittableRandom(5);
        StandardDeviation rotation = new StandardDeviation();
        StandardDeviation x = new StandardDeviation();
        double chi = 0;
        for (int i = 0; i < 400; i++) {
            List<ProbedPoint> noisy = new ArrayList<>();
            for (ProbedPoint point : exact) {
                Point at = Point.ofSi(
                        point.probed().xSi() + 20e-6 * random.nextGaussian(),
                        point.probed().ySi() + 20e-6 * random.nextGaussian());
                noisy.add(new ProbedPoint(
                        point.feature(), point.known(), point.end(), point.radius(), at, point.uncertainty()));
            }
            Location location = PartLocator.locate(noisy, move);
            rotation.increment(Kind.ANGLE.si(location.move().rotation()));
            x.increment(location.move().shift().xSi());
            chi += location.scatter() * location.scatter() / 400;
        }
        Location location = PartLocator.locate(exact, move);

        assertThat(rotation.getResult()).isCloseTo(Kind.ANGLE.si(location.rotationUncertainty()), withinPercentage(12));
        assertThat(x.getResult()).isCloseTo(Kind.LENGTH.si(location.shiftXUncertainty()), withinPercentage(12));
        assertThat(chi).isCloseTo(1, within(0.15));
    }

    @Test
    void pointsThatDoNotTellThePlaceAreRefused() {
        RigidMove move = RigidMove.of(degrees(3), Point.millimetres(7, 8));
        Point d = Point.millimetres(10, 60);
        Point e = Point.millimetres(90, 60);

        for (List<ProbedPoint> points : List.of(
                List.<ProbedPoint>of(),
                List.of(hole(A, move)),
                List.of(hole(A, move), hole(A, move)),
                List.of(onEdge(A, B, 0.1, move), onEdge(A, B, 0.5, move), onEdge(A, B, 0.9, move)),
                List.of(onEdge(A, B, 0.1, move), onEdge(A, B, 0.9, move), onEdge(d, e, 0.5, move)),
                List.of(onWall(C, 12, 0.3, move), onWall(C, 12, 2.3, move), onWall(C, 12, 4.4, move)))) {
            assertThat(Refusals.of(() -> PartLocator.locate(points))).isEqualTo("points-cannot-tell");
        }
    }

    @Test
    void pointsThatDisagreeHaveACaution() {
        Location wrong = PartLocator.locate(List.of(
                ProbedPoint.hole(A, A), ProbedPoint.hole(B, B), ProbedPoint.hole(C, Point.millimetres(10, 96))));

        assertThat(wrong.cautions()).extracting(Caution::code).containsExactly("probes-disagree");
        assertThat(PartLocator.locate(List.of(
                                onEdge(A, B, 0, RigidMove.none()),
                                onEdge(A, B, 1, RigidMove.none()),
                                onEdge(A, C, 0.5, RigidMove.none())))
                        .cautions())
                .extracting(Caution::code)
                .containsExactly("no-further-point");
    }

    /** The outline of a moved contour has its area and length; the inverse brings it back. */
    @Test
    void contoursAreMovedWhole() {
        RigidMove move = RigidMove.of(degrees(40), Point.millimetres(100, -30));
        Contour drawn = Contour.circle(B, millimetres(8), EdgeRequirement.of(CutQuality.MEDIUM));
        Contour placed = move.apply(drawn);

        assertThat(placed.lengthSi()).isCloseTo(drawn.lengthSi(), withinPercentage(1e-9));
        assertThat(placed.isClosed()).isTrue();
        assertThat(placed.isAround(move.apply(B))).isTrue();
        Contour back = move.inverse().apply(placed);
        assertThat(back.xSi(0)).isCloseTo(drawn.xSi(0), within(1e-12));
        assertThat(back.ySi(0)).isCloseTo(drawn.ySi(0), within(1e-12));
    }

    @Test
    void aMoveIsAValue() {
        ValueContract.of(() -> RigidMove.of(degrees(30), A))
                .has("shift", RigidMove::shift, A)
                .differs("rotation", RigidMove.of(degrees(31), A))
                .differs("shift", RigidMove.of(degrees(30), B))
                .prints("30")
                .check();
        assertThat(Kind.ANGLE.si(RigidMove.of(degrees(370), A).rotation()))
                .isCloseTo(Math.toRadians(10), within(1e-12));
        assertThat(Refusals.of(() -> ProbedPoint.edge(A, A, B))).isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> ProbedPoint.wall(A, millimetres(0), B))).isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> ProbedPoint.hole(A, B).withUncertainty(millimetres(0))))
                .isEqualTo("must-be-above");
    }

    @Test
    void aLocationIsAValue() {
        ValueContract.of(() -> PartLocator.locate(List.of(ProbedPoint.hole(A, A), ProbedPoint.hole(B, B))))
                .differs("points", PartLocator.locate(List.of(ProbedPoint.hole(A, A), ProbedPoint.hole(C, C))))
                .check();
    }

    /**
     * Two holes 2 a apart, each probed with the uncertainty u in both directions: their middle is found within u/sqrt 2, the
     * rotation within u/(a sqrt 2), and a place r from the middle within u/sqrt 2 sqrt(1 + (r/a)^2), whatever its direction.
     */
    @ParameterizedTest
    @CsvSource({"0, 0, 0", "300, 200, 0", "300, 200, 40", "-150, 80, 200"})
    void placesFarFromTheProbedOnesAreLessSure(double xMm, double yMm, double turn) {
        double a = 50;
        double u = 0.02;
        RigidMove move = RigidMove.of(degrees(turn), Point.millimetres(12, -7));
        Location location = PartLocator.locate(
                List.of(
                        hole(Point.millimetres(xMm - a, yMm), move).withUncertainty(millimetres(u)),
                        hole(Point.millimetres(xMm + a, yMm), move).withUncertainty(millimetres(u))),
                move);

        assertThat(Kind.ANGLE.si(location.rotationUncertainty()))
                .isCloseTo(u / a / Math.sqrt(2), withinPercentage(0.01));
        for (double r : new double[] {0, 20, 50, 400}) {
            for (int direction = 0; direction < 360; direction += 45) {
                Point place = Point.millimetres(
                        xMm + r * Math.cos(Math.toRadians(direction)), yMm + r * Math.sin(Math.toRadians(direction)));
                assertThat(1000 * Kind.LENGTH.si(location.uncertaintyAt(place)))
                        .isCloseTo(u / Math.sqrt(2) * Math.hypot(1, r / a), withinPercentage(0.01));
            }
        }
    }

    @Test
    void whatIsProbedIsNamed() {
        assertThat(hole(A, RigidMove.none()).toString()).startsWith("hole probed at");
        assertThat(onEdge(A, B, 0.5, RigidMove.none()).toString()).startsWith("edge probed at");
    }

    @Test
    void aWholeTurnIsNone() {
        assertThat(RigidMove.of(degrees(-360), Point.millimetres(0, 0))).isEqualTo(RigidMove.none());
        assertThat(RigidMove.of(degrees(-0.0), Point.millimetres(0, 0))).isEqualTo(RigidMove.none());
    }
}
