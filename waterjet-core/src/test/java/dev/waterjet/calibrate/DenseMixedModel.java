package dev.waterjet.calibrate;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Measured values with scatter and a random effect of the plate by matrices of full size: the textbook formulas of generalized
 * least squares (Searle, Casella, McCulloch, Variance Components, 1992, chapter 6, from memory), without any structure.
 */
final class DenseMixedModel {

    private final CutRows rows;
    private final RealMatrix x;
    private final RealVector y;
    private final RealMatrix sameplate;
    private final RealMatrix covariance;

    DenseMixedModel(CutRows rows, double sigma, double tau) {
        this.rows = rows;
        int n = rows.size();
        x = new Array2DRowRealMatrix(rows.x());
        y = new ArrayRealVector(rows.lo());
        sameplate = new Array2DRowRealMatrix(n, n);
        covariance = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                boolean isSame = rows.plates() > 0 && rows.plate()[i] == rows.plate()[j];
                sameplate.setEntry(i, j, isSame ? 1 : 0);
                double own = i == j ? sigma * sigma + rows.delta()[i] * rows.delta()[i] : 0;
                covariance.setEntry(i, j, own + (isSame ? tau * tau : 0));
            }
        }
    }

    static RealMatrix inverse(RealMatrix matrix) {
        return new LUDecomposition(matrix).getSolver().getInverse();
    }

    static double logDeterminant(RealMatrix matrix) {
        return Math.log(new LUDecomposition(matrix).getDeterminant());
    }

    RealMatrix covariance() {
        return covariance;
    }

    /** Information of the coefficients: X' V^-1 X. */
    RealMatrix information() {
        return x.transpose().multiply(inverse(covariance)).multiply(x);
    }

    double[] beta() {
        return inverse(information())
                .operate(x.transpose().multiply(inverse(covariance)).operate(y))
                .toArray();
    }

    double logLikelihood(double[] beta) {
        RealVector residuals = y.subtract(x.operate(new ArrayRealVector(beta)));
        return -0.5
                * (rows.size() * Math.log(2 * Math.PI)
                        + logDeterminant(covariance)
                        + residuals.dotProduct(inverse(covariance).operate(residuals)));
    }

    double restricted() {
        return logLikelihood(beta()) + 0.5 * rows.width() * Math.log(2 * Math.PI) - 0.5 * logDeterminant(information());
    }

    /** Derivatives of the covariance by both variances. */
    RealMatrix[] changes() {
        return new RealMatrix[] {MatrixUtils.createRealIdentityMatrix(rows.size()), sameplate};
    }

    /** Expected information of both variances: half the trace of P G P G, with the projection P off the settings. */
    RealMatrix expectedInformation() {
        RealMatrix inverse = inverse(covariance);
        RealMatrix p = inverse.subtract(inverse.multiply(x)
                .multiply(inverse(information()))
                .multiply(x.transpose())
                .multiply(inverse));
        RealMatrix[] g = changes();
        RealMatrix expected = new Array2DRowRealMatrix(2, 2);
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 2; j++) {
                expected.setEntry(
                        i, j, p.multiply(g[i]).multiply(p).multiply(g[j]).getTrace() / 2);
            }
        }
        return expected;
    }

    /** Covariance of the coefficients by Kenward and Roger, Biometrics 53 (1997) 983-997, eq. 5 (from memory). */
    RealMatrix adjustedCovariance() {
        RealMatrix inverse = inverse(covariance);
        RealMatrix plain = inverse(information());
        RealMatrix w = inverse(expectedInformation());
        RealMatrix[] g = changes();
        RealMatrix inner = new Array2DRowRealMatrix(rows.width(), rows.width());
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 2; j++) {
                RealMatrix first = inverse.multiply(g[i]).multiply(inverse);
                RealMatrix q = x.transpose()
                        .multiply(first)
                        .multiply(g[j])
                        .multiply(inverse)
                        .multiply(x);
                RealMatrix pi = x.transpose().multiply(first).multiply(x);
                RealMatrix pj = x.transpose()
                        .multiply(inverse.multiply(g[j]).multiply(inverse))
                        .multiply(x);
                inner = inner.add(q.subtract(pi.multiply(plain).multiply(pj)).scalarMultiply(w.getEntry(i, j)));
            }
        }
        return plain.add(plain.multiply(inner).multiply(plain).scalarMultiply(2));
    }

    /** Rows with two coefficients on plates of unequal size. */
    static CutRows uneven(long seed) {
        java.util.Random random = new java.util.Random(seed);
        int[] plates = {0, 0, 0, 1, 1, 2, 2, 2, 2, 3, 4, 4, 1, 0};
        double[] y = new double[plates.length];
        double[][] x = new double[plates.length][];
        double[] effects = random.doubles(5, -0.2, 0.2).toArray();
        for (int i = 0; i < y.length; i++) {
            x[i] = new double[] {1, random.nextGaussian()};
            y[i] = 4.5 + 0.3 * x[i][1] + effects[plates[i]] + 0.05 * random.nextGaussian();
        }
        return CutRows.exact(y, x).withPlates(plates);
    }
}
