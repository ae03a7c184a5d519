package dev.waterjet.examples.dxf;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;

/**
 * Group code with its value.
 *
 * @param code group code
 * @param value value as the file writes it, without spaces around it
 * @param line line of the value, from 1
 */
record Group(int code, String value, int line) {

    private static final int LONGEST_NUMBER = 64;

    /** Coordinates beyond this are a damaged file, in units of the drawing. */
    private static final double LARGEST_NUMBER = 1e12;

    double number() {
        double number;
        try {
            number = value.length() > LONGEST_NUMBER ? Double.NaN : Double.parseDouble(value);
        } catch (NumberFormatException e) {
            number = Double.NaN;
        }
        if (!(Math.abs(number) <= LARGEST_NUMBER) || value.endsWith("f") || value.endsWith("d")) {
            throw fault(Message.of("dxf-number", "{value} of group {code} is not a number up to 1e12")
                    .withInput("value", value)
                    .with("code", code));
        }
        return number;
    }

    int whole() {
        double number = number();
        if (number != Math.rint(number) || Math.abs(number) > Integer.MAX_VALUE) {
            throw fault(Message.of("dxf-number", "{value} of group {code} is not a whole number")
                    .withInput("value", value)
                    .with("code", code));
        }
        return (int) number;
    }

    TextException fault(Message message) {
        return new TextException(line, 1, message);
    }
}
