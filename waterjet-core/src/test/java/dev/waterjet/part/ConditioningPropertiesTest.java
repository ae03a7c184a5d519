package dev.waterjet.part;

import static dev.waterjet.measure.Measures.micrometres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.reference.ReferencePaths;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class ConditioningPropertiesTest {

    private static final double TOLERANCE = 5e-6;
    private static final double FLATTENING = 20e-6;

    /** A path of lines, arcs and waves, sampled at random steps, with scatter. */
    private static Contour noisy(long seed, double scatter) {
        Random random = new Random(seed);
        ContourBuilder builder = Contour.fromSi(0, 0);
        double x = 0;
        double y = 0;
        double heading = 0;
        for (int stretch = 0; stretch < 6; stretch++) {
            double curvature =
                    random.nextInt(3) == 0 ? 0 : (random.nextBoolean() ? 1 : -1) / (1e-3 + 0.03 * random.nextDouble());
            double step = 2e-5 * Math.exp(4 * random.nextDouble());
            heading += random.nextInt(3) == 0 ? 2 * random.nextDouble() - 1 : 0;
            for (int i = 0; i < 30; i++) {
                double s = step * (0.2 + random.nextDouble());
                x += s * Math.cos(heading + s * curvature / 2);
                y += s * Math.sin(heading + s * curvature / 2);
                heading += s * curvature;
                builder.lineToSi(
                        x + scatter * (2 * random.nextDouble() - 1), y + scatter * (2 * random.nextDouble() - 1));
            }
            if (random.nextInt(4) == 0) {
                // an arc of the drawing, short or long
                double radius = 1e-4 + 5e-3 * random.nextDouble();
                double turn = 0.1 + 2 * random.nextDouble();
                double cx = x - radius * Math.sin(heading);
                double cy = y + radius * Math.cos(heading);
                builder.lineToSi(x + 1e-8, y);
                heading += turn;
                x = cx + radius * Math.sin(heading);
                y = cy - radius * Math.cos(heading);
                builder.arcToSi(x, y, cx, cy, Side.LEFT);
            }
        }
        return builder.open();
    }

    /** Largest distance of the samples of each edge from the pieces that replace it. */
    private static double sampledDeviation(ConditionedContour conditioned, int samples) {
        Contour source = conditioned.source();
        EdgeCursor edge = new EdgeCursor();
        EdgeCursor piece = new EdgeCursor();
        double most = 0;
        for (int k = 0; k < conditioned.contour().size(); k++) {
            conditioned.contour().load(k, piece);
            for (int i = conditioned.firstSourceEdge(k); i <= conditioned.lastSourceEdge(k); i++) {
                source.load(i, edge);
                for (int j = 0; j <= samples; j++) {
                    double share = (double) j / samples;
                    most = Math.max(most, piece.distance(edge.xAt(share), edge.yAt(share)));
                }
            }
        }
        return most;
    }

    @Property(tries = 150, seed = "20261127")
    void everyPointStaysWithinTheBoundAndTheDeviationIsExact(
            @ForAll long seed, @ForAll @DoubleRange(min = 0, max = 12) double scatterUm) {
        ConditionedContour conditioned = ContourConditioner.defaults().condition(noisy(seed, 1e-6 * scatterUm));

        double most = sampledDeviation(conditioned, 20);
        double stated = Kind.LENGTH.si(conditioned.maximumDeviation());

        assertThat(most).isLessThanOrEqualTo(TOLERANCE + FLATTENING + 1e-9);
        assertThat(most).isLessThanOrEqualTo(stated + 1e-11);
        // samples miss the largest distance by little
        assertThat(stated - most).isLessThan(0.1 * stated + 1e-11);
    }

    @Property(tries = 100, seed = "20261128")
    void verticesStayWithinTheTolerance(@ForAll long seed, @ForAll @DoubleRange(min = 0, max = 12) double scatterUm) {
        assertThat(sampledDeviation(ContourConditioner.defaults().condition(noisy(seed, 1e-6 * scatterUm)), 1))
                .isLessThanOrEqualTo(TOLERANCE + 1e-11);
    }

    @Property(tries = 100, seed = "20261129")
    void piecesFollowOneAnotherAndCoverEveryEdgeOnce(@ForAll long seed) {
        ConditionedContour conditioned = ContourConditioner.defaults().condition(noisy(seed, 2e-6));
        int next = 0;
        for (int k = 0; k < conditioned.contour().size(); k++) {
            assertThat(conditioned.firstSourceEdge(k)).isEqualTo(next);
            next = conditioned.lastSourceEdge(k) + 1;
        }
        assertThat(next).isEqualTo(conditioned.source().size());
        assertThat(conditioned.contour().start()).isEqualTo(conditioned.source().start());
        assertThat(conditioned.contour().end()).isEqualTo(conditioned.source().end());
    }

    /** Chords of a circle, however sampled, are one circle. */
    @Property(tries = 100, seed = "20261130")
    void chordsAreTheCircleThatTheySample(
            @ForAll long seed,
            @ForAll @DoubleRange(min = 2, max = 50) double radiusMm,
            @ForAll @DoubleRange(min = 0.05, max = 0.7) double fineness,
            @ForAll boolean isUnequal,
            @ForAll boolean isRounded) {
        double radius = 1e-3 * radiusMm;
        // the longest chord has a sagitta of that share of the flattening
        double chord = Math.sqrt(8 * radius * fineness * FLATTENING);
        int n = (int) Math.ceil(2 * Math.PI * radius / chord) * (isUnequal ? 3 : 1);
        Random random = new Random(seed);
        double[] weight = new double[n];
        for (int i = 0; i < n; i++) {
            weight[i] = isUnequal ? Math.exp(random.nextDouble()) : 1;
        }

        Contour circle = ContourConditioner.defaults()
                .condition(ReferencePaths.circle(radius, n, i -> weight[i], isRounded ? 1e-6 : 0))
                .contour();

        assertThat(circle.size()).isEqualTo(1);
        assertThat(Kind.ANGLE.si(circle.edge(0).sweep())).isCloseTo(2 * Math.PI, within(1e-12));
        assertThat(Kind.LENGTH.si(circle.edge(0).radius().orElseThrow())).isCloseTo(radius, within(2e-6));
    }

    private static Contour moved(Contour contour, double scale, double angle) {
        double cos = scale * Math.cos(angle);
        double sin = scale * Math.sin(angle);
        EdgeCursor edge = new EdgeCursor();
        ContourBuilder builder = Contour.fromSi(0, 0);
        contour.load(0, edge);
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            double x = cos * edge.endX() - sin * edge.endY();
            double y = sin * edge.endX() + cos * edge.endY();
            if (edge.isArc()) {
                double cx = cos * edge.centreX() - sin * edge.centreY();
                double cy = sin * edge.centreX() + cos * edge.centreY();
                builder.arcToSi(x, y, cx, cy, edge.sweep() > 0 ? Side.LEFT : Side.RIGHT);
            } else {
                builder.lineToSi(x, y);
            }
        }
        return builder.open();
    }

    @Property(tries = 60, seed = "20261131")
    void aTurnedPathHasTheSamePieces(@ForAll long seed, @ForAll @DoubleRange(min = 0, max = 6) double angle) {
        Contour path = noisy(seed, 1e-6);

        Contour plain = ContourConditioner.defaults().condition(path).contour();
        Contour turned =
                ContourConditioner.defaults().condition(moved(path, 1, angle)).contour();

        assertThat(turned.size()).isEqualTo(plain.size());
        assertThat(turned.lengthSi()).isCloseTo(plain.lengthSi(), within(1e-9));
    }

    @Property(tries = 60, seed = "20261132")
    void aScaledPathWithScaledTolerancesHasTheSamePieces(@ForAll long seed) {
        Contour path = noisy(seed, 1e-6);
        ContourConditioner scaled =
                ContourConditioner.defaults().withTolerance(micrometres(20)).withFlattening(micrometres(80));

        Contour plain = ContourConditioner.defaults().condition(path).contour();
        Contour large = scaled.condition(moved(path, 4, 0)).contour();

        assertThat(large.size()).isEqualTo(plain.size());
        assertThat(large.lengthSi()).isCloseTo(4 * plain.lengthSi(), within(1e-9));
    }

    @Property(tries = 60, seed = "20261133")
    void aReversedPathHasTheSameLength(@ForAll long seed) {
        Contour path = noisy(seed, 1e-6);

        double there = ContourConditioner.defaults().condition(path).contour().lengthSi();
        double back = ContourConditioner.defaults()
                .condition(path.reversed())
                .contour()
                .lengthSi();

        assertThat(back).isCloseTo(there, within(0.002 * there));
    }

    /** Turns of 9.9 and 10.1 degrees are alike, and so are others: no angle is a threshold. */
    @Property(tries = 50, seed = "20261134")
    void cornersGoByTheSagittaOverTheShorterEdge(
            @ForAll @DoubleRange(min = 0.01, max = 2) double turn,
            @ForAll @DoubleRange(min = 0.1, max = 50) double lengthMm) {
        double length = 1e-3 * lengthMm;
        Contour path = Contour.fromSi(-0.1, 0)
                .lineToSi(0, 0)
                .lineToSi(length * Math.cos(turn), length * Math.sin(turn))
                .open();
        ConditionedContour conditioned = ContourConditioner.defaults().condition(path);

        if (conditioned.contour().size() == 2) {
            assertThat(conditioned.isCorner(1)).isEqualTo(length * turn / 8 > FLATTENING);
        }
    }

    @Test
    void edgesOfDifferentRequirementsAreNotMerged() {
        EdgeRequirement fine = EdgeRequirement.of(CutQuality.FINE);
        ContourBuilder builder = Contour.fromSi(0, 0);
        for (int i = 1; i <= 40; i++) {
            builder.requirement(i <= 20 ? EdgeRequirement.defaults() : fine).lineToSi(1e-3 * i, 0);
        }
        ConditionedContour conditioned = ContourConditioner.defaults().condition(builder.open());

        assertThat(conditioned.contour().size()).isEqualTo(2);
        assertThat(conditioned.contour().requirement(0)).isEqualTo(EdgeRequirement.defaults());
        assertThat(conditioned.contour().requirement(1)).isEqualTo(fine);
        assertThat(conditioned.contour().end()).isEqualTo(Point.millimetres(40, 0));
    }

    /** Twelve chords of a circle of 10 mm have a sagitta of 0.34 mm: corners, unless they are marked as a curve. */
    @Property(tries = 17, seed = "20261135")
    void chordsMarkedAsACurveAreSamplesWhateverTheirLength(@ForAll @IntRange(min = 8, max = 24) int n) {
        for (boolean isCurve : new boolean[] {false, true}) {
            ContourBuilder builder = Contour.fromSi(0.01, 0).asCurve(isCurve);
            for (int i = 1; i <= n; i++) {
                double angle = 2 * Math.PI * i / n;
                builder.lineToSi(0.01 * Math.cos(angle), i == n ? 0 : 0.01 * Math.sin(angle));
            }
            Contour pieces =
                    ContourConditioner.defaults().condition(builder.close()).contour();
            assertThat(pieces.size()).isEqualTo(isCurve ? 1 : n);
        }
    }

    /** A Bézier curve of a quarter circle with the usual control points leaves it by 2.7e-4 of the radius (derived). */
    @Test
    void aSplineStaysWithinItsTolerance() {
        double k = 4.0 / 3 * (Math.sqrt(2) - 1);
        Contour quarter = Contour.fromSi(0.02, 0)
                .splineTo(Point.ofSi(0.02, 0.02 * k), Point.ofSi(0.02 * k, 0.02), Point.ofSi(0, 0.02))
                .open();

        assertThat(quarter.isCurve(0)).isTrue();
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < quarter.size(); i++) {
            quarter.load(i, edge);
            assertThat(Math.hypot(edge.xAt(0.5), edge.yAt(0.5))).isBetween(0.02 - 2.6e-6, 0.02 * (1 + 2.8e-4));
        }
        assertThat(ContourConditioner.defaults().condition(quarter).contour().size())
                .isLessThan(6);
    }
}
