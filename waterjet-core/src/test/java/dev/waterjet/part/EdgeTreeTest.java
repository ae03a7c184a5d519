package dev.waterjet.part;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class EdgeTreeTest {

    /** An open path of lines and arcs about a place. */
    private static Contour path(Random random, int edges, double aboutX, double aboutY) {
        ContourBuilder builder = Contour.fromSi(aboutX, aboutY);
        for (int i = 0; i < edges; i++) {
            double x = aboutX + random.nextDouble() - 0.5;
            double y = aboutY + random.nextDouble() - 0.5;
            if (random.nextBoolean()) {
                builder.lineToSi(x, y);
            } else {
                Point middle = Point.ofSi(aboutX + random.nextDouble() - 0.5, aboutY + random.nextDouble() - 0.5);
                builder.arcThrough(middle, Point.ofSi(x, y));
            }
        }
        return builder.open();
    }

    private static double leastOfPairs(Contour a, Contour b) {
        EdgeCursor one = new EdgeCursor();
        EdgeCursor other = new EdgeCursor();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < a.size(); i++) {
            a.load(i, one);
            for (int j = 0; j < b.size(); j++) {
                b.load(j, other);
                least = Math.min(least, EdgeKernel.distance(one, other, new double[4]));
            }
        }
        return least;
    }

    private static double leastOfEdges(Contour contour, double x, double y) {
        EdgeCursor edge = new EdgeCursor();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            least = Math.min(least, edge.distance(x, y));
        }
        return least;
    }

    @Test
    void clearanceIsTheLeastOfAllPairsInAnyDirection() {
        Random random = new Random(3);
        for (int round = 0; round < 200; round++) {
            double angle = 2 * Math.PI * round / 200;
            Contour a = path(random, 1 + random.nextInt(40), 0, 0);
            Contour b = path(random, 1 + random.nextInt(40), 6 * Math.cos(angle), 6 * Math.sin(angle));
            double least = leastOfPairs(a, b);

            assertThat(EdgeTree.of(a).clearance(EdgeTree.of(b))).isCloseTo(least, within(1e-12));
            assertThat(EdgeTree.of(b).clearance(EdgeTree.of(a))).isCloseTo(least, within(1e-12));
            assertThat(EdgeTree.of(a).contour()).isSameAs(a);
        }
    }

    @Test
    void distancesBelowABoundAreFoundAndOthersAreTheBound() {
        Random random = new Random(6);
        Contour contour = path(random, 60, 0, 0);
        EdgeTree tree = EdgeTree.of(contour);
        BoxTree.Walk walk = tree.walk();
        EdgeCursor scratch = new EdgeCursor();
        EdgeCursor edge = new EdgeCursor();
        for (int round = 0; round < 400; round++) {
            double x = 6 * random.nextDouble() - 3;
            double y = 6 * random.nextDouble() - 3;
            double bound = 3 * random.nextDouble();
            double least = leastOfEdges(contour, x, y);
            assertThat(tree.distance(x, y, bound, walk, scratch)).isCloseTo(Math.min(bound, least), within(1e-12));
            assertThat(tree.distance(x, y, Double.POSITIVE_INFINITY, walk, scratch))
                    .isCloseTo(least, within(1e-12));

            Contour single = path(random, 1, x, y);
            single.load(0, edge);
            double apart = leastOfPairs(single, contour);
            assertThat(tree.distance(edge, bound, walk)).isCloseTo(Math.min(bound, apart), within(1e-12));
        }
    }
}
