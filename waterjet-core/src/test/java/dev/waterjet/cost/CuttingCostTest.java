package dev.waterjet.cost;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.FeedModelContract;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.plan.Jobs;
import java.util.List;
import javax.measure.quantity.Pressure;
import org.junit.jupiter.api.Test;

class CuttingCostTest {

    private static final Material STEEL = Materials.standard().get("mild-steel");

    private final AbrasiveJet jet = FeedModelContract.jet(345, 0.30, 0.9, 400);
    private final Workpiece plate = Workpiece.of(STEEL, millimetres(12));
    private final CutConditions cut = CutConditions.of(jet, plate, MachinabilityFeed.published());

    /** u goes with m_a^(0.343 x 1.15), so the cheapest flow is (c_h/c_a) e/(1 - e) in closed form. */
    @Test
    void theCheapestFlowIsThatOfTheClosedForm() {
        CuttingCost.Point cheapest = cost(30, 1.5).cheapestAbrasiveFlow(3);
        double e = 0.343 * 1.15;

        assertThat(cheapest.jet().abrasiveFlowSi()).isCloseTo(30 / 3600.0 / 1.5 * e / (1 - e), within(1e-7));
        assertThat(cheapest.costPerMetre())
                .isCloseTo(
                        (30 / 3600.0 + 1.5 * cheapest.jet().abrasiveFlowSi())
                                / cheapest.feed().si(),
                        within(1e-12));
    }

    /** A falling efficiency makes abrasive worth less, so the cheapest flow is lower; dear abrasive lowers it too. */
    @Test
    void fallingEfficiencyAndDearAbrasiveLowerTheCheapestFlow() {
        MixingEfficiency falling = MixingEfficiency.decreasing(
                0.95,
                0.1,
                MixingEfficiency.scaleForOptimumLoading(0.18, 0.343),
                Evidence.of(EvidenceGrade.ASSUMED, Source.of("test")));
        double constant = cheapest(MachinabilityFeed.published(), 0.4);
        double loaded = cheapest(MachinabilityFeed.published().corrected(falling, 0.15), 0.4);

        assertThat(loaded).isLessThan(0.6 * constant);
        assertThat(loaded / jet.water().massFlowSi()).isBetween(0.03, 0.3);
        assertThat(cheapest(MachinabilityFeed.published().corrected(falling, 0.15), 2))
                .isLessThan(loaded);
    }

    private double cheapest(FeedModel model, double perKilogram) {
        return CuttingCost.of(prices(80, perKilogram), cut.withFeedModel(model))
                .cheapestAbrasiveFlow(3)
                .jet()
                .abrasiveFlowSi();
    }

    @Test
    void theHighestFlowIsKept() {
        CuttingCost.Point free =
                cost(80, 0).withMaximumAbrasiveFlow(gramsPerMinute(700)).cheapestAbrasiveFlow(3);

        assertThat(free.jet().abrasiveFlowSi()).isCloseTo(0.7 / 60, within(1e-12));
    }

    /**
     * At equal power d_o goes with p^-0.75 and m_a with 1/p, so u goes with p^(1.15 (1.594 - 0.75 x 1.374 - 0.343)): higher
     * pressure cuts faster with less abrasive.
     */
    @Test
    void equalPowerFollowsItsExponent() {
        QuantityArray<Pressure> pressures = QuantityArray.parse(Kind.PRESSURE, "300 MPa..600 MPa step 100 MPa");
        List<CuttingCost.Point> points = cost(80, 0.4).atEqualPower(3, pressures);

        double power = Kind.POWER.si(jet.water().ratedHydraulicPower());
        double exponent = 1.15 * (1.594 - 0.75 * 1.374 - 0.343);
        for (CuttingCost.Point point : points) {
            assertThat(Kind.POWER.si(point.jet().water().ratedHydraulicPower())).isCloseTo(power, within(1e-9 * power));
            assertThat(point.feed().si() / points.get(0).feed().si())
                    .isCloseTo(Math.pow(point.jet().water().pressureSi() / 300e6, exponent), within(1e-9));
        }
        assertThat(points.get(3).costPerMetre()).isLessThan(points.get(0).costPerMetre());
    }

    /** (30 / 3600 + 1.5 * 0.01) / 0.01 = 7/3 a metre. */
    @Test
    void costsPerMetreAddUp() {
        AbrasiveJet fuller = jet.withAbrasiveFlow(Kind.MASS_FLOW.of(0.01));
        double feed = MachinabilityFeed.published().feed(fuller, plate, 2).si();
        CuttingCost.Point point =
                CuttingCost.of(prices(30, 1.5), cut.withJet(fuller)).at(2);

        assertThat(point.jet()).isEqualTo(fuller);
        assertThat(point.feed()).isEqualTo(MachinabilityFeed.published().feed(fuller, plate, 2));
        assertThat(point.costPerMetre()).isCloseTo(7 / 3.0 * 0.01 / feed, within(1e-12));
        assertThat(point.describe()).containsEntry("cost_per_metre", point.costPerMetre());
        // water, energy, sludge and wear count as well
        assertThat(CuttingCost.of(Jobs.RATES, cut).at(2).costPerMetre())
                .isCloseTo(
                        (90 + Jobs.RATES.jetHour(jet))
                                / 3600
                                / MachinabilityFeed.published()
                                        .feed(jet, plate, 2)
                                        .si(),
                        within(1e-12));
    }

    @Test
    void impossibleSettingsAreRefused() {
        assertRefused(
                () -> cost(30, 1.5).withMaximumAbrasiveFlow(gramsPerMinute(0.5)),
                "must-be-above",
                "maximum abrasive flow rate",
                1e-5);
        assertRefused(
                () -> cost(30, 1.5).atEqualPower(2, QuantityArray.ofSi(Kind.PRESSURE, 0)),
                "must-be-above",
                "pressure at the orifice",
                0);
    }

    private static Prices prices(double perHour, double perKilogram) {
        return Prices.of("crowns").with(CostItem.MACHINE, perHour).with(CostItem.ABRASIVE, perKilogram);
    }

    private CuttingCost cost(double perHour, double perKilogram) {
        return CuttingCost.of(prices(perHour, perKilogram), cut);
    }
}
