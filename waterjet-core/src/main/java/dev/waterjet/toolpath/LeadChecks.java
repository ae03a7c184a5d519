package dev.waterjet.toolpath;

import dev.waterjet.part.BoxTree;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.EdgeTree;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Distances of leads from the contours of a part and its neighbours, in metres. Not for several threads. */
final class LeadChecks {

    private final List<EdgeTree> trees;
    /** Walk over the boxes of whole contours: of many, few are near. */
    private final BoxTree.Walk near;

    private final @Nullable BoxTree.Walk[] walks;
    private final EdgeCursor a = new EdgeCursor();
    private final EdgeCursor b = new EdgeCursor();
    private final ElementCrossing crossing = new ElementCrossing();

    /**
     * Checks against contours.
     *
     * @param trees edges of each contour
     * @param boxes boxes of the contours
     */
    LeadChecks(List<EdgeTree> trees, BoxTree boxes) {
        this.trees = trees;
        this.near = boxes.walk();
        this.walks = new BoxTree.Walk[trees.size()];
    }

    private BoxTree.Walk walk(int contour) {
        BoxTree.Walk walk = walks[contour];
        if (walk == null) {
            walk = trees.get(contour).walk();
            walks[contour] = walk;
        }
        return walk;
    }

    /** Length of the ray from a point up to the first of some contours; none is longer than {@code far}. */
    double ray(int contours, double x, double y, double directionX, double directionY, double far) {
        double start = 10 * ElementCrossing.TOUCH_M;
        a.line(x + start * directionX, y + start * directionY, x + far * directionX, y + far * directionY);
        double least = far;
        near.start(a.minimumX(), a.minimumY(), a.maximumX(), a.maximumY());
        for (int k = near.next(); k >= 0; k = near.next()) {
            if (k >= contours) {
                continue;
            }
            BoxTree.Walk walk = walk(k);
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
        near.start(x - least, y - least, x + least, y + least);
        for (int k = near.next(); k >= 0; k = near.next()) {
            least = trees.get(k).distance(x, y, least, walk(k), b);
            near.narrow(x - least, y - least, x + least, y + least);
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
            double x0 = a.minimumX();
            double y0 = a.minimumY();
            double x1 = a.maximumX();
            double y1 = a.maximumY();
            near.start(x0 - least, y0 - least, x1 + least, y1 + least);
            for (int k = near.next(); k >= 0; k = near.next()) {
                least = trees.get(k).distance(a, least, walk(k));
                near.narrow(x0 - least, y0 - least, x1 + least, y1 + least);
            }
            x = piece.x();
            y = piece.y();
        }
        return least;
    }
}
