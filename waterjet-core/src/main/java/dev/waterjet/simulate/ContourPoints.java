package dev.waterjet.simulate;

import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Points along a part contour at which the cut is predicted, with the unit normal from the part towards the path, in flat
 * arrays; in m. Points lie close near corners. Where the part is re-entrant, the points that no jet can reach are replaced by
 * the fillet of the jet around the corner of the tool path.
 */
final class ContourPoints {

    /** Turn at a joint from which it counts as a corner. */
    private static final double CORNER_RAD = 0.03;

    private static final double PER_RADIUS = 20;
    /** Distance from a corner up to which points lie closest. */
    private static final double NEAR_CORNER_M = 2e-3;

    private static final double FILLET_STEP_RAD = 0.12;

    final Contour contour;
    private final int sign;
    private final Spacing spacing;

    int count;
    double[] x = new double[256];
    double[] y = new double[256];
    double[] normalX = new double[256];
    double[] normalY = new double[256];
    int[] edge = new int[256];
    /** Distance along the contour. */
    double[] distance = new double[256];
    /** Distance from the contour to the tool path, for each edge: of a path on the side of the part below 0. */
    final double[] offset;

    /**
     * Spacing of points.
     *
     * @param straightM on lines, away from corners
     * @param arcM on arcs, of which it is at most a twentieth of the radius
     * @param cornerM near corners
     * @param isEven whether it is the same on lines, arcs and near corners
     */
    record Spacing(double straightM, double arcM, double cornerM, boolean isEven) {

        /** Spacing near corners over the spread of the dose. */
        private static final double CORNER_IN_SPREADS = 0.25;

        private static final double STRAIGHT_M = 0.2e-3;
        private static final double ARC_M = 0.1e-3;

        /** Spacing along a contour of a length, fine enough for the spread of a dose. */
        static Spacing fine(double lengthM, double spreadM) {
            double coarsening = HeadPath.coarsening(lengthM);
            return new Spacing(STRAIGHT_M * coarsening, ARC_M * coarsening, CORNER_IN_SPREADS * spreadM, false);
        }

        static Spacing even(double spacingM) {
            return new Spacing(spacingM, spacingM, 0, true);
        }

        static Spacing probes(double spacingM) {
            return new Spacing(spacingM, spacingM, spacingM, false);
        }
    }

    /** Points with normals to the left (1) or right (-1) of the contour; offsets by edge. */
    ContourPoints(Contour contour, int sign, Spacing spacing, double[] offset) {
        this.contour = contour;
        this.sign = sign;
        this.spacing = spacing;
        this.offset = offset;
        EdgeCursor cursor = new EdgeCursor();
        double start = 0;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, cursor);
            double length = cursor.length();
            double before = turn(i);
            double after = turn(i + 1);
            Fillet first = fillet(i, before);
            Fillet last = fillet(i + 1, after);
            double[] span = {first == null ? 0 : first.after(), length - (last == null ? 0 : last.before())};
            along(i, start, span, Math.abs(before) > CORNER_RAD, Math.abs(after) > CORNER_RAD);
            if (last != null) {
                along(last, i, start + length);
            }
            start += length;
        }
    }

    /** Turn from the edge before a vertex into the one behind it; 0 at an open end. */
    private double turn(int vertex) {
        int n = contour.size();
        if (!contour.isClosed() && (vertex == 0 || vertex == n)) {
            return 0;
        }
        EdgeCursor before = new EdgeCursor();
        EdgeCursor after = new EdgeCursor();
        contour.load(Math.floorMod(vertex - 1, n), before);
        contour.load(Math.floorMod(vertex, n), after);
        return after.turnFrom(before);
    }

    /** At a re-entrant corner the contour turns to the side of the path. */
    private boolean isReentrant(double turn) {
        return turn * sign > CORNER_RAD && Math.abs(turn) < Math.PI - CORNER_RAD;
    }

    /** Circle of the jet around a vertex; null if the vertex is not re-entrant, or the path runs along the contour itself. */
    private @Nullable Fillet fillet(int vertex, double turn) {
        if (!isReentrant(turn)) {
            return null;
        }
        int before = Math.floorMod(vertex - 1, contour.size());
        int after = Math.floorMod(vertex, contour.size());
        double radius = Math.min(offset[before], offset[after]);
        return radius > 0 ? Fillet.of(contour, before, after, sign, radius) : null;
    }

    private void along(int i, double start, double[] span, boolean isCorner, boolean isCornerAfter) {
        EdgeCursor cursor = new EdgeCursor();
        contour.load(i, cursor);
        double most = spacing.straightM;
        if (cursor.isArc() && !spacing.isEven) {
            most = Math.min(most, Math.min(spacing.arcM, cursor.radius() / PER_RADIUS));
        }
        double at = span[0];
        while (at < span[1]) {
            boolean isNear = !spacing.isEven
                    && ((isCorner && at - span[0] < NEAR_CORNER_M) || (isCornerAfter && span[1] - at < NEAR_CORNER_M));
            double step = isNear ? Math.min(most, spacing.cornerM) : most;
            double to = at + 1.5 * step >= span[1] ? span[1] : at + step;
            double share = (at + to) / 2 / cursor.length();
            add(
                    cursor.xAt(share),
                    cursor.yAt(share),
                    -sign * cursor.directionYAt(share),
                    sign * cursor.directionXAt(share));
            edge[count - 1] = i;
            distance[count - 1] = start + share * cursor.length();
            at = to;
        }
    }

    /** Points on the circle of the jet around the corner of the tool path, from one edge to the next. */
    private void along(Fillet fillet, int i, double vertexDistance) {
        int next = Math.floorMod(i + 1, contour.size());
        int steps = Math.max(3, (int) Math.ceil(Math.abs(fillet.turn()) / FILLET_STEP_RAD));
        for (int k = 0; k < steps; k++) {
            double angle = fillet.turn() * (k + 0.5) / steps;
            double mx = fillet.normalX() * Math.cos(angle) - fillet.normalY() * Math.sin(angle);
            double my = fillet.normalX() * Math.sin(angle) + fillet.normalY() * Math.cos(angle);
            add(fillet.centreX() - fillet.radius() * mx, fillet.centreY() - fillet.radius() * my, mx, my);
            boolean isBefore = 2 * k < steps;
            edge[count - 1] = isBefore ? i : next;
            distance[count - 1] = isBefore || next > i ? vertexDistance : 0;
        }
    }

    private void add(double atX, double atY, double nx, double ny) {
        if (count == x.length) {
            int capacity = 2 * count;
            x = Arrays.copyOf(x, capacity);
            y = Arrays.copyOf(y, capacity);
            normalX = Arrays.copyOf(normalX, capacity);
            normalY = Arrays.copyOf(normalY, capacity);
            edge = Arrays.copyOf(edge, capacity);
            distance = Arrays.copyOf(distance, capacity);
        }
        x[count] = atX;
        y[count] = atY;
        normalX[count] = nx;
        normalY[count] = ny;
        count++;
    }
}
