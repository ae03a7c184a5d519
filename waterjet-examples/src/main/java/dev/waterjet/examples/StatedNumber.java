package dev.waterjet.examples;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.WaterjetException;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Number above 0 as a person states it: {@code 90}, {@code 90 +/- 5} or {@code 90 +/- 5 %}, with its standard uncertainty.
 *
 * @param value the number
 * @param relativeUncertainty relative standard uncertainty; empty if none is stated
 */
record StatedNumber(double value, OptionalDouble relativeUncertainty) {

    /** A value, and after the sign its standard uncertainty. */
    static final Pattern UNCERTAIN = Pattern.compile("(.*?)\\s*(?:\u00b1|\\+/-)\\s*(.+)");

    /** Converter of an option. */
    static final class Converter extends Typed.Checked<StatedNumber> {
        @Override
        StatedNumber read(String text) {
            return parse(text);
        }
    }

    static StatedNumber parse(String text) {
        Matcher uncertain = UNCERTAIN.matcher(text.strip());
        if (!uncertain.matches()) {
            return new StatedNumber(number(text, text), OptionalDouble.empty());
        }
        double value = number(uncertain.group(1), text);
        String width = uncertain.group(2);
        boolean isPercent = width.endsWith("%");
        double stated = number(isPercent ? width.substring(0, width.length() - 1) : width, text);
        return new StatedNumber(value, OptionalDouble.of(isPercent ? stated / 100 : stated / value));
    }

    private static double number(String part, String text) {
        try {
            double value = part.contains("%") ? Double.NaN : Kind.RATIO.si(Kind.RATIO.parse(part));
            if (value > 0) {
                return value;
            }
        } catch (WaterjetException e) {
            throw notOne(text);
        }
        throw notOne(text);
    }

    private static TextException notOne(String text) {
        return new TextException("\"" + text + "\" is not a number above 0; write 90, \"90 +/- 5\" or \"90 +/- 5 %\"");
    }
}
