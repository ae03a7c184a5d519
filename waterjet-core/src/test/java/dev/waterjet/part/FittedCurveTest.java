package dev.waterjet.part;

import static dev.waterjet.measure.Measures.micrometres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Curves given by formulas, sampled densely and fitted: distance, tangents and number of pieces against the formula. */
class FittedCurveTest {

    private static final double TOLERANCE = 5e-6;

    /** A curve over a parameter from 0 to 1. */
    private interface Formula {
        double[] at(double t);
    }

    /** A named curve with its samples at equal steps of the parameter. */
    record Curve(String name, Formula formula, int n) {

        double[] at(int i) {
            return formula.at((double) i / n);
        }

        Contour sampled() {
            ContourBuilder builder = Contour.fromSi(at(0)[0], at(0)[1]);
            for (int i = 1; i <= n; i++) {
                builder.lineToSi(at(i)[0], at(i)[1]);
            }
            return builder.open();
        }

        /** Direction at a sample, by differences of the formula. */
        double direction(int i) {
            double h = 1e-6;
            double[] before = formula.at((double) i / n - h);
            double[] after = formula.at((double) i / n + h);
            return Math.atan2(after[1] - before[1], after[0] - before[0]);
        }

        @Override
        public String toString() {
            return name;
        }
    }

    static List<Curve> curves() {
        return List.of(
                new Curve("ellipse", t -> new double[] {0.03 * Math.cos(6 * t), 0.012 * Math.sin(6 * t)}, 1500),
                new Curve("sine", t -> new double[] {0.1 * t, 0.004 * Math.sin(25 * t)}, 1800),
                new Curve("parabola", t -> new double[] {0.04 * t - 0.02, 20 * Math.pow(0.04 * t - 0.02, 2)}, 900),
                new Curve("spiral", t -> polar(0.004 + 0.01 * t, 13 * t), 1500),
                new Curve("flower", t -> polar(0.02 + 0.003 * Math.cos(30 * t), -6.2 * t), 2500),
                new Curve("cubic", t -> new double[] {0.05 * t, 0.08 * t * (t - 0.4) * (t - 1)}, 700));
    }

    private static double[] polar(double radius, double angle) {
        return new double[] {radius * Math.cos(angle), radius * Math.sin(angle)};
    }

    private static ConditionedContour fitted(Contour contour) {
        return ContourConditioner.defaults().condition(contour);
    }

    @ParameterizedTest
    @MethodSource("curves")
    void everySampleLiesWithinTheToleranceOfItsPieceAndThePiecesEndOnSamples(Curve curve) {
        ConditionedContour fitted = fitted(curve.sampled());
        EdgeCursor piece = new EdgeCursor();
        double most = 0;
        for (int k = 0; k < fitted.contour().size(); k++) {
            fitted.contour().load(k, piece);
            int first = fitted.firstSourceEdge(k);
            int end = fitted.lastSourceEdge(k) + 1;
            assertThat(piece.startX()).isEqualTo(curve.at(first)[0]);
            assertThat(piece.startY()).isEqualTo(curve.at(first)[1]);
            assertThat(piece.endX()).isEqualTo(curve.at(end)[0]);
            assertThat(piece.endY()).isEqualTo(curve.at(end)[1]);
            double worst = 0;
            for (int i = first; i <= end; i++) {
                worst = Math.max(worst, piece.distance(curve.at(i)[0], curve.at(i)[1]));
            }
            assertThat(worst).isLessThanOrEqualTo(TOLERANCE * (1 + 1e-6));
            // chords leave the curve by less than 0.25 um here
            assertThat(Kind.LENGTH.si(fitted.deviation(k))).isBetween(worst - 1e-12, worst + 2.5e-7);
            most = Math.max(most, worst);
        }
        assertThat(Kind.LENGTH.si(fitted.maximumDeviation())).isBetween(most - 1e-12, most + 2.5e-7);
        assertThat(fitted.edgeOfMaximumDeviation()).isBetween(0, curve.n() - 1);
    }

    /**
     * Two curves that are apart by e at most over the length l differ in direction by {@code 2 d^2 e/l} at most, if their
     * difference is a polynomial of degree d (A. A. Markov, 1889, from memory); here it is one of the fourth nearly.
     */
    @ParameterizedTest
    @MethodSource("curves")
    void thePiecesLeaveAndReachTheirEndsInTheDirectionOfTheCurve(Curve curve) {
        ConditionedContour fitted = fitted(curve.sampled());
        EdgeCursor piece = new EdgeCursor();
        for (int k = 0; k < fitted.contour().size(); k++) {
            fitted.contour().load(k, piece);
            double bound = 32 * TOLERANCE / piece.length();
            double atStart = Math.atan2(piece.startDirectionY(), piece.startDirectionX())
                    - curve.direction(fitted.firstSourceEdge(k));
            double atEnd = Math.atan2(piece.endDirectionY(), piece.endDirectionX())
                    - curve.direction(fitted.lastSourceEdge(k) + 1);
            assertThat(Math.IEEEremainder(atStart, 2 * Math.PI)).isBetween(-bound, bound);
            assertThat(Math.IEEEremainder(atEnd, 2 * Math.PI)).isBetween(-bound, bound);
        }
    }

    /** Whether an arc of some bulge from one sample to another keeps the samples between within a distance. */
    private static boolean hasArc(Curve curve, int from, int to, double distance) {
        double[] start = curve.at(from);
        double[] end = curve.at(to);
        double chord = Math.hypot(end[0] - start[0], end[1] - start[1]);
        double ux = (end[0] - start[0]) / chord;
        double uy = (end[1] - start[1]) / chord;
        // centres at a height over the chord: each sample leaves an interval of 1/height; narrowed sample by sample
        double low = -1 / (0.3 * chord);
        double high = 1 / (0.3 * chord);
        for (int i = from + 1; i < to; i++) {
            double x = (curve.at(i)[0] - start[0]) * ux + (curve.at(i)[1] - start[1]) * uy - chord / 2;
            double y = (curve.at(i)[1] - start[1]) * ux - (curve.at(i)[0] - start[0]) * uy;
            low = Math.max(low, bisected(low, high, x, y, chord, distance));
            high = Math.min(high, bisected(high, low, x, y, chord, -distance));
            if (low > high) {
                return false;
            }
        }
        return true;
    }

    /** Signed distance of a point above the arc with the tangent of half its angle that is given; it falls as the bulge rises. */
    private static double above(double bulge, double x, double y, double chord) {
        if (Math.abs(bulge * chord) < 1e-9) {
            return y;
        }
        double height = 1 / bulge;
        double radius = Math.hypot(chord / 2, height);
        double sagitta = radius - Math.abs(height);
        double centre = bulge > 0 ? sagitta - radius : radius - sagitta;
        return bulge > 0 ? Math.hypot(x, y - centre) - radius : radius - Math.hypot(x, y - centre);
    }

    /** The bulge between two bounds at which a point is a distance above the arc; the first bound if it is met there. */
    private static double bisected(double bound, double other, double x, double y, double chord, double distance) {
        boolean isLow = distance > 0;
        double here = above(bound, x, y, chord) - distance;
        if (isLow ? here <= 0 : here >= 0) {
            return bound;
        }
        double there = above(other, x, y, chord) - distance;
        if (isLow ? there > 0 : there < 0) {
            return isLow ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
        }
        double a = bound;
        double b = other;
        for (int i = 0; i < 30; i++) {
            double middle = (a + b) / 2;
            double value = above(middle, x, y, chord) - distance;
            if (isLow ? value > 0 : value < 0) {
                a = middle;
            } else {
                b = middle;
            }
        }
        return b;
    }

    /** Number of arcs if each is the longest that keeps a distance, found by trying ends by halving. */
    private static int greedy(Curve curve, double distance) {
        int count = 0;
        int at = 0;
        while (at < curve.n()) {
            int step = 1;
            while (at + 2 * step <= curve.n() && hasArc(curve, at, at + 2 * step, distance)) {
                step *= 2;
            }
            int end = at + step;
            for (int more = step / 2; more > 0; more /= 2) {
                end = end + more <= curve.n() && hasArc(curve, at, end + more, distance) ? end + more : end;
            }
            end = end < curve.n() && curve.n() - at <= 2 * step && hasArc(curve, at, curve.n(), distance)
                    ? curve.n()
                    : end;
            at = end;
            count++;
        }
        return count;
    }

    @ParameterizedTest
    @MethodSource("curves")
    void noMorePiecesThanTheLongestArcsOfASlightlySmallerTolerance(Curve curve) {
        int size = fitted(curve.sampled()).contour().size();

        assertThat(size).isLessThanOrEqualTo(greedy(curve, 0.9 * TOLERANCE) + 1);
        assertThat(size).isGreaterThanOrEqualTo((int) (0.8 * greedy(curve, 1.01 * TOLERANCE)));
    }

    private static Contour transformed(Contour contour, double a, double b, double c, double d) {
        ContourBuilder builder =
                Contour.fromSi(a * contour.xSi(0) + b * contour.ySi(0), c * contour.xSi(0) + d * contour.ySi(0));
        for (int i = 1; i <= contour.size(); i++) {
            builder.lineToSi(a * contour.xSi(i) + b * contour.ySi(i), c * contour.xSi(i) + d * contour.ySi(i));
        }
        return builder.open();
    }

    private static void assertSamePieces(ConditionedContour one, ConditionedContour other, double scale) {
        assertThat(other.contour().size()).isEqualTo(one.contour().size());
        for (int k = 0; k < one.contour().size(); k++) {
            assertThat(other.firstSourceEdge(k)).isEqualTo(one.firstSourceEdge(k));
            assertThat(other.lastSourceEdge(k)).isEqualTo(one.lastSourceEdge(k));
            Edge edge = one.contour().edge(k);
            Edge image = other.contour().edge(k);
            assertThat(image.isArc()).isEqualTo(edge.isArc());
            assertThat(Kind.ANGLE.si(image.sweep())).isCloseTo(Kind.ANGLE.si(edge.sweep()), within(1e-9));
            assertThat(Kind.LENGTH.si(other.deviation(k)))
                    .isCloseTo(scale * Kind.LENGTH.si(one.deviation(k)), within(1e-12));
        }
    }

    @ParameterizedTest
    @MethodSource("curves")
    void theTurnedOrScaledCurveHasTheTurnedOrScaledPieces(Curve curve) {
        Contour contour = curve.sampled();
        ConditionedContour plain = fitted(contour);

        assertSamePieces(plain, fitted(transformed(contour, 0, -1, 1, 0)), 1);
        assertSamePieces(plain, fitted(transformed(contour, -1, 0, 0, -1)), 1);
        ContourConditioner coarse =
                ContourConditioner.defaults().withTolerance(micrometres(40)).withFlattening(micrometres(160));
        assertSamePieces(plain, coarse.condition(transformed(contour, 8, 0, 0, 8)), 8);
    }

    @ParameterizedTest
    @MethodSource("curves")
    void theMirroredOrReversedCurveHasAsManyPieces(Curve curve) {
        Contour contour = curve.sampled();
        int size = fitted(contour).contour().size();
        ConditionedContour mirrored = fitted(transformed(contour, 1, 0, 0, -1));

        assertThat(mirrored.contour().size()).isBetween(size - 1, size + 1);
        assertThat(fitted(contour.reversed()).contour().size()).isBetween(size - 1, size + 1);
        for (int k = 0; k < Math.min(size, mirrored.contour().size()); k++) {
            // a few samples of some tens
            assertThat(mirrored.firstSourceEdge(k))
                    .isCloseTo(fitted(contour).firstSourceEdge(k), within(curve.n() / size / 3 + 3));
        }
    }

    @ParameterizedTest
    @MethodSource("curves")
    void roundedCoordinatesAddFewPieces(Curve curve) {
        Random random = new Random(1);
        ContourBuilder builder = Contour.fromSi(curve.at(0)[0], curve.at(0)[1]);
        for (int i = 1; i <= curve.n(); i++) {
            double x = curve.at(i)[0] + 1e-6 * (2 * random.nextDouble() - 1);
            double y = curve.at(i)[1] + 1e-6 * (2 * random.nextDouble() - 1);
            builder.lineToSi(x, y);
        }
        int size = fitted(builder.open()).contour().size();

        // a scatter of 1.4 um leaves 3.6 um; the arcs of a curve are as long as the cube root of the tolerance
        assertThat(size).isLessThanOrEqualTo((int) Math.ceil(1.15 * greedy(curve, TOLERANCE - 1.5e-6)) + 1);
    }
}
