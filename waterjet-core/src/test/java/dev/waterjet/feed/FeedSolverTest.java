package dev.waterjet.feed;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.Refusals.refusal;
import static dev.waterjet.measure.Measures.gramsPerMinute;
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
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.Units;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FeedSolverTest {

    private static final Evidence TEST = Evidence.of(EvidenceGrade.ASSUMED, Source.of("test"));

    private final AbrasiveJet jet = FeedModelContract.jet(345, 0.30, 0.9, 400);
    private final Workpiece steel = Workpiece.of(Materials.standard().get("mild-steel"), millimetres(12));
    private final MachinabilityFeed published = MachinabilityFeed.published();
    private final CutConditions cut = CutConditions.of(jet, steel, published);

    static List<FeedModel> models() {
        return List.of(
                MachinabilityFeed.published(),
                MachinabilityFeed.publishedByWaterFlow(),
                MachinabilityFeed.published().withExponent(FeedExponent.PRESSURE, 1.3),
                SpecificEnergyFeed.ofSteel(),
                ErosionFeed.standard(),
                DeclinationFeed.threeHalvesPower(MachinabilityFeed.published()));
    }

    @ParameterizedTest
    @MethodSource("models")
    void theSettingFoundGivesTheFeed(FeedModel model) {
        double required = 1.1 * model.feed(jet, steel, 2).si();
        FeedSolver solver = FeedSolver.of(cut.withFeedModel(model));
        var feed = Kind.SPEED.of(required);

        AbrasiveJet harder = jet.withPressure(solver.pressureFor(2, feed).value());
        assertThat(model.feed(harder, steel, 2).si()).isCloseTo(required, within(1e-10 * required));
        AbrasiveJet fuller =
                jet.withAbrasiveFlow(solver.abrasiveFlowFor(2, feed).value());
        assertThat(model.feed(fuller, steel, 2).si()).isCloseTo(required, within(1e-10 * required));
        var bore = solver.orificeFor(2, feed).value();
        AbrasiveJet wider =
                jet.withHead(jet.head().withOrifice(jet.head().orifice().withBore(bore)));
        assertThat(model.feed(wider, steel, 2).si()).isCloseTo(required, within(1e-10 * required));
    }

    /** u is proportional to p^(1.594 k) and m_a^(0.343 k), with k = 1.15 or changed; du/u = k dA/A. */
    @Test
    void theClosedFormsOfTheMachinabilityModelAgree() {
        for (double k : new double[] {1.15, 1.02}) {
            MachinabilityFeed model = published.withExponent(FeedExponent.FEED, k);
            FeedSolver solver = FeedSolver.of(cut.withFeedModel(model));
            double now = model.feed(jet, steel, 3).si();
            double ofAbility = Math.hypot(0.15, k * 0.1) / k;
            for (double ratio : new double[] {0.5, 0.9, 1.2}) {
                var pressure = solver.pressureFor(3, metresPerSecond(ratio * now));
                assertThat(pressure.si() / 345e6).isCloseTo(Math.pow(ratio, 1 / (1.594 * k)), within(1e-10));
                assertThat(pressure.relativeUncertainty()).isCloseTo(ofAbility / 1.594, within(1e-6));
                var flow = solver.abrasiveFlowFor(3, metresPerSecond(ratio * now));
                assertThat(flow.si() * 60 / 0.4).isCloseTo(Math.pow(ratio, 1 / (0.343 * k)), within(1e-9));
                assertThat(flow.relativeUncertainty()).isCloseTo(ofAbility / 0.343, within(1e-6));
            }
        }
    }

    /** The water flow rate is proportional to the root of the pressure. */
    @Test
    void theWaterFlowFormDependsOnPressureByTheWaterToo() {
        MachinabilityFeed model = MachinabilityFeed.publishedByWaterFlow();
        double now = model.feed(jet, steel, 2).si();
        var pressure = FeedSolver.of(cut.withFeedModel(model)).pressureFor(2, metresPerSecond(0.8 * now));
        double exponent = 1.15 * (1.25 + 0.687 / 2);

        assertThat(pressure.si() / 345e6).isCloseTo(Math.pow(0.8, 1 / exponent), within(1e-10));
        assertThat(pressure.relativeUncertainty()).isCloseTo(Math.hypot(0.15, 0.115) / exponent, within(1e-6));
    }

    @Test
    void changedPressureExponentsAreInverted() {
        MachinabilityFeed own = published.withExponent(FeedExponent.PRESSURE, 1.3);
        double feed = own.separationFeedSi(jet, steel.material(), 0.012);

        assertThat(FeedSolver.of(cut.withFeedModel(own))
                        .pressureFor(1, metresPerSecond(feed * 0.9))
                        .si())
                .isCloseTo(345e6 * Math.pow(0.9, 1 / (1.3 * 1.15)), within(1.0));
    }

    @Test
    void anUnreachableFeedHasTheBestOne() {
        FeedSolver pump = FeedSolver.of(cut).withMaximumPressure(megapascals(400));
        NoSolutionException e =
                refusal(NoSolutionException.class, () -> pump.pressureFor(2, millimetresPerMinute(900)));

        double best =
                published.feed(jet.withPressure(megapascals(400)), steel, 2).si();
        assertThat(e.code()).isEqualTo("feed-out-of-reach");
        assertThat(Kind.SPEED.si(e.best(Kind.SPEED).orElseThrow())).isCloseTo(best, within(1e-12));
        assertThat(e.parameters())
                .containsEntry("setting", "pressure")
                .containsEntry("feed_m_per_s", 0.015)
                .containsEntry("limit_Pa", 400e6)
                .containsEntry("optimum_Pa", 400e6);
    }

    /** No pump of more than 600 MPa is assumed, whatever the model. */
    @Test
    void thePressureIsLimitedByDefault() {
        Workpiece plate = steel.withThickness(millimetres(10));

        assertThat(assertRefused(
                                () -> FeedSolver.of(cut.withWorkpiece(plate))
                                        .pressureFor(1, millimetresPerMinute(2500)),
                                "feed-out-of-reach")
                        .parameters())
                .containsEntry("limit_Pa", 600e6);
    }

    /** With energy alone and a constant efficiency the best loading ratio is 1 (derived; lossless mixing). */
    @Test
    void theOptimumOfTheAbrasiveFlowIsFoundInside() {
        FeedModel energy = SpecificEnergyFeed.ofSteel();
        NoSolutionException e = refusal(
                NoSolutionException.class,
                () -> FeedSolver.of(cut.withFeedModel(energy))
                        .withMaximumAbrasiveFlow(gramsPerMinute(10_000))
                        .abrasiveFlowFor(1, millimetresPerMinute(50_000)));
        double atOne = energy.feed(
                        jet.withAbrasiveFlow(Kind.MASS_FLOW.of(jet.water().massFlowSi())), steel, 1)
                .si();

        assertThat(Kind.SPEED.si(e.best(Kind.SPEED).orElseThrow())).isCloseTo(atOne, within(1e-9 * atOne));
    }

    /** A decreasing efficiency, scaled for an optimum loading of 0.18, has its optimum there. */
    @Test
    void aDecreasingEfficiencyHasItsOptimumWhereItWasSet() {
        MixingEfficiency decreasing =
                MixingEfficiency.decreasing(0.95, 0.1, MixingEfficiency.scaleForOptimumLoading(0.18), TEST);
        AbrasiveJet loaded = jet.withHead(jet.head().withMixing(decreasing));
        FeedModel energy = SpecificEnergyFeed.ofSteel();
        double best = LogRoot.maximum(
                flow -> energy.separationFeedSi(Jets.withAbrasiveFlow(loaded, flow), steel.material(), 0.01),
                1e-5,
                0.1);

        assertThat(best / loaded.water().massFlowSi()).isCloseTo(0.18, within(1e-4));
        MixingEfficiency forMachinability =
                MixingEfficiency.decreasing(0.95, 0.1, MixingEfficiency.scaleForOptimumLoading(0.18, 0.343), TEST);
        FeedModel corrected = published.corrected(forMachinability, 0.15);
        double deepest = LogRoot.maximum(
                flow -> corrected.separationDepthSi(Jets.withAbrasiveFlow(jet, flow), steel.material(), 0.002),
                1e-5,
                0.1);
        assertThat(deepest / jet.water().massFlowSi()).isCloseTo(0.18, within(1e-4));
        AbrasiveJet atReference =
                jet.withAbrasiveFlow(Kind.MASS_FLOW.of(0.15 * jet.water().massFlowSi()));
        assertThat(published
                        .corrected(decreasing, 0.15)
                        .feed(atReference, steel, 2)
                        .si())
                .isCloseTo(published.feed(atReference, steel, 2).si(), within(1e-12));
    }

    @Test
    void aSolutionHasTheCautionsOfItsJetAndMaterial() {
        Workpiece graphite = Workpiece.of(Materials.standard().get("graphite"), millimetres(30));

        assertThat(FeedSolver.of(cut)
                        .withMaximumAbrasiveFlow(gramsPerMinute(3000))
                        .abrasiveFlowFor(2, millimetresPerMinute(280))
                        .cautions())
                .extracting(Caution::code)
                .contains("loading");
        assertThat(FeedSolver.of(cut.withWorkpiece(graphite))
                        .pressureFor(2, millimetresPerMinute(500))
                        .cautions())
                .extracting(Caution::code)
                .contains("unsure-machinability");
    }

    @Test
    void belowAThresholdNothingIsCut() {
        ThresholdFeed law = ThresholdFeed.of(steel.material(), jet, 8e-9, megapascals(500), millimetresPerMinute(1));
        FeedSolver solver = FeedSolver.of(cut.withFeedModel(law));

        assertRefused(
                () -> solver.withMaximumPressure(megapascals(400)).pressureFor(1, millimetresPerMinute(10)), "no-cut");
        assertThat(solver.pressureFor(1, millimetresPerMinute(10)).to(Units.MEGAPASCAL))
                .isBetween(500.0, 600.0);
    }

    @Test
    void theSearchKeepsItsLimits() {
        FeedSolver solver =
                FeedSolver.of(CutConditions.of(FeedModelContract.jet(380, 0.3, 0.9, 400), steel, published));

        assertRefused(() -> solver.withMaximumPressure(megapascals(1)), "must-be-above", "maximum pressure", 1e6);
        assertRefused(
                () -> solver.withMaximumAbrasiveFlow(gramsPerMinute(0.06)),
                "must-be-above",
                "maximum abrasive flow rate",
                1e-6);
        assertRefused(() -> solver.pressureFor(1, millimetresPerMinute(0)), "must-be-above", "feed rate", 0);
        assertRefused(() -> solver.pressureFor(0.5, millimetresPerMinute(9)), "must-be-at-least", "quality index", 1);
        // half of the focusing tube is the largest orifice
        assertThat(assertRefused(() -> solver.orificeFor(1, millimetresPerMinute(20_000)), "feed-out-of-reach")
                        .parameters())
                .containsEntry("limit_m", 0.45e-3);
        assertRefused(
                () -> solver.withMaximumAbrasiveFlow(gramsPerMinute(500))
                        .abrasiveFlowFor(1, millimetresPerMinute(20_000)),
                "feed-out-of-reach");
        // d_o^1.374 to the power 1.15 in closed form
        double feed = published.separationFeedSi(FeedModelContract.jet(380, 0.3, 0.9, 400), steel.material(), 0.012);
        var orifice = solver.orificeFor(1, metresPerSecond(1.1 * feed));
        assertThat(orifice.si()).isCloseTo(0.3e-3 * Math.pow(1.1, 1 / (1.374 * 1.15)), within(1e-12));
        assertThat(orifice.relativeUncertainty()).isCloseTo(Math.hypot(0.15, 0.115) / (1.374 * 1.15), within(1e-6));
    }
}
