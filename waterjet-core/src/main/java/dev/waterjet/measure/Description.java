package dev.waterjet.measure;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Builder of the result of {@link Described#describe()}, entry by entry. Created, filled and converted by {@link #map()} in one
 * expression; not to be shared.
 *
 * <pre>{@code
 * Map<String, Object> entries = Description.of("orifice").put("jewel", jewel).put("bore", Kind.LENGTH, boreM).map();
 * }</pre>
 */
public final class Description {

    private final Map<String, Object> entries = new LinkedHashMap<>();

    private Description() {}

    /**
     * Begins a description.
     *
     * @param type what is described, in words: {@code "water jet"}
     * @return a description with the entry {@code "type"}
     */
    public static Description of(String type) {
        return new Description().put("type", type);
    }

    /**
     * Adds a quantity.
     *
     * @param label what it is, in lower case with underscores
     * @param kind its kind
     * @param si its value in SI
     * @return this description
     * @throws DomainException if the value is not finite
     */
    public Description put(String label, Kind<?> kind, double si) {
        return add(kind.column(label), Require.finite(label, si, kind.siUnit()));
    }

    /**
     * Adds a quantity if it is there.
     *
     * @param label what it is, in lower case with underscores
     * @param kind its kind
     * @param si its value in SI, or nothing
     * @return this description
     * @throws DomainException if the value is not finite
     */
    public Description put(String label, Kind<?> kind, OptionalDouble si) {
        return si.isPresent() ? put(label, kind, si.getAsDouble()) : this;
    }

    /**
     * Adds quantities.
     *
     * @param label what they are, in lower case with underscores
     * @param quantities the quantities
     * @return this description
     * @throws DomainException if a value is not finite
     */
    public Description put(String label, QuantityArray<?> quantities) {
        Kind<?> kind = quantities.kind();
        return add(
                kind.column(label),
                quantities.stream()
                        .mapToObj(si -> Require.finite(label, si, kind.siUnit()))
                        .toList());
    }

    /**
     * Adds a ratio or another plain number.
     *
     * @param label what it is, in lower case with underscores
     * @param number the number
     * @return this description
     * @throws DomainException if the number is not finite
     */
    public Description put(String label, double number) {
        return put(label, Kind.RATIO, number);
    }

    /**
     * Adds a count.
     *
     * @param label what is counted, in lower case with underscores
     * @param count the count
     * @return this description
     */
    public Description put(String label, long count) {
        return add(label, count);
    }

    /**
     * Adds a count.
     *
     * @param label what is counted, in lower case with underscores
     * @param count the count
     * @return this description
     */
    public Description put(String label, int count) {
        return put(label, (long) count);
    }

    /**
     * Adds a truth value.
     *
     * @param label meaning, in lower case with underscores
     * @param truth whether it is so
     * @return this description
     */
    public Description put(String label, boolean truth) {
        return add(label, truth);
    }

    /**
     * Adds a text. An empty one is left out.
     *
     * @param label what it is, in lower case with underscores
     * @param text the text
     * @return this description
     */
    public Description put(String label, String text) {
        return text.isEmpty() ? this : add(label, text);
    }

    /**
     * Adds a constant of an enumeration in the letters of the library's files: {@code "from-memory"}.
     *
     * @param label what it is, in lower case with underscores
     * @param constant the constant
     * @return this description
     */
    public Description put(String label, Enum<?> constant) {
        return add(label, word(constant));
    }

    /**
     * Adds the description of a part.
     *
     * @param label what it is, in lower case with underscores
     * @param part the part
     * @return this description
     */
    public Description put(String label, Described part) {
        return add(label, part.describe());
    }

    /**
     * Adds the description of a part if it is there.
     *
     * @param label what it is, in lower case with underscores
     * @param part the part, or nothing
     * @return this description
     */
    public Description put(String label, Optional<? extends Described> part) {
        return part.isPresent() ? put(label, part.get()) : this;
    }

    /**
     * Adds the descriptions of many parts, texts or constants.
     *
     * @param label what they are, in lower case with underscores
     * @param parts parts that are described, texts, constants of enumerations, or the maps of other descriptions
     * @return this description
     */
    public Description put(String label, Collection<?> parts) {
        return add(label, parts.stream().map(Description::plain).toList());
    }

    /**
     * Adds named values, such as the parameters of a message: finite numbers, counts, texts, truth values. An empty map and
     * numbers that are not finite are left out.
     *
     * @param label what they are, in lower case with underscores
     * @param values the values by name
     * @return this description
     */
    public Description put(String label, Map<String, Object> values) {
        Map<String, Object> finite = new LinkedHashMap<>(values);
        finite.values().removeIf(value -> value instanceof Double number && !Double.isFinite(number));
        return finite.isEmpty() ? this : add(label, Collections.unmodifiableMap(finite));
    }

    private static Object plain(Object part) {
        if (part instanceof Described described) {
            return described.describe();
        }
        if (part instanceof Enum<?> constant) {
            return word(constant);
        }
        if (part instanceof String || part instanceof List<?> || part instanceof Map<?, ?>) {
            return part;
        }
        throw new DomainException(
                Message.of("no-description", "{quantity} is a {type}, which has no description")
                        .with("type", part.getClass().getSimpleName()),
                "part");
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private Description add(String key, Object value) {
        if (entries.put(key, value) != null) {
            throw new DomainException(
                    Message.of("duplicate-key", "a description has the key {key} twice")
                            .with("key", key),
                    "key");
        }
        return this;
    }

    /**
     * The entries.
     *
     * @return an unmodifiable map, in the order in which the entries were added
     */
    public Map<String, Object> map() {
        return Collections.unmodifiableMap(entries);
    }
}
