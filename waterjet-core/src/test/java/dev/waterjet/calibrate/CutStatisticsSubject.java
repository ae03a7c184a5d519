package dev.waterjet.calibrate;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import java.util.Arrays;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/** Reference rows of the statistics of test cuts, computed by the library from the words of the row. */
public final class CutStatisticsSubject {

    private static final double PRESSURE_EXPONENT = 1.594;

    private CutStatisticsSubject() {}

    /**
     * Computes a row.
     *
     * @param row the row
     * @return the value; empty if the library does not compute this quantity
     */
    public static OptionalDouble compute(CutStatisticsRow row) {
        String set = row.dataset().replaceFirst("^[^_]*_", "").replace(".csv", "");
        double value = row.mentions("conjugate")
                        || row.mentions("prior")
                        || row.mentions("posterior")
                        || row.mentions("sigma unknown")
                        || row.mentions("shop factor")
                        || row.mentions("log marginal")
                ? row.mentions("design") ? ComparisonSubject.compute(row) : PosteriorSubject.compute(row)
                : row.mentions("design") || set.equals("rivals") || row.mentions("ELPD")
                        ? ComparisonSubject.compute(row)
                        : switch (set) {
                            case "none" -> withoutData(row);
                            case "exact", "exact_mistyped" -> exact(row);
                            case "censored" -> censored(row);
                            case "plates", "plates_balanced" -> plates(row);
                            case "trials_plates" -> trials(row);
                            case "mixed" -> ComparisonSubject.mixed(row);
                            case "outliers" -> outliers(row);
                            case "lines" -> ComparisonSubject.lines(row);
                            case "lag" -> ComparisonSubject.lag(row);
                            default -> Double.NaN;
                        };
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private static double withoutData(CutStatisticsRow row) {
        if (row.mentions("coverage of z")) {
            double freedom = row.number("n=(\\d+)") - row.number("(\\d) parameter");
            Estimate<?> one = Estimate.of(Kind.LENGTH, 0, 1).withDegreesOfFreedom(freedom);
            double normal = Estimate.of(Kind.LENGTH, 0, 1).upper(0.95, dev.waterjet.measure.Units.METRE);
            return 1 - 2 * ofLength(one).probabilityAtMost(Kind.LENGTH.of(-normal));
        }
        if (row.mentions("log(Phi(")) {
            return NormalTails.logBetween(
                    row.number("-Phi\\((-?[\\d.]+)\\)"), row.number("log\\(Phi\\((-?[\\d.]+)\\)"));
        }
        return row.mentions("log Phi") ? NormalTails.logBelow(row.number("Phi\\((-?[\\d.]+)\\)")) : Double.NaN;
    }

    @SuppressWarnings("unchecked")
    private static Estimate<javax.measure.quantity.Length> ofLength(Estimate<?> estimate) {
        return (Estimate<javax.measure.quantity.Length>) estimate;
    }

    private static double exact(CutStatisticsRow row) {
        boolean hasPressure = row.quantity().startsWith("pressure");
        CutRows rows = row.rows(hasPressure);
        int n = rows.size();
        if (row.mentions("y[")) {
            return rows.lo()[row.index()];
        }
        VarianceFit fit = VarianceFit.of(rows, true);
        double logLikelihood = VarianceFit.of(rows, false).logLikelihood();
        int freedom = n - rows.width();
        if (row.mentions("new cut")) {
            double pressure = row.number("at (\\d+) MPa", CutStatisticsRow.REFERENCE_PRESSURE_MPA);
            double[] at = hasPressure
                    ? new double[] {1, Math.log(pressure / CutStatisticsRow.REFERENCE_PRESSURE_MPA)}
                    : new double[] {1};
            double half =
                    new TDistribution(freedom).inverseCumulativeProbability(0.975) * Math.sqrt(fit.variance(at, 0, 1));
            return Matrices.dot(at, fit.beta()) + (row.mentions("lower") ? -half : half);
        }
        Influence influence = Influence.of(rows);
        String name = row.quantity().replaceFirst("^[a-z]+: ", "").replaceFirst("\\[\\d+\\]", "");
        return switch (name) {
            case "ln N", "ln N at 345 MPa" -> fit.beta()[0];
            case "exponent" -> PRESSURE_EXPONENT + fit.beta()[1];
            case "se(ln N)" -> Math.sqrt(fit.covariance()[0][0]);
            case "se(exponent)" -> Math.sqrt(fit.covariance()[1][1]);
            case "sigma" -> fit.sigma();
            case "logLik of y (ML)" -> logLikelihood;
            case "AICc" -> Scores.aicc(logLikelihood, rows.width() + 1, n);
            case "leverage" -> influence.leverages()[row.index()];
            case "cook" -> influence.cook()[row.index()];
            case "rstudent" -> influence.deleted()[row.index()];
            case "Bonferroni p of largest" ->
                Influence.outlierProbability(
                        Arrays.stream(influence.deleted()).map(Math::abs).max().orElseThrow(), n, freedom - 1);
            default -> Double.NaN;
        };
    }

    private static double censored(CutStatisticsRow row) {
        boolean hasPressure = row.quantity().startsWith("pressure");
        CutRows rows = row.rows(hasPressure);
        if (row.mentions("counts")) {
            return counted(row, rows);
        }
        CensoredFit fit = CensoredFit.of(
                rows, row.mentions("Student") ? ErrorLaw.student(row.number("Student\\((\\d+)\\)")) : ErrorLaw.NORMAL);
        if (row.mentions("profile")) {
            int freedom = rows.size() - rows.width();
            double t = new TDistribution(freedom).inverseCumulativeProbability(0.975);
            double drop = row.mentions("chi2")
                    ? new ChiSquaredDistribution(1).inverseCumulativeProbability(0.95) / 2
                    : rows.size() / 2.0 * Math.log1p(t * t / freedom);
            return fit.profileEnd(0, row.mentions("lower") ? -1 : 1, drop);
        }
        double[][] covariance = fit.maximum().covariance();
        String name = row.quantity().replaceFirst("^.*: ", "").replaceFirst(" by dist.*", "");
        return switch (name) {
            case "ln N" -> fit.beta()[0];
            case "exponent" -> PRESSURE_EXPONENT + fit.beta()[1];
            case "se(ln N)" -> Math.sqrt(covariance[0][0]);
            case "se(exponent)" -> Math.sqrt(covariance[1][1]);
            case "se(ln sigma)" -> Math.sqrt(covariance[rows.width()][rows.width()]);
            case "sigma (ML)", "sigma", "scale" -> fit.sigma();
            case "logLik of y (ML)", "logLik of y" -> fit.logLikelihood();
            default -> Double.NaN;
        };
    }

    private static double counted(CutStatisticsRow row, CutRows rows) {
        int count = 0;
        for (int i = 0; i < rows.size(); i++) {
            boolean isOpen = Double.isInfinite(rows.up()[i]);
            boolean isShut = Double.isInfinite(rows.lo()[i]);
            boolean isInterval = !rows.isExact(i) && !isOpen && !isShut;
            count += (row.mentions("right") && isOpen)
                            || (row.mentions("left") && isShut)
                            || (row.mentions("exact") && rows.isExact(i))
                            || (row.mentions("interval") && isInterval)
                    ? 1
                    : 0;
        }
        return count;
    }

    private static double plates(CutStatisticsRow row) {
        CutRows rows = row.plates();
        double[] one = {1};
        VarianceFit fit = VarianceFit.of(rows, !row.quantity().startsWith("ML"));
        if (row.mentions("new cut on a new plate")) {
            double freedom = fit.degreesOfFreedom(one, 1, 1);
            double deviation = Math.sqrt(fit.variance(one, 1, 1));
            double half = new TDistribution(freedom).inverseCumulativeProbability(0.975) * deviation;
            return row.mentions("Satterthwaite")
                    ? freedom
                    : row.mentions("sd") ? deviation : fit.beta()[0] + (row.mentions("lower") ? -half : half);
        }
        if (row.mentions("Kenward-Roger")) {
            KenwardRoger adjusted = KenwardRoger.of(fit);
            return row.mentions("df") ? adjusted.degreesOfFreedom(one) : Math.sqrt(adjusted.covariance()[0][0]);
        }
        if (row.mentions("ANOVA")) {
            int plates = rows.plates();
            double[][] byPlate = new double[rows.size()][plates];
            for (int i = 0; i < byPlate.length; i++) {
                byPlate[i][rows.plate()[i]] = 1;
            }
            VarianceFit within = VarianceFit.of(CutRows.exact(rows.lo(), byPlate), true);
            VarianceFit whole = VarianceFit.of(row.rows(false), true);
            double square = within.sigma() * within.sigma();
            double all = whole.sigma() * whole.sigma() * (rows.size() - 1);
            return row.mentions("within") ? square : (all - square * (rows.size() - plates)) / (plates - 1);
        }
        if (row.mentions("plate means")) {
            double half = new TDistribution(rows.plates() - 1).inverseCumulativeProbability(0.975)
                    * Math.sqrt(fit.covariance()[0][0]);
            return fit.beta()[0] + (row.mentions("lower") ? -half : half);
        }
        if (row.mentions("BLUP")) {
            // in the order of the alphabet
            String name =
                    row.column("plate").stream().distinct().sorted().toList().get(row.index());
            int place = row.places("plate")[row.column("plate").indexOf(name)];
            return new MarginalLikelihood(rows).effects(fit.beta(), fit.sigma(), fit.tau())[place][0];
        }
        return switch (row.quantity().replaceFirst("^.*: ", "").replace(", direct", "")) {
            case "ln N" -> fit.beta()[0];
            case "se(ln N)" -> Math.sqrt(fit.covariance()[0][0]);
            case "plate sd" -> fit.tau();
            case "within-plate sd" -> fit.sigma();
            case "logLik", "logLik of y" -> fit.logLikelihood();
            case "Satterthwaite df of ln N" -> fit.degreesOfFreedom(one, 0, 0);
            case "se(ln N) ignoring plates" ->
                Math.sqrt(VarianceFit.of(row.rows(false), true).covariance()[0][0]);
            default -> Double.NaN;
        };
    }

    private static double trials(CutStatisticsRow row) {
        CutRows rows = row.mentions("no plates") ? row.rows(false) : row.plates();
        CensoredFit fit = CensoredFit.of(rows, ErrorLaw.NORMAL);
        return switch (row.quantity().replaceFirst("^.*: ", "").replace(" by glmer", "")) {
            case "ln N" -> fit.beta()[0];
            case "sigma" -> fit.sigma();
            case "plate sd" -> fit.tau();
            case "logLik" -> fit.logLikelihood();
            case "se(ln N)" -> Math.sqrt(fit.maximum().covariance()[0][0]);
            default -> Double.NaN;
        };
    }

    private static double coefficient(CutStatisticsRow row, double[] beta) {
        return row.mentions("exponent") ? PRESSURE_EXPONENT + beta[1] : row.mentions("ln N") ? beta[0] : Double.NaN;
    }

    private static double outliers(CutStatisticsRow row) {
        CutRows rows = row.rows(row.mentions("pressure"));
        if (row.mentions("least squares")) {
            VarianceFit fit = VarianceFit.of(rows, true);
            return row.mentions("sigma") ? fit.sigma() : fit.beta()[0];
        }
        if (row.mentions("rlm")) {
            return coefficient(row, new RobustRows(rows).ofHuber());
        }
        if (row.mentions("lmrob")) {
            HighBreakdown fit = HighBreakdown.of(rows);
            return row.mentions("scale") ? fit.scale() : coefficient(row, fit.beta());
        }
        if (!row.mentions("Student")) {
            return Double.NaN;
        }
        StudentFit fit = row.mentions("estimated")
                ? StudentFit.withFreedom(rows)
                : StudentFit.of(rows, row.number("Student\\((\\d+)\\)"));
        double[][] covariance = fit.fit().maximum().covariance();
        return switch (row.quantity().replaceFirst("^.*: ", "").replaceFirst("\\[\\d+\\]", "")) {
            case "nu" -> fit.freedom();
            case "ln N" -> fit.fit().beta()[0];
            case "exponent" -> PRESSURE_EXPONENT + fit.fit().beta()[1];
            case "se(exponent)" -> Math.sqrt(covariance[1][1]);
            case "scale" -> fit.fit().sigma();
            case "logLik of y" -> fit.fit().logLikelihood();
            case "se(ln N), observed information" -> Math.sqrt(covariance[0][0]);
            case "weight (nu+1)/(nu+r^2)" -> fit.weights()[row.index()];
            default -> Double.NaN;
        };
    }
}
