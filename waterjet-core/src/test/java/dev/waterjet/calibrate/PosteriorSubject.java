package dev.waterjet.calibrate;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.TDistribution;

/** Reference rows of fits with a prior; the numbers of the prior are in the call of the row. */
final class PosteriorSubject {

    /** Machinabilities of the catalogue with which the shop's data were made: Zeng, Kim, Wallace (1992), from memory. */
    private static final Map<String, Double> CATALOGUE =
            Map.of("mild-steel", 87.6, "aluminium", 213.0, "titanium", 115.0, "granite", 322.0);

    private static final List<String> ORDER = List.of("mild-steel", "aluminium", "titanium", "granite");

    /** Posteriors of which several rows give a number; the key holds all that makes one. */
    private static final Map<String, List<PosteriorGrid.Component>> KNOWN = new ConcurrentHashMap<>();

    private PosteriorSubject() {}

    static double compute(CutStatisticsRow row) {
        if (row.mentions("conjugate")) {
            return conjugate(row);
        }
        if (row.hasColumn("material")) {
            return shop(row);
        }
        boolean hasPlates = row.call().contains("tau^2");
        CutRows rows = selected(row, hasPlates ? row.plates() : row.rows(false));
        double mean = Math.log(row.number("N\\(ln ([\\d.]+)"));
        double deviation = row.number("N\\(ln [\\d.]+,([\\d.]+)");
        double freedom = row.number("sigma\\^2[^~]*~([\\d.]+)\\*");
        double scatter = row.number("~[\\d.]+\\*([\\d.]+)\\^2");
        GaussianPrior prior = new GaussianPrior(
                new double[] {mean},
                new double[][] {{1 / (deviation * deviation)}},
                freedom,
                scatter,
                freedom,
                scatter);
        String key = row.dataset() + "|" + row.call() + "|" + row.quantity().replaceFirst("^(.*):.*", "$1");
        return read(row, KNOWN.computeIfAbsent(key, k -> PosteriorGrid.of(rows, prior)), new double[] {1});
    }

    private static CutRows selected(CutStatisticsRow row, CutRows rows) {
        if (row.mentions("first 3 trials of the first 3 plates")) {
            int[] seen = new int[rows.plates()];
            return rows.only(IntStream.range(0, rows.size())
                    .filter(i -> rows.plate()[i] < 3 && seen[rows.plate()[i]]++ < 3)
                    .toArray());
        }
        double last = row.number("rows 1-(\\d+)", row.number("n=(\\d+)", rows.size()));
        return rows.only(IntStream.range(0, (int) last).toArray());
    }

    private static double read(CutStatisticsRow row, List<PosteriorGrid.Component> components, double[] at) {
        Mixture mean = PosteriorGrid.mixture(components, at, component -> 0);
        Mixture next = PosteriorGrid.mixture(components, at, c -> c.sigma() * c.sigma() + c.tau() * c.tau());
        ToDoubleFunction<PosteriorGrid.Component> logSigma = c -> c.weight() * Math.log(c.sigma());
        return row.mentions("posterior mean ln sigma")
                ? components.stream().mapToDouble(logSigma).sum()
                : row.mentions("posterior mean")
                        ? mean.mean()
                        : row.mentions("posterior sd")
                                ? mean.deviation()
                                : next.quantile(row.number("predictive ([\\d.]+) %") / 100);
    }

    private static double conjugate(CutStatisticsRow row) {
        CutRows all = row.rows(false);
        CutRows first =
                all.only(IntStream.range(0, (int) row.number("n=(\\d+)")).toArray());
        StudentPosterior posterior = StudentPosterior.of(
                first,
                row.number("nu0=([\\d.]+)"),
                row.number("s0=([\\d.]+)"),
                Math.log(row.number("m0=ln ([\\d.]+)")),
                row.number("k0=([\\d.]+)"));
        double[] one = {1};
        double scale = posterior.scale(one, 1);
        return switch (row.quantity().replaceFirst("^.*: ", "")) {
            case "mean" -> posterior.beta()[0];
            case "df" -> posterior.freedom();
            case "predictive scale" -> scale;
            default ->
                posterior.beta()[0]
                        + scale
                                * new TDistribution(posterior.freedom())
                                        .inverseCumulativeProbability(row.number("predictive ([\\d.]+) %") / 100);
        };
    }

    private static double shop(CutStatisticsRow row) {
        double common = row.number("shop sd ([\\d.]+)", 0.13);
        String listed = row.call().replaceFirst("(?s).*material sd \\(([^)]*)\\).*", "$1");
        double[] spreads = listed.contains(",") && listed.matches("[\\d.,]+")
                ? Arrays.stream(listed.split(",", -1))
                        .mapToDouble(Double::parseDouble)
                        .toArray()
                : new double[] {0.05, 0.08, 0.12, 0.25};
        List<String> materials = row.column("material");
        double[] offsets = materials.stream().mapToDouble(m -> ofCatalogue(m)).toArray();
        ShopRows shop = ShopRows.of(
                row.rows(false).shifted(offsets),
                materials.stream().mapToInt(ORDER::indexOf).toArray(),
                spreads,
                common);
        boolean isFactor = row.mentions("shop factor");
        int place = IntStream.range(0, ORDER.size())
                .filter(j -> row.mentions(ORDER.get(j)))
                .findFirst()
                .orElse(0);
        double[] at = isFactor ? shop.factor() : shop.material(place);
        double offset = isFactor ? 0 : ofCatalogue(ORDER.get(place));
        if (row.mentions("sigma unknown")) {
            return offset + read(row, PosteriorGrid.of(shop.rows(), shop.prior(4, 0.05)), at);
        }
        double sigma = row.number("sigma=([\\d.]+)", 0.05);
        GaussianPrior prior = shop.prior(0, 0);
        return row.mentions("log marginal")
                ? PosteriorGrid.logMarginal(shop.rows(), prior, sigma)
                : row.mentions("mean")
                        ? offset
                                + Matrices.dot(
                                        at,
                                        PosteriorGrid.given(shop.rows(), prior, sigma)
                                                .mean())
                        : Math.sqrt(Matrices.square(
                                at,
                                PosteriorGrid.given(shop.rows(), prior, sigma).covariance()));
    }

    private static double ofCatalogue(String material) {
        return Math.log(Objects.requireNonNull(CATALOGUE.get(material)));
    }
}
