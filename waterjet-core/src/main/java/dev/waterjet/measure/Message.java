package dev.waterjet.measure;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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

    private static final Pattern PLACE = Pattern.compile("\\{(\\w+)}");
    private static final int DIGITS = 6;

    /** One parameter: its name in the pattern, its key and value for programs, its text for people. */
    private record Parameter(String name, String key, Object value, String shown) implements Serializable {

        private static final long serialVersionUID = 1L;

        Parameter {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(key, "key");
            Objects.requireNonNull(value, "value");
            Objects.requireNonNull(shown, "shown");
        }
    }

    private final String code;
    private final String pattern;
    private final List<Parameter> parameters;

    private Message(String code, String pattern, List<Parameter> parameters) {
        this.code = Objects.requireNonNull(code, "code");
        this.pattern = Objects.requireNonNull(pattern, "pattern");
        this.parameters = List.copyOf(parameters);
    }

    /**
     * Returns a message without parameters.
     *
     * @param code stable name, in lower case with hyphens
     * @param pattern sentence for people, in lower case without full stop; {@code {name}} stands for a parameter
     * @return the message
     */
    public static Message of(String code, String pattern) {
        return new Message(code, pattern, List.of());
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
        return with(new Parameter(name, kind.column(name), si, QuantityText.brief(si, unit, "")));
    }

    /**
     * Returns this message with a plain number.
     *
     * @param name name of the parameter, in lower case with underscores
     * @param number the number
     * @return the message
     */
    public Message with(String name, double number) {
        return with(new Parameter(name, name, number, QuantityText.round(number, DIGITS)));
    }

    /**
     * Returns this message with a count.
     *
     * @param name name of the parameter, in lower case with underscores
     * @param count the count
     * @return the message
     */
    public Message with(String name, long count) {
        return with(new Parameter(name, name, count, Long.toString(count)));
    }

    /**
     * Returns this message with a text.
     *
     * @param name name of the parameter, in lower case with underscores
     * @param text the text, shown as it is
     * @return the message
     */
    public Message with(String name, String text) {
        return with(new Parameter(name, name, text, text));
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
        return with(new Parameter(name, name, text, "\"" + QuantityText.shown(text) + "\""));
    }

    /** A value with its key for programs and its text for people. */
    Message with(String name, String key, Object value, String shown) {
        return with(new Parameter(name, key, value, shown));
    }

    private Message with(Parameter parameter) {
        List<Parameter> all = new ArrayList<>(parameters);
        all.add(parameter);
        return new Message(code, pattern, all);
    }

    /**
     * {@return the stable name, in lower case with hyphens}
     */
    public String code() {
        return code;
    }

    /**
     * {@return the pattern of the sentence}
     */
    public String pattern() {
        return pattern;
    }

    /**
     * Returns the parameters.
     *
     * @return numbers in SI with the unit in the key, counts and texts, in the order in which they were given
     */
    public Map<String, Object> parameters() {
        Map<String, Object> values = new LinkedHashMap<>();
        parameters.forEach(parameter -> values.put(parameter.key(), parameter.value()));
        return Collections.unmodifiableMap(values);
    }

    /**
     * {@return the sentence for people}
     */
    public String text() {
        if (parameters.isEmpty()) {
            return pattern;
        }
        return PLACE.matcher(pattern).replaceAll(place -> Matcher.quoteReplacement(shown(place.group(1))));
    }

    private String shown(String name) {
        for (Parameter parameter : parameters) {
            if (parameter.name().equals(name)) {
                return parameter.shown();
            }
        }
        return "{" + name + "}";
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("message")
                .put("code", code)
                .put("text", text())
                .put("parameters", parameters())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Message that
                && code.equals(that.code)
                && pattern.equals(that.pattern)
                && parameters.equals(that.parameters);
    }

    @Override
    public int hashCode() {
        return Objects.hash(code, pattern, parameters);
    }

    @Override
    public String toString() {
        return code + ": " + text();
    }
}
