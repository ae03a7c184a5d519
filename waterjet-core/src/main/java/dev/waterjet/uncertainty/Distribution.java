package dev.waterjet.uncertainty;

import java.io.Serializable;

/**
 * Probability distribution of an input (JCGM 101, 6.4). Values are plain numbers, in SI where they represent a quantity.
 *
 * <pre>{@code
 * Distribution pressure = Distribution.normal(345e6, 5e6);
 * Distribution bore = Distribution.uniform(0.33e-3, 0.35e-3);
 * Distribution number = Distribution.logNormal(87.6, 0.1);
 * double below = number.quantile(0.025);
 * }</pre>
 */
public sealed interface Distribution extends Serializable
        permits Shapes.Normal, Shapes.Student, Shapes.LogNormal, Shapes.Uniform, Shapes.Triangular, Shapes.Arcsine {

    /**
     * Returns a normal distribution, for a value with a standard uncertainty.
     *
     * @param mean the value
     * @param standardUncertainty its standard uncertainty, 0 or more
     * @return the distribution
     */
    static Distribution normal(double mean, double standardUncertainty) {
        return new Shapes.Normal(mean, standardUncertainty);
    }

    /**
     * Returns the distribution of the mean of repeated readings: Student's distribution, shifted and scaled (JCGM 101, 6.4.9).
     *
     * @param mean mean of the readings
     * @param standardUncertainty standard uncertainty of that mean, 0 or more
     * @param degreesOfFreedom degrees of freedom of that uncertainty, above 0
     * @return the distribution
     */
    static Distribution student(double mean, double standardUncertainty, double degreesOfFreedom) {
        return new Shapes.Student(mean, standardUncertainty, degreesOfFreedom);
    }

    /**
     * Returns a log-normal distribution, for a positive value with a relative uncertainty.
     *
     * @param median the value, above 0
     * @param relativeUncertainty standard deviation of its logarithm, 0 or more: 0.1 for about 10 %
     * @return the distribution
     */
    static Distribution logNormal(double median, double relativeUncertainty) {
        return new Shapes.LogNormal(median, relativeUncertainty);
    }

    /**
     * Returns a rectangular distribution, for a value between limits.
     *
     * @param minimum minimum
     * @param maximum maximum, above the minimum
     * @return the distribution
     */
    static Distribution uniform(double minimum, double maximum) {
        return new Shapes.Uniform(minimum, maximum);
    }

    /**
     * Returns a triangular distribution, for a value between limits with a mode.
     *
     * @param minimum minimum
     * @param mode mode, from the minimum to the maximum
     * @param maximum maximum, above the minimum
     * @return the distribution
     */
    static Distribution triangular(double minimum, double mode, double maximum) {
        return new Shapes.Triangular(minimum, mode, maximum);
    }

    /**
     * Returns the U-shaped distribution of a value that oscillates as a sine between two limits (JCGM 101, 6.4.6).
     *
     * @param minimum minimum
     * @param maximum maximum, above the minimum
     * @return the distribution
     */
    static Distribution arcsine(double minimum, double maximum) {
        return new Shapes.Arcsine(minimum, maximum);
    }

    /** {@return the best estimate of the input: the expectation, or the median of a log-normal distribution} */
    double value();

    /**
     * {@return the standard uncertainty of the input by JCGM 100; of a log-normal distribution the relative uncertainty times
     *     the median}
     */
    double standardUncertainty();

    /** {@return the degrees of freedom of the standard uncertainty; infinite except for Student's distribution} */
    default double degreesOfFreedom() {
        return Double.POSITIVE_INFINITY;
    }

    /**
     * Returns a quantile.
     *
     * @param probability probability that a value does not exceed the quantile, above 0 and below 1
     * @return the quantile
     */
    double quantile(double probability);
}
