package dev.waterjet.reference;

import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Quantity;

/** Inputs of one row, by name. */
public final class Inputs {

    private final Map<String, String> values = new LinkedHashMap<>();

    /** Inputs in words, such as "opening falls linearly in 20 ms". */
    private final List<String> remarks = new ArrayList<>();

    private Inputs() {}

    static Inputs parse(String text) {
        Inputs inputs = new Inputs();
        for (String pair : text.split(";", -1)) {
            if (pair.isBlank()) {
                continue;
            }
            int equals = pair.indexOf('=');
            if (equals < 0) {
                inputs.remarks.add(pair.strip());
                continue;
            }
            inputs.values.put(
                    pair.substring(0, equals).strip(),
                    pair.substring(equals + 1).strip());
        }
        return inputs;
    }

    /** Whether the row gives an input. */
    public boolean has(String name) {
        return values.containsKey(name);
    }

    /** An input as written. */
    public String text(String name) {
        String value = values.get(name);
        if (value == null) {
            throw new IllegalArgumentException("the row gives no " + name + "; it has " + values.keySet());
        }
        return value;
    }

    /** Groups of the first input in words that contains a pattern. */
    public Optional<Matcher> remark(String pattern) {
        return remarks.stream()
                .map(Pattern.compile(pattern)::matcher)
                .filter(Matcher::find)
                .findFirst();
    }

    /** An input as a quantity. */
    public <Q extends Quantity<Q>> Quantity<Q> get(String name, Kind<Q> kind) {
        return kind.parse(plain(text(name)));
    }

    /** An input as a double in SI. */
    public double si(String name, Kind<?> kind) {
        return siOf(kind, plain(text(name)));
    }

    /** An input as a plain number. */
    public double number(String name) {
        return Double.parseDouble(text(name));
    }

    /** Numbers parted by blanks. */
    public static double[] numbers(String text) {
        return Arrays.stream(text.strip().split("\\s+", -1))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    /** A value without words behind a comma: "0.95 mm, growing evenly along the tube". */
    private static String plain(String text) {
        return text.replaceFirst(",\\s+[A-Za-z].*", "");
    }

    static <Q extends Quantity<Q>> double siOf(Kind<Q> kind, String text) {
        return kind.si(kind.parse(text));
    }
}
