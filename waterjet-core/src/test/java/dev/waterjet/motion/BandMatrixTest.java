package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against the dense solver of Commons Math. */
class BandMatrixTest {

    private final Random random = new Random(5);

    private BandMatrix filled(int size) {
        BandMatrix matrix = new BandMatrix(size);
        for (int i = 0; i < size; i++) {
            matrix.first[i] = random.nextGaussian();
            matrix.second[i] = random.nextGaussian();
            matrix.diagonal[i] = 6 + random.nextDouble();
        }
        return matrix;
    }

    private static RealMatrix dense(BandMatrix matrix, int from, int to) {
        int n = to - from + 1;
        RealMatrix dense = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            dense.setEntry(i, i, matrix.diagonal[from + i]);
            for (int k = 1; k <= 2 && i + k < n; k++) {
                double entry = k == 1 ? matrix.first[from + i] : matrix.second[from + i];
                dense.setEntry(i, i + k, entry);
                dense.setEntry(i + k, i, entry);
            }
        }
        return dense;
    }

    @ParameterizedTest
    @CsvSource({"1, 0, 0", "2, 0, 1", "3, 0, 2", "9, 0, 8", "9, 1, 8", "9, 2, 6", "12, 5, 5", "30, 3, 27"})
    void aPartOfTheMatrixIsSolvedAsTheDenseOne(int size, int from, int to) {
        BandMatrix matrix = filled(size);
        RealMatrix dense = dense(matrix, from, to);
        matrix.factor(from, to);

        for (int trial = 0; trial < 3; trial++) {
            double[] right = random.doubles(size).toArray();
            double[] solved = right.clone();
            matrix.solve(solved, from, to);
            double[] expected = new LUDecomposition(dense)
                    .getSolver()
                    .solve(new ArrayRealVector(right, from, to - from + 1))
                    .toArray();

            for (int i = 0; i < size; i++) {
                double value = i < from || i > to ? right[i] : expected[i - from];
                assertThat(solved[i]).isCloseTo(value, within(1e-12));
            }
        }
    }

    @Test
    void aClearedMatrixIsZeroUpToItsSize() {
        BandMatrix matrix = filled(6);
        double kept = matrix.first[5];
        matrix.clear(5);

        for (int i = 0; i < 5; i++) {
            assertThat(new double[] {matrix.diagonal[i], matrix.first[i], matrix.second[i]})
                    .containsOnly(0);
        }
        assertThat(matrix.first[5]).isEqualTo(kept);
    }
}
