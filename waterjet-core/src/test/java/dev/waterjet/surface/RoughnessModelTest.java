package dev.waterjet.surface;

import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.surface.Surfaces.CUT;
import static dev.waterjet.surface.Surfaces.JET;
import static dev.waterjet.surface.Surfaces.MODEL;
import static dev.waterjet.surface.Surfaces.OWN;
import static dev.waterjet.surface.Surfaces.surface;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutOff;
import java.util.Arrays;
import javax.measure.quantity.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RoughnessModelTest {

    private static final RoughnessModel STANDARD = RoughnessModel.standard();

    /** 80 mesh is 180 um: Ra 0.02 * 180 = 3.6 um at the entry, Rz 6 Ra, Pz 11 * 1.5 Ra; each factor adds its uncertainty. */
    @Test
    void atTheEntryOnlyTheGrainSizeCounts() {
        SurfaceRoughness roughness = surface(2).roughness();

        assertThat(roughness.raAt(millimetres(0)).to(Units.MICROMETRE)).isCloseTo(3.6, within(1e-9));
        assertThat(roughness.rzAt(millimetres(0)).to(Units.MICROMETRE)).isCloseTo(21.6, within(1e-9));
        assertThat(roughness.pzAt(millimetres(0)).to(Units.MICROMETRE)).isCloseTo(59.4, within(1e-9));
        double texture = Math.log(1.5);
        assertThat(roughness.raAt(millimetres(0)).relativeUncertainty()).isCloseTo(texture, within(1e-9));
        assertThat(roughness.rzAt(millimetres(0)).relativeUncertainty())
                .isCloseTo(Math.hypot(texture, 0.25), within(1e-9));
        assertThat(roughness.pzAt(millimetres(0)).relativeUncertainty())
                .isCloseTo(Math.sqrt(texture * texture + 0.09 + 0.0025), within(1e-9));
    }

    /** Ra in um with a grain size of 180 um and a tube of 1 mm, by the formula of the model. */
    private static double raUm(double k, double a, double b, double ratio) {
        double beyond = ratio - 0.52;
        double striation = (beyond + Math.hypot(beyond, 0.05)) / 2 - (-0.52 + Math.hypot(0.52, 0.05)) / 2;
        return k * 180 * (1 + a * ratio) + b * 1000 * striation;
    }

    private static double change(double above, double below) {
        return Math.log(above / below) / 2;
    }

    @ParameterizedTest
    @CsvSource({"1.1, 12", "1.1, 4", "3, 12", "3, 6"})
    void downTheSurfaceEveryNumberAddsToTheUncertainty(double index, double depthMm) {
        CutSurface surface = surface(index);
        double x = depthMm / (12 * index);
        double byDepth = Math.exp(surface.kerf().separationDepth().relativeUncertainty());
        Estimate<?> ra = surface.roughness().raAt(millimetres(depthMm));

        assertThat(ra.si() * 1e6).isCloseTo(raUm(0.02, 1, 0.1, x), within(1e-6));
        assertThat(surface.roughness().raSi(depthMm / 1000)).isCloseTo(ra.si(), within(1e-15));
        assertThat(STANDARD.raSi(JET, 0.012 * index, depthMm / 1000)).isCloseTo(ra.si(), within(1e-15));
        double[] changes = {
            change(raUm(0.03, 1, 0.1, x), raUm(0.02 / 1.5, 1, 0.1, x)),
            change(raUm(0.02, 2, 0.1, x), raUm(0.02, 0.5, 0.1, x)),
            change(raUm(0.02, 1, 0.2, x), raUm(0.02, 1, 0.05, x)),
            change(raUm(0.02, 1, 0.1, x * byDepth), raUm(0.02, 1, 0.1, x / byDepth)),
        };
        assertThat(ra.relativeUncertainty())
                .isCloseTo(Math.sqrt(Arrays.stream(changes).map(c -> c * c).sum()), within(1e-9));
    }

    @Test
    void theSmoothZoneEndsAtAboutHalfOfTheSeparationDepth() {
        CutSurface fast = surface(1.5);

        assertThat(fast.roughness().smoothZone().to(Units.MILLIMETRE)).isCloseTo(0.52 * 18, within(1e-6));
        assertThat(fast.roughness().smoothZone().relativeUncertainty())
                .isCloseTo(fast.kerf().separationDepth().relativeUncertainty(), within(1e-12));
    }

    /** From 1/0.52 = 1.92 on the model has no striation zone, which shops see all the same. */
    @Test
    void aSmoothZoneThatReachesThroughHasACaution() {
        assertThat(surface(1.92).roughness().smoothZone().to(Units.MILLIMETRE)).isLessThan(12);
        assertThat(codes(surface(1.92).roughness())).doesNotContain("striations-left-out");
        assertThat(surface(1.93).roughness().smoothZone().to(Units.MILLIMETRE)).isCloseTo(12, within(1e-12));
        assertThat(surface(1.93).roughness().smoothZone().standardUncertaintySi())
                .isZero();
        assertThat(codes(surface(1.93).roughness())).contains("striations-left-out");
    }

    private static Iterable<String> codes(SurfaceRoughness roughness) {
        return roughness.raAtExit().cautions().stream().map(Caution::code).toList();
    }

    @Test
    void depthsLieOnTheSurface() {
        SurfaceRoughness roughness = surface(2).roughness();

        assertThat(Refusals.of(() -> roughness.raAt(millimetres(12.1)))).isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> roughness.raSi(-1e-6))).isEqualTo("must-be-at-least");
    }

    @Test
    void onlyAFittedModelHasNoCautionOfItsNumbers() {
        RoughnessModel fitted = STANDARD.withTextureRatio(0.02, 0.1, OWN).withStriationGrowth(0.1, 0.1, OWN);
        CutSurface own = MODEL.withRoughness(fitted).surface(CUT, CUT.feed(1.5).value());

        assertThat(codes(surface(1.5).roughness()))
                .contains("roughness-not-fitted")
                .doesNotContain("kerf-not-fitted");
        assertThat(codes(own.roughness())).doesNotContain("roughness-not-fitted");
    }

    /**
     * JMMP 9 (2025) 80: roughness hardly depends on feed near the entry, strongly near the exit. Hashish 1991: grain size
     * dominates the finish.
     */
    @Test
    void roughnessFollowsGrainSizeAtTheEntryAndFeedRateAtTheExit() {
        SurfaceRoughness slow = surface(4).roughness();
        SurfaceRoughness fast = surface(1.1).roughness();

        assertThat(fast.raSi(0.5e-3) / slow.raSi(0.5e-3)).isBetween(1.0, 1.1);
        assertThat(fast.raSi(12e-3) / slow.raSi(12e-3)).isGreaterThan(5);
        CutConditions fine = CUT.withJet(Surfaces.jet(120));
        SurfaceRoughness finer = MODEL.surface(fine, fine.feed(4).value()).roughness();
        assertThat(finer.raSi(0) / slow.raSi(0)).isCloseTo(125.0 / 180, within(1e-9));
    }

    /** Alsoufi et al. 2017, Carrara marble of 40 mm: Ra 4 um at the entry, up to 93.7 at the exit. Assumed: 80 mesh, index 1. */
    @Test
    void marbleLiesInTheInterval() {
        CutConditions marble = Surfaces.cut("marble-white", 40);
        SurfaceRoughness roughness =
                MODEL.surface(marble, marble.feed(1).value()).roughness();

        holds(roughness.raAt(millimetres(0)), 4);
        holds(roughness.raAtExit(), 93.7);
        assertThat(CutOff.forRa(roughness.raAtExit().value())).isEqualTo(CutOff.MM_8);
    }

    private static void holds(Estimate<Length> ra, double publishedUm) {
        assertThat(publishedUm * 1e-6).isBetween(Kind.LENGTH.si(ra.lower(0.95)), Kind.LENGTH.si(ra.upper(0.95)));
        assertThat(ra.relativeUncertainty()).isLessThan(1);
    }

    /** JMMP 9 (2025) 80: Pz over Pa 10 to 12; a height is never below the mean deviation of its own profile. */
    @Test
    void heightsOfProfilesAreKeptApart() {
        SurfaceRoughness roughness = surface(2).roughness();
        for (double depth : new double[] {0, 6, 12}) {
            double ra = roughness.raAt(millimetres(depth)).si();
            double rz = roughness.rzAt(millimetres(depth)).si();
            double pz = roughness.pzAt(millimetres(depth)).si();
            assertThat(rz).isGreaterThan(4 * ra).isLessThan(pz);
        }
    }

    @Test
    void theSeparationDepthJustMeetsARoughness() {
        Estimate<Length> depth = STANDARD.separationDepthForRa(CUT, millimetres(12), micrometres(10))
                .orElseThrow();

        assertThat(raUm(0.02, 1, 0.1, 0.012 / depth.si())).isCloseTo(10, within(1e-6));
        // k and b within factors of 1.5 and 2: the depth is known to some tenths
        assertThat(depth.relativeUncertainty()).isBetween(0.05, 0.5);
        assertThat(STANDARD.separationDepthForRz(CUT, millimetres(12), micrometres(60)))
                .contains(depth);
    }

    @Test
    void aLenientRoughnessRequiresOnlyThatTheJetCutsThrough() {
        assertThat(STANDARD.separationDepthForRa(CUT, millimetres(12), millimetres(1))
                        .orElseThrow()
                        .si())
                .isCloseTo(0.012, within(1e-15));
        assertThat(STANDARD.separationDepthForRa(CUT, millimetres(12), micrometres(3.6)))
                .isEmpty();
        assertThat(Refusals.of(() -> STANDARD.separationDepthForRa(CUT, millimetres(12.1), micrometres(10))))
                .isEqualTo("must-be-at-most");
    }

    @Test
    void aModelIsItsNumbersAndEvidence() {
        ValueContract.of(() -> STANDARD.withTextureRatio(0.03, 0.1, OWN))
                .has("texture", RoughnessModel::textureRatio, 0.03)
                .change(
                        "growth",
                        model -> model.withStriationGrowth(0.2, 0.3, OWN),
                        RoughnessModel::striationGrowth,
                        0.2)
                .differs("uncertainty", STANDARD.withTextureRatio(0.03, 0.2, OWN))
                .differs("Rz", STANDARD.withTextureRatio(0.03, 0.1, OWN).withRzOverRa(5, 0.1))
                .differs("evidence", STANDARD.withTextureRatio(0.03, 0.1, STANDARD.evidence()))
                .check();
        assertThat(STANDARD.withTextureRatio(0.03, 0.1, OWN)
                        .withStriationGrowth(0.2, 0.3, OWN)
                        .relative())
                .isEqualTo(new RoughnessNumbers(0.1, Math.log(2), 0.3, 0.25, 0.3, 0.05));
    }

    @Test
    void numbersThatAreNotKnownAreRefused() {
        assertThat(Refusals.of(() -> STANDARD.withTextureRatio(0.02, 5, OWN))).isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> STANDARD.withStriationGrowth(0.1, 5, OWN))).isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> STANDARD.withTextureRatio(0, 0.1, OWN))).isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> STANDARD.withRzOverRa(1, 0.1))).isEqualTo("must-be-above");
    }
}
