package dev.waterjet.head;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.kilowatts;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.head.HeadSelection.Rule;
import dev.waterjet.head.HeadSelector.Ranking;
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
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.pierce.PierceSelector;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.plan.Jobs;
import dev.waterjet.quality.CutQuality;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class HeadSelectorTest {

    private static final double[] ORIFICES = {0.1, 0.18, 0.25, 0.33};
    private static final double[] TUBES = {0.3, 0.5, 0.76, 1.02};
    private static final double[] LENGTHS = {20, 50, 76, 102};
    private static final int[] MESHES = {50, 80, 230};
    private static final double[] FLOWS = {20, 100, 300, 600};

    private static final HeadInventory INVENTORY = HeadInventory.of(
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
        return HeadSelector.of(INVENTORY, megapascals(380), kilowatts(kilowatts))
                .withPrices(Jobs.RATES);
    }

    /** Every head of the list is tried once more, from the rules as they are documented and by the plain models. */
    @Property(tries = 25, seed = "20261125")
    void neverBeatenByBruteForce(
            @ForAll @DoubleRange(min = 5, max = 45) double kilowatts,
            @ForAll @DoubleRange(min = 1, max = 40) double thicknessMm,
            @ForAll @DoubleRange(min = 0.1, max = 1) double radiusMm,
            @ForAll @DoubleRange(min = 0.02, max = 0.5) double toleranceMm,
            @ForAll @DoubleRange(min = 1, max = 200) double minimumFeed) {
        PartRequirement requirement = PartRequirement.of(
                        Jobs.plate("titanium", thicknessMm), CutQuality.MEDIUM, millimetres(800))
                .withPierces(2)
                .withMinimumInnerRadius(millimetres(radiusMm))
                .withMinimumSlotWidth(millimetres(2 * radiusMm))
                .withWallTolerance(millimetres(toleranceMm))
                .withMinimumFeed(millimetresPerMinute(minimumFeed));
        HeadSelection selection = selector(kilowatts).select(requirement);

        double minimumTime = Double.POSITIVE_INFINITY;
        double minimumCost = Double.POSITIVE_INFINITY;
        int feasible = 0;
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
                            CutConditions conditions =
                                    CutConditions.of(jet, requirement.workpiece(), MachinabilityFeed.published());
                            Estimate<Speed> estimate =
                                    MachinabilityFeed.published().feed(jet, requirement.workpiece(), CutQuality.MEDIUM);
                            double feed = estimate.si();
                            Kerf kerf = KerfModel.standard().kerf(conditions, Kind.SPEED.of(feed));
                            double wide = kerf.maximumWidth().si();
                            if (Kind.RATIO.si(jet.loadingRatio()) > 0.25
                                    || Kind.POWER.si(jet.water().ratedHydraulicPower()) > kilowatts * 1000
                                    || feed < minimumFeed / 60000
                                    || wide / 2 > radiusMm / 1000
                                    || (wide - kerf.minimumWidth().si()) / 2 > toleranceMm / 1000) {
                                continue;
                            }
                            feasible++;
                            Estimate<Time> pierce = PierceSelector.of(PierceSettings.defaults())
                                    .select(conditions)
                                    .time();
                            minimumTime = Math.min(minimumTime, 0.8 / feed + 2 * pierce.si());
                            // the mean of a log-normal time is its median times exp(s^2/2)
                            double mean = 0.8 / feed * mean(estimate) + 2 * pierce.si() * mean(pierce);
                            minimumCost = Math.min(minimumCost, (90 + Jobs.RATES.jetHour(jet)) * mean / 3600);
                        }
                    }
                }
            }
        }

        assertThat(selection.ranked(Ranking.TIME)).hasSize(feasible);
        assertThat(selection.rejected()).hasSize(INVENTORY.size() - feasible);
        if (feasible > 0) {
            assertThat(selection.best(Ranking.TIME).time().si()).isCloseTo(minimumTime, within(1e-9 * minimumTime));
            assertThat(selection.best(Ranking.COST).cost()).isCloseTo(minimumCost, within(1e-9 * minimumCost));
        }
    }

    private static double mean(Estimate<?> estimate) {
        return Math.exp(estimate.relativeUncertainty() * estimate.relativeUncertainty() / 2);
    }

    @Test
    void theParetoFrontDominatesEveryHead() {
        HeadSelection selection = selector(20)
                .select(PartRequirement.of(Jobs.plate("aluminium", 12), CutQuality.FINE, millimetres(2000)));
        List<HeadCandidate> front = selection.paretoFront();

        assertThat(front).isNotEmpty();
        assertThat(front.get(0)).isEqualTo(selection.best(Ranking.TIME));
        assertThat(front.get(front.size() - 1).cost())
                .isEqualTo(selection.best(Ranking.COST).cost());
        for (HeadCandidate candidate : selection.ranked(Ranking.COST)) {
            assertThat(front)
                    .anyMatch(best -> best.time().si() <= candidate.time().si() && best.cost() <= candidate.cost());
        }
        for (int i = 1; i < front.size(); i++) {
            assertThat(front.get(i).time().si())
                    .isGreaterThan(front.get(i - 1).time().si());
            assertThat(front.get(i).cost()).isLessThan(front.get(i - 1).cost());
        }
    }

    /** 40 mm of titanium needs a more powerful head than 1 mm of stainless steel (common practice, no source). */
    @Test
    void thickTitaniumNeedsAMorePowerfulHeadThanThinSteel() {
        assertThat(minimumPower("titanium", 40)).isGreaterThan(3 * minimumPower("stainless-304", 1));
    }

    private static double minimumPower(String material, double mm) {
        return selector(50)
                .select(PartRequirement.of(Jobs.plate(material, mm), CutQuality.MEDIUM, millimetres(1000))
                        .withMinimumFeed(millimetresPerMinute(12)))
                .ranked(Ranking.TIME)
                .stream()
                .map(candidate -> Kind.POWER.si(candidate.jet().water().ratedHydraulicPower()))
                .min(Comparator.naturalOrder())
                .orElseThrow();
    }

    @Test
    void everyRejectedHeadHasFindings() {
        PartRequirement requirement = PartRequirement.of(
                        Jobs.plate("stainless-304", 6), CutQuality.FINE, millimetres(500))
                .withMinimumInnerRadius(millimetres(0.2));
        HeadSelection selection = selector(8).select(requirement);

        assertThat(selection.rejected())
                .allSatisfy(head -> assertThat(head.findings()).isNotEmpty());
        assertThat(selection.rejectionCounts()).containsKeys(Rule.POWER, Rule.INNER_RADIUS, Rule.LOADING);
        // 2.1074 x 0.65 x 0.25^2 x sqrt(380) L/min of water at 380 MPa
        assertThat(selection.rejected().stream()
                        .flatMap(head -> head.findings().stream())
                        .filter(finding -> finding.code().equals("pump-power"))
                        .map(finding -> (double) java.util.Objects.requireNonNull(
                                finding.message().parameters().get("value_W"))))
                .anyMatch(power -> Math.abs(power - 2.1074e-3 / 60 * 0.65 * 0.0625 * Math.sqrt(380) * 380e6) < 100);
        assertThat(selection.explanation(Ranking.TIME))
                .startsWith("fastest of ")
                .endsWith("(768 tried)");
    }

    @Test
    void withoutAFeasibleHeadTheRulesAreNamed() {
        PartRequirement requirement = PartRequirement.of(
                        Jobs.plate("stainless-304", 6), CutQuality.FINE, millimetres(500))
                .withMinimumInnerRadius(millimetres(0.01));
        HeadSelection selection = selector(20).select(requirement);

        assertThat(selection.paretoFront()).isEmpty();
        assertThatThrownBy(() -> selection.best(Ranking.TIME))
                .isInstanceOfSatisfying(NoSolutionException.class, refusal -> {
                    assertThat(refusal.code()).isEqualTo("no-feasible-head");
                    assertThat(java.util.Objects.requireNonNull(
                                            refusal.parameters().get("rejections"))
                                    .toString())
                            .contains("inner radius ");
                });
    }

    @Test
    void anEmptyInventoryIsRefused() {
        QuantityArray<Length> none = QuantityArray.ofSi(Kind.LENGTH);
        assertThatThrownBy(() -> HeadInventory.of(List.of(), none, none, List.of(), QuantityArray.ofSi(Kind.MASS_FLOW)))
                .isInstanceOfSatisfying(
                        DomainException.class,
                        refusal -> assertThat(refusal.quantity()).isEqualTo("number of orifices"));
        assertThat(Refusals.of(() -> HeadInventory.parse("part,size\norifice,0.25 mm\n")))
                .isEqualTo("must-be-at-least");
    }

    @Test
    void anInventoryIsReadFromTextWithThePlaceOfEachFault() {
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
        assertThat(Refusals.of(() -> HeadInventory.parse("part;size\n")))
                .isEqualTo("line 1, column 1: inventory-header");
        assertThat(Refusals.of(() -> HeadInventory.parse("part,size\nnozzle,1 mm\n")))
                .isEqualTo("line 2, column 1: unknown-head-part");
        assertThat(Refusals.of(() -> HeadInventory.parse("part,size\norifice,9 mm\n")))
                .isEqualTo("line 2, column 9: must-be-at-most");
        assertThat(Refusals.of(() -> HeadInventory.parse("part,size\nmesh,85\n")))
                .isEqualTo("line 2, column 6: not-in-series");
        assertThat(Refusals.of(() -> HeadInventory.parse("part,size\nflow,lots\n")))
                .startsWith("line 2, column 6: ");
    }

    @Test
    void theStandardInventoryHasHeadsForTheWorkshopsParts() {
        HeadSelection selection = HeadSelector.of(HeadInventory.standard(), megapascals(380), kilowatts(22))
                .select(PartRequirement.of(Jobs.plate("stainless-304", 6), CutQuality.MEDIUM, millimetres(1500)));

        assertThat(selection.ranked(Ranking.TIME)).isNotEmpty();
        assertThat(selection.best(Ranking.TIME).jet().head().cautions()).isEmpty();
    }

    @Test
    void aSelectionDescribesFeasibleAndRejectedHeads() {
        PartRequirement requirement =
                PartRequirement.of(Jobs.plate("stainless-304", 6), CutQuality.FINE, millimetres(500));
        HeadSelection selection = selector(8).select(requirement);
        int feasible = selection.ranked(Ranking.TIME).size();

        assertThat(selection).hasToString(feasible + " feasible heads, " + (768 - feasible) + " rejected");
        assertThat(selection.describe())
                .containsEntry("feasible", (long) feasible)
                .containsKeys("requirement", "rejected", "pareto_front", "rejected_by_power", "rejected_by_loading");
        assertThat(selection.rejected().get(0).describe())
                .containsKeys("orifice_bore_m", "tube_bore_m", "tube_length_m", "abrasive", "findings");
    }

    @Test
    void anHourOfTheJetCostsTheSumOfItsItems() {
        // water, abrasive, energy, sludge and the lives of orifice and tube, worked out one by one
        double expected = 3 * 3600 * Jobs.JET.water().volumeFlowSi()
                + (0.45 + 0.15) * 18
                + 0.25 * Kind.POWER.si(Jobs.JET.water().ratedHydraulicPower()) / 0.65 / 1000
                + 20 / meanLife(50, 100)
                + 110 / meanLife(50, 150);

        assertThat(Jobs.RATES.jetHour(Jobs.JET)).isCloseTo(expected, within(1e-9));
    }

    /** Mean of a log-normal life whose logarithm has its standard deviation on each side of the middle of two lives. */
    private static double meanLife(double shorter, double longer) {
        double deviation = Math.log(longer / shorter) / 2;
        return Math.sqrt(shorter * longer) * Math.exp(deviation * deviation / 2);
    }
}
