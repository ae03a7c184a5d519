package dev.waterjet.head;

import dev.waterjet.cost.PartWork;
import dev.waterjet.cost.Prices;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
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
import dev.waterjet.quality.QualityIndexTable;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;

/**
 * Tries every head of a list on a part. A head serves if it keeps to all rules of {@link HeadFault.Rule}:
 *
 * <ul>
 *   <li>geometry: tube 2.5 to 4 orifice bores wide and 50 to 100 of its own bores long, largest grain at most 0.4 of the
 *       tube's bore, loading ratio at most 0.25. A third is the usual word for the grain; shops do run 80 mesh in 0.76 mm,
 *       which is 0.39, and such a head serves here with its caution;
 *   <li>the pump can feed it, and it reaches the least feed for the grade;
 *   <li>its kerf, at the feed for the grade and over the whole depth, goes into the smallest radius and through the narrowest
 *       passage, and leaves walls within tolerance.
 * </ul>
 *
 * <p>The feed model knows no best flow of abrasive and no grain size, so without the limit on loading more would always look
 * faster, and meshes rank alike.
 */
public final class HeadSelector implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final double LEAST_BORE_RATIO = 2.5;
    private static final double GREATEST_BORE_RATIO = 4;
    private static final double LEAST_LENGTH_RATIO = 50;
    private static final double GREATEST_LENGTH_RATIO = 100.5;
    private static final double GREATEST_GRAIN = 0.4;
    private static final double GREATEST_LOADING = 0.25;

    private final HeadInventory list;
    private final double pressurePa;
    private final double powerW;
    private final Prices rates;
    private final FeedModel model;
    private final KerfModel kerfModel;
    private final PierceSettings practice;

    private HeadSelector(
            HeadInventory list,
            double pressurePa,
            double powerW,
            Prices rates,
            FeedModel model,
            KerfModel kerfModel,
            PierceSettings practice) {
        this.list = Objects.requireNonNull(list, "list");
        this.pressurePa = Require.positive("pressure at the orifice", pressurePa, Units.MEGAPASCAL);
        this.powerW = Require.positive("hydraulic power of the pump", powerW, Units.KILOWATT);
        this.rates = Objects.requireNonNull(rates, "rates");
        this.model = Objects.requireNonNull(model, "model");
        this.kerfModel = Objects.requireNonNull(kerfModel, "kerfModel");
        this.practice = Objects.requireNonNull(practice, "practice");
    }

    /**
     * A selector with the published feed model, the standard kerf model and no prices.
     *
     * @param list heads to try
     * @param pressure gauge pressure at the orifice, above zero
     * @param hydraulicPower power that the pump puts into the water, above zero
     * @return the selector
     */
    public static HeadSelector of(HeadInventory list, Quantity<Pressure> pressure, Quantity<Power> hydraulicPower) {
        return new HeadSelector(
                list,
                Kind.PRESSURE.si(pressure),
                Kind.POWER.si(hydraulicPower),
                Prices.of(""),
                MachinabilityFeed.published(),
                KerfModel.standard(),
                PierceSettings.defaults());
    }

    /**
     * This selector with the shop's prices, so that cost means something.
     *
     * @param rates the prices
     * @return the selector with those prices
     */
    public HeadSelector withRates(Prices rates) {
        return new HeadSelector(list, pressurePa, powerW, rates, model, kerfModel, practice);
    }

    /**
     * This selector with other models.
     *
     * @param model how fast
     * @param kerfModel how wide
     * @return the selector with those models
     */
    public HeadSelector withModels(FeedModel model, KerfModel kerfModel) {
        return new HeadSelector(list, pressurePa, powerW, rates, model, kerfModel, practice);
    }

    /**
     * This selector with the shop's practice of piercing.
     *
     * @param practice the practice
     * @return the selector with that practice
     */
    public HeadSelector withPiercing(PierceSettings practice) {
        return new HeadSelector(list, pressurePa, powerW, rates, model, kerfModel, practice);
    }

    /**
     * Tries every head.
     *
     * @param demand what the part asks
     * @return those that serve, and why the others do not
     */
    public HeadSelection select(PartRequirement demand) {
        List<HeadCandidate> fit = new ArrayList<>();
        List<HeadSelection.Refused> refused = new ArrayList<>();
        Map<Double, Walls> walls = new HashMap<>();
        for (Orifice orifice : list.orifices()) {
            WaterJet water = WaterJet.of(orifice, Kind.PRESSURE.of(pressurePa));
            for (int bore = 0; bore < list.tubeBores().size(); bore++) {
                for (int length = 0; length < list.tubeLengths().size(); length++) {
                    Tube tube = new Tube(
                            list.tubeBores().si(bore), list.tubeLengths().si(length));
                    for (Abrasive abrasive : list.abrasives()) {
                        for (int flow = 0; flow < list.flows().size(); flow++) {
                            tryOut(demand, water, tube, abrasive, list.flows().si(flow), walls, fit, refused);
                        }
                    }
                }
            }
        }
        return HeadSelection.of(demand, fit, refused);
    }

    /** Bore and length of a focusing tube that may not exist. */
    private record Tube(double boreM, double lengthM) {}

    /** Greatest and least width of a kerf. */
    private record Walls(double widestM, double narrowestM) {}

    private void tryOut(
            PartRequirement demand,
            WaterJet water,
            Tube tube,
            Abrasive abrasive,
            double flowKgPerS,
            Map<Double, Walls> wallsByBore,
            List<HeadCandidate> fit,
            List<HeadSelection.Refused> refused) {
        List<HeadFault> faults = geometry(water, tube, abrasive, flowKgPerS);
        if (faults.isEmpty()) {
            AbrasiveJet jet = jet(water, tube, abrasive, flowKgPerS);
            Estimate<Speed> feed =
                    model.feed(jet, demand.workpiece(), QualityIndexTable.standard().index(demand.quality()));
            below(faults, HeadFault.Rule.FEED, feed.si(), demand.minimumFeedSi());
            // the separation depth is index times thickness for every head, so that the walls hang on the bore alone
            Walls walls = wallsByBore.computeIfAbsent(tube.boreM(), bore -> walls(demand, jet, feed));
            above(faults, HeadFault.Rule.RADIUS, walls.widestM() / 2, demand.radiusSi());
            above(faults, HeadFault.Rule.PASSAGE, walls.widestM(), demand.passageSi());
            above(faults, HeadFault.Rule.TOLERANCE, (walls.widestM() - walls.narrowestM()) / 2, demand.toleranceSi());
            if (faults.isEmpty()) {
                fit.add(trial(demand, jet, feed, walls));
                return;
            }
        }
        refused.add(new HeadSelection.Refused(
                water.orifice().boreSi(), tube.boreM(), tube.lengthM(), abrasive, flowKgPerS, faults));
    }

    private List<HeadFault> geometry(WaterJet water, Tube tube, Abrasive abrasive, double flowKgPerS) {
        List<HeadFault> faults = new ArrayList<>();
        double boreRatio = tube.boreM() / water.orifice().boreSi();
        within(faults, HeadFault.Rule.BORE_RATIO, boreRatio, LEAST_BORE_RATIO, GREATEST_BORE_RATIO);
        double lengthRatio = tube.lengthM() / tube.boreM();
        within(faults, HeadFault.Rule.TUBE_LENGTH, lengthRatio, LEAST_LENGTH_RATIO, GREATEST_LENGTH_RATIO);
        above(faults, HeadFault.Rule.GRAIN, abrasive.mesh().maximumGrainSizeSi() / tube.boreM(), GREATEST_GRAIN);
        above(faults, HeadFault.Rule.LOADING, flowKgPerS / water.massFlowSi(), GREATEST_LOADING);
        above(faults, HeadFault.Rule.POWER, Kind.POWER.si(water.ratedHydraulicPower()), powerW);
        return faults;
    }

    private static AbrasiveJet jet(WaterJet water, Tube tube, Abrasive abrasive, double flowKgPerS) {
        return CuttingHead.of(
                        water.orifice(), FocusingTube.of(Kind.LENGTH.of(tube.boreM()), Kind.LENGTH.of(tube.lengthM())))
                .jet(water.pressure(), abrasive, Kind.MASS_FLOW.of(flowKgPerS));
    }

    private Walls walls(PartRequirement demand, AbrasiveJet jet, Estimate<Speed> feed) {
        Kerf kerf = kerfModel.kerf(CutConditions.of(jet, demand.workpiece(), model), feed.value());
        return new Walls(kerf.maximumWidth().si(), kerf.minimumWidth().si());
    }

    private HeadCandidate trial(PartRequirement demand, AbrasiveJet jet, Estimate<Speed> feed, Walls walls) {
        Pierce pierce = PierceSelector.of(practice).select(CutConditions.of(jet, demand.workpiece(), model));
        PartWork cutting = PartWork.of(
                Estimate.withinFactor(Kind.TIME, demand.lengthSi() / feed.si(), feed.relativeUncertainty(), List.of()));
        PartWork work = demand.pierces() > 0 ? cutting.withPierces(demand.pierces(), pierce) : cutting;
        return HeadCandidate.of(jet, feed, pierce, walls.widestM(), work, rates);
    }

    private static void within(List<HeadFault> faults, HeadFault.Rule rule, double value, double least, double most) {
        below(faults, rule, value, least);
        above(faults, rule, value, most);
    }

    private static void below(List<HeadFault> faults, HeadFault.Rule rule, double value, double least) {
        if (value < least) {
            faults.add(new HeadFault(rule, value, least));
        }
    }

    private static void above(List<HeadFault> faults, HeadFault.Rule rule, double value, double most) {
        if (value > most) {
            faults.add(new HeadFault(rule, value, most));
        }
    }
}
