package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Rows of speed, acceleration and jerk of a window: values by their definition, gradients by differences, and what the matrix
 * and the right sides take from them as sums over all sides of rows with dense gradients.
 */
class WindowRowsTest {

    private static final int NODES = 7;

    /** A kind of rows behind one interface; a side of a row is {@code value <= 0}. */
    enum Rows {
        SPEED {
            @Override
            void lay(Sample s) {
                s.speed.lay(1, NODES - 2);
            }

            @Override
            double[] sides(Sample s, double[] x) {
                double[] sides = new double[NODES - 2];
                for (int i = 1; i < NODES - 1; i++) {
                    sides[i - 1] = x[i] - s.cap[i];
                }
                return sides;
            }

            @Override
            double limit(Sample s, int side) {
                return s.cap[side + 1];
            }

            @Override
            Slacks slacks(Sample s) {
                return s.speed.slacks();
            }

            @Override
            double floor(Sample s, int side) {
                return 0.05 * s.cap[side + 1];
            }
        },
        ACCELERATION {
            @Override
            void lay(Sample s) {
                for (int k = 0; k < NODES - 1; k++) {
                    s.acceleration.add(k, s.first[k], s.second[k], (byte) k);
                }
            }

            @Override
            double[] sides(Sample s, double[] x) {
                int n = NODES - 1;
                double[] sides = new double[2 * n];
                for (int k = 0; k < n; k++) {
                    double value = s.first[k] * x[k] + s.second[k] * x[k + 1];
                    sides[k] = value - 1;
                    sides[k + n] = -value - 1;
                }
                return sides;
            }

            @Override
            Slacks slacks(Sample s) {
                return s.acceleration.slacks();
            }
        },
        JERK {
            @Override
            void lay(Sample s) {
                for (int i = 1; i < NODES - 1; i++) {
                    s.jerk.add(i, s.first[i], s.second[i], s.third[i], (byte) i);
                }
            }

            @Override
            double[] sides(Sample s, double[] x) {
                int n = NODES - 2;
                double[] sides = new double[2 * n];
                for (int i = 1; i <= n; i++) {
                    double centre = -(s.first[i] + s.second[i] + s.third[i]);
                    double value = s.first[i] * x[i - 1] + centre * x[i] + s.second[i] * x[i + 1];
                    sides[i - 1] = value - s.middles(i, x);
                    sides[i - 1 + n] = -value - s.middles(i, x);
                }
                return sides;
            }

            @Override
            double limit(Sample s, int side) {
                return s.middles(1 + side % (NODES - 2), s.x);
            }

            @Override
            Slacks slacks(Sample s) {
                return s.jerk.slacks();
            }
        };

        abstract void lay(Sample s);

        /** Values of all sides. */
        abstract double[] sides(Sample s, double[] x);

        abstract Slacks slacks(Sample s);

        /** Limit by which an excess is counted. */
        double limit(Sample s, int side) {
            return 1;
        }

        double floor(Sample s, int side) {
            return 0.2 * limit(s, side);
        }
    }

    /** Random rows; the collections start too small and grow. */
    static final class Sample {
        final double[] x;
        final double[] cap;
        final double[] length;
        final double[] first;
        final double[] second;
        final double[] third;
        final TravelTime time = new TravelTime(NODES);
        final SpeedRows speed = new SpeedRows(NODES);
        final AccelerationRows acceleration = new AccelerationRows(1);
        final JerkRows jerk = new JerkRows(1);

        Sample(Random random) {
            x = random.doubles(NODES, 0.5, 2).toArray();
            cap = random.doubles(NODES, 0.7, 3).toArray();
            length = random.doubles(NODES, 0.3, 1).toArray();
            first = random.doubles(NODES, -1, 1).toArray();
            second = random.doubles(NODES, -1, 1).toArray();
            third = random.doubles(NODES, -0.5, 0.5).toArray();
            time.evaluate(x, length, NODES - 1);
        }

        /** Time between the middles of the intervals beside a node. */
        double middles(int i, double[] squares) {
            double v = Math.sqrt(squares[i]);
            return length[i - 1] / (Math.sqrt(squares[i - 1]) + v) + length[i] / (v + Math.sqrt(squares[i + 1]));
        }

        void start(Rows rows) {
            switch (rows) {
                case SPEED -> speed.start(x, cap);
                case ACCELERATION -> acceleration.start(x);
                case JERK -> jerk.start(x, time);
            }
        }

        double evaluate(Rows rows, double[] squares) {
            time.evaluate(squares, length, NODES - 1);
            return switch (rows) {
                case SPEED -> speed.evaluate(squares, cap);
                case ACCELERATION -> acceleration.evaluate(squares);
                case JERK -> jerk.evaluate(squares, time);
            };
        }

        void assemble(Rows rows, BandMatrix matrix, double[] side) {
            switch (rows) {
                case SPEED -> speed.assemble(matrix, side);
                case ACCELERATION -> acceleration.assemble(matrix, side);
                case JERK -> jerk.assemble(matrix, side, time);
            }
        }

        void predict(Rows rows, double[] change) {
            switch (rows) {
                case SPEED -> speed.predict(change);
                case ACCELERATION -> acceleration.predict(change);
                case JERK -> jerk.predict(change, time);
            }
        }

        void addForces(Rows rows, double[] side, double product) {
            switch (rows) {
                case SPEED -> speed.addForces(side, product);
                case ACCELERATION -> acceleration.addForces(side, product);
                case JERK -> jerk.addForces(side, time, product);
            }
        }

        void correct(Rows rows, double[] change, double product) {
            switch (rows) {
                case SPEED -> speed.correct(change, product);
                case ACCELERATION -> acceleration.correct(change, product);
                case JERK -> jerk.correct(change, time, product);
            }
        }

        /** Gradients of all sides by differences of fourth order. */
        double[][] gradients(Rows rows) {
            double[][] gradients = new double[rows.sides(this, x).length][NODES];
            double h = 1e-3;
            for (int i = 0; i < NODES; i++) {
                double[][] at = new double[4][];
                double[] steps = {-2 * h, -h, h, 2 * h};
                for (int k = 0; k < 4; k++) {
                    double[] moved = x.clone();
                    moved[i] += steps[k];
                    at[k] = rows.sides(this, moved);
                }
                for (int side = 0; side < gradients.length; side++) {
                    gradients[side][i] = (8 * (at[2][side] - at[1][side]) - at[3][side] + at[0][side]) / (12 * h);
                }
            }
            return gradients;
        }
    }

    private final Random random = new Random(23);
    private Sample sample = new Sample(random);
    private double[] sides = {};
    private double[] start = {};

    /** Starts at one set of squares and evaluates at another, so that residuals are not zero. */
    private void prepare(Rows rows) {
        sample = new Sample(random);
        rows.lay(sample);
        double[] at = sample.x.clone();
        for (int i = 0; i < NODES; i++) {
            sample.x[i] *= 0.8 + 0.4 * random.nextDouble();
        }
        sample.time.evaluate(sample.x, sample.length, NODES - 1);
        sample.start(rows);
        double[] values = rows.sides(sample, sample.x);
        start = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            start[i] = Math.max(-values[i], rows.floor(sample, i));
        }
        rows.slacks(sample).startMultipliers(0.3);
        System.arraycopy(at, 0, sample.x, 0, NODES);
        sample.time.evaluate(sample.x, sample.length, NODES - 1);
        sides = rows.sides(sample, sample.x);
    }

    @ParameterizedTest
    @EnumSource
    void valuesAndExcessesAreThoseOfTheDefinition(Rows rows) {
        for (int trial = 0; trial < 20; trial++) {
            prepare(rows);
            double worst = sample.evaluate(rows, sample.x);

            Slacks slacks = rows.slacks(sample);
            assertThat(slacks.count()).isEqualTo(sides.length);
            double expected = 0;
            for (int i = 0; i < sides.length; i++) {
                double slack = Math.max(start[i], -sides[i]);
                assertThat(slacks.multiplier(i)).isCloseTo(0.3 / start[i], within(1e-12));
                assertThat(slacks.weight(i)).isCloseTo(0.3 / start[i] / slack, within(1e-12));
                expected = Math.max(expected, (sides[i] + slack) / rows.limit(sample, i));
            }
            assertThat(worst).isCloseTo(expected, within(1e-12));
        }
    }

    @ParameterizedTest
    @EnumSource
    void theMatrixTakesTheSquaresOfTheGradients(Rows rows) {
        for (int trial = 0; trial < 5; trial++) {
            prepare(rows);
            sample.evaluate(rows, sample.x);
            double[][] g = sample.gradients(rows);
            Slacks slacks = rows.slacks(sample);
            BandMatrix matrix = new BandMatrix(NODES);
            double[] side = new double[NODES];
            sample.assemble(rows, matrix, side);

            for (int i = 0; i < NODES; i++) {
                double force = 0;
                double[] products = new double[3];
                for (int r = 0; r < g.length; r++) {
                    force -= slacks.predictorForce(r) * g[r][i];
                    for (int k = 0; k < 3 && i + k < NODES; k++) {
                        products[k] += slacks.weight(r) * g[r][i] * g[r][i + k];
                    }
                }
                assertThat(side[i]).isCloseTo(force, within(1e-8));
                assertThat(matrix.diagonal[i]).isCloseTo(products[0], within(1e-8));
                assertThat(matrix.first[i]).isCloseTo(products[1], within(1e-8));
                assertThat(matrix.second[i]).isCloseTo(products[2], within(1e-8));
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void stepsFollowTheChangeOfEachSide(Rows rows) {
        for (int trial = 0; trial < 5; trial++) {
            prepare(rows);
            sample.evaluate(rows, sample.x);
            double[][] g = sample.gradients(rows);
            Slacks slacks = rows.slacks(sample);
            double[] first = random.doubles(NODES, -0.2, 0.2).toArray();
            double[] second = random.doubles(NODES, -0.2, 0.2).toArray();
            double product = 0.01;
            sample.predict(rows, first);
            double[] side = new double[NODES];
            sample.addForces(rows, side, product);
            sample.correct(rows, second, product);

            double[] forces = new double[NODES];
            double[] multipliers = new double[g.length];
            for (int r = 0; r < g.length; r++) {
                double s = Math.max(start[r], -sides[r]);
                double z = slacks.multiplier(r);
                double residual = sides[r] + s;
                double predicted = -residual - times(g[r], first);
                double aim = product - predicted * (-z - z * predicted / s);
                double step = -residual - times(g[r], second);
                multipliers[r] = z + 0.1 * ((aim - z * step) / s - z);
                for (int i = 0; i < NODES; i++) {
                    forces[i] -= (aim + z * residual) / s * g[r][i];
                }
            }
            assertThat(side).containsExactly(forces, within(1e-8));
            slacks.move(0.1, 0.1);
            for (int r = 0; r < g.length; r++) {
                assertThat(slacks.multiplier(r)).isCloseTo(multipliers[r], within(1e-8));
            }
        }
    }

    private static double times(double[] one, double[] other) {
        double sum = 0;
        for (int i = 0; i < one.length; i++) {
            sum += one[i] * other[i];
        }
        return sum;
    }
}
