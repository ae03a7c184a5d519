package dev.waterjet.program;

import dev.waterjet.measure.TextException;
import java.util.Locale;

/** The words of one line: letter, number, and where each stands in the text. Used again for every line. */
final class BlockWords {

    private static final int MOST_WORDS = 40;
    private static final int LONGEST_NUMBER = 24;

    private final String text;
    final char[] letter = new char[MOST_WORDS];
    final double[] number = new double[MOST_WORDS];
    final int[] from = new int[MOST_WORDS];
    final int[] to = new int[MOST_WORDS];
    int count;
    int line;
    private int lineStart;
    private String comment = "";
    private int commentFrom;

    BlockWords(String text) {
        this.text = text;
    }

    /** Reads the line between two offsets of the text. */
    void read(int lineNumber, int start, int end) {
        line = lineNumber;
        lineStart = start;
        count = 0;
        comment = "";
        int at = start;
        while (at < end) {
            char c = text.charAt(at);
            if (c == ' ' || c == '\t') {
                at++;
            } else if (c == '(') {
                int close = text.indexOf(')', at);
                if (close < 0 || close >= end) {
                    throw fault(at, "the comment is not closed");
                }
                remark(at + 1, close);
                at = close + 1;
            } else if (c == ';') {
                remark(at + 1, end);
                at = end;
            } else {
                at = word(at, end);
            }
        }
    }

    private void remark(int start, int end) {
        if (text.substring(start, end).strip().startsWith(CutNotes.PREFIX)) {
            if (!comment.isEmpty()) {
                throw fault(start, "a line has room for one such comment");
            }
            comment = text.substring(start, end);
            commentFrom = start;
        }
    }

    private int word(int start, int end) {
        char c = Character.toUpperCase(text.charAt(start));
        if (c == '/') {
            throw fault(start, "a block that the operator may skip leaves the path open to doubt; write two programs");
        }
        if (c < 'A' || c > 'Z') {
            throw fault(start, "'" + shown(c) + "' begins no word; a word is a letter and a number");
        }
        int numberStart = start + 1;
        while (numberStart < end && text.charAt(numberStart) == ' ') {
            numberStart++;
        }
        int at = numberStart;
        boolean hasDigit = false;
        boolean hasPoint = false;
        while (at < end) {
            char d = text.charAt(at);
            if (d >= '0' && d <= '9') {
                hasDigit = true;
            } else if (d == '.' && !hasPoint) {
                hasPoint = true;
            } else if (!((d == '-' || d == '+') && at == numberStart)) {
                break;
            }
            at++;
        }
        if (!hasDigit) {
            throw fault(start, "the word " + c + " has no number");
        }
        if (at - numberStart > LONGEST_NUMBER) {
            throw fault(start, "the number of the word " + c + " has more than " + LONGEST_NUMBER + " characters");
        }
        if (at < end && text.charAt(at) == ',') {
            throw fault(at, "a comma; write the decimal mark as a point");
        }
        if (count == MOST_WORDS) {
            throw fault(start, "a line has at most " + MOST_WORDS + " words");
        }
        letter[count] = c;
        number[count] = Double.parseDouble(text.substring(numberStart, at));
        from[count] = start;
        to[count] = at;
        count++;
        return at;
    }

    private static String shown(char c) {
        return c < ' ' || c > '~' ? String.format(Locale.ROOT, "\\u%04x", (int) c) : String.valueOf(c);
    }

    /** The comment of this line that speaks to this library; empty if there is none. */
    String comment() {
        return comment;
    }

    int commentFrom() {
        return commentFrom;
    }

    /** The word as it is written. */
    String written(int word) {
        return text.substring(from[word], to[word]).replace(" ", "");
    }

    /** The first word with a letter, or -1. */
    int find(char wanted) {
        for (int i = 0; i < count; i++) {
            if (letter[i] == wanted) {
                return i;
            }
        }
        return -1;
    }

    int column(int word) {
        return from[word] - lineStart + 1;
    }

    TextException fault(int at, String message) {
        return new TextException(line, at - lineStart + 1, message);
    }

    TextException faultAtWord(int word, String message) {
        return fault(from[word], message);
    }
}
