package dev.waterjet.calibrate;

import dev.waterjet.calibrate.Family.Start;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.fit.Fit;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.material.Material;
import dev.waterjet.measure.DomainException;
import java.util.Arrays;
import java.util.List;

/**
 * Test cuts about any feed model. The variables are its parameters, of a positive one the logarithm. A residual of a feed rate
 * is divided by the slope of the logarithm of the feed rate over that of depth, so that all residuals are of depth.
 */
final class FamilyRows implements CurvedRows {

    private static final Evidence UNDER_WAY = Evidence.of(EvidenceGrade.ASSUMED, Source.of("a fit under way"));

    private static final double STEP = 1e-4;

    private final Family family;
    private final List<TestCut> cuts;
    private final List<Start> starts;
    private final int[] places;
    private final int plates;

    FamilyRows(Family family, List<TestCut> cuts, int[] places) {
        this.family = family;
        this.cuts = cuts;
        this.starts = family.starts(cuts);
        this.places = places.length == 0 ? new int[cuts.size()] : places;
        this.plates = places.length == 0 ? 0 : 1 + Arrays.stream(places).max().orElse(-1);
    }

    List<String> names() {
        return starts.stream().map(Start::name).toList();
    }

    double[] parameters(double[] variables) {
        double[] parameters = new double[starts.size()];
        Arrays.setAll(parameters, j -> starts.get(j).isPositive() ? Math.exp(variables[j]) : variables[j]);
        return parameters;
    }

    double[] variables(double[] parameters) {
        double[] variables = new double[starts.size()];
        Arrays.setAll(variables, j -> starts.get(j).isPositive() ? Math.log(parameters[j]) : parameters[j]);
        return variables;
    }

    /** Variables without a look at the cuts. */
    double[] blindStart() {
        return variables(starts.stream().mapToDouble(Start::value).toArray());
    }

    /** Variables by least squares on the middle of what each cut holds. */
    double[] start() {
        double[] observed = new double[cuts.size()];
        for (int i = 0; i < observed.length; i++) {
            TestCut cut = cuts.get(i);
            observed[i] = cut.test() == TestCut.Test.DEPTH
                    ? (Math.log(cut.thicknessSi()) + Math.log(cut.upperThicknessSi())) / 2
                    : (Math.log(cut.feedSi()) + Math.log(cut.failedFeedSi())) / 2;
        }
        Fit fit = family.withParameters(LeastSquares.of(this::predicted), cuts).fit(observed);
        return variables(fit.values());
    }

    private double predicted(int i, double[] parameters) {
        if (!Arrays.stream(parameters).allMatch(p -> Double.isFinite(p) && p != 0)) {
            return Double.NaN;
        }
        try {
            FeedModel model = family.model(parameters, 0, UNDER_WAY);
            Material material = family.material(parameters, 0, UNDER_WAY);
            TestCut cut = cuts.get(i);
            return Math.log(
                    cut.test() == TestCut.Test.DEPTH
                            ? model.separationDepthSi(cut.jet(), material, cut.feedSi())
                            : model.feedSi(cut.jet(), material, cut.thicknessSi(), cut.index()));
        } catch (DomainException e) {
            // the search tries values that no model accepts
            return Double.NaN;
        }
    }

    @Override
    public CutRows at(double[] variables) {
        int n = cuts.size();
        double[] lo = new double[n];
        double[] up = new double[n];
        double[] delta = new double[n];
        double[] parameters = parameters(variables);
        try {
            FeedModel model = family.model(parameters, 0, UNDER_WAY);
            Material material = family.material(parameters, 0, UNDER_WAY);
            for (int i = 0; i < n; i++) {
                TestCut cut = cuts.get(i);
                double[] ends = ends(cut, model, material);
                lo[i] = ends[0];
                up[i] = ends[1];
                delta[i] = cut.test() == TestCut.Test.DEPTH
                        ? AbilityRows.delta(cut, 1)
                        : AbilityRows.delta(cut, slope(cut, model, material));
            }
        } catch (DomainException e) {
            Arrays.fill(lo, Double.NaN);
        }
        return new CutRows(lo, up, new double[n][0], delta, places, plates);
    }

    private static double[] ends(TestCut cut, FeedModel model, Material material) {
        if (cut.test() == TestCut.Test.DEPTH) {
            double depth = model.separationDepthSi(cut.jet(), material, cut.feedSi());
            double lower = Math.log(cut.thicknessSi() / depth);
            return new double[] {lower, cut.isMeasured() ? lower : Math.log(cut.upperThicknessSi() / depth)};
        }
        double slope = slope(cut, model, material);
        double lower = residual(cut, model, material, cut.index(), cut.feedSi()) / slope;
        if (cut.test() == TestCut.Test.TRIAL) {
            return cut.isSeparated()
                    ? new double[] {lower, Double.POSITIVE_INFINITY}
                    : new double[] {Double.NEGATIVE_INFINITY, lower};
        }
        return new double[] {
            lower,
            cut.isMeasured() ? lower : residual(cut, model, material, cut.upperIndex(), cut.failedFeedSi()) / slope
        };
    }

    private static double residual(TestCut cut, FeedModel model, Material material, double index, double feed) {
        return Math.log(feed / model.feedSi(cut.jet(), material, cut.thicknessSi(), index));
    }

    /** Fall of the logarithm of the feed rate with that of depth. */
    static double slope(TestCut cut, FeedModel model, Material material) {
        double h = cut.thicknessSi();
        double thin = model.feedSi(cut.jet(), material, h * (1 - STEP), cut.index());
        double thick = model.feedSi(cut.jet(), material, h * (1 + STEP), cut.index());
        return Math.log(thin / thick) / Math.log((1 + STEP) / (1 - STEP));
    }

    @Override
    public double logJacobian(double[] variables) {
        double[] parameters = parameters(variables);
        FeedModel model = family.model(parameters, 0, UNDER_WAY);
        Material material = family.material(parameters, 0, UNDER_WAY);
        double sum = 0;
        for (TestCut cut : cuts) {
            if (cut.isMeasured() && cut.test() != TestCut.Test.DEPTH) {
                sum -= Math.log(slope(cut, model, material));
            }
        }
        return sum;
    }
}
