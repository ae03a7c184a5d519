package dev.waterjet.embedding;

import static dev.waterjet.measure.Measures.hours;
import static dev.waterjet.measure.Measures.kilowatts;
import static dev.waterjet.measure.Measures.litresPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;

import dev.waterjet.cost.Batch;
import dev.waterjet.cost.Consumable;
import dev.waterjet.cost.CostItem;
import dev.waterjet.cost.PartWork;
import dev.waterjet.cost.Prices;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.head.HeadInventory;
import dev.waterjet.head.HeadSelection;
import dev.waterjet.head.HeadSelector;
import dev.waterjet.head.HeadSelector.Ranking;
import dev.waterjet.head.PartRequirement;
import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.jet.TubeWear;
import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.pierce.PierceMethod;
import dev.waterjet.pierce.PierceModel;
import dev.waterjet.pierce.PierceSelector;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.placement.AccuracyBudget;
import dev.waterjet.placement.Location;
import dev.waterjet.placement.PartLocator;
import dev.waterjet.placement.ProbedPoint;
import dev.waterjet.plan.MoveTilt;
import dev.waterjet.plan.PartPlan;
import dev.waterjet.plan.PartPlanner;
import dev.waterjet.plan.Setup;
import dev.waterjet.program.ProgramCodes;
import dev.waterjet.program.ProgramWriter;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.sheet.SheetFill;
import dev.waterjet.simulate.CutSimulator;
import dev.waterjet.simulate.FeedProfile;
import dev.waterjet.simulate.PredictedCut;
import java.util.List;

/** Instances of the types of {@code dev.waterjet.job}. */
final class JobSamples {

    private static final String SHELF = """
        part,size
        orifice,0.1 mm
        orifice,0.25 mm
        tube,0.3 mm
        tube,0.76 mm
        length,30 mm
        length,76 mm
        mesh,80
        mesh,230
        flow,30 g/min
        flow,300 g/min
        """;

    private JobSamples() {}

    static void addTo(List<Described> all) {
        MachinabilityFeed model = MachinabilityFeed.published();
        PierceSettings practice = PierceSettings.defaults().withStrength(megapascals(60));
        Pierce pierce = PierceSelector.of(practice).select(CutConditions.of(Samples.JET, Samples.PLATE, model));
        PartWork work = PartWork.of(Estimate.withinFactor(Kind.TIME, 90, 0.2, List.of()))
                .withPierces(2, pierce);
        Prices rates = Prices.of("crowns").with(CostItem.MACHINE, 90).with(CostItem.ABRASIVE, 0.45, 0.1);
        Batch batch = Batch.of(Samples.JET, work, 20);
        PartRequirement demand = PartRequirement.of(Samples.PLATE, CutQuality.MEDIUM, millimetres(500))
                .withMinimumInnerRadius(millimetres(0.5))
                .withWallTolerance(millimetres(0.2));
        all.add(HeadInventory.parse(SHELF));
        HeadSelection selection = HeadSelector.of(HeadInventory.parse(SHELF), megapascals(380), kilowatts(10))
                .select(demand);
        Setup setup = Setup.of(
                        Samples.JET.head(),
                        PumpSetting.of(megapascals(380), litresPerMinute(3.5)),
                        MachineLimits.of(millimetresPerMinute(10000), metresPerSquareSecond(1)))
                .withPrices(rates);
        Part disc = Part.of(Contour.circle(Point.millimetres(0, 0), millimetres(20), EdgeRequirement.defaults()));
        PartPlan plan = PartPlanner.of(setup).plan(disc, Samples.PLATE);
        all.add(PartPlanner.of(setup)
                .program("disc", List.of(disc), Samples.PLATE, ProgramWriter.of(ProgramCodes.defaults())));
        all.add(setup);
        all.add(plan);
        all.add(plan.cuts().get(0));
        all.add(plan.moves().get(1));
        HeadTilt tilt = HeadTilt.ofSi(0.02, -0.05);
        all.add(new MoveTilt(tilt, tilt, millimetres(2)));
        PredictedCut cut = CutSimulator.of(
                        CutConditions.of(Samples.JET, Samples.PLATE, model), KerfModel.standard(), LagModel.standard())
                .predict(
                        FeedProfile.constant(disc(20.4), millimetresPerMinute(200))
                                .afterSteadyFeed(),
                        disc(20),
                        Side.LEFT);
        all.add(cut);
        all.add(cut.places().get(0));
        all.add(plan.cuts().get(0).feeds().get(0).sourceBlocks(0.03).get(0));
        all.add(demand);
        all.add(selection);
        all.add(selection.rejected().get(0));
        all.add(selection.rejected().get(0).findings().get(0));
        all.add(selection.best(Ranking.TIME));
        all.add(practice);
        ProbedPoint hole = ProbedPoint.hole(Point.millimetres(0, 0), Point.millimetres(5, 6));
        ProbedPoint edge =
                ProbedPoint.edge(Point.millimetres(0, 0), Point.millimetres(80, 0), Point.millimetres(60, 6));
        Location location = PartLocator.locate(List.of(hole, edge));
        all.add(edge);
        all.add(location);
        all.add(location.move());
        all.add(AccuracyBudget.none().withLocating(location, Point.millimetres(40, 20)));
        all.add(PierceModel.derived(CutConditions.of(Samples.JET, Samples.PLATE, model), PierceMethod.MOVING));
        all.add(pierce);
        all.add(work);
        all.add(rates);
        all.add(batch.consumption(0.65));
        all.add(batch.cost(rates));
        all.add(Consumable.focusingTube());
        all.add(TubeWear.of(Kind.SPEED.of(5e-10)));
        all.add(Consumable.focusingTube().replacedAt(hours(60)));
        all.add(SheetFill.sheet(millimetres(500), millimetres(500)).square(millimetres(10), millimetres(10)));
    }

    private static Contour disc(double radiusMm) {
        return Contour.circle(Point.millimetres(0, 0), millimetres(radiusMm), EdgeRequirement.defaults());
    }
}
