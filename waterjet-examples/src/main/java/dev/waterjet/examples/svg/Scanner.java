package dev.waterjet.examples.svg;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;

/** Reader of the numbers and letters of an attribute, with the place of each in the file. */
final class Scanner {

    private static final int LONGEST_NUMBER = 64;

    /** In units of the drawing: a million kilometres, were they metres. */
    private static final double LARGEST_NUMBER = 1e9;

    private final String text;
    private final int end;
    private final Lines lines;
    private final int offset;
    private int at;

    /**
     * A part of a text.
     *
     * @param text text that holds the part
     * @param from where it starts
     * @param end where it ends
     * @param lines the lines of the whole file
     * @param offset where {@code text} starts in the file; below zero if its letters do not stand there one by one, and then
     *     every error has the place {@code -offset - 1}
     */
    Scanner(String text, int from, int end, Lines lines, int offset) {
        this.text = text;
        this.at = from;
        this.end = end;
        this.lines = lines;
        this.offset = offset;
    }

    boolean isAtEnd() {
        skipSpace();
        return at >= end;
    }

    /** The next letter that is no space, without taking it; 0 at the end. */
    char peek() {
        skipSpace();
        return at < end ? text.charAt(at) : 0;
    }

    char take() {
        char c = peek();
        at++;
        return c;
    }

    /** Takes a letter if it comes next. */
    boolean take(char wanted) {
        if (peek() != wanted) {
            return false;
        }
        at++;
        return true;
    }

    /** A word of letters. */
    String word() {
        skipSpace();
        int from = at;
        while (at < end && Character.isLetter(text.charAt(at))) {
            at++;
        }
        return text.substring(from, at);
    }

    boolean isNumberNext() {
        char c = peek();
        return c == '+' || c == '-' || c == '.' || isDigit(c);
    }

    /** A number, with a comma before it passed over. */
    double number() {
        take(',');
        skipSpace();
        int from = at;
        if (at < end && (text.charAt(at) == '+' || text.charAt(at) == '-')) {
            at++;
        }
        int digits = digits();
        if (at < end && text.charAt(at) == '.') {
            at++;
            digits += digits();
        }
        if (digits == 0) {
            at = from;
            throw fault(at < end ? "expected a number, not \"" + text.charAt(at) + "\"" : "a number is missing");
        }
        exponent();
        if (at - from > LONGEST_NUMBER) {
            at = from;
            throw fault("the number has more than " + LONGEST_NUMBER + " characters");
        }
        double value = Double.parseDouble(text.substring(from, at));
        if (Math.abs(value) > LARGEST_NUMBER) {
            at = from;
            throw fault("the number is too large, beyond 1e9");
        }
        return value;
    }

    /** A flag of an arc: 0 or 1, which needs no space behind it. */
    boolean flag() {
        take(',');
        char c = take();
        if (c != '0' && c != '1') {
            at--;
            throw fault("a flag of an arc is 0 or 1");
        }
        return c == '1';
    }

    private void exponent() {
        int before = at;
        if (at < end && (text.charAt(at) == 'e' || text.charAt(at) == 'E')) {
            at++;
            if (at < end && (text.charAt(at) == '+' || text.charAt(at) == '-')) {
                at++;
            }
            if (digits() == 0) {
                // "1em": the letter belongs to what follows
                at = before;
            }
        }
    }

    private int digits() {
        int from = at;
        while (at < end && isDigit(text.charAt(at))) {
            at++;
        }
        return at - from;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private void skipSpace() {
        while (at < end && isSpace(text.charAt(at))) {
            at++;
        }
    }

    private static boolean isSpace(char c) {
        return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f';
    }

    /** Where the next letter stands. */
    int place() {
        return offset < 0 ? -offset - 1 : offset + Math.min(at, end);
    }

    TextException fault(String message) {
        return lines.fault(place(), message);
    }

    TextException fault(int place, String message) {
        return lines.fault(place, message);
    }

    TextException fault(int place, Message message) {
        return lines.fault(place, message);
    }
}
