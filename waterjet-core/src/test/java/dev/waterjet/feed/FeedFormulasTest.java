package dev.waterjet.feed;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.joulesPerCubicMillimetre;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Feed models against their formulas worked by hand, and each input at its limit. */
class FeedFormulasTest {

    private static final Evidence OWN = Evidence.of(EvidenceGrade.ASSUMED, Source.of("logbook of Hollow Ridge"));
    private static final Material STEEL = Materials.standard().get("mild-steel");
    private static final Material GRAPHITE = Materials.standard().get("graphite");

    private final AbrasiveJet jet = FeedModelContract.jet(380, 0.3, 0.9, 400);
    private final Workpiece plate = Workpiece.of(STEEL, millimetres(12));
    private final MachinabilityFeed published = MachinabilityFeed.published();

    /** A changed exponent counts as (x/x_ref)^(change times 1.15): nothing at the reference, a known factor at twice it. */
    @Test
    void eachExponentActsOnItsOwnSetting() {
        double[] reference = {345e6, 0.35e-3, 1e-3, 0.01};
        FeedExponent[] settings = {
            FeedExponent.PRESSURE, FeedExponent.ORIFICE, FeedExponent.TUBE, FeedExponent.ABRASIVE_FLOW
        };
        for (int i = 0; i < settings.length; i++) {
            MachinabilityFeed own = published.withExponent(settings[i], settings[i].published() + 0.3);
            assertThat(settings[i].referenceSi()).isEqualTo(reference[i]);
            assertThat(own.exponent(settings[i])).isCloseTo(settings[i].published() + 0.3, within(1e-12));
            for (int k = 0; k < settings.length; k++) {
                double[] at = reference.clone();
                at[k] *= 1.25;
                assertThat(feedAt(own, at) / feedAt(published, at))
                        .as("%s changed, %s raised", settings[i], settings[k])
                        .isCloseTo(i == k ? Math.pow(1.25, 0.3 * 1.15) : 1, within(1e-12));
            }
        }
        assertThat(FeedExponent.TUBE.published()).isEqualTo(-0.618);
        assertThat(FeedExponent.FEED.label()).isEqualTo("feed exponent");
    }

    private double feedAt(FeedModel model, double[] setting) {
        return model.feedSi(Jets.at(jet, setting[0], setting[1], setting[2], setting[3]), STEEL, 0.012, 2);
    }

    @Test
    void exponentsKeepEachOther() {
        MachinabilityFeed own = published;
        for (FeedExponent exponent : FeedExponent.values()) {
            own = own.withExponent(exponent, exponent.published() * 1.1);
        }
        for (FeedExponent exponent : FeedExponent.values()) {
            assertThat(own.exponent(exponent)).isCloseTo(exponent.published() * 1.1, within(1e-12));
        }
        assertThat(published.withExponent(FeedExponent.PRESSURE, 10).exponent(FeedExponent.PRESSURE))
                .isCloseTo(10, within(1e-12));
        assertRefused(
                () -> published.withExponent(FeedExponent.PRESSURE, 10.1), "must-be-at-most", "pressure exponent", 10);
        assertRefused(() -> published.withExponent(FeedExponent.FEED, 0.05), "must-be-at-least", "feed exponent", 0.1);
        assertRefused(
                () -> published.withModelUncertainty(-0.1),
                "must-be-at-least",
                "relative uncertainty of the feed rate",
                0);
    }

    /** Hashish (1989) by hand for a jet of 0.9 mm: h_c = d (V/C_k) (14 m/(pi u d^2 rho))^0.4, C_k = sqrt(3 s R^0.6/rho). */
    @Test
    void erosionFollowsItsTwoFormulas() {
        double strength = 200e9 / 14;
        double speed = jet.particleSpeedSi();
        double flow = jet.abrasiveFlowSi();
        double characteristic = Math.sqrt(3 * strength * Math.pow(0.4, 0.6) / 4100);
        double cutting =
                0.9e-3 * (speed / characteristic) * Math.pow(14 * flow / (Math.PI * 0.002 * 0.81e-6 * 4100), 0.4);
        // 1/h_d = pi d s u/(2 C_1 m (V - V_e)^2) + (C_f/d) V/(V - V_e)
        double excess = speed - 100;
        double deformation = 1
                / (Math.PI * 0.9e-3 * strength * 0.002 / (2 * 0.8 * flow * excess * excess)
                        + 0.002 / 0.9e-3 * speed / excess);
        ErosionFeed model =
                ErosionFeed.standard().withThreshold(metresPerSecond(100)).withDeformingShare(0.8);

        assertThat(Kind.LENGTH.si(model.cuttingWear(jet, STEEL, metresPerSecond(0.002))))
                .isCloseTo(cutting, within(1e-12));
        assertThat(Kind.LENGTH.si(model.deformationWear(jet, STEEL, metresPerSecond(0.002))))
                .isCloseTo(deformation, within(1e-12));
        assertThat(model.separationDepthSi(jet, STEEL, 0.002)).isCloseTo(cutting + deformation, within(1e-12));
        assertThat(model.separationFeedSi(jet, STEEL, cutting + deformation)).isCloseTo(0.002, within(1e-12));
        assertRefused(() -> model.withRoundness(0), "must-be-at-least", "roundness of the particles", 0.01);
        assertRefused(() -> model.withRoundness(1.1), "must-be-at-most", "roundness of the particles", 1);
        assertRefused(() -> model.withDeformingShare(0), "must-be-above", "deforming share of the particles", 0);
        assertRefused(
                () -> model.withThreshold(metresPerSecond(-1)),
                "must-be-at-least",
                "threshold speed of the particles",
                0);
        assertRefused(
                () -> model.withModelUncertainty(3.1, OWN),
                "must-be-at-most",
                "relative uncertainty of the feed rate",
                3);
    }

    /** P/(e w) with P = m v^2/2: the area opened in a time, over depth. */
    @Test
    void specificEnergyOpensAnArea() {
        double power = jet.abrasiveFlowSi() * jet.particleSpeedSi() * jet.particleSpeedSi() / 2;
        FeedModel model = SpecificEnergyFeed.of(STEEL, joulesPerCubicMillimetre(11), 0.2, OWN);

        assertThat(model.separationFeedSi(jet, STEEL, 0.01)).isCloseTo(power / (11e9 * 0.9e-3 * 0.01), within(1e-14));
        assertThat(model.separationDepthSi(jet, STEEL, 0.002))
                .isCloseTo(power / (11e9 * 0.9e-3 * 0.002), within(1e-14));
        assertThat(model.relativeUncertainty(STEEL)).isEqualTo(0.2);
        assertThat(model.relativeUncertainty(GRAPHITE))
                .isCloseTo(Math.hypot(0.2, GRAPHITE.relativeUncertainty()), within(1e-15));
        assertThat(SpecificEnergyFeed.ofSteel().specificEnergy(GRAPHITE).cautions())
                .isEqualTo(GRAPHITE.cautions());
        var implied = SpecificEnergyFeed.impliedBy(published, jet, plate);
        assertThat(implied.si())
                .isCloseTo(power / (published.separationFeedSi(jet, STEEL, 0.012) * 0.012 * 0.9e-3), within(1e-2));
        assertThat(implied.relativeUncertainty())
                .isCloseTo(
                        Math.hypot(Math.hypot(0.15, 0.115), jet.abrasivePower().relativeUncertainty()), within(1e-12));
        assertRefused(
                () -> SpecificEnergyFeed.of(STEEL, joulesPerCubicMillimetre(0), 0.2, OWN),
                "must-be-above",
                "specific cutting energy",
                0);
    }

    /** C_s (p - p_thr)/v^(0.86 + 2.09/v): 8e-9 m/Pa * 320 MPa / 10^1.069 at 10 mm/min. */
    @Test
    void theThresholdLawFollowsItsFormula() {
        ThresholdFeed law = ThresholdFeed.of(STEEL, jet, 8e-9, megapascals(60), millimetresPerMinute(1));
        double depth = 8e-9 * 320e6 / Math.pow(10, 0.86 + 0.209);

        assertThat(law.separationDepthSi(jet, STEEL, 0.01 / 60)).isCloseTo(depth, within(1e-12));
        assertThat(law.separationFeedSi(jet, STEEL, depth)).isCloseTo(0.01 / 60, within(1e-14));
        assertThat(law.separationFeedSi(jet.withPressure(megapascals(60)), STEEL, depth))
                .isZero();
        assertThat(law.separationDepthSi(jet.withPressure(megapascals(60)), STEEL, 0.01 / 60))
                .isZero();
        for (AbrasiveJet other : List.of(
                FeedModelContract.jet(380, 0.31, 0.9, 400),
                FeedModelContract.jet(380, 0.3, 0.92, 400),
                FeedModelContract.jet(380, 0.3, 0.9, 410))) {
            assertThat(law.cautions(other, STEEL, 0.01, 0.001))
                    .extracting(Caution::code)
                    .containsExactly("other-jet");
        }
        assertThat(law.cautions(FeedModelContract.jet(300, 0.3, 0.9, 400), STEEL, 0.01, 0.001))
                .isEmpty();
    }

    @Test
    void aThresholdModelRefusesOtherMaterialsAndImpossibleNumbers() {
        ThresholdFeed law = ThresholdFeed.of(STEEL, jet, 8e-9, megapascals(60), millimetresPerMinute(1));

        assertRefused(() -> law.depth(jet.withPressure(megapascals(50)), STEEL, millimetresPerMinute(10)), "no-cut");
        assertRefused(() -> law.index(jet.withPressure(megapascals(50)), plate, millimetresPerMinute(10)), "no-cut");
        assertThat(assertRefused(() -> law.depth(jet, GRAPHITE, millimetresPerMinute(10)), "other-material")
                        .parameters())
                .containsEntry("material", "graphite");
        assertRefused(
                () -> ThresholdFeed.of(STEEL, jet, 0, megapascals(60), millimetresPerMinute(1)),
                "must-be-above",
                "coefficient C_s",
                0);
        assertRefused(
                () -> ThresholdFeed.of(STEEL, jet, 1, megapascals(-1), millimetresPerMinute(1)),
                "must-be-at-least",
                "threshold pressure",
                0);
        assertRefused(
                () -> ThresholdFeed.of(STEEL, jet, 1, megapascals(60), millimetresPerMinute(0)),
                "must-be-above",
                "unit of feed rate",
                0);
    }

    /** theta = theta_lim (v/v_lim)^n turns into q = theta_lim/theta, and both directions end at the limit. */
    @Test
    void declinationReachesItsLimitAndNoFurther() {
        DeclinationFeed model = DeclinationFeed.threeHalvesPower(published).withLimitingAngle(degrees(24));
        double limit = published.separationFeedSi(jet, STEEL, 0.012);

        assertThat(model.declination(jet, plate, metresPerSecond(limit)).to(Units.DEGREE))
                .isCloseTo(24, within(1e-9));
        assertThat(model.declination(jet, plate, metresPerSecond(limit)).relativeUncertainty())
                .isCloseTo(1.5 * Math.hypot(0.15, 0.115), within(1e-12));
        assertThat(model.feedForDeclination(jet, plate, degrees(24)).si()).isCloseTo(limit, within(1e-12));
        assertThat(model.indexSi(jet, STEEL, 0.012, limit / 4)).isCloseTo(8, within(1e-9));
        assertThat(model.feedSi(jet, STEEL, 0.012, 8)).isCloseTo(limit / 4, within(1e-12));
        assertRefused(
                () -> model.feedForDeclination(jet, plate, degrees(24.1)),
                "must-be-at-most",
                "declination",
                Math.toRadians(24));
        assertRefused(() -> model.feedForDeclination(jet, plate, degrees(0)), "must-be-above", "declination", 0);
        assertRefused(() -> model.declination(jet, plate, metresPerSecond(0)), "must-be-above", "feed rate", 0);
        assertRefused(
                () -> model.withLimitingAngle(degrees(90)), "must-be-at-most", "limiting declination", Math.PI / 2);
        assertRefused(() -> model.withLimitingAngle(degrees(0)), "must-be-above", "limiting declination", 0);
        assertRefused(() -> model.withExponent(0.05), "must-be-at-least", "exponent of the declination", 0.1);
        assertThat(DeclinationFeed.threeHalvesPower(published)
                        .declination(jet, Workpiece.of(GRAPHITE, millimetres(30)), millimetresPerMinute(10))
                        .cautions())
                .extracting(Caution::code)
                .contains("unsure-machinability");
    }
}
