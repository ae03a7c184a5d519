package dev.waterjet.cost;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.FeedModelContract;
import dev.waterjet.feed.LoadedFeed;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.feed.MaterialStack;
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
    private static final Material ALUMINIUM = Materials.standard().get("aluminium");

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
                LoadedFeed.scaleForOptimumLoading(0.18, 0.343),
                Evidence.of(EvidenceGrade.ASSUMED, Source.of("test")));
        double constant = cheapest(MachinabilityFeed.published(), 0.4);
        double loaded = cheapest(LoadedFeed.of(MachinabilityFeed.published(), falling, 0.15), 0.4);

        assertThat(loaded).isLessThan(0.6 * constant);
        assertThat(loaded / jet.water().massFlowSi()).isBetween(0.03, 0.3);
        assertThat(cheapest(LoadedFeed.of(MachinabilityFeed.published(), falling, 0.15), 2))
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

    /** A stack of one material is a plate of the whole thickness. */
    @Test
    void sheetsOfOneMaterialAreOnePlate() {
        for (FeedModel model : List.of(MachinabilityFeed.published(), ErosionFeed.standard())) {
            double stacked = MaterialStack.sheets(plate.withThickness(millimetres(3)), 4)
                    .feed(model, jet, 2)
                    .si();
            assertThat(stacked).isCloseTo(model.feed(jet, plate, 2).si(), within(1e-12));
        }
        // u goes with h^-1.15, so four sheets yield 4^-0.15 of the length in the same time
        assertThat(MaterialStack.sheets(plate, 4).timeRatio(MachinabilityFeed.published(), jet, 2))
                .isCloseTo(Math.pow(4, -0.15), within(1e-9));
    }

    /** Layers of the machinability model add up as h/N_m: closed form. */
    @Test
    void layersAddUpByTheirMachinability() {
        Workpiece clad = Workpiece.of(ALUMINIUM, millimetres(6));
        MaterialStack stack = MaterialStack.of(clad, plate);
        double equivalent = 0.006 * STEEL.machinabilitySi() / ALUMINIUM.machinabilitySi() + 0.012;
        var feed = stack.feed(MachinabilityFeed.published(), jet, 2);

        assertThat(feed.si())
                .isCloseTo(
                        MachinabilityFeed.published()
                                .feed(jet, plate.withThickness(Kind.LENGTH.of(equivalent)), 2)
                                .si(),
                        within(1e-12));
        assertThat(feed.cautions()).extracting(Caution::code).contains("stack");
        assertThat(feed.relativeUncertainty()).isCloseTo(Math.hypot(0.15, 0.115), within(1e-9));
        assertThat(Kind.LENGTH.si(stack.thickness())).isCloseTo(0.018, within(1e-15));
    }

    @Test
    void impossibleEconomiesAreRefused() {
        assertThatThrownBy(() -> CostRates.of(0, 0)).isInstanceOf(DomainException.class);
        assertThatThrownBy(() -> MaterialStack.sheets(plate, 0))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("number of sheets is 0; it must be at least 1");
    }
}
