package dev.waterjet.reference;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import javax.measure.Quantity;

/**
 * Result of the library for a row.
 *
 * @param kind kind of the answer
 * @param si answer in SI
 */
public record Computed(Kind<?> kind, double si) {

    /** A quantity. */
    public static <Q extends Quantity<Q>> Computed of(Kind<Q> kind, Quantity<Q> answer) {
        return new Computed(kind, kind.si(answer));
    }

    /** The value of an estimate. */
    public static Computed of(Estimate<?> answer) {
        return new Computed(answer.kind(), answer.si());
    }

    /** A ratio or a plain number. */
    public static Computed of(double number) {
        return new Computed(Kind.RATIO, number);
    }
}
