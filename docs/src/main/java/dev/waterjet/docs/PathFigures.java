package dev.waterjet.docs;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.examples.chart.Chart;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
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
import dev.waterjet.part.Edge;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.LeadPlacer;
import java.util.List;
import javax.measure.quantity.Length;

/** Figures about paths. */
final class PathFigures {

    private static final int SAMPLES_OF_AN_ARC = 24;

    private PathFigures() {}

    static List<Figure> all() {
        return List.of(
                new Figure("path-leads", PathFigures::leads), new Figure("path-feed", PathFigures::feedAlongThePath));
    }

    private static Part bracket() {
        EdgeRequirement seat = EdgeRequirement.of(CutQuality.FINE).withLagTolerance(millimetres(0.05));
        Contour outline = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(120, 0))
                .lineTo(Point.millimetres(120, 30))
                .requirement(seat)
                .lineTo(Point.millimetres(50, 30))
                .arcTo(Point.millimetres(40, 40), Point.millimetres(50, 40), Side.RIGHT)
                .lineTo(Point.millimetres(40, 90))
                .requirement(EdgeRequirement.defaults())
                .lineTo(Point.millimetres(0, 90))
                .close();
        return Part.of(outline, Contour.circle(Point.millimetres(20, 70), millimetres(8), seat));
    }

    private static LeadPlacer placer() {
        return LeadPlacer.of(bracket(), CuttingRules.of(millimetres(1.1), millimetres(12)));
    }

    private static String leads() {
        Chart chart = Chart.of(
                        "Leads of a bracket",
                        "A bracket with a hole. The lead-in of the outline is in the middle of its longest edge, that"
                                + " of the hole inside it; both leads join the contour on an arc.")
                .x("x [mm]")
                .y("y [mm]")
                .xFrom(-10, 130)
                .yFrom(-15, 95);
        draw(chart, "outline with leads", placer().suggest(1).path());
        draw(chart, "hole with leads", placer().suggest(0).path());
        return chart.svg(720, 600);
    }

    private static void draw(Chart chart, String name, Contour path) {
        double[] x = new double[path.size() * SAMPLES_OF_AN_ARC + 1];
        double[] y = new double[x.length];
        int n = 0;
        for (int i = 0; i < path.size(); i++) {
            Edge edge = path.edge(i);
            for (int k = 0; k < SAMPLES_OF_AN_ARC; k++) {
                double share = k / (double) SAMPLES_OF_AN_ARC;
                Point centre = edge.centre().orElse(edge.start());
                double angle = share * Kind.ANGLE.si(edge.sweep());
                double fromX = edge.start().xSi() - centre.xSi();
                double fromY = edge.start().ySi() - centre.ySi();
                double straight = edge.isArc() ? 0 : share;
                x[n] = 1e3
                        * (centre.xSi()
                                + fromX * Math.cos(angle)
                                - fromY * Math.sin(angle)
                                + straight * (edge.end().xSi() - edge.start().xSi()));
                y[n] = 1e3
                        * (centre.ySi()
                                + fromX * Math.sin(angle)
                                + fromY * Math.cos(angle)
                                + straight * (edge.end().ySi() - edge.start().ySi()));
                n++;
            }
        }
        x[n] = 1e3 * path.end().xSi();
        y[n] = 1e3 * path.end().ySi();
        chart.line(name, x, y);
    }

    private static String feedAlongThePath() {
        AbrasiveJet jet = CuttingHead.of(
                        Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(102)))
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450));
        Workpiece plate = Workpiece.of(Materials.standard().get("aluminium-6061-t6"), millimetres(12));
        FeedModel model = MachinabilityFeed.published();
        FeedPlanner planner = FeedPlanner.of(
                MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(0.5))
                        .withJerk(Kind.JERK.of(5)),
                CutConditions.of(jet, plate, model));
        Contour path = placer().suggest(1).path();
        QuantityArray<Length> distances = QuantityArray.evenly(Kind.LENGTH, millimetres(0), path.length(), 1200);
        return Chart.of(
                        "Feed rate along a bracket",
                        "Feed rate over distance: constant for each cut quality, with a slowdown zone at each corner"
                            + " that is as wide as two lags; without recovery of the front the notches are needles.")
                .x("distance along the path [mm]")
                .y("feed rate [mm/min]")
                .line("without recovery", distances.to(Units.MILLIMETRE), feeds(planner.withReach(0), path, distances))
                .line("as planned", distances.to(Units.MILLIMETRE), feeds(planner, path, distances))
                .svg(720, 420);
    }

    private static double[] feeds(FeedPlanner planner, Contour path, QuantityArray<Length> distances) {
        FeedPlan plan = planner.plan(path, bracket().partSide(1));
        return distances
                .map(Kind.SPEED, distance -> Kind.SPEED.si(plan.feedAt(Kind.LENGTH.of(distance))))
                .to(Units.MILLIMETRE_PER_MINUTE);
    }
}
