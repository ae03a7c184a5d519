package dev.waterjet.fit;

import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/** What the derivatives at the best fit say about its parameters and its observations. */
final class Covariance {

    private Covariance() {}

    static RealMatrix withUnitColumns(RealMatrix jacobian) {
        RealMatrix scaled = jacobian.copy();
        for (int j = 0; j < scaled.getColumnDimension(); j++) {
            scaled.setColumnVector(
                    j,
                    scaled.getColumnVector(j)
                            .mapDivide(scaled.getColumnVector(j).getNorm()));
        }
        return scaled;
    }

    /** variance (J^T J)^-1, from the decomposition of J with unit columns. */
    static double[][] of(SingularValueDecomposition decomposition, RealMatrix jacobian, double variance) {
        int count = jacobian.getColumnDimension();
        double[] singular = decomposition.getSingularValues();
        RealMatrix v = decomposition.getV();
        double[][] covariance = new double[count][count];
        for (int i = 0; i < count; i++) {
            for (int j = 0; j < count; j++) {
                double sum = 0;
                for (int k = 0; k < count; k++) {
                    sum += v.getEntry(i, k) * v.getEntry(j, k) / (singular[k] * singular[k]);
                }
                covariance[i][j] = variance
                        * sum
                        / jacobian.getColumnVector(i).getNorm()
                        / jacobian.getColumnVector(j).getNorm();
            }
        }
        return covariance;
    }

    /** Diagonal of the matrix that turns observations into predictions: squared rows of the left singular vectors. */
    static double[] leverages(SingularValueDecomposition decomposition) {
        RealMatrix u = decomposition.getU();
        double[] leverages = new double[u.getRowDimension()];
        for (int i = 0; i < leverages.length; i++) {
            leverages[i] = u.getRowVector(i).dotProduct(u.getRowVector(i));
        }
        return leverages;
    }
}
