package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class MatricesTest {

    private static final double[][] POSITIVE = {{4, 1, 0.5}, {1, 3, -0.25}, {0.5, -0.25, 2}};

    /** By Sarrus: 24 - 0.125 - 0.125 - 0.75 - 0.25 - 2 = 20.75. */
    private static final double DETERMINANT = 20.75;

    private static void isUnit(double[][] one, double[][] other) {
        for (int i = 0; i < one.length; i++) {
            for (int j = 0; j < one.length; j++) {
                double sum = 0;
                for (int k = 0; k < one.length; k++) {
                    sum += one[i][k] * other[k][j];
                }
                assertThat(sum).isCloseTo(i == j ? 1 : 0, within(1e-14));
            }
        }
    }

    @Test
    void aMatrixTimesItsInverseIsTheUnit() {
        isUnit(POSITIVE, Matrices.inverse(POSITIVE));
        isUnit(POSITIVE, Matrices.generalInverse(POSITIVE));
        double[][] indefinite = {{1, 2}, {2, 1}};
        isUnit(indefinite, Matrices.generalInverse(indefinite));
        assertThat(Matrices.inverse(POSITIVE)[0][0]).isCloseTo((3 * 2 - 0.0625) / DETERMINANT, within(1e-15));
    }

    /** Rounding makes the halves of a matrix of second derivatives differ. */
    @Test
    void halvesThatDifferAreTakenAtTheirMean() {
        double[][] skew = {{2, 0.5}, {0.7, 1}};

        assertThat(Matrices.inverse(skew)[0][1]).isCloseTo(-0.6 / (2 - 0.36), within(1e-15));
        assertThat(Matrices.logDeterminant(skew)).isCloseTo(Math.log(2 - 0.36), within(1e-15));
    }

    @Test
    void aMatrixIsPositiveIfAllItsMinorsAre() {
        assertThat(Matrices.isPositive(POSITIVE)).isTrue();
        assertThat(Matrices.isPositive(new double[][] {{1, 2}, {2, 1}})).isFalse();
        assertThat(Matrices.isPositive(new double[][] {{-1}})).isFalse();
        assertThat(Matrices.isPositive(new double[][] {{1, 1}, {1, 1}})).isFalse();
        assertThat(Matrices.isPositive(new double[][] {{1, 0}, {0, Double.NaN}}))
                .isFalse();
    }

    @Test
    void theDeterminantIsThatOfSarrus() {
        assertThat(Matrices.logDeterminant(POSITIVE)).isCloseTo(Math.log(DETERMINANT), within(1e-15));
    }

    @Test
    void aSingularMatrixHasAnInverseOfNothing() {
        double[][] inverse = Matrices.generalInverse(new double[][] {{1, 2}, {2, 4}});

        assertThat(inverse).hasDimensions(2, 2);
        for (double[] row : inverse) {
            assertThat(row).containsOnly(Double.NaN);
        }
    }

    @Test
    void productsAndSumsAreThoseOfEachElement() {
        double[] vector = {2, -1, 0.5};

        assertThat(Matrices.dot(vector, new double[] {3, 4, 8})).isEqualTo(6 - 4 + 4);
        assertThat(Matrices.times(POSITIVE, vector)).containsExactly(8 - 1 + 0.25, 2 - 3 - 0.125, 1 + 0.25 + 1);
        assertThat(Matrices.square(vector, POSITIVE)).isEqualTo(2 * 7.25 + 1.125 + 0.5 * 2.25);
        assertThat(Matrices.sum(POSITIVE, new double[][] {{1, 2, 3}, {4, 5, 6}, {7, 8, 9}}))
                .isDeepEqualTo(new double[][] {{5, 3, 3.5}, {5, 8, 5.75}, {7.5, 7.75, 11}});
        assertThat(Matrices.scaled(POSITIVE, -2)[2]).containsExactly(-1, 0.5, -4);
    }
}
