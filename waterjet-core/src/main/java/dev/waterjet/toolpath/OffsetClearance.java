package dev.waterjet.toolpath;

import dev.waterjet.part.BoxTree;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.EdgeTree;

/** Asks whether the jet, at a point, keeps its offset from every edge of a contour, in metres. */
final class OffsetClearance {

    private static final double ROUNDING_M = 1e-9;

    private final Contour contour;
    private final int side;
    private final double[] offset;
    private final boolean isExtended;
    /** Offset that the vertex at the end of each edge requires. */
    private final double[] atEnd;

    private final double margin;
    private final BoxTree.Walk walk;
    private final EdgeCursor edge = new EdgeCursor();
    private final EdgeCursor next = new EdgeCursor();

    OffsetClearance(EdgeTree tree, int side, double[] offset, boolean isExtended) {
        this.contour = tree.contour();
        this.side = side;
        this.offset = offset;
        this.isExtended = isExtended;
        this.atEnd = new double[offset.length];
        double widest = 0;
        for (int i = 0; i < offset.length; i++) {
            contour.load(i, edge);
            widest = Math.max(widest, offset[i]);
            atEnd[i] = vertexOffset(i);
        }
        this.margin = isExtended ? OffsetDrawing.MAX_MITRE * widest : widest;
        this.walk = tree.walk();
    }

    private int next(int i) {
        return i + 1 == contour.size() ? 0 : i + 1;
    }

    private int before(int i) {
        return i == 0 ? contour.size() - 1 : i - 1;
    }

    private boolean isLast(int i) {
        return !contour.isClosed() && i + 1 == contour.size();
    }

    private double vertexOffset(int i) {
        if (isLast(i)) {
            return offset[i];
        }
        contour.load(next(i), next);
        boolean isRound = !isExtended && next.turnFrom(edge) * side < 0;
        double other = offset[next(i)];
        return isRound && !OffsetDrawing.isRamp(edge, next, offset[i], other, side)
                ? Math.max(offset[i], other)
                : Math.min(offset[i], other);
    }

    boolean isClear(double x, double y) {
        walk.start(x - margin, y - margin, x + margin, y + margin);
        for (int i = walk.next(); i >= 0; i = walk.next()) {
            contour.load(i, edge);
            if (isNearEdge(i, x, y) || (isExtended && !isLast(i) && isInCorner(i, x, y))) {
                return false;
            }
        }
        return true;
    }

    private boolean isNearEdge(int i, double x, double y) {
        if (edge.isArc()) {
            if (edge.spans(x, y)) {
                return Math.abs(Math.hypot(x - edge.centreX(), y - edge.centreY()) - edge.radius())
                        < offset[i] - ROUNDING_M;
            }
        } else {
            double dx = edge.endX() - edge.startX();
            double dy = edge.endY() - edge.startY();
            double length2 = dx * dx + dy * dy;
            double along = (x - edge.startX()) * dx + (y - edge.startY()) * dy;
            if (along > 0 && along < length2) {
                double off = Math.abs((y - edge.startY()) * dx - (x - edge.startX()) * dy) / Math.sqrt(length2);
                return off < offset[i] - ROUNDING_M;
            }
        }
        double atStart = i == 0 && !contour.isClosed() ? offset[0] : atEnd[before(i)];
        return Math.hypot(x - edge.startX(), y - edge.startY()) < atStart - ROUNDING_M
                || Math.hypot(x - edge.endX(), y - edge.endY()) < atEnd[i] - ROUNDING_M;
    }

    /** Whether a point lies inside the extended tangents at the corner after an edge. */
    private boolean isInCorner(int i, double x, double y) {
        contour.load(next(i), next);
        if (next.turnFrom(edge) * side >= 0) {
            return false;
        }
        double px = x - edge.endX();
        double py = y - edge.endY();
        double ax = edge.endDirectionX();
        double ay = edge.endDirectionY();
        double bx = next.startDirectionX();
        double by = next.startDirectionY();
        boolean isPast = px * ax + py * ay > 0 && px * bx + py * by < 0;
        if (!isPast) {
            return false;
        }
        double size = Math.hypot(ax - bx, ay - by);
        double wide = Math.max(offset[i], offset[next(i)]);
        return side * (py * ax - px * ay) < offset[i] - ROUNDING_M
                && side * (py * bx - px * by) < offset[next(i)] - ROUNDING_M
                && px * (ax - bx) + py * (ay - by) < size * (OffsetDrawing.MAX_MITRE * wide - ROUNDING_M);
    }
}
