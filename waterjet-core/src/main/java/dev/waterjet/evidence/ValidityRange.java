package dev.waterjet.evidence;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
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

    private final String input;
    private final Kind<Q> kind;
    private final double lowestSi;
    private final double highestSi;

    private ValidityRange(String input, Kind<Q> kind, double lowestSi, double highestSi) {
        if (!(lowestSi <= highestSi)) {
            throw new IllegalArgumentException("range of " + input + " is empty: " + lowestSi + " to " + highestSi);
        }
        this.input = Objects.requireNonNull(input, "input");
        this.kind = kind;
        this.lowestSi = lowestSi;
        this.highestSi = highestSi;
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
        return new ValidityRange<>(input, kind, kind.si(lowest), kind.si(highest));
    }

    /**
     * Name of the input.
     *
     * @return words of the trade
     */
    public String input() {
        return input;
    }

    /**
     * Lower end.
     *
     * @return the smallest value in range
     */
    public Quantity<Q> lowest() {
        return kind.of(lowestSi);
    }

    /**
     * Upper end.
     *
     * @return the greatest value in range
     */
    public Quantity<Q> highest() {
        return kind.of(highestSi);
    }

    /**
     * Whether a value in SI lies in the range.
     *
     * @param si value in SI
     * @return true on the ends and between them
     */
    public boolean holds(double si) {
        return si >= lowestSi && si <= highestSi;
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
                input + " " + told(si, unit) + " lies outside " + told(lowestSi, unit) + " to " + told(highestSi, unit)
                        + ", where this model was established"));
    }

    private String told(double si, Unit<Q> unit) {
        return QuantityText.print(kind, kind.of(si), unit, 4);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("range")
                .put("input", input)
                .put("lowest", kind, lowestSi)
                .put("highest", kind, highestSi)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ValidityRange<?> that
                && input.equals(that.input)
                && kind == that.kind
                && lowestSi == that.lowestSi
                && highestSi == that.highestSi;
    }

    @Override
    public int hashCode() {
        return Objects.hash(input, kind.name(), lowestSi, highestSi);
    }

    @Override
    public String toString() {
        return input + " " + told(lowestSi, kind.siUnit()) + " to " + told(highestSi, kind.siUnit());
    }
}
