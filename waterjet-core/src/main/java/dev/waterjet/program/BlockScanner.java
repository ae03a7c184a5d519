package dev.waterjet.program;

import dev.waterjet.measure.TextException;

/** Parts one line of a program into words and comments. One instance is used for all lines. */
final class BlockScanner {

    private static final int MOST_WORDS = 64;

    private final String text;
    private int line;
    private int lineStart;

    private int words;
    private final char[] letter = new char[MOST_WORDS];
    private final double[] value = new double[MOST_WORDS];
    private final int[] from = new int[MOST_WORDS];
    private final int[] to = new int[MOST_WORDS];

    private int comments;
    private final int[] commentFrom = new int[MOST_WORDS];
    private final int[] commentTo = new int[MOST_WORDS];

    BlockScanner(String text) {
        this.text = text;
    }

    /** Reads the line from one offset to another, which excludes its line end. */
    void read(int lineNumber, int start, int end) {
        line = lineNumber;
        lineStart = start;
        words = 0;
        comments = 0;
        int at = start;
        while (at < end) {
            char c = text.charAt(at);
            if (c == ' ' || c == '\t' || (c == '/' && words == 0)) {
                at++;
            } else if (c == '(') {
                at = comment(at, end);
            } else if (c == ';') {
                addComment(at + 1, end);
                at = end;
            } else if (c == '%' && words == 0) {
                // start or end of the program; what follows on the line is a name
                at = end;
            } else if (c == ':' && words == 0) {
                at = number('O', at, end);
            } else if (isLetter(c)) {
                at = number(Character.toUpperCase(c), at, end);
            } else {
                throw fault(at, "\"" + shown(c) + "\" starts no word: a word is a letter and a number");
            }
        }
    }

    private int comment(int at, int end) {
        int close = text.indexOf(')', at);
        if (close < 0 || close >= end) {
            throw fault(at, "the comment never ends: \")\" is missing on this line");
        }
        addComment(at + 1, close);
        return close + 1;
    }

    private void addComment(int start, int end) {
        if (comments == MOST_WORDS) {
            throw fault(start, "more than " + MOST_WORDS + " comments on one line");
        }
        commentFrom[comments] = start;
        commentTo[comments] = end;
        comments++;
    }

    private int number(char name, int start, int end) {
        if (words == MOST_WORDS) {
            throw fault(start, "more than " + MOST_WORDS + " words on one line");
        }
        int at = start + 1;
        while (at < end && text.charAt(at) == ' ') {
            at++;
        }
        int first = at;
        if (at < end && (text.charAt(at) == '-' || text.charAt(at) == '+')) {
            at++;
        }
        int digits = 0;
        boolean hasPoint = false;
        while (at < end && (isDigit(text.charAt(at)) || (text.charAt(at) == '.' && !hasPoint))) {
            if (text.charAt(at) == '.') {
                hasPoint = true;
            } else {
                digits++;
            }
            at++;
        }
        if (digits == 0) {
            throw fault(start, "the word " + name + " has no number");
        }
        letter[words] = name;
        value[words] = Double.parseDouble(text.substring(first, at));
        from[words] = start;
        to[words] = at;
        words++;
        return at;
    }

    int words() {
        return words;
    }

    char letter(int word) {
        return letter[word];
    }

    double value(int word) {
        return value[word];
    }

    int from(int word) {
        return from[word];
    }

    int to(int word) {
        return to[word];
    }

    String written(int word) {
        return text.substring(from[word], to[word]);
    }

    int comments() {
        return comments;
    }

    String comment(int comment) {
        return text.substring(commentFrom[comment], commentTo[comment]).strip();
    }

    int commentFrom(int comment) {
        return commentFrom[comment];
    }

    TextException fault(int offset, String message) {
        return new TextException(line, offset - lineStart + 1, message);
    }

    TextException faultAtWord(int word, String message) {
        return fault(word < words ? from[word] : lineStart, message);
    }

    private static boolean isLetter(char c) {
        return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private static String shown(char c) {
        return c < ' ' || c == 0x7f ? "?" : String.valueOf(c);
    }
}
