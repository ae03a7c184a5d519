package dev.waterjet.head;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.pierce.PierceSelector;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.plan.Jobs;
import dev.waterjet.quality.CutQuality;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import javax.measure.quantity.Length;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.kilowatts;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

class HeadSelectorTest {

    private static final double[] ORIFICES = {0.1, 0.18, 0.25, 0.33};
    private static final double[] TUBES = {0.3, 0.5, 0.76, 1.02};
    private static final double[] LENGTHS = {20, 50, 76, 102};
    private static final int[] MESHES = {50, 80, 230};
    private static final double[] FLOWS = {20, 100, 300, 600};

    private static final HeadInventory LIST = HeadInventory.of(
            Arrays.stream(ORIFICES)
                    .mapToObj(mm -> Orifice.sapphire(millimetres(mm)))
                    .toList(),
            QuantityArray.of(Kind.LENGTH, TUBES, Units.MILLIMETRE),
            QuantityArray.of(Kind.LENGTH, LENGTHS, Units.MILLIMETRE),
            Arrays.stream(MESHES)
                    .mapToObj(number -> Abrasive.garnet(Mesh.of(number)))
                    .toList(),
            QuantityArray.of(Kind.MASS_FLOW, FLOWS, Units.GRAM_PER_MINUTE));

    private static HeadSelector selector(double kilowatts) {
        return HeadSelector.of(LIST, megapascals(380), kilowatts(kilowatts)).withRates(Jobs.RATES);
    }

    /** Every head of the list is tried once more, from the rules as they are documented and by the plain models. */
    @Property(tries = 25, seed = "20261125")
    void neverBeatenByBruteForce(
            @ForAll @DoubleRange(min = 5, max = 45) double kilowatts,
            @ForAll @DoubleRange(min = 1, max = 40) double thicknessMm,
            @ForAll @DoubleRange(min = 0.1, max = 1) double radiusMm,
            @ForAll @DoubleRange(min = 0.02, max = 0.5) double toleranceMm,
            @ForAll @DoubleRange(min = 1, max = 200) double leastFeed) {
        PartRequirement demand = PartRequirement.of(Jobs.plate("titanium", thicknessMm), CutQuality.MEDIUM, millimetres(800))
                .withPierces(2)
                .withSmallestRadius(millimetres(radiusMm))
                .withMinimumSlotWidth(millimetres(2 * radiusMm))
                .withTolerance(millimetres(toleranceMm))
                .withMinimumFeed(millimetresPerMinute(leastFeed));
        HeadSelection selection = selector(kilowatts).select(demand);

        double leastTime = Double.POSITIVE_INFINITY;
        double leastCost = Double.POSITIVE_INFINITY;
        int serving = 0;
        for (double orifice : ORIFICES) {
            for (double tube : TUBES) {
                for (double length : LENGTHS) {
                    for (int mesh : MESHES) {
                        for (double flow : FLOWS) {
                            if (tube / orifice < 2.5
                                    || tube / orifice > 4
                                    || length / tube < 50
                                    || length / tube > 100.5
                                    || Kind.LENGTH.si(Mesh.of(mesh).maximumGrainSize()) * 1000 / tube > 0.4) {
                                continue;
                            }
                            AbrasiveJet jet = CuttingHead.of(
                                            Orifice.sapphire(millimetres(orifice)),
                                            FocusingTube.of(millimetres(tube), millimetres(length)))
                                    .jet(megapascals(380), Abrasive.garnet(Mesh.of(mesh)), gramsPerMinute(flow));
                            double feed = MachinabilityFeed.published()
                                    .feed(jet, demand.workpiece(), CutQuality.MEDIUM)
                                    .si();
                            CutConditions cut =
                                    CutConditions.of(jet, demand.workpiece(), MachinabilityFeed.published());
                            Kerf kerf = KerfModel.standard().kerf(cut, Kind.SPEED.of(feed));
                            double wide = kerf.maximumWidth().si();
                            if (Kind.RATIO.si(jet.loadingRatio()) > 0.25
                                    || Kind.POWER.si(jet.water().ratedHydraulicPower()) > kilowatts * 1000
                                    || feed < leastFeed / 60000
                                    || wide / 2 > radiusMm / 1000
                                    || (wide - kerf.minimumWidth().si()) / 2 > toleranceMm / 1000) {
                                continue;
                            }
                            serving++;
                            double pierce = PierceSelector.of(PierceSettings.defaults())
                                    .select(cut)
                                    .time()
                                    .si();
                            double time = 0.8 / feed + 2 * pierce;
                            leastTime = Math.min(leastTime, time);
                            leastCost = Math.min(leastCost, (90 + Jobs.RATES.jetHour(jet)) * time / 3600);
                        }
                    }
                }
            }
        }

        assertThat(selection.ranked(RankBy.TIME)).hasSize(serving);
        assertThat(selection.refused()).hasSize(LIST.size() - serving);
        if (serving > 0) {
            assertThat(selection.best(RankBy.TIME).timeSi()).isCloseTo(leastTime, within(1e-9 * leastTime));
            assertThat(selection.best(RankBy.COST).cost()).isCloseTo(leastCost, within(1e-9 * leastCost));
        }
    }

    @Test
    void theFrontHoldsWhateverIsNotBeatenInBoth() {
        HeadSelection selection =
                selector(20).select(PartRequirement.of(Jobs.plate("aluminium", 12), CutQuality.FINE, millimetres(2000)));
        List<HeadCandidate> front = selection.paretoFront();

        assertThat(front).isNotEmpty();
        assertThat(front.get(0)).isEqualTo(selection.best(RankBy.TIME));
        assertThat(front.get(front.size() - 1).cost())
                .isEqualTo(selection.best(RankBy.COST).cost());
        for (HeadCandidate trial : selection.ranked(RankBy.COST)) {
            assertThat(front).anyMatch(best -> best.timeSi() <= trial.timeSi() && best.cost() <= trial.cost());
        }
        for (int i = 1; i < front.size(); i++) {
            assertThat(front.get(i).timeSi()).isGreaterThan(front.get(i - 1).timeSi());
            assertThat(front.get(i).cost()).isLessThan(front.get(i - 1).cost());
        }
    }

    /** 40 mm of titanium needs a more powerful head than 1 mm of stainless steel (common practice, no source). */
    @Test
    void thickTitaniumNeedsAMorePowerfulHeadThanThinSteel() {
        assertThat(leastPower("titanium", 40)).isGreaterThan(3 * leastPower("stainless-304", 1));
    }

    private static double leastPower(String material, double mm) {
        return selector(50)
                .select(PartRequirement.of(Jobs.plate(material, mm), CutQuality.MEDIUM, millimetres(1000))
                        .withMinimumFeed(millimetresPerMinute(12)))
                .ranked(RankBy.TIME)
                .stream()
                .map(trial -> Kind.POWER.si(trial.jet().water().ratedHydraulicPower()))
                .min(Comparator.naturalOrder())
                .orElseThrow();
    }

    @Test
    void everyRefusedHeadSaysWhy() {
        PartRequirement demand = PartRequirement.of(Jobs.plate("stainless-304", 6), CutQuality.FINE, millimetres(500))
                .withSmallestRadius(millimetres(0.2));
        HeadSelection selection = selector(8).select(demand);

        assertThat(selection.refused())
                .allSatisfy(head -> assertThat(head.faults()).isNotEmpty());
        assertThat(selection.rejectionCounts())
                .containsKeys(HeadFault.Rule.POWER, HeadFault.Rule.RADIUS, HeadFault.Rule.LOADING);
        // 2.1074 x 0.65 x 0.25^2 x sqrt(380) L/min of water at 380 MPa
        assertThat(selection.refused().stream()
                        .flatMap(head -> head.faults().stream())
                        .filter(fault -> fault.rule() == HeadFault.Rule.POWER)
                        .map(HeadFault::text))
                .anyMatch(text -> text.equals("the jet takes 10.6 kW, the pump gives 8 kW"));
        assertThat(selection.explanation(RankBy.TIME))
                .startsWith("Of 768 heads ")
                .contains("this is the quickest", "Refused: ", "power ");
    }

    @Test
    void whereNoHeadServesTheRulesAreNamed() {
        PartRequirement demand = PartRequirement.of(Jobs.plate("stainless-304", 6), CutQuality.FINE, millimetres(500))
                .withSmallestRadius(millimetres(0.01));
        HeadSelection selection = selector(20).select(demand);

        assertThat(selection.paretoFront()).isEmpty();
        assertThatThrownBy(() -> selection.best(RankBy.TIME))
                .isInstanceOf(NoHeadException.class)
                .hasMessageStartingWith("no head of the list serves this part. Refused: ")
                .hasMessageContaining("radius ");
    }

    @Test
    void anEmptyShelfIsRefusedByName() {
        QuantityArray<Length> none = QuantityArray.ofSi(Kind.LENGTH);
        assertThatThrownBy(() -> HeadInventory.of(List.of(), none, none, List.of(), QuantityArray.ofSi(Kind.MASS_FLOW)))
                .isInstanceOf(DomainException.class)
                .hasMessage("number of orifices is 0; it must be at least 1 (a list of heads needs one of each)");
        assertThatThrownBy(() -> HeadInventory.parse("part,size\norifice,0.25 mm\n"))
                .hasMessageContaining("number of bores of focusing tubes is 0");
    }

    @Test
    void aShelfIsReadFromTextWithThePlaceOfEachFault() {
        HeadInventory list = HeadInventory.parse("""
                part,size
                # the drawer by the door
                orifice,0.25 mm
                orifice,0.010 in
                tube,0.76 mm
                length,76 mm
                mesh,80
                flow,300 g/min
                """);

        assertThat(list.size()).isEqualTo(2);
        assertThat(list.orifices().get(1).boreSi()).isCloseTo(0.254e-3, within(1e-15));
        assertThatThrownBy(() -> HeadInventory.parse("part;size\n"))
                .isInstanceOf(TextException.class)
                .hasMessage("line 1, column 1: the header must be \"part,size\"");
        assertThatThrownBy(() -> HeadInventory.parse("part,size\nnozzle,1 mm\n"))
                .hasMessageStartingWith("line 2, column 1: \"nozzle\" is no part of a head");
        assertThatThrownBy(() -> HeadInventory.parse("part,size\norifice,9 mm\n"))
                .hasMessageStartingWith("line 2, column 9: orifice bore is 9 mm");
        assertThatThrownBy(() -> HeadInventory.parse("part,size\nmesh,85\n"))
                .hasMessageStartingWith("line 2, column 6: sieve number is 85");
        assertThatThrownBy(() -> HeadInventory.parse("part,size\nflow,lots\n")).hasMessageStartingWith("line 2, column 6: ");
    }

    @Test
    void theUsualShelfServesTheWorkshopsParts() {
        HeadSelection selection = HeadSelector.of(HeadInventory.standard(), megapascals(380), kilowatts(22))
                .select(PartRequirement.of(Jobs.plate("stainless-304", 6), CutQuality.MEDIUM, millimetres(1500)));

        assertThat(selection.ranked(RankBy.TIME)).isNotEmpty();
        assertThat(selection.best(RankBy.TIME).jet().head().cautions()).isEmpty();
    }

    @Test
    void aSelectionTellsWhatServesAndWhyTheOthersDoNot() {
        PartRequirement demand = PartRequirement.of(Jobs.plate("stainless-304", 6), CutQuality.FINE, millimetres(500));
        HeadSelection selection = selector(8).select(demand);
        int serving = selection.ranked(RankBy.TIME).size();

        assertThat(selection).hasToString(serving + " heads serve, " + (768 - serving) + " do not");
        assertThat(selection.describe())
                .containsEntry("serving", (long) serving)
                .containsKeys("demand", "refused", "front", "refused_for_power", "refused_for_loading");
        assertThat(selection.refused().get(0).describe())
                .containsKeys("orifice_m", "tube_m", "length_m", "abrasive", "faults");
    }

    @Test
    void anHourOfTheJetCostsTheSumOfItsItems() {
        // water, abrasive, energy, sludge and the lives of orifice and tube, worked out one by one
        double expected = 3 * 3600 * Jobs.JET.water().volumeFlowSi()
                + (0.45 + 0.15) * 18
                + 0.25 * Kind.POWER.si(Jobs.JET.water().ratedHydraulicPower()) / 0.65 / 1000
                + 20 / Math.sqrt(50 * 100)
                + 110 / Math.sqrt(50 * 150);

        assertThat(Jobs.RATES.jetHour(Jobs.JET)).isCloseTo(expected, within(1e-9));
    }
}
