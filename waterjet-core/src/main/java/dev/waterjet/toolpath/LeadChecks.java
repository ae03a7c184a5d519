package dev.waterjet.toolpath;

import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.EdgeKernel;
import dev.waterjet.part.EdgeTree;
import dev.waterjet.part.Point;
import java.util.List;

/** Geometry behind the checks of a lead, in metres. */
final class LeadChecks {

    private final List<EdgeTree> trees;
    private final Point entry;
    private final EdgeCursor a = new EdgeCursor();
    private final EdgeCursor b = new EdgeCursor();
    private final double[] points = new double[4];

    LeadChecks(List<EdgeTree> trees, Point entry) {
        this.trees = trees;
        this.entry = entry;
    }

    /** Length of the ray from the entry into the part, up to the next contour of the part; none is longer than {@code far}. */
    double webBehind(int contoursOfPart, double far, double inX, double inY) {
        double fromX = entry.xSi() + EdgeKernel.ROUNDING_M * inX;
        double fromY = entry.ySi() + EdgeKernel.ROUNDING_M * inY;
        a.line(fromX, fromY, entry.xSi() + far * inX, entry.ySi() + far * inY);
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < contoursOfPart; k++) {
            EdgeTree.Walk walk = trees.get(k).walk();
            walk.start(a.minimumX(), a.minimumY(), a.maximumX(), a.maximumY());
            for (int edge = walk.next(); edge >= 0; edge = walk.next()) {
                trees.get(k).contour().load(edge, b);
                int count = EdgeKernel.crossings(a, b, points);
                for (int i = 0; i < count; i++) {
                    least = Math.min(least, Math.hypot(points[2 * i] - entry.xSi(), points[2 * i + 1] - entry.ySi()));
                }
            }
        }
        return least;
    }

    double clearance(Point point) {
        double least = Double.POSITIVE_INFINITY;
        for (EdgeTree tree : trees) {
            tree.contour().load(0, a);
            double bound = Math.min(least, EdgeKernel.distance(a, point.xSi(), point.ySi()));
            least = tree.distance(point.xSi(), point.ySi(), bound, tree.walk(), b);
        }
        return least;
    }

    /** Whether the leads, the first two edges of the path and the last, cross a contour elsewhere than at the entry. */
    boolean isCrossing(Contour leads) {
        for (int i = 0; i < leads.size(); i++) {
            if (isEdgeCrossing(leads, i)) {
                return true;
            }
        }
        return false;
    }

    private boolean isEdgeCrossing(Contour path, int index) {
        path.load(index, a);
        for (EdgeTree tree : trees) {
            EdgeTree.Walk walk = tree.walk();
            walk.start(a.minimumX(), a.minimumY(), a.maximumX(), a.maximumY());
            for (int edge = walk.next(); edge >= 0; edge = walk.next()) {
                tree.contour().load(edge, b);
                int count = EdgeKernel.crossings(a, b, points);
                for (int i = 0; i < count; i++) {
                    double off = Math.hypot(points[2 * i] - entry.xSi(), points[2 * i + 1] - entry.ySi());
                    if (off > 10 * EdgeKernel.ROUNDING_M) {
                        return true;
                    }
                }
            }
        }
        return false;
    }
}
