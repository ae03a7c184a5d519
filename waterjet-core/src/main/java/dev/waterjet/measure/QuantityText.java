package dev.waterjet.measure;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;

/**
 * Text of quantities: a number with a decimal point, a blank, a unit. The default locale has no influence.
 *
 * <p>{@link #print(Quantity)} writes every digit, and {@link #parse(Kind, String)} reads the same number in the same unit back.
 * {@link #forPeople(Kind, double)} chooses a unit of the trade and at most four significant figures.
 *
 * <pre>{@code
 * Quantity<Length> bore = QuantityText.parse(Kind.LENGTH, "1/64 in");
 * QuantityText.print(bore);                                             // 0.015625 in
 * QuantityText.forPeople(Kind.LENGTH, bore);                            // 0.3969 mm
 * QuantityText.forPeople(Kind.SPEED, 0.0086712, 0.0016);                // 520 mm/min ± 100 mm/min
 * }</pre>
 *
 * <p>Limits of what is read: 200 characters; numbers from -1e100 to 1e100.
 */
public final class QuantityText {

    /** Greater numbers are refused: no conversion of one leaves the range of a double, nor does its cube. */
    static final double LARGEST_NUMBER = 1e100;

    static final int FIGURES_FOR_PEOPLE = 4;

    private static final int FIGURES_OF_A_LIMIT = 6;

    private static final int MAX_FIGURES = 17;

    private QuantityText() {}

    /**
     * Reads a quantity such as {@code "380 MPa"}, {@code "55ksi"}, {@code ".010 in"} or {@code "1-1/4 in"}. Units are those of
     * {@link Units} and others in use, such as {@code cm}, {@code thou}, {@code N/mm2}, {@code m3/h} and {@code lb/h}; powers
     * may be raised ({@code mm²}).
     *
     * @param kind kind of the quantity
     * @param text number and unit; a ratio needs no unit
     * @param <Q> the JSR-385 quantity type
     * @return the quantity, in the unit written
     * @throws TextException if the text is not a number with a unit of this kind, is longer than 200 characters, or its
     *     number is larger than 1e100
     */
    public static <Q extends Quantity<Q>> Quantity<Q> parse(Kind<Q> kind, String text) {
        return QuantityReader.read(kind, text);
    }

    /**
     * Reads a unit such as {@code "mm/min"}.
     *
     * @param kind kind of quantity that the unit must measure
     * @param text symbol of the unit, as {@link Units#symbol(Unit)} gives it, or another spelling
     * @param <Q> the JSR-385 quantity type
     * @return the unit
     * @throws TextException if no unit of this kind is written so
     */
    public static <Q extends Quantity<Q>> Unit<Q> parseUnit(Kind<Q> kind, String text) {
        return QuantityReader.readUnit(kind, text);
    }

    /**
     * Writes a quantity with every digit of its number: a double so that it can be read back, a decimal or an integer of any
     * length in full.
     *
     * @param quantity the quantity
     * @return number and symbol of its unit
     */
    public static String print(Quantity<?> quantity) {
        Objects.requireNonNull(quantity, "quantity");
        Number value = quantity.getValue();
        boolean isExact = value instanceof BigDecimal || value instanceof BigInteger || value instanceof Long;
        return join(isExact ? value.toString() : plain(value.doubleValue()), quantity.getUnit());
    }

    /**
     * Writes a quantity in a unit, rounded.
     *
     * @param kind kind of the quantity
     * @param quantity the quantity
     * @param unit unit of the text
     * @param digits significant digits, 1 to 17
     * @param <Q> the JSR-385 quantity type
     * @return number and symbol of the unit
     */
    public static <Q extends Quantity<Q>> String print(Kind<Q> kind, Quantity<Q> quantity, Unit<Q> unit, int digits) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(quantity, "quantity");
        Objects.requireNonNull(unit, "unit");
        return join(round(Scale.of(kind, unit).fromSi(kind.si(quantity)), digits), unit);
    }

    /**
     * Writes a quantity for people: in a unit of the trade chosen by kind and size, with at most four significant figures.
     *
     * @param kind kind of the quantity
     * @param quantity the quantity
     * @param <Q> the JSR-385 quantity type
     * @return number and symbol of the unit, such as {@code "520 mm/min"} or {@code "3.2 µm"}
     */
    public static <Q extends Quantity<Q>> String forPeople(Kind<Q> kind, Quantity<Q> quantity) {
        Objects.requireNonNull(kind, "kind");
        return forPeople(kind, kind.si(quantity));
    }

    /**
     * Writes a value in SI for people: in a unit of the trade chosen by kind and size, with at most four significant figures.
     *
     * @param kind kind of the quantity
     * @param si value in SI
     * @return number and symbol of the unit, such as {@code "520 mm/min"} or {@code "3.2 µm"}
     */
    public static String forPeople(Kind<?> kind, double si) {
        Objects.requireNonNull(kind, "kind");
        Unit<?> unit = TradeUnits.of(kind, si);
        return join(round(Units.fromSi(si, unit), FIGURES_FOR_PEOPLE), unit);
    }

    /**
     * Writes a value in SI with its standard uncertainty for people, both in one unit and with the same last digit: one
     * significant figure of the uncertainty, two if it begins with 1. The value has at most four significant figures.
     *
     * @param kind kind of the quantity
     * @param si value in SI
     * @param standardUncertaintySi standard uncertainty in SI, 0 for an exact value
     * @return value and uncertainty, such as {@code "520 mm/min ± 100 mm/min"}; the value alone if it is exact
     */
    public static String forPeople(Kind<?> kind, double si, double standardUncertaintySi) {
        Objects.requireNonNull(kind, "kind");
        Unit<?> unit = TradeUnits.of(kind, si == 0 ? standardUncertaintySi : si);
        double value = Units.fromSi(si, unit);
        double uncertainty = Units.differenceFromSi(standardUncertaintySi, unit);
        if (uncertainty == 0 || !Double.isFinite(value) || !Double.isFinite(uncertainty)) {
            return forPeople(kind, si);
        }
        BigDecimal shownUncertainty = significant(uncertainty);
        BigDecimal shownValue = new BigDecimal(value).setScale(shownUncertainty.scale(), RoundingMode.HALF_UP);
        if (shownValue.precision() > FIGURES_FOR_PEOPLE) {
            shownValue = shownValue.round(new MathContext(FIGURES_FOR_PEOPLE));
        }
        return join(plain(shownValue), unit) + " ± " + join(plain(shownUncertainty), unit);
    }

    /**
     * Writes an interval for people, both ends in one unit.
     *
     * @param kind kind of the quantity
     * @param lowerSi lower end in SI
     * @param upperSi upper end in SI
     * @return the interval, such as {@code "93 s to 195 s"}
     */
    public static String interval(Kind<?> kind, double lowerSi, double upperSi) {
        Objects.requireNonNull(kind, "kind");
        Unit<?> unit = TradeUnits.of(kind, upperSi);
        return join(round(Units.fromSi(lowerSi, unit), FIGURES_FOR_PEOPLE), unit) + " to "
                + join(round(Units.fromSi(upperSi, unit), FIGURES_FOR_PEOPLE), unit);
    }

    /**
     * Rounds a number to significant digits, without exponent where a reader would not want one.
     *
     * @param value any number
     * @param digits significant digits, 1 to 17
     * @return the number as text, with a point for the decimal mark
     * @throws DomainException if there are fewer than 1 or more than 17 digits
     */
    public static String round(double value, int digits) {
        Require.between("significant digits", digits, 1, 17, Units.ONE, "");
        if (!Double.isFinite(value) || value == 0) {
            return plain(value);
        }
        BigDecimal rounded =
                new BigDecimal(value).round(new MathContext(digits)).stripTrailingZeros();
        return plain(rounded);
    }

    /** A value in SI in a unit, for messages: four significant figures. */
    static String brief(double si, Unit<?> unit) {
        return brief(si, unit, FIGURES_FOR_PEOPLE);
    }

    /** A value in SI in a unit with a number of significant figures. */
    static String brief(double si, Unit<?> unit, int figures) {
        return join(round(Units.fromSi(si, unit), figures), unit);
    }

    /** Significant figures for a limit: six if they state it exactly, else four, so that rounding moves no stated limit. */
    static int limitFigures(double si, Unit<?> unit) {
        double limit = Units.fromSi(si, unit);
        boolean isStated = Double.isFinite(limit)
                && Math.abs(Double.parseDouble(round(limit, FIGURES_OF_A_LIMIT)) - limit) <= 1e-12 * Math.abs(limit);
        return isStated ? FIGURES_OF_A_LIMIT : FIGURES_FOR_PEOPLE;
    }

    /** Whether a value with four significant figures lies on the same side of a printed limit as the value itself. */
    static boolean ordersAlike(double si, double limitSi, Unit<?> unit, int limitFigures) {
        double value = Units.fromSi(si, unit);
        double limit = Units.fromSi(limitSi, unit);
        if (!Double.isFinite(value) || !Double.isFinite(limit)) {
            return true;
        }
        double shownValue = Double.parseDouble(round(value, FIGURES_FOR_PEOPLE));
        double shownLimit = Double.parseDouble(round(limit, limitFigures));
        return Double.compare(shownValue, shownLimit) == Double.compare(value, limit);
    }

    /** Minimum number of significant figures, from a first, at which two different values print differently. */
    static int figuresApart(double si, double otherSi, Unit<?> unit, int first) {
        int figures = first;
        while (figures < MAX_FIGURES
                && si != otherSi
                && brief(si, unit, figures).equals(brief(otherSi, unit, figures))) {
            figures++;
        }
        return figures;
    }

    /** One significant figure, two if the first is 1; the scale is that of the last figure. */
    private static BigDecimal significant(double uncertainty) {
        BigDecimal exact = new BigDecimal(uncertainty);
        BigDecimal one = exact.round(new MathContext(1)).stripTrailingZeros();
        if (!one.unscaledValue().equals(BigInteger.ONE)) {
            return one;
        }
        BigDecimal two = exact.round(new MathContext(2));
        return two.compareTo(one) >= 0 ? two : one.setScale(one.scale() + 1);
    }

    /** Without exponent where a reader would not want one. */
    private static String plain(BigDecimal number) {
        double size = Math.abs(number.doubleValue());
        return size == 0 || (size >= 1e-4 && size < 1e9)
                ? number.toPlainString()
                : String.format(Locale.ROOT, "%." + Math.max(0, number.precision() - 1) + "e", number);
    }

    private static String plain(double value) {
        String text = Double.toString(value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    /** A blank precedes every symbol except that of degrees of arc (SI brochure). */
    private static String join(String number, Unit<?> unit) {
        String symbol = Units.symbol(unit);
        return symbol.isEmpty() || symbol.equals("°") ? number + symbol : number + " " + symbol;
    }

    /** A text as a message shows it: its first 40 letters, without control characters. */
    static String shown(String text) {
        String shown = text.length() > 40 ? text.substring(0, 40) + "..." : text;
        return shown.replaceAll("\\p{Cntrl}", "?");
    }
}
