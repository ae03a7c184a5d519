package dev.waterjet.calibrate;

/**
 * Complementary error function by the rational approximations of Cody, Mathematics of Computation 23 (1969) 631-637 (coefficients from
 * memory; checked with 40 digits by mpmath 1.3.0: within 7e-16 from 0 to 30). The continued fraction of Commons Math has the same digits
 * and takes ten times as long, which decides how long a fit with intervals takes.
 */
final class ErrorFunction {

    private static final double ONE_OVER_ROOT_PI = 1 / Math.sqrt(Math.PI);

    private static final double SMALL = 0.46875;
    private static final double LARGE = 4;

    private static final double[] A = {
        3.16112374387056560e00,
        1.13864154151050156e02,
        3.77485237685302021e02,
        3.20937758913846947e03,
        1.85777706184603153e-1
    };
    private static final double[] B = {
        2.36012909523441209e01, 2.44024637934444173e02, 1.28261652607737228e03, 2.84423683343917062e03
    };
    private static final double[] C = {
        5.64188496988670089e-1, 8.88314979438837594e00, 6.61191906371416295e01, 2.98635138197400131e02,
        8.81952221241769090e02, 1.71204761263407058e03, 2.05107837782607147e03, 1.23033935479799725e03,
        2.15311535474403846e-8
    };
    private static final double[] D = {
        1.57449261107098347e01, 1.17693950891312499e02, 5.37181101862009858e02, 1.62138957456669019e03,
        3.29079923573345963e03, 4.36261909014324716e03, 3.43936767414372164e03, 1.23033935480374942e03
    };
    private static final double[] P = {
        3.05326634961232344e-1,
        3.60344899949804439e-1,
        1.25781726111229246e-1,
        1.60837851487422766e-2,
        6.58749161529837803e-4,
        1.63153871373020978e-2
    };
    private static final double[] Q = {
        2.56852019228982242e00,
        1.87295284992346725e00,
        5.27905102951428412e-1,
        6.05183413124413191e-2,
        2.33520497626869185e-3
    };

    private ErrorFunction() {}

    /** {@code exp(x^2) erfc(x)} of a number of 0 or more, which vanishes slowly. */
    static double scaled(double x) {
        if (x <= SMALL) {
            return Math.exp(x * x) * (1 - x * ratio(x * x, A, B));
        }
        if (x <= LARGE) {
            return ratio(x, C, D);
        }
        if (x > Double.MAX_VALUE) {
            return 0;
        }
        double inverse = 1 / (x * x);
        return (ONE_OVER_ROOT_PI - inverse * ratio(inverse, P, Q)) / x;
    }

    /** Ratio of two polynomials, whose leading coefficients are the last of the first and 1. */
    private static double ratio(double x, double[] above, double[] below) {
        int last = below.length - 1;
        double numerator = above[last + 1] * x;
        double denominator = x;
        for (int k = 0; k < last; k++) {
            numerator = (numerator + above[k]) * x;
            denominator = (denominator + below[k]) * x;
        }
        return (numerator + above[last]) / (denominator + below[last]);
    }
}
