package dev.waterjet.docs;

import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.examples.chart.Chart;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Edge;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.KerfOffset;
import dev.waterjet.toolpath.LeadPlacer;
import java.util.List;

/** Figures about tool paths. */
final class ToolPathFigures {

    private static final int SAMPLES_OF_AN_ARC = 24;

    private ToolPathFigures() {}

    static List<Figure> all() {
        return List.of(
                new Figure("toolpath-leads", ToolPathFigures::leads),
                new Figure("toolpath-offset", ToolPathFigures::offset));
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
                                + " of the hole inside it; both leads join the contour on an arc, and both pierces are"
                                + " marked in the scrap.")
                .x("x [mm]")
                .y("y [mm]")
                .xFrom(-10, 130)
                .yFrom(-15, 95);
        Contour outline = placer().suggest(1).path();
        Contour hole = placer().suggest(0).path();
        draw(chart, "outline with leads", outline);
        draw(chart, "hole with leads", hole);
        Point first = hole.edge(0).start();
        Point second = outline.edge(0).start();
        chart.points("pierces, in the scrap", new double[] {1e3 * first.xSi(), 1e3 * second.xSi()}, new double[] {
            1e3 * first.ySi(), 1e3 * second.ySi()
        });
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

    /** A narrow place bridged by the longest path: a contour with a neck and the offset of half the kerf. */
    private static String offset() {
        Contour window = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(30, 0))
                .lineTo(Point.millimetres(30, 9.5))
                .lineTo(Point.millimetres(42, 9.5))
                .arcTo(Point.millimetres(42, 20.5), Point.millimetres(42, 15), Side.LEFT)
                .lineTo(Point.millimetres(30, 20.5))
                .lineTo(Point.millimetres(30, 30))
                .lineTo(Point.millimetres(0, 30))
                .close();
        Contour path =
                KerfOffset.of(millimetres(2)).apply(window, Side.LEFT).path().contour();
        Chart chart = Chart.of(
                        "Path of the jet axis in a window",
                        "A window of lines and an arc and, two millimetres inside it, the path of the jet axis. The"
                                + " path is rounded about the two corners of the part and sharp in the four corners of the"
                                + " window.")
                .x("x [mm]")
                .y("y [mm]")
                .xFrom(-3, 51)
                .yFrom(-3, 33);
        draw(chart, "edge of the part", window);
        draw(chart, "jet axis", path);
        return chart.svg(720, 520);
    }
}
