package dev.waterjet.measure;

import javax.measure.Unit;

/**
 * Checks of arguments, on SI doubles. Each returns the value that was given, or throws a {@link DomainException} with
 * quantity, value, limit and unit. NaN and infinity never pass. The sign of a zero is dropped: {@code -0.0} comes back as
 * {@code 0.0}, so that equal values have equal hash codes.
 */
public final class Require {

    private static final double MAX_RELATIVE_UNCERTAINTY = 3;

    private Require() {}

    /**
     * Checks a value above zero.
     *
     * @param quantity name for the message
     * @param si value in SI
     * @param unit unit for the message
     * @return the value
     */
    public static double positive(String quantity, double si, Unit<?> unit) {
        return above(quantity, si, 0, unit, "");
    }

    /**
     * Checks a value of zero or more.
     *
     * @param quantity name for the message
     * @param si value in SI
     * @param unit unit for the message
     * @return the value
     */
    public static double notNegative(String quantity, double si, Unit<?> unit) {
        return atLeast(quantity, si, 0, unit, "");
    }

    /**
     * Checks a value above a limit.
     *
     * @param quantity name for the message
     * @param si value in SI
     * @param limitSi limit in SI
     * @param unit unit for the message
     * @param reason why the limit holds, or an empty text
     * @return the value
     */
    public static double above(String quantity, double si, double limitSi, Unit<?> unit, String reason) {
        if (si > limitSi && si < Double.POSITIVE_INFINITY) {
            return si + 0.0;
        }
        throw si > limitSi ? infinite(quantity, si, unit) : fault(quantity, si, "above", limitSi, unit, reason);
    }

    /**
     * Checks a value no smaller than a limit.
     *
     * @param quantity name for the message
     * @param si value in SI
     * @param limitSi limit in SI
     * @param unit unit for the message
     * @param reason why the limit holds, or an empty text
     * @return the value
     */
    public static double atLeast(String quantity, double si, double limitSi, Unit<?> unit, String reason) {
        if (si >= limitSi && si < Double.POSITIVE_INFINITY) {
            return si + 0.0;
        }
        throw si >= limitSi ? infinite(quantity, si, unit) : fault(quantity, si, "at least", limitSi, unit, reason);
    }

    /**
     * Checks a value no greater than a limit.
     *
     * @param quantity name for the message
     * @param si value in SI
     * @param limitSi limit in SI
     * @param unit unit for the message
     * @param reason why the limit holds, or an empty text
     * @return the value
     */
    public static double atMost(String quantity, double si, double limitSi, Unit<?> unit, String reason) {
        if (si <= limitSi && si > Double.NEGATIVE_INFINITY) {
            return si + 0.0;
        }
        throw fault(quantity, si, "at most", limitSi, unit, reason);
    }

    /**
     * Checks a value between two limits, both allowed.
     *
     * @param quantity name for the message
     * @param si value in SI
     * @param minimumSi lower limit in SI
     * @param maximumSi upper limit in SI
     * @param unit unit for the message
     * @param reason why the limits hold, or an empty text
     * @return the value
     */
    public static double between(
            String quantity, double si, double minimumSi, double maximumSi, Unit<?> unit, String reason) {
        if (si >= minimumSi && si <= maximumSi) {
            return si + 0.0;
        }
        throw si > maximumSi
                ? fault(quantity, si, "at most", maximumSi, unit, reason)
                : fault(quantity, si, "at least", minimumSi, unit, reason);
    }

    /**
     * Checks a relative standard uncertainty: 0 to 3. A quantity known to no better than a factor of
     * <i>e</i><sup>3</sup> = 20 is unknown.
     *
     * @param quantity name of the quantity that is uncertain, for the message
     * @param relative standard uncertainty of the quantity's logarithm
     * @param reason why the limit holds
     * @return the uncertainty
     */
    public static double relativeUncertainty(String quantity, double relative, String reason) {
        return between(
                "relative uncertainty of the " + quantity, relative, 0, MAX_RELATIVE_UNCERTAINTY, Units.ONE, reason);
    }

    /**
     * Checks the coverage of an interval: a probability above 0 and below 1.
     *
     * @param coverage the probability, such as 0.95
     * @return the probability
     */
    public static double coverage(double coverage) {
        above("coverage", coverage, 0, Units.ONE, "");
        return atMost("coverage", coverage, Math.nextDown(1.0), Units.ONE, "");
    }

    /**
     * Checks that a value is finite.
     *
     * @param quantity name for the message
     * @param si value in SI
     * @param unit unit for the message
     * @return the value
     */
    public static double finite(String quantity, double si, Unit<?> unit) {
        if (Double.isFinite(si)) {
            return si + 0.0;
        }
        throw infinite(quantity, si, unit);
    }

    /**
     * Checks an index.
     *
     * @param what name of the indexed object, for the message: {@code "edge"}
     * @param index index from 0
     * @param size number of objects
     * @return the index
     * @throws DomainException with code {@code no-such-index} if the index is below 0, or {@code size} or above
     */
    public static int index(String what, int index, int size) {
        if (index >= 0 && index < size) {
            return index;
        }
        Message message = size == 0
                ? Message.of("no-such-index", "there is no {what} {index}; there is none at all")
                : Message.of("no-such-index", "there is no {what} {index}; the index must be 0 to {last}");
        throw new DomainException(
                message.with("what", what).with("index", index).with("last", size - 1L), what + " index");
    }

    static DomainException infinite(String quantity, double si, Unit<?> unit) {
        boolean isBelowAll = si < 0;
        return fault(
                quantity,
                si,
                isBelowAll ? "at least" : "at most",
                isBelowAll ? -Double.MAX_VALUE : Double.MAX_VALUE,
                unit,
                "it must be a finite number");
    }

    private static DomainException fault(
            String quantity, double si, String relation, double limitSi, Unit<?> unit, String reason) {
        return new DomainException(quantity, si, relation, limitSi, unit, reason);
    }
}
