package dev.waterjet.measure;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import tech.units.indriya.quantity.Quantities;

/** One pass over the text of a quantity: blanks, a number or a fraction, a unit. */
final class QuantityReader {

    private static final int MAX_LENGTH = 200;

    private final Kind<?> kind;
    private final String text;
    private int at;

    private QuantityReader(Kind<?> kind, String text) {
        this.kind = kind;
        this.text = text;
    }

    static <Q extends Quantity<Q>> Quantity<Q> read(Kind<Q> kind, String text) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(text, "text");
        return new QuantityReader(kind, text).quantity(kind);
    }

    private <Q extends Quantity<Q>> Quantity<Q> quantity(Kind<Q> wanted) {
        if (text.length() > MAX_LENGTH) {
            throw refusal(
                    Message.of("text-too-long", "cannot read {text} as {kind}; it has more than {limit} characters")
                            .with("limit", MAX_LENGTH));
        }
        double value = number();
        if (!(Math.abs(value) <= QuantityText.LARGEST_NUMBER)) {
            throw refusal(Message.of(
                    "number-too-large", "cannot read {text} as {kind}; the number is too large, beyond 1e100"));
        }
        return Quantities.getQuantity(value, unit(wanted));
    }

    private <Q extends Quantity<Q>> Unit<Q> unit(Kind<Q> wanted) {
        blanks();
        int end = text.length();
        while (end > at && isBlank(text.charAt(end - 1))) {
            end--;
        }
        String symbol = text.substring(at, end);
        Unit<Q> unit = UnitSymbols.unit(wanted, symbol);
        if (unit == null) {
            throw unitRefusal(symbol);
        }
        return unit;
    }

    /** Reads a unit alone. */
    static <Q extends Quantity<Q>> Unit<Q> readUnit(Kind<Q> kind, String text) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(text, "text");
        return new QuantityReader(kind, text).unit(kind);
    }

    private TextException unitRefusal(String symbol) {
        if (symbol.startsWith(",") || symbol.startsWith("'")) {
            return refusal(Message.of(
                    "decimal-mark",
                    "cannot read {text} as {kind}; write the decimal mark as a point, and no mark between thousands"));
        }
        Message message = symbol.isEmpty()
                ? Message.of("no-unit", "{text} has no unit; use one of {units}")
                : Message.of("unknown-unit", "the unit of {text} is not one of {kind}; use one of {units}");
        return refusal(message.with("units", String.join(", ", UnitSymbols.symbols(kind))));
    }

    private TextException refusal(Message message) {
        return new TextException(message.withInput("text", text).with("kind", kind.name()));
    }

    /** A decimal number, or a fraction: {@code 1/2}, {@code 1-1/4}, {@code 1 1/4}. */
    private double number() {
        blanks();
        int start = at;
        boolean isNegative = text.startsWith("-", at);
        if (isNegative || text.startsWith("+", at)) {
            at++;
        }
        int whole = at;
        if (digits() > 0 && peek() != '.' && peek() != 'e' && peek() != 'E') {
            double value = fraction(whole);
            return isNegative ? -value : value;
        }
        int count = at - whole;
        if (peek() == '.') {
            at++;
            count += digits();
        }
        if (count == 0) {
            throw refusal(Message.of(
                            "not-a-quantity",
                            "cannot read {text} as {kind}; write a number and a unit, such as \"{example}\"")
                    .with("example", "0.25 " + UnitSymbols.symbols(kind).get(0)));
        }
        exponent();
        return Double.parseDouble(text.substring(start, at));
    }

    private void exponent() {
        int mark = at;
        if (peek() == 'e' || peek() == 'E') {
            at++;
            if (peek() == '+' || peek() == '-') {
                at++;
            }
            if (digits() == 0) {
                at = mark;
            }
        }
    }

    /** The number that begins with the digits just read: they are the numerator, or the whole part, or all of it. */
    private double fraction(int start) {
        double whole = integer(start, at);
        if (isRatio()) {
            return whole / denominator();
        }
        int mark = at;
        if (peek() == '-') {
            at++;
        } else {
            blanks();
        }
        int numerator = at;
        if (at > mark && digits() > 0 && isRatio()) {
            double parts = integer(numerator, at);
            double denominator = denominator();
            return (whole * denominator + parts) / denominator;
        }
        at = mark;
        return whole;
    }

    /** Whether a slash and a digit follow: {@code 1/4}, but not the unit {@code 1/min}. */
    private boolean isRatio() {
        return peek() == '/' && at + 1 < text.length() && isDigit(text.charAt(at + 1));
    }

    private double denominator() {
        at++;
        int start = at;
        digits();
        double denominator = integer(start, at);
        if (denominator == 0) {
            throw refusal(Message.of(
                    "zero-denominator", "cannot read {text} as {kind}; the denominator of the fraction is 0"));
        }
        return denominator;
    }

    private double integer(int start, int end) {
        return Double.parseDouble(text.substring(start, end));
    }

    private int digits() {
        int start = at;
        while (at < text.length() && isDigit(text.charAt(at))) {
            at++;
        }
        return at - start;
    }

    private void blanks() {
        while (at < text.length() && isBlank(text.charAt(at))) {
            at++;
        }
    }

    /** The next character, or a zero at the end. */
    private char peek() {
        return at < text.length() ? text.charAt(at) : 0;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    /** Blank, tab, line end, and the blanks of typesetting that do not break. */
    private static boolean isBlank(char c) {
        return c == ' ' || (c >= '\t' && c <= '\r') || c == '\u00A0' || c == '\u2009' || c == '\u202F';
    }
}
