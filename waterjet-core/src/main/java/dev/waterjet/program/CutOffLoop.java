package dev.waterjet.program;

import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import java.util.ArrayList;
import java.util.List;

/** Loop that a crossing of a contour with itself cuts off. */
final class CutOffLoop {

    /** Loops of more edges are taken as wide; the search for their width takes time in proportion to the square. */
    private static final int MAX_EDGES = 300;

    /** Largest distance between the sides of a thin loop, over its mean width. */
    private static final double WIDEST = 4;

    private final Contour contour;
    private final List<EdgeCursor> edges = new ArrayList<>();
    private double lengthM;
    private double area2;

    private CutOffLoop(Contour contour) {
        this.contour = contour;
    }

    /**
     * Whether one of the two loops into which a crossing divides a contour is no wider than a given width.
     *
     * @param first edge that crosses
     * @param second edge that it crosses, behind it
     */
    static boolean isThin(Contour contour, int first, int second, double x, double y, double widthM) {
        return new CutOffLoop(contour).of(first, second, x, y).isThin(widthM)
                || new CutOffLoop(contour)
                        .of(second, first + contour.size(), x, y)
                        .isThin(widthM);
    }

    /** The edges from a place on one to the same place on another behind it. */
    private CutOffLoop of(int first, int second, double x, double y) {
        if (second - first > MAX_EDGES) {
            return this;
        }
        for (int i = first; i <= second; i++) {
            EdgeCursor edge = new EdgeCursor();
            contour.load(i % contour.size(), edge);
            add(i == first ? part(edge, x, y, true) : i == second ? part(edge, x, y, false) : edge, x, y);
        }
        return this;
    }

    /** An edge from a place to its end, or from its start to the place. */
    private static EdgeCursor part(EdgeCursor edge, double x, double y, boolean isBehind) {
        EdgeCursor part = new EdgeCursor();
        double fromX = isBehind ? x : edge.startX();
        double fromY = isBehind ? y : edge.startY();
        double toX = isBehind ? edge.endX() : x;
        double toY = isBehind ? edge.endY() : y;
        if (edge.isArc()) {
            double turn = Math.signum(edge.sweep());
            double from = Math.atan2(fromY - edge.centreY(), fromX - edge.centreX());
            double to = Math.atan2(toY - edge.centreY(), toX - edge.centreX());
            double angle = turn * (to - from);
            angle -= 2 * Math.PI * Math.floor(angle / (2 * Math.PI));
            part.arc(fromX, fromY, toX, toY, edge.centreX(), edge.centreY(), turn * angle);
        } else {
            part.line(fromX, fromY, toX, toY);
        }
        return part;
    }

    private void add(EdgeCursor edge, double x, double y) {
        edges.add(edge);
        lengthM += edge.length();
        area2 += (edge.startX() - x) * (edge.endY() - y) - (edge.endX() - x) * (edge.startY() - y);
        if (edge.isArc()) {
            area2 += edge.radius() * edge.radius() * (edge.sweep() - Math.sin(edge.sweep()));
        }
    }

    /** Whether its mean width is within the given one, and no edge is far from all others. */
    private boolean isThin(double widthM) {
        if (edges.isEmpty() || Math.abs(area2) > widthM * lengthM) {
            return false;
        }
        for (EdgeCursor edge : edges) {
            if (isAlone(edge, WIDEST * widthM)) {
                return false;
            }
        }
        return true;
    }

    private boolean isAlone(EdgeCursor edge, double farM) {
        double x = edge.xAt(0.5);
        double y = edge.yAt(0.5);
        return edges.stream().noneMatch(other -> other != edge && other.distance(x, y) <= farM);
    }
}
