package dev.waterjet.calibrate;

import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.material.Material;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Posterior of the factor of a shop and of the deviations of its materials from the catalogue, on the scale of the logarithm of
 * machinability.
 *
 * @param catalogue the materials that were cut
 * @param rows settings of the rows
 * @param components the posterior
 */
record ShopPosterior(List<Material> catalogue, ShopRows rows, List<PosteriorGrid.Component> components) {

    static ShopPosterior of(
            MachinabilityFeed model, CutPrior prior, List<Material> catalogue, List<TestCut> cuts, List<String> ids) {
        int[] materials = ids.stream().mapToInt(id -> place(catalogue, id)).toArray();
        double[] offsets = IntStream.of(materials)
                .mapToDouble(m -> Math.log(catalogue.get(m).machinabilitySi()))
                .toArray();
        double[] spreads = catalogue.stream()
                .mapToDouble(material -> CutPrior.catalogue(material).material())
                .toArray();
        CutRows plain = AbilityRows.of(model, List.of(), cuts).shifted(offsets);
        int[] plates = plates(cuts, ids);
        ShopRows rows =
                ShopRows.of(plates.length == 0 ? plain : plain.withPlates(plates), materials, spreads, prior.shop());
        return new ShopPosterior(catalogue, rows, PosteriorGrid.of(rows.rows(), rows.prior(prior)));
    }

    private static int place(List<Material> catalogue, String id) {
        return IntStream.range(0, catalogue.size())
                .filter(m -> catalogue.get(m).id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    /** Plates by material; none if no two cuts share one. */
    private static int[] plates(List<TestCut> cuts, List<String> ids) {
        List<String> names = IntStream.range(0, cuts.size())
                .mapToObj(i -> {
                    String plate = cuts.get(i).attributes().getOrDefault(TestCut.PLATE, "");
                    return plate.isBlank() ? "" : plate + "\n" + ids.get(i);
                })
                .toList();
        List<String> named = names.stream().filter(name -> !name.isEmpty()).toList();
        return named.stream().distinct().count() < named.size() ? AbilityRows.places(names) : new int[0];
    }

    /** Standard deviation of a cut on a new plate. */
    double cutDeviation() {
        return Math.exp(components.stream()
                .mapToDouble(c -> c.weight() * Math.log(Math.hypot(c.sigma(), c.tau())))
                .sum());
    }

    /** Logarithm of the factor of the shop: location, scale and degrees of freedom. */
    double[] factor() {
        return aboutMean(PosteriorGrid.mixture(components, rows.factor(), c -> 0));
    }

    /** With the mean as location, as the parameters of other fits have it. */
    private static double[] aboutMean(Mixture mixture) {
        double[] student = mixture.student();
        student[0] = mixture.mean();
        return student;
    }

    /** Logarithm of the machinability of a material. */
    double[] machinability(Material material) {
        return of(material, c -> 0, ShopPosterior::aboutMean);
    }

    /** The same of one more cut on a new plate. */
    double[] nextCut(Material material) {
        return of(material, c -> c.sigma() * c.sigma() + c.tau() * c.tau(), Mixture::student);
    }

    private double[] of(
            Material material,
            ToDoubleFunction<PosteriorGrid.Component> variance,
            Function<Mixture, double[]> summary) {
        for (int m = 0; m < catalogue.size(); m++) {
            if (catalogue.get(m).id().equals(material.id())) {
                return shifted(
                        summary.apply(PosteriorGrid.mixture(components, rows.material(m), variance)), catalogue.get(m));
            }
        }
        double spread = CutPrior.catalogue(material).material();
        return shifted(
                summary.apply(PosteriorGrid.mixture(
                        components, rows.factor(), c -> spread * spread + variance.applyAsDouble(c))),
                material);
    }

    private static double[] shifted(double[] student, Material material) {
        student[0] += Math.log(material.machinabilitySi());
        return student;
    }
}
