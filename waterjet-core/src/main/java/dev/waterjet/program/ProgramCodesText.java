package dev.waterjet.program;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.WaterjetException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/** File of machine codes: lines of a key and a value. */
final class ProgramCodesText {

    private static final int MAX_CHARACTERS = 100_000;

    private static final String ON = "jet_on";
    private static final String OFF = "jet_off";
    private static final String START = "start";

    /** Reader of one value. */
    private interface Setting {
        ProgramCodes apply(ProgramCodes codes, String value);
    }

    private static final Map<String, Setting> SETTINGS = Map.of(
            "pass_through",
            (codes, value) ->
                    codes.withPassThrough(value.isEmpty() ? List.of() : Arrays.asList(value.split("[\\s,]+"))),
            "dwell",
            (codes, value) -> codes.withDwell(dwell(value)),
            "offset_feed",
            (codes, value) -> codes.withOffsetFeed(
                    either(value, OffsetFeed.EDGE.text(), OffsetFeed.AXIS.text()) ? OffsetFeed.EDGE : OffsetFeed.AXIS),
            "decimals",
            (codes, value) -> codes.withDecimals(whole(value)),
            "arcs",
            (codes, value) -> codes.withRadiusArcs(either(value, "R", "I J")),
            "line_ending",
            (codes, value) -> codes.withCarriageReturns(either(value, "CR LF", "LF")),
            "sub_programs",
            (codes, value) -> codes.withSubPrograms(either(value, "unrolled", "refused")),
            "open_contours",
            (codes, value) -> either(value, "yes", "no") ? codes.withOpenContours() : codes);

    private final List<String> start = new ArrayList<>();
    private final Set<String> seen = new HashSet<>();
    private ProgramCodes codes = ProgramCodes.defaults();
    private int on = codes.jetOn();
    private int off = codes.jetOff();
    private int jetLine;

    private ProgramCodesText() {}

    static String of(ProgramCodes codes) {
        StringBuilder text = new StringBuilder(200);
        line(text, ON, "M" + codes.jetOn());
        line(text, OFF, "M" + codes.jetOff());
        line(text, "pass_through", String.join(" ", codes.passThrough()));
        line(text, "dwell", codes.dwell().text());
        line(text, "offset_feed", codes.offsetFeed().text());
        line(text, "decimals", String.valueOf(codes.decimals()));
        line(text, "arcs", codes.hasRadiusArcs() ? "R" : "I J");
        line(text, "line_ending", codes.hasCarriageReturns() ? "CR LF" : "LF");
        line(text, "sub_programs", codes.unrollsSubPrograms() ? "unrolled" : "refused");
        line(text, "open_contours", codes.allowsOpenContours() ? "yes" : "no");
        codes.startLines().forEach(start -> line(text, START, start));
        return text.toString();
    }

    private static void line(StringBuilder text, String key, String value) {
        text.append(key).append(value.isEmpty() ? " =" : " = ").append(value).append('\n');
    }

    static ProgramCodes parse(String text) {
        if (text.length() > MAX_CHARACTERS) {
            throw new TextException(Message.of("codes-too-long", "the machine codes have more than {limit} characters")
                    .with("limit", MAX_CHARACTERS));
        }
        ProgramCodesText reader = new ProgramCodesText();
        int number = 0;
        for (String line : (Iterable<String>) text.lines()::iterator) {
            number++;
            String content = line.strip();
            if (!content.isEmpty() && !content.startsWith("#")) {
                reader.take(number, content);
            }
        }
        return at(reader.jetLine, () -> reader.codes.withJet(reader.on, reader.off));
    }

    private void take(int number, String line) {
        codes = at(number, () -> {
            String key = key(line);
            String value = line.substring(line.indexOf('=') + 1).strip();
            if (!key.equals(START) && !seen.add(key)) {
                throw new TextException(
                        Message.of("key-twice", "the key {key} occurs twice").with("key", key));
            }
            switch (key) {
                case ON -> on = jetCode(number, value);
                case OFF -> off = jetCode(number, value);
                case START -> start.add(value);
                default -> {
                    return setting(key).apply(codes, value);
                }
            }
            return codes.withStartLines(start);
        });
    }

    /** Reports what is refused at a line. */
    private static ProgramCodes at(int line, Supplier<ProgramCodes> reading) {
        try {
            return reading.get();
        } catch (WaterjetException e) {
            throw new TextException(line, 1, e.message());
        }
    }

    private static String key(String line) {
        int at = line.indexOf('=');
        if (at < 0) {
            throw new TextException(Message.of("not-a-setting", "{line} is not a key, an equals sign and a value")
                    .withInput("line", line));
        }
        return line.substring(0, at).strip().toLowerCase(Locale.ROOT);
    }

    private static Setting setting(String key) {
        Setting setting = SETTINGS.get(key);
        if (setting == null) {
            throw new TextException(Message.of("unknown-key", "unknown key {key}; use one of {known}")
                    .withInput("key", key)
                    .with("known", keys()));
        }
        return setting;
    }

    private static String keys() {
        return ON + ", " + OFF + ", " + START + ", "
                + SETTINGS.keySet().stream().sorted().collect(Collectors.joining(", "));
    }

    private int jetCode(int line, String value) {
        jetLine = line;
        return whole(value.toUpperCase(Locale.ROOT).startsWith("M") ? value.substring(1) : value);
    }

    private static int whole(String value) {
        if (!value.matches("[0-9]{1,6}")) {
            throw new TextException(Message.of("not-a-whole-number", "{value} is not a whole number")
                    .withInput("value", value));
        }
        return Integer.parseInt(value);
    }

    private static DwellForm dwell(String value) {
        for (DwellForm form : DwellForm.values()) {
            if (same(form.text(), value)) {
                return form;
            }
        }
        throw unknownValue(
                value, Arrays.stream(DwellForm.values()).map(DwellForm::text).collect(Collectors.joining(", ")));
    }

    private static boolean either(String value, String yes, String no) {
        if (!same(value, yes) && !same(value, no)) {
            throw unknownValue(value, yes + ", " + no);
        }
        return same(value, yes);
    }

    /** Whether two texts are the same but for blanks and capitals. */
    private static boolean same(String a, String b) {
        return a.replaceAll("\\s+", "").equalsIgnoreCase(b.replaceAll("\\s+", ""));
    }

    private static TextException unknownValue(String value, String known) {
        return new TextException(Message.of("unknown-value", "unknown value {value}; use one of {known}")
                .withInput("value", value)
                .with("known", known));
    }
}
