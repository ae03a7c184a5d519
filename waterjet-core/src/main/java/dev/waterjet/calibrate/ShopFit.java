package dev.waterjet.calibrate;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.ForwardingFeed;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.UnknownMaterialException;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import org.apache.commons.math3.exception.MathIllegalArgumentException;

/**
 * Fit of the machinability model to the cuts of several materials in one shop, itself a feed model.
 *
 * <p>The machinability of a material is that of the catalogue, times a factor common to all cuts of the shop, times a
 * deviation of the material: {@code ln N = ln N_catalogue + c + d}, with normal priors of {@code c} (shop) and {@code d}
 * (material). So the cuts of one material say something about the others, even about one that was never cut: it has the
 * factor of the shop and the spread of the catalogue.
 *
 * <pre>{@code
 * ShopFit shop = ShopFit.of(cuts, Materials.standard());       // the attribute "material" of each cut names its material
 * Estimate<Speed> feed = shop.feed(jet, Workpiece.of(granite, millimetres(20)), CutQuality.FINE);
 * }</pre>
 *
 * <p>Cuts with an attribute {@code plate} have a random effect of the plate; a plate is of one material.
 */
public final class ShopFit implements ForwardingFeed, Described {

    private static final long serialVersionUID = 1L;

    /** Attribute of a cut that names its material. */
    public static final String MATERIAL = "material";

    /** Checked content, and the serial form; all else follows from it. */
    private record Values(MachinabilityFeed published, CutPrior prior, List<Material> catalogue, List<TestCut> cuts)
            implements Serializable {

        Values {
            Objects.requireNonNull(published, "model");
            Objects.requireNonNull(prior, "prior");
            catalogue = List.copyOf(catalogue);
            cuts = List.copyOf(cuts);
            if (cuts.isEmpty()) {
                throw new NoSolutionException(Message.of("no-test-cuts", "there are no test cuts to fit"));
            }
            List<String> known = catalogue.stream().map(Material::id).toList();
            for (String id : ids(cuts)) {
                if (!known.contains(id)) {
                    throw new NoSolutionException(Message.of(
                                    "cut-of-unknown-material", "a cut is of {material}, which is not in the catalogue")
                            .withInput(MATERIAL, id));
                }
            }
        }

        private Object readResolve() {
            return new ShopFit(this);
        }
    }

    private final transient Values values;
    private final transient ShopPosterior posterior;
    private final transient MachinabilityFeed model;
    /** Materials with their number in this shop, which a plan needs at every point of a path. */
    private final transient Map<Material, Material> fitted = new ConcurrentHashMap<>();

    private ShopFit(Values values) {
        this.values = values;
        this.posterior = posterior(values);
        this.model = values.published
                .withModelUncertainty(feedExponent() * posterior.cutDeviation())
                .withEvidence(evidence(
                        "Fitted from " + values.cuts.size() + " cuts of " + values.catalogue.size() + " materials."));
    }

    private static ShopPosterior posterior(Values values) {
        try {
            ShopPosterior posterior =
                    ShopPosterior.of(values.published, values.prior, values.catalogue, values.cuts, ids(values.cuts));
            posterior.factor();
            values.catalogue.forEach(posterior::nextCut);
            return posterior;
        } catch (ArithmeticException | MathIllegalArgumentException e) {
            throw new DomainException(
                    Message.of("fit-failed", "the fit of these cuts failed"),
                    "number of test cuts",
                    values.cuts.size(),
                    0,
                    Units.ONE);
        }
    }

    /**
     * Fits the published machinability model, with the priors of {@link CutPrior#catalogue}.
     *
     * @param cuts the cuts, each of which names its material by the attribute {@link #MATERIAL}
     * @param materials the catalogue
     * @return the fit
     * @throws NoSolutionException if there are no cuts, code {@code no-test-cuts}, or one names no material, code
     *     {@code cut-without-material}
     * @throws UnknownMaterialException if a name is not in the catalogue
     */
    public static ShopFit of(List<TestCut> cuts, Materials materials) {
        Material any = cuts.isEmpty()
                ? Materials.standard().all().iterator().next()
                : materials.get(ids(cuts).get(0));
        return of(cuts, materials, MachinabilityFeed.published(), CutPrior.catalogue(any));
    }

    /**
     * Fits a machinability model.
     *
     * @param cuts the cuts, each of which names its material by the attribute {@link #MATERIAL}
     * @param materials the catalogue
     * @param published the model, whose exponents are kept
     * @param prior the factor of the shop, the scatter and the plates; the spread of a material is that of the catalogue, but no
     *     less than 5 %
     * @return the fit
     */
    public static ShopFit of(List<TestCut> cuts, Materials materials, MachinabilityFeed published, CutPrior prior) {
        List<Material> cut =
                ids(cuts).stream().distinct().map(materials::get).distinct().toList();
        List<TestCut> named = new ArrayList<>();
        for (TestCut one : cuts) {
            named.add(one.withAttribute(
                    MATERIAL, materials.get(ids(List.of(one)).get(0)).id()));
        }
        return new ShopFit(new Values(published, prior, cut, named));
    }

    /** Name of the material of each cut. */
    private static List<String> ids(List<TestCut> cuts) {
        List<String> ids = new ArrayList<>();
        for (int i = 0; i < cuts.size(); i++) {
            String id = cuts.get(i).attributes().getOrDefault(MATERIAL, "").strip();
            if (id.isEmpty()) {
                throw new NoSolutionException(Message.of(
                                "cut-without-material",
                                "{cut} names no material; a fit of several materials requires the column material")
                        .with("cut", CutFit.label(cuts, i)));
            }
            ids.add(id);
        }
        return ids;
    }

    private static Evidence evidence(String note) {
        return Evidence.of(EvidenceGrade.FITTED, Source.of("fitted from the cuts of a shop"))
                .withNote(note);
    }

    private double feedExponent() {
        return values.published.exponent(FeedExponent.FEED);
    }

    /** {@return the test cuts} */
    public List<TestCut> cuts() {
        return values.cuts;
    }

    /** {@return the prior of the factor of the shop, the scatter and the plates} */
    public CutPrior prior() {
        return values.prior;
    }

    /** {@return the materials that were cut, with their fitted machinability, in the order of the cuts} */
    public List<Material> materials() {
        return values.catalogue.stream().map(this::material).toList();
    }

    /** {@return the factor common to the shop: machinability over that of the catalogue, apart from deviations of materials} */
    public Estimate<Dimensionless> factor() {
        double[] student = posterior.factor();
        return Estimate.withinFactor(Kind.RATIO, Math.exp(student[0]), student[1], List.of())
                .withDegreesOfFreedom(Math.max(1, student[2]));
    }

    /**
     * Returns the machinability of a material in this shop, with its degrees of freedom.
     *
     * @param material a material of the catalogue; it need not have been cut
     * @return the machinability
     */
    public Estimate<Dimensionless> machinability(Material material) {
        double[] student = posterior.machinability(original(material));
        return Estimate.withinFactor(Kind.RATIO, Math.exp(student[0]), student[1], List.of())
                .withDegreesOfFreedom(Math.max(1, student[2]));
    }

    /**
     * Returns a material with its machinability in this shop, for use with another feed model. This model has the factor of the
     * shop itself: it takes materials as the catalogue has them.
     *
     * @param material a material of the catalogue; it need not have been cut
     * @return the material with the fitted number, or, if it was not cut, with that of the catalogue times the factor of the
     *     shop
     */
    public Material material(Material material) {
        return fitted.computeIfAbsent(Objects.requireNonNull(material, "material"), this::inThisShop);
    }

    private Material inThisShop(Material material) {
        double[] student = posterior.machinability(original(material));
        return original(material)
                .withMachinability(
                        Math.exp(student[0]),
                        student[1],
                        evidence(
                                isCut(material)
                                        ? "Cut in this shop."
                                        : "Not cut: catalogue times factor of the shop."));
    }

    private Optional<Material> known(Material material) {
        return values.catalogue.stream()
                .filter(one -> one.id().equals(material.id()))
                .findFirst();
    }

    private Material original(Material material) {
        return known(material).orElse(material);
    }

    private boolean isCut(Material material) {
        return known(material).isPresent();
    }

    /** {@return the relative standard deviation of a feed rate on a new plate: scatter of a cut and spread between plates} */
    public double scatter() {
        return feedExponent() * posterior.cutDeviation();
    }

    /** {@return the model with the scatter of the cuts} */
    @Override
    public MachinabilityFeed model() {
        return model;
    }

    @Override
    public String name() {
        return model.name() + ", fitted to a shop";
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return model.separationFeedSi(jet, material(material), depthM);
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return model.separationDepthSi(jet, material(material), feedMPerS);
    }

    @Override
    public double feedSi(JetSettings jet, Material material, double thicknessM, double index) {
        return model.feedSi(jet, material(material), thicknessM, index);
    }

    @Override
    public double indexSi(JetSettings jet, Material material, double thicknessM, double feedMPerS) {
        return model.indexSi(jet, material(material), thicknessM, feedMPerS);
    }

    @Override
    public double relativeUncertainty(Material material) {
        return model.relativeUncertainty(material(material));
    }

    @Override
    public List<Caution> cautions(JetSettings jet, Material material, double depthM, double feedMPerS) {
        List<Caution> cautions = new ArrayList<>(model.cautions(jet, material(material), depthM, feedMPerS));
        if (!isCut(material)) {
            cautions.add(Caution.warning(Message.of(
                            "not-cut-in-this-shop",
                            "no cut of this shop is of {material}: its machinability is that of the catalogue times the"
                                    + " factor of the shop")
                    .with(MATERIAL, material.name())));
        }
        return List.copyOf(cautions);
    }

    /**
     * {@inheritDoc}
     *
     * <p>The estimate is that of one more cut on a new plate, with its degrees of freedom.
     */
    @Override
    public Estimate<Speed> feed(AbrasiveJet jet, Workpiece workpiece, double index) {
        Workpiece fitted = Workpiece.of(material(workpiece.material()), workpiece.thickness());
        Estimate<Speed> plain = ForwardingFeed.super.feed(jet, fitted, index);
        double[] student = posterior.nextCut(original(workpiece.material()));
        double[] median = posterior.machinability(original(workpiece.material()));
        double feed = feedSi(jet, workpiece.material(), workpiece.thicknessSi(), index)
                * Math.exp(feedExponent() * (student[0] - median[0]));
        return Estimate.withinFactor(
                        Kind.SPEED, Math.min(feed, maximumFeedSi()), feedExponent() * student[1], plain.cautions())
                .withDegreesOfFreedom(Math.max(1, student[2]));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("shop fit")
                .put("model", name())
                .put("factor", factor())
                .put("materials", materials())
                .put("scatter", scatter())
                .put("prior", values.prior)
                .put("cuts", cuts())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ShopFit that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return name() + " from " + cuts().size() + " cuts of " + values.catalogue.size() + " materials";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
