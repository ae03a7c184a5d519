package dev.waterjet.measure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import javax.measure.Unit;
import tech.units.indriya.quantity.Quantities;

/**
 * Quantities as text: a number with a decimal point, a blank, a unit of {@link Units}. The default locale has no say.
 *
 * <p>What {@link #print(Quantity)} writes, {@link #parse(Kind, String)} reads back to the same number in the same unit, within
 * the limits.
 *
 * <p>Limits of what is read: 200 characters; numbers from -1e100 to 1e100.
 */
public final class QuantityText {

    private static final int LONGEST_TEXT = 200;

    /** Greater numbers are refused: no conversion of one leaves the range of a double, nor does its cube. */
    static final double LARGEST_NUMBER = 1e100;

    private QuantityText() {}

    /** Compiled when the first text is read: a program that only prints has no need of it. */
    private static final class Form {
        static final Pattern NUMBER_AND_UNIT =
                Pattern.compile("\\s*([+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?)\\s*(.*?)\\s*", Pattern.DOTALL);
    }

    /**
     * Reads a quantity such as {@code "380 MPa"}, {@code "55ksi"} or {@code ".010 in"}.
     *
     * @param kind kind of quantity wanted
     * @param text number and unit; a ratio needs no unit
     * @param <Q> the JSR-385 quantity type
     * @return the quantity, in the unit written
     * @throws TextException if the text is not a number with a unit of this kind, is longer than 200 characters, or its
     *     number is larger than 1e100
     */
    public static <Q extends Quantity<Q>> Quantity<Q> parse(Kind<Q> kind, String text) {
        if (text.length() > LONGEST_TEXT) {
            throw new TextException(
                    quoted(text) + " is not a " + kind.name() + ": it has more than " + LONGEST_TEXT + " characters");
        }
        Matcher matcher = Form.NUMBER_AND_UNIT.matcher(text);
        if (!matcher.matches()) {
            throw new TextException(quoted(text) + " is not a " + kind.name()
                    + ": write a number and a unit, such as \"" + example(kind) + "\"");
        }
        String unitText = matcher.group(2);
        if (unitText.startsWith(",") || unitText.startsWith("'")) {
            throw new TextException(quoted(text) + " is not a " + kind.name()
                    + ": write the decimal mark as a point, and no mark between thousands");
        }
        double value = Double.parseDouble(matcher.group(1));
        if (!(Math.abs(value) <= LARGEST_NUMBER)) {
            throw new TextException(
                    quoted(text) + " is not a " + kind.name() + ": the number is too large, beyond 1e100");
        }
        return Quantities.getQuantity(value, unit(kind, text, unitText));
    }

    private static <Q extends Quantity<Q>> Unit<Q> unit(Kind<Q> kind, String text, String unitText) {
        Unit<Q> unit = UnitTable.unit(kind, unitText);
        if (unit != null) {
            return unit;
        }
        String fault = unitText.isEmpty() ? " has no unit" : " has a unit that is not one of " + kind.name();
        throw new TextException(quoted(text) + fault + ": use one of " + String.join(", ", UnitTable.symbols(kind)));
    }

    /**
     * Reads a unit such as {@code "mm/min"}.
     *
     * @param kind kind of quantity that the unit must measure
     * @param text symbol of the unit, as {@link Units#symbol(Unit)} gives it, or another usual spelling
     * @param <Q> the JSR-385 quantity type
     * @return the unit
     * @throws TextException if no unit of this kind is written so
     */
    public static <Q extends Quantity<Q>> Unit<Q> parseUnit(Kind<Q> kind, String text) {
        return unit(kind, text, text.strip());
    }

    /**
     * Writes a quantity in full precision, so that it can be read back.
     *
     * @param quantity the quantity
     * @return number and symbol of its unit
     */
    public static String print(Quantity<?> quantity) {
        return join(plain(quantity.getValue().doubleValue()), quantity.getUnit());
    }

    /**
     * Writes a quantity for a reader, rounded.
     *
     * @param kind kind of the quantity
     * @param quantity the quantity
     * @param unit unit to tell it in
     * @param digits significant digits, 1 to 17
     * @param <Q> the JSR-385 quantity type
     * @return number and symbol of the unit
     */
    public static <Q extends Quantity<Q>> String print(Kind<Q> kind, Quantity<Q> quantity, Unit<Q> unit, int digits) {
        return join(round(Scale.of(kind, unit).fromSi(kind.si(quantity)), digits), unit);
    }

    /**
     * A number rounded to significant digits, without exponent where a reader would not want one.
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
        double size = Math.abs(value);
        return size >= 1e-4 && size < 1e9
                ? rounded.toPlainString()
                : String.format(Locale.ROOT, "%." + Math.max(0, rounded.precision() - 1) + "e", rounded);
    }

    /** A value in SI told in a unit with few digits, for messages; in full where few would not tell it from another text. */
    static String brief(double si, Unit<?> unit, String other) {
        double value = Units.fromSi(si, unit);
        String text = join(round(value, 6), unit);
        return text.equals(other) ? join(full(value), unit) : text;
    }

    private static String full(double value) {
        double size = Math.abs(value);
        return size >= 1e-4 && size < 1e12 ? new BigDecimal(plain(value)).toPlainString() : plain(value);
    }

    private static String plain(double value) {
        String text = Double.toString(value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    private static String join(String number, Unit<?> unit) {
        String symbol = Units.symbol(unit);
        return symbol.isEmpty() ? number : number + " " + symbol;
    }

    private static String quoted(String text) {
        return "\"" + shown(text) + "\"";
    }

    /** A text as a message shows it: its first 40 letters, without control characters. */
    static String shown(String text) {
        String shown = text.length() > 40 ? text.substring(0, 40) + "..." : text;
        return shown.replaceAll("\\p{Cntrl}", "?");
    }

    private static String example(Kind<?> kind) {
        return "0.25 " + UnitTable.symbols(kind).get(0);
    }
}
