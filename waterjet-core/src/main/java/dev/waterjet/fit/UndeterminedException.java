package dev.waterjet.fit;

import dev.waterjet.measure.WaterjetException;
import java.util.List;

/** The data cannot determine what was asked: too few observations, or parameters that they cannot tell apart. */
public final class UndeterminedException extends WaterjetException {

    private static final long serialVersionUID = 1L;

    private final List<String> parameters;

    /**
     * Made where a fit, or what is built upon one, finds that the data do not suffice.
     *
     * @param message what is missing, and what would help
     * @param parameters names of the parameters that stay open
     */
    public UndeterminedException(String message, List<String> parameters) {
        super(message);
        this.parameters = List.copyOf(parameters);
    }

    /**
     * The parameters that stay open.
     *
     * @return their names
     */
    public List<String> parameterNames() {
        return parameters;
    }
}
