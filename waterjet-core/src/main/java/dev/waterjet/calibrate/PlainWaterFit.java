package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.PlainWaterFeed;
import dev.waterjet.fit.Fit;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.WaterjetException;
import java.util.List;
import java.util.Optional;

/**
 * Fit of the pure-water model to separation cuts: depth at the setting of the first cut, exponents with their priors as
 * observations, threshold pressure if the cuts tell it.
 */
final class PlainWaterFit {

    private static final String DEPTH = "depth in m";
    private static final String BORE = "exponent of the orifice bore";
    private static final String PRESSURE = "exponent of the pressure";
    private static final String FEED = "exponent of the feed rate";
    private static final String THRESHOLD = "threshold over the rest of the lowest pressure";

    private static final double[] PRIOR = {1, 1.5, 0.9};
    private static final double[] PRIOR_DEVIATION = {0.3, 0.3, 0.2};

    private static final int MIN_FOR_THRESHOLD = 3;
    private static final double PRESSURE_FACTOR = 1.3;
    private static final double THRESHOLD_START = 0.1;

    /** Relative standard error of the threshold ratio from which the cuts tell nothing of it. */
    private static final double MAX_RELATIVE_ERROR = 1;

    private static final double MIN_UNCERTAINTY = 0.25;

    private final Material material;
    private final List<PlainWaterCut> cuts;
    private final double deviation;
    private final double lowestPa;
    private final double highestPa;

    PlainWaterFit(Material material, List<PlainWaterCut> cuts, double deviation) {
        this.material = material;
        this.cuts = cuts;
        this.deviation = deviation;
        this.lowestPa = cuts.stream().mapToDouble(PlainWaterFit::axisPa).min().orElseThrow();
        this.highestPa = cuts.stream().mapToDouble(PlainWaterFit::axisPa).max().orElseThrow();
    }

    private static double axisPa(PlainWaterCut cut) {
        return PlainWaterFeed.axisPressureSi(cut.jet(), cut.standOff());
    }

    FittedModel<PlainWaterFeed> fit() {
        Fit fit = withThreshold().orElseGet(() -> fit(false));
        double ratio = fit.names().contains(THRESHOLD) ? fit.value(THRESHOLD) : 0;
        PlainWaterFeed model = model(fit.value(DEPTH), fit.value(BORE), fit.value(PRESSURE), fit.value(FEED), ratio);
        Evidence evidence = Evidence.of(
                        EvidenceGrade.FITTED,
                        Source.of("separation cuts of the user by pure water").at(cuts.size() + " cuts"))
                .withNote("Exponents with the priors of the model; a scatter of at least 25 % is assumed.");
        double scatter = scatter(fit) / fit.value(FEED);
        return new FittedModel<>(model.withModelUncertainty(Math.max(MIN_UNCERTAINTY, scatter), evidence), fit);
    }

    /** Root mean square of the residuals of the cuts, without those of the priors. */
    private double scatter(Fit fit) {
        double sum = 0;
        for (int i = 0; i < cuts.size(); i++) {
            sum += fit.residuals()[i] * fit.residuals()[i];
        }
        return Math.sqrt(sum / cuts.size());
    }

    private Optional<Fit> withThreshold() {
        if (cuts.size() < MIN_FOR_THRESHOLD || highestPa < PRESSURE_FACTOR * lowestPa) {
            return Optional.empty();
        }
        try {
            Fit fit = fit(true);
            double relative = fit.standardError(THRESHOLD) / fit.value(THRESHOLD);
            return relative < MAX_RELATIVE_ERROR ? Optional.of(fit) : Optional.empty();
        } catch (WaterjetException e) {
            // the threshold runs to 0 or to the lowest pressure where the cuts do not bend
            return Optional.empty();
        }
    }

    private Fit fit(boolean withThreshold) {
        int count = cuts.size();
        double[] observed = new double[count + PRIOR.length];
        double[] deviations = new double[count + PRIOR.length];
        for (int i = 0; i < count; i++) {
            observed[i] = Math.log(cuts.get(i).depthSi());
            deviations[i] = deviation;
        }
        System.arraycopy(PRIOR, 0, observed, count, PRIOR.length);
        System.arraycopy(PRIOR_DEVIATION, 0, deviations, count, PRIOR.length);
        LeastSquares problem = LeastSquares.of(this::predicted)
                .withPositiveParameter(DEPTH, cuts.get(0).depthSi())
                .withPositiveParameter(BORE, PRIOR[0])
                .withPositiveParameter(PRESSURE, PRIOR[1])
                .withPositiveParameter(FEED, PRIOR[2]);
        if (withThreshold) {
            problem = problem.withPositiveParameter(THRESHOLD, THRESHOLD_START);
        }
        return problem.withKnownDeviations().fit(observed, deviations);
    }

    private double predicted(int i, double[] numbers) {
        int count = cuts.size();
        if (i >= count) {
            return numbers[1 + i - count];
        }
        PlainWaterCut cut = cuts.get(i);
        double ratio = numbers.length > 4 ? numbers[4] : 0;
        return Math.log(model(numbers[0], numbers[1], numbers[2], numbers[3], ratio)
                .depth(cut.jet(), cut.standOff(), material, cut.feed())
                .si());
    }

    /** Model scaled at the setting of the first cut; the threshold is a share ratio/(1 + ratio) of the lowest pressure. */
    private PlainWaterFeed model(double depthM, double bore, double pressure, double feed, double ratio) {
        PlainWaterCut first = cuts.get(0);
        return PlainWaterFeed.of(material, first.jet(), first.standOff(), Kind.LENGTH.of(depthM), first.feed())
                .withExponents(bore, pressure, feed)
                .withThreshold(Kind.PRESSURE.of(lowestPa * ratio / (1 + ratio)));
    }
}
