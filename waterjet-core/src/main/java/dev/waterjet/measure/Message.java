package dev.waterjet.measure;

import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Unit;

/**
 * Message of a refusal, a caution or a finding: a stable code, named parameters, and a sentence for people.
 *
 * <p>A program uses {@link #code()} and {@link #parameters()}; a person reads {@link #text()}. The sentence is a pattern in
 * which {@code {name}} stands for a parameter. Code and pattern are literals beside the code that raises the message.
 *
 * <pre>{@code
 * Message.of("slot-too-narrow", "the slot is {width} wide; the jet leaves {kerf}")
 *         .with("width", Kind.LENGTH, widthM, Units.MILLIMETRE)
 *         .with("kerf", Kind.LENGTH, kerfM, Units.MILLIMETRE);
 * }</pre>
 */
public final class Message implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final int FIGURES = 4;

    /**
     * One parameter: its name in the pattern, its key and value for programs, its text for people, and the symbol of the unit
     * in that text, empty where it has none that could be replaced.
     */
    private record Parameter(String name, String key, Object value, String shown, String unit) implements Serializable {

        Parameter {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(key, "key");
            Objects.requireNonNull(shown, "shown");
            Objects.requireNonNull(unit, "unit");
            if (value instanceof Double number) {
                value = Require.finite(name, number, Units.ONE);
            } else if (!(value instanceof Long)) {
                value = Objects.requireNonNull(value, "value").toString();
            }
        }

        /** A number that is not finite, as a refusal may report it, is a text for programs too. */
        static Parameter of(String name, String key, double number, String shown, String unit) {
            Object value = Double.isFinite(number) ? (Object) number : Double.toString(number);
            return new Parameter(name, key, value, shown, unit);
        }

        /** A parameter without a unit. */
        static Parameter of(String name, Object value, String shown) {
            return new Parameter(name, name, value, shown, "");
        }

        /** Its text for people, with another unit where that of the text is to be replaced. */
        String shown(Map<? extends Unit<?>, ? extends Unit<?>> replaced) {
            if (value instanceof Double si && !unit.isEmpty()) {
                for (Map.Entry<? extends Unit<?>, ? extends Unit<?>> entry : replaced.entrySet()) {
                    if (Units.symbol(entry.getKey()).equals(unit)) {
                        return QuantityText.brief(si, entry.getValue());
                    }
                }
            }
            return shown;
        }
    }

    /** Checked content, and the serial form. */
    private record Values(String code, String pattern, List<Parameter> parameters) implements Serializable {

        Values {
            Objects.requireNonNull(code, "code");
            Objects.requireNonNull(pattern, "pattern");
            parameters = List.copyOf(parameters);
        }

        private Object readResolve() {
            return new Message(this);
        }
    }

    private final transient Values values;

    private Message(Values values) {
        this.values = values;
    }

    /**
     * Returns a message without parameters.
     *
     * @param code stable name, in lower case with hyphens
     * @param pattern sentence for people, in lower case without full stop; {@code {name}} stands for a parameter
     * @return the message
     */
    public static Message of(String code, String pattern) {
        return new Message(new Values(code, pattern, List.of()));
    }

    /**
     * Returns this message with a quantity.
     *
     * @param name name of the parameter, in lower case with underscores; its key ends in the SI unit
     * @param kind kind of the quantity
     * @param si value in SI
     * @param unit unit for people
     * @return the message
     */
    public Message with(String name, Kind<?> kind, double si, Unit<?> unit) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(unit, "unit");
        return withNumber(name, kind.column(name), si, unit);
    }

    /**
     * Returns this message with a plain number.
     *
     * @param name name of the parameter, in lower case with underscores
     * @param number the number
     * @return the message
     */
    public Message with(String name, double number) {
        return withNumber(name, name, number, Units.ONE);
    }

    /**
     * Returns this message with a count.
     *
     * @param name name of the parameter, in lower case with underscores
     * @param count the count
     * @return the message
     */
    public Message with(String name, long count) {
        return with(Parameter.of(name, count, Long.toString(count)));
    }

    /**
     * Returns this message with a text.
     *
     * @param name name of the parameter, in lower case with underscores
     * @param text the text, shown as it is
     * @return the message
     */
    public Message with(String name, String text) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(text, "text");
        return with(Parameter.of(name, text, text));
    }

    /**
     * Returns this message with a text that a user wrote: people see it in quotes, cut to 40 characters, without control
     * characters.
     *
     * @param name name of the parameter, in lower case with underscores
     * @param text the text
     * @return the message
     */
    public Message withInput(String name, String text) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(text, "text");
        return with(Parameter.of(name, text, "\"" + QuantityText.shown(text) + "\""));
    }

    /** A number with its key for programs and its text for people. */
    Message with(String name, String key, double number, String shown) {
        return with(Parameter.of(name, key, number, shown, ""));
    }

    /** A text with another text for people. */
    Message with(String name, String text, String shown) {
        return with(Parameter.of(name, text, shown));
    }

    /** A number with four significant figures; another number that would print the same gets as many as differ. */
    private Message withNumber(String name, String key, double si, Unit<?> unit) {
        String shown = QuantityText.brief(si, unit);
        List<Parameter> all = new ArrayList<>(values.parameters);
        for (int i = 0; i < all.size(); i++) {
            Parameter other = all.get(i);
            if (other.shown().equals(shown) && other.value() instanceof Double otherSi) {
                int figures = QuantityText.figuresApart(si, otherSi, unit, FIGURES);
                all.set(
                        i,
                        new Parameter(
                                other.name(),
                                other.key(),
                                otherSi,
                                QuantityText.brief(otherSi, unit, figures),
                                other.unit()));
                shown = QuantityText.brief(si, unit, figures);
            }
        }
        all.add(Parameter.of(name, key, si, shown, Units.symbol(unit)));
        return new Message(new Values(values.code, values.pattern, all));
    }

    private Message with(Parameter parameter) {
        List<Parameter> all = new ArrayList<>(values.parameters);
        all.add(parameter);
        return new Message(new Values(values.code, values.pattern, all));
    }

    /** {@return the stable name, in lower case with hyphens} */
    public String code() {
        return values.code;
    }

    /** {@return the pattern of the sentence} */
    public String pattern() {
        return values.pattern;
    }

    /**
     * Returns the parameters.
     *
     * @return numbers in SI with the unit in the key (a number that is not finite as a text), counts and texts, in the
     *     order in which they were given
     */
    public Map<String, Object> parameters() {
        Map<String, Object> named = new LinkedHashMap<>();
        values.parameters.forEach(parameter -> named.put(parameter.key(), parameter.value()));
        return Collections.unmodifiableMap(named);
    }

    /** {@return the sentence for people} */
    public String text() {
        return text(Map.of());
    }

    /**
     * Returns the sentence for people with other units, such as inches for millimetres.
     *
     * @param replaced units of the sentence and those that are shown in their place, of the same kind; other units stay
     * @return the sentence, its quantities with four significant figures where the unit is replaced
     */
    public String text(Map<? extends Unit<?>, ? extends Unit<?>> replaced) {
        Objects.requireNonNull(replaced, "replaced");
        if (values.parameters.isEmpty()) {
            return values.pattern;
        }
        StringBuilder text = new StringBuilder();
        int at = 0;
        for (int open = values.pattern.indexOf('{'); open >= 0; open = values.pattern.indexOf('{', at)) {
            int close = values.pattern.indexOf('}', open);
            if (close < 0) {
                break;
            }
            text.append(values.pattern, at, open).append(shown(values.pattern.substring(open + 1, close), replaced));
            at = close + 1;
        }
        return text.append(values.pattern, at, values.pattern.length()).toString();
    }

    private String shown(String name, Map<? extends Unit<?>, ? extends Unit<?>> replaced) {
        for (Parameter parameter : values.parameters) {
            if (parameter.name().equals(name)) {
                return parameter.shown(replaced);
            }
        }
        return "{" + name + "}";
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("message")
                .put("code", values.code)
                .put("text", text())
                .put("parameters", parameters())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Message that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.code + ": " + text();
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
