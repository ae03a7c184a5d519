package dev.waterjet.calibrate;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Solution with Student's distribution of the scatter; it refuses cuts that form two groups. */
final class HeavyTails {

    /** Two maxima of the likelihood nearer than this are equally possible. */
    private static final double TOO_CLOSE = 6;

    private HeavyTails() {}

    static Solution solve(CutRows rows, double freedom, List<TestCut> cuts) {
        StudentFit fit =
                freedom == CalibrationSpec.ESTIMATED ? StudentFit.withFreedom(rows) : StudentFit.of(rows, freedom);
        if (!fit.fit().isDetermined()) {
            throw FitRefusals.scatter(rows);
        }
        if (fit.rival() > fit.fit().logLikelihood() - TOO_CLOSE) {
            throw new NoSolutionException(Message.of(
                            "two-groups",
                            "the cuts form two groups, and either may be the wrong one; the smaller: {cuts}")
                    .with("cuts", String.join(", ", light(fit, cuts))));
        }
        return new ProfileSolution(
                CutFit.Method.HEAVY_TAILS, fit.fit(), Optional.empty(), Math.max(1, rows.size() - rows.width()));
    }

    private static List<String> light(StudentFit fit, List<TestCut> cuts) {
        List<String> light = new ArrayList<>();
        double[] weights = fit.weights();
        for (int i = 0; i < weights.length; i++) {
            if (weights[i] < 0.5) {
                light.add(CutFit.label(cuts, i));
            }
        }
        return light;
    }
}
