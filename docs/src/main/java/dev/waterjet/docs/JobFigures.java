package dev.waterjet.docs;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.hours;
import static dev.waterjet.measure.Measures.kilowatts;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;

import dev.waterjet.cost.Consumable;
import dev.waterjet.cost.CostItem;
import dev.waterjet.cost.Prices;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.examples.chart.Chart;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.head.HeadCandidate;
import dev.waterjet.head.HeadInventory;
import dev.waterjet.head.HeadSelection;
import dev.waterjet.head.HeadSelector;
import dev.waterjet.head.PartRequirement;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.pierce.PierceMethod;
import dev.waterjet.pierce.PierceModel;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.LeadPlacer;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;

/** Figures about jobs. */
final class JobFigures {

    private JobFigures() {}

    static List<Figure> all() {
        return List.of(
                new Figure("job-pierce-time", JobFigures::pierceTime),
                new Figure("job-trade-off", JobFigures::tradeOff),
                new Figure("job-wear", JobFigures::wear),
                new Figure("job-worked-plan", JobFigures::workedPlan));
    }

    private static String pierceTime() {
        AbrasiveJet jet = CuttingHead.of(
                        Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(102)))
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450));
        QuantityArray<Length> thicknesses = QuantityArray.evenly(Kind.LENGTH, millimetres(2), millimetres(60), 59);
        Workpiece steel = Workpiece.of(Materials.standard().get("stainless-304"), millimetres(20));
        CutConditions cut = CutConditions.of(jet, steel, MachinabilityFeed.published());
        PierceModel standing = PierceModel.derived(cut, PierceMethod.STATIONARY);
        PierceModel moving = PierceModel.derived(cut, PierceMethod.MOVING);
        double[] x = thicknesses.to(Units.MILLIMETRE);
        return Chart.of(
                        "Pierce time in stainless steel",
                        "Pierce time increases with the thickness in thin plate and with its square in thick plate,"
                                + " because the returning water damps the jet. A moving pierce takes about half of the"
                                + " time or less. The band shows that a derived time is known within a factor of 2.7"
                                + " only.")
                .x("thickness [mm]")
                .y("time [s]")
                .logY()
                .band(
                        "95 % interval, stationary",
                        x,
                        times(standing, thicknesses, time -> Kind.TIME.si(time.lower(0.95))),
                        times(standing, thicknesses, time -> Kind.TIME.si(time.upper(0.95))))
                .line("stationary pierce", x, times(standing, thicknesses, Estimate::si))
                .line("moving pierce", x, times(moving, thicknesses, Estimate::si))
                .svg(720, 420);
    }

    private static double[] times(
            PierceModel model, QuantityArray<Length> depths, ToDoubleFunction<Estimate<Time>> what) {
        double[] times = new double[depths.size()];
        for (int i = 0; i < times.length; i++) {
            times[i] = what.applyAsDouble(model.time(depths.get(i)));
        }
        return times;
    }

    private static String tradeOff() {
        Prices rates = Prices.of("cost units")
                .with(CostItem.MACHINE, 5)
                .with(CostItem.WATER, 3)
                .with(CostItem.ABRASIVE, 0.45)
                .with(CostItem.ENERGY, 0.25)
                .with(CostItem.SLUDGE, 0.15)
                .with(CostItem.ORIFICE, 20)
                .with(CostItem.TUBE, 110)
                .with(CostItem.SHEET, 0);
        HeadSelection selection = HeadSelector.of(HeadInventory.standard(), megapascals(380), kilowatts(22))
                .withPrices(rates)
                .select(PartRequirement.of(
                        Workpiece.of(Materials.standard().get("stainless-304"), millimetres(6)),
                        CutQuality.MEDIUM,
                        millimetres(1500)));
        List<HeadCandidate> front = selection.paretoFront();
        // heads that differ in mesh or length alone lie on one point
        Set<String> seen = new HashSet<>();
        List<HeadCandidate> feasible = selection.ranked(HeadSelector.Ranking.TIME).stream()
                .filter(trial -> trial.time().si() < 4 * front.get(0).time().si())
                .filter(trial -> seen.add(Math.round(trial.time().si()) + " " + Math.round(100 * trial.cost())))
                .toList();
        Set<HeadCandidate> best = new HashSet<>(front);
        List<HeadCandidate> others =
                feasible.stream().filter(candidate -> !best.contains(candidate)).toList();
        double fastest = front.get(0).time().si();
        return Chart.of(
                        "Time and cost of a part for each feasible head",
                        "Each point is a feasible head. Along the line no other head is both faster and cheaper: its"
                                + " fastest head is the dearest there, its slowest the cheapest. Heads away from it are"
                                + " slower or dearer.")
                .x("time of one part [s]")
                .xFrom(0, fastest * 4)
                .y("cost of one part [cost units]")
                .yFrom(front.get(front.size() - 1).cost() * 0.9, front.get(0).cost() * 1.5)
                // what is drawn first lies on top
                .points(
                        "best heads",
                        column(front, candidate -> candidate.time().si()),
                        column(front, HeadCandidate::cost))
                .note(size(front.get(0)), front.get(0).time().si(), front.get(0).cost())
                .note(
                        size(front.get(front.size() - 1)),
                        front.get(front.size() - 1).time().si(),
                        front.get(front.size() - 1).cost())
                .line(
                        "trade-off",
                        column(front, candidate -> candidate.time().si()),
                        column(front, HeadCandidate::cost))
                .points(
                        "other feasible heads",
                        column(others, candidate -> candidate.time().si()),
                        column(others, HeadCandidate::cost))
                .svg(720, 420);
    }

    /** Bores of orifice and focusing tube. */
    private static String size(HeadCandidate candidate) {
        return String.format(
                Locale.ROOT,
                "%.2f/%.2f mm",
                1e3 * candidate.jet().head().orifice().boreSi(),
                1e3 * candidate.jet().head().tube().boreSi());
    }

    private static double[] column(List<HeadCandidate> trials, ToDoubleFunction<HeadCandidate> what) {
        return trials.stream().mapToDouble(what).toArray();
    }

    private static String wear() {
        QuantityArray<Time> ages = QuantityArray.evenly(Kind.TIME, hours(0), hours(200), 101);
        double[] x = ages.to(Units.HOUR);
        return Chart.of(
                        "Failure probability of consumables",
                        "A sapphire orifice has failed with a probability of 50 % at 71 h, a focusing tube at 87 h; a"
                                + " diamond orifice rarely fails within 200 h.")
                .x("jet-on time [h]")
                .y("failure probability [%]")
                .line("sapphire orifice", x, probabilities(Consumable.orifice(Orifice.Jewel.SAPPHIRE), ages))
                .line("focusing tube", x, probabilities(Consumable.focusingTube(), ages))
                .line("diamond orifice", x, probabilities(Consumable.orifice(Orifice.Jewel.DIAMOND), ages))
                .svg(720, 420);
    }

    private static String workedPlan() {
        AbrasiveJet jet = CuttingHead.of(
                        Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(102)))
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450));
        Workpiece plate = Workpiece.of(Materials.standard().get("stainless-304"), millimetres(6));
        MachinabilityFeed model = MachinabilityFeed.published();
        Contour outline = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(80, 0))
                .lineTo(Point.millimetres(80, 45))
                .arcTo(Point.millimetres(75, 50), Point.millimetres(75, 45), Side.LEFT)
                .lineTo(Point.millimetres(0, 50))
                .close();
        Part part = Part.of(outline);
        Contour path = LeadPlacer.of(part, CuttingRules.of(millimetres(1.1), millimetres(6)))
                .suggest(0)
                .path();
        FeedPlan plan = FeedPlanner.of(
                        MachineLimits.of(millimetresPerMinute(10_000), metresPerSquareSecond(0.5)),
                        CutConditions.of(jet, plate, model))
                .plan(path, part.partSide(0));
        double[] places = LearnFigures.places(plan);
        double[] feeds = Arrays.stream(places)
                .map(place -> plan.feedAtSi(place / 1e3) * 60e3)
                .toArray();
        return Chart.of(
                        "Feed rate along the outline of a bracket",
                        "The feed rate is that of the cut quality, higher in the leads. It decreases by a tenth at"
                                + " each of the three sharp corners; the rounded corner requires no slowdown.")
                .x("distance along the path [mm]")
                .y("feed rate [mm/min]")
                .withoutLegend()
                .line("feed rate", places, feeds)
                .svg(720, 360);
    }

    private static double[] probabilities(Consumable part, QuantityArray<Time> ages) {
        double[] chances = new double[ages.size()];
        for (int i = 0; i < chances.length; i++) {
            chances[i] = 100 * part.failureProbability(ages.get(i));
        }
        return chances;
    }
}
