package dev.waterjet.head;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.kilowatts;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.cost.CostItem;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.head.HeadSelection.Rejected;
import dev.waterjet.head.HeadSelection.Rule;
import dev.waterjet.head.HeadSelection.Violation;
import dev.waterjet.head.HeadSelector.Ranking;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.pierce.PierceSelector;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.plan.Jobs;
import dev.waterjet.quality.CutQuality;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleFunction;
import javax.measure.quantity.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One head at each limit and just beyond it, and what is said of a head. */
class HeadLimitsTest {

    /** A power of two, so that a ratio to it is exact. */
    private static final double BORE = Math.scalb(1.0, -12);

    private static final double TUBE = 3 * BORE;
    private static final double LENGTH = 75 * TUBE;
    private static final Abrasive FINE = Abrasive.garnet(Mesh.of(120));
    private static final WaterJet WATER = WaterJet.of(Orifice.sapphire(Kind.LENGTH.of(BORE)), megapascals(380));
    private static final double FLOW = 0.12 * WATER.massFlowSi();
    private static final PartRequirement PART =
            PartRequirement.of(Jobs.plate("titanium", 6), CutQuality.MEDIUM, millimetres(900));

    private static HeadInventory one(double tubeM, double lengthM, Abrasive abrasive, double flowKgPerS) {
        return HeadInventory.of(
                List.of(WATER.orifice()),
                QuantityArray.ofSi(Kind.LENGTH, tubeM),
                QuantityArray.ofSi(Kind.LENGTH, lengthM),
                List.of(abrasive),
                QuantityArray.ofSi(Kind.MASS_FLOW, flowKgPerS));
    }

    private static HeadSelector selector(HeadInventory inventory, double powerW) {
        return HeadSelector.of(inventory, megapascals(380), Kind.POWER.of(powerW))
                .withPrices(Jobs.RATES);
    }

    private static HeadSelection select(double tubeM, double lengthM, double flowKgPerS) {
        return selector(one(tubeM, lengthM, FINE, flowKgPerS), 1e6).select(PART);
    }

    private static HeadCandidate head(PartRequirement part) {
        HeadSelection selection = selector(one(TUBE, LENGTH, FINE, FLOW), 1e6).select(part);
        assertThat(selection.rejected()).isEmpty();
        return selection.feasible().get(0);
    }

    private static void isRejectedFor(HeadSelection selection, Rule rule, double valueSi, double limitSi) {
        assertThat(selection.feasible()).isEmpty();
        Rejected rejected = selection.rejected().get(0);
        assertThat(rejected.rules()).containsExactly(rule);
        assertThat(rejected.findings().get(0).message().parameters().values()).containsExactly(valueSi, limitSi);
        assertThat(selection.rejectionCounts()).containsOnly(Map.entry(rule, 1));
        assertThat(selection.describe())
                .containsEntry("rejected", 1L)
                .containsEntry("rejected_by_" + rule.label().replace(' ', '_'), 1L);
    }

    @ParameterizedTest
    @CsvSource({"2.5, 0", "4, 1"})
    void boreRatioMayBeAtItsLimit(double limit, double beyond) {
        assertThat(select(limit * BORE, 75 * limit * BORE, FLOW).feasible()).hasSize(1);
        double tube = beyond > 0 ? Math.nextUp(limit * BORE) : Math.nextDown(limit * BORE);
        isRejectedFor(select(tube, 75 * tube, FLOW), Rule.BORE_RATIO, tube / BORE, limit);
    }

    @ParameterizedTest
    @CsvSource({"50, 0", "100.5, 1"})
    void tubeLengthMayBeAtItsLimit(double limit, double beyond) {
        assertThat(select(TUBE, limit * TUBE, FLOW).feasible()).hasSize(1);
        double length = limit * TUBE * (beyond > 0 ? 1 + 1e-12 : 1 - 1e-12);
        isRejectedFor(select(TUBE, length, FLOW), Rule.TUBE_LENGTH, length / TUBE, limit);
    }

    @Test
    void loadingMayBeAtItsLimit() {
        double flow = WATER.massFlowSi() / 4;
        assertThat(select(TUBE, LENGTH, flow).feasible()).hasSize(1);
        double more = Math.nextUp(flow);
        isRejectedFor(select(TUBE, LENGTH, more), Rule.LOADING, more / WATER.massFlowSi(), 0.25);
    }

    @Test
    void powerMayBeThatOfThePump() {
        double power = Kind.POWER.si(WATER.ratedHydraulicPower());
        HeadInventory head = one(TUBE, LENGTH, FINE, FLOW);
        assertThat(selector(head, power).select(PART).feasible()).hasSize(1);
        double less = Math.nextDown(power);
        isRejectedFor(selector(head, less).select(PART), Rule.POWER, power, less);
    }

    @ParameterizedTest
    @ValueSource(ints = {50, 80, 120, 230})
    void grainsFillTwoFifthsOfTheTubeAtMost(int mesh) {
        Abrasive abrasive = Abrasive.garnet(Mesh.of(mesh));
        double ratio = Kind.LENGTH.si(Mesh.of(mesh).maximumGrainSize()) / TUBE;
        HeadSelection selection =
                selector(one(TUBE, LENGTH, abrasive, FLOW), 1e6).select(PART);
        if (ratio > 0.4) {
            isRejectedFor(selection, Rule.GRAIN_SIZE, ratio, 0.4);
        } else {
            assertThat(selection.feasible()).hasSize(1);
        }
        assertThat(ratio > 0.4).isEqualTo(mesh < 120);
    }

    /** A limit of the part alone: the head meets it where it is what the head leaves, and no longer just beyond. */
    private static void limits(Rule rule, double valueSi, boolean isMinimum, DoubleFunction<PartRequirement> limited) {
        assertThat(head(limited.apply(valueSi))).isEqualTo(head(PART));
        double beyond = isMinimum ? Math.nextUp(valueSi) : Math.nextDown(valueSi);
        isRejectedFor(
                selector(one(TUBE, LENGTH, FINE, FLOW), 1e6).select(limited.apply(beyond)), rule, valueSi, beyond);
    }

    @Test
    void everyLimitOfThePartIsCheckedByItself() {
        HeadCandidate head = head(PART);
        CutConditions conditions = CutConditions.of(head.jet(), PART.workpiece(), MachinabilityFeed.published());
        var kerf = KerfModel.standard().kerf(conditions, head.feed().value());
        double wide = kerf.maximumWidth().si();
        assertThat(Kind.LENGTH.si(head.kerfWidth())).isEqualTo(wide);
        limits(Rule.FEED, head.feed().si(), true, feed -> PART.withMinimumFeed(Kind.SPEED.of(feed)));
        limits(Rule.SLOT_WIDTH, wide, false, width -> PART.withMinimumSlotWidth(Kind.LENGTH.of(width)));
        limits(Rule.INNER_RADIUS, wide / 2, false, radius -> PART.withMinimumInnerRadius(Kind.LENGTH.of(radius)));
        limits(
                Rule.WALLS,
                (wide - kerf.minimumWidth().si()) / 2,
                false,
                walls -> PART.withWallTolerance(Kind.LENGTH.of(walls)));
    }

    @Test
    void aHeadCanViolateManyRules() {
        HeadSelection selection = selector(one(2 * BORE, 400 * BORE, Abrasive.garnet(Mesh.of(50)), FLOW * 4), 1)
                .select(PART);
        assertThat(selection.rejected().get(0).rules())
                .containsExactly(Rule.BORE_RATIO, Rule.TUBE_LENGTH, Rule.GRAIN_SIZE, Rule.LOADING, Rule.POWER);
        assertThat(selection.rejected().get(0))
                .hasToString("rejected head: bore ratio, tube length, grain size, loading, power");
        PartRequirement impossible = PART.withMinimumFeed(Kind.SPEED.of(1))
                .withMinimumInnerRadius(millimetres(0.01))
                .withMinimumSlotWidth(millimetres(0.01))
                .withWallTolerance(millimetres(1e-4));
        HeadSelection none = selector(one(TUBE, LENGTH, FINE, FLOW), 1e6).select(impossible);
        assertThat(none.rejected().get(0).rules())
                .containsExactly(Rule.FEED, Rule.INNER_RADIUS, Rule.SLOT_WIDTH, Rule.WALLS);
        assertThat(none.rejected().get(0).findings())
                .extracting(finding -> finding.code())
                .containsExactly("feed-too-low", "inner-radius", "slot-width", "wall-tolerance");
        assertThat(selection.rejected().get(0).findings())
                .extracting(finding -> finding.code())
                .containsExactly("bore-ratio", "tube-length", "grain-size", "loading-ratio", "pump-power");
        assertThat(assertRefused(() -> none.best(Ranking.TIME), "no-feasible-head")
                        .parameters())
                .containsEntry("rejections", "feed 1, inner radius 1, slot width 1, walls 1");
        assertRefused(() -> none.explanation(Ranking.COST), "no-feasible-head");
    }

    private static Rejected rejected(
            double bore, double tube, double length, Abrasive abrasive, double flow, Rule rule) {
        return new Rejected(bore, tube, length, abrasive, flow, List.of(new Violation(rule, 3, 2)));
    }

    @Test
    void aRejectedHeadIsAValue() {
        ValueContract.of(() -> rejected(0.25e-3, 0.8e-3, 0.08, FINE, 0.005, Rule.WALLS))
                .has("orifice", Rejected::orificeBore, millimetres(0.25))
                .has("tube", Rejected::tubeBore, millimetres(0.8))
                .has("length", Rejected::tubeLength, millimetres(80))
                .has("abrasive", Rejected::abrasive, FINE)
                .has("flow", Rejected::abrasiveFlow, gramsPerMinute(300))
                .has("rules", Rejected::rules, List.of(Rule.WALLS))
                .differs("orifice", rejected(0.26e-3, 0.8e-3, 0.08, FINE, 0.005, Rule.WALLS))
                .differs("tube", rejected(0.25e-3, 0.9e-3, 0.08, FINE, 0.005, Rule.WALLS))
                .differs("length", rejected(0.25e-3, 0.8e-3, 0.09, FINE, 0.005, Rule.WALLS))
                .differs("abrasive", rejected(0.25e-3, 0.8e-3, 0.08, Abrasive.garnet(Mesh.of(80)), 0.005, Rule.WALLS))
                .differs("flow", rejected(0.25e-3, 0.8e-3, 0.08, FINE, 0.006, Rule.WALLS))
                .differs("rule", rejected(0.25e-3, 0.8e-3, 0.08, FINE, 0.005, Rule.POWER))
                .prints("walls")
                .check();
        assertThat(rejected(0.25e-3, 0.8e-3, 0.08, FINE, 0.005, Rule.WALLS).describe())
                .containsEntry("orifice_bore_m", 0.25e-3)
                .containsEntry("tube_bore_m", 0.8e-3)
                .containsEntry("tube_length_m", 0.08)
                .containsEntry("abrasive_flow_kg_per_s", 0.005)
                .containsKeys("abrasive", "findings");
    }

    @Test
    void aCandidateTellsItsTimeAndCost() {
        HeadCandidate once = head(PART);
        HeadCandidate never = head(PART.withPierces(0));
        HeadCandidate thrice = head(PART.withPierces(3));
        assertThat(never.time().si()).isEqualTo(0.9 / never.feed().si(), within(1e-9));
        double pierce = once.pierce().time().si();
        assertThat(once.time().si() - never.time().si()).isEqualTo(pierce, within(1e-9));
        assertThat(thrice.time().si() - never.time().si()).isEqualTo(3 * pierce, within(1e-9));
        assertThat(never.time().relativeUncertainty()).isEqualTo(never.feed().relativeUncertainty(), within(1e-9));
        assertThat(never.describe())
                .containsEntry("kerf_width_m", Kind.LENGTH.si(never.kerfWidth()))
                .containsEntry("cost", never.cost())
                .containsKeys("jet", "feed", "pierce", "time");
        assertThat(never.toString()).contains(never.jet().toString()).contains(" s, cost ");
    }

    /** The setting of the pierce, the feed and kerf models and the prices reach the candidates, each by itself. */
    @Test
    void aSelectorUsesWhatItIsGiven() {
        HeadSelector selector = selector(one(TUBE, LENGTH, FINE, FLOW), 1e6);
        HeadCandidate plain = selector.select(PART).feasible().get(0);
        PierceSettings slow = PierceSettings.defaults().withPierceClearance(millimetres(4));
        HeadCandidate pierced =
                selector.withPierceSettings(slow).select(PART).feasible().get(0);
        CutConditions conditions = CutConditions.of(plain.jet(), PART.workpiece(), MachinabilityFeed.published());
        assertThat(pierced.pierce()).isEqualTo(PierceSelector.of(slow).select(conditions));
        assertThat(plain.pierce())
                .isEqualTo(PierceSelector.of(PierceSettings.defaults()).select(conditions));
        KerfModel wide = KerfModel.standard()
                .withHalfAngle(Kind.ANGLE.of(0.05), 0.1, KerfModel.standard().evidence());
        MachinabilityFeed unsure = MachinabilityFeed.published().withModelUncertainty(0.9);
        HeadCandidate other =
                selector.withModels(unsure, wide).select(PART).feasible().get(0);
        assertThat(Kind.LENGTH.si(other.kerfWidth()))
                .isEqualTo(
                        wide.kerf(conditions, other.feed().value())
                                .maximumWidth()
                                .si(),
                        within(1e-12))
                .isNotEqualTo(Kind.LENGTH.si(plain.kerfWidth()));
        assertThat(other.feed().relativeUncertainty())
                .isGreaterThan(plain.feed().relativeUncertainty());
        HeadCandidate dear = selector.withPrices(Jobs.RATES.with(CostItem.MACHINE, 180))
                .select(PART)
                .feasible()
                .get(0);
        assertThat(dear.time()).isEqualTo(plain.time());
        double mean = 90 * plain.time().si() / 3600;
        // the machine's share of the expected cost; a log-normal time is dearer than its median
        assertThat(dear.cost() - plain.cost()).isBetween(mean, 1.5 * mean);
        HeadCandidate free = HeadSelector.of(one(TUBE, LENGTH, FINE, FLOW), megapascals(380), kilowatts(1000))
                .select(PART)
                .feasible()
                .get(0);
        assertThat(free.cost()).isZero();
        assertRefused(
                () -> HeadSelector.of(one(TUBE, LENGTH, FINE, FLOW), megapascals(0), kilowatts(1)),
                "must-be-above",
                "pressure at the orifice",
                0);
        assertRefused(
                () -> HeadSelector.of(one(TUBE, LENGTH, FINE, FLOW), megapascals(380), kilowatts(0)),
                "must-be-above",
                "rated hydraulic power of the pump",
                0);
    }

    /** Of two heads with one time and one cost that with fewer cautions stands first. */
    @Test
    void amongEqualsFewerCautionsAreBetter() {
        HeadCandidate calm = head(PART);
        HeadCandidate cautioned = new HeadCandidate(
                CuttingHead.of(WATER.orifice(), FocusingTube.of(millimetres(1.9), millimetres(30)))
                        .jet(megapascals(380), Abrasive.garnet(Mesh.of(50)), gramsPerMinute(900)),
                calm.feed(),
                calm.pierce(),
                calm.kerfWidth(),
                calm.time(),
                calm.cost());
        assertThat(cautioned.jet().cautions())
                .hasSizeGreaterThan(calm.jet().cautions().size());
        HeadSelection selection = new HeadSelection(PART, List.of(cautioned, calm), List.of());
        for (Ranking ranking : Ranking.values()) {
            assertThat(selection.ranked(ranking)).containsExactly(calm, cautioned);
            assertThat(selection.best(ranking)).isEqualTo(calm);
        }
        assertThat(selection.explanation(Ranking.TIME)).isEqualTo("fastest of 2 feasible combinations (2 tried)");
        assertThat(selection.explanation(Ranking.COST)).isEqualTo("cheapest of 2 feasible combinations (2 tried)");
        assertThat(selection.paretoFront()).containsExactly(calm);
    }

    /** An inventory lacks one of its five lists. */
    @Test
    void everyListOfAnInventoryHasAMember() {
        String[][] parts = {
            {"orifice,0.25 mm", "orifices"},
            {"tube,0.76 mm", "bores of focusing tubes"},
            {"length,76 mm", "lengths of focusing tubes"},
            {"mesh,80", "abrasives"},
            {"flow,300 g/min", "abrasive flow rates"}
        };
        for (String[] missing : parts) {
            StringBuilder text = new StringBuilder("part,size\n");
            for (String[] part : parts) {
                text.append(part == missing ? "" : part[0] + "\n");
            }
            assertRefused(() -> HeadInventory.parse(text.toString()), "must-be-at-least", "number of " + missing[1], 1);
        }
    }

    @Test
    void twoMillionHeadsAreTriedAtMost() {
        double[] bores = new double[1000];
        Arrays.fill(bores, 0.76e-3);
        QuantityArray<Length> thousand = QuantityArray.ofSi(Kind.LENGTH, bores);
        double[] flows = new double[2001];
        Arrays.fill(flows, 0.005);
        QuantityArray<Length> single = QuantityArray.ofSi(Kind.LENGTH, 0.076);
        List<Orifice> orifices = List.of(WATER.orifice());
        HeadInventory largest = HeadInventory.of(
                orifices,
                thousand,
                single,
                List.of(FINE),
                QuantityArray.ofSi(Kind.MASS_FLOW, Arrays.copyOf(flows, 2000)));
        assertThat(largest.size()).isEqualTo(2_000_000);
        assertThat(largest).hasToString("inventory of 2000000 heads");
        assertRefused(
                () -> HeadInventory.of(
                        orifices, thousand, single, List.of(FINE), QuantityArray.ofSi(Kind.MASS_FLOW, flows)),
                "must-be-at-most",
                "number of heads to try",
                2e6);
        assertThat(one(TUBE, LENGTH, FINE, FLOW).describe())
                .containsKeys("orifices", "tube_bores_m", "tube_lengths_m", "abrasives", "abrasive_flows_kg_per_s");
    }

    @Test
    void faultsOfAnInventoryHaveTheirPlace() {
        assertThat(Refusals.of(() -> HeadInventory.parse("# one\n# two\nsize,part\n")))
                .isEqualTo("line 3, column 1: inventory-header");
        assertThat(Refusals.of(() -> HeadInventory.parse(""))).isEqualTo("line 1, column 1: inventory-header");
        assertThat(Refusals.of(() -> HeadInventory.parse("part,size\norifice\n")))
                .isEqualTo("line 2, column 1: inventory-row");
        assertThat(Refusals.of(() -> HeadInventory.parse("part,size\norifice,1 mm,2 mm\n")))
                .isEqualTo("line 2, column 14: inventory-row");
        assertThat(Refusals.of(() -> HeadInventory.parse("part,size\nmesh,eighty\n")))
                .isEqualTo("line 2, column 6: not-a-sieve-number");
    }
}
