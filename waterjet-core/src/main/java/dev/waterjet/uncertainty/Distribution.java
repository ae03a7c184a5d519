package dev.waterjet.uncertainty;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Objects;

/**
 * Probability distribution of an input. Draws follow JCGM 101, 6.4.
 *
 * <p>Values are plain numbers, in SI where they stand for a quantity.
 */
public final class Distribution implements Serializable {

    private static final long serialVersionUID = 1L;

    private enum Shape {
        NORMAL,
        STUDENT,
        LOG_NORMAL,
        UNIFORM,
        TRIANGULAR,
        ARCSINE
    }

    private final Shape shape;
    private final double first;
    private final double second;
    private final double third;

    private Distribution(Shape shape, double first, double second, double third) {
        this.shape = shape;
        this.first = first;
        this.second = second;
        this.third = third;
    }

    /**
     * Returns a normal distribution, for a value with a standard uncertainty.
     *
     * @param mean the value
     * @param standardUncertainty its standard uncertainty, zero or more
     * @return the distribution
     */
    public static Distribution normal(double mean, double standardUncertainty) {
        Require.finite("mean", mean, Units.ONE);
        Require.notNegative("standard uncertainty", standardUncertainty, Units.ONE);
        return new Distribution(Shape.NORMAL, mean, standardUncertainty, Double.POSITIVE_INFINITY);
    }

    /**
     * Returns the distribution of the mean of repeated readings: Student's distribution, shifted and scaled (JCGM 101, 6.4.9).
     *
     * @param mean mean of the readings
     * @param standardUncertainty standard uncertainty of that mean, zero or more
     * @param degreesOfFreedom degrees of freedom of that uncertainty, above zero
     * @return the distribution
     */
    public static Distribution student(double mean, double standardUncertainty, double degreesOfFreedom) {
        Require.finite("mean", mean, Units.ONE);
        Require.notNegative("standard uncertainty", standardUncertainty, Units.ONE);
        Require.positive("degrees of freedom", degreesOfFreedom, Units.ONE);
        return new Distribution(Shape.STUDENT, mean, standardUncertainty, degreesOfFreedom);
    }

    /**
     * Returns a log-normal distribution, for a positive value with a relative uncertainty.
     *
     * @param median the value, above zero
     * @param relativeUncertainty standard deviation of its logarithm: 0.1 for about 10 %
     * @return the distribution
     */
    public static Distribution logNormal(double median, double relativeUncertainty) {
        Require.positive("median", median, Units.ONE);
        Require.notNegative("relative uncertainty", relativeUncertainty, Units.ONE);
        return new Distribution(Shape.LOG_NORMAL, median, relativeUncertainty, 0);
    }

    /**
     * Returns a rectangular distribution, for a value between limits.
     *
     * @param lowest minimum
     * @param highest maximum, above the minimum
     * @return the distribution
     */
    public static Distribution uniform(double lowest, double highest) {
        requireOrder(lowest, highest);
        return new Distribution(Shape.UNIFORM, lowest, highest, 0);
    }

    /**
     * Returns a triangular distribution, for a value between limits with a mode.
     *
     * @param lowest minimum
     * @param likeliest mode, from the minimum to the maximum
     * @param highest maximum, above the minimum
     * @return the distribution
     */
    public static Distribution triangular(double lowest, double likeliest, double highest) {
        requireOrder(lowest, highest);
        Require.between("likeliest value", likeliest, lowest, highest, Units.ONE, "");
        return new Distribution(Shape.TRIANGULAR, lowest, highest, likeliest);
    }

    /**
     * Returns the U-shaped distribution of a value that oscillates as a sine between two limits (JCGM 101, 6.4.6).
     *
     * @param lowest minimum
     * @param highest maximum, above the minimum
     * @return the distribution
     */
    public static Distribution arcsine(double lowest, double highest) {
        requireOrder(lowest, highest);
        return new Distribution(Shape.ARCSINE, lowest, highest, 0);
    }

    private static void requireOrder(double lowest, double highest) {
        Require.finite("lower limit", lowest, Units.ONE);
        Require.above("upper limit", highest, lowest, Units.ONE, "the lower limit");
    }

    /**
     * Returns the best estimate of the input: the expectation, or the median of a log-normal distribution.
     *
     * @return the value
     */
    public double value() {
        return switch (shape) {
            case NORMAL, STUDENT, LOG_NORMAL -> first;
            case UNIFORM, ARCSINE -> (first + second) / 2;
            case TRIANGULAR -> (first + second + third) / 3;
        };
    }

    /**
     * Returns the standard uncertainty of the input by JCGM 100; of a log-normal distribution the relative uncertainty times
     * the median.
     *
     * @return the standard uncertainty
     */
    public double standardUncertainty() {
        double width = second - first;
        return switch (shape) {
            case NORMAL, STUDENT -> second;
            case LOG_NORMAL -> first * second;
            case UNIFORM -> width / Math.sqrt(12);
            case ARCSINE -> width / Math.sqrt(8);
            case TRIANGULAR ->
                Math.sqrt(first * first
                                + second * second
                                + third * third
                                - first * second
                                - first * third
                                - second * third)
                        / Math.sqrt(18);
        };
    }

    /**
     * Returns the degrees of freedom of the standard uncertainty.
     *
     * @return the degrees of freedom; infinite except for Student's distribution
     */
    public double degreesOfFreedom() {
        return shape == Shape.STUDENT ? third : Double.POSITIVE_INFINITY;
    }

    /** One draw; {@code correlated} is a standard normal draw, and the result increases with it. */
    double draw(double correlated, Draws draws) {
        return switch (shape) {
            case NORMAL -> first + second * correlated;
            case STUDENT -> first + second * correlated * Math.sqrt(third / draws.chiSquare(third));
            case LOG_NORMAL -> first * Math.exp(second * correlated);
            case UNIFORM, TRIANGULAR, ARCSINE -> bounded(Draws.probability(correlated));
        };
    }

    /** One independent draw. */
    double draw(Draws draws) {
        return switch (shape) {
            case NORMAL, STUDENT, LOG_NORMAL -> draw(draws.normal(), draws);
            case UNIFORM, TRIANGULAR, ARCSINE -> bounded(draws.uniform());
        };
    }

    private double bounded(double probability) {
        double width = second - first;
        return switch (shape) {
            case UNIFORM -> first + width * probability;
            case ARCSINE -> first + width / 2 * (1 - Math.cos(Math.PI * probability));
            default -> {
                double rise = third - first;
                yield probability * width < rise
                        ? first + Math.sqrt(probability * width * rise)
                        : second - Math.sqrt((1 - probability) * width * (second - third));
            }
        };
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Distribution that
                && shape == that.shape
                && first == that.first
                && second == that.second
                && third == that.third;
    }

    @Override
    public int hashCode() {
        return Objects.hash(shape, first, second, third);
    }

    @Override
    public String toString() {
        return switch (shape) {
            case NORMAL -> "normal, " + first + " +/- " + second;
            case STUDENT -> "Student, " + first + " +/- " + second + ", " + third + " degrees of freedom";
            case LOG_NORMAL -> "log-normal, " + first + " within " + 100 * second + " %";
            case UNIFORM -> "uniform, " + first + " to " + second;
            case TRIANGULAR -> "triangular, " + first + " to " + second + ", likeliest " + third;
            case ARCSINE -> "arcsine, " + first + " to " + second;
        };
    }
}
