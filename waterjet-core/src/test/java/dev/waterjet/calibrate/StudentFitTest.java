package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Maxima of Student's likelihood against grids of location and scale. */
class StudentFitTest {

    private static final double INFINITE = Double.POSITIVE_INFINITY;

    /** Logarithm of Student's likelihood of a location, without a library. */
    private static double student(double[] y, double freedom, double center, double scale) {
        double sum = 0;
        for (double value : y) {
            double z = (value - center) / scale;
            sum -= (freedom + 1) / 2 * Math.log1p(z * z / freedom) + Math.log(scale);
        }
        return sum;
    }

    private static double[] groups(int far, double offset, long seed) {
        Random random = new Random(seed);
        double[] y = new double[12];
        Arrays.setAll(y, i -> 0.01 * random.nextGaussian() + (i < far ? offset : 0));
        return y;
    }

    private static double highest(double[] y, double freedom, double from, double to) {
        double best = -INFINITE;
        for (double s = -7; s < 0.5; s += 0.05) {
            for (double center = from; center < to; center += 0.001) {
                best = Math.max(best, student(y, freedom, center, Math.exp(s)));
            }
        }
        return best;
    }

    /** No location and scale of a grid is more likely, however many cuts are far off. */
    @Test
    void studentsMaximumIsTheHighestOfAll() {
        double[][] x = new double[12][];
        Arrays.setAll(x, i -> new double[] {1});
        for (double freedom : new double[] {0.5, 1, 4}) {
            for (int far : new int[] {0, 3, 5}) {
                double[] y = groups(far, 1.2, 4);
                CensoredFit fit = StudentFit.of(CutRows.exact(y, x), freedom).fit();
                double found = student(y, freedom, fit.beta()[0], fit.sigma());

                assertThat(found).isGreaterThanOrEqualTo(highest(y, freedom, -0.05, 0.3) - 1e-6);
                assertThat(found).isGreaterThanOrEqualTo(highest(y, freedom, 1.1, 1.3) - 1e-6);
            }
        }
    }

    /** Two groups of six: the rival is the maximum about the other one. */
    @Test
    void theRivalIsTheMaximumOfTheOtherGroup() {
        double[][] x = new double[12][];
        Arrays.setAll(x, i -> new double[] {1});
        double[] y = groups(6, 1.2, 0);
        StudentFit fit = StudentFit.of(CutRows.exact(y, x), 0.5);
        double center = fit.fit().beta()[0];
        double own = student(y, 0.5, center, fit.fit().sigma());
        boolean isNear = Math.abs(center) < 0.1;
        double other = highest(y, 0.5, isNear ? 1.15 : -0.05, isNear ? 1.25 : 0.05);

        assertThat(fit.rival()).isCloseTo(fit.fit().logLikelihood() - own + other, within(0.05));
        assertThat(fit.rival()).isLessThan(fit.fit().logLikelihood());
    }
}
