package dev.waterjet.toolpath;

import dev.waterjet.part.BoxTree;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.EdgeTree;
import java.util.ArrayList;
import java.util.List;

/** Distances of leads from the contours of a part and its neighbours, in metres. Not for several threads. */
final class LeadChecks {

    private final List<EdgeTree> trees;
    private final List<BoxTree.Walk> walks = new ArrayList<>();
    private final EdgeCursor a = new EdgeCursor();
    private final EdgeCursor b = new EdgeCursor();
    private final ElementCrossing crossing = new ElementCrossing();

    LeadChecks(List<EdgeTree> trees) {
        this.trees = trees;
        trees.forEach(tree -> walks.add(tree.walk()));
    }

    /** Length of the ray from a point up to the first of some contours; none is longer than {@code far}. */
    double ray(int contours, double x, double y, double directionX, double directionY, double far) {
        double start = 10 * ElementCrossing.TOUCH_M;
        a.line(x + start * directionX, y + start * directionY, x + far * directionX, y + far * directionY);
        double least = far;
        for (int k = 0; k < contours; k++) {
            BoxTree.Walk walk = walks.get(k);
            walk.start(a.minimumX(), a.minimumY(), a.maximumX(), a.maximumY());
            for (int edge = walk.next(); edge >= 0; edge = walk.next()) {
                trees.get(k).contour().load(edge, b);
                crossing.find(a, b);
                for (int i = 0; i < crossing.count; i++) {
                    least = Math.min(least, Math.hypot(crossing.x[i] - x, crossing.y[i] - y));
                }
            }
        }
        return least;
    }

    /** Distance of a point from every contour, or a bound if that is less. */
    double clearance(double x, double y, double bound) {
        double least = bound;
        for (int k = 0; k < walks.size(); k++) {
            least = trees.get(k).distance(x, y, least, walks.get(k), b);
        }
        return least;
    }

    /** Distance of pieces of a lead from every contour, or a bound if that is less. */
    double clearance(List<LeadShape.Piece> pieces, double fromX, double fromY, LeadFrame frame, double bound) {
        double least = bound;
        double x = fromX;
        double y = fromY;
        for (LeadShape.Piece piece : pieces) {
            LeadShape.load(piece, x, y, frame, a);
            for (int k = 0; k < walks.size(); k++) {
                least = trees.get(k).distance(a, least, walks.get(k));
            }
            x = piece.x();
            y = piece.y();
        }
        return least;
    }
}
