package dev.waterjet.docs.explorer;

import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Writes the answers to the page, as text of JSON. */
final class Json {

    private final StringBuilder text = new StringBuilder("{");

    Json put(String name, double value) {
        return raw(name, number(value));
    }

    Json put(String name, String value) {
        return raw(name, quoted(value));
    }

    Json put(String name, List<?> values) {
        StringBuilder list = new StringBuilder();
        for (Object value : values) {
            list.append(list.length() == 0 ? "" : ",").append(quoted(String.valueOf(value)));
        }
        return raw(name, "[" + list + "]");
    }

    /** Values of a function at evenly spaced places. */
    Json put(String name, double from, double to, int steps, DoubleUnaryOperator function) {
        StringBuilder list = new StringBuilder();
        for (int i = 0; i <= steps; i++) {
            double at = from + (to - from) * i / steps;
            list.append(i == 0 ? "[" : ",[").append(number(at)).append(',');
            list.append(number(function.applyAsDouble(at))).append(']');
        }
        return raw(name, "[" + list + "]");
    }

    private Json raw(String name, String value) {
        text.append(text.length() > 1 ? "," : "")
                .append(quoted(name))
                .append(':')
                .append(value);
        return this;
    }

    private static String number(double value) {
        return Double.isFinite(value) ? Double.toString(value) : "null";
    }

    private static String quoted(String value) {
        StringBuilder quoted = new StringBuilder("\"");
        for (int i = 0; i < value.length(); i++) {
            char c = value.charAt(i);
            if (c == '"' || c == '\\') {
                quoted.append('\\').append(c);
            } else {
                quoted.append(c < ' ' ? ' ' : c);
            }
        }
        return quoted.append('"').toString();
    }

    @Override
    public String toString() {
        return text + "}";
    }
}
