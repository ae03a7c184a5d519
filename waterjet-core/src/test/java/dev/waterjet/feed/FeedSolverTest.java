package dev.waterjet.feed;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FeedSolverTest {

    private final AbrasiveJet jet = FeedModelContract.jet(345, 0.30, 0.9, 400);
    private final Workpiece steel = Workpiece.of(Materials.standard().get("mild-steel"), millimetres(12));

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
        double wanted = 1.1 * model.feed(jet, steel, 2).si();
        FeedSolver inverse = FeedSolver.of(model);
        var feed = Kind.SPEED.of(wanted);

        AbrasiveJet harder =
                jet.withPressure(inverse.pressureFor(jet, steel, 2, feed).value());
        assertThat(model.feed(harder, steel, 2).si()).isCloseTo(wanted, within(1e-10 * wanted));
        AbrasiveJet fuller = jet.withAbrasiveFlow(
                inverse.abrasiveFlowFor(jet, steel, 2, feed).value());
        assertThat(model.feed(fuller, steel, 2).si()).isCloseTo(wanted, within(1e-10 * wanted));
        var bore = inverse.orificeFor(jet, steel, 2, feed).value();
        AbrasiveJet wider =
                jet.withHead(jet.head().withOrifice(jet.head().orifice().withBore(bore)));
        assertThat(model.feed(wider, steel, 2).si()).isCloseTo(wanted, within(1e-10 * wanted));
    }

    /** The machinability model can be turned around in closed form. */
    @Test
    void theClosedFormsOfTheMachinabilityModelAgree() {
        for (MachinabilityFeed model : List.of(
                MachinabilityFeed.published(),
                MachinabilityFeed.publishedByWaterFlow(),
                MachinabilityFeed.published().withExponent(FeedExponent.FEED, 1.02))) {
            for (double wanted : new double[] {60, 100, 140}) {
                var feed = millimetresPerMinute(wanted);
                var solved = FeedSolver.of(model).pressureFor(jet, steel, 3, feed);
                var closed = model.pressureFor(jet, steel, 3, feed);
                assertThat(solved.si()).isCloseTo(closed.si(), within(1e-10 * closed.si()));
                assertThat(solved.relativeUncertainty()).isCloseTo(closed.relativeUncertainty(), within(1e-6));
                var solvedFlow = FeedSolver.of(model).abrasiveFlowFor(jet, steel, 3, feed);
                var closedFlow = model.abrasiveFlowFor(jet, steel, 3, feed);
                assertThat(solvedFlow.si()).isCloseTo(closedFlow.si(), within(1e-9 * closedFlow.si()));
            }
        }
    }

    @Test
    void whatCannotBeReachedSaysTheBest() {
        FeedSolver pump = FeedSolver.of(MachinabilityFeed.published()).withMaximumPressure(megapascals(400));
        CannotReachException e = catchThrowableOfType(
                CannotReachException.class, () -> pump.pressureFor(jet, steel, 2, millimetresPerMinute(900)));

        double best = MachinabilityFeed.published()
                .feed(jet.withPressure(megapascals(400)), steel, 2)
                .si();
        assertThat(Kind.SPEED.si(e.best())).isCloseTo(best, within(1e-12));
        assertThat(Kind.SPEED.si(e.wanted())).isCloseTo(0.015, within(1e-12));
        assertThat(e)
                .hasMessageContaining("a feed of 900 mm/min cannot be reached by pressure up to 400 MPa: the best is ")
                .hasMessageContaining(", at 400 MPa");
    }

    /** With energy alone and a constant efficiency the best loading ratio is 1 (derived; lossless mixing). */
    @Test
    void theBestFlowOfAbrasiveIsFoundInside() {
        FeedModel energy = SpecificEnergyFeed.ofSteel();
        CannotReachException e = catchThrowableOfType(
                CannotReachException.class,
                () -> FeedSolver.of(energy)
                        .withMaximumAbrasiveFlow(gramsPerMinute(10_000))
                        .abrasiveFlowFor(jet, steel, 1, millimetresPerMinute(50_000)));
        double atOne = energy.feed(
                        jet.withAbrasiveFlow(Kind.MASS_FLOW.of(jet.water().massFlowSi())), steel, 1)
                .si();

        assertThat(Kind.SPEED.si(e.best())).isCloseTo(atOne, within(1e-9 * atOne));
    }

    /** An efficiency that falls with loading, scaled for a best loading of 0.18, has its best there. */
    @Test
    void aFallingEfficiencyHasItsBestWhereItWasTold() {
        MixingEfficiency falling = MixingEfficiency.decreasing(
                0.95,
                0.1,
                MixingEfficiency.scaleForOptimumLoading(0.18),
                Evidence.of(EvidenceGrade.ASSUMED, Source.of("test")));
        AbrasiveJet loaded = jet.withHead(jet.head().withMixing(falling));
        FeedModel energy = SpecificEnergyFeed.ofSteel();
        double best = InverseKernel.best(
                flow -> energy.separationFeedSi(Jets.withAbrasiveFlow(loaded, flow), steel.material(), 0.01),
                1e-5,
                0.1);

        assertThat(best / loaded.water().massFlowSi()).isCloseTo(0.18, within(1e-4));
        MixingEfficiency forMachinability = MixingEfficiency.decreasing(
                0.95,
                0.1,
                LoadedFeed.scaleForOptimumLoading(0.18, 0.343),
                Evidence.of(EvidenceGrade.ASSUMED, Source.of("test")));
        FeedModel loadedModel = LoadedFeed.of(MachinabilityFeed.published(), forMachinability, 0.15);
        double deepest = InverseKernel.best(
                flow -> loadedModel.separationDepthSi(Jets.withAbrasiveFlow(jet, flow), steel.material(), 0.002),
                1e-5,
                0.1);
        assertThat(deepest / jet.water().massFlowSi()).isCloseTo(0.18, within(1e-4));
        FeedModel corrected = LoadedFeed.of(MachinabilityFeed.published(), falling, 0.15);
        AbrasiveJet atReference =
                jet.withAbrasiveFlow(Kind.MASS_FLOW.of(0.15 * jet.water().massFlowSi()));
        assertThat(corrected.feed(atReference, steel, 2).si())
                .isCloseTo(
                        MachinabilityFeed.published()
                                .feed(atReference, steel, 2)
                                .si(),
                        within(1e-12));
    }

    @Test
    void anUnusualAnswerCarriesTheCautionsOfItsJet() {
        var flow = FeedSolver.of(MachinabilityFeed.published())
                .withMaximumAbrasiveFlow(gramsPerMinute(3000))
                .abrasiveFlowFor(jet, steel, 2, millimetresPerMinute(280));

        assertThat(flow.cautions()).extracting(Caution::code).contains("loading");
    }

    @Test
    void belowAThresholdTheExceptionSaysSo() {
        ThresholdFeed law = ThresholdFeed.of(steel.material(), jet, 8e-9, megapascals(500), millimetresPerMinute(1));

        assertThatThrownBy(() -> FeedSolver.of(law)
                        .withMaximumPressure(megapascals(400))
                        .pressureFor(jet, steel, 1, millimetresPerMinute(10)))
                .isInstanceOf(CannotReachException.class)
                .hasMessage("the jet does not cut at all by pressure up to 400 MPa");
        assertThat(FeedSolver.of(law)
                        .pressureFor(jet, steel, 1, millimetresPerMinute(10))
                        .to(Units.MEGAPASCAL))
                .isBetween(500.0, 600.0);
    }

    @Test
    void impossibleQuestionsAreRefused() {
        assertThatThrownBy(() ->
                        FeedSolver.of(ErosionFeed.standard()).pressureFor(jet, steel, 0.5, millimetresPerMinute(10)))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("quality index is 0.5");
    }
}
