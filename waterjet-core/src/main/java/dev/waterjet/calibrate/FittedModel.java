package dev.waterjet.calibrate;

import dev.waterjet.fit.Fit;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;

/**
 * Model with fitted numbers, and the fit from which they come.
 *
 * <pre>{@code
 * FittedModel<KerfModel> own = KerfMeasurement.fit(measurements);
 * Kerf kerf = own.model().kerf(cut, millimetresPerMinute(120));
 * }</pre>
 *
 * @param model model with the fitted numbers, their uncertainty and evidence
 * @param fit the fit: parameters, standard errors, intervals, residuals, leverages
 * @param <M> type of the model
 */
public record FittedModel<M extends Described & Serializable>(M model, Fit fit) implements Described, Serializable {

    /**
     * Checks the components.
     *
     * @param model model with the fitted numbers, their uncertainty and evidence
     * @param fit the fit: parameters, standard errors, intervals, residuals, leverages
     */
    public FittedModel {
        Objects.requireNonNull(model, "model");
        Objects.requireNonNull(fit, "fit");
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("fitted model")
                .put("model", model)
                .put("fit", fit)
                .map();
    }

    @Override
    public String toString() {
        return model + ", fitted to " + fit.observations() + " observations";
    }
}
