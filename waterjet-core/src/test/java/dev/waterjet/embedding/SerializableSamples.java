package dev.waterjet.embedding;

import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static dev.waterjet.measure.Measures.newtons;

import dev.waterjet.cost.Batch;
import dev.waterjet.cost.PartWork;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.DeclinationFeed;
import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.FeedSweep;
import dev.waterjet.feed.FlowStrengths;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.feed.PlainWaterFeed;
import dev.waterjet.feed.SpecificEnergyFeed;
import dev.waterjet.feed.ThresholdFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourConditioner;
import dev.waterjet.part.Point;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.sheet.SheetFill;
import dev.waterjet.sheet.SheetLayout;
import dev.waterjet.sheet.Slats;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.HoldingTabs;
import dev.waterjet.toolpath.KerfOffset;
import dev.waterjet.uncertainty.Distribution;
import dev.waterjet.uncertainty.UncertainInputs;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;

/** One instance or more of every public type that can be serialized: those of {@link Samples}, and those without a description. */
final class SerializableSamples {

    private SerializableSamples() {}

    static List<Object> all() {
        List<Object> all = new ArrayList<>();
        Samples.all().stream().filter(Serializable.class::isInstance).forEach(all::add);
        all.add(Kind.PRESSURE);
        all.add(Materials.standard());
        ofFeed(all);
        all.add(UncertainInputs.none()
                .with("x", Distribution.normal(1, 0.1))
                .with("y", Distribution.triangular(0, 1, 3))
                .with("z", Distribution.student(1, 0.1, 5))
                .withCorrelation("x", "y", 0.5));
        all.add(Batch.of(Samples.JET, PartWork.of(Estimate.withinFactor(Kind.TIME, 90, 0.2, List.of())), 20));
        ofGeometry(all);
        return all;
    }

    private static void ofFeed(List<Object> all) {
        MachinabilityFeed published = MachinabilityFeed.published();
        AbrasiveJet jet = Samples.JET;
        Workpiece plate = Samples.PLATE;
        all.add(published.withExponent(FeedExponent.PRESSURE, 1.5));
        all.add(MachinabilityFeed.publishedByWaterFlow());
        all.add(ErosionFeed.standard());
        all.add(FlowStrengths.standard());
        all.add(SpecificEnergyFeed.ofSteel());
        all.add(PlainWaterFeed.of(
                plate.material(), jet.water(), millimetres(5), millimetres(20), millimetresPerMinute(5000)));
        all.add(ThresholdFeed.of(plate.material(), jet, 8e-9, megapascals(60), millimetresPerMinute(1)));
        all.add(DeclinationFeed.linear(published));
        all.add(published.capped(millimetresPerMinute(3000)));
        all.add(published.corrected(MixingEfficiency.standard(), 0.15));
        all.add(Workpiece.sheets(plate, 3));
        all.add(FeedSweep.of(published, jet, plate, 3).overIndex(QuantityArray.ofSi(Kind.RATIO, 1, 2)));
    }

    private static void ofGeometry(List<Object> all) {
        Contour sheet =
                Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(300, 200), EdgeRequirement.defaults());
        CuttingRules rules = CuttingRules.of(millimetres(1), millimetres(6));
        all.add(ContourConditioner.defaults());
        all.add(sheet.placeAtSi(0.4));
        all.add(SheetFill.sheet(millimetres(300), millimetres(200)));
        all.add(SheetLayout.of(sheet, List.of()));
        all.add(Slats.of(millimetres(50), millimetres(4)));
        all.add(HoldingTabs.of(newtons(300), megapascals(150), millimetres(10), rules));
        all.add(KerfOffset.of(millimetres(0.5)));
    }
}
