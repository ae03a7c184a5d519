package dev.waterjet.program;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import java.util.Locale;

/** Words of one line: letter, number and offsets in the text. One object is used for all lines. */
final class BlockWords {

    private static final int MAX_WORDS = 40;
    private static final int MAX_NUMBER_LENGTH = 24;

    private final String text;
    final char[] letter = new char[MAX_WORDS];
    final double[] number = new double[MAX_WORDS];
    final int[] from = new int[MAX_WORDS];
    final int[] to = new int[MAX_WORDS];
    int count;
    int line;
    int lineStart;
    int lineEnd;
    private String comment = "";
    private int commentFrom;
    private String unread = "";

    BlockWords(String text) {
        this.text = text;
    }

    /** Reads the line between two offsets of the text. */
    void read(int lineNumber, int start, int end) {
        line = lineNumber;
        lineStart = start;
        lineEnd = end;
        count = 0;
        comment = "";
        unread = "";
        int at = start;
        boolean isFirst = true;
        while (at < end) {
            char c = text.charAt(at);
            if (c == ' ' || c == '\t') {
                at++;
            } else if (c == '(') {
                int close = text.indexOf(')', at);
                if (close < 0 || close >= end) {
                    throw refusalAt(at, Message.of("open-comment", "the comment is not closed"));
                }
                remark(at + 1, close);
                at = close + 1;
            } else if (c == ';') {
                remark(at + 1, end);
                at = end;
            } else {
                // a colon stands for N at a block to which the machine can be aligned
                at = word(isFirst && c == ':' ? 'N' : Character.toUpperCase(c), at, end);
                isFirst = false;
            }
        }
    }

    private void remark(int start, int end) {
        String text = text(start, end);
        if (!CutNotes.isAddressed(text)) {
            return;
        }
        if (!CutNotes.isNote(text)) {
            unread = text.strip();
            return;
        }
        if (!comment.isEmpty()) {
            throw refusalAt(start, Message.of("second-note", "a line holds at most one note for a cut"));
        }
        comment = text;
        commentFrom = start;
    }

    private String text(int start, int end) {
        return text.substring(start, end);
    }

    private int word(char c, int start, int end) {
        if (c == '/') {
            throw refusalAt(
                    start,
                    Message.of(
                            "optional-block",
                            "an optional block makes the path ambiguous; write one program for each case"));
        }
        if (c < 'A' || c > 'Z') {
            throw refusalAt(
                    start,
                    Message.of("not-a-word", "'{character}' begins no word; a word is a letter and a number")
                            .with("character", shown(c)));
        }
        int numberStart = start + 1;
        while (numberStart < end && text.charAt(numberStart) == ' ') {
            numberStart++;
        }
        int at = numberEnd(c, start, numberStart, end);
        if (at < end && text.charAt(at) == ',') {
            throw refusalAt(at, Message.of("decimal-comma", "a decimal mark is a point, not a comma"));
        }
        if (count == MAX_WORDS) {
            throw refusalAt(
                    start,
                    Message.of("too-many-words", "a line has at most {limit} words")
                            .with("limit", MAX_WORDS));
        }
        letter[count] = c;
        number[count] = ProgramNumbers.value(text, numberStart, at);
        from[count] = start;
        to[count] = at;
        count++;
        return at;
    }

    private int numberEnd(char letterOfWord, int start, int numberStart, int end) {
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
            throw refusalAt(
                    start,
                    Message.of("word-without-number", "the word {letter} has no number")
                            .with("letter", String.valueOf(letterOfWord)));
        }
        if (at - numberStart > MAX_NUMBER_LENGTH) {
            throw refusalAt(
                    start,
                    Message.of("number-too-long", "the number of the word {letter} has more than {limit} characters")
                            .with("letter", String.valueOf(letterOfWord))
                            .with("limit", MAX_NUMBER_LENGTH));
        }
        return at;
    }

    private static String shown(char c) {
        return c < ' ' || c > '~' ? String.format(Locale.ROOT, "\\u%04x", (int) c) : String.valueOf(c);
    }

    /** The note of this line for a cut; empty if there is none. */
    String comment() {
        return comment;
    }

    /** A comment that begins like a note and is none; empty if there is none. */
    String unreadComment() {
        return unread;
    }

    int commentFrom() {
        return commentFrom;
    }

    /** The word as it is written. */
    String written(int word) {
        return text.substring(from[word], to[word]).replace(" ", "");
    }

    /** The first word with a letter, or -1. */
    int find(char requested) {
        for (int i = 0; i < count; i++) {
            if (letter[i] == requested) {
                return i;
            }
        }
        return -1;
    }

    int column(int word) {
        return columnAt(from[word]);
    }

    int columnAt(int at) {
        return at - lineStart + 1;
    }

    /** A refusal at an offset of the text. */
    TextException refusalAt(int at, Message message) {
        return new TextException(line, columnAt(at), message);
    }

    /** A refusal at a word, which the message can show as {@code {word}}. */
    TextException refusal(int word, Message message) {
        return refusalAt(from[word], message.with("word", written(word)));
    }
}
