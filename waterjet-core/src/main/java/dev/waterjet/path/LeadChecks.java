package dev.waterjet.path;

import java.util.List;

/** Geometry behind the checks of a lead, in metres. */
final class LeadChecks {

    private final List<EdgeTree> trees;
    private final Point entry;
    private final EdgeShape a = new EdgeShape();
    private final EdgeShape b = new EdgeShape();
    private final double[] points = new double[4];

    LeadChecks(List<EdgeTree> trees, Point entry) {
        this.trees = trees;
        this.entry = entry;
    }

    /** Distance along a contour from a place to the nearest corner, either way; without limit if there is none. */
    static double cornerDistance(Contour contour, double distanceM) {
        EdgeShape before = new EdgeShape();
        EdgeShape after = new EdgeShape();
        int n = contour.size();
        double total = ContourKernel.length(contour);
        double least = Double.POSITIVE_INFINITY;
        double atM = 0;
        contour.load(n - 1, before);
        for (int i = 0; i < n; i++) {
            contour.load(i, after);
            if (Math.abs(ContourKernel.turn(before, after)) > ContourKernel.CORNER_RAD) {
                double apart = Math.abs(atM - distanceM);
                least = Math.min(least, Math.min(apart, total - apart));
            }
            atM += after.length();
            contour.load(i, before);
        }
        return least;
    }

    /** Length of the ray from the entry into the part, up to the next contour of the part. */
    double webBehind(int contoursOfPart, double inX, double inY) {
        double far = 0;
        for (int k = 0; k < contoursOfPart; k++) {
            Box box = trees.get(k).contour().box();
            far = Math.max(
                    far,
                    Math.hypot(
                            box.highest().xSi() - box.lowest().xSi(),
                            box.highest().ySi() - box.lowest().ySi()));
        }
        double fromX = entry.xSi() + EdgeKernel.ROUNDING_M * inX;
        double fromY = entry.ySi() + EdgeKernel.ROUNDING_M * inY;
        a.line(fromX, fromY, entry.xSi() + far * inX, entry.ySi() + far * inY);
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < contoursOfPart; k++) {
            EdgeTree.Walk walk = trees.get(k).walk();
            walk.start(a.lowestX(), a.lowestY(), a.highestX(), a.highestY());
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
    boolean isCrossing(Contour path) {
        return isEdgeCrossing(path, 0) || isEdgeCrossing(path, 1) || isEdgeCrossing(path, path.size() - 1);
    }

    private boolean isEdgeCrossing(Contour path, int index) {
        path.load(index, a);
        for (EdgeTree tree : trees) {
            EdgeTree.Walk walk = tree.walk();
            walk.start(a.lowestX(), a.lowestY(), a.highestX(), a.highestY());
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
