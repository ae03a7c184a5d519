package dev.waterjet.uncertainty;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.distribution.TriangularDistribution;

/** The distributions of inputs. */
final class Shapes {

    /** Standard normal distribution, without a generator: draws are quantiles of uniform numbers. */
    static final NormalDistribution STANDARD_NORMAL = new NormalDistribution(null, 0, 1);

    private Shapes() {}

    private static double probability(double probability) {
        Require.above("probability", probability, 0, Units.ONE, "");
        return Require.atMost("probability", probability, Math.nextDown(1.0), Units.ONE, "");
    }

    private static double score(double probability) {
        return STANDARD_NORMAL.inverseCumulativeProbability(probability(probability));
    }

    private static double mean(double mean) {
        return Require.finite("mean", mean, Units.ONE);
    }

    private static double uncertainty(double uncertainty) {
        return Require.notNegative("standard uncertainty", uncertainty, Units.ONE);
    }

    private static double requireMinimum(double minimum) {
        return Require.finite("lower limit", minimum, Units.ONE);
    }

    private static double requireMaximum(double maximum, double minimum) {
        Require.finite("width", maximum - minimum, Units.ONE);
        return Require.above("upper limit", maximum, minimum, Units.ONE, "the lower limit");
    }

    record Normal(double value, double standardUncertainty) implements Distribution {

        Normal {
            value = mean(value);
            standardUncertainty = uncertainty(standardUncertainty);
        }

        @Override
        public double quantile(double probability) {
            return value + standardUncertainty * score(probability);
        }

        @Override
        public String toString() {
            return "normal, " + value + " +/- " + standardUncertainty;
        }
    }

    record Student(double value, double standardUncertainty, double degreesOfFreedom) implements Distribution {

        Student {
            value = mean(value);
            standardUncertainty = uncertainty(standardUncertainty);
            degreesOfFreedom = Require.positive("degrees of freedom", degreesOfFreedom, Units.ONE);
        }

        /** A search in Commons Math; draws that need speed divide a normal value by the root of chi-square over n instead. */
        @Override
        public double quantile(double probability) {
            return value
                    + standardUncertainty
                            * new TDistribution(null, degreesOfFreedom)
                                    .inverseCumulativeProbability(probability(probability));
        }

        @Override
        public String toString() {
            return "Student, " + value + " +/- " + standardUncertainty + ", " + degreesOfFreedom
                    + " degrees of freedom";
        }
    }

    record LogNormal(double value, double relativeUncertainty) implements Distribution {

        LogNormal {
            value = Require.positive("median", value, Units.ONE);
            relativeUncertainty = Require.notNegative("relative uncertainty", relativeUncertainty, Units.ONE);
        }

        @Override
        public double standardUncertainty() {
            return value * relativeUncertainty;
        }

        @Override
        public double quantile(double probability) {
            return value * Math.exp(relativeUncertainty * score(probability));
        }

        @Override
        public String toString() {
            return "log-normal, " + value + " within " + 100 * relativeUncertainty + " %";
        }
    }

    record Uniform(double minimum, double maximum) implements Distribution {

        Uniform {
            minimum = requireMinimum(minimum);
            maximum = requireMaximum(maximum, minimum);
        }

        @Override
        public double value() {
            return (minimum + maximum) / 2;
        }

        @Override
        public double standardUncertainty() {
            return (maximum - minimum) / Math.sqrt(12);
        }

        @Override
        public double quantile(double probability) {
            return minimum + (maximum - minimum) * probability(probability);
        }

        @Override
        public String toString() {
            return "uniform, " + minimum + " to " + maximum;
        }
    }

    record Triangular(double minimum, double mode, double maximum) implements Distribution {

        Triangular {
            minimum = requireMinimum(minimum);
            maximum = requireMaximum(maximum, minimum);
            mode = Require.between("likeliest value", mode, minimum, maximum, Units.ONE, "");
        }

        @Override
        public double value() {
            return (minimum + maximum + mode) / 3;
        }

        @Override
        public double standardUncertainty() {
            return Math.sqrt(minimum * minimum
                            + maximum * maximum
                            + mode * mode
                            - minimum * maximum
                            - minimum * mode
                            - maximum * mode)
                    / Math.sqrt(18);
        }

        @Override
        public double quantile(double probability) {
            return new TriangularDistribution(null, minimum, mode, maximum)
                    .inverseCumulativeProbability(probability(probability));
        }

        @Override
        public String toString() {
            return "triangular, " + minimum + " to " + maximum + ", likeliest " + mode;
        }
    }

    record Arcsine(double minimum, double maximum) implements Distribution {

        Arcsine {
            minimum = requireMinimum(minimum);
            maximum = requireMaximum(maximum, minimum);
        }

        @Override
        public double value() {
            return (minimum + maximum) / 2;
        }

        @Override
        public double standardUncertainty() {
            return (maximum - minimum) / Math.sqrt(8);
        }

        /** In closed form; the beta distribution of Commons Math, of which this is a case, searches. */
        @Override
        public double quantile(double probability) {
            return minimum + (maximum - minimum) / 2 * (1 - Math.cos(Math.PI * probability(probability)));
        }

        @Override
        public String toString() {
            return "arcsine, " + minimum + " to " + maximum;
        }
    }
}
