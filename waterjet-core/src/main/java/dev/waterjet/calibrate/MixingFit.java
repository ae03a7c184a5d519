package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.fit.Fit;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.jet.MixingModel;
import dev.waterjet.measure.WaterjetException;
import java.util.List;
import java.util.Optional;

/**
 * Fit of contact drag, wall coefficient and crowding to measured particle speeds, on logarithms, with the default coefficients as
 * prior observations of known deviation.
 */
final class MixingFit {

    private static final String DRAG = "contact drag";
    private static final String WALL = "wall coefficient";
    private static final String CROWDING = "crowding";

    private static final double DRAG_PRIOR = MixingModel.standard().contactDrag();
    private static final double WALL_PRIOR = MixingModel.standard().wallCoefficient();
    private static final double DRAG_DEVIATION = 0.9;
    private static final double WALL_DEVIATION = Math.log(2);

    /** Range in which the search may try; a result lies within it. */
    private static final double MIN_DRAG = 0.001;

    private static final double MAX_DRAG = 10;

    /** Wall coefficient times length over bore up to which the model holds is 3. */
    private static final double MAX_FRICTION = 2.9;

    /** Relative standard error of the crowding from which the speeds tell nothing of it. */
    private static final double MAX_RELATIVE_ERROR = 1;

    private static final int MIN_FOR_CROWDING = 4;
    private static final double LOADING_FACTOR = 3;

    /** Crowding is 1/s with the scale s of the loading ratio; a start of 1 is a weak one. */
    private static final double CROWDING_START = 1;

    private final List<ParticleSpeedMeasurement> measurements;
    private final double deviation;
    private final boolean canTellCrowding;
    private final double maximumWall;

    MixingFit(List<ParticleSpeedMeasurement> measurements, double deviation) {
        this.measurements = measurements;
        this.deviation = deviation;
        double[] loadings = measurements.stream()
                .mapToDouble(each -> each.jet().loadingRatioSi())
                .sorted()
                .toArray();
        this.maximumWall = measurements.stream()
                .map(each -> each.jet().head().tube())
                .mapToDouble(tube -> MAX_FRICTION * tube.boreSi() / tube.lengthSi())
                .min()
                .orElseThrow();
        this.canTellCrowding = measurements.size() >= MIN_FOR_CROWDING
                && loadings[loadings.length - 1] >= LOADING_FACTOR * loadings[0];
    }

    FittedModel<MixingModel> fit() {
        return model(withCrowding().orElseGet(() -> fit(false)));
    }

    /** Fit with crowding; empty if the speeds do not tell it. */
    private Optional<Fit> withCrowding() {
        if (!canTellCrowding) {
            return Optional.empty();
        }
        try {
            Fit fit = fit(true);
            return fit.standardError(CROWDING) < MAX_RELATIVE_ERROR * fit.value(CROWDING)
                    ? Optional.of(fit)
                    : Optional.empty();
        } catch (WaterjetException e) {
            // crowding runs to 0 where the speeds fall with the loading as momentum alone lets them
            return Optional.empty();
        }
    }

    private Fit fit(boolean withCrowding) {
        int count = measurements.size();
        double[] observed = new double[count + 2];
        double[] deviations = new double[count + 2];
        for (int i = 0; i < count; i++) {
            observed[i] = measurements.get(i).logSpeed();
            deviations[i] = deviation;
        }
        observed[count] = Math.log(DRAG_PRIOR);
        deviations[count] = DRAG_DEVIATION;
        observed[count + 1] = Math.log(WALL_PRIOR);
        deviations[count + 1] = WALL_DEVIATION;
        LeastSquares problem = LeastSquares.of(this::predicted)
                .withPositiveParameter(DRAG, DRAG_PRIOR)
                .withPositiveParameter(WALL, WALL_PRIOR);
        if (withCrowding) {
            problem = problem.withPositiveParameter(CROWDING, CROWDING_START);
        }
        return problem.withKnownDeviations().fit(observed, deviations);
    }

    private double predicted(int i, double[] numbers) {
        int count = measurements.size();
        if (i >= count) {
            return Math.log(numbers[i - count]);
        }
        MixingModel model = MixingModel.of(
                Math.max(MIN_DRAG, Math.min(MAX_DRAG, numbers[0])),
                Math.min(maximumWall, numbers[1]),
                MixingModel.standard().evidence());
        if (numbers.length > 2) {
            model = model.withCrowding(1 / numbers[2]);
        }
        return Math.log(model.particleSpeedSi(measurements.get(i).jet()));
    }

    private FittedModel<MixingModel> model(Fit fit) {
        Evidence evidence = Evidence.of(
                        EvidenceGrade.FITTED,
                        Source.of("measured particle speeds of the user").at(measurements.size() + " speeds"))
                .withNote("With the default coefficients as prior.");
        double drag = fit.value(DRAG);
        double wall = fit.value(WALL);
        MixingModel model = MixingModel.of(drag, wall, evidence)
                .withDeviations(
                        fit.standardError(DRAG) / drag, fit.standardError(WALL) / wall, fit.correlation(DRAG, WALL));
        return new FittedModel<>(
                fit.names().contains(CROWDING) ? model.withCrowding(1 / fit.value(CROWDING)) : model, fit);
    }
}
