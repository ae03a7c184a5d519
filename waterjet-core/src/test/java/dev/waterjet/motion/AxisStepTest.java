package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Largest squares of one interval of an arc against a search over a fine grid, with accelerations written out. */
class AxisStepTest {

    private static final double FREE = Double.POSITIVE_INFINITY;

    /** Geometry and limits of an interval. */
    private record Interval(double heading, double curvature, double length, double ofX, double ofY, double ofPath) {
        static Interval random(Random random) {
            double curvature = (random.nextBoolean() ? 1 : -1) * (5 + 200 * random.nextDouble());
            double heading = random.nextInt(4) == 0 ? Math.PI / 2 * random.nextInt(4) : 7 * random.nextDouble();
            return new Interval(
                    heading,
                    curvature,
                    0.02 / Math.abs(curvature) * (1 + 4 * random.nextDouble()),
                    random.nextInt(5) == 0 ? FREE : 0.2 + random.nextDouble(),
                    random.nextInt(5) == 0 ? FREE : 0.2 + random.nextDouble(),
                    random.nextInt(3) == 0 ? 0.3 + random.nextDouble() : 20);
        }

        AxisStep step() {
            AxisStep step = new AxisStep(new DynamicLimits(
                    new AxisLimits(FREE, ofX, FREE),
                    new AxisLimits(FREE, ofY, FREE),
                    PathLimits.ofAcceleration(ofPath),
                    CornerRule.arc(1)));
            step.lay(
                    Math.cos(heading),
                    Math.sin(heading),
                    Math.cos(heading + curvature * length),
                    Math.sin(heading + curvature * length),
                    curvature,
                    2 * length);
            return step;
        }

        /** Shares of the limits that are used: of x and y at the start, of x and y at the end, along the path. */
        double[] shares(double x, double y) {
            double along = (y - x) / (2 * length);
            double end = heading + curvature * length;
            return new double[] {
                Math.abs(Math.cos(heading) * along - curvature * x * Math.sin(heading)) / ofX,
                Math.abs(Math.sin(heading) * along + curvature * x * Math.cos(heading)) / ofY,
                Math.abs(Math.cos(end) * along - curvature * y * Math.sin(end)) / ofX,
                Math.abs(Math.sin(end) * along + curvature * y * Math.cos(end)) / ofY,
                Math.abs(along) / ofPath
            };
        }

        boolean isKept(double x, double y, double tolerance) {
            for (double share : shares(x, y)) {
                if (share > 1 + tolerance) {
                    return false;
                }
            }
            return true;
        }

        /** Least of the greatest share over all y up to a limit: convex in y, since each share is the size of a linear term. */
        double leastShare(double x, double limitOfY) {
            double low = 0;
            double high = limitOfY;
            for (int i = 0; i < 100; i++) {
                double left = low + (high - low) / 3;
                double right = high - (high - low) / 3;
                boolean isLeft = greatest(x, left) < greatest(x, right);
                high = isLeft ? right : high;
                low = isLeft ? low : left;
            }
            return greatest(x, (low + high) / 2);
        }

        private double greatest(double x, double y) {
            double greatest = 0;
            for (double share : shares(x, y)) {
                greatest = Math.max(greatest, share);
            }
            return greatest;
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void theLargestStartHasAnEndAndNoLargerOneHas(long seed) {
        Random random = new Random(seed);
        int inside = 0;
        for (int i = 0; i < 60; i++) {
            Interval interval = Interval.random(random);
            double limitOfX = 0.02 * random.nextDouble();
            double limitOfY = 0.02 * random.nextDouble() * random.nextDouble();
            double x = interval.step().largestStart(limitOfX, limitOfY);

            assertThat(x).isBetween(0.0, limitOfX);
            assertThat(interval.leastShare(x, limitOfY)).isLessThanOrEqualTo(1 + 1e-9);
            if (x < limitOfX) {
                inside++;
                double larger = Math.min(limitOfX, x * (1 + 1e-6) + 1e-12);
                assertThat(interval.leastShare(larger, limitOfY)).isGreaterThan(1);
            }
        }
        assertThat(inside).isGreaterThan(10);
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void theLargestEndTouchesALimit(long seed) {
        Random random = new Random(seed);
        int inside = 0;
        for (int i = 0; i < 100; i++) {
            Interval interval = Interval.random(random);
            double limitOfY = 0.05 * random.nextDouble();
            AxisStep step = interval.step();
            double x = step.largestStart(0.02 * random.nextDouble(), limitOfY);
            double y = step.largestEnd(x, limitOfY);

            assertThat(y).isBetween(0.0, limitOfY);
            assertThat(interval.isKept(x, y, 1e-6)).isTrue();
            if (y < limitOfY) {
                inside++;
                assertThat(interval.isKept(x, y * 1.0001 + 1e-7, 0)).isFalse();
                requireTightest(interval, step.tightest(x, y), x, y);
            }
        }
        assertThat(inside).isGreaterThan(20);
    }

    private static void requireTightest(Interval interval, GoverningLimit named, double x, double y) {
        double[] shares = interval.shares(x, y);
        double share = switch (named) {
            case X_ACCELERATION -> Math.max(shares[0], shares[2]);
            case Y_ACCELERATION -> Math.max(shares[1], shares[3]);
            case PATH_ACCELERATION -> shares[4];
            default -> 0;
        };
        assertThat(share).isCloseTo(1, within(1e-6));
    }

    /** Along an axis the other one has the centripetal acceleration alone: x k is at most its limit. */
    @ParameterizedTest
    @ValueSource(doubles = {50, -50})
    void acrossAnAxisTheCurvatureBoundsTheStart(double curvature) {
        for (int quarter = 0; quarter < 4; quarter++) {
            boolean isAlongX = quarter % 2 == 0;
            Interval interval = new Interval(
                    quarter * Math.PI / 2, curvature, 1e-6, isAlongX ? FREE : 0.4, isAlongX ? 0.4 : FREE, 1e6);

            assertThat(interval.step().largestStart(1, 1)).isCloseTo(0.4 / 50, within(1e-5));
        }
    }
}
