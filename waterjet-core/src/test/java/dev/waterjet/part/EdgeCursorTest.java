package dev.waterjet.part;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class EdgeCursorTest {

    private static final double STEP = 1e-5;

    /** A line, or an arc of 0.01 to 6.27 rad to either side, of some millimetres or some metres. */
    private static EdgeCursor random(Random random) {
        EdgeCursor edge = new EdgeCursor();
        double size = random.nextBoolean() ? 1 : 1e-3;
        double cx = size * (2 * random.nextDouble() - 1);
        double cy = size * (2 * random.nextDouble() - 1);
        double from = 2 * Math.PI * random.nextDouble();
        double r = size * (0.1 + random.nextDouble());
        double sweep = (random.nextBoolean() ? 1 : -1) * (0.01 + 6.26 * random.nextDouble());
        double x0 = cx + r * Math.cos(from);
        double y0 = cy + r * Math.sin(from);
        double x1 = cx + r * Math.cos(from + sweep);
        double y1 = cy + r * Math.sin(from + sweep);
        if (random.nextInt(3) == 0) {
            edge.line(x0, y0, cx, cy);
        } else {
            edge.arc(x0, y0, x1, y1, cx, cy, sweep);
        }
        return edge;
    }

    @Test
    void directionsAreThoseOfDifferencesAlongTheEdge() {
        Random random = new Random(1);
        for (int round = 0; round < 500; round++) {
            EdgeCursor edge = random(random);
            double length = edge.length();
            for (double share : new double[] {0, 0.2, 0.5, 0.9, 1}) {
                double dx = (edge.xAt(share + STEP) - edge.xAt(share - STEP)) / (2 * STEP * length);
                double dy = (edge.yAt(share + STEP) - edge.yAt(share - STEP)) / (2 * STEP * length);
                assertThat(edge.directionXAt(share)).isCloseTo(dx, within(1e-8));
                assertThat(edge.directionYAt(share)).isCloseTo(dy, within(1e-8));
            }
            assertThat(edge.startDirectionX()).isCloseTo(edge.directionXAt(0), within(1e-12));
            assertThat(edge.startDirectionY()).isCloseTo(edge.directionYAt(0), within(1e-12));
            assertThat(edge.endDirectionX()).isCloseTo(edge.directionXAt(1), within(1e-12));
            assertThat(edge.endDirectionY()).isCloseTo(edge.directionYAt(1), within(1e-12));
        }
    }

    @Test
    void theLengthIsThatOfManyChords() {
        Random random = new Random(2);
        for (int round = 0; round < 100; round++) {
            EdgeCursor edge = random(random);
            int n = 1000;
            double sum = 0;
            for (int i = 0; i < n; i++) {
                double from = (double) i / n;
                double to = (i + 1.0) / n;
                sum += Math.hypot(edge.xAt(to) - edge.xAt(from), edge.yAt(to) - edge.yAt(from));
            }
            // chords of the angle a fall short by a^2/24
            assertThat(edge.length()).isBetween(sum * (1 - 1e-12), sum * (1 + 2e-6));
        }
    }

    @Test
    void theShareOfAPlaceOnTheEdgeComesBackFromBesideItToo() {
        Random random = new Random(3);
        for (int round = 0; round < 500; round++) {
            EdgeCursor edge = random(random);
            for (double share : new double[] {0, 0.1, 0.5, 0.77, 1}) {
                double off = edge.isArc() ? 0.3 * edge.radius() : 0.1;
                double x = edge.xAt(share) - off * edge.directionYAt(share);
                double y = edge.yAt(share) + off * edge.directionXAt(share);
                assertThat(edge.shareAt(edge.xAt(share), edge.yAt(share))).isCloseTo(share, within(1e-9));
                assertThat(edge.shareAt(x, y)).isCloseTo(share, within(1e-9));
            }
        }
    }

    @Test
    void aPointBeyondAnEndBelongsToTheNearerEnd() {
        EdgeCursor edge = new EdgeCursor();
        edge.line(1, 1, 3, 2);
        assertThat(edge.shareAt(-1, 0)).isZero();
        assertThat(edge.shareAt(5, 3)).isEqualTo(1);
        for (int turn = -1; turn <= 1; turn += 2) {
            edge.arc(2, 0, 2 * Math.cos(2), turn * 2 * Math.sin(2), 0, 0, turn * 2);
            // the gap of 4.28 rad has its middle at 4.14 rad
            for (double angle : new double[] {2.01, 3, 4.13}) {
                assertThat(edge.shareAt(Math.cos(angle), turn * Math.sin(angle)))
                        .isEqualTo(1);
            }
            for (double angle : new double[] {4.15, 5, 6.28}) {
                assertThat(edge.shareAt(Math.cos(angle), turn * Math.sin(angle)))
                        .isZero();
            }
        }
        // a full circle passes every direction; rounding before its start is its start
        edge.arc(2, 0, 2, 0, 0, 0, 2 * Math.PI);
        assertThat(edge.shareAt(2, -1e-10)).isZero();
        assertThat(edge.shareAt(0, -2)).isCloseTo(0.75, within(1e-12));
        assertThat(edge.shareAt(2, -1e-6)).isCloseTo(1, within(1e-6));
    }

    @Test
    void theBoxIsThatOfManySamples() {
        Random random = new Random(4);
        for (int round = 0; round < 300; round++) {
            EdgeCursor edge = random(random);
            double[] box = {9, 9, -9, -9};
            for (int i = 0; i <= 2000; i++) {
                double x = edge.xAt(i / 2000.0);
                double y = edge.yAt(i / 2000.0);
                box[0] = Math.min(box[0], x);
                box[1] = Math.min(box[1], y);
                box[2] = Math.max(box[2], x);
                box[3] = Math.max(box[3], y);
            }
            // a sample misses an extreme by r a^2/8 at most
            double miss = edge.radius() * 1.3e-6 + 1e-15;
            assertThat(edge.minimumX()).isBetween(box[0] - miss, box[0] + 1e-14);
            assertThat(edge.minimumY()).isBetween(box[1] - miss, box[1] + 1e-14);
            assertThat(edge.maximumX()).isBetween(box[2] - 1e-14, box[2] + miss);
            assertThat(edge.maximumY()).isBetween(box[3] - 1e-14, box[3] + miss);
        }
    }

    @Test
    void distancesOfPointsAreThoseOfTheNearestOfManySamples() {
        Random random = new Random(5);
        for (int round = 0; round < 300; round++) {
            EdgeCursor edge = random(random);
            double size = edge.length();
            double x = edge.startX() + 2 * size * (random.nextDouble() - 0.5);
            double y = edge.startY() + 2 * size * (random.nextDouble() - 0.5);
            double least = 99;
            for (int i = 0; i <= 1000; i++) {
                least = Math.min(least, Math.hypot(x - edge.xAt(i / 1000.0), y - edge.yAt(i / 1000.0)));
            }
            assertThat(edge.distance(x, y)).isBetween(least - size / 1000, least + 1e-12);
        }
    }

    @Test
    void theTurnBetweenEdgesIsThatOfTheirHeadings() {
        EdgeCursor before = new EdgeCursor();
        EdgeCursor after = new EdgeCursor();
        Random random = new Random(6);
        for (int round = 0; round < 500; round++) {
            double heading = 6 * random.nextDouble();
            double turn = 6 * random.nextDouble() - 3;
            if (random.nextBoolean()) {
                before.line(-Math.cos(heading), -Math.sin(heading), 0, 0);
            } else {
                // a left arc about a point to its left that ends here
                before.arc(
                        -2 * Math.sin(heading),
                        2 * Math.cos(heading),
                        0,
                        0,
                        -Math.sin(heading),
                        Math.cos(heading),
                        3.14159265358979);
            }
            double next = heading + turn;
            if (random.nextBoolean()) {
                after.line(0, 0, Math.cos(next), Math.sin(next));
            } else {
                after.arc(0, 0, 2 * Math.sin(next), -2 * Math.cos(next), Math.sin(next), -Math.cos(next), -Math.PI);
            }
            assertThat(after.turnFrom(before)).isCloseTo(turn, within(1e-9));
        }
    }

    @Test
    void anArcSpansItsEndsAndNoDirectionBeyondHoweverShortItIs() {
        EdgeCursor arc = new EdgeCursor();
        for (double sweep : new double[] {1e-6, 1e-3, 0.5, 1.5, Math.PI - 1e-6, Math.PI, 4, 2 * Math.PI - 1e-3}) {
            for (int turn = -1; turn <= 1; turn += 2) {
                arc.arc(1, 0, Math.cos(sweep), turn * Math.sin(sweep), 0, 0, turn * sweep);
                assertThat(arc.spans(1, 0)).isTrue();
                assertThat(arc.spans(5 * Math.cos(sweep), turn * 5 * Math.sin(sweep)))
                        .isTrue();
                assertThat(arc.spans(Math.cos(sweep / 2), turn * Math.sin(sweep / 2)))
                        .isTrue();
                assertThat(arc.spans(Math.cos(sweep + 1e-7), turn * Math.sin(sweep + 1e-7)))
                        .isFalse();
                assertThat(arc.spans(Math.cos(1e-7), -turn * Math.sin(1e-7))).isFalse();
                double opposite = sweep / 2 + Math.PI;
                assertThat(arc.spans(Math.cos(opposite), turn * Math.sin(opposite)))
                        .isFalse();
            }
        }
    }

    @Test
    void aLineAfterAnArcHasNothingOfIt() {
        EdgeCursor edge = new EdgeCursor();
        edge.arc(1, 0, 0, 1, 0.5, 0.5, Math.PI);
        assertThat(edge.isArc()).isTrue();
        assertThat(edge.centreX()).isEqualTo(0.5);
        assertThat(edge.centreY()).isEqualTo(0.5);
        assertThat(edge.radius()).isCloseTo(Math.sqrt(0.5), within(1e-15));
        assertThat(edge.sweep()).isEqualTo(Math.PI);

        edge.line(1, 2, 4, 6);

        assertThat(edge.isArc()).isFalse();
        assertThat(edge.radius()).isZero();
        assertThat(edge.sweep()).isZero();
        assertThat(edge.centreX()).isZero();
        assertThat(edge.centreY()).isZero();
        assertThat(edge.startX()).isEqualTo(1);
        assertThat(edge.startY()).isEqualTo(2);
        assertThat(edge.endX()).isEqualTo(4);
        assertThat(edge.endY()).isEqualTo(6);
        assertThat(edge.length()).isEqualTo(5);
    }
}
