package dev.waterjet.reference;

import dev.waterjet.measure.Kind;
import java.util.LinkedHashMap;
import java.util.Map;
import javax.measure.Quantity;

/** Inputs of one row, by name. */
public final class Inputs {

    private final Map<String, String> values = new LinkedHashMap<>();

    private Inputs() {}

    static Inputs parse(String text) {
        Inputs inputs = new Inputs();
        for (String pair : text.split(";", -1)) {
            if (pair.isBlank()) {
                continue;
            }
            int equals = pair.indexOf('=');
            if (equals < 0) {
                throw new IllegalArgumentException("no '=' in input \"" + pair + "\"");
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

    /** An input as a quantity. */
    public <Q extends Quantity<Q>> Quantity<Q> get(String name, Kind<Q> kind) {
        return kind.parse(text(name));
    }

    /** An input as a double in SI. */
    public double si(String name, Kind<?> kind) {
        return siOf(kind, text(name));
    }

    /** An input as a plain number. */
    public double number(String name) {
        return Double.parseDouble(text(name));
    }

    static <Q extends Quantity<Q>> double siOf(Kind<Q> kind, String text) {
        return kind.si(kind.parse(text));
    }
}
