package dev.waterjet;

import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.measure.Described;
import java.io.IOException;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import javax.measure.Quantity;

/**
 * Promises of each value type: equals, hash code, text, description and serial form depend on the content of the value, a
 * copy by {@code with...} changes one thing and keeps the rest, and no bytes make a value that no factory makes
 * ({@link ForgedBytes}).
 *
 * <pre>{@code
 * ValueContract.of(() -> Workpiece.of(TITANIUM, millimetres(6)))
 *         .change("thickness", piece -> piece.withThickness(millimetres(9)), Workpiece::thickness, millimetres(9))
 *         .differs("material", Workpiece.of(GRAPHITE, millimetres(6)))
 *         .has("material", Workpiece::material, TITANIUM)
 *         .prints("titanium", "6 mm")
 *         .check();
 * }</pre>
 *
 * <p>Of the other values at least one has another hash code. Numbers and quantities are compared within 1e-12 of their size.
 *
 * @param <T> the value type
 */
public final class ValueContract<T> {

    private record Trait<T>(String name, Function<T, ?> accessor, Object expected) {}

    private record Change<T>(T changed, Trait<T> trait) {}

    private record Other(String name, Object value) {}

    private final Supplier<T> maker;
    private final T value;
    private final List<Trait<T>> traits = new ArrayList<>();
    private final List<Change<T>> changes = new ArrayList<>();
    private final List<Other> others = new ArrayList<>();
    private final List<String> words = new ArrayList<>();

    private ValueContract(Supplier<T> maker) {
        this.maker = maker;
        this.value = maker.get();
    }

    /** A contract on the value that a maker makes; it is called more than once and must make equal values. */
    public static <T> ValueContract<T> of(Supplier<T> maker) {
        return new ValueContract<>(maker);
    }

    /** The value has what was given. */
    public <R> ValueContract<T> has(String name, Function<T, R> accessor, R given) {
        traits.add(new Trait<>(name, accessor, given));
        return this;
    }

    /** A change makes another value, which has what was given; all else that {@code change} and {@code has} name stays. */
    public <R> ValueContract<T> change(String name, UnaryOperator<T> change, Function<T, R> accessor, R given) {
        T changed = change.apply(value);
        changes.add(new Change<>(changed, new Trait<>(name, accessor, given)));
        others.add(new Other(name, changed));
        return this;
    }

    /** Another value, which differs in one thing. */
    public ValueContract<T> differs(String name, Object other) {
        others.add(new Other(name, other));
        return this;
    }

    /** The text of the value contains these parts. */
    public ValueContract<T> prints(String... parts) {
        words.addAll(List.of(parts));
        return this;
    }

    /** Checks all of it. */
    public void check() {
        isTheSame("a second one", value, maker.get());
        holdsFor(value);
        words.forEach(word -> assertThat(value.toString()).contains(word));
        traits.forEach(trait -> assertThat(same(trait.accessor().apply(value), trait.expected()))
                .as("%s is %s", trait.name(), trait.accessor().apply(value))
                .isTrue());
        for (int i = 0; i < others.size(); i++) {
            isAnother(others.get(i).name(), value, others.get(i).value());
            for (Other earlier : others.subList(0, i)) {
                isAnother(
                        others.get(i).name() + " and " + earlier.name(),
                        earlier.value(),
                        others.get(i).value());
            }
        }
        changes.forEach(this::changesOneThing);
        hashesTellValuesApart();
    }

    /** Not demanded of a hash code, but a table of values whose hash codes are all one is a list. */
    private void hashesTellValuesApart() {
        if (!others.isEmpty()) {
            assertThat(others)
                    .as("hash codes of different values")
                    .anyMatch(other -> other.value().hashCode() != value.hashCode());
        }
    }

    /** Checks equality, hash code, serial form and forged bytes of a value of any type. */
    public static void holdsFor(Object value) {
        isTheSame("itself", value, value);
        assertThat(value).isNotEqualTo(null).isNotEqualTo("a text");
        assertThat(value.toString()).as("text").isNotBlank();
        if (value instanceof Serializable serializable) {
            isTheSame("the copy read from bytes", value, copy(value));
            new ForgedBytes(serializable).check();
        }
    }

    /** Equal by all that a value shows. */
    static void isTheSame(String what, Object value, Object other) {
        assertThat(value).as(what).isEqualTo(other).hasSameHashCodeAs(other).hasToString(other.toString());
        if (value instanceof Described described) {
            assertThat(described.describe()).as(what).isEqualTo(((Described) other).describe());
        }
    }

    private static void isAnother(String what, Object one, Object other) {
        assertThat(one).as(what).isNotEqualTo(other);
        assertThat(other).as(what).isNotEqualTo(one);
        if (one instanceof Described described) {
            assertThat(described.describe()).as(what).isNotEqualTo(((Described) other).describe());
        }
    }

    private void changesOneThing(Change<T> change) {
        Trait<T> own = change.trait();
        Object before = own.accessor().apply(value);
        assertThat(same(before, own.expected()))
                .as("%s changes nothing", own.name())
                .isFalse();
        requireSame(change, own, own.expected());
        changes.stream()
                .filter(other -> !other.trait().name().equals(own.name()))
                .forEach(other -> requireSame(other, own, before));
        traits.stream()
                .filter(kept -> !kept.name().equals(own.name()))
                .forEach(kept -> requireSame(change, kept, kept.expected()));
    }

    private void requireSame(Change<T> change, Trait<T> trait, Object expected) {
        Object actual = trait.accessor().apply(change.changed());
        assertThat(same(actual, expected))
                .as(
                        "%s after the change of %s is %s, not %s",
                        trait.name(), change.trait().name(), actual, expected)
                .isTrue();
    }

    private static boolean same(Object actual, Object expected) {
        if (actual instanceof Quantity<?> one && expected instanceof Quantity<?> other) {
            return sameQuantity(one, other);
        }
        if (actual instanceof OptionalDouble one && expected instanceof OptionalDouble other) {
            return one.isPresent() == other.isPresent()
                    && (one.isEmpty() || same(one.getAsDouble(), other.getAsDouble()));
        }
        if (actual instanceof Optional<?> one && expected instanceof Optional<?> other) {
            return one.isPresent() == other.isPresent() && (one.isEmpty() || same(one.get(), other.get()));
        }
        if (actual instanceof Number one && expected instanceof Number other) {
            return same(one.doubleValue(), other.doubleValue());
        }
        return actual.equals(expected);
    }

    private static boolean same(double one, double other) {
        double size = Math.max(Math.abs(one), Math.abs(other));
        return one == other || (Double.isFinite(size) && Math.abs(one - other) <= 1e-12 * size);
    }

    private static <Q extends Quantity<Q>> boolean sameQuantity(Quantity<?> one, Quantity<Q> other) {
        @SuppressWarnings("unchecked")
        Quantity<Q> alike = (Quantity<Q>) one;
        return same(alike.to(other.getUnit()).getValue(), other.getValue());
    }

    private static Object copy(Object original) {
        try {
            return SerialForm.read(SerialForm.of(original).bytes());
        } catch (IOException | ClassNotFoundException e) {
            throw new AssertionError(original + " cannot be read from its bytes", e);
        }
    }
}
