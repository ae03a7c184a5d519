package dev.waterjet.benchmarks;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.Calibration;
import dev.waterjet.calibrate.FeedLadder;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.cost.Batch;
import dev.waterjet.cost.BatchCost;
import dev.waterjet.cost.Consumable;
import dev.waterjet.cost.CostItem;
import dev.waterjet.cost.CuttingCost;
import dev.waterjet.cost.PartWork;
import dev.waterjet.cost.Prices;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.head.HeadInventory;
import dev.waterjet.head.HeadSelection;
import dev.waterjet.head.HeadSelector;
import dev.waterjet.head.PartRequirement;
import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.placement.AccuracyBudget;
import dev.waterjet.placement.Location;
import dev.waterjet.placement.PartLocator;
import dev.waterjet.placement.ProbedPoint;
import dev.waterjet.placement.RigidMove;
import dev.waterjet.plan.Move;
import dev.waterjet.plan.PartPlan;
import dev.waterjet.plan.PartPlanner;
import dev.waterjet.plan.Setup;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramCodes;
import dev.waterjet.program.ProgramWriter;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.sheet.SheetFill;
import dev.waterjet.simulate.CutSimulator;
import dev.waterjet.simulate.FeedProfile;
import dev.waterjet.simulate.PredictedCut;
import dev.waterjet.toolpath.KerfOffset;
import dev.waterjet.toolpath.ToolPath;
import dev.waterjet.uncertainty.Distribution;
import dev.waterjet.uncertainty.Measurand;
import dev.waterjet.uncertainty.MonteCarlo;
import dev.waterjet.uncertainty.UncertainInputs;
import dev.waterjet.uncertainty.UncertaintyBudget;
import java.util.ArrayList;
import java.util.List;

/** Random batches, placements, budgets, sheets, motions, heads, fits, predicted cuts and whole plans. */
final class RandomJobs {

    private static final MachinabilityFeed MACHINABILITY = MachinabilityFeed.published();

    private RandomJobs() {}

    private static Prices prices(Draws draws) {
        Prices prices = Prices.of("units");
        for (CostItem item : CostItem.values()) {
            if (draws.below(8) > 0) {
                prices = prices.with(item, draws.between(1e-3, 100));
            }
        }
        return prices;
    }

    static void cost(Draws draws) {
        AbrasiveJet jet = draws.jet();
        Estimate<javax.measure.quantity.Time> time =
                Estimate.withinFactor(Kind.TIME, draws.between(1, 1e5), draws.evenly(0, 0.5), List.of());
        BatchCost cost = Batch.of(jet, PartWork.of(time), 1 + draws.below(1000)).cost(prices(draws));
        double sum = 0;
        for (double item : cost.items().values()) {
            sum += draws.notNegative(item);
        }
        double total = draws.notNegative(cost.total().si());
        draws.require(Math.abs(sum - total) <= 1e-6 * total, "items add up to " + sum + ", the total is " + total);
        Consumable tube = Consumable.focusingTube();
        double hours = draws.between(3600, 3.6e6);
        draws.rises(
                "probability of failure with time",
                draws.share(tube.failureProbability(Kind.TIME.of(hours))),
                draws.share(tube.failureProbability(Kind.TIME.of(1.1 * hours))));
    }

    static void cheapest(Draws draws) {
        CutConditions cut = CutConditions.of(draws.jet(), draws.plate(), MACHINABILITY);
        CuttingCost.Point point = CuttingCost.of(prices(draws), cut).cheapestAbrasiveFlow(draws.index());
        draws.positive(point.feed());
        draws.notNegative(point.costPerMetre());
    }

    static void placement(Draws draws) {
        RigidMove move =
                RigidMove.of(Kind.ANGLE.of(draws.evenly(-3, 3)), Point.ofSi(draws.evenly(-2, 2), draws.evenly(-2, 2)));
        List<ProbedPoint> probed = new ArrayList<>();
        int count = 2 + draws.below(5);
        for (int i = 0; i < count; i++) {
            Point known = Point.ofSi(draws.evenly(-1, 1), draws.evenly(-1, 1));
            Point seen = move.apply(known);
            probed.add(ProbedPoint.hole(
                            known,
                            Point.ofSi(seen.xSi() + draws.evenly(-1e-5, 1e-5), seen.ySi() + draws.evenly(-1e-5, 1e-5)))
                    .withUncertainty(Kind.LENGTH.of(1e-5)));
        }
        Location location = PartLocator.locate(probed);
        draws.positive(Kind.ANGLE.si(location.rotationUncertainty()));
        Point far = Point.ofSi(draws.evenly(-3, 3), draws.evenly(-3, 3));
        draws.positive(Kind.LENGTH.si(location.uncertaintyAt(far)));
        Point there = location.move().apply(far);
        draws.require(
                Kind.LENGTH.si(location.move().inverse().apply(there).distance(far)) < 1e-9,
                "a move and its inverse do not cancel");
        AccuracyBudget budget = AccuracyBudget.none()
                .withLocating(location, far)
                .withLimit(AccuracyBudget.Cause.MACHINE, draws.of(Kind.LENGTH, 1e-6, 1e-3));
        draws.share(budget.probabilityWithin(draws.of(Kind.LENGTH, 1e-6, 1e-3)));
    }

    private static UncertainInputs inputs(Draws draws) {
        return UncertainInputs.none()
                .with("pressure", Distribution.normal(draws.between(100e6, 600e6), draws.between(1e5, 2e7)))
                .with("flow", Distribution.uniform(draws.between(1e-3, 5e-3), draws.between(6e-3, 2e-2)))
                .with("factor", Distribution.logNormal(1, draws.evenly(0.01, 0.5)));
    }

    private static Measurand measurand(Draws draws) {
        double power = draws.evenly(0.1, 2);
        return x -> x[2] * Math.pow(x[0], power) * Math.sqrt(x[1]);
    }

    static void budget(Draws draws) {
        UncertaintyBudget budget = UncertaintyBudget.of(measurand(draws), inputs(draws));
        draws.positive(budget.value());
        draws.positive(budget.standardUncertainty());
        double sum = 0;
        for (String name : budget.names()) {
            sum += draws.share(budget.share(name));
        }
        draws.require(Math.abs(sum - 1) < 1e-9, "shares of a budget add up to " + sum);
        draws.positive(budget.expanded(draws.evenly(0.5, 0.999)));
    }

    static void trials(Draws draws) {
        var result = MonteCarlo.of(measurand(draws), inputs(draws))
                .withTrials(1000)
                .withSeed(draws.below(1 << 30))
                .run();
        draws.positive(result.mean());
        draws.positive(result.standardUncertainty());
    }

    static void sheet(Draws draws) {
        double side = draws.between(5e-3, 0.5);
        SheetFill fill = SheetFill.sheet(draws.of(Kind.LENGTH, 0.3, 4), draws.of(Kind.LENGTH, 0.3, 2))
                .withGap(draws.of(Kind.LENGTH, 1e-3, 2e-2))
                .squareEitherWay(Kind.LENGTH.of(side), Kind.LENGTH.of(side * draws.evenly(1, 3)));
        draws.notNegative(fill.parts());
        draws.share(fill.coveredShare());
    }

    private static MachineLimits machine(Draws draws) {
        MachineLimits limits = MachineLimits.of(draws.of(Kind.SPEED, 0.05, 1), draws.of(Kind.ACCELERATION, 0.1, 5));
        return draws.chance() ? limits : limits.withJerk(draws.of(Kind.JERK, 1, 100));
    }

    static void motion(Draws draws) {
        Contour contour = RandomContours.ring(draws, 0, 0, draws.between(3e-3, 0.4));
        CutConditions cut = CutConditions.of(
                draws.jet(), Workpiece.of(draws.material(), draws.of(Kind.LENGTH, 1e-3, 0.1)), MACHINABILITY);
        FeedPlan plan = FeedPlanner.of(machine(draws), cut).plan(contour, draws.pick(Side.values()));
        double time = draws.positive(Kind.TIME.si(plan.time()));
        double sum = 0;
        for (int i = 0; i < plan.size(); i++) {
            sum += draws.notNegative(plan.timeSi(i));
            draws.notNegative(plan.peakFeedSi(i));
        }
        draws.require(Math.abs(sum - time) <= 1e-6 * time, "blocks take " + sum + ", the plan " + time);
    }

    static void offset(Draws draws) {
        Contour contour = RandomContours.ring(draws, 0, 0, draws.between(3e-3, 0.4));
        for (ToolPath path : KerfOffset.of(draws.of(Kind.LENGTH, 1e-4, 1e-3))
                .apply(contour, draws.pick(Side.values()))
                .paths()) {
            draws.positive(path.contour().lengthSi());
        }
    }

    static void head(Draws draws) {
        HeadSelection selection = HeadSelector.of(
                        HeadInventory.standard(), draws.of(Kind.PRESSURE, 200e6, 600e6), draws.of(Kind.POWER, 1e4, 1e5))
                .select(PartRequirement.of(
                        draws.plate(), draws.pick(CutQuality.values()), draws.of(Kind.LENGTH, 0.01, 10)));
        draws.positive(selection.best(HeadSelector.Ranking.TIME).time());
    }

    static void fit(Draws draws) {
        AbrasiveJet jet = draws.jet();
        var material = draws.material();
        List<TestCut> cuts = new ArrayList<>();
        int count = 3 + draws.below(10);
        for (int i = 0; i < count; i++) {
            double thicknessM = draws.between(2e-3, 0.1);
            double feed = MACHINABILITY.feedSi(jet, material, thicknessM, 1) * draws.between(0.6, 1.6);
            cuts.add(TestCut.separated(jet, Kind.LENGTH.of(thicknessM), Kind.SPEED.of(feed)));
        }
        CalibratedFeed fitted =
                Calibration.ofMachinability(material, MACHINABILITY).fit(cuts);
        draws.positive(fitted.scatter());
        Estimate<javax.measure.quantity.Speed> feed =
                fitted.feed(jet, Workpiece.of(material, draws.of(Kind.LENGTH, 1e-3, 0.2)), draws.index());
        draws.positive(feed);
        draws.positive(FeedLadder.of(feed, draws.evenly(0.02, 0.3)).step());
    }

    static void predicted(Draws draws) {
        CutConditions cut = CutConditions.of(
                draws.jet(), Workpiece.of(draws.material(), draws.of(Kind.LENGTH, 2e-3, 0.05)), MACHINABILITY);
        Contour contour = RandomContours.ring(draws, 0, 0, draws.between(5e-3, 0.03));
        Side side = draws.pick(Side.values());
        FeedPlan plan = FeedPlanner.of(machine(draws), cut).plan(contour, side);
        PredictedCut predicted = CutSimulator.of(cut, KerfModel.standard(), LagModel.standard())
                .withDepths(3)
                .withPoints(400)
                .predict(FeedProfile.of(plan), contour, side);
        String text = predicted.describe().toString() + predicted.findings();
        draws.require(!text.contains("NaN") && !text.contains("Infinity"), "a predicted cut has a number that is none");
        draws.notNegative(predicted.places().size());
    }

    static void plan(Draws draws) {
        CuttingHead head = draws.head();
        Setup setup = Setup.of(
                        head,
                        PumpSetting.of(draws.of(Kind.PRESSURE, 150e6, 600e6), Kind.VOLUME_FLOW.of(2e-4)),
                        machine(draws))
                .withAbrasive(Abrasive.garnet(Mesh.of(80)), draws.of(Kind.MASS_FLOW, 1e-3, 1.2e-2))
                .withFeedChange(draws.between(0.005, 0.3));
        Part part = RandomContours.part(draws);
        Workpiece plate = Workpiece.of(draws.material(), draws.of(Kind.LENGTH, 1e-3, 0.1));
        PartPlan plan = PartPlanner.of(setup).plan(part, plate);
        draws.positive(plan.cuttingTime());
        draws.positive(Kind.LENGTH.si(plan.cutLength()));
        Point before = plan.moves().get(0).start();
        for (Move move : plan.moves()) {
            draws.require(Kind.LENGTH.si(move.start().distance(before)) < 1e-6, "a gap before " + move);
            before = move.end();
        }
        String text = plan.describe() + plan.csv() + plan.findings();
        draws.require(!text.contains("NaN") && !text.contains("Infinity"), "a plan has a number that is none");
        PartProgram program = PartProgram.parse(plan.program("part", ProgramWriter.of(ProgramCodes.defaults())));
        draws.require(program.cuts().size() == plan.pierces(), "the program has another number of cuts than the plan");
    }
}
