package dev.waterjet.feed;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.joulesPerCubicMillimetre;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.cost.CostRates;
import dev.waterjet.cost.CutPoint;
import dev.waterjet.cost.CuttingCost;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
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
        assertThatThrownBy(() -> published.withExponent(FeedExponent.PRESSURE, 10.1))
                .hasMessageContaining("pressure exponent is 10.1");
        assertThatThrownBy(() -> published.withExponent(FeedExponent.FEED, 0.05))
                .hasMessageContaining("feed exponent is 0.05; it must be at least 0.1");
        assertThatThrownBy(() -> published.withModelUncertainty(-0.1))
                .hasMessageContaining("relative uncertainty of the model is -10");
    }

    /** An answer for a material whose machinability is doubtful says so, whichever way the question is put. */
    @Test
    void settingsForAFeedCarryTheCautionsOfTheMaterial() {
        Workpiece piece = Workpiece.of(GRAPHITE, millimetres(30));
        for (var answer : List.of(
                published.feed(jet, piece, 2),
                published.pressureFor(jet, piece, 2, millimetresPerMinute(500)),
                published.abrasiveFlowFor(jet, piece, 2, millimetresPerMinute(500)),
                FeedSolver.of(published).pressureFor(jet, piece, 2, millimetresPerMinute(500)))) {
            assertThat(answer.cautions()).extracting(Caution::code).contains("unsure-machinability");
        }
        assertThatThrownBy(() -> published.pressureFor(jet, plate, 0.9, millimetresPerMinute(100)))
                .hasMessageContaining("quality index is 0.9");
        assertThatThrownBy(() -> published.abrasiveFlowFor(jet, plate, 1, millimetresPerMinute(0)))
                .hasMessageContaining("feed is 0 mm/min");
    }

    /** du/u = 1.15 dA/A and A goes with p^1.594 or m_a^0.343. */
    @Test
    void settingsForAFeedAreAsUnsureAsTheirExponentsAreSmall() {
        double ofAbility = Math.hypot(0.15, 0.115) / 1.15;

        assertThat(published
                        .pressureFor(jet, plate, 2, millimetresPerMinute(200))
                        .relativeUncertainty())
                .isCloseTo(ofAbility / 1.594, within(1e-12));
        assertThat(published
                        .abrasiveFlowFor(jet, plate, 2, millimetresPerMinute(200))
                        .relativeUncertainty())
                .isCloseTo(ofAbility / 0.343, within(1e-12));
        // the flow of water goes with the root of the pressure
        assertThat(MachinabilityFeed.publishedByWaterFlow()
                        .pressureFor(jet, plate, 2, millimetresPerMinute(200))
                        .relativeUncertainty())
                .isCloseTo(ofAbility / (1.25 + 0.687 / 2), within(1e-12));
    }

    /** (30 / 3600 + 1.5 * 0.01) / 0.01 = 7/3 a metre. */
    @Test
    void costsPerMetreAddUp() {
        assertThat(CostRates.of(30, 1.5).perMetre(metresPerSecond(0.01), Kind.MASS_FLOW.of(0.01)))
                .isCloseTo(7 / 3.0, within(1e-14));
        assertThat(CostRates.of(0, 1).perHour()).isZero();
        assertThat(CostRates.of(1, 0).perKilogram()).isZero();
        assertThatThrownBy(() -> CostRates.of(-1, 5)).hasMessageContaining("cost per hour is -1");
        assertThatThrownBy(() -> CostRates.of(5, -1)).hasMessageContaining("cost per kilogram of abrasive is -1");
        assertThatThrownBy(() -> CostRates.of(30, 1.5).perMetre(metresPerSecond(0), Kind.MASS_FLOW.of(0.01)))
                .hasMessageContaining("feed is 0 mm/min");
        CuttingCost economy = CuttingCost.of(published, CostRates.of(30, 1.5));
        CutPoint point = economy.at(jet, plate, 2);
        assertThat(point.jet()).isEqualTo(jet);
        assertThat(point.feed()).isEqualTo(published.feed(jet, plate, 2));
        assertThat(point.costPerMetre())
                .isEqualTo(CostRates.of(30, 1.5).perMetre(point.feed().value(), jet.abrasiveFlow()));
        assertThatThrownBy(() -> economy.withMaximumAbrasiveFlow(gramsPerMinute(0.5)))
                .hasMessageContaining("highest flow of abrasive is 0.5 g/min; it must be above 0.6 g/min");
        assertThatThrownBy(() -> economy.atEqualPower(jet, plate, 2, QuantityArray.ofSi(Kind.PRESSURE, 0)))
                .hasMessageContaining("pressure at the orifice is 0 MPa");
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
        assertThatThrownBy(() -> model.withRoundness(0)).hasMessageContaining("roundness of the grains is 0");
        assertThatThrownBy(() -> model.withRoundness(1.1)).hasMessageContaining("1 is a ball");
        assertThatThrownBy(() -> model.withDeformingShare(0)).hasMessageContaining("deforming share of the grains");
        assertThatThrownBy(() -> model.withThreshold(metresPerSecond(-1))).hasMessageContaining("threshold speed");
        assertThatThrownBy(() -> model.withModelUncertainty(11, OWN)).hasMessageContaining("beyond it nothing");
    }

    /** P/(e w) with P = m v^2/2: the face opened in a time, over depth. */
    @Test
    void specificEnergyOpensAFace() {
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
        assertThatThrownBy(() -> SpecificEnergyFeed.of(STEEL, joulesPerCubicMillimetre(0), 0.2, OWN))
                .hasMessageContaining("specific cutting energy is 0 J/mm3");
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
        assertThatThrownBy(() -> law.depth(jet.withPressure(megapascals(50)), STEEL, millimetresPerMinute(10)))
                .isInstanceOf(CannotReachException.class)
                .hasMessage("the jet does not cut at all by this jet in " + STEEL.name());
        assertThatThrownBy(() -> law.index(jet.withPressure(megapascals(50)), plate, millimetresPerMinute(10)))
                .isInstanceOf(CannotReachException.class);
        assertThatThrownBy(() -> law.depth(jet, GRAPHITE, millimetresPerMinute(10)))
                .isInstanceOfSatisfying(
                        UnsuitedMaterialException.class,
                        e -> assertThat(e.material()).isEqualTo("graphite"));
        assertThatThrownBy(() -> ThresholdFeed.of(STEEL, jet, 0, megapascals(60), millimetresPerMinute(1)))
                .hasMessageContaining("coefficient C_s is 0");
        assertThatThrownBy(() -> ThresholdFeed.of(STEEL, jet, 1, megapascals(-1), millimetresPerMinute(1)))
                .hasMessageContaining("threshold pressure is -1 MPa");
        assertThatThrownBy(() -> ThresholdFeed.of(STEEL, jet, 1, megapascals(60), millimetresPerMinute(0)))
                .hasMessageContaining("unit of feed is 0 m/s");
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
        assertThatThrownBy(() -> model.feedForDeclination(jet, plate, degrees(24.1)))
                .hasMessageContaining("declination is 24.1")
                .hasMessageContaining("beyond it the plate is not separated");
        assertThatThrownBy(() -> model.feedForDeclination(jet, plate, degrees(0)))
                .hasMessageContaining("declination is 0");
        assertThatThrownBy(() -> model.declination(jet, plate, metresPerSecond(0)))
                .hasMessageContaining("feed is 0 mm/min");
        assertThatThrownBy(() -> model.withLimitingAngle(degrees(90))).hasMessageContaining("limiting declination");
        assertThatThrownBy(() -> model.withLimitingAngle(degrees(0))).hasMessageContaining("limiting declination is 0");
        assertThatThrownBy(() -> model.withExponent(0.05)).hasMessageContaining("exponent of the declination");
        assertThat(DeclinationFeed.threeHalvesPower(published)
                        .declination(jet, Workpiece.of(GRAPHITE, millimetres(30)), millimetresPerMinute(10))
                        .cautions())
                .extracting(Caution::code)
                .contains("unsure-machinability");
    }

    /** Depth times (eta(R)/eta(R_0))^2 = exp(-2 (R - R_0)/s). */
    @Test
    void aLoadedModelCutsAsDeepAsItsEfficiencySquared() {
        MixingEfficiency falling = MixingEfficiency.decreasing(0.9, 0.1, 0.6, OWN);
        LoadedFeed model = LoadedFeed.of(published, falling, 0.15);
        double factor = Math.exp(-2 * (jet.loadingRatioSi() - 0.15) / 0.6);

        assertThat(model.separationDepthSi(jet, STEEL, 0.002))
                .isCloseTo(published.separationDepthSi(jet, STEEL, 0.002) * factor, within(1e-14));
        assertThat(model.separationFeedSi(jet, STEEL, 0.012))
                .isCloseTo(published.separationFeedSi(jet, STEEL, 0.012 / factor), within(1e-14));
        assertThat(model.feedSi(jet, STEEL, 0.012, 3))
                .isCloseTo(published.feedSi(jet, STEEL, 0.012 / factor, 3), within(1e-14));
        assertThat(model.indexSi(jet, STEEL, 0.012, 0.002))
                .isCloseTo(published.indexSi(jet, STEEL, 0.012, 0.002) * factor, within(1e-12));
        assertThat(LoadedFeed.scaleForOptimumLoading(0.18, 0.343)).isCloseTo(0.36 / 0.343, within(1e-15));
        assertThatThrownBy(() -> LoadedFeed.scaleForOptimumLoading(0, 0.3))
                .hasMessageContaining("best loading ratio is 0");
        assertThatThrownBy(() -> LoadedFeed.scaleForOptimumLoading(0.1, 0))
                .hasMessageContaining("exponent of the flow of abrasive is 0");
        assertThatThrownBy(() -> LoadedFeed.of(published, falling, 0))
                .hasMessageContaining("loading at which the model is right is 0");
    }

    /** An index is depth over thickness; at half the feed of the machinability model it grows by 2^(1/1.15). */
    @Test
    void depthAndIndexAreTwoSidesOfOneThing() {
        double feed = published.separationFeedSi(jet, STEEL, 0.012);

        assertThat(published.index(jet, plate, metresPerSecond(feed / 2)))
                .isCloseTo(Math.pow(2, 1 / 1.15), within(1e-9));
        var depth = published.depth(jet, STEEL, metresPerSecond(feed / 2));
        assertThat(depth.si()).isCloseTo(0.012 * Math.pow(2, 1 / 1.15), within(1e-11));
        // the depth goes with the feed to the power 1/1.15
        assertThat(depth.relativeUncertainty()).isCloseTo(Math.hypot(0.15, 0.115) / 1.15, within(1e-4));
        assertThatThrownBy(() -> published.index(jet, plate, metresPerSecond(0)))
                .hasMessageContaining("feed is 0");
        assertThatThrownBy(() -> published.curve(jet, STEEL, 0.5, QuantityArray.ofSi(Kind.LENGTH, 0.01)))
                .hasMessageContaining("quality index is 0.5");
        assertThatThrownBy(() -> published.curve(jet, STEEL, 1, QuantityArray.ofSi(Kind.LENGTH, 0.01, 0)))
                .hasMessageContaining("thickness is 0 mm");
        assertThat(published
                        .curve(jet, STEEL, 1, QuantityArray.ofSi(Kind.LENGTH, 1e-6))
                        .feeds()
                        .si(0))
                .isEqualTo(FeedModel.USUAL_HIGHEST_FEED_M_PER_S);
        FeedModel energy = SpecificEnergyFeed.ofSteel();
        assertThatThrownBy(() -> energy.curve(jet, STEEL, 0.5, QuantityArray.ofSi(Kind.LENGTH, 0.01)))
                .hasMessageContaining("quality index is 0.5");
        assertThatThrownBy(() -> energy.curve(jet, STEEL, 1, QuantityArray.ofSi(Kind.LENGTH, 0.01, 0)))
                .hasMessageContaining("thickness is 0 mm");
        assertThat(energy.curve(jet, STEEL, 1, QuantityArray.ofSi(Kind.LENGTH, 1e-6))
                        .feeds()
                        .si(0))
                .isEqualTo(FeedModel.USUAL_HIGHEST_FEED_M_PER_S);
    }

    @Test
    void gradesGoThroughTheStandardIndices() {
        assertThat(published.feed(jet, plate, CutQuality.FINE)).isEqualTo(published.feed(jet, plate, 4));
    }

    @Test
    void stacksCarryWhatTheirLayersCarry() {
        MaterialStack clad = MaterialStack.of(Workpiece.of(GRAPHITE, millimetres(5)), plate);

        assertThat(clad.feed(published, jet, 2).cautions())
                .extracting(Caution::code)
                .contains("unsure-machinability", "stack");
        assertThat(MaterialStack.of(plate).feed(published, jet, 2).cautions())
                .extracting(Caution::code)
                .doesNotContain("stack");
        assertThat(MaterialStack.of(plate).feed(published, jet, 2).si())
                .isCloseTo(published.feed(jet, plate, 2).si(), within(1e-12));
        var foils =
                MaterialStack.sheets(plate.withThickness(millimetres(0.001)), 2).feed(published, jet, 1);
        assertThat(foils.si()).isEqualTo(FeedModel.USUAL_HIGHEST_FEED_M_PER_S);
        assertThat(foils.cautions()).extracting(Caution::code).contains("thin-sheet");
        assertThat(MaterialStack.sheets(plate, 1000).layers()).hasSize(1000);
        assertThatThrownBy(() -> MaterialStack.sheets(plate, 1001)).hasMessageContaining("number of sheets is 1001");
        assertThatThrownBy(MaterialStack::of).hasMessageContaining("number of layers is 0");
        assertThatThrownBy(() -> clad.feed(published, jet, 0.9)).hasMessageContaining("quality index is 0.9");
        ThresholdFeed law = ThresholdFeed.of(STEEL, jet, 8e-9, megapascals(500), millimetresPerMinute(1));
        assertThatThrownBy(() -> MaterialStack.of(plate).feed(law, jet, 1))
                .isInstanceOf(CannotReachException.class)
                .hasMessage("the jet does not cut at all by this jet in a layer of the stack");
    }

    @Test
    void inversesSearchWithinTheirLimits() {
        FeedSolver inverse = FeedSolver.of(published);

        assertThatThrownBy(() -> inverse.withMaximumPressure(megapascals(1)))
                .hasMessageContaining("highest pressure is 1 MPa; it must be above 1 MPa");
        assertThatThrownBy(() -> inverse.withMaximumAbrasiveFlow(gramsPerMinute(0.06)))
                .hasMessageContaining("highest flow of abrasive is 0.06 g/min");
        assertThatThrownBy(() -> inverse.pressureFor(jet, plate, 1, millimetresPerMinute(0)))
                .hasMessageContaining("feed is 0 mm/min");
        // half of the tube is the widest orifice
        assertThatThrownBy(() -> inverse.orificeFor(jet, plate, 1, millimetresPerMinute(20_000)))
                .isInstanceOf(CannotReachException.class)
                .hasMessageContaining("by orifice up to 0.45 mm");
        assertThatThrownBy(() -> inverse.withMaximumAbrasiveFlow(gramsPerMinute(500))
                        .abrasiveFlowFor(jet, plate, 1, millimetresPerMinute(20_000)))
                .hasMessageContaining("by flow of abrasive up to 500 g/min");
        // d_o^1.374 to the power 1.15 in closed form
        double feed = published.separationFeedSi(jet, STEEL, 0.012);
        var orifice = inverse.orificeFor(jet, plate, 1, metresPerSecond(1.1 * feed));
        assertThat(orifice.si()).isCloseTo(0.3e-3 * Math.pow(1.1, 1 / (1.374 * 1.15)), within(1e-12));
        assertThat(orifice.relativeUncertainty()).isCloseTo(Math.hypot(0.15, 0.115) / (1.374 * 1.15), within(1e-6));
    }

    /** A custom pressure exponent is used in the inverse too. */
    @Test
    void ownPressureExponentsAreTurnedAround() {
        MachinabilityFeed own = published.withExponent(FeedExponent.PRESSURE, 1.3);
        double feed = own.separationFeedSi(jet, STEEL, 0.012);

        assertThat(own.pressureFor(jet, plate, 1, metresPerSecond(feed * 0.9)).si())
                .isCloseTo(380e6 * Math.pow(0.9, 1 / (1.3 * 1.15)), within(1.0));
    }

    @Test
    void aLimitedModelAnswersAsTheModelBelow() {
        ThresholdFeed law = ThresholdFeed.of(STEEL, jet, 8e-9, megapascals(60), millimetresPerMinute(1));
        FeedModel limited = LimitedFeed.of(law, millimetresPerMinute(3000));
        AbrasiveJet other = FeedModelContract.jet(380, 0.31, 0.9, 400);

        assertThat(limited.separationFeedSi(jet, STEEL, 0.012)).isEqualTo(law.separationFeedSi(jet, STEEL, 0.012));
        assertThat(limited.separationDepthSi(jet, STEEL, 0.01)).isEqualTo(law.separationDepthSi(jet, STEEL, 0.01));
        assertThat(limited.indexSi(jet, STEEL, 0.012, 0.01)).isEqualTo(law.indexSi(jet, STEEL, 0.012, 0.01));
        assertThat(limited.cautions(other, STEEL, 0.012, 0.01))
                .isEqualTo(law.cautions(other, STEEL, 0.012, 0.01))
                .hasSize(1);
        assertThat(limited.relativeUncertainty(STEEL)).isEqualTo(0.2);
    }

    @Test
    void aCutPointTellsItsCost() {
        CutPoint point = CuttingCost.of(published, CostRates.of(30, 1.5)).at(jet, plate, 2);

        assertThat(point.describe()).containsEntry("cost_per_metre", point.costPerMetre());
    }

    @Test
    void anExceptionTellsTheBest() {
        CannotReachException e = new CannotReachException(0.02, 0.01, "this jet", "at 300 MPa");

        assertThat(e)
                .hasMessage("a feed of 1200 mm/min cannot be reached by this jet: the best is 600 mm/min, at 300 MPa");
        assertThat(Kind.SPEED.si(e.wanted())).isEqualTo(0.02);
        assertThat(Kind.SPEED.si(e.best())).isEqualTo(0.01);
    }
}
