package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.part.EdgeCursor;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Angles, lengths and centres of arcs, parts of edges, and points found again, by counting and by sums of chords. */
class ArcGeometryTest {

    @Test
    void theSweepIsTheAngleByWhichTheEndWasDrawn() {
        Random random = new Random(1);
        for (int round = 0; round < 1000; round++) {
            double cx = random.nextDouble() - 0.5;
            double cy = random.nextDouble() - 0.5;
            double r = 0.001 + random.nextDouble();
            double from = 6.2 * random.nextDouble();
            int turn = random.nextBoolean() ? 1 : -1;
            double sweep = turn * (0.001 + 6.28 * random.nextDouble());
            double x0 = cx + r * Math.cos(from);
            double y0 = cy + r * Math.sin(from);
            double x1 = cx + r * Math.cos(from + sweep);
            double y1 = cy + r * Math.sin(from + sweep);
            assertThat(ArcGeometry.sweep(x0, y0, x1, y1, cx, cy, turn)).isCloseTo(sweep, within(1e-9));
            assertThat(ArcGeometry.length(x0, y0, x1, y1, cx, cy, turn)).isCloseTo(r * Math.abs(sweep), within(1e-9));
            assertThat(ArcGeometry.sweep(x0, y0, x0, y0, cx, cy, turn)).isEqualTo(turn * 2 * Math.PI);
            assertThat(ArcGeometry.isFullCircle(x0, y0, x0, y0, cx, cy)).isTrue();

            // the centre by the radius: half the chord, and the longer way where the radius is below zero
            double chord = Math.hypot(x1 - x0, y1 - y0);
            double signed = Math.abs(sweep) > Math.PI ? -r : r;
            double offset = ArcGeometry.centreOffset(chord, signed, turn);
            if (chord > 1e-3 * r) {
                assertThat((x0 + x1) / 2 - offset * (y1 - y0) / chord).isCloseTo(cx, within(1e-6));
                assertThat((y0 + y1) / 2 + offset * (x1 - x0) / chord).isCloseTo(cy, within(1e-6));
            }
        }
        assertThat(ArcGeometry.centreOffset(2.000001, 1, 1)).isZero();
    }

    /** Across the path the ends of a full circle may differ by the accepted rounding, along it by a ten-thousandth of an inch. */
    @Test
    void endsAreOnePointWithinTheRoundingOfTheFormats() {
        for (double angle = 0; angle < 6; angle += 0.7) {
            double c = Math.cos(angle);
            double s = Math.sin(angle);
            double r = 0.02;
            double[][] along = {{2.5e-6, 1}, {2.6e-6, 0}, {9e-6, 0}};
            for (double[] step : along) {
                for (int sign = -1; sign <= 1; sign += 2) {
                    double x = r * c - sign * step[0] * s;
                    double y = r * s + sign * step[0] * c;
                    assertThat(ArcGeometry.isFullCircle(r * c, r * s, x, y, 0, 0))
                            .isEqualTo(step[1] == 1);
                }
            }
            double[][] across = {{2.5e-6, 1}, {9.9e-6, 1}, {10.1e-6, 0}};
            for (double[] step : across) {
                for (int sign = -1; sign <= 1; sign += 2) {
                    double wider = r + sign * step[0];
                    assertThat(ArcGeometry.isFullCircle(r * c, r * s, wider * c, wider * s, 0, 0))
                            .isEqualTo(step[1] == 1);
                }
            }
            // of a radius within ten roundings only the very same point is the end of a circle
            assertThat(ArcGeometry.isFullCircle(0.9e-4 * c, 0.9e-4 * s, 0.9e-4 * c, 0.9e-4 * s + 2e-6, 0, 0))
                    .isFalse();
            assertThat(ArcGeometry.isFullCircle(1.1e-4 * c, 1.1e-4 * s, 1.1e-4 * c, 1.1e-4 * s + 2e-6, 0, 0))
                    .isTrue();
            assertThat(ArcGeometry.isFullCircle(0.9e-4 * c, 0.9e-4 * s, 0.9e-4 * c, 0.9e-4 * s + 0.9e-9, 0, 0))
                    .isTrue();
        }
    }

    private static EdgeCursor edge(Random random) {
        EdgeCursor edge = new EdgeCursor();
        double r = 0.01 + random.nextDouble();
        double from = 6.2 * random.nextDouble();
        double sweep = (random.nextBoolean() ? 1 : -1) * (0.1 + 6 * random.nextDouble());
        if (random.nextInt(3) == 0) {
            edge.line(random.nextDouble(), random.nextDouble(), random.nextDouble(), random.nextDouble());
        } else {
            edge.arc(
                    0.3 + r * Math.cos(from),
                    0.1 + r * Math.sin(from),
                    0.3 + r * Math.cos(from + sweep),
                    0.1 + r * Math.sin(from + sweep),
                    0.3,
                    0.1,
                    sweep);
        }
        return edge;
    }

    private static void copy(EdgeCursor edge, EdgeCursor into) {
        if (edge.isArc()) {
            into.arc(
                    edge.startX(),
                    edge.startY(),
                    edge.endX(),
                    edge.endY(),
                    edge.centreX(),
                    edge.centreY(),
                    edge.sweep());
        } else {
            into.line(edge.startX(), edge.startY(), edge.endX(), edge.endY());
        }
    }

    @Test
    void thePartsOfAnEdgeAreItsPlacesUpToAndFromAPlace() {
        Random random = new Random(2);
        EdgeCursor part = new EdgeCursor();
        for (int round = 0; round < 500; round++) {
            EdgeCursor edge = edge(random);
            double share = 0.05 + 0.9 * random.nextDouble();
            copy(edge, part);
            PartialBlock.keepTo(part, edge.xAt(share), edge.yAt(share));
            assertThat(part.isArc()).isEqualTo(edge.isArc());
            assertThat(part.length()).isCloseTo(share * edge.length(), within(1e-9));
            assertThat(part.xAt(0.4)).isCloseTo(edge.xAt(0.4 * share), within(1e-9));
            assertThat(part.yAt(0.4)).isCloseTo(edge.yAt(0.4 * share), within(1e-9));
            copy(edge, part);
            PartialBlock.keepFrom(part, edge.xAt(share), edge.yAt(share));
            assertThat(part.length()).isCloseTo((1 - share) * edge.length(), within(1e-9));
            assertThat(part.xAt(0.4)).isCloseTo(edge.xAt(share + 0.4 * (1 - share)), within(1e-9));
            assertThat(part.yAt(0.4)).isCloseTo(edge.yAt(share + 0.4 * (1 - share)), within(1e-9));
        }
    }

    @Test
    void theAreaBetweenAnEdgeAndAPointIsThatOfManyTriangles() {
        Random random = new Random(3);
        for (int round = 0; round < 200; round++) {
            EdgeCursor edge = edge(random);
            double x = random.nextDouble() - 0.5;
            double y = random.nextDouble() - 0.5;
            double sum = 0;
            int n = 2000;
            for (int i = 0; i < n; i++) {
                double ax = edge.xAt((double) i / n) - x;
                double ay = edge.yAt((double) i / n) - y;
                double bx = edge.xAt((i + 1.0) / n) - x;
                double by = edge.yAt((i + 1.0) / n) - y;
                sum += (ax * by - ay * bx) / 2;
            }
            assertThat(PartialBlock.areaTerm(edge, x, y)).isCloseTo(sum, within(1e-5));
            ProgramBlocks blocks = new ProgramBlocks();
            blocks.add(9, 9, 8, 8);
            int block = blocks.add(edge.startX(), edge.startY(), edge.endX(), edge.endY());
            blocks.turn[block] = (byte) Math.signum(edge.sweep());
            blocks.centreX[block] = edge.centreX();
            blocks.centreY[block] = edge.centreY();
            assertThat(PartialBlock.areaTerm(blocks, block, x, y)).isCloseTo(sum, within(1e-5));
        }
    }

    /** Points on a fine grid and beside it: the least number within the radius, by a loop over all. */
    @Test
    void aPointIsFoundByItsLeastNumberWithinTheRadius() {
        Random random = new Random(4);
        for (int n : new int[] {1, 2, 3, 8, 60, 400}) {
            double radius = 1e-6;
            PointIndex index = new PointIndex(n, radius);
            double[] x = new double[n];
            double[] y = new double[n];
            int[] number = new int[n];
            for (int i = 0; i < n; i++) {
                x[i] = 0.7e-6 * random.nextInt(40) - 9e-6;
                y[i] = 0.7e-6 * random.nextInt(40) - 9e-6;
                number[i] = random.nextInt(1000);
                index.add(x[i], y[i], number[i]);
            }
            for (int round = 0; round < 500; round++) {
                double atX = 35e-6 * random.nextDouble() - 12e-6;
                double atY = 35e-6 * random.nextDouble() - 12e-6;
                int least = -1;
                for (int i = 0; i < n; i++) {
                    if (Math.hypot(atX - x[i], atY - y[i]) <= radius && (least < 0 || number[i] < number[least])) {
                        least = i;
                    }
                }
                assertThat(index.find(atX, atY)).isEqualTo(least < 0 ? -1 : number[least]);
                if (least >= 0 && round % 5 == 0) {
                    // of points with one number any may be replaced
                    int first = least;
                    boolean isAlone = true;
                    for (int i = 0; i < n; i++) {
                        isAlone &= i == first || number[i] != number[first];
                    }
                    if (isAlone) {
                        number[least] = 1000 + round;
                        index.replace(atX, atY, 1000 + round);
                    }
                }
            }
        }
    }
}
