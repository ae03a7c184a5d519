package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.kilowatts;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.waterjet.cost.CostItem;
import dev.waterjet.head.HeadCandidate;
import dev.waterjet.head.HeadInventory;
import dev.waterjet.head.HeadSelector;
import dev.waterjet.head.HeadSelector.Ranking;
import dev.waterjet.head.PartRequirement;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** A head that is selected for a part has the feed rate, pierce, time and cost of the plan with that head. */
class SelectedHeadTest {

    private static final EdgeRequirement COARSE = EdgeRequirement.of(CutQuality.COARSE);

    /** Parts with so little corner that a quick machine cuts them at the feed rate of straight edges. */
    static Stream<Arguments> parts() {
        Contour square = Contour.from(Point.millimetres(0, 0))
                .requirement(COARSE)
                .lineTo(Point.millimetres(900, 0))
                .lineTo(Point.millimetres(900, 700))
                .lineTo(Point.millimetres(0, 700))
                .close();
        Contour disc = Contour.circle(Point.millimetres(200, 200), millimetres(160), COARSE);
        Part ring = Part.of(
                square,
                List.of(
                        Contour.circle(Point.millimetres(300, 350), millimetres(140), COARSE),
                        Contour.circle(Point.millimetres(640, 350), millimetres(90), COARSE)));
        return Stream.of(
                Arguments.of(Part.of(square), "stainless-304", 3.0),
                Arguments.of(Part.of(disc), "aluminium-6061-t6", 8.0),
                Arguments.of(ring, "titanium", 6.0),
                Arguments.of(ring, "granite", 12.0));
    }

    @ParameterizedTest
    @MethodSource("parts")
    void onePartHasOneFeedRateOneTimeAndOneCost(Part part, String material, double thicknessMm) {
        Workpiece plate = Jobs.plate(material, thicknessMm);
        HeadCandidate rough = select(PartRequirement.of(plate, CutQuality.COARSE, millimetres(1000)));
        PartPlan plan = PartPlanner.of(Setup.of(
                                rough.jet().head(),
                                PumpSetting.ofPower(kilowatts(30), megapascals(380)),
                                MachineLimits.of(millimetresPerMinute(60_000), metresPerSquareSecond(20)))
                        .withAbrasive(rough.jet().abrasive(), rough.jet().abrasiveFlow())
                        .withRequirement(COARSE)
                        .withPrices(Jobs.RATES.with(CostItem.SHEET, 0)))
                .plan(part, plate);
        HeadCandidate same = select(
                PartRequirement.of(plate, CutQuality.COARSE, plan.cutLength()).withPierces(plan.pierces()));

        assertThat(same.jet()).isEqualTo(plan.conditions().jet());
        assertThat(same.feed()).isEqualTo(plan.conditions().feed(CutQuality.COARSE));
        assertThat(plan.cuts()).allSatisfy(cut -> assertThat(cut.pierce()).isEqualTo(same.pierce()));
        double withoutRapid = plan.work().jetTime().si()
                + plan.pierces() * same.pierce().idleTime().getValue().doubleValue();
        assertThat(same.time().si()).isCloseTo(withoutRapid, withinPercentage(2));
        assertThat(same.cost()).isCloseTo(plan.cost(1).orElseThrow().total().si(), withinPercentage(3));
    }

    /** The jet has the bore at the exit of the tube: feed rate with its power of -0.618 x 1.15, the kerf with the bore. */
    @Test
    void aWornTubeCutsSlowerAndWider() {
        Workpiece plate = Jobs.plate("mild-steel-a36", 10);
        FocusingTube tube = FocusingTube.of(millimetres(1.02), millimetres(76));
        PartPlan fresh = plan(tube, plate);
        PartPlan worn = plan(tube.withExitBore(millimetres(1.3)), plate);
        double slower = Math.pow(1.3 / 1.02, -0.618 * 1.15);

        assertThat(worn.conditions().feed(CutQuality.COARSE).si()
                        / fresh.conditions().feed(CutQuality.COARSE).si())
                .isCloseTo(slower, withinPercentage(0.01));
        assertThat(worn.cuttingTime().si() * slower / fresh.cuttingTime().si()).isBetween(0.97, 1.03);
        assertThat(offsetMm(worn) - offsetMm(fresh)).isBetween(0.1, 0.18);
        assertThat(worn.cost(1).orElseThrow().total().si())
                .isGreaterThan(fresh.cost(1).orElseThrow().total().si());
    }

    private static PartPlan plan(FocusingTube tube, Workpiece plate) {
        return PartPlanner.of(Setup.of(
                                CuttingHead.of(Orifice.sapphire(millimetres(0.33)), tube),
                                PumpSetting.ofPower(kilowatts(30), megapascals(380)),
                                MachineLimits.of(millimetresPerMinute(60_000), metresPerSquareSecond(20)))
                        .withRequirement(COARSE)
                        .withPrices(Jobs.RATES))
                .plan(Part.of(Contour.circle(Point.millimetres(200, 200), millimetres(160), COARSE)), plate);
    }

    private static double offsetMm(PartPlan plan) {
        return 1e3 * Kind.LENGTH.si(plan.cuts().get(0).offset().orElseThrow());
    }

    private static HeadCandidate select(PartRequirement requirement) {
        return HeadSelector.of(HeadInventory.standard(), megapascals(380), kilowatts(30))
                .withPrices(Jobs.RATES)
                .select(requirement)
                .best(Ranking.TIME);
    }
}
