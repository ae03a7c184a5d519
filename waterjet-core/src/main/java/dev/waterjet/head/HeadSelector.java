package dev.waterjet.head;

import dev.waterjet.cost.PartWork;
import dev.waterjet.cost.Prices;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.head.HeadSelection.Rule;
import dev.waterjet.head.HeadSelection.Violation;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.pierce.PierceSelector;
import dev.waterjet.pierce.PierceSettings;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;

/**
 * Selector that tries every head of an inventory on a part. A head is feasible if it satisfies all rules of
 * {@link HeadSelection.Rule}:
 *
 * <ul>
 *   <li>geometry: focusing tube 2.5 to 4 orifice bores wide and 50 to 100 tube bores long, maximum grain size at most 0.4 of
 *       the tube bore, loading ratio at most 0.25 (common practice, no source). A third is the common rule for the grain size;
 *       shops use 80 mesh in 0.76 mm, which is 0.39, and such a head is feasible here with its caution;
 *   <li>the pump delivers its power, and it reaches the minimum feed rate at the required cut quality;
 *   <li>its kerf, at that feed rate and over the whole depth, fits the minimum inner radius and the minimum slot width, and
 *       leaves walls within tolerance.
 * </ul>
 *
 * <p>The feed model has no optimum of abrasive flow and no grain size. Without the limit on loading a higher flow would always
 * be faster, and mesh sizes rank equal.
 *
 * <pre>{@code
 * HeadSelection selection = HeadSelector.of(HeadInventory.standard(), megapascals(380), kilowatts(22))
 *         .withPrices(prices)
 *         .select(PartRequirement.of(plate, CutQuality.MEDIUM, metres(1.5)));
 * HeadCandidate best = selection.best(HeadSelector.Ranking.TIME);
 * }</pre>
 */
public final class HeadSelector {

    private static final double MIN_BORE_RATIO = 2.5;
    private static final double MAX_BORE_RATIO = 4;
    private static final double MIN_LENGTH_RATIO = 50;
    private static final double MAX_LENGTH_RATIO = 100.5;
    private static final double MAX_GRAIN_RATIO = 0.4;
    private static final double MAX_LOADING = 0.25;

    /** Ranking criterion of feasible heads. */
    public enum Ranking {
        /** The fastest first; among equals the cheaper one. */
        TIME,
        /** The cheapest first; among equals the faster one. */
        COST;

        /** Heads equal in both: fewer cautions first, then the order of the inventory, since sorting is stable. */
        Comparator<HeadCandidate> order() {
            Comparator<HeadCandidate> byTime =
                    Comparator.comparingDouble(candidate -> candidate.time().si());
            Comparator<HeadCandidate> byCost = Comparator.comparingDouble(HeadCandidate::cost);
            return (this == TIME ? byTime.thenComparing(byCost) : byCost.thenComparing(byTime))
                    .thenComparingInt(candidate -> candidate.jet().cautions().size());
        }
    }

    /** Models by which heads are judged. */
    private record Models(FeedModel feed, KerfModel kerf, PierceSettings pierce) {

        Models {
            Objects.requireNonNull(feed, "feedModel");
            Objects.requireNonNull(kerf, "kerfModel");
            Objects.requireNonNull(pierce, "pierceSettings");
        }
    }

    private final HeadInventory inventory;
    private final double pressurePa;
    private final double powerW;
    private final Prices prices;
    private final Models models;

    private HeadSelector(HeadInventory inventory, double pressurePa, double powerW, Prices prices, Models models) {
        this.inventory = Objects.requireNonNull(inventory, "inventory");
        this.pressurePa = Require.positive("pressure at the orifice", pressurePa, Units.MEGAPASCAL);
        this.powerW = Require.positive("rated hydraulic power of the pump", powerW, Units.KILOWATT);
        this.prices = Objects.requireNonNull(prices, "prices");
        this.models = models;
    }

    /**
     * Returns a selector with the published feed model, the standard kerf model and no prices.
     *
     * @param inventory heads to try
     * @param pressure gauge pressure at the orifice, above zero
     * @param hydraulicPower rated hydraulic power of the pump, above zero
     * @return the selector
     */
    public static HeadSelector of(
            HeadInventory inventory, Quantity<Pressure> pressure, Quantity<Power> hydraulicPower) {
        Objects.requireNonNull(hydraulicPower, "hydraulicPower");
        Objects.requireNonNull(pressure, "pressure");
        Models models = new Models(MachinabilityFeed.published(), KerfModel.standard(), PierceSettings.defaults());
        return new HeadSelector(
                inventory, Kind.PRESSURE.si(pressure), Kind.POWER.si(hydraulicPower), Prices.of(""), models);
    }

    /**
     * Returns this selector with prices, which cost requires.
     *
     * @param changed the prices
     * @return the selector
     */
    public HeadSelector withPrices(Prices changed) {
        Objects.requireNonNull(changed, "changed");
        return new HeadSelector(inventory, pressurePa, powerW, changed, models);
    }

    /**
     * Returns this selector with other models.
     *
     * @param feedModel feed model
     * @param kerfModel kerf model
     * @return the selector
     */
    public HeadSelector withModels(FeedModel feedModel, KerfModel kerfModel) {
        return new HeadSelector(inventory, pressurePa, powerW, prices, new Models(feedModel, kerfModel, models.pierce));
    }

    /**
     * Returns this selector with other pierce settings.
     *
     * @param settings the settings
     * @return the selector
     */
    public HeadSelector withPierceSettings(PierceSettings settings) {
        Objects.requireNonNull(settings, "settings");
        return new HeadSelector(inventory, pressurePa, powerW, prices, new Models(models.feed, models.kerf, settings));
    }

    /**
     * Tries every head.
     *
     * @param requirement requirements of the part
     * @return feasible heads, and rejected heads with the reasons
     */
    public HeadSelection select(PartRequirement requirement) {
        Objects.requireNonNull(requirement, "requirement");
        Trial trial = new Trial(requirement);
        for (Orifice orifice : inventory.orifices()) {
            WaterJet water = WaterJet.of(orifice, Kind.PRESSURE.of(pressurePa));
            for (int bore = 0; bore < inventory.tubeBores().size(); bore++) {
                for (int length = 0; length < inventory.tubeLengths().size(); length++) {
                    Tube tube = new Tube(
                            inventory.tubeBores().si(bore),
                            inventory.tubeLengths().si(length));
                    for (Abrasive abrasive : inventory.abrasives()) {
                        for (int flow = 0; flow < inventory.flows().size(); flow++) {
                            trial.take(water, tube, abrasive, inventory.flows().si(flow));
                        }
                    }
                }
            }
        }
        return new HeadSelection(requirement, trial.feasible, trial.rejected);
    }

    /** Bore and length of a focusing tube that can be impossible. */
    private record Tube(double boreM, double lengthM) {}

    /** Maximum and minimum width of a kerf. */
    private record Walls(double maximumM, double minimumM) {}

    /** One run over the inventory. */
    private final class Trial {

        private final PartRequirement requirement;
        private final List<HeadCandidate> feasible = new ArrayList<>();
        private final List<HeadSelection.Rejected> rejected = new ArrayList<>();
        private final Map<Double, Walls> wallsByBore = new HashMap<>();

        Trial(PartRequirement requirement) {
            this.requirement = requirement;
        }

        void take(WaterJet water, Tube tube, Abrasive abrasive, double flowKgPerS) {
            List<Violation> violations = geometry(water, tube, abrasive, flowKgPerS);
            if (violations.isEmpty()) {
                CutConditions conditions =
                        CutConditions.of(jet(water, tube, abrasive, flowKgPerS), requirement.workpiece(), models.feed);
                Estimate<Speed> feed = conditions.feed(requirement.quality());
                below(violations, Rule.FEED, feed.si(), requirement.minimumFeedSi());
                // the separation depth is index times thickness for every head, so that the walls depend on the bore
                // alone
                Walls walls = wallsByBore.computeIfAbsent(tube.boreM(), bore -> walls(conditions, feed));
                requirement
                        .minimumInnerRadiusSi()
                        .ifPresent(limit -> above(violations, Rule.INNER_RADIUS, walls.maximumM() / 2, limit));
                requirement
                        .minimumSlotWidthSi()
                        .ifPresent(limit -> above(violations, Rule.SLOT_WIDTH, walls.maximumM(), limit));
                double deviation = (walls.maximumM() - walls.minimumM()) / 2;
                requirement.wallToleranceSi().ifPresent(limit -> above(violations, Rule.WALLS, deviation, limit));
                if (violations.isEmpty()) {
                    feasible.add(candidate(requirement, conditions, feed, walls));
                    return;
                }
            }
            rejected.add(new HeadSelection.Rejected(
                    water.orifice().boreSi(), tube.boreM(), tube.lengthM(), abrasive, flowKgPerS, violations));
        }
    }

    private List<Violation> geometry(WaterJet water, Tube tube, Abrasive abrasive, double flowKgPerS) {
        List<Violation> violations = new ArrayList<>();
        double boreRatio = tube.boreM() / water.orifice().boreSi();
        below(violations, Rule.BORE_RATIO, boreRatio, MIN_BORE_RATIO);
        above(violations, Rule.BORE_RATIO, boreRatio, MAX_BORE_RATIO);
        double lengthRatio = tube.lengthM() / tube.boreM();
        below(violations, Rule.TUBE_LENGTH, lengthRatio, MIN_LENGTH_RATIO);
        above(violations, Rule.TUBE_LENGTH, lengthRatio, MAX_LENGTH_RATIO);
        above(violations, Rule.GRAIN_SIZE, abrasive.mesh().maximumGrainSizeSi() / tube.boreM(), MAX_GRAIN_RATIO);
        above(violations, Rule.LOADING, flowKgPerS / water.massFlowSi(), MAX_LOADING);
        above(violations, Rule.POWER, Kind.POWER.si(water.ratedHydraulicPower()), powerW);
        return violations;
    }

    private static AbrasiveJet jet(WaterJet water, Tube tube, Abrasive abrasive, double flowKgPerS) {
        return CuttingHead.of(
                        water.orifice(), FocusingTube.of(Kind.LENGTH.of(tube.boreM()), Kind.LENGTH.of(tube.lengthM())))
                .jet(water.pressure(), abrasive, Kind.MASS_FLOW.of(flowKgPerS));
    }

    private Walls walls(CutConditions conditions, Estimate<Speed> feed) {
        Kerf kerf = models.kerf.kerf(conditions, feed.value());
        return new Walls(kerf.maximumWidth().si(), kerf.minimumWidth().si());
    }

    private HeadCandidate candidate(
            PartRequirement requirement, CutConditions conditions, Estimate<Speed> feed, Walls walls) {
        Pierce pierce = PierceSelector.of(models.pierce).select(conditions);
        PartWork cutting = PartWork.of(Estimate.withinFactor(
                Kind.TIME, requirement.lengthSi() / feed.si(), feed.relativeUncertainty(), List.of()));
        PartWork work = requirement.pierces() > 0 ? cutting.withPierces(requirement.pierces(), pierce) : cutting;
        return HeadCandidate.of(conditions.jet(), feed, pierce, walls.maximumM(), work, prices);
    }

    private static void below(List<Violation> violations, Rule rule, double valueSi, double minimumSi) {
        if (valueSi < minimumSi) {
            violations.add(new Violation(rule, valueSi, minimumSi));
        }
    }

    private static void above(List<Violation> violations, Rule rule, double valueSi, double maximumSi) {
        if (valueSi > maximumSi) {
            violations.add(new Violation(rule, valueSi, maximumSi));
        }
    }
}
