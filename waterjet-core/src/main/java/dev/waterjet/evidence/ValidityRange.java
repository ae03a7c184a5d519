package dev.waterjet.evidence;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;

/**
 * Range of one input in which a model or a fit is valid, both ends included. A value outside it is not refused: the result
 * carries a {@link Caution}.
 *
 * @param <Q> the JSR-385 quantity type
 */
public final class ValidityRange<Q extends Quantity<Q>> implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values<Q extends Quantity<Q>>(String input, Kind<Q> kind, double minimumSi, double maximumSi)
            implements Serializable {

        Values {
            Objects.requireNonNull(input, "input");
            minimumSi = Require.finite("lower end of the range of " + input, minimumSi, kind.siUnit());
            maximumSi = Require.atLeast(
                    "upper end of the range of " + input, maximumSi, minimumSi, kind.siUnit(), "the lower end");
        }

        private Object readResolve() {
            return new ValidityRange<>(this);
        }
    }

    private final transient Values<Q> values;

    private ValidityRange(Values<Q> values) {
        this.values = values;
    }

    /**
     * Returns a range.
     *
     * @param input name of the input, as a term of the trade
     * @param kind kind of the input
     * @param minimum lower end
     * @param maximum upper end
     * @param <Q> the JSR-385 quantity type
     * @return the range
     */
    public static <Q extends Quantity<Q>> ValidityRange<Q> of(
            String input, Kind<Q> kind, Quantity<Q> minimum, Quantity<Q> maximum) {
        Objects.requireNonNull(input, "input");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(minimum, "minimum");
        Objects.requireNonNull(maximum, "maximum");
        return new ValidityRange<>(new Values<>(input, kind, kind.si(minimum), kind.si(maximum)));
    }

    /** {@return the name of the input} */
    public String input() {
        return values.input;
    }

    /** {@return the lower end, which is in the range} */
    public Quantity<Q> minimum() {
        return values.kind.of(values.minimumSi);
    }

    /** {@return the upper end, which is in the range} */
    public Quantity<Q> maximum() {
        return values.kind.of(values.maximumSi);
    }

    /**
     * Returns whether a value in SI is in the range.
     *
     * @param si value in SI
     * @return true on the ends and between them
     */
    public boolean contains(double si) {
        return si >= values.minimumSi && si <= values.maximumSi;
    }

    /**
     * Returns a caution for a value outside the range.
     *
     * @param si value in SI
     * @param unit unit of the numbers in the caution
     * @return a notice with code {@code outside-range} if the value is outside, else nothing
     */
    public Optional<Caution> check(double si, Unit<Q> unit) {
        Objects.requireNonNull(unit, "unit");
        if (contains(si)) {
            return Optional.empty();
        }
        return Optional.of(Caution.notice(
                Message.of("outside-range", "{input} {value} is outside {minimum} to {maximum}, the range of the model")
                        .with("input", values.input)
                        .with("value", values.kind, si, unit)
                        .with("minimum", values.kind, values.minimumSi, unit)
                        .with("maximum", values.kind, values.maximumSi, unit)));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("range")
                .put("input", values.input)
                .put("minimum", values.kind, values.minimumSi)
                .put("maximum", values.kind, values.maximumSi)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ValidityRange<?> that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.input + " " + QuantityText.interval(values.kind, values.minimumSi, values.maximumSi);
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
