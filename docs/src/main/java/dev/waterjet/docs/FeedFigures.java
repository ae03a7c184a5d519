package dev.waterjet.docs;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.cost.CostItem;
import dev.waterjet.cost.CuttingCost;
import dev.waterjet.cost.Prices;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.examples.chart.Chart;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.DeclinationFeed;
import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedCurve;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.feed.SpecificEnergyFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.QualityIndexTable;
import java.util.List;
import javax.measure.quantity.Length;

/** Figures about feed. */
final class FeedFigures {

    private FeedFigures() {}

    static List<Figure> all() {
        return List.of(
                new Figure("feed-over-thickness", FeedFigures::feedOverThickness),
                new Figure("feed-models", FeedFigures::models),
                new Figure("feed-over-index", FeedFigures::overIndex),
                new Figure("feed-abrasive-cost", FeedFigures::abrasiveCost));
    }

    private static String feedOverThickness() {
        AbrasiveJet jet = CuttingHead.of(
                        Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(102)))
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450));
        QuantityArray<Length> thicknesses = QuantityArray.evenly(Kind.LENGTH, millimetres(3), millimetres(50), 95);
        Chart chart = Chart.of(
                        "Feed rate over thickness",
                        "Feed rate for cut quality medium decreases with thickness for every material, steeply below"
                                + " 10 mm; aluminium is cut about three times as fast as stainless steel.")
                .x("thickness [mm]")
                .y("feed rate [mm/min]")
                .logY();
        for (String id : List.of("aluminium-6061-t6", "titanium", "stainless-304")) {
            chart.line(
                    Materials.standard().get(id).name(),
                    thicknesses.to(Units.MILLIMETRE),
                    MachinabilityFeed.published()
                            .curve(
                                    jet,
                                    Materials.standard().get(id),
                                    QualityIndexTable.standard().index(CutQuality.MEDIUM),
                                    thicknesses)
                            .feeds()
                            .to(Units.MILLIMETRE_PER_MINUTE));
        }
        return chart.svg(720, 420);
    }

    /** The jet of the comparisons, with the mixing efficiency of 0.7 that they name. */
    private static AbrasiveJet comparisonJet() {
        return CuttingHead.of(Orifice.sapphire(millimetres(0.35)), FocusingTube.of(millimetres(1), millimetres(100)))
                .withMixing(MixingEfficiency.of(
                        0.7, 0, Evidence.of(EvidenceGrade.ASSUMED, Source.of("stated with the figure"))))
                .jet(megapascals(345), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(600));
    }

    private static String models() {
        QuantityArray<Length> thicknesses = QuantityArray.evenly(Kind.LENGTH, millimetres(2), millimetres(60), 117);
        FeedCurve machinability = MachinabilityFeed.published()
                .curve(comparisonJet(), Materials.standard().get("mild-steel"), 1, thicknesses);
        double[] x = thicknesses.to(Units.MILLIMETRE);
        Chart chart = Chart.of(
                        "Three feed models for one cut",
                        "For mild steel the erosion model lies above the machinability model, by a third in thick"
                                + " plate and beyond its 95 % band in thin plate; the specific-energy model is the"
                                + " flattest, below the others in thin plate and crossing the machinability model near 30"
                                + " mm.")
                .x("thickness [mm]")
                .y("separation feed rate [mm/min]")
                .logX()
                .logY()
                .band("95 % of machinability", x, bound(machinability, -1), bound(machinability, 1));
        for (FeedModel model :
                List.of(MachinabilityFeed.published(), ErosionFeed.standard(), SpecificEnergyFeed.ofSteel())) {
            chart.line(
                    model.name(),
                    x,
                    model.curve(comparisonJet(), Materials.standard().get("mild-steel"), 1, thicknesses)
                            .feeds()
                            .to(Units.MILLIMETRE_PER_MINUTE));
        }
        return chart.svg(720, 460);
    }

    private static double[] bound(FeedCurve curve, int side) {
        double[] bounds = new double[curve.size()];
        for (int i = 0; i < bounds.length; i++) {
            bounds[i] = 60e3
                    * Kind.SPEED.si(
                            side < 0 ? curve.feed(i).lower(0.95) : curve.feed(i).upper(0.95));
        }
        return bounds;
    }

    private static String overIndex() {
        double[] indices = new double[81];
        for (int i = 0; i < indices.length; i++) {
            indices[i] = 1 + i / 20.0;
        }
        Chart chart = Chart.of(
                        "Relative feed rate over quality index",
                        "Feed rate over separation feed rate decreases with the quality index: to 16 % at index 5"
                                + " by machinability, 20 % by declination with exponent 1, 34 % with exponent 1.5.")
                .x("quality index")
                .y("feed rate over separation feed rate")
                .yFrom(0, 1);
        for (FeedModel model : List.of(
                MachinabilityFeed.published(),
                DeclinationFeed.linear(MachinabilityFeed.published()),
                DeclinationFeed.threeHalvesPower(MachinabilityFeed.published()))) {
            double[] shares = new double[indices.length];
            for (int i = 0; i < shares.length; i++) {
                shares[i] = model.feedSi(comparisonJet(), Materials.standard().get("mild-steel"), 0.01, indices[i])
                        / model.feedSi(comparisonJet(), Materials.standard().get("mild-steel"), 0.01, 1);
            }
            chart.line(model.name(), indices, shares);
        }
        return chart.svg(720, 380);
    }

    private static String abrasiveCost() {
        MixingEfficiency falling = MixingEfficiency.decreasing(
                0.95,
                0.1,
                MixingEfficiency.scaleForOptimumLoading(0.18, 0.343),
                Evidence.of(EvidenceGrade.ASSUMED, Source.of("best loading of 0.18, assumed")));
        Workpiece plate = Workpiece.of(Materials.standard().get("mild-steel"), millimetres(12));
        Prices prices = Prices.of("cost units").with(CostItem.MACHINE, 80).with(CostItem.ABRASIVE, 0.4);
        // the loss is counted from the lowest flow rate on: both lines start together
        double lowest = Kind.RATIO.si(
                comparisonJet().withAbrasiveFlow(gramsPerMinute(100)).loadingRatio());
        double[] flows = new double[41];
        for (int i = 0; i < flows.length; i++) {
            flows[i] = 100 + 25 * i;
        }
        Chart chart = Chart.of(
                        "Abrasive flow rate and cost of a metre",
                        "Cost of a metre over the abrasive flow rate: by machinability alone it still falls at 1.1"
                                + " kg/min; with a mixing efficiency that decreases from the lowest flow rate on it is"
                                + " higher everywhere and has its minimum near 400 g/min.")
                .x("abrasive flow rate [g/min]")
                .y("cost of a metre [cost units]");
        for (FeedModel model : List.of(
                MachinabilityFeed.published(), MachinabilityFeed.published().corrected(falling, lowest))) {
            double[] costs = new double[flows.length];
            for (int i = 0; i < costs.length; i++) {
                costs[i] = CuttingCost.of(
                                prices,
                                CutConditions.of(
                                        comparisonJet().withAbrasiveFlow(gramsPerMinute(flows[i])), plate, model))
                        .at(3)
                        .costPerMetre();
            }
            chart.line(
                    model instanceof MachinabilityFeed ? "constant mixing efficiency" : "efficiency falls with loading",
                    flows,
                    costs);
        }
        return chart.svg(720, 380);
    }
}
