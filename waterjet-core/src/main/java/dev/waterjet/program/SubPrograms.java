package dev.waterjet.program;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Replaces calls of sub-programs by what they call: {@code M98 P1000 L3} by three times the lines from {@code O1000} to
 * {@code M99}. A program without calls stays as it is.
 */
final class SubPrograms {

    private static final int MAX_DEPTH = 8;
    private static final int MAX_COUNT = 9999;

    private static final Pattern CALL = Pattern.compile("[Mm] *0*98(?![0-9.])");
    private static final Pattern TOKEN =
            Pattern.compile("\\([^)\\r\\n]*\\)|;[^\\r\\n]*|([A-Za-z]) *([-+]?[0-9]*\\.?[0-9]+)");

    /** A program without calls. */
    static final class Unrolled {

        private final String text;

        /** Line of the written program for each line; null where they are the same. */
        private final int @Nullable [] lines;

        Unrolled(String text, int @Nullable [] lines) {
            this.text = text;
            this.lines = lines;
        }

        String text() {
            return text;
        }

        /** Line of the written program, both from 1. */
        int lineOf(int line) {
            return lines == null ? line : lines[line - 1];
        }
    }

    /** Words of a line that matter here; each below zero if it is missing. */
    private record Line(int number, String text, int name, boolean isEnd, boolean isReturn, int called, int count) {}

    private final List<Line> lines = new ArrayList<>();
    private final Map<Integer, int[]> bodies = new HashMap<>();
    private final boolean[] isInBody;
    private final StringBuilder out = new StringBuilder();
    private int[] lineOf = new int[64];
    private int count;

    private SubPrograms(String text) {
        Matcher ends = Pattern.compile("[^\\r\\n]*(\\r\\n|\\n|\\r|$)").matcher(text);
        int at = 0;
        while (at < text.length() && ends.find(at)) {
            lines.add(line(lines.size() + 1, ends.group()));
            at = ends.end();
        }
        isInBody = new boolean[lines.size()];
        findBodies();
    }

    static Unrolled unroll(String text, ProgramCodes codes) {
        boolean isOtherCode = codes.jetOn() == 98
                || codes.jetOff() == 98
                || codes.passesThrough('M', 98)
                || !codes.unrollsSubPrograms();
        return isOtherCode || !text.contains("98") || !CALL.matcher(text).find()
                ? new Unrolled(text, null)
                : new SubPrograms(text).unrolled();
    }

    private static Line line(int number, String text) {
        int name = -1;
        int count = 1;
        double p = -1;
        boolean isEnd = false;
        boolean isReturn = false;
        boolean isCall = false;
        Matcher token = TOKEN.matcher(text);
        while (token.find()) {
            if (token.group(1) == null) {
                continue;
            }
            double value = Double.parseDouble(token.group(2));
            switch (Character.toUpperCase(token.group(1).charAt(0))) {
                case 'O' -> name = (int) value;
                case 'P' -> p = value;
                case 'L' -> count = (int) Math.min(MAX_COUNT + 1.0, value);
                case 'M' -> {
                    isCall |= value == 98;
                    isReturn |= value == 99;
                    isEnd |= value == 2 || value == 30;
                }
                default -> {}
            }
        }
        int called = isCall ? called(number, p, count) : -1;
        return new Line(number, text, name, isEnd, isReturn, called, count);
    }

    private static int called(int line, double number, int count) {
        int called = (int) number;
        if (number < 0 || number != called || count < 0 || count > MAX_COUNT) {
            throw new TextException(
                    line,
                    1,
                    Message.of(
                                    "call-not-understood",
                                    "M98 needs the number of a sub-program after P, and a count from 0 to {limit}"
                                            + " after L")
                            .with("limit", MAX_COUNT));
        }
        return called;
    }

    /** A sub-program begins at its number and ends at M99, before any other number. */
    private void findBodies() {
        int from = -1;
        for (int i = 0; i < lines.size(); i++) {
            Line line = lines.get(i);
            from = line.name() >= 0 ? i : from;
            if (line.isReturn()) {
                if (from < 0) {
                    throw new TextException(
                            line.number(), 1, Message.of("return-without-sub-program", "M99 ends no sub-program here"));
                }
                bodies.put(lines.get(from).name(), new int[] {from, i});
                Arrays.fill(isInBody, from, i + 1, true);
                from = -1;
            }
        }
    }

    private Unrolled unrolled() {
        for (int i = 0; i < lines.size(); i++) {
            if (!isInBody[i]) {
                write(lines.get(i), 0);
            }
        }
        return new Unrolled(out.toString(), Arrays.copyOf(lineOf, count));
    }

    private void write(Line line, int depth) {
        if (line.called() < 0) {
            append(line.isReturn() ? without(line.text(), "M") : line.text(), line.number());
            return;
        }
        int[] body = bodies.get(line.called());
        if (body == null) {
            throw new TextException(
                    line.number(),
                    1,
                    Message.of("no-such-sub-program", "there is no sub-program O{number} that ends by M99")
                            .with("number", line.called()));
        }
        if (depth == MAX_DEPTH) {
            throw new TextException(
                    line.number(),
                    1,
                    Message.of("sub-programs-too-deep", "sub-programs call each other more than {limit} deep")
                            .with("limit", MAX_DEPTH));
        }
        append(without(line.text(), "MPL"), line.number());
        for (int i = 1; i <= line.count(); i++) {
            for (int k = body[0] + 1; k <= body[1]; k++) {
                write(lines.get(k), depth + 1);
            }
        }
    }

    /** A line without its call or return: M98 or M99, and the words of some letters beside it. */
    private static String without(String text, String letters) {
        StringBuilder left = new StringBuilder();
        Matcher token = TOKEN.matcher(text);
        boolean hasOther = false;
        while (token.find()) {
            String letter = token.group(1) == null ? "" : token.group(1).toUpperCase(Locale.ROOT);
            boolean isDropped = !letter.isEmpty() && letters.contains(letter) && isOwn(letter, token.group(2));
            hasOther |= !letter.isEmpty() && !isDropped && !letter.equals("N");
            token.appendReplacement(left, isDropped ? "" : Matcher.quoteReplacement(token.group()));
        }
        token.appendTail(left);
        String kept = left.toString();
        return hasOther || kept.indexOf('(') >= 0 || kept.indexOf(';') >= 0 ? kept : "";
    }

    private static boolean isOwn(String letter, String number) {
        double value = Double.parseDouble(number);
        return !letter.equals("M") || value == 98 || value == 99;
    }

    private void append(String text, int line) {
        if (text.isEmpty()) {
            return;
        }
        if (out.length() + text.length() > ProgramReader.MAX_CHARACTERS) {
            throw new TextException(
                    line,
                    1,
                    Message.of("text-too-long", "the program has more than {limit} characters")
                            .with("limit", ProgramReader.MAX_CHARACTERS));
        }
        if (out.length() > 0 && out.charAt(out.length() - 1) != '\n' && out.charAt(out.length() - 1) != '\r') {
            // the last line of a sub-program at the end of the file
            out.append('\n');
        }
        out.append(text);
        if (count == lineOf.length) {
            lineOf = Arrays.copyOf(lineOf, count * 2);
        }
        lineOf[count++] = line;
    }
}
