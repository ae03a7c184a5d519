package dev.waterjet.docs;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.kilogramsPerSecond;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.Calibration;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.examples.chart.Chart;
import dev.waterjet.examples.chart.KerfDrawing;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.JetSpeedModel;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/** Charts of the lessons. */
final class LearnFigures {

    private static final int WIDTH = 640;
    private static final int HEIGHT = 360;
    private static final int POINTS = 81;

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();

    private static final AbrasiveJet JET = CuttingHead.of(
                    Orifice.sapphire(millimetres(0.30)), FocusingTube.of(millimetres(0.90), millimetres(76)))
            .jet(megapascals(400), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(400));

    private static final Workpiece PLATE = Workpiece.of(Materials.standard().get("titanium"), millimetres(10));
    private static final CutConditions CUT = CutConditions.of(JET, PLATE, MODEL);

    private LearnFigures() {}

    static List<Figure> all() {
        return List.of(
                new Figure("learn-1-speed", LearnFigures::speed),
                new Figure("learn-2-contraction", LearnDrawings::contraction),
                new Figure("learn-2-power", LearnFigures::power),
                new Figure("learn-3-head", LearnDrawings::head),
                new Figure("learn-3-particles", LearnFigures::particles),
                new Figure("learn-4-loading", LearnFigures::loading),
                new Figure("learn-5-feed", LearnFigures::feed),
                new Figure("learn-6-index", LearnFigures::index),
                new Figure("learn-7-uncertainty", LearnFigures::uncertainty),
                new Figure("learn-8-kerf", LearnFigures::kerf),
                new Figure("learn-9-front", LearnFigures::front),
                new Figure("learn-10-corner", LearnDrawings::corner),
                new Figure("learn-11-plan", LearnFigures::plan),
                new Figure("learn-12-fit", LearnFigures::fit),
                new Figure("learn-13-cost", LearnFigures::cost));
    }

    private static String speed() {
        double[] pressures = evenly(1e-3, 600);
        WaterJet water = JET.water();
        return Chart.of(
                        "Speed of the waterjet",
                        "Speed over pressure, for compressible and for incompressible water: about 3.6 % apart"
                                + " at 400 MPa.")
                .x("pressure [MPa]")
                .y("speed [m/s]")
                .yFrom(0, 1150)
                .line(
                        "incompressible",
                        pressures,
                        map(
                                pressures,
                                p -> water.withPressure(megapascals(p))
                                        .withSpeedModel(JetSpeedModel.INCOMPRESSIBLE)
                                        .speedSi()))
                .line(
                        "compressible",
                        pressures,
                        map(pressures, p -> water.withPressure(megapascals(p)).speedSi()))
                .svg(WIDTH, HEIGHT);
    }

    private static String power() {
        double[] pressures = evenly(1, 600);
        Chart chart = Chart.of(
                        "Hydraulic power",
                        "Power over pressure for three orifices: proportional to the pressure to the power 1.5 and to"
                                + " the square of the bore. Two level lines are pumps of 22 kW and 37 kW.")
                .x("pressure [MPa]")
                .y("rated hydraulic power [kW]")
                .yFrom(0, 50);
        for (double bore : new double[] {0.4, 0.3, 0.2}) {
            Orifice orifice = Orifice.sapphire(millimetres(bore));
            chart.line(
                    bore + " mm",
                    pressures,
                    map(
                            pressures,
                            p -> Kind.POWER.si(
                                            WaterJet.of(orifice, megapascals(p)).ratedHydraulicPower())
                                    / 1e3));
        }
        for (int pump : new int[] {37, 22}) {
            chart.line("pump " + pump + " kW", new double[] {0, 600}, new double[] {pump, pump});
        }
        return chart.svg(WIDTH, HEIGHT);
    }

    private static String particles() {
        double[] loadings = evenly(0.01, 1);
        return Chart.of(
                        "Speed of water and abrasive particles",
                        "Particle speed decreases with the loading ratio: more abrasive shares the momentum of the"
                                + " same water.")
                .x("loading ratio")
                .y("speed [m/s]")
                .yFrom(0, 900)
                .line("water", loadings, map(loadings, r -> JET.water().speedSi()))
                .line(
                        "abrasive particles",
                        loadings,
                        map(loadings, r -> loaded(JET, r).particleSpeed().si()))
                .svg(WIDTH, HEIGHT);
    }

    private static String loading() {
        double[] loadings = evenly(0.005, 1.2);
        CuttingHead falling = JET.head()
                .withMixing(MixingEfficiency.decreasing(
                        0.9,
                        0.1,
                        MixingEfficiency.scaleForOptimumLoading(0.2),
                        Evidence.of(EvidenceGrade.ASSUMED, Source.of("an optimum at the loading ratio 0.2"))));
        return Chart.of(
                        "Power of the abrasive over the loading ratio",
                        "With constant mixing efficiency the power rises up to a ratio of 1. With an efficiency that"
                                + " falls with loading it has its maximum at 0.2, inside the band from 0.10 to 0.25 in"
                                + " which shops work.")
                .x("loading ratio")
                .y("power of the abrasive [kW]")
                .yFrom(0, 2.4)
                .band("shops work here", new double[] {0.10, 0.25}, new double[] {0, 0}, new double[] {2.4, 2.4})
                .line(
                        "constant efficiency 0.75",
                        loadings,
                        map(loadings, r -> loaded(JET, r).abrasivePower().si() / 1e3))
                .line(
                        "efficiency falls with loading",
                        loadings,
                        map(
                                loadings,
                                r -> loaded(JET.withHead(falling), r)
                                                .abrasivePower()
                                                .si()
                                        / 1e3))
                .svg(WIDTH, HEIGHT);
    }

    private static AbrasiveJet loaded(AbrasiveJet jet, double ratio) {
        return jet.withAbrasiveFlow(kilogramsPerSecond(ratio * jet.water().massFlowSi()));
    }

    private static String feed() {
        double[] thicknesses = evenly(2, 50);
        Chart chart = Chart.of(
                        "Separation feed rate",
                        "Separation feed rate over thickness for three materials, on logarithmic axes: parallel"
                                + " straight lines of the slope -1.15.")
                .x("thickness [mm]")
                .y("separation feed rate [mm/min]")
                .logX()
                .logY();
        for (String id : List.of("aluminium-6061-t6", "titanium", "stainless-304")) {
            chart.line(
                    Materials.standard().get(id).name(),
                    thicknesses,
                    map(
                            thicknesses,
                            h -> MODEL.separationFeedSi(
                                            JET, Materials.standard().get(id), h / 1e3)
                                    * 60e3));
        }
        return chart.svg(WIDTH, HEIGHT);
    }

    private static String index() {
        double[] indices = evenly(1, 5);
        double[] levels = {1, 2, 3, 4, 5};
        return Chart.of(
                        "Feed rate over quality index",
                        "10 mm titanium: from a separation cut at index 1 to cut quality very fine at index 5 the feed"
                                + " rate decreases to less than a sixth. The five levels are marked.")
                .x("quality index")
                .y("feed rate [mm/min]")
                .xFrom(0.5, 5.5)
                .yFrom(0, 800)
                .line(
                        "feed rate",
                        indices,
                        map(indices, q -> MODEL.feed(JET, PLATE, q).si() * 60e3))
                .points(
                        "very coarse, coarse, medium, fine, very fine",
                        levels,
                        map(levels, q -> MODEL.feed(JET, PLATE, q).si() * 60e3))
                .svg(WIDTH, HEIGHT);
    }

    private static String uncertainty() {
        double[] thicknesses = evenly(3, 30);
        return Chart.of(
                        "Feed rate for cut quality fine, with its uncertainty",
                        "The band contains the true feed rate with a probability of 95 %; its upper edge is about"
                                + " twice its lower.")
                .x("thickness [mm]")
                .y("feed rate [mm/min]")
                .logY()
                .band(
                        "95 % interval",
                        thicknesses,
                        map(thicknesses, h -> Kind.SPEED.si(fine(h).lower(0.95)) * 60e3),
                        map(thicknesses, h -> Kind.SPEED.si(fine(h).upper(0.95)) * 60e3))
                .line("titanium", thicknesses, map(thicknesses, h -> fine(h).si() * 60e3))
                .svg(WIDTH, HEIGHT);
    }

    private static Estimate<Speed> fine(double thicknessMm) {
        return MODEL.feed(JET, PLATE.withThickness(millimetres(thicknessMm)), CutQuality.FINE);
    }

    private static String kerf() {
        KerfDrawing drawing = KerfDrawing.of(
                "Cross-sections of a kerf",
                "10 mm titanium, stretched sideways: a V at 90 % of the separation feed rate, a slight V at 40 %,"
                        + " walls that open downwards at 5 %.");
        for (int percent : new int[] {90, 40, 5}) {
            Quantity<Speed> speed =
                    Kind.SPEED.of(percent / 100.0 * MODEL.separationFeedSi(JET, PLATE.material(), 0.010));
            drawing.stretchedSection(
                    percent + " % of the separation feed rate",
                    KerfModel.standard().kerf(CUT, speed));
        }
        return drawing.svg();
    }

    private static String front() {
        KerfDrawing drawing = KerfDrawing.of(
                "Cut front",
                "The front in 10 mm titanium from the side, to scale, the head moving right: a parabola that hangs back"
                        + " 2.6 mm at the bottom in a separation cut, 0.9 mm at medium, 0.6 mm at fine.");
        for (CutQuality quality : List.of(CutQuality.VERY_COARSE, CutQuality.MEDIUM, CutQuality.FINE)) {
            drawing.front(
                    quality.label(),
                    KerfModel.standard().kerf(CUT, CUT.feed(quality).value()));
        }
        return drawing.svg();
    }

    private static String plan() {
        Contour bracket = Contour.from(Point.millimetres(0, 0))
                .requirement(EdgeRequirement.of(CutQuality.MEDIUM))
                .lineTo(Point.millimetres(60, 0))
                .lineTo(Point.millimetres(60, 25))
                .requirement(EdgeRequirement.of(CutQuality.FINE))
                .lineTo(Point.millimetres(0, 25))
                .requirement(EdgeRequirement.of(CutQuality.MEDIUM))
                .close();
        FeedPlan plan = FeedPlanner.of(MachineLimits.of(Kind.SPEED.parse("12 m/min"), metresPerSquareSecond(0.5)), CUT)
                .plan(bracket, Side.LEFT);
        double[] places = places(plan);
        return Chart.of(
                        "Feed rate along the bracket",
                        "Feed rate over the distance along the path: constant on the medium sides, lower on the fine"
                                + " side, with slowdown zones at the corners.")
                .x("distance along the path [mm]")
                .y("feed rate [mm/min]")
                .yFrom(0, 250)
                .withoutLegend()
                .line("feed rate", places, map(places, s -> Kind.SPEED.si(plan.feedAt(millimetres(s))) * 60e3))
                .svg(WIDTH, HEIGHT);
    }

    /** Evenly spaced distances, and the ends of every block, where the feed rate has its narrow minima. */
    static double[] places(FeedPlan plan) {
        TreeSet<Double> places = new TreeSet<>();
        double length = Kind.LENGTH.si(plan.contour().length());
        for (int i = 0; i <= 850; i++) {
            places.add(1e3 * length * i / 850);
        }
        double end = 0;
        for (int i = 0; i < plan.size(); i++) {
            end += plan.lengthSi(i);
            places.add(1e3 * Math.min(end, length));
        }
        return places.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static String fit() {
        Material start = Material.of("bracket-alloy", 110, 0.2, MaterialClass.DUCTILE);
        double[] thicknesses = {6, 10, 10, 15, 20};
        double[] feeds = {1585, 905, 838, 552, 375};
        List<TestCut> cuts = IntStream.range(0, feeds.length)
                .mapToObj(i -> TestCut.separated(JET, millimetres(thicknesses[i]), millimetresPerMinute(feeds[i])))
                .toList();
        CalibratedFeed own = Calibration.ofMachinability(start, MODEL).fit(cuts);
        double[] all = evenly(4, 25);
        return Chart.of(
                        "Catalogue and fit",
                        "Separation feed rate over thickness: the 95 % band of the catalogue is a factor of 3 wide,"
                                + " that of a fit to five cuts a quarter of it; the measured cuts lie inside the narrow"
                                + " band.")
                .x("thickness [mm]")
                .y("separation feed rate [mm/min]")
                .logX()
                .logY()
                .band("catalogue, 95 %", all, bound(MODEL, start, all, -1), bound(MODEL, start, all, 1))
                .line("catalogue", all, bound(MODEL, start, all, 0))
                .band("fit, 95 %", all, bound(own, own.material(), all, -1), bound(own, own.material(), all, 1))
                .line("fit", all, bound(own, own.material(), all, 0))
                .points("measured cuts", thicknesses, feeds)
                .svg(WIDTH, HEIGHT + 40);
    }

    private static double[] bound(FeedModel model, Material material, double[] thicknessesMm, int side) {
        return map(thicknessesMm, h -> {
            Estimate<Speed> feed = model.feed(JET, Workpiece.of(material, millimetres(h)), 1);
            return side == 0 ? feed.si() * 60e3 : Kind.SPEED.si(side < 0 ? feed.lower(0.95) : feed.upper(0.95)) * 60e3;
        });
    }

    private static String cost() {
        double hour = 40;
        double kilogram = 0.8;
        double[] flows = evenly(100, 1200);
        return Chart.of(
                        "Cost of a metre",
                        "10 mm titanium, separation cut, 40 cost units an hour and 0.8 a kilogram: the share of time"
                                + " falls with the abrasive flow rate, the share of garnet rises, and the sum has a flat"
                                + " minimum near 540 g/min.")
                .x("abrasive flow rate [g/min]")
                .y("cost of a metre [cost units]")
                .yFrom(0, 2.4)
                .line("sum", flows, map(flows, m -> (hour + kilogram * m * 0.06) / metres(m)))
                .line("time", flows, map(flows, m -> hour / metres(m)))
                .line("garnet", flows, map(flows, m -> kilogram * m * 0.06 / metres(m)))
                .svg(WIDTH, HEIGHT);
    }

    /** Metres cut in an hour. */
    private static double metres(double gramsPerMinute) {
        return 3600
                * MODEL.separationFeedSi(
                        JET.withAbrasiveFlow(gramsPerMinute(gramsPerMinute)), PLATE.material(), PLATE.thicknessSi());
    }

    private static double[] evenly(double from, double to) {
        return IntStream.range(0, POINTS)
                .mapToDouble(i -> from + (to - from) * i / (POINTS - 1))
                .toArray();
    }

    private static double[] map(double[] values, DoubleUnaryOperator function) {
        return java.util.Arrays.stream(values).map(function).toArray();
    }
}
