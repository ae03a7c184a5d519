package dev.waterjet.toolpath;

import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;

/**
 * Draws the elements of an offset: each edge shifted, a corner at each vertex where the path turns away from the jet, a ramp
 * where the images of two edges of different offsets do not meet. Nothing is removed here.
 */
final class OffsetDrawing {

    /** Elements shorter than this are left out. */
    static final double SHORT_M = 1e-8;

    /** Reach of an extended corner beyond the offset, that of a right angle. */
    static final double MAX_MITRE = Math.sqrt(2);

    private final Contour contour;
    private final int side;
    private final double[] offset;
    private final boolean isExtended;
    private final OffsetElements elements = new OffsetElements();
    private final EdgeCursor edge = new EdgeCursor();
    private final EdgeCursor next = new EdgeCursor();
    private final EdgeCursor drawn = new EdgeCursor();

    /** Shares of each edge at which its image starts and ends; a ramp takes the rest. */
    private final double[] start;

    private final double[] end;

    /**
     * Starts a drawing.
     *
     * @param contour part contour
     * @param side 1 where the jet runs on the left of the contour, -1 on the right
     * @param offset offset of each edge
     * @param isExtended whether corners are extended tangents, not arcs
     */
    OffsetDrawing(Contour contour, int side, double[] offset, boolean isExtended) {
        this.contour = contour;
        this.side = side;
        this.offset = offset;
        this.isExtended = isExtended;
        this.start = new double[offset.length];
        this.end = new double[offset.length];
    }

    OffsetElements draw() {
        int n = contour.size();
        for (int i = 0; i < n; i++) {
            end[i] = 1;
        }
        for (int i = 0; i < n; i++) {
            planRamp(i);
        }
        for (int i = 0; i < n; i++) {
            contour.load(i, edge);
            drawStartRamp(i);
            drawImage(i);
            drawEndRamp(i);
            if (hasNext(i)) {
                contour.load(next(i), next);
                drawCorner(i);
            }
        }
        return elements;
    }

    private boolean hasNext(int i) {
        return contour.isClosed() || i + 1 < contour.size();
    }

    private int next(int i) {
        return i + 1 == contour.size() ? 0 : i + 1;
    }

    private int before(int i) {
        return i == 0 ? contour.size() - 1 : i - 1;
    }

    /**
     * Whether a ramp joins two edges of different offsets: their images then do not meet. At an inner corner the wider one ends
     * before it reaches the narrower; at an outer one, where the offset lines would meet beyond the end of the ramp, there is no
     * corner to speak of.
     */
    static boolean isRamp(EdgeCursor edge, EdgeCursor next, double offset, double nextOffset, int side) {
        double wide = Math.max(offset, nextOffset);
        double narrow = Math.min(offset, nextOffset);
        double turn = next.turnFrom(edge) * side;
        return wide - narrow >= 1e-12
                && wide * Math.cos(turn) > narrow
                && (turn >= 0 || Math.tan(-turn) < KerfOffset.RAMP_SLOPE);
    }

    private void planRamp(int i) {
        if (!hasNext(i)) {
            return;
        }
        contour.load(i, edge);
        contour.load(next(i), next);
        int other = next(i);
        if (!isRamp(edge, next, offset[i], offset[other], side)) {
            return;
        }
        double length = rampEnd(
                next.turnFrom(edge) * side, Math.max(offset[i], offset[other]), Math.min(offset[i], offset[other]));
        if (offset[other] < offset[i]) {
            start[other] = Math.min(0.5, length / next.length());
        } else {
            end[i] = 1 - Math.min(0.5, length / edge.length());
        }
    }

    /** Distance from a vertex, along the edge of the narrow offset, of the end of a ramp: at a corner the offset lines meet there. */
    private static double rampEnd(double turn, double wide, double narrow) {
        double ramp = wide * Math.max(0, Math.sin(turn)) + (wide * Math.cos(turn) - narrow) / KerfOffset.RAMP_SLOPE;
        return turn > 0 ? Math.min(ramp, (wide - narrow * Math.cos(turn)) / Math.sin(turn)) : ramp;
    }

    private void drawStartRamp(int i) {
        if (start[i] > 0 && isDrawn(i)) {
            double wide = offset[before(i)];
            contour.load(before(i), next);
            double x = edge.startX() + wide * normalX(next, 1);
            double y = edge.startY() + wide * normalY(next, 1);
            drawRamp(i, x, y, start[i], true);
        }
    }

    private void drawEndRamp(int i) {
        if (end[i] < 1 && isDrawn(i)) {
            double wide = offset[next(i)];
            contour.load(next(i), next);
            double x = edge.endX() + wide * normalX(next, 0);
            double y = edge.endY() + wide * normalY(next, 0);
            drawRamp(i, x, y, end[i], false);
        }
    }

    /** From the wide offset at a joint to the narrow one at a share of the edge: straight, or an arc that touches the image. */
    private void drawRamp(int i, double wideX, double wideY, double share, boolean isStart) {
        double x = imageX(i, share);
        double y = imageY(i, share);
        if (edge.isArc()) {
            touchingArc(x, y, edge.directionXAt(share), edge.directionYAt(share), wideX, wideY, isStart);
        } else if (isStart) {
            drawn.line(wideX, wideY, x, y);
        } else {
            drawn.line(x, y, wideX, wideY);
        }
        elements.add(drawn, i, false, isStart ? 0 : share, isStart ? share : 1);
    }

    /** The arc through a point that leaves (or reaches) another in a direction. */
    private void touchingArc(
            double x, double y, double directionX, double directionY, double wideX, double wideY, boolean isStart) {
        double sign = isStart ? -1 : 1;
        double chordX = wideX - x;
        double chordY = wideY - y;
        double dx = sign * directionX;
        double dy = sign * directionY;
        double half = Math.atan2(dx * chordY - dy * chordX, dx * chordX + dy * chordY);
        if (Math.abs(half) < 1e-9) {
            drawn.line(isStart ? wideX : x, isStart ? wideY : y, isStart ? x : wideX, isStart ? y : wideY);
            return;
        }
        double towards = 1 / (2 * Math.tan(half));
        double cx = x + chordX / 2 - towards * chordY;
        double cy = y + chordY / 2 + towards * chordX;
        if (isStart) {
            drawn.arc(wideX, wideY, x, y, cx, cy, -2 * half);
        } else {
            drawn.arc(x, y, wideX, wideY, cx, cy, 2 * half);
        }
    }

    private void drawImage(int i) {
        if (!isDrawn(i)) {
            return;
        }
        double x0 = imageX(i, start[i]);
        double y0 = imageY(i, start[i]);
        double x1 = imageX(i, end[i]);
        double y1 = imageY(i, end[i]);
        if (edge.isArc()) {
            drawn.arc(x0, y0, x1, y1, edge.centreX(), edge.centreY(), edge.sweep() * (end[i] - start[i]));
        } else {
            drawn.line(x0, y0, x1, y1);
        }
        if (drawn.length() > SHORT_M) {
            elements.add(drawn, i, false, start[i], end[i]);
        }
    }

    /** Whether an edge has an image: an arc about the jet that is no wider than its offset has none. */
    private boolean isDrawn(int i) {
        return !edge.isArc() || edge.radius() - side * Math.signum(edge.sweep()) * offset[i] > SHORT_M;
    }

    private double imageX(int i, double share) {
        return edge.xAt(share) + offset[i] * normalX(edge, share);
    }

    private double imageY(int i, double share) {
        return edge.yAt(share) + offset[i] * normalY(edge, share);
    }

    private double normalX(EdgeCursor shape, double share) {
        return -side * shape.directionYAt(share);
    }

    private double normalY(EdgeCursor shape, double share) {
        return side * shape.directionXAt(share);
    }

    /** The corner after an edge, where the path turns away from the jet. */
    private void drawCorner(int i) {
        double turn = next.turnFrom(edge);
        double wide = Math.max(offset[i], offset[next(i)]);
        boolean isGap = turn * side < 0 || Math.abs(turn) == Math.PI;
        if (!isGap || Math.abs(turn) * wide < SHORT_M || end[i] < 1 || start[next(i)] > 0) {
            return;
        }
        if (isExtended) {
            drawExtension(i, Math.abs(turn));
        } else {
            drawArc(i, -side * Math.abs(turn), wide);
        }
    }

    /** An arc of the wider offset; where one is narrower, the arc runs on until it meets that. */
    private void drawArc(int i, double turn, double wide) {
        double sign = Math.signum(turn);
        double lead = beyond(edge, offset[i], wide);
        double run = beyond(next, offset[next(i)], wide);
        double from = Math.atan2(normalY(edge, 1), normalX(edge, 1)) - sign * lead;
        double sweep = turn + sign * (lead + run);
        double x = edge.endX();
        double y = edge.endY();
        boolean isEqual = lead == 0 && run == 0;
        double x1 = isEqual ? x + wide * normalX(next, 0) : x + wide * Math.cos(from + sweep);
        double y1 = isEqual ? y + wide * normalY(next, 0) : y + wide * Math.sin(from + sweep);
        double x0 = isEqual ? x + wide * normalX(edge, 1) : x + wide * Math.cos(from);
        double y0 = isEqual ? y + wide * normalY(edge, 1) : y + wide * Math.sin(from);
        drawn.arc(x0, y0, x1, y1, x, y, sweep);
        elements.add(drawn, i, true, 1, 1);
    }

    /** Angle about a vertex from the normal of an edge there to where the arc of the wide offset meets the image of the edge. */
    private double beyond(EdgeCursor shape, double narrow, double wide) {
        double bend = shape.isArc() ? side * Math.signum(shape.sweep()) / shape.radius() : 0;
        double cosine = narrow / wide + bend * (wide - narrow) * (wide + narrow) / (2 * wide);
        return Math.acos(Math.max(-1, Math.min(1, cosine)));
    }

    /** Tangents up to where they meet, or up to a line across the corner where that is too far out. */
    private void drawExtension(int i, double turn) {
        double dx = edge.endDirectionX();
        double dy = edge.endDirectionY();
        double ex = next.startDirectionX();
        double ey = next.startDirectionY();
        double ax = edge.endX() + offset[i] * normalX(edge, 1);
        double ay = edge.endY() + offset[i] * normalY(edge, 1);
        double bx = edge.endX() + offset[next(i)] * normalX(next, 0);
        double by = edge.endY() + offset[next(i)] * normalY(next, 0);
        if (turn <= Math.PI / 2 + 1e-9) {
            double cross = dx * ey - dy * ex;
            double along = ((bx - ax) * ey - (by - ay) * ex) / cross;
            double back = ((bx - ax) * dy - (by - ay) * dx) / cross;
            double x = ax + along * dx;
            double y = ay + along * dy;
            addLine(i, ax, ay, x, y, along);
            addLine(i, x, y, bx, by, -back);
            return;
        }
        double wide = Math.max(offset[i], offset[next(i)]);
        // bisector of the corner, seen from the vertex
        double bisectorX = dx - ex;
        double bisectorY = dy - ey;
        double size = Math.hypot(bisectorX, bisectorY);
        bisectorX /= size;
        bisectorY /= size;
        double first = reach(ax - edge.endX(), ay - edge.endY(), dx, dy, bisectorX, bisectorY, MAX_MITRE * wide);
        double second = reach(bx - edge.endX(), by - edge.endY(), -ex, -ey, bisectorX, bisectorY, MAX_MITRE * wide);
        addLine(i, ax, ay, ax + first * dx, ay + first * dy, first);
        drawn.line(ax + first * dx, ay + first * dy, bx - second * ex, by - second * ey);
        elements.add(drawn, i, true, 1, 1);
        addLine(i, bx - second * ex, by - second * ey, bx, by, second);
    }

    /** Distance along a direction at which a point has come to a height above the vertex along the bisector. */
    private static double reach(
            double x, double y, double dx, double dy, double bisectorX, double bisectorY, double height) {
        return (height - x * bisectorX - y * bisectorY) / (dx * bisectorX + dy * bisectorY);
    }

    private void addLine(int i, double x0, double y0, double x1, double y1, double length) {
        if (length > SHORT_M) {
            drawn.line(x0, y0, x1, y1);
            elements.add(drawn, i, true, 1, 1);
        }
    }
}
