package dev.waterjet.reference;

/**
 * Answer of the library to a row.
 *
 * @param computed what it computed, in words or in the unit of the expected value
 * @param isPassed whether that is within the tolerance
 */
public record CaseAnswer(String computed, boolean isPassed) {

    /** A number that has to agree with another within a relative tolerance. */
    public static CaseAnswer within(double computed, double expected, double relativeTolerance) {
        return new CaseAnswer(
                Double.toString(computed), Math.abs(computed - expected) <= relativeTolerance * Math.abs(expected));
    }
}
