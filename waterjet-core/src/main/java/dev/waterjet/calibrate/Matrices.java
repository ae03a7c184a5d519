package dev.waterjet.calibrate;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.NonSymmetricMatrixException;
import org.apache.commons.math3.linear.SingularMatrixException;

/** Small symmetric matrices of the fits. */
final class Matrices {

    private Matrices() {}

    private static CholeskyDecomposition factor(double[][] matrix) {
        return new CholeskyDecomposition(new Array2DRowRealMatrix(symmetric(matrix), false), 1e-6, 0);
    }

    private static double[][] symmetric(double[][] matrix) {
        double[][] even = new double[matrix.length][matrix.length];
        for (int i = 0; i < even.length; i++) {
            for (int j = 0; j < even.length; j++) {
                even[i][j] = (matrix[i][j] + matrix[j][i]) / 2;
            }
        }
        return even;
    }

    /** Whether a symmetric matrix is positive definite. */
    static boolean isPositive(double[][] matrix) {
        try {
            return factor(matrix).getDeterminant() > 0;
        } catch (NonPositiveDefiniteMatrixException | NonSymmetricMatrixException e) {
            return false;
        }
    }

    /** Inverse of a positive definite matrix. */
    static double[][] inverse(double[][] matrix) {
        return factor(matrix).getSolver().getInverse().getData();
    }

    /** Inverse of any matrix. */
    static double[][] generalInverse(double[][] matrix) {
        try {
            return new LUDecomposition(new Array2DRowRealMatrix(matrix))
                    .getSolver()
                    .getInverse()
                    .getData();
        } catch (SingularMatrixException e) {
            double[][] none = new double[matrix.length][matrix.length];
            for (double[] row : none) {
                java.util.Arrays.fill(row, Double.NaN);
            }
            return none;
        }
    }

    /** Logarithm of the determinant of a positive definite matrix. */
    static double logDeterminant(double[][] matrix) {
        double[][] lower = factor(matrix).getL().getData();
        double sum = 0;
        for (int i = 0; i < lower.length; i++) {
            sum += 2 * Math.log(lower[i][i]);
        }
        return sum;
    }

    static double[] times(double[][] matrix, double[] vector) {
        double[] product = new double[matrix.length];
        for (int i = 0; i < product.length; i++) {
            product[i] = dot(matrix[i], vector);
        }
        return product;
    }

    static double dot(double[] one, double[] other) {
        double sum = 0;
        for (int i = 0; i < one.length; i++) {
            sum += one[i] * other[i];
        }
        return sum;
    }

    /** {@code v' M v}. */
    static double square(double[] vector, double[][] matrix) {
        return dot(vector, times(matrix, vector));
    }

    static double[][] sum(double[][] one, double[][] other) {
        double[][] sum = new double[one.length][one.length];
        for (int i = 0; i < sum.length; i++) {
            for (int j = 0; j < sum.length; j++) {
                sum[i][j] = one[i][j] + other[i][j];
            }
        }
        return sum;
    }

    static double[][] scaled(double[][] matrix, double factor) {
        double[][] scaled = new double[matrix.length][];
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] = java.util.Arrays.stream(matrix[i]).map(v -> v * factor).toArray();
        }
        return scaled;
    }
}
