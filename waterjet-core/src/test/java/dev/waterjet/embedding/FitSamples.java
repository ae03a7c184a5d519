package dev.waterjet.embedding;

import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static dev.waterjet.measure.Measures.seconds;

import dev.waterjet.calibrate.ArcMeasurement;
import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.Calibration;
import dev.waterjet.calibrate.CalibrationSet;
import dev.waterjet.calibrate.CutPrior;
import dev.waterjet.calibrate.FeedLadder;
import dev.waterjet.calibrate.FittedModel;
import dev.waterjet.calibrate.KerfMeasurement;
import dev.waterjet.calibrate.LagMeasurement;
import dev.waterjet.calibrate.ModelComparison;
import dev.waterjet.calibrate.NextCut;
import dev.waterjet.calibrate.PierceMeasurement;
import dev.waterjet.calibrate.RoughnessMeasurement;
import dev.waterjet.calibrate.ShopFit;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.simulate.CornerMeasurement;
import dev.waterjet.uncertainty.Distribution;
import dev.waterjet.uncertainty.Measurand;
import dev.waterjet.uncertainty.MonteCarlo;
import dev.waterjet.uncertainty.SobolStudy;
import dev.waterjet.uncertainty.UncertainInputs;
import dev.waterjet.uncertainty.UncertaintyBudget;
import java.util.List;

/** Instances of what fits and studies of uncertainty answer. */
final class FitSamples {

    private FitSamples() {}

    static void addTo(List<Described> all) {
        List<TestCut> cuts = List.of(
                TestCut.separated(Samples.JET, millimetres(10), millimetresPerMinute(500)),
                TestCut.separated(Samples.JET, millimetres(20), millimetresPerMinute(220)));
        all.addAll(cuts);
        CalibratedFeed fitted = Calibration.ofMachinability(Samples.PLATE.material(), MachinabilityFeed.published())
                .fit(cuts);
        all.add(fitted);
        all.add(fitted.fit());
        all.add(ShopFit.of(
                cuts.stream()
                        .map(cut -> cut.withAttribute(
                                ShopFit.MATERIAL, Samples.PLATE.material().id()))
                        .toList(),
                Materials.of(List.of(Samples.PLATE.material()))));
        all.add(new ModelComparison(-12.5, -11.0, 0.8, 1.1));
        all.add(CutPrior.catalogue(Samples.PLATE.material()));
        all.add(cuts.get(0).withPlate("P1").withLabel("first"));
        FeedLadder ladder =
                FeedLadder.of(fitted.feed(Samples.JET, Workpiece.of(fitted.material(), millimetres(12)), 1), 0.2);
        all.add(ladder);
        all.add(ladder.trials().get(ladder.trials().size() - 1));
        all.add(NextCut.Way.measured());
        all.addAll(NextCut.rank(fitted, Samples.JET, millimetres(12), List.of(Samples.JET)));
        FittedModel<KerfModel> kerf =
                KerfMeasurement.fit(List.of(measured(10, 1.2, 1.0), measured(30, 1.0, 0.7), measured(60, 0.95, 0.6)));
        all.add(kerf);
        all.add(kerf.fit());
        LagMeasurement line = LagMeasurement.of(millimetres(20))
                .withLags(
                        QuantityArray.ofSi(Kind.LENGTH, 5e-3, 10e-3, 15e-3),
                        QuantityArray.ofSi(Kind.LENGTH, 0.4e-3, 1.5e-3, 3.4e-3));
        RoughnessMeasurement surface = RoughnessMeasurement.of(Samples.JET, millimetres(25))
                .withRa(
                        QuantityArray.ofSi(Kind.LENGTH, 1e-3, 8e-3, 16e-3, 22e-3),
                        QuantityArray.ofSi(Kind.LENGTH, 3.2e-6, 3.8e-6, 9e-6, 16e-6));
        PierceMeasurement pierce = PierceMeasurement.of(millimetres(10), seconds(4));
        ArcMeasurement arc = ArcMeasurement.of(millimetres(25), millimetres(75), millimetres(5));
        all.add(arc);
        all.add(ArcMeasurement.fit(List.of(
                arc.withShift(millimetres(0.4)), arc.withShift(millimetres(0.42)), arc.withShift(millimetres(0.39)))));
        CutConditions corner = CutConditions.of(Samples.JET, Samples.PLATE, MachinabilityFeed.published());
        all.add(CornerMeasurement.of(corner, Kind.SPEED.of(corner.feedSi(3)), Measures.degrees(90)));
        all.addAll(List.of(
                measured(10, 1.2, 1.0),
                line,
                surface,
                pierce,
                LagMeasurement.fit(List.of(line)),
                RoughnessMeasurement.fit(List.of(surface)),
                PierceMeasurement.fit(List.of(
                        pierce,
                        PierceMeasurement.of(millimetres(20), seconds(9)),
                        PierceMeasurement.of(millimetres(30), seconds(17)))),
                CalibrationSet.of(MachinabilityFeed.published()).with(fitted)));
        Measurand product = in -> in[0] * in[1];
        UncertainInputs two = UncertainInputs.none()
                .with("length", Distribution.normal(3, 0.1))
                .with("width", Distribution.uniform(1, 2));
        all.add(UncertaintyBudget.of(product, two));
        all.add(MonteCarlo.of(product, two).withTrials(1000).run());
        all.add(SobolStudy.of(product, two).withTrials(1000).run());
    }

    private static KerfMeasurement measured(double depthMm, double entryMm, double exitMm) {
        return KerfMeasurement.of(
                        CutConditions.of(Samples.JET, Samples.PLATE, MachinabilityFeed.published()),
                        millimetres(depthMm))
                .withEntryWidth(millimetres(entryMm))
                .withExitWidth(millimetres(exitMm));
    }
}
