package dev.waterjet.evidence;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
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
 * The range of one input over which a model or a fit is known to hold, both ends included. A value outside it is not
 * refused: the result carries a {@link Caution}.
 *
 * @param <Q> the JSR-385 quantity type
 */
public final class ValidityRange<Q extends Quantity<Q>> implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values<Q extends Quantity<Q>>(String input, Kind<Q> kind, double lowestSi, double highestSi)
            implements Serializable {

        Values {
            Objects.requireNonNull(input, "input");
            lowestSi = Require.finite("lower end of the range of " + input, lowestSi, kind.siUnit());
            highestSi = Require.atLeast(
                    "upper end of the range of " + input, highestSi, lowestSi, kind.siUnit(), "the lower end");
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
     * A range.
     *
     * @param input name of the input, in the words of the trade
     * @param kind kind of the input
     * @param lowest lower end
     * @param highest upper end
     * @param <Q> the JSR-385 quantity type
     * @return the range
     */
    public static <Q extends Quantity<Q>> ValidityRange<Q> of(
            String input, Kind<Q> kind, Quantity<Q> lowest, Quantity<Q> highest) {
        return new ValidityRange<>(new Values<>(input, kind, kind.si(lowest), kind.si(highest)));
    }

    /**
     * Name of the input.
     *
     * @return words of the trade
     */
    public String input() {
        return values.input;
    }

    /**
     * Lower end.
     *
     * @return the smallest value in range
     */
    public Quantity<Q> lowest() {
        return values.kind.of(values.lowestSi);
    }

    /**
     * Upper end.
     *
     * @return the greatest value in range
     */
    public Quantity<Q> highest() {
        return values.kind.of(values.highestSi);
    }

    /**
     * Whether a value in SI lies in the range.
     *
     * @param si value in SI
     * @return true on the ends and between them
     */
    public boolean holds(double si) {
        return si >= values.lowestSi && si <= values.highestSi;
    }

    /**
     * The caution that a value deserves.
     *
     * @param si value in SI
     * @param unit unit in which the caution tells it
     * @return a caution if the value lies outside, else nothing
     */
    public Optional<Caution> check(double si, Unit<Q> unit) {
        if (holds(si)) {
            return Optional.empty();
        }
        return Optional.of(Caution.notice(
                "outside-range",
                values.input + " " + told(si, unit) + " lies outside " + told(values.lowestSi, unit) + " to "
                        + told(values.highestSi, unit) + ", where this model was established"));
    }

    private String told(double si, Unit<Q> unit) {
        return QuantityText.print(values.kind, values.kind.of(si), unit, 4);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("range")
                .put("input", values.input)
                .put("lowest", values.kind, values.lowestSi)
                .put("highest", values.kind, values.highestSi)
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
        Unit<Q> unit = values.kind.siUnit();
        return values.input + " " + told(values.lowestSi, unit) + " to " + told(values.highestSi, unit);
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
