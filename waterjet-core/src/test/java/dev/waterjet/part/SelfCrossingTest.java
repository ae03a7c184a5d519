package dev.waterjet.part;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.degrees;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.quality.EdgeRequirement;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SelfCrossingTest {

    private static double side(double[] x, double[] y, int a, int b, int c) {
        return (x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a]);
    }

    /** Whether two lines between random points cross, by the sides of their ends. */
    private static boolean cross(double[] x, double[] y, int i, int j) {
        return side(x, y, i, i + 1, j) * side(x, y, i, i + 1, j + 1) < 0
                && side(x, y, j, j + 1, i) * side(x, y, j, j + 1, i + 1) < 0;
    }

    @Test
    void aPolylineIsRefusedIfAnyTwoOfItsLinesCross() {
        Random random = new Random(2);
        int crossing = 0;
        for (int round = 0; round < 300; round++) {
            int n = 4 + random.nextInt(30);
            double[] x = new double[n];
            double[] y = new double[n];
            for (int i = 0; i < n; i++) {
                x[i] = 0.02 * i + 0.05 * random.nextDouble();
                y[i] = random.nextDouble();
            }
            boolean expected = false;
            for (int i = 0; i + 1 < n; i++) {
                for (int j = i + 2; j + 1 < n; j++) {
                    expected |= cross(x, y, i, j);
                }
            }
            crossing += expected ? 1 : 0;
            Contour path = Contour.polylineSi(x, y, EdgeRequirement.defaults());
            Throwable thrown = catchThrowable(path::requireSimple);
            assertThat(thrown != null).isEqualTo(expected);
            if (thrown instanceof GeometryException refusal) {
                int i = refusal.edge();
                int j = Integer.parseInt(String.valueOf(refusal.parameters().get("other")));
                assertThat(refusal.code()).isEqualTo("crosses-itself");
                assertThat(cross(x, y, i, j)).isTrue();
                assertThat(distance(path, i, refusal)).isCloseTo(0, within(1e-12));
                assertThat(distance(path, j, refusal)).isCloseTo(0, within(1e-12));
            }
        }
        assertThat(crossing).isBetween(30, 290);
    }

    private static double distance(Contour path, int edge, GeometryException at) {
        EdgeCursor cursor = new EdgeCursor();
        path.load(edge, cursor);
        return cursor.distance(at.xSi(), at.ySi());
    }

    /** An end half a nanometre from another edge touches it; one two nanometres away does not. */
    @Test
    void eachEndThatComesNearAnotherEdgeTouchesIt() {
        for (double angle = 0; angle < 360; angle += 40) {
            for (int mirror = -1; mirror <= 1; mirror += 2) {
                for (double off : new double[] {0.5e-9, 2e-9}) {
                    // the last line ends just above the first; reversed, the first starts there
                    Contour hook = Contour.fromSi(0, 0)
                            .lineToSi(0.01, 0)
                            .lineToSi(0.01, mirror * 0.005)
                            .lineToSi(0.005, mirror * 0.005)
                            .lineToSi(0.005, mirror * off)
                            .open()
                            .rotatedBy(degrees(angle));
                    // the tip of an angle comes near a line before and after it
                    Contour tip = Contour.fromSi(0, 0)
                            .lineToSi(0.01, 0)
                            .lineToSi(0.01, mirror * 0.005)
                            .lineToSi(0.005, mirror * off)
                            .lineToSi(0, mirror * 0.005)
                            .open()
                            .rotatedBy(degrees(angle));
                    for (Contour contour : new Contour[] {hook, hook.reversed(), tip, tip.reversed()}) {
                        if (off < 1e-9) {
                            GeometryException refusal =
                                    (GeometryException) assertRefused(contour::requireSimple, "touches-itself");
                            assertThat(Math.hypot(refusal.xSi(), refusal.ySi())).isCloseTo(0.005, within(1e-8));
                            int other = Integer.parseInt(
                                    String.valueOf(refusal.parameters().get("other")));
                            assertThat(other).isGreaterThan(refusal.edge() + 1);
                        } else {
                            assertThat(contour.requireSimple()).isSameAs(contour);
                        }
                    }
                }
            }
        }
    }

    /** Neighbours meet at their common end alone, also the last and the first of a closed contour. */
    @Test
    void neighboursThatCrossElsewhereAreRefused() {
        Contour arcBack = Contour.fromSi(0, 0)
                .lineToSi(0.01, 0)
                .arcToSi(0.002, 0, 0.006, 0, Side.LEFT)
                .open();
        assertRefused(arcBack::requireSimple, "crosses-itself");
        assertRefused(() -> arcBack.reversed().requireSimple(), "crosses-itself");
        Contour slice = Contour.fromSi(0, 0)
                .lineToSi(0.01, 0)
                .arcToSi(0, 0, 0.005, 0, Side.LEFT)
                .close();
        assertThat(slice.requireSimple()).isSameAs(slice);
        assertThat(slice.reversed().requireSimple()).isEqualTo(slice.reversed());
        Contour back = Contour.fromSi(0, 0).lineToSi(0.01, 0).lineToSi(0.004, 0).open();
        assertRefused(back::requireSimple, "retraces-itself");
        Contour lens = Contour.fromSi(0, 0)
                .arcToSi(0.01, 0, 0.005, -0.01, Side.RIGHT)
                .arcToSi(0, 0, 0.005, 0.01, Side.RIGHT)
                .close();
        assertThat(lens.requireSimple()).isSameAs(lens);
    }
}
