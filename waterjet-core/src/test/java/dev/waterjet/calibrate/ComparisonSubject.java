package dev.waterjet.calibrate;

import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.TDistribution;

/** Reference rows of the comparison of models, of freed exponents, of designs and of readings along lines. */
final class ComparisonSubject {

    private ComparisonSubject() {}

    static double compute(CutStatisticsRow row) {
        if (row.mentions("design")) {
            return design(row);
        }
        if (row.mentions("leave-one-plate-out (joint normal")) {
            return Arrays.stream(Scores.leavePlatesOutOfMixed(row.plates())).sum();
        }
        if (row.hasColumn("plate")) {
            return rivals(row);
        }
        double[] pressure = Scores.leaveOneOut(row.rows(true));
        double[] intercept = Scores.leaveOneOut(row.rows(false));
        if (row.mentions("difference") || row.mentions("se of")) {
            return difference(row, pressure, intercept);
        }
        return Arrays.stream(row.quantity().startsWith("pressure") ? pressure : intercept)
                .sum();
    }

    private static double difference(CutStatisticsRow row, double[] one, double[] other) {
        double[] difference = ScoreDifference.of(one, other);
        return row.mentions("se of") ? difference[1] : difference[0];
    }

    private static CutRows rival(CutStatisticsRow row, String name) {
        double[] thickness =
                Arrays.stream(row.numbers("thickness_mm")).map(Math::log).toArray();
        double[] pressure =
                Arrays.stream(row.numbers("pressure_MPa")).map(Math::log).toArray();
        double[] feed =
                Arrays.stream(row.numbers("feed_mm_per_min")).map(Math::log).toArray();
        double[] offset = new double[feed.length];
        Arrays.setAll(offset, i -> switch (name) {
            case "machinability" -> 1.15 * (1.594 * pressure[i] - thickness[i]);
            case "energy" -> 1.5 * pressure[i] - thickness[i];
            default -> 0;
        });
        Arrays.setAll(feed, i -> feed[i] - offset[i]);
        CutRows rows =
                name.equals("free") ? CutStatisticsRow.rows(feed, thickness, pressure) : CutStatisticsRow.rows(feed);
        return rows.withPlates(row.places("plate"));
    }

    private static CutRows withoutPlates(CutRows rows) {
        return new CutRows(rows.lo(), rows.up(), rows.x(), rows.delta(), new int[rows.size()], 0);
    }

    private static double rivals(CutStatisticsRow row) {
        if (row.mentions("threshold")) {
            return threshold(row);
        }
        if (row.mentions(" - ")) {
            String other = row.quantity().replaceFirst("^.* - ", "");
            return difference(
                    row, Scores.leaveOneOut(rival(row, "machinability")), Scores.leaveOneOut(rival(row, other)));
        }
        CutRows rows = rival(row, row.quantity().replaceFirst(":.*", ""));
        double logLikelihood = VarianceFit.of(withoutPlates(rows), false).logLikelihood();
        return row.mentions("AICc")
                ? Scores.aicc(logLikelihood, rows.width() + 1, rows.size())
                : row.mentions("logLik")
                        ? logLikelihood
                        : Arrays.stream(row.mentions("plate") ? Scores.leavePlatesOut(rows) : Scores.leaveOneOut(rows))
                                .sum();
    }

    /** The threshold law by its own cuts, through the public calibration. */
    private static double threshold(CutStatisticsRow row) {
        List<TestCut> cuts = row.cuts();
        double[] thickness = row.numbers("thickness_mm");
        double[] pressure = row.numbers("pressure_MPa");
        double[] feed = row.numbers("feed_mm_per_min");
        CurvedRows curved = at -> {
            double[] residuals = new double[cuts.size()];
            Arrays.setAll(
                    residuals,
                    i -> Math.log(feed[i]) - at[0] - Math.log(pressure[i] - at[1]) + 1.15 * Math.log(thickness[i]));
            return CutRows.exact(residuals, new double[cuts.size()][0]);
        };
        double start = Math.log(feed[0]) - Math.log(pressure[0] - 50) + 1.15 * Math.log(thickness[0]);
        CurvedFit fit = CurvedFit.of(curved, new double[] {start, 50}, new double[] {0.1, 10}, false);
        double freedom = (double) cuts.size() / (cuts.size() - 2);
        return row.mentions("logLik")
                ? fit.maximum().value()
                : row.mentions("se(")
                        ? Math.sqrt(freedom * fit.maximum().covariance()[1][1])
                        : fit.maximum().at()[1];
    }

    private static double design(CutStatisticsRow row) {
        if (row.mentions("efficiency")) {
            return Gains.ladderEfficiency(row.number("step ([\\d.]+)"));
        }
        if (row.mentions("yes/no") || row.mentions("closed form")) {
            return Gains.afterTrial(
                    row.number("ln offset (-?[\\d.]+)", 0),
                    row.number("prior sd ([\\d.]+)", 0.08),
                    row.number("sigma ([\\d.]+)", 0.05));
        }
        if (row.hasColumn("plate")) {
            double tau = row.number("tau=([\\d.]+)", 0.07);
            double sigma = row.number("sigma=([\\d.]+)", 0.03);
            CutRows rows = row.plates();
            int plate = row.mentions("new plate")
                    ? rows.plates()
                    : row.mentions("more cut")
                            ? row.places("plate")[row.column("plate").indexOf("plate-C")]
                            : -1;
            return Gains.variance(rows, new double[] {1}, new double[] {1}, plate, sigma, tau);
        }
        double target = row.number("at (\\d+) MPa");
        double[] at = {1, Math.log(target / CutStatisticsRow.REFERENCE_PRESSURE_MPA)};
        double[][] unit = Matrices.inverse(new MarginalLikelihood(row.rows(true))
                .derivatives(new double[2], 1, 0)
                .information());
        if (row.mentions("now")) {
            return Matrices.square(at, unit);
        }
        double candidate = row.number("more cut at (\\d+) MPa");
        double[] more = {1, Math.log(candidate / CutStatisticsRow.REFERENCE_PRESSURE_MPA)};
        return Gains.variance(unit, at, more, 1);
    }

    static double mixed(CutStatisticsRow row) {
        if (row.mentions("fixed exponents")) {
            VarianceFit fit = VarianceFit.of(row.rows(false), row.mentions("REML"));
            return switch (row.quantity().replaceFirst("^.*: ", "")) {
                case "ln N" -> fit.beta()[0];
                case "se(ln N)" -> Math.sqrt(fit.covariance()[0][0]);
                case "sigma" -> fit.sigma();
                // this program's restricted likelihood keeps the determinant of X'X
                case "logLik of y" ->
                    fit.logLikelihood()
                            + (row.mentions("REML") ? Math.log(fit.rows().size()) / 2 : 0);
                default -> Double.NaN;
            };
        }
        List<FeedExponent> freed = row.mentions("feed and pressure")
                ? List.of(FeedExponent.PRESSURE, FeedExponent.FEED)
                : row.mentions("free feed") ? List.of(FeedExponent.FEED) : List.of();
        Material start = Material.of("start", 128, 0, MaterialClass.DUCTILE);
        CurvedFit fit = CurvedFit.of(
                new MachinabilityFamily(start, MachinabilityFeed.published(), freed), row.cuts(), new int[0], at -> 0);
        double[] at = fit.maximum().at();
        String name = row.quantity().replaceFirst("^.*: ", "");
        int place = name.contains("ln sigma")
                ? at.length - 1
                : name.contains("feed exponent") ? at.length - 2 : name.contains("pressure exponent") ? 1 : 0;
        return name.startsWith("logLik")
                ? fit.maximum().value()
                : name.startsWith("se(")
                        ? Math.sqrt(fit.maximum().covariance()[place][place])
                        : at[place] - (name.startsWith("pressure") ? 1.594 : 0);
    }

    static double lines(CutStatisticsRow row) {
        double[] feed = Arrays.stream(row.numbers("feed_mm_per_min"))
                .map(u -> Math.log(u / 120))
                .toArray();
        double[] roughness = Arrays.stream(row.numbers("Ra_um")).map(Math::log).toArray();
        CutRows rows = CutStatisticsRow.rows(roughness, feed, row.numbers("relative_depth"))
                .withPlates(row.places("line"));
        int place = row.mentions("feed exponent") ? 1 : row.mentions("depth slope") ? 2 : 0;
        if (row.mentions("cluster")) {
            return Lines.clusterErrors(rows, row.mentions("CR1"))[place];
        }
        VarianceFit fit = VarianceFit.of(row.mentions("least squares") ? withoutPlates(rows) : rows, true);
        double[] at = new double[3];
        at[place] = 1;
        return row.mentions("df ")
                ? fit.degreesOfFreedom(at, 0, 0)
                : row.mentions("se ")
                        ? Math.sqrt(fit.covariance()[place][place])
                        : row.mentions("line sd")
                                ? fit.tau()
                                : row.mentions("reading sd")
                                        ? fit.sigma()
                                        : row.mentions("logLik") ? fit.logLikelihood() : fit.beta()[place];
    }

    static double lag(CutStatisticsRow row) {
        List<String> lines = row.column("line").stream().distinct().toList();
        double[] logs =
                lines.stream().mapToDouble(line -> Math.log(slope(row, line))).toArray();
        if (row.mentions("k of line")) {
            return Math.exp(logs[row.index()]);
        }
        VarianceFit fit = VarianceFit.of(CutStatisticsRow.rows(logs), true);
        double half = new TDistribution(lines.size() - 1).inverseCumulativeProbability(0.975)
                * Math.sqrt(fit.variance(new double[] {1}, 0, 1));
        return row.mentions("pooled")
                ? pooled(row)
                : row.mentions("se(ln k)")
                        ? Math.sqrt(fit.covariance()[0][0])
                        : row.mentions("between-line")
                                ? fit.sigma()
                                : row.mentions("lower")
                                        ? Math.exp(fit.beta()[0] - half)
                                        : row.mentions("upper") ? Math.exp(fit.beta()[0] + half) : fit.beta()[0];
    }

    /** Relative standard error of one coefficient for the readings of all lines, as if they were independent. */
    private static double pooled(CutStatisticsRow row) {
        double[] depth = row.numbers("depth_mm");
        double[] separation = row.numbers("separation_depth_mm");
        double[][] drivers = IntStream.range(0, depth.length)
                .mapToObj(i -> new double[] {depth[i] * depth[i] / separation[i]})
                .toArray(double[][]::new);
        VarianceFit fit = VarianceFit.of(CutRows.exact(row.numbers("lag_mm"), drivers), true);
        return Math.sqrt(fit.covariance()[0][0]) / fit.beta()[0];
    }

    private static double slope(CutStatisticsRow row, String line) {
        List<String> names = row.column("line");
        int[] places = IntStream.range(0, names.size())
                .filter(i -> names.get(i).equals(line))
                .toArray();
        double[] depth = row.numbers("depth_mm");
        double[] separation = row.numbers("separation_depth_mm");
        double[] lag = row.numbers("lag_mm");
        return Lines.slope(
                Arrays.stream(places)
                        .mapToDouble(i -> depth[i] * depth[i] / separation[i])
                        .toArray(),
                Arrays.stream(places).mapToDouble(i -> lag[i]).toArray());
    }
}
