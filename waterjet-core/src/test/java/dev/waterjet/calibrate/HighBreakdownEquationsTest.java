package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The fit that withstands wrong cuts: its equations, its symmetries, and searches by brute force. */
class HighBreakdownEquationsTest {

    private static CutRows line(int count, int wrong) {
        return RobustRowsTest.line(count, wrong, 1, 5);
    }

    private static CutRows location(double... y) {
        double[][] x = new double[y.length][];
        Arrays.setAll(x, i -> new double[] {1});
        return CutRows.exact(y, x);
    }

    private static void solvesItsEquations(CutRows rows, HighBreakdown fit) {
        for (int j = 0; j < rows.width(); j++) {
            double sum = 0;
            for (int i = 0; i < rows.size(); i++) {
                double z = (rows.lo()[i] - Matrices.dot(rows.x()[i], fit.beta())) / fit.scale() / 4.685061;
                sum += Math.abs(z) < 1 ? z * (1 - z * z) * (1 - z * z) * rows.x()[i][j] : 0;
            }
            assertThat(sum).isCloseTo(0, within(1e-7));
        }
    }

    @Test
    void coefficientsSolveTheirEquationsWithTheScaleHeld() {
        for (int wrong : new int[] {0, 3, 6}) {
            solvesItsEquations(line(20, wrong), HighBreakdown.of(line(20, wrong)));
        }
    }

    /** Scale at which the mean loss of the residuals about a location is a half, by bisection. */
    private static double scale(double[] y, double location) {
        double low = 1e-6;
        double high = 10;
        for (int step = 0; step < 60; step++) {
            double middle = Math.sqrt(low * high);
            double sum = 0;
            for (double value : y) {
                double u = Math.min(1, Math.abs((value - location) / middle / 1.547645));
                sum += 3 * u * u - 3 * Math.pow(u, 4) + Math.pow(u, 6);
            }
            low = sum / (y.length - 1) > 0.5 ? middle : low;
            high = sum / (y.length - 1) > 0.5 ? high : middle;
        }
        return low;
    }

    @Test
    void noLocationHasASmallerScale() {
        Random random = new Random(17);
        for (int wrong : new int[] {0, 2, 4}) {
            double[] y = new double[15];
            Arrays.setAll(y, i -> 0.05 * random.nextGaussian() + (i < wrong ? 0.5 : 0));
            double best = 0;
            double least = Double.POSITIVE_INFINITY;
            for (double step = 0.002; step > 1e-6; step /= 10) {
                double center = best;
                for (int k = step == 0.002 ? -150 : -15; k <= (step == 0.002 ? 400 : 15); k++) {
                    double scale = scale(y, center + k * step);
                    best = scale < least ? center + k * step : best;
                    least = Math.min(least, scale);
                }
            }
            assertThat(HighBreakdown.of(location(y)).scale()).isCloseTo(least, within(1e-9));
        }
    }

    /** Turned, shifted, scaled and reordered cuts have a fit that is turned, shifted and scaled alike. */
    @Test
    void theFitMovesWithItsRows() {
        CutRows rows = line(16, 4);
        HighBreakdown fit = HighBreakdown.of(rows);
        double[] y = new double[16];
        double[][] x = new double[16][];
        int[] order = new int[16];
        Arrays.setAll(order, i -> (i * 5 + 3) % 16);
        for (int i = 0; i < 16; i++) {
            x[i] = new double[] {1, 3 * rows.x()[order[i]][1]};
            y[i] = -2 * rows.lo()[order[i]] + 7 + 0.6 * x[i][1];
        }
        HighBreakdown moved = HighBreakdown.of(CutRows.exact(y, x));

        assertThat(moved.scale()).isCloseTo(2 * fit.scale(), within(1e-8));
        assertThat(moved.beta()[0]).isCloseTo(7 - 2 * fit.beta()[0], within(1e-7));
        assertThat(moved.beta()[1]).isCloseTo(0.6 - 2 * fit.beta()[1] / 3, within(1e-7));
        assertThat(moved.variance()).isCloseTo(4 * fit.variance(), within(1e-7));
    }

    /** Above a third of wrong cuts the good ones are fitted by themselves. */
    @Test
    void manyFarCutsAreLeftOutAltogether() {
        CutRows rows = RobustRowsTest.line(45, 21, 3, 7);
        CutRows good = rows.only(IntStream.range(21, 45).toArray());
        HighBreakdown all = HighBreakdown.of(rows);
        HighBreakdown own = HighBreakdown.of(good);

        assertThat(all.beta()).containsExactly(own.beta(), within(1e-8));
        assertThat(all.scale()).isCloseTo(own.scale(), within(1e-9));
        assertThat(all.rows().size()).isEqualTo(45);
        assertThat(Arrays.copyOf(all.weights(), 21)).containsOnly(0);
    }

    /** Weights of the bisquare, and Huber's variance with the derivative of psi by differences. */
    @Test
    void weightsAndVarianceAreThoseOfTheBisquare() {
        CutRows rows = line(14, 2);
        HighBreakdown fit = HighBreakdown.of(rows);
        double squares = 0;
        double slopes = 0;
        double slopeSquares = 0;
        for (int i = 0; i < 14; i++) {
            double z = (rows.lo()[i] - Matrices.dot(rows.x()[i], fit.beta())) / fit.scale();
            assertThat(fit.weights()[i]).isCloseTo(psi(z) / z, within(1e-12));
            double slope = (psi(z + 1e-6) - psi(z - 1e-6)) / 2e-6;
            squares += psi(z) * psi(z);
            slopes += slope / 14;
            slopeSquares += slope * slope / 14;
        }
        double k = 1 + 2 / 14.0 * (slopeSquares - slopes * slopes) / (slopes * slopes);
        double expected = k * k * fit.scale() * fit.scale() * squares / 12 / (slopes * slopes);

        assertThat(fit.variance()).isCloseTo(expected, within(1e-8 * expected));
    }

    private static double psi(double z) {
        double u = z / 4.685061;
        return Math.abs(u) < 1 ? z * (1 - u * u) * (1 - u * u) : 0;
    }

    /** By hand: five cuts at one pressure leave the slope open, and three at another. */
    @Test
    void cutsOfOneSettingLeaveASlopeOpen() {
        double[][] x = {{1, 0}, {1, 0}, {1, 0}, {1, 0}, {1, 0}, {1, 2}, {1, 2}, {1, 2}, {1, 3}};
        CutRows rows = CutRows.exact(new double[9], x);

        assertThat(HighBreakdown.mostInOnePlane(rows)).isEqualTo(5);
        assertThat(HighBreakdown.withstood(rows)).isEqualTo(1);
        assertThat(HighBreakdown.mostInOnePlane(location(1, 2, 3))).isZero();
        assertThat(HighBreakdown.withstood(location(1, 2, 3, 4, 5, 6, 7))).isEqualTo(3);
        assertThat(HighBreakdown.withstood(location(1, 2, 3, 4, 5, 6))).isEqualTo(2);
        assertThat(HighBreakdown.withstood(CutRows.exact(new double[2], new double[][] {{1, 0}, {1, 0}})))
                .isZero();
        // three settings: the plane through two cuts may hold a third
        double[][] three = {{1, 0, 0}, {1, 1, 1}, {1, 2, 2}, {1, 3, 3}, {1, 0, 1}, {1, 5, 2}};
        assertThat(HighBreakdown.mostInOnePlane(CutRows.exact(new double[6], three)))
                .isEqualTo(4);
    }

    /** Cuts of which most lie on a line exactly: that line, and no scale. */
    @Test
    void aLineThroughMostOfTheCutsIsFoundExactly() {
        double[][] x = new double[11][];
        double[] y = new double[11];
        for (int i = 0; i < 11; i++) {
            x[i] = new double[] {1, 0.1 * i};
            y[i] = i % 3 == 0 ? 9 - i : 2 + 0.3 * i;
        }
        HighBreakdown fit = HighBreakdown.of(CutRows.exact(y, x));

        assertThat(fit.beta()).containsExactly(new double[] {2, 3}, within(1e-9));
        assertThat(fit.scale()).isLessThan(1e-9);
    }

    /** A hundred cuts have more pairs than are tried: the good ones among those drawn show that far settings are wrong together. */
    @Test
    void drawnStartsFindTheLineOfManyCuts() {
        CutRows rows = RobustRowsTest.line(100, 0, 0, 9);
        for (int i = 0; i < 35; i++) {
            rows.x()[i][1] = 4 + 0.02 * i;
            rows.lo()[i] = 3 - 0.01 * (i % 5);
        }
        HighBreakdown fit = HighBreakdown.of(rows);
        VarianceFit good = VarianceFit.of(rows.only(IntStream.range(35, 100).toArray()), true);

        assertThat(fit.beta()).containsExactly(good.beta(), within(0.02));
        assertThat(fit.scale()).isBetween(0.03, 0.12);
        // Huber's line follows the far settings
        assertThat(new RobustRows(rows).ofHuber()[1]).isLessThan(0.2);
    }
}
