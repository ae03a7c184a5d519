package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.fit.Fit;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.KerfShape;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import java.io.Serializable;
import java.util.List;
import java.util.Map;

/**
 * The numbers of a {@link KerfModel} from measured widths, by least squares: the spread of the dose, the half-angle of the
 * jet, and the scatter of a width about the model.
 *
 * <p>Widths at both faces, at two stand-offs or more and at fast and slow feeds, tell the two numbers apart. An error in
 * the separation depths goes into the spread of the dose: predict with the feed model that was used for the fit.
 */
public final class KerfFit implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final String DOSE = "spread of the dose over the bore";
    private static final String SLOPE = "slope of the jet's edge";

    private final Fit fit;
    private final KerfModel model;

    private KerfFit(Fit fit, KerfModel model) {
        this.fit = fit;
        this.model = model;
    }

    /**
     * Fits measured widths.
     *
     * @param cuts test cuts with three widths or more in all
     * @return the fit
     * @throws dev.waterjet.measure.NoSolutionException if the widths do not determine both numbers
     */
    public static KerfFit of(List<KerfMeasurement> cuts) {
        List<KerfMeasurement.Width> widths =
                cuts.stream().flatMap(cut -> cut.widths().stream()).toList();
        KerfModel start = KerfModel.standard();
        Fit fit = LeastSquares.of((i, numbers) -> {
                    KerfMeasurement.Width width = widths.get(i);
                    KerfShape shape = width.cut().withDoseRatio(numbers[0]).withSpreadSlope(numbers[1]);
                    return 2 * shape.halfWidth(width.depthM());
                })
                .withPositiveParameter(DOSE, start.doseRatio())
                .withPositiveParameter(SLOPE, start.spreadSlope())
                .fit(widths.stream().mapToDouble(KerfMeasurement.Width::widthM).toArray());
        Evidence evidence = Evidence.of(
                        EvidenceGrade.FITTED, Source.of("test cuts of the user").at(fit.observations() + " widths"))
                .withNote(
                        "Spread of the dose and half-angle by least squares; the separation depths are taken as exact.");
        return new KerfFit(fit, start.fitted(fit, DOSE, SLOPE, evidence));
    }

    /**
     * The model with the fitted numbers.
     *
     * @return the model
     */
    public KerfModel model() {
        return model;
    }

    /**
     * The fit itself: errors, residuals in m, leverages.
     *
     * @return the fit
     */
    public Fit fit() {
        return fit;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("kerf fit").put("fit", fit).map();
    }

    @Override
    public String toString() {
        return fit.toString();
    }
}
