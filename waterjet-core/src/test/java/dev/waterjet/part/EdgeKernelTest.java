package dev.waterjet.part;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class EdgeKernelTest {

    private static final double INFINITE = Double.POSITIVE_INFINITY;

    private static EdgeCursor edge(Random random) {
        EdgeCursor edge = new EdgeCursor();
        double x = random.nextDouble();
        double y = random.nextDouble();
        if (random.nextBoolean()) {
            edge.line(x, y, random.nextDouble(), random.nextDouble());
        } else {
            double r = 0.1 + random.nextDouble();
            double from = 6 * random.nextDouble();
            double sweep = (random.nextBoolean() ? 1 : -1) * (0.2 + 5.9 * random.nextDouble());
            double cx = x - r * Math.cos(from);
            double cy = y - r * Math.sin(from);
            edge.arc(x, y, cx + r * Math.cos(from + sweep), cy + r * Math.sin(from + sweep), cx, cy, sweep);
        }
        return edge;
    }

    @Test
    void distancesAndCrossingsOfEdgesAgreeWithTheirSamples() {
        Random random = new Random(5);
        double[] points = new double[4];
        int samples = 200;
        int crossing = 0;
        for (int pair = 0; pair < 200; pair++) {
            EdgeCursor a = edge(random);
            EdgeCursor b = edge(random);
            double least = INFINITE;
            for (int i = 0; i <= samples; i++) {
                double share = (double) i / samples;
                least = Math.min(least, EdgeKernel.distance(b, a.xAt(share), a.yAt(share)));
            }
            double apart = EdgeKernel.distance(a, b, points);
            assertThat(apart).isBetween(least - a.length() / samples, least + 1e-12);
            assertThat(EdgeKernel.distance(b, a, points)).isCloseTo(apart, within(1e-9));
            int count = EdgeKernel.crossings(a, b, points);
            assertThat(count > 0).isEqualTo(apart == 0);
            for (int i = 0; i < count; i++) {
                assertThat(EdgeKernel.distance(a, points[2 * i], points[2 * i + 1]))
                        .isLessThan(1e-9);
                assertThat(EdgeKernel.distance(b, points[2 * i], points[2 * i + 1]))
                        .isLessThan(1e-9);
            }
            crossing += count;
        }
        assertThat(crossing).isGreaterThan(50);
    }

    @Test
    void edgesOfOneCurveShareTheirEnds() {
        EdgeCursor a = new EdgeCursor();
        EdgeCursor b = new EdgeCursor();
        double[] points = new double[4];
        a.line(0, 0, 4, 0);
        b.line(3, 0, 9, 0);
        assertThat(EdgeKernel.crossings(a, b, points)).isEqualTo(2);
        assertThat(points).containsExactly(4, 0, 3, 0);
        b.line(4, 0, 9, 0);
        assertThat(EdgeKernel.crossings(a, b, points)).isEqualTo(1);
        b.line(0, 1, 4, 1);
        assertThat(EdgeKernel.crossings(a, b, points)).isZero();
        assertThat(EdgeKernel.distance(a, b, points)).isEqualTo(1);
        // two quarters of one circle that meet, and one inside the other's circle
        a.arc(1, 0, 0, 1, 0, 0, Math.PI / 2);
        b.arc(0, 1, -1, 0, 0, 0, Math.PI / 2);
        assertThat(EdgeKernel.crossings(a, b, points)).isEqualTo(1);
        b.arc(0.5, 0, 0, 0.5, 0, 0, Math.PI / 2);
        assertThat(EdgeKernel.crossings(a, b, points)).isZero();
        assertThat(EdgeKernel.distance(a, b, points)).isCloseTo(0.5, within(1e-15));
    }

    /** The directions that an arc spans, by counting its turn. */
    @Test
    void anArcSpansTheDirectionsThatItPasses() {
        EdgeCursor arc = new EdgeCursor();
        Random random = new Random(3);
        for (int i = 0; i < 20_000; i++) {
            double from = 6.28 * random.nextDouble();
            double sweep = (random.nextBoolean() ? 1 : -1) * (0.01 + 6.26 * random.nextDouble());
            arc.arc(Math.cos(from), Math.sin(from), Math.cos(from + sweep), Math.sin(from + sweep), 0, 0, sweep);
            double at = 6.28 * random.nextDouble();
            double turned = (at - from) * Math.signum(sweep);
            turned -= 2 * Math.PI * Math.floor(turned / (2 * Math.PI));
            assertThat(arc.spans(3 * Math.cos(at), 3 * Math.sin(at))).isEqualTo(turned <= Math.abs(sweep));
        }
    }
}
