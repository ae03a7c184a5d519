package dev.waterjet.toolpath;

import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * Plane geometry by school formulas, slowly, for checks of the paths: distances from every edge in turn, crossings counted
 * along a ray through chords. Nothing of the library but where an edge starts and ends, its centre and its sweep. In metres.
 */
final class Plane {

    private static final int CHORDS = 400;

    private Plane() {}

    /** Places along a contour: x, y of {@code perEdge} evenly spaced points of each edge, and the end. */
    static List<double[]> samples(Contour contour, int perEdge) {
        List<double[]> points = new ArrayList<>();
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            for (int k = 0; k <= perEdge; k++) {
                points.add(at(edge, (double) k / perEdge));
            }
        }
        return points;
    }

    /** Point at a share of an edge. */
    static double[] at(EdgeCursor edge, double share) {
        if (edge.sweep() == 0) {
            return new double[] {
                edge.startX() + share * (edge.endX() - edge.startX()),
                edge.startY() + share * (edge.endY() - edge.startY())
            };
        }
        double radius = Math.hypot(edge.startX() - edge.centreX(), edge.startY() - edge.centreY());
        double angle =
                Math.atan2(edge.startY() - edge.centreY(), edge.startX() - edge.centreX()) + share * edge.sweep();
        return new double[] {edge.centreX() + radius * Math.cos(angle), edge.centreY() + radius * Math.sin(angle)};
    }

    /** Distance of a point from a line or arc. */
    static double distance(EdgeCursor edge, double x, double y) {
        double ends = Math.min(
                Math.hypot(x - edge.startX(), y - edge.startY()), Math.hypot(x - edge.endX(), y - edge.endY()));
        return Math.min(ends, beside(edge, x, y));
    }

    /** Distance of a point from an edge along its normal; infinite where no normal of the edge passes through it. */
    static double beside(EdgeCursor edge, double x, double y) {
        if (edge.sweep() == 0) {
            double dx = edge.endX() - edge.startX();
            double dy = edge.endY() - edge.startY();
            double share = ((x - edge.startX()) * dx + (y - edge.startY()) * dy) / (dx * dx + dy * dy);
            return share < 0 || share > 1
                    ? Double.POSITIVE_INFINITY
                    : Math.abs((x - edge.startX()) * dy - (y - edge.startY()) * dx) / Math.hypot(dx, dy);
        }
        double radius = Math.hypot(edge.startX() - edge.centreX(), edge.startY() - edge.centreY());
        double start = Math.atan2(edge.startY() - edge.centreY(), edge.startX() - edge.centreX());
        double angle = Math.atan2(y - edge.centreY(), x - edge.centreX());
        double turned = Math.signum(edge.sweep()) * (angle - start);
        while (turned < 0) {
            turned += 2 * Math.PI;
        }
        return turned % (2 * Math.PI) <= Math.abs(edge.sweep())
                ? Math.abs(Math.hypot(x - edge.centreX(), y - edge.centreY()) - radius)
                : Double.POSITIVE_INFINITY;
    }

    /** Above zero for a point on the left of an edge. */
    static double leftOf(EdgeCursor edge, double x, double y) {
        if (edge.sweep() == 0) {
            return (edge.endX() - edge.startX()) * (y - edge.startY())
                    - (edge.endY() - edge.startY()) * (x - edge.startX());
        }
        double radius = Math.hypot(edge.startX() - edge.centreX(), edge.startY() - edge.centreY());
        return edge.sweep() * (radius - Math.hypot(x - edge.centreX(), y - edge.centreY()));
    }

    /** Distance of a point from a contour. */
    static double distance(Contour contour, double x, double y) {
        EdgeCursor edge = new EdgeCursor();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            least = Math.min(least, distance(edge, x, y));
        }
        return least;
    }

    /** Chords of a contour, closed or not: x and y of every end. */
    static double[][] chords(Contour contour) {
        List<double[]> points = new ArrayList<>();
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            int parts = edge.sweep() == 0 ? 1 : CHORDS;
            for (int k = 0; k < parts; k++) {
                points.add(at(edge, (double) k / parts));
            }
        }
        return points.toArray(new double[0][]);
    }

    /** Whether a ray from a point crosses the chords an odd number of times. */
    static boolean isInside(double[][] chords, double x, double y) {
        boolean isInside = false;
        for (int i = 0, j = chords.length - 1; i < chords.length; j = i++) {
            if (chords[i][1] > y != chords[j][1] > y) {
                double at = chords[i][0]
                        + (y - chords[i][1]) / (chords[j][1] - chords[i][1]) * (chords[j][0] - chords[i][0]);
                isInside ^= at > x;
            }
        }
        return isInside;
    }

    /** A ring of lines, and arcs if asked, about the origin; empty if it crosses itself. */
    static Optional<Contour> ring(Random random, int edges, double sizeM, double arcs) {
        double[] x = new double[edges];
        double[] y = new double[edges];
        for (int i = 0; i < edges; i++) {
            double angle = 2 * Math.PI * (i + 0.8 * random.nextDouble()) / edges;
            double radius = sizeM * (0.25 + 0.75 * random.nextDouble());
            x[i] = radius * Math.cos(angle);
            y[i] = radius * Math.sin(angle);
        }
        try {
            ContourBuilder builder = Contour.fromSi(x[0], y[0]);
            for (int i = 1; i <= edges; i++) {
                edge(builder, random, arcs, x[i - 1], y[i - 1], x[i % edges], y[i % edges]);
            }
            return Optional.of(builder.close().requireSimple());
        } catch (GeometryException crossing) {
            return Optional.empty();
        }
    }

    /** A bar along x whose width changes from station to station: the jet may not pass every one. */
    static Contour bar(Random random, int stations, double pitchM, double widestM) {
        double[][] corners = new double[2 * stations][];
        for (int i = 0; i < stations; i++) {
            double x = pitchM * (i - stations / 2.0 + 0.6 * random.nextDouble());
            double y = widestM / 2 * (0.05 + 0.95 * random.nextDouble());
            corners[i] = new double[] {x, -y};
            corners[2 * stations - 1 - i] = new double[] {x + 0.3 * pitchM * random.nextDouble(), y};
        }
        return polygon(corners);
    }

    static Contour polygon(double[][] corners) {
        ContourBuilder builder = Contour.fromSi(corners[0][0], corners[0][1]);
        for (int i = 1; i < corners.length; i++) {
            builder.lineToSi(corners[i][0], corners[i][1]);
        }
        return builder.close();
    }

    private static void edge(
            ContourBuilder builder, Random random, double arcs, double x0, double y0, double x1, double y1) {
        double bulge = 0.5 * (random.nextDouble() - 0.5);
        if (random.nextDouble() < arcs) {
            builder.arcThrough(
                    Point.ofSi((x0 + x1) / 2 - bulge * (y1 - y0), (y0 + y1) / 2 + bulge * (x1 - x0)),
                    Point.ofSi(x1, y1));
        } else {
            builder.lineToSi(x1, y1);
        }
    }

    /** The contour mirrored at the y axis, its edges in the same order. */
    static Contour mirrored(Contour contour) {
        EdgeCursor edge = new EdgeCursor();
        EdgeCursor mirrored = new EdgeCursor();
        ContourBuilder builder = Contour.fromSi(-contour.xSi(0), contour.ySi(0));
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            if (edge.sweep() == 0) {
                mirrored.line(-edge.startX(), edge.startY(), -edge.endX(), edge.endY());
            } else {
                mirrored.arc(
                        -edge.startX(),
                        edge.startY(),
                        -edge.endX(),
                        edge.endY(),
                        -edge.centreX(),
                        edge.centreY(),
                        -edge.sweep());
            }
            builder.requirement(contour.requirement(i)).edgeTo(mirrored);
        }
        return contour.isClosed() ? builder.close() : builder.open();
    }
}
