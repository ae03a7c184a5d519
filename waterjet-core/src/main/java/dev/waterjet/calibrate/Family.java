package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.material.Material;
import java.io.Serializable;
import java.util.List;

/** Feed models that differ in the parameters of a calibration. */
interface Family extends Serializable {

    /** The fit with the parameters, their names and starts. */
    LeastSquares withParameters(LeastSquares fit, List<TestCut> cuts);

    /** The model with these parameters. */
    FeedModel model(double[] parameters, double scatter, Evidence evidence);

    /** The material with these parameters; {@code relativeUncertainty} is that of the first. */
    Material material(double[] parameters, double relativeUncertainty, Evidence evidence);
}
