package dev.waterjet.docs;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.examples.chart.Chart;
import dev.waterjet.examples.predict.DeviationDrawing;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.motion.TiltProfile;
import dev.waterjet.motion.TiltingHead;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.simulate.CutSimulator;
import dev.waterjet.simulate.DeviationMap;
import dev.waterjet.simulate.FeedProfile;
import dev.waterjet.toolpath.KerfOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/** Figures of predicted cuts: mild steel of 25 mm, cut quality medium. */
final class PredictFigures {

    private static final CutConditions CUT = CutConditions.of(
            CuttingHead.of(Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(102)))
                    .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450)),
            Workpiece.of(Materials.standard().get("mild-steel"), millimetres(25)),
            MachinabilityFeed.published());

    private static final CutSimulator SIMULATOR = CutSimulator.of(CUT, KerfModel.standard(), LagModel.standard());
    private static final double FEED = CUT.feed(CutQuality.MEDIUM).si();
    private static final double OFFSET =
            KerfModel.standard().kerf(CUT, Kind.SPEED.of(FEED)).offset().si();
    private static final double FULL_COLOUR_M = 1e-3;

    private PredictFigures() {}

    static List<Figure> all() {
        return List.of(
                new Figure("predict-unrolled", PredictFigures::unrolled),
                new Figure("predict-bottom-edge", PredictFigures::bottomEdge),
                new Figure("predict-corner-feeds", PredictFigures::cornerFeeds),
                new Figure("predict-arc-walls", PredictFigures::arcWalls),
                new Figure("predict-tilt", PredictFigures::tilt));
    }

    /** Clip of a mirror cell: five outside corners, a re-entrant one, a rounding. */
    private static Contour clip() {
        return Contour.from(Point.millimetres(15, 0))
                .lineTo(Point.millimetres(40, 0))
                .lineTo(Point.millimetres(40, 20))
                .lineTo(Point.millimetres(20, 20))
                .lineTo(Point.millimetres(20, 40))
                .lineTo(Point.millimetres(5, 40))
                .arcTo(Point.millimetres(0, 35), Point.millimetres(5, 35), Side.LEFT)
                .lineTo(Point.millimetres(0, 0))
                .close();
    }

    private static Contour path(Contour part, Side jet) {
        return KerfOffset.of(Kind.LENGTH.of(OFFSET))
                .withCorners(KerfOffset.CornerStyle.EXTENDED)
                .apply(part, jet)
                .path()
                .withOvercut(millimetres(4))
                .contour();
    }

    private static DeviationMap constant() {
        return SIMULATOR
                .predict(
                        FeedProfile.constant(path(clip(), Side.RIGHT), Kind.SPEED.of(FEED))
                                .afterSteadyFeed(),
                        clip(),
                        Side.LEFT)
                .map();
    }

    private static DeviationMap planned() {
        FeedPlanner planner = FeedPlanner.of(MachineLimits.of(metresPerSecond(0.2), metresPerSquareSecond(0.5)), CUT);
        FeedProfile profile = FeedProfile.of(planner.plan(path(clip(), Side.RIGHT), Side.LEFT));
        return SIMULATOR.predict(profile, clip(), Side.LEFT).map();
    }

    private static String unrolled() {
        return DeviationDrawing.of(
                        "Predicted deviations, unrolled",
                        "Two panels, contour to the right, depth downwards: at a constant feed rate the corners are"
                                + " strongly coloured or not separated towards the bottom; with the planned feed rate the"
                                + " colours are pale.")
                .unrolled("constant feed rate", constant(), FULL_COLOUR_M)
                .unrolled("planned feed rate", planned(), FULL_COLOUR_M)
                .svg();
    }

    private static String bottomEdge() {
        return DeviationDrawing.of(
                        "Bottom edge over the contour",
                        "The bottom edge of an L-shaped part with deviations five times enlarged: at a constant feed"
                                + " rate a deep notch at the re-entrant corner and gaps at the outside corners; with the"
                                + " planned feed rate a closed line near the contour.")
                .bottomEdge("constant feed rate", constant(), 5)
                .bottomEdge("planned feed rate", planned(), 5)
                .svg();
    }

    private static String cornerFeeds() {
        Contour part = Contour.from(Point.millimetres(-15, 0))
                .lineTo(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(0, -15))
                .open();
        // the part lies to the left: the contour turns right, so the part is re-entrant
        Contour path = KerfOffset.of(Kind.LENGTH.of(OFFSET))
                .withCorners(KerfOffset.CornerStyle.EXTENDED)
                .apply(part, Side.RIGHT)
                .path()
                .contour();
        Chart chart = Chart.of(
                        "Re-entrant corner at four feed rates",
                        "Deviation of the bottom edge along the contour around a re-entrant right angle: at the full"
                                + " feed rate a notch of nearly 2 mm before the corner, shallower at a half, a quarter and"
                                + " a tenth of it.")
                .x("distance from the corner [mm]")
                .y("deviation of the bottom edge [mm]");
        for (double ratio : new double[] {1, 0.5, 0.25, 0.1}) {
            DeviationMap map = SIMULATOR
                    .withDepths(2)
                    .predict(
                            FeedProfile.constant(path, Kind.SPEED.of(FEED * ratio))
                                    .afterSteadyFeed(),
                            part,
                            Side.LEFT)
                    .map();
            List<double[]> line = new ArrayList<>();
            for (int i = 0; i < map.size(); i++) {
                double at = map.distanceSi(i) * 1e3 - 15;
                if (Math.abs(at) < 5 && at != 0 && map.isSeparated(i, 1)) {
                    line.add(new double[] {at, map.addedSi(i, 1) * 1e3});
                }
            }
            line.sort((a, b) -> Double.compare(a[0], b[0]));
            chart.line(
                    ratio == 1 ? "full feed rate" : "feed rate x " + ratio,
                    line.stream().mapToDouble(at -> at[0]).toArray(),
                    line.stream().mapToDouble(at -> at[1]).toArray());
        }
        return chart.svg(760, 420);
    }

    private static String tilt() {
        TiltingHead head = TiltingHead.of(
                degrees(8),
                Kind.ANGULAR_SPEED.of(Math.toRadians(20)),
                Kind.ANGULAR_ACCELERATION.of(Math.toRadians(60)));
        TiltProfile tilt = FeedPlanner.of(MachineLimits.of(metresPerSecond(0.2), metresPerSquareSecond(0.5)), CUT)
                .withTiltingHead(head)
                .plan(path(clip(), Side.RIGHT), Side.LEFT)
                .tilt()
                .orElseThrow();
        double[] places = tilt.places(degrees(0.02)).toSi();
        double[] mm = Arrays.stream(places).map(place -> place * 1e3).toArray();
        return Chart.of(
                        "Tilt along a bracket",
                        "Angles of a gimbal along the tool path of the clip: constant on each edge at the full feed"
                                + " rate, smaller in slowdown zones, a ramp on the rounding, and a steep turn at each"
                                + " corner; the inclination is 4 degrees and falls in the zones and while the head turns.")
                .x("distance along the tool path [mm]")
                .y("angle [°]")
                .line("A, about x", mm, angles(places, place -> tilt.at(place).gimbalA()))
                .line("B, about y", mm, angles(places, place -> tilt.at(place).gimbalB()))
                .line("inclination", mm, angles(places, place -> tilt.at(place).inclination()))
                .svg(760, 420);
    }

    private static double[] angles(double[] places, Function<Quantity<Length>, Quantity<Angle>> angle) {
        return Arrays.stream(places)
                .map(place -> Math.toDegrees(Kind.ANGLE.si(angle.apply(Kind.LENGTH.of(place)))))
                .toArray();
    }

    private static String arcWalls() {
        double[] radii = {3, 4, 5, 7, 10, 15, 20, 30, 50, 100};
        Chart chart = Chart.of(
                        "Walls of arcs over their radius",
                        "Deviation of the bottom edge on arcs: in the tangent geometry material is left on a part"
                                + " inside of the arc and a part outside of it is gouged, by the same amount, falling with"
                                + " the radius; in the tractrix geometry the signs change.")
                .x("radius of the tool path [mm]")
                .y("deviation of the bottom edge [mm]")
                .logX();
        for (LagGeometry geometry : new LagGeometry[] {LagGeometry.TANGENT, LagGeometry.TRACTRIX}) {
            String name = geometry == LagGeometry.TANGENT ? "tangent" : "tractrix";
            chart.line(name + ", part inside", radii, walls(geometry, radii, Side.LEFT));
            chart.line(name + ", part outside", radii, walls(geometry, radii, Side.RIGHT));
        }
        return chart.svg(760, 420);
    }

    private static double[] walls(LagGeometry geometry, double[] radiiMm, Side part) {
        return Arrays.stream(radiiMm)
                .map(radius -> {
                    double sweep = Math.min(4, 60 / radius);
                    double r = radius * 1e-3;
                    Contour edge = arc(r + (part == Side.LEFT ? -OFFSET : OFFSET), sweep);
                    DeviationMap map = SIMULATOR
                            .withGeometry(geometry)
                            .withDepths(2)
                            .withPoints(9)
                            .predict(
                                    FeedProfile.constant(arc(r, sweep), Kind.SPEED.of(FEED))
                                            .afterSteadyFeed(),
                                    edge,
                                    part)
                            .map();
                    return map.addedSi(map.size() / 2, 1) * 1e3;
                })
                .toArray();
    }

    private static Contour arc(double radius, double sweep) {
        return Contour.fromSi(radius, 0)
                .arcToSi(radius * Math.cos(sweep), radius * Math.sin(sweep), 0, 0, Side.LEFT)
                .open();
    }
}
