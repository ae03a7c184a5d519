package dev.waterjet.fit;

import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/** Covariance and leverages from the derivatives at the minimum. */
final class Covariance {

    private Covariance() {}

    static RealMatrix withUnitColumns(RealMatrix jacobian) {
        RealMatrix scaled = jacobian.copy();
        for (int j = 0; j < scaled.getColumnDimension(); j++) {
            double norm = scaled.getColumnVector(j).getNorm();
            scaled.setColumnVector(j, scaled.getColumnVector(j).mapDivide(norm));
        }
        return scaled;
    }

    /** (J^T J)^-1, from the decomposition of J with unit columns: the covariance for observations of unit variance. */
    static double[][] ofUnitVariance(SingularValueDecomposition decomposition, RealMatrix jacobian) {
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
                double norms = jacobian.getColumnVector(i).getNorm()
                        * jacobian.getColumnVector(j).getNorm();
                covariance[i][j] = sum / norms;
            }
        }
        return covariance;
    }

    /** Diagonal of the matrix that maps observations to predictions: squared rows of the left singular vectors. */
    static double[] leverages(SingularValueDecomposition decomposition) {
        RealMatrix u = decomposition.getU();
        double[] leverages = new double[u.getRowDimension()];
        for (int i = 0; i < leverages.length; i++) {
            leverages[i] = u.getRowVector(i).dotProduct(u.getRowVector(i));
        }
        return leverages;
    }
}
