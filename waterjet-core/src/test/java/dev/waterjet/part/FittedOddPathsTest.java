package dev.waterjet.part;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.part.FittedJointsTest.assertCovers;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Fitted paths that are no plain samples of a curve: arcs of the drawing, slivers, paths that run back. */
class FittedOddPathsTest {

    private static ConditionedContour fitted(Contour contour) {
        return ContourConditioner.defaults().condition(contour);
    }

    /** Arcs of the drawing that are more than samples stay; what one circle replaces becomes one arc. */
    @Test
    void arcsOfTheDrawingStayAndThoseOfOneCircleAreJoined() {
        Contour halves = Contour.fromSi(0.01, 0)
                .arcToSi(-0.01, 0, 0, 0, Side.LEFT)
                .arcToSi(0.01, 0, 0, 0, Side.LEFT)
                .close();
        ConditionedContour circle = fitted(halves);
        assertThat(circle.contour().size()).isEqualTo(1);
        assertThat(Kind.ANGLE.si(circle.contour().edge(0).sweep())).isCloseTo(2 * Math.PI, within(1e-12));
        assertThat(circle.contour()
                        .edge(0)
                        .centre()
                        .orElseThrow()
                        .distance(Point.ofSi(0, 0))
                        .getValue()
                        .doubleValue())
                .isLessThan(1e-12);
        assertCovers(circle);

        Contour back = Contour.fromSi(0.01, 0)
                .arcToSi(0, 0.01, 0, 0, Side.LEFT)
                .arcToSi(-0.005, 0.005, 0, 0.005, Side.LEFT)
                .arcToSi(0, 0, -0.005, 0, Side.RIGHT)
                .open();
        ConditionedContour kept = fitted(back);
        assertThat(kept.contour()).isEqualTo(back);
        assertCovers(kept);
        assertThat(Kind.LENGTH.si(kept.maximumDeviation())).isZero();

        ContourBuilder builder = Contour.fromSi(0.01, 0);
        for (int i = 1; i <= 9; i++) {
            double angle = 0.25 * i;
            builder.arcToSi(0.01 * Math.cos(angle), 0.01 * Math.sin(angle), 0, 0, Side.LEFT);
        }
        ConditionedContour one = fitted(builder.open());
        assertThat(one.contour().size()).isEqualTo(1);
        assertThat(Kind.ANGLE.si(one.contour().edge(0).sweep())).isCloseTo(2.25, within(1e-9));
        assertThat(Kind.LENGTH.si(one.maximumDeviation())).isLessThan(1e-12);
    }

    @Test
    void aContourOfWhichTwoLinesWouldRemainStaysAsItIs() {
        Contour thin =
                Contour.fromSi(0, 0).lineToSi(0.02, 0).lineToSi(0.01, 3e-6).close();
        assertThat(fitted(thin).contour()).isEqualTo(thin);
        assertCovers(fitted(thin));
        Contour thick =
                Contour.fromSi(0, 0).lineToSi(0.02, 0).lineToSi(0.01, 300e-6).close();
        assertThat(fitted(thick).contour()).isEqualTo(thick);
        ConditionedContour open = fitted(
                Contour.fromSi(0, 0).lineToSi(0.01, 3e-6).lineToSi(0.02, 0).open());
        assertThat(open.contour().size()).isEqualTo(1);
        assertThat(Kind.LENGTH.si(open.maximumDeviation())).isCloseTo(3e-6, within(1e-15));
        assertThat(open.edgeOfMaximumDeviation()).isZero();
    }

    /** A path that runs back is not drawn over: no vertex lies behind the farthest before it by more than twice the tolerance. */
    @Test
    void piecesDoNotHideAPathThatRunsBack() {
        Random random = new Random(9);
        EdgeCursor piece = new EdgeCursor();
        for (int round = 0; round < 60; round++) {
            double radius = round % 3 == 0 ? 1e6 : 0.002 + 0.01 * random.nextDouble();
            double back = 1e-6 * (1 + 30 * random.nextDouble());
            ContourBuilder builder = Contour.fromSi(0, 0);
            double along = 0;
            for (int i = 0; i < 80; i++) {
                along += i % 4 == 3 ? -back : 3e-5 * random.nextDouble() + 1e-6;
                builder.lineToSi(radius * Math.sin(along / radius), radius * (1 - Math.cos(along / radius)));
            }
            ConditionedContour fitted =
                    ContourConditioner.defaults().withTolerance(micrometres(5)).condition(builder.open());
            assertCovers(fitted);
            for (int k = 0; k < fitted.contour().size(); k++) {
                fitted.contour().load(k, piece);
                double farthest = 0;
                for (int i = fitted.firstSourceEdge(k); i <= fitted.lastSourceEdge(k); i++) {
                    Contour source = fitted.source();
                    double at = piece.shareAt(source.xSi(i + 1), source.ySi(i + 1)) * piece.length();
                    assertThat(farthest - at).isLessThan(10.5e-6);
                    farthest = Math.max(farthest, at);
                }
            }
            if (back > 11e-6) {
                assertThat(fitted.contour().size()).isGreaterThan(5);
            } else if (back < 4e-6) {
                assertThat(fitted.contour().size()).isLessThan(5);
            }
        }
    }

    /** A tear has one corner, where the sides meet; it is a joint wherever the drawing starts, also at the corner itself. */
    @Test
    void theOnlyCornerIsAJointWhereverItStarts() {
        List<double[]> points = new ArrayList<>();
        points.add(new double[] {0, -0.02});
        for (int i = 0; i <= 60; i++) {
            double angle = -Math.PI / 6 + 4 * Math.PI / 3 * i / 60;
            points.add(new double[] {0.01 * Math.cos(angle), 0.01 * Math.sin(angle)});
        }
        int n = points.size();
        for (int start = 0; start < n; start++) {
            List<double[]> round = new ArrayList<>(points);
            Collections.rotate(round, -start);
            ContourBuilder builder = Contour.fromSi(round.get(0)[0], round.get(0)[1]);
            round.subList(1, n).forEach(p -> builder.lineToSi(p[0], p[1]));
            ConditionedContour fitted = fitted(builder.close());
            assertCovers(fitted);
            assertThat(fitted.contour().size()).isEqualTo(3);
            int corners = 0;
            for (int k = 0; k < 3; k++) {
                boolean isTip =
                        Math.hypot(fitted.contour().xSi(k), fitted.contour().ySi(k) + 0.02) < 1e-12;
                assertThat(fitted.isCorner(k)).isEqualTo(isTip);
                assertThat(fitted.isSmooth(k)).isEqualTo(!isTip);
                corners += isTip ? 1 : 0;
            }
            assertThat(corners).isEqualTo(1);
        }
    }

    /** The same with arcs of the drawing: a lens, and a drop of two arcs of one side and one line. */
    @Test
    void contoursOfDrawnArcsKeepTheirCornersWhereverTheyStart() {
        double root = Math.sqrt(3);
        Contour lens = Contour.fromSi(0, -root)
                .arcToSi(0, root, -1, 0, Side.LEFT)
                .arcToSi(0, -root, 1, 0, Side.LEFT)
                .close();
        for (Contour contour : List.of(lens, lens.reversed(), lens.startingAt(Kind.LENGTH.of(1)))) {
            ConditionedContour fitted = fitted(contour);
            assertCovers(fitted);
            assertThat(fitted.contour().size()).isEqualTo(2);
            for (int k = 0; k < 2; k++) {
                assertThat(Math.abs(fitted.contour().ySi(k))).isCloseTo(root, within(1e-9));
                assertThat(fitted.isCorner(k)).isTrue();
                assertThat(Math.abs(Kind.ANGLE.si(fitted.contour().edge(k).sweep())))
                        .isCloseTo(2 * Math.PI / 3, within(1e-9));
            }
        }
        // a half disc, started anywhere on its arc
        Contour half = Contour.fromSi(0, -1).arcToSi(0, 1, 0, 0, Side.LEFT).close();
        for (double start = 0.1; start < Math.PI; start += 0.3) {
            ConditionedContour fitted = fitted(half.startingAt(Kind.LENGTH.of(start)));
            assertCovers(fitted);
            assertThat(fitted.contour().size()).isEqualTo(2);
            assertThat(fitted.contour().isArc(0)).isTrue();
            assertThat(fitted.contour().isArc(1)).isFalse();
        }
    }

    /** The end of an open circle that lies within the tolerance of its start is its start; one farther away is not. */
    @Test
    void anOpenCircleIsFullIfItsEndLiesWithinTheToleranceOfItsStart() {
        for (int turn = -1; turn <= 1; turn += 2) {
            for (double gap : new double[] {0, 3e-6, 4.8e-6, 30e-6, 100e-6}) {
                double full = 2 * Math.PI - gap / 0.01;
                ContourBuilder builder = Contour.fromSi(0.01, 0);
                for (int i = 1; i <= 90; i++) {
                    builder.lineToSi(0.01 * Math.cos(full * i / 90), turn * 0.01 * Math.sin(full * i / 90));
                }
                ConditionedContour fitted = fitted(builder.open());
                assertThat(fitted.contour().size()).isEqualTo(1);
                double sweep = turn * Kind.ANGLE.si(fitted.contour().edge(0).sweep());
                assertThat(sweep).isCloseTo(gap < 5e-6 ? 2 * Math.PI : full, within(1e-7));
                assertThat(Kind.LENGTH.si(fitted.contour().edge(0).radius().orElseThrow()))
                        .isCloseTo(0.01, within(2e-6));
            }
        }
    }

    /** A short line says little about the tangent; the arc behind it is laid through its middle instead. */
    @Test
    void theArcBehindAShortScatteredLineStillBeginsWhereTheyTouch() {
        Random random = new Random(5);
        for (int round = 0; round < 60; round++) {
            ContourBuilder builder = Contour.fromSi(-0.001, 1e-6 * random.nextDouble());
            for (int i = 1; i <= 4; i++) {
                builder.lineToSi(-0.001 + 0.00025 * i, 1e-6 * random.nextDouble());
            }
            double radius = 0.005 + 0.02 * random.nextDouble();
            for (int i = 1; i <= 80; i++) {
                double angle = 1.5 * i / 80;
                builder.lineToSi(radius * Math.sin(angle), radius * (1 - Math.cos(angle)));
            }
            for (Contour contour : List.of(builder.open(), builder.open().reversed())) {
                ConditionedContour fitted = fitted(contour);
                assertCovers(fitted);
                for (int k = 0; k < fitted.contour().size(); k++) {
                    Edge piece = fitted.contour().edge(k);
                    if (k > 0 && piece.isArc() != fitted.contour().isArc(k - 1)) {
                        // within half a chord
                        assertThat(Math.hypot(
                                        fitted.contour().xSi(k),
                                        fitted.contour().ySi(k)))
                                .isLessThan(radius * 1.5 / 160);
                    }
                    if (piece.isArc() && Math.abs(Kind.ANGLE.si(piece.sweep())) > 1) {
                        assertThat(Kind.LENGTH.si(piece.radius().orElseThrow()))
                                .isCloseTo(radius, within(0.002 * radius));
                    }
                }
                assertThat(fitted.contour().size()).isLessThanOrEqualTo(3);
            }
        }
    }

    @Test
    void aCornerOverALengthIsOneWhoseSagittaOverItExceedsTheFlattening() {
        Contour path =
                Contour.fromSi(0, 0).lineToSi(0.01, 0).lineToSi(0.05, 0.012).open();
        ConditionedContour fitted = fitted(path);
        double turn = Math.atan(0.3);

        assertThat(fitted.contour().size()).isEqualTo(2);
        assertThat(fitted.isCorner(1)).isTrue();
        // 20 um of flattening over an eighth of the turn
        double least = 8 * 20e-6 / turn;
        assertThat(fitted.isCorner(1, Kind.LENGTH.of(least * 1.001))).isTrue();
        assertThat(fitted.isCorner(1, Kind.LENGTH.of(least * 0.999))).isFalse();
        assertThat(fitted.isCorner(1, Kind.LENGTH.of(1))).isTrue();
        assertThat(fitted.isCorner(0)).isFalse();
        assertThat(fitted.isCorner(2)).isFalse();
        assertThat(fitted.isSmooth(0)).isTrue();
        assertThat(fitted.isSmooth(1)).isFalse();
        assertThat(fitted.isSmooth(2)).isTrue();
        assertRefused(() -> fitted.isCorner(3), "no-such-index");
        assertRefused(() -> fitted.isSmooth(3), "no-such-index");
        assertRefused(() -> fitted.isSmooth(-1), "no-such-index");
        assertRefused(() -> fitted.firstSourceEdge(2), "no-such-index");
        assertRefused(() -> fitted.lastSourceEdge(2), "no-such-index");
        assertRefused(() -> fitted.deviation(2), "no-such-index");
    }

    /** A turn between arcs is smooth up to the square root of 8 e/R, R being the smaller radius. */
    @Test
    void aTurnThatConditioningLeavesIsSmooth() {
        for (double radius : new double[] {0.002, 0.02}) {
            for (int arcs = 1; arcs <= 2; arcs++) {
                for (double share : new double[] {0.99, 1.01, -0.99, -1.01}) {
                    double turn = share * Math.sqrt(8 * 5e-6 / radius);
                    double first = arcs == 2 ? 3 * radius : 0;
                    Contour path = (arcs == 2
                                    ? Contour.fromSi(-first, first).arcToSi(0, 0, 0, first, Side.LEFT)
                                    : Contour.fromSi(-0.01, 0).lineToSi(0, 0))
                            .arcToSi(
                                    radius * (Math.cos(turn) - Math.sin(turn)),
                                    radius * (Math.cos(turn) + Math.sin(turn)),
                                    -radius * Math.sin(turn),
                                    radius * Math.cos(turn),
                                    Side.LEFT)
                            .open();
                    ConditionedContour fitted = fitted(path);
                    assertThat(fitted.contour().size()).isEqualTo(2);
                    assertThat(fitted.isSmooth(1)).isEqualTo(Math.abs(share) < 1);
                }
            }
        }
    }

    @Test
    void aConditionedContourDescribesItself() {
        ConditionedContour fitted = fitted(Contour.fromSi(0, 0)
                .lineToSi(0.01, 3e-6)
                .lineToSi(0.02, 0)
                .open()
                .named("rim"));

        assertThat(fitted.describe())
                .containsEntry("maximum_deviation_m", Kind.LENGTH.si(fitted.maximumDeviation()))
                .containsEntry("source_edges", 2L)
                .containsKey("contour");
        assertThat(fitted).hasToString("open \"rim\" of 1 edge from (0 mm, 0 mm) for 2 edges");
        assertThat(fitted.contour().name()).isEqualTo("rim");
    }
}
