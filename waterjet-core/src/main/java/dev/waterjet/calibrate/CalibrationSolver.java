package dev.waterjet.calibrate;

import dev.waterjet.feed.FeedExponent;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/** Chooses the method for the cuts at hand, and refuses where they cannot tell. */
final class CalibrationSolver {

    /** A scatter below what any shop has. */
    private static final double TINY = 1e-4;

    private final CalibrationSpec spec;
    private final List<TestCut> cuts;
    private final int[] places;

    CalibrationSolver(CalibrationSpec spec, List<TestCut> cuts) {
        this.spec = spec;
        this.cuts = cuts;
        int[] all = spec.places(cuts);
        // without a prior the spread between plates cannot be found from one of them
        this.places = spec.prior() == null && (all.length == 0 || AbilityRows.isOnePlate(all)) ? new int[0] : all;
    }

    static boolean isLinear(CalibrationSpec spec) {
        return spec.family() instanceof MachinabilityFamily family
                && !family.freed().contains(FeedExponent.FEED);
    }

    Solution solve() {
        requireOneMaterial();
        if (isLinear(spec)) {
            MachinabilityFamily family = (MachinabilityFamily) spec.family();
            CutRows plain = AbilityRows.of(family.published(), family.freed(), cuts);
            return linear(places.length == 0 ? plain : plain.withPlates(places), family);
        }
        return curved();
    }

    private void requireOneMaterial() {
        List<String> materials = cuts.stream()
                .map(cut -> cut.attributes().getOrDefault("material", ""))
                .filter(name -> !name.isBlank())
                .distinct()
                .toList();
        if (materials.size() > 1) {
            throw new NoSolutionException(Message.of(
                            "several-materials",
                            "the cuts are of {materials}; fit each by itself, or the shop as a whole")
                    .with("materials", String.join(", ", materials)));
        }
    }

    private Solution linear(CutRows rows, MachinabilityFamily family) {
        if (spec.tailFreedom() > 0) {
            return robust(rows, family);
        }
        if (spec.prior() != null) {
            return isClosed(rows, spec.prior())
                    ? new StudentSolution(
                            rows,
                            StudentPosterior.of(
                                    rows,
                                    spec.prior().scatterFreedom(),
                                    spec.prior().scatter()))
                    : PosteriorSolution.of(rows, prior(family, spec.prior()));
        }
        FitRefusals.requireRank(rows, family.starts(cuts));
        if (rows.isExact() && (!rows.hasDelta() || FitRefusals.isWithoutScatter(rows))) {
            return new LinearSolution(VarianceFit.of(rows.withDelta(new double[rows.size()]), true));
        }
        FitRefusals.requireScatter(rows);
        CensoredFit fit = CensoredFit.of(rows, ErrorLaw.NORMAL);
        if (!fit.isDetermined() || isMetWithoutScatter(rows, fit)) {
            throw FitRefusals.scatter(rows);
        }
        double freedom = rows.plates() > 0 ? Math.max(1, rows.plates() - 1) : Math.max(1, rows.size() - rows.width());
        Optional<Supplier<PosteriorSolution>> flat = rows.plates() > 0
                ? Optional.empty()
                : Optional.of(new Once<>(() -> PosteriorSolution.of(rows, flat(rows))));
        return new ProfileSolution(CutFit.Method.PROFILE_LIKELIHOOD, fit, flat, freedom);
    }

    private Solution robust(CutRows rows, MachinabilityFamily family) {
        FitRefusals.requireIndependent(rows);
        FitRefusals.requireRank(rows, family.starts(cuts));
        if (spec.tailFreedom() == CalibrationSpec.HIGH_BREAKDOWN) {
            FitRefusals.requireReserve(rows, 3);
            return BreakdownSolution.of(rows);
        }
        FitRefusals.requireReserve(rows, 2);
        FitRefusals.requireScatter(rows);
        if (!rows.isExact() && isMetWithoutScatter(rows, CensoredFit.of(rows, ErrorLaw.NORMAL))) {
            throw FitRefusals.scatter(rows);
        }
        return HeavyTails.solve(rows, spec.tailFreedom(), cuts);
    }

    /**
     * Whether coefficients without any scatter meet all intervals and trials, about as well as the best fit. Then the cuts bound
     * the scatter from above only, and of the coefficients they leave a region in which the likelihood is flat.
     */
    private static boolean isMetWithoutScatter(CutRows rows, CensoredFit fit) {
        if (rows.plates() > 0 || IntStream.range(0, rows.size()).anyMatch(rows::isExact)) {
            return false;
        }
        double[] beta = PosteriorGrid.given(rows, flat(rows), TINY).mean();
        return new MarginalLikelihood(rows).value(beta, TINY, 0) > fit.logLikelihood() - PosteriorGrid.DEPTH;
    }

    /** Whether the posterior is Student's: measured values, and no prior but that of the scatter. */
    private static boolean isClosed(CutRows rows, CutPrior prior) {
        return prior.isOfScatterAlone()
                && rows.isExact()
                && !rows.hasDelta()
                && rows.plates() == 0
                && rows.width() == 1;
    }

    /** Without precision the mean is only where the search starts. */
    private static GaussianPrior flat(CutRows rows) {
        int width = rows.width();
        return new GaussianPrior(CensoredFit.middle(rows), new double[width][width], 0, 0, 0, 0);
    }

    static GaussianPrior prior(MachinabilityFamily family, CutPrior prior) {
        int width = 1 + family.freed().size();
        double[] mean = new double[width];
        double[][] precision = new double[width][width];
        mean[0] = Math.log(family.start().machinabilitySi());
        precision[0][0] = prior.isOfScatterAlone() ? 0 : 1 / (prior.machinability() * prior.machinability());
        // of an exponent the coefficient is the change from the published one, whose prior mean is 0
        for (int j = 1; j < width; j++) {
            precision[j][j] = 1 / (CutPrior.EXPONENT * CutPrior.EXPONENT);
        }
        return new GaussianPrior(
                mean, precision, prior.scatterFreedom(), prior.scatter(), prior.plateFreedom(), prior.plateSpread());
    }

    private Solution curved() {
        if (spec.tailFreedom() > 0) {
            throw new NoSolutionException(Message.of(
                    "heavy-tails-not-possible",
                    "a heavy-tailed scatter requires the machinability model with a fixed feed exponent"));
        }
        FamilyRows rows = new FamilyRows(spec.family(), cuts, places);
        double[] start = start(rows);
        double[] sizes = new double[start.length];
        Arrays.fill(sizes, 0.05);
        CurvedFit fit = spec.prior() == null && rows.at(start).isExact() && FitRefusals.isWithoutScatter(rows.at(start))
                ? CurvedFit.withoutScatter(rows, start)
                : CurvedFit.of(rows, start, sizes, places.length > 0, logPrior(rows));
        if (!fit.maximum().isRegular()) {
            throw FitRefusals.undetermined(rows.names(), cuts.size());
        }
        double[] best = fit.parameters();
        double logLikelihood = new MarginalLikelihood(rows.at(best)).value(new double[0], fit.sigma(), fit.tau())
                + rows.logJacobian(best);
        double freedom = Math.max(
                1,
                spec.prior() != null
                        ? cuts.size() + spec.prior().scatterFreedom() - 1
                        : places.length > 0 ? rows.at(best).plates() - 1 : cuts.size() - start.length);
        CutRows found = rows.at(best);
        boolean isPlain = found.isExact() && !found.hasDelta();
        return new CurvedSolution(fit, logLikelihood, cuts.size(), freedom, spec.prior() != null, isPlain);
    }

    private double[] start(FamilyRows rows) {
        try {
            return rows.start();
        } catch (NoSolutionException e) {
            if (spec.prior() == null) {
                throw e;
            }
            // the prior determines what too few cuts do not
            return rows.blindStart();
        }
    }

    private ToDoubleFunction<double[]> logPrior(FamilyRows rows) {
        CutPrior prior = spec.prior();
        if (prior == null) {
            return at -> 0;
        }
        double[] center = rows.blindStart();
        List<String> names = rows.names();
        double first = prior.machinability();
        return at -> {
            double sum = -square((at[0] - center[0]) / first) / 2;
            for (int j = 1; j < center.length; j++) {
                sum -= names.get(j).equals(FeedExponent.FEED.label())
                        ? square(Math.log(at[j] / center[j]) / CutPrior.LOG_FEED_EXPONENT) / 2
                        : square((at[j] - center[j]) / CutPrior.EXPONENT) / 2;
            }
            GaussianPrior deviations = new GaussianPrior(
                    new double[0],
                    new double[0][0],
                    prior.scatterFreedom(),
                    prior.scatter(),
                    prior.plateFreedom(),
                    prior.plateSpread());
            boolean hasPlates = at.length > center.length + 1;
            return sum + deviations.ofDeviations(at[center.length], hasPlates ? at[center.length + 1] : 0, hasPlates);
        };
    }

    private static double square(double x) {
        return x * x;
    }
}
