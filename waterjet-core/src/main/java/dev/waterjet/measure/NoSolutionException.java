package dev.waterjet.measure;

import java.util.Optional;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * A question that has no answer: no feed reaches the requirement, no head is feasible, the data do not determine the
 * parameters. It carries the best value that was found, where there is one.
 */
public class NoSolutionException extends WaterjetException {

    private static final long serialVersionUID = 1L;

    private final @Nullable Kind<?> kind;
    private final double bestSi;

    /**
     * Creates a refusal without a best value.
     *
     * @param message code, parameters and sentence
     */
    public NoSolutionException(Message message) {
        super(message);
        this.kind = null;
        this.bestSi = 0;
    }

    /**
     * Creates a refusal with the best value that was found.
     *
     * @param message code, parameters and sentence
     * @param kind kind of the best value
     * @param bestSi best value, in SI
     */
    public NoSolutionException(Message message, Kind<?> kind, double bestSi) {
        super(message);
        this.kind = kind;
        this.bestSi = bestSi;
    }

    /**
     * Returns the best value that was found.
     *
     * @param wanted kind of the value
     * @param <Q> the JSR-385 quantity type
     * @return the value, or nothing if there is none of this kind
     */
    public <Q extends Quantity<Q>> Optional<Quantity<Q>> best(Kind<Q> wanted) {
        return kind != null && wanted.equals(kind) ? Optional.of(wanted.of(bestSi)) : Optional.empty();
    }
}
