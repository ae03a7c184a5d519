package dev.waterjet.part;

import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.part.FittedJointsTest.assertCovers;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
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
}
