package dev.waterjet.calibrate;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Speed;
import org.junit.jupiter.api.Test;

class ShopFitTest {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final AbrasiveJet JET = CalibrationTest.jet(350, 300);
    private static final Material STEEL = Material.of("dome-steel", 80, 0.05, MaterialClass.DUCTILE);
    private static final Material BRONZE = Material.of("ring-bronze", 120, 0.05, MaterialClass.DUCTILE);
    private static final Material BASALT = Material.of("pier-basalt", 300, 0.25, MaterialClass.BRITTLE);
    private static final Materials CATALOGUE = Materials.of(List.of(STEEL, BRONZE, BASALT));

    private static TestCut cut(Material material, double machinability, double thicknessMm, double deviation) {
        Material truth = Material.of("truth", machinability, 0, MaterialClass.DUCTILE);
        double feed = MODEL.separationFeedSi(JET, truth, thicknessMm / 1e3) * Math.exp(1.15 * deviation);
        return TestCut.separated(JET, millimetres(thicknessMm), Kind.SPEED.of(feed))
                .withAttribute("material", material.id());
    }

    private static List<TestCut> cuts(double factor) {
        List<TestCut> cuts = new ArrayList<>();
        double[] deviations = {0.02, -0.03, 0.01, 0.03, -0.02, -0.01};
        for (int i = 0; i < deviations.length; i++) {
            cuts.add(cut(STEEL, 80 * factor, 6 + 2 * i, deviations[i]));
            cuts.add(cut(BRONZE, 120 * factor, 5 + 3 * i, -deviations[i]));
        }
        return cuts;
    }

    /**
     * With many cuts of both materials the posterior of the factor has the mean of {@code v} weighted by its precisions: two
     * materials with spread 0.05 and a prior of 0.13 shrink ln 1.2 by 0.13^2 / (0.13^2 + 0.05^2 / 2).
     */
    @Test
    void theFactorIsSharedBetweenShopAndMaterials() {
        ShopFit shop = ShopFit.of(cuts(1.2), CATALOGUE);
        double share = 0.13 * 0.13 / (0.13 * 0.13 + (0.05 * 0.05 + 0.03 * 0.03 / 6) / 2);

        assertThat(Math.log(shop.factor().si())).isCloseTo(share * Math.log(1.2), within(0.004));
        assertThat(shop.machinability(STEEL).si()).isCloseTo(96, within(2.0));
        assertThat(shop.machinability(BRONZE).si()).isCloseTo(144, within(3.0));
        assertThat(shop.materials()).extracting(Material::id).containsExactly("dome-steel", "ring-bronze");
    }

    @Test
    void aMaterialThatWasNotCutHasTheFactorOfTheShopAndItsOwnSpread() {
        ShopFit shop = ShopFit.of(cuts(1.2), CATALOGUE);
        Estimate<?> basalt = shop.machinability(BASALT);

        assertThat(basalt.si()).isCloseTo(300 * shop.factor().si(), within(1e-6 * basalt.si()));
        assertThat(basalt.relativeUncertainty()).isBetween(0.25, 0.30);
        assertThat(shop.cautions(JET, BASALT, 0.01, 0.001))
                .extracting(Caution::code)
                .contains("not-cut-in-this-shop");
        assertThat(shop.cautions(JET, STEEL, 0.01, 0.001))
                .extracting(Caution::code)
                .doesNotContain("not-cut-in-this-shop");
        assertThat(shop.feed(JET, Workpiece.of(BASALT, millimetres(10)), 1).relativeUncertainty())
                .isGreaterThan(2
                        * shop.feed(JET, Workpiece.of(STEEL, millimetres(10)), 1)
                                .relativeUncertainty());
    }

    /** One material of a spread as wide as both priors together is fitted alike by a calibration of it alone. */
    @Test
    void oneMaterialIsFittedAsByItsCalibration() {
        List<TestCut> steel = cuts(1.1).stream()
                .filter(cut -> "dome-steel".equals(cut.attributes().get("material")))
                .toList();
        CalibratedFeed own = Calibration.ofMachinability(STEEL, MODEL)
                .withPrior(CutPrior.catalogue(STEEL))
                .fit(steel);
        ShopFit shop = ShopFit.of(steel, CATALOGUE);
        Workpiece plate = Workpiece.of(own.material(), millimetres(12));
        Estimate<Speed> one = own.feed(JET, plate, 2);
        Estimate<Speed> other = shop.feed(JET, plate, 2);

        assertThat(shop.machinability(STEEL).si()).isCloseTo(own.fit().value("machinability"), within(0.01));
        assertThat(other.si() / one.si()).isCloseTo(1, within(1e-3));
        assertThat(Kind.SPEED.si(other.upper(0.95)) / Kind.SPEED.si(one.upper(0.95)))
                .isCloseTo(1, within(2e-3));
        assertThat(shop.separationFeedSi(JET, STEEL, shop.separationDepthSi(JET, STEEL, 0.002)))
                .isCloseTo(0.002, within(1e-12));
    }

    @Test
    void platesOfTwoMaterialsAreTwoPlates() {
        List<TestCut> onPlates = new ArrayList<>();
        List<TestCut> cuts = cuts(1);
        for (int i = 0; i < cuts.size(); i++) {
            onPlates.add(cuts.get(i).withPlate("P" + i / 4));
        }

        assertThat(ShopFit.of(onPlates, CATALOGUE).scatter())
                .isGreaterThan(ShopFit.of(cuts, CATALOGUE).scatter() / 3);
        assertThat(ShopFit.of(onPlates, CATALOGUE).machinability(STEEL).si()).isCloseTo(80, within(4.0));
    }

    @Test
    void refusalsNameTheCut() {
        List<TestCut> nameless = List.of(TestCut.separated(JET, millimetres(10), Kind.SPEED.of(0.002)));

        assertRefused(() -> ShopFit.of(nameless, CATALOGUE), "cut-without-material");
        assertRefused(() -> ShopFit.of(List.of(), CATALOGUE), "no-test-cuts");
        assertRefused(
                () -> ShopFit.of(List.of(cut(STEEL, 80, 10, 0).withAttribute("material", "butter")), CATALOGUE),
                "unknown-material");
    }

    @Test
    void aShopIsItsCutsAndPriors() {
        ValueContract.of(() -> ShopFit.of(cuts(1), CATALOGUE))
                .has("cuts", shop -> shop.cuts().size(), 12)
                .differs("cuts", ShopFit.of(cuts(1.1), CATALOGUE))
                .differs(
                        "prior",
                        ShopFit.of(
                                cuts(1),
                                CATALOGUE,
                                MODEL,
                                CutPrior.catalogue(STEEL).withShop(0.3)))
                .check();
    }

    /** One shop, two materials, a scatter known by much prior: normal distributions multiply, in closed form of three unknowns. */
    @Test
    void withAKnownScatterThePosteriorIsThatOfNormalDistributions() {
        CutPrior prior = CutPrior.catalogue(STEEL).withScatter(1e6, 0.03).withShop(0.1);
        double[] y = new double[12];
        double[][] x = new double[12][];
        double[] deviations = {0.02, -0.03, 0.01, 0.03, -0.02, -0.01};
        for (int i = 0; i < 6; i++) {
            y[2 * i] = Math.log(1.2) + deviations[i];
            y[2 * i + 1] = Math.log(1.2) - deviations[i];
            x[2 * i] = new double[] {1, 1, 0};
            x[2 * i + 1] = new double[] {1, 0, 1};
        }
        double[][] information =
                new DenseMixedModel(CutRows.exact(y, x), 0.03, 0).information().getData();
        double[] sum = new double[3];
        double[] priors = {0.1, 0.05, 0.05};
        for (int j = 0; j < 3; j++) {
            information[j][j] += 1 / (priors[j] * priors[j]);
            for (int i = 0; i < 12; i++) {
                sum[j] += x[i][j] * y[i] / 0.0009;
            }
        }
        double[][] covariance = Matrices.inverse(information);
        double[] mean = Matrices.times(covariance, sum);
        ShopFit shop = ShopFit.of(cuts(1.2), CATALOGUE, MODEL, prior);

        assertThat(Math.log(shop.factor().si())).isCloseTo(mean[0], within(1e-5));
        assertThat(scale(shop.factor())).isCloseTo(Math.sqrt(covariance[0][0]), within(1e-4));
        assertThat(Math.log(shop.machinability(BRONZE).si() / 120)).isCloseTo(mean[0] + mean[2], within(1e-5));
        double[] both = {1, 0, 1};
        double variance = Matrices.square(both, covariance);
        assertThat(scale(shop.machinability(BRONZE))).isCloseTo(Math.sqrt(variance), within(1e-4));
        assertThat(NORMAL * shop.material(BRONZE).relativeUncertainty()).isCloseTo(Math.sqrt(variance), within(1e-4));
        // a material that was not cut has its own spread of 0.25 beside the factor
        assertThat(scale(shop.machinability(BASALT)))
                .isCloseTo(Math.hypot(Math.sqrt(covariance[0][0]), 0.25), within(1e-3));
        assertThat(shop.scatter()).isCloseTo(1.15 * 0.03, within(1e-4));
        Estimate<Speed> next = shop.feed(JET, Workpiece.of(BRONZE, millimetres(10)), 2);
        assertThat(scale(next)).isCloseTo(1.15 * Math.sqrt(variance + 0.0009), within(1e-4));
        Estimate<Speed> uncut = shop.feed(JET, Workpiece.of(BASALT, millimetres(10)), 1);
        double ofUncut = covariance[0][0] + 0.25 * 0.25 + 0.03 * 0.03;
        assertThat(scale(uncut)).isCloseTo(1.15 * Math.sqrt(ofUncut), within(1e-3));
        assertThat(next.si()).isCloseTo(MODEL.feedSi(JET, shop.material(BRONZE), 0.01, 2), within(1e-5 * next.si()));
    }

    /** Of Student's distribution with 200 degrees of freedom, which stands for the normal one: quantiles 0.975 of any table. */
    private static final double NORMAL = 1.971896 / 1.959964;

    private static double scale(Estimate<?> estimate) {
        assertThat(estimate.degreesOfFreedom()).isEqualTo(200);
        return estimate.relativeUncertainty() * NORMAL;
    }

    /** Cuts on plates: a prior worth very many makes the spread known. */
    @Test
    void platesAddTheirSpread() {
        CutPrior prior = CutPrior.catalogue(STEEL).withScatter(1e6, 0.03).withPlates(1e6, 0.06);
        List<TestCut> onPlates = new ArrayList<>();
        for (TestCut cut : cuts(1)) {
            onPlates.add(cut.withPlate("P" + onPlates.size() / 6));
        }

        assertThat(ShopFit.of(onPlates, CATALOGUE, MODEL, prior).scatter())
                .isCloseTo(1.15 * Math.hypot(0.03, 0.06), within(1e-3));
        List<TestCut> own = new ArrayList<>();
        for (TestCut cut : cuts(1)) {
            own.add(cut.withPlate("Q" + own.size()));
        }
        assertThat(ShopFit.of(own, CATALOGUE, MODEL, prior).scatter())
                .as("no two cuts share a plate")
                .isCloseTo(1.15 * 0.03, within(1e-3));
    }

    @Test
    void answersAreThoseOfTheModelWithTheFittedMaterial() {
        ShopFit shop = ShopFit.of(cuts(1.2), CATALOGUE);
        Material own = shop.material(STEEL);

        assertThat(shop.name()).isEqualTo("machinability, fitted to a shop");
        assertThat(shop.toString()).isEqualTo("machinability, fitted to a shop from 12 cuts of 2 materials");
        assertThat(shop.feedSi(JET, STEEL, 0.01, 2)).isEqualTo(MODEL.feedSi(JET, own, 0.01, 2));
        assertThat(shop.indexSi(JET, STEEL, 0.01, 0.002)).isEqualTo(MODEL.indexSi(JET, own, 0.01, 0.002));
        assertThat(shop.relativeUncertainty(STEEL))
                .isCloseTo(Math.hypot(shop.scatter(), 1.15 * own.relativeUncertainty()), within(1e-12));
        assertThat(shop.model().relativeUncertainty(own)).isEqualTo(shop.relativeUncertainty(STEEL));
        assertThat(own.evidence().note()).contains("Cut in this shop");
        assertThat(shop.material(BASALT).evidence().note()).contains("Not cut");
        // a material that the shop has fitted is asked for by its name again
        assertThat(shop.material(own)).isEqualTo(own);
        assertThat(shop.materials()).containsExactly(own, shop.material(BRONZE));
        assertThat(shop.prior()).isEqualTo(CutPrior.catalogue(STEEL));
        assertThat(shop.describe())
                .containsEntry("model", shop.name())
                .containsEntry("scatter", shop.scatter())
                .containsKeys("factor", "materials", "prior", "cuts");
        assertThat(shop.feed(JET, Workpiece.of(STEEL, millimetres(0.05)), 1).si())
                .isEqualTo(shop.maximumFeedSi());
    }
}
