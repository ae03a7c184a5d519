package dev.waterjet.cost;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.FeedModelContract;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import java.util.List;
import javax.measure.quantity.Pressure;
import org.junit.jupiter.api.Test;

class CuttingCostTest {

    private static final Material STEEL = Materials.standard().get("mild-steel");

    private final AbrasiveJet jet = FeedModelContract.jet(345, 0.30, 0.9, 400);
    private final Workpiece plate = Workpiece.of(STEEL, millimetres(12));

    /** u goes with m_a^(0.343 x 1.15), so the cheapest flow is (c_h/c_a) e/(1 - e) in closed form. */
    @Test
    void theCheapestFlowIsThatOfTheClosedForm() {
        CostRates rates = CostRates.of(30, 1.5);
        CutPoint cheapest = CuttingCost.of(MachinabilityFeed.published(), rates).cheapestAbrasiveFlow(jet, plate, 3);
        double e = 0.343 * 1.15;

        assertThat(cheapest.jet().abrasiveFlowSi()).isCloseTo(30 / 3600.0 / 1.5 * e / (1 - e), within(1e-7));
        assertThat(cheapest.costPerMetre())
                .isCloseTo(
                        rates.perMetre(cheapest.feed().value(), cheapest.jet().abrasiveFlow()), within(1e-12));
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
        return CuttingCost.of(model, CostRates.of(80, perKilogram))
                .cheapestAbrasiveFlow(jet, plate, 3)
                .jet()
                .abrasiveFlowSi();
    }

    @Test
    void theHighestFlowIsKept() {
        CutPoint free = CuttingCost.of(MachinabilityFeed.published(), CostRates.of(80, 0))
                .withMaximumAbrasiveFlow(gramsPerMinute(700))
                .cheapestAbrasiveFlow(jet, plate, 3);

        assertThat(free.jet().abrasiveFlowSi()).isCloseTo(0.7 / 60, within(1e-12));
    }

    /**
     * At equal power d_o goes with p^-0.75 and m_a with 1/p, so u goes with p^(1.15 (1.594 - 0.75 x 1.374 - 0.343)): higher
     * pressure cuts faster with less abrasive.
     */
    @Test
    void equalPowerFollowsItsExponent() {
        QuantityArray<Pressure> pressures = QuantityArray.parse(Kind.PRESSURE, "300 MPa..600 MPa step 100 MPa");
        List<CutPoint> points = CuttingCost.of(MachinabilityFeed.published(), CostRates.of(80, 0.4))
                .atEqualPower(jet, plate, 3, pressures);

        double power = Kind.POWER.si(jet.water().ratedHydraulicPower());
        double exponent = 1.15 * (1.594 - 0.75 * 1.374 - 0.343);
        for (CutPoint point : points) {
            assertThat(Kind.POWER.si(point.jet().water().ratedHydraulicPower())).isCloseTo(power, within(1e-9 * power));
            assertThat(point.feed().si() / points.get(0).feed().si())
                    .isCloseTo(Math.pow(point.jet().water().pressureSi() / 300e6, exponent), within(1e-9));
        }
        assertThat(points.get(3).costPerMetre()).isLessThan(points.get(0).costPerMetre());
    }

    @Test
    void impossibleEconomiesAreRefused() {
        assertThatThrownBy(() -> CostRates.of(0, 0)).isInstanceOf(DomainException.class);
    }

    @Test
    void ratesAreTheirCosts() {
        ValueContract.of(() -> CostRates.of(80, 0.4))
                .has("per hour", CostRates::perHour, 80.0)
                .has("per kilogram", CostRates::perKilogram, 0.4)
                .differs("hour", CostRates.of(90, 0.4))
                .differs("kilogram", CostRates.of(80, 0.5))
                .prints("80.0 per hour", "0.4 per kg")
                .check();
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
        CuttingCost economy = CuttingCost.of(MachinabilityFeed.published(), CostRates.of(30, 1.5));
        CutPoint point = economy.at(jet, plate, 2);
        assertThat(point.jet()).isEqualTo(jet);
        assertThat(point.feed()).isEqualTo(MachinabilityFeed.published().feed(jet, plate, 2));
        assertThat(point.costPerMetre())
                .isEqualTo(CostRates.of(30, 1.5).perMetre(point.feed().value(), jet.abrasiveFlow()));
        assertThatThrownBy(() -> economy.withMaximumAbrasiveFlow(gramsPerMinute(0.5)))
                .hasMessageContaining("highest flow of abrasive is 0.5 g/min; it must be above 0.6 g/min");
        assertThatThrownBy(() -> economy.atEqualPower(jet, plate, 2, QuantityArray.ofSi(Kind.PRESSURE, 0)))
                .hasMessageContaining("pressure at the orifice is 0 MPa");
    }

    @Test
    void aCutPointTellsItsCost() {
        CutPoint point = CuttingCost.of(MachinabilityFeed.published(), CostRates.of(30, 1.5))
                .at(jet, plate, 2);

        assertThat(point.describe()).containsEntry("cost_per_metre", point.costPerMetre());
    }
}
