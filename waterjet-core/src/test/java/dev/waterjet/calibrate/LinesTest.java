package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

class LinesTest {

    @Test
    void theSlopeOfALineIsThatThroughZero() {
        double[] drivers = {1, 2, 4};
        double[] readings = {0.4, 0.5, 1.3};
        SimpleRegression line = new SimpleRegression(false);
        for (int i = 0; i < 3; i++) {
            line.addData(drivers[i], readings[i]);
        }

        assertThat(Lines.slope(drivers, readings)).isCloseTo(line.getSlope(), within(1e-14));
    }

    /** Sandwich of matrices of full size, in which residuals of one line are multiplied with each other alone. */
    @Test
    void clusterErrorsAreTheSandwichOfFullMatrices() {
        CutRows rows = DenseMixedModel.uneven(8);
        int n = rows.size();
        RealMatrix x = new Array2DRowRealMatrix(rows.x());
        double[] beta = new DenseMixedModel(rows, 1, 0).beta();
        RealMatrix middle = new Array2DRowRealMatrix(n, n);
        double[] residuals = new double[n];
        Arrays.setAll(residuals, i -> rows.lo()[i] - Matrices.dot(rows.x()[i], beta));
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                middle.setEntry(i, j, rows.plate()[i] == rows.plate()[j] ? residuals[i] * residuals[j] : 0);
            }
        }
        RealMatrix bread = DenseMixedModel.inverse(x.transpose().multiply(x));
        RealMatrix sandwich =
                bread.multiply(x.transpose().multiply(middle).multiply(x)).multiply(bread);
        double factor = 5 / 4.0 * (n - 1) / (n - 2);
        for (int j = 0; j < 2; j++) {
            assertThat(Lines.clusterErrors(rows, false)[j])
                    .isCloseTo(Math.sqrt(sandwich.getEntry(j, j)), within(1e-10));
            assertThat(Lines.clusterErrors(rows, true)[j])
                    .isCloseTo(Math.sqrt(factor * sandwich.getEntry(j, j)), within(1e-10));
        }
    }

    /** Quenouille and Tukey: of a mean the jackknife gives the standard deviation over the root of the count. */
    @Test
    void leavingOneOutGivesTheErrorOfAMean() {
        double[] values = {1.2, 0.7, 2.1, 1.6, 0.4};
        double sum = Arrays.stream(values).sum();
        double[] errors = Lines.leaveOneOutErrors(5, left ->
                new double[] {(sum - values[left]) / 4, 3 * (sum - values[left]) / 4});
        double expected = new StandardDeviation().evaluate(values) / Math.sqrt(5);

        assertThat(errors).containsExactly(new double[] {expected, 3 * expected}, within(1e-14));
    }
}
