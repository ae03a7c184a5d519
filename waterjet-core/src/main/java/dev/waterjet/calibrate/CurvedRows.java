package dev.waterjet.calibrate;

/** Residuals of a model that is not linear in its parameters, as rows without coefficients. */
@FunctionalInterface
interface CurvedRows {

    /** Rows about the model with these parameters, on the scale of the logarithm of depth. */
    CutRows at(double[] parameters);

    /** Logarithm of what turns a density of the rows into one of the measured quantities. */
    default double logJacobian(double[] parameters) {
        return 0;
    }
}
