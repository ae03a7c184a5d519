package dev.waterjet.head;

import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.cost.CostItem;
import dev.waterjet.cost.PartWork;
import dev.waterjet.cost.Prices;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.head.HeadSelection.Rule;
import dev.waterjet.head.HeadSelection.Violation;
import dev.waterjet.head.HeadSelector.Ranking;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.Mesh;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Finding;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.pierce.PierceSelector;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.plan.Jobs;
import dev.waterjet.quality.CutQuality;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.junit.jupiter.api.Test;

class HeadValuesTest {

    private static final Estimate<Time> HUNDRED = Estimate.withinFactor(Kind.TIME, 100, 0.1, List.of());
    private static final PartWork WORK = PartWork.of(HUNDRED);
    private static final Pierce PIERCE = PierceSelector.of(PierceSettings.defaults())
            .select(CutConditions.of(Jobs.JET, Jobs.plate("titanium", 6), MachinabilityFeed.published()));
    private static final PartRequirement REQUIREMENT =
            PartRequirement.of(Jobs.plate("titanium", 6), CutQuality.FINE, metres(1.5));

    @Test
    void aRequirementIsAValue() {
        ValueContract.of(() -> REQUIREMENT)
                .has("workpiece", PartRequirement::workpiece, Jobs.plate("titanium", 6))
                .has("quality", PartRequirement::quality, CutQuality.FINE)
                .has("length", PartRequirement::length, metres(1.5))
                .change("pierces", part -> part.withPierces(3), PartRequirement::pierces, 3)
                .change(
                        "radius",
                        part -> part.withMinimumInnerRadius(millimetres(0.5)),
                        PartRequirement::minimumInnerRadius,
                        Optional.of(millimetres(0.5)))
                .change(
                        "slot",
                        part -> part.withMinimumSlotWidth(millimetres(0.9)),
                        PartRequirement::minimumSlotWidth,
                        Optional.of(millimetres(0.9)))
                .change(
                        "walls",
                        part -> part.withWallTolerance(millimetres(0.1)),
                        PartRequirement::wallTolerance,
                        Optional.of(millimetres(0.1)))
                .change(
                        "feed",
                        part -> part.withMinimumFeed(millimetresPerMinute(60)),
                        PartRequirement::minimumFeed,
                        millimetresPerMinute(60))
                .differs("workpiece", PartRequirement.of(Jobs.plate("titanium", 7), CutQuality.FINE, metres(1.5)))
                .differs("quality", PartRequirement.of(Jobs.plate("titanium", 6), CutQuality.COARSE, metres(1.5)))
                .differs("length", PartRequirement.of(Jobs.plate("titanium", 6), CutQuality.FINE, metres(1.6)))
                .prints("1.5 m", "fine")
                .check();
    }

    @Test
    void anAbsentLimitIsNotDescribed() {
        assertThat(REQUIREMENT.describe())
                .doesNotContainKeys("minimum_inner_radius_m", "minimum_slot_width_m", "wall_tolerance_m");
        assertThat(REQUIREMENT.withWallTolerance(millimetres(0.1)).describe())
                .containsKeys(
                        "workpiece", "quality", "length_m", "pierces", "minimum_feed_m_per_s", "wall_tolerance_m");
    }

    @Test
    void aRequirementRejectsImpossibleLimits() {
        assertThat(Refusals.of(() -> REQUIREMENT.withPierces(-1))).isEqualTo("must-be-at-least");
        assertThat(Refusals.of(() -> REQUIREMENT.withMinimumInnerRadius(millimetres(0))))
                .isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> REQUIREMENT.withMinimumSlotWidth(millimetres(0))))
                .isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> REQUIREMENT.withWallTolerance(millimetres(0))))
                .isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> REQUIREMENT.withMinimumFeed(millimetresPerMinute(-1))))
                .isEqualTo("must-be-at-least");
        assertThat(Refusals.of(() -> PartRequirement.of(REQUIREMENT.workpiece(), CutQuality.FINE, metres(0))))
                .isEqualTo("must-be-above");
    }

    private static HeadInventory inventory(double boreMm, double lengthMm, double gramsPerMinute) {
        return HeadInventory.of(
                List.of(Orifice.sapphire(millimetres(0.25))),
                QuantityArray.of(Kind.LENGTH, new double[] {boreMm}, Units.MILLIMETRE),
                QuantityArray.of(Kind.LENGTH, new double[] {lengthMm}, Units.MILLIMETRE),
                List.of(Abrasive.garnet(Mesh.of(80))),
                QuantityArray.of(Kind.MASS_FLOW, new double[] {gramsPerMinute}, Units.GRAM_PER_MINUTE));
    }

    @Test
    void anInventoryIsAValue() {
        ValueContract.of(() -> inventory(0.76, 76, 300))
                .has("size", HeadInventory::size, 1)
                .has("orifices", HeadInventory::orifices, List.of(Orifice.sapphire(millimetres(0.25))))
                .has("abrasives", HeadInventory::abrasives, List.of(Abrasive.garnet(Mesh.of(80))))
                .has("bores", list -> list.tubeBores().si(0), 0.00076)
                .has("lengths", list -> list.tubeLengths().si(0), 0.076)
                .has("flows", list -> list.flows().si(0), 0.005)
                .differs("bore", inventory(0.8, 76, 300))
                .differs("length", inventory(0.76, 80, 300))
                .differs("flow", inventory(0.76, 76, 310))
                .differs("abrasive", inventory(0.76, 76, 300).withAbrasives(List.of(Abrasive.garnet(Mesh.of(120)))))
                .prints("1 heads")
                .check();
    }

    @Test
    void theStandardInventoryHasEveryCombination() {
        assertThat(HeadInventory.standard().size()).isEqualTo(13 * 10 * 5 * 4 * 14);
    }

    @Test
    void anInventoryRejectsImpossibleSizes() {
        assertThat(Refusals.of(() -> inventory(0, 76, 300))).isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> inventory(0.76, 0, 300))).isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> inventory(0.76, 76, 0))).isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> inventory(0.76, 76, 300).withAbrasives(List.of())))
                .isEqualTo("must-be-at-least");
        HeadInventory standard = HeadInventory.standard();
        QuantityArray<javax.measure.quantity.Length> thousand = QuantityArray.ofSi(Kind.LENGTH, new double[1000]);
        assertThat(Refusals.of(() -> HeadInventory.of(
                        standard.orifices(), thousand, standard.tubeLengths(), standard.abrasives(), standard.flows())))
                .isEqualTo("must-be-at-most");
    }

    private static HeadCandidate candidate(double feed, PartWork work, Prices prices) {
        Estimate<Speed> speed = Estimate.withinFactor(Kind.SPEED, feed, 0.2, List.of());
        return HeadCandidate.of(Jobs.JET, speed, PIERCE, 0.0008, work, prices);
    }

    /** 100 s with the jet on and 60 s more of the machine at 90 an hour; the mean of a log-normal time is its median times exp(s^2/2). */
    @Test
    void aCandidateCostsItsJetHoursAndMachineHours() {
        PartWork work = WORK.withIdle(seconds(60));
        HeadCandidate candidate = candidate(0.01, work, Jobs.RATES);

        double mean = 100 * Math.exp(Math.pow(HUNDRED.relativeUncertainty(), 2) / 2);
        assertThat(candidate.cost()).isCloseTo((Jobs.RATES.jetHour(Jobs.JET) + 90) * mean / 3600 + 1.5, within(1e-12));
        assertThat(candidate.time().si()).isEqualTo(160);
        assertThat(candidate.time().standardUncertaintySi())
                .isCloseTo(work.jetTime().standardUncertaintySi(), within(1e-9));
    }

    @Test
    void candidatesAreRankedByTimeOrCost() {
        PartWork work = WORK.withIdle(seconds(60));
        HeadCandidate candidate = candidate(0.01, work, Jobs.RATES);
        HeadCandidate cheaper = candidate(0.01, work, Jobs.RATES.with(CostItem.MACHINE, 80));
        HeadCandidate faster = candidate(0.01, WORK, Jobs.RATES.with(CostItem.MACHINE, 800));

        assertThat(Ranking.COST.order().compare(cheaper, candidate)).isNegative();
        assertThat(Ranking.COST.order().compare(cheaper, faster)).isNegative();
        assertThat(Ranking.TIME.order().compare(faster, candidate)).isNegative();
        // equally fast: the cheaper one
        assertThat(Ranking.TIME.order().compare(candidate, cheaper)).isPositive();
    }

    @Test
    void aViolationIsAFindingWithValueAndLimit() {
        Finding finding = new Violation(Rule.SLOT_WIDTH, 0.001, 0.0005).finding();

        assertThat(finding.isSatisfied()).isFalse();
        assertThat(finding.code()).isEqualTo("slot-width");
        assertThat(finding.message().parameters())
                .containsEntry("value_m", 0.001)
                .containsEntry("limit_m", 0.0005);
    }
}
