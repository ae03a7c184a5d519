package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.fit.Fit;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import java.io.Serializable;
import java.util.List;
import java.util.Map;

/** The coefficient of a {@link LagModel} from measured lag lines, by least squares. */
public final class LagFit implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final String COEFFICIENT = "lag coefficient";

    private final Fit fit;
    private final LagModel model;

    private LagFit(Fit fit, LagModel model) {
        this.fit = fit;
        this.model = model;
    }

    /**
     * Fits measured lag lines.
     *
     * @param lines lines with two points or more in all
     * @return the fit
     * @throws dev.waterjet.measure.NoSolutionException if there are too few points
     */
    public static LagFit of(List<LagMeasurement> lines) {
        double[] drivers = new double[lines.stream().mapToInt(LagMeasurement::size).sum()];
        double[] lags = new double[drivers.length];
        int count = 0;
        for (LagMeasurement line : lines) {
            for (int i = 0; i < line.size(); i++) {
                drivers[count] = line.driver(i);
                lags[count++] = line.lag(i);
            }
        }
        Fit fit = LeastSquares.of((i, numbers) -> numbers[0] * drivers[i])
                .withPositiveParameter(COEFFICIENT, LagModel.standard().coefficient())
                .fit(lags);
        LagModel model = LagModel.of(
                fit.value(COEFFICIENT),
                fit.standardError(COEFFICIENT) / fit.value(COEFFICIENT),
                Evidence.of(
                        EvidenceGrade.FITTED, Source.of("lag lines of the user").at(lags.length + " points")));
        return new LagFit(fit, model);
    }

    /**
     * The model with the fitted coefficient.
     *
     * @return the model
     */
    public LagModel model() {
        return model;
    }

    /**
     * The fit itself.
     *
     * @return the fit
     */
    public Fit fit() {
        return fit;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("lag fit").put("fit", fit).map();
    }

    @Override
    public String toString() {
        return fit.toString();
    }
}
