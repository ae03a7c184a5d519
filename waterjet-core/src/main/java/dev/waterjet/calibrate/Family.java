package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.material.Material;
import java.io.Serializable;
import java.util.List;

/** Feed models that differ in the parameters of a calibration. */
interface Family extends Serializable {

    /** Parameter: its name, where a search starts, and whether it must stay positive. */
    record Start(String name, double value, boolean isPositive) {}

    /** The parameters, in their order. */
    List<Start> starts(List<TestCut> cuts);

    /** The material of the cuts, as it was before the fit. */
    Material start();

    /** The fit with the parameters, their names and starts. */
    default LeastSquares withParameters(LeastSquares fit, List<TestCut> cuts) {
        LeastSquares all = fit;
        for (Start start : starts(cuts)) {
            all = start.isPositive
                    ? all.withPositiveParameter(start.name, start.value)
                    : all.withParameter(start.name, start.value);
        }
        return all;
    }

    /** The model with these parameters. */
    FeedModel model(double[] parameters, double scatter, Evidence evidence);

    /** The material with these parameters; {@code relativeUncertainty} is that of the first. */
    Material material(double[] parameters, double relativeUncertainty, Evidence evidence);
}
