package dev.waterjet.part;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The clipped polygon against all half-planes at once: its corners are the pairs of borders that satisfy every half-plane. */
class FitPolygonTest {

    private static final double SLOPE = 1;
    private static final double BEND = 40;

    /** Half-planes {@code a slope + b bend <= c}. */
    private static final class HalfPlanes {
        final List<double[]> all = new ArrayList<>();

        HalfPlanes() {
            all.add(new double[] {1, 0, SLOPE});
            all.add(new double[] {-1, 0, SLOPE});
            all.add(new double[] {0, 1, BEND});
            all.add(new double[] {0, -1, BEND});
        }

        boolean holds(double[] point) {
            return all.stream().allMatch(h -> h[0] * point[0] + h[1] * point[1] <= h[2] + 1e-9);
        }

        /** Corners in the order of their directions from the middle. */
        List<double[]> corners() {
            List<double[]> found = new ArrayList<>();
            for (int i = 0; i < all.size(); i++) {
                for (int j = 0; j < i; j++) {
                    double[] meet = meet(all.get(i), all.get(j));
                    if (meet.length > 0 && holds(meet)) {
                        found.add(meet);
                    }
                }
            }
            double x = found.stream().mapToDouble(p -> p[0]).average().orElse(0);
            double y = found.stream().mapToDouble(p -> p[1]).average().orElse(0);
            found.sort(Comparator.comparingDouble(p -> Math.atan2((p[1] - y) / BEND, p[0] - x)));
            return found;
        }

        private static double[] meet(double[] one, double[] other) {
            double cross = one[0] * other[1] - one[1] * other[0];
            return Math.abs(cross) < 1e-12
                    ? new double[0]
                    : new double[] {
                        (one[2] * other[1] - one[1] * other[2]) / cross, (one[0] * other[2] - one[2] * other[0]) / cross
                    };
        }

        /** Slopes at which a line meets the borders of the polygon. */
        double[] slopes(double x, double h, double y) {
            double[] line = {x, h, y};
            return all.stream()
                    .map(border -> meet(border, line))
                    .filter(point -> point.length > 0 && holds(point))
                    .mapToDouble(point -> point[0])
                    .toArray();
        }
    }

    private static void clip(Random random, FitPolygon polygon, HalfPlanes planes) {
        clip(random, 1.2 * random.nextDouble() - 0.4, polygon, planes);
    }

    private static void clip(Random random, double c, FitPolygon polygon, HalfPlanes planes) {
        double angle = 2 * Math.PI * random.nextDouble();
        double a = Math.cos(angle);
        double b = Math.sin(angle) / BEND;
        polygon.clip(a, b, c);
        planes.all.add(new double[] {a, b, c});
    }

    private static void assertSame(FitPolygon polygon, List<double[]> corners, Random random) {
        for (int round = 0; round < 20; round++) {
            double x = 2 * random.nextDouble() - 1;
            double h = (2 * random.nextDouble() - 1) / BEND;
            double y = random.nextDouble();
            double[] values = corners.stream()
                    .mapToDouble(p -> x * p[0] + h * p[1] - y)
                    .sorted()
                    .toArray();
            polygon.range(x, h, y);
            assertThat(polygon.minimum).isCloseTo(values[0], within(1e-9));
            assertThat(polygon.maximum).isCloseTo(values[values.length - 1], within(1e-9));
        }
        assertThat(polygon.largestBend())
                .isCloseTo(
                        corners.stream().mapToDouble(p -> Math.abs(p[1])).max().orElse(0), within(1e-9 * BEND));
        assertThat(polygon.meanSlope())
                .isCloseTo(corners.stream().mapToDouble(p -> p[0]).average().orElse(9), within(1e-9));
    }

    private static FitPolygon whole() {
        FitPolygon polygon = new FitPolygon();
        polygon.reset(SLOPE, BEND);
        return polygon;
    }

    @Test
    void theWholePolygonIsARectangle() {
        assertSame(whole(), new HalfPlanes().corners(), new Random(1));
        assertThat(whole().isEmpty()).isFalse();
        assertThat(whole().meanSlope()).isZero();
        assertThat(whole().largestBend()).isEqualTo(BEND);
    }

    @Test
    void whatRemainsAfterTwoClipsSatisfiesBoth() {
        Random random = new Random(2);
        int empty = 0;
        for (int round = 0; round < 500; round++) {
            FitPolygon polygon = whole();
            HalfPlanes planes = new HalfPlanes();
            clip(random, polygon, planes);
            clip(random, polygon, planes);
            List<double[]> corners = planes.corners();
            assertThat(polygon.isEmpty()).isEqualTo(corners.isEmpty());
            if (corners.isEmpty()) {
                empty++;
            } else {
                assertSame(polygon, corners, random);
            }
        }
        assertThat(empty).isBetween(1, 100);
    }

    @Test
    void theMiddleOfALineWithinIsThatOfItsEnds() {
        Random random = new Random(3);
        int missed = 0;
        for (int round = 0; round < 1000; round++) {
            FitPolygon polygon = whole();
            HalfPlanes planes = new HalfPlanes();
            clip(random, polygon, planes);
            clip(random, polygon, planes);
            double x = 2 * random.nextDouble() - 1;
            double h = (2 * random.nextDouble() - 1) / BEND;
            double y = 2 * random.nextDouble() - 1;
            double[] slopes = planes.slopes(x, h, y);
            double found = polygon.slopeThrough(x, h, y);
            if (slopes.length < 2) {
                missed++;
                assertThat(found).isNaN();
            } else {
                Arrays.sort(slopes);
                assertThat(found).isCloseTo((slopes[0] + slopes[slopes.length - 1]) / 2, within(1e-7));
            }
        }
        assertThat(missed).isBetween(100, 900);
    }

    /** Twice the area of the triangle of a corner and its neighbours. */
    private static double area(List<double[]> corners, int i) {
        int n = corners.size();
        double[] at = corners.get(i);
        double[] before = corners.get((i + n - 1) % n);
        double[] after = corners.get((i + 1) % n);
        return Math.abs((at[0] - before[0]) * (after[1] - before[1]) - (at[1] - before[1]) * (after[0] - before[0]));
    }

    @Test
    void ofSevenCornersTheSmallestIsCutOff() {
        Random random = new Random(4);
        int seen = 0;
        for (int round = 0; round < 2000; round++) {
            FitPolygon polygon = whole();
            HalfPlanes planes = new HalfPlanes();
            clip(random, 0.6 + 0.5 * random.nextDouble(), polygon, planes);
            clip(random, 0.6 + 0.5 * random.nextDouble(), polygon, planes);
            clip(random, 0.6 + 0.5 * random.nextDouble(), polygon, planes);
            List<double[]> corners = planes.corners();
            if (corners.size() == 7) {
                seen++;
                int smallest = 0;
                for (int i = 1; i < 7; i++) {
                    smallest = area(corners, i) < area(corners, smallest) ? i : smallest;
                }
                corners.remove(smallest);
                assertSame(polygon, corners, random);
            }
        }
        assertThat(seen).isGreaterThan(50);
    }

    @Test
    void manyClipsLeaveASubsetOfWhatSatisfiesAll() {
        Random random = new Random(5);
        for (int round = 0; round < 200; round++) {
            FitPolygon polygon = whole();
            HalfPlanes planes = new HalfPlanes();
            for (int i = 0; i < 12; i++) {
                double angle = 2 * Math.PI * random.nextDouble();
                double[] plane = {Math.cos(angle), Math.sin(angle) / BEND, 0.3 + 0.3 * random.nextDouble()};
                polygon.clip(plane[0], plane[1], plane[2]);
                planes.all.add(plane);
            }
            List<double[]> corners = planes.corners();
            double x = 2 * random.nextDouble() - 1;
            double h = (2 * random.nextDouble() - 1) / BEND;
            double least =
                    corners.stream().mapToDouble(p -> x * p[0] + h * p[1]).min().orElseThrow();
            double most =
                    corners.stream().mapToDouble(p -> x * p[0] + h * p[1]).max().orElseThrow();
            polygon.range(x, h, 0);
            assertThat(polygon.minimum).isBetween(least - 1e-9, 0.0);
            assertThat(polygon.maximum).isBetween(0.0, most + 1e-9);
            // and most of it: six corners of a round polygon of many hold 83 % of its width (hexagon in a circle: 0.87)
            assertThat(polygon.maximum - polygon.minimum).isGreaterThan(0.7 * (most - least));
        }
    }

    @Test
    void aCopyKeepsItsCorners() {
        Random random = new Random(6);
        FitPolygon polygon = whole();
        HalfPlanes planes = new HalfPlanes();
        clip(random, polygon, planes);
        FitPolygon copy = new FitPolygon();
        copy.copy(polygon);
        polygon.clip(1, 0, -0.5);
        polygon.clip(0, 1, 0);

        assertSame(copy, planes.corners(), random);
    }

    @Test
    void aPolygonThatIsCutOffIsEmpty() {
        FitPolygon polygon = whole();
        polygon.clip(1, 0, -SLOPE - 1e-3);
        assertThat(polygon.isEmpty()).isTrue();
        polygon.reset(SLOPE, BEND);
        polygon.clip(1, 0, -SLOPE + 1e-3);
        assertThat(polygon.isEmpty()).isFalse();
        polygon.clip(-1, 0, SLOPE - 2e-3);
        assertThat(polygon.isEmpty()).isTrue();
    }
}
