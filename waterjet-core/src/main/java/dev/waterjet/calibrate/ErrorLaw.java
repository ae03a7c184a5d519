package dev.waterjet.calibrate;

import org.apache.commons.math3.distribution.TDistribution;

/** Distribution of the scatter of a cut about the model, in standard units. */
interface ErrorLaw {

    ErrorLaw NORMAL = new ErrorLaw() {
        @Override
        public double logDensity(double x) {
            return NormalTails.logDensity(x);
        }

        @Override
        public double logBetween(double a, double b) {
            return NormalTails.logBetween(a, b);
        }
    };

    /** Degrees of freedom; infinite for a normal scatter. */
    default double freedom() {
        return Double.POSITIVE_INFINITY;
    }

    /** Logarithm of the density. */
    double logDensity(double x);

    /** Logarithm of the probability between two values, of which either may be infinite. */
    double logBetween(double a, double b);

    /** Student's distribution, whose heavy tails leave little weight to a wrong cut. */
    static ErrorLaw student(double freedom) {
        TDistribution student = new TDistribution(null, freedom);
        return new ErrorLaw() {
            @Override
            public double freedom() {
                return freedom;
            }

            @Override
            public double logDensity(double x) {
                return student.logDensity(x);
            }

            @Override
            public double logBetween(double a, double b) {
                if (a > 0) {
                    return logBetween(-b, -a);
                }
                double probability = below(b) - below(a);
                // nearer than this the difference has no digits, but the density is constant
                return probability > 1e-9 * below(b)
                        ? Math.log(probability)
                        : logDensity((a + b) / 2) + Math.log(b - a);
            }

            private double below(double x) {
                return Double.isInfinite(x) ? (x > 0 ? 1 : 0) : student.cumulativeProbability(x);
            }
        };
    }
}
