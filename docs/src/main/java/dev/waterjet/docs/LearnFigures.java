package dev.waterjet.docs;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.kilogramsPerSecond;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.examples.chart.Chart;
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
import dev.waterjet.kerf.Kerf;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/** Figures of the ten lessons. */
final class LearnFigures {

    private static final int WIDTH = 640;
    private static final int HEIGHT = 360;
    private static final int POINTS = 81;

    private static final FeedModel MODEL = MachinabilityFeed.published();

    private static final AbrasiveJet JET = CuttingHead.of(
                    Orifice.sapphire(millimetres(0.30)), FocusingTube.of(millimetres(0.90), millimetres(76)))
            .jet(megapascals(400), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(400));

    private static final Workpiece PLATE = Workpiece.of(Materials.standard().get("titanium"), millimetres(10));
    private static final CutConditions CUT = CutConditions.of(JET, PLATE, MODEL);

    private LearnFigures() {}

    static List<Figure> all() {
        return List.of(
                new Figure("learn-1-speed", LearnFigures::speed),
                new Figure("learn-2-power", LearnFigures::power),
                new Figure("learn-3-particles", LearnFigures::particles),
                new Figure("learn-4-loading", LearnFigures::loading),
                new Figure("learn-5-feed", LearnFigures::feed),
                new Figure("learn-6-index", LearnFigures::index),
                new Figure("learn-7-uncertainty", LearnFigures::uncertainty),
                new Figure("learn-8-kerf", LearnFigures::kerf),
                new Figure("learn-9-lag", LearnFigures::lag),
                new Figure("learn-10-plan", LearnFigures::plan));
    }

    private static String speed() {
        double[] pressures = evenly(10, 600);
        WaterJet water = JET.water();
        return Chart.of(
                        "Speed of the waterjet",
                        "Speed over pressure, for compressible and for incompressible water: about 3.6 % apart"
                                + " at 400 MPa.")
                .x("pressure [MPa]")
                .y("speed [m/s]")
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
        double[] pressures = evenly(50, 600);
        Chart chart = Chart.of(
                        "Hydraulic power",
                        "Power over pressure for three orifices: proportional to the pressure to the power 1.5 and to"
                                + " the square of the bore.")
                .x("pressure [MPa]")
                .y("power [kW]");
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
                        map(loadings, r -> loaded(r).particleSpeed().si()))
                .svg(WIDTH, HEIGHT);
    }

    private static String loading() {
        double[] loadings = evenly(0.01, 2);
        return Chart.of(
                        "Power of the abrasive",
                        "Power over loading ratio at constant mixing efficiency: the maximum is at a ratio"
                                + " of 1, far above common practice.")
                .x("loading ratio")
                .y("power [kW]")
                .withoutLegend()
                .line(
                        "power",
                        loadings,
                        map(loadings, r -> loaded(r).abrasivePower().si() / 1e3))
                .svg(WIDTH, HEIGHT);
    }

    private static AbrasiveJet loaded(double ratio) {
        return JET.withAbrasiveFlow(kilogramsPerSecond(ratio * JET.water().massFlowSi()));
    }

    private static String feed() {
        double[] thicknesses = evenly(2, 50);
        Chart chart = Chart.of(
                        "Separation feed rate",
                        "Separation feed rate over thickness for three materials, on a logarithmic axis: it decreases"
                                + " with the power 1.15 of the thickness.")
                .x("thickness [mm]")
                .y("feed rate [mm/min]")
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
        return Chart.of(
                        "Feed rate over quality index",
                        "10 mm titanium: from a separation cut at index 1 to cut quality very fine at index 5 the feed"
                                + " rate decreases to less than a sixth.")
                .x("quality index")
                .y("feed rate [mm/min]")
                .yFrom(0, 800)
                .withoutLegend()
                .line(
                        "feed",
                        indices,
                        map(indices, q -> MODEL.feed(JET, PLATE, q).si() * 60e3))
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
        double[] depths = evenly(0, 10);
        Chart chart = Chart.of(
                        "Half-width of the kerf",
                        "Half-width over depth in 10 mm titanium: the kerf of a fast cut narrows downwards, that of a"
                                + " slow cut is nearly constant.")
                .x("depth [mm]")
                .y("half-width [mm]")
                .yFrom(0, 0.6);
        for (double share : new double[] {0.9, 0.4, 0.1}) {
            Quantity<Speed> speed = Kind.SPEED.of(share * MODEL.separationFeedSi(JET, PLATE.material(), 0.010));
            Kerf kerf = KerfModel.standard().kerf(CUT, speed);
            chart.line(
                    Math.round(100 * share) + " % of the separation feed rate",
                    depths,
                    map(depths, z -> kerf.halfWidthSi(z / 1e3) * 1e3));
        }
        return chart.svg(WIDTH, HEIGHT);
    }

    private static String lag() {
        double[] depths = evenly(0.05, 10);
        Chart chart = Chart.of(
                        "Lag of the jet",
                        "Lag over depth in 10 mm titanium: a parabola, with less lag for a finer cut quality.")
                .x("depth [mm]")
                .y("lag [mm]");
        for (CutQuality quality : List.of(CutQuality.VERY_COARSE, CutQuality.MEDIUM, CutQuality.FINE)) {
            Kerf kerf = KerfModel.standard().kerf(CUT, CUT.feed(quality).value());
            chart.line(
                    quality.label(),
                    depths,
                    map(depths, z -> kerf.lag().at(millimetres(z)).to(Units.MILLIMETRE)));
        }
        return chart.svg(WIDTH, HEIGHT);
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
        double[] places = QuantityArray.evenly(Kind.LENGTH, millimetres(0), bracket.length(), 851)
                .to(Units.MILLIMETRE);
        return Chart.of(
                        "Feed rate along the bracket",
                        "Feed rate over the distance along the path: constant on the medium sides, lower on the fine"
                                + " side, with slowdown zones at the corners.")
                .x("distance along the path [mm]")
                .y("feed rate [mm/min]")
                .withoutLegend()
                .line("feed rate", places, map(places, s -> Kind.SPEED.si(plan.feedAt(millimetres(s))) * 60e3))
                .svg(WIDTH, HEIGHT);
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
