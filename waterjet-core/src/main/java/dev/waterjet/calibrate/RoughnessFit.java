package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.fit.Fit;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.surface.RoughnessModel;
import dev.waterjet.surface.RoughnessNumbers;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Entry texture and growth of grooves of a {@link RoughnessModel} from measured faces, by least squares on the logarithm of
 * Ra: a roughness is known within a factor. The slow growth above the grooves is kept as assumed.
 */
public final class RoughnessFit implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final String GRAIN = "Ra at the entry over the mean grain";
    private static final String GROOVE = "growth of the grooves over the bore";

    private record Point(RoughnessMeasurement line, int index) {}

    private final Fit fit;
    private final RoughnessModel model;

    private RoughnessFit(Fit fit, RoughnessModel model) {
        this.fit = fit;
        this.model = model;
    }

    /**
     * Fits measured faces.
     *
     * @param lines lines with three points or more in all, near the entry and in the grooves
     * @return the fit
     * @throws dev.waterjet.measure.NoSolutionException if the points do not determine both numbers
     */
    public static RoughnessFit of(List<RoughnessMeasurement> lines) {
        List<Point> points = new ArrayList<>();
        for (RoughnessMeasurement line : lines) {
            for (int i = 0; i < line.size(); i++) {
                points.add(new Point(line, i));
            }
        }
        RoughnessModel start = RoughnessModel.standard();
        RoughnessNumbers kept = start.numbers();
        Fit fit = LeastSquares.of((i, found) -> {
                    Point point = points.get(i);
                    RoughnessNumbers moved = new RoughnessNumbers(
                            found[0], kept.fineGrowth(), found[1], kept.rzOverRa(), kept.paOverRa(), kept.pzOverPa());
                    return Math.log(point.line().predicted(point.index(), moved));
                })
                .withPositiveParameter(GRAIN, start.textureRatio())
                .withPositiveParameter(GROOVE, start.striationGrowth())
                .fit(points.stream()
                        .mapToDouble(point -> Math.log(point.line().ra(point.index())))
                        .toArray());
        Evidence evidence =
                Evidence.of(EvidenceGrade.FITTED, Source.of("faces of the user").at(points.size() + " points"));
        return new RoughnessFit(
                fit,
                start.fitted(
                        fit.value(GRAIN),
                        fit.standardError(GRAIN) / fit.value(GRAIN),
                        fit.value(GROOVE),
                        fit.standardError(GROOVE) / fit.value(GROOVE),
                        evidence));
    }

    /**
     * The model with the fitted numbers.
     *
     * @return the model
     */
    public RoughnessModel model() {
        return model;
    }

    /**
     * The fit itself, on natural logarithms of Ra in m.
     *
     * @return the fit
     */
    public Fit fit() {
        return fit;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("roughness fit").put("fit", fit).map();
    }

    @Override
    public String toString() {
        return fit.toString();
    }
}
