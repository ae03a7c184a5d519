package dev.waterjet.part;

/** Exact distance of stretches of a path from the line or arc that replaces them. Nothing is allocated. */
final class PieceCheck {

    private final EdgeArrays path;
    private final double tolerance;

    private double x0;
    private double y0;
    private double x1;
    private double y1;
    private double cx;
    private double cy;
    private double sweep;
    private double radius;
    private double length;
    private double outer2;
    private double inner2;
    private double chordInner2;

    /** Largest distance of a point of the path from the piece so far. */
    double worst;

    /** Edge on which it was found. */
    int worstEdge;

    /**
     * Starts checks.
     *
     * @param path the path
     * @param tolerance largest distance of a vertex
     */
    PieceCheck(EdgeArrays path, double tolerance) {
        this.path = path;
        this.tolerance = tolerance;
    }

    void line(int from, int to) {
        ends(from, to);
        sweep = 0;
        length = Math.hypot(x1 - x0, y1 - y0);
    }

    void arc(int from, int to, double centreX, double centreY, double sweepRad) {
        ends(from, to);
        cx = centreX;
        cy = centreY;
        sweep = sweepRad;
        radius = Math.hypot(x0 - cx, y0 - cy);
        limits();
    }

    private void ends(int from, int to) {
        x0 = path.x()[from];
        y0 = path.y()[from];
        x1 = path.x()[to];
        y1 = path.y()[to];
        worst = 0;
        worstEdge = from;
    }

    private void limits() {
        // vertices nearer than that are neither the worst nor too far
        double nothing = Math.min(worst, tolerance);
        double most = radius + nothing;
        double least = Math.max(0, radius - nothing);
        outer2 = most * most;
        inner2 = least * least;
        double chord = Math.max(0, radius - worst);
        chordInner2 = chord * chord;
    }

    /**
     * Compares some edges with the piece.
     *
     * @return whether every vertex, and every arc, lies within the tolerance of the piece
     */
    boolean isWithin(int firstEdge, int lastEdge) {
        for (int edge = firstEdge; edge <= lastEdge; edge++) {
            double distance = distance(path.x()[edge + 1], path.y()[edge + 1]);
            if (distance > tolerance) {
                return false;
            }
            note(distance, edge);
            if (path.sweepOf(edge) != 0) {
                double most = ofArc(edge);
                note(most, edge);
                if (most > 1.25 * tolerance) {
                    return false;
                }
            } else if (sweep != 0) {
                ofChord(edge);
            }
        }
        return true;
    }

    boolean isVertexWithin(int vertex) {
        return distance(path.x()[vertex], path.y()[vertex]) <= tolerance;
    }

    private void note(double distance, int edge) {
        if (distance > worst) {
            worst = distance;
            worstEdge = edge;
            limits();
        }
    }

    /** Distance of a point; zero for points within the tolerance and no worse than the worst so far. */
    private double distance(double x, double y) {
        if (sweep == 0) {
            return fromLine(x, y);
        }
        double ax = x - cx;
        double ay = y - cy;
        if (spans(ax, ay)) {
            double a2 = ax * ax + ay * ay;
            return a2 <= outer2 && a2 >= inner2 ? 0 : Math.abs(Math.sqrt(a2) - radius);
        }
        return Math.min(Math.hypot(x - x0, y - y0), Math.hypot(x - x1, y - y1));
    }

    private double fromLine(double x, double y) {
        double dx = x - x0;
        double dy = y - y0;
        double along = dx * (x1 - x0) + dy * (y1 - y0);
        if (along < 0) {
            return Math.hypot(dx, dy);
        }
        if (along > length * length) {
            return Math.hypot(x - x1, y - y1);
        }
        return Math.abs(dy * (x1 - x0) - dx * (y1 - y0)) / length;
    }

    /** Whether the direction from the centre lies within the sweep. */
    private boolean spans(double ax, double ay) {
        double sign = sweep > 0 ? 1 : -1;
        double past = sign * ((x0 - cx) * ay - (y0 - cy) * ax);
        double before = sign * (ax * (y1 - cy) - ay * (x1 - cx));
        return Math.abs(sweep) <= Math.PI ? past >= 0 && before >= 0 : past >= 0 || before >= 0;
    }

    /** A chord comes nearest to the centre of an arc at the projection of the centre. */
    private void ofChord(int edge) {
        double ax = path.x()[edge] - cx;
        double ay = path.y()[edge] - cy;
        double bx = path.x()[edge + 1] - cx;
        double by = path.y()[edge + 1] - cy;
        double dx = bx - ax;
        double dy = by - ay;
        double cross = ax * by - ay * bx;
        double chord2 = dx * dx + dy * dy;
        if (cross * cross < chordInner2 * chord2 && ax * dx + ay * dy < 0 && bx * dx + by * dy > 0) {
            note(radius - Math.abs(cross) / Math.sqrt(chord2), edge);
        }
    }

    /** Largest distance of an arc of the path: at its ends, or where its normal meets the piece at right angles. */
    private double ofArc(int edge) {
        double ox = path.centreX()[edge];
        double oy = path.centreY()[edge];
        double r = path.radius(edge);
        double towardsX = sweep == 0 ? y0 - y1 : ox - cx;
        double towardsY = sweep == 0 ? x1 - x0 : oy - cy;
        double size = Math.hypot(towardsX, towardsY);
        double most = 0;
        for (int side = -1; side <= 1 && size > 1e-12 * r; side += 2) {
            double ax = side * r * towardsX / size;
            double ay = side * r * towardsY / size;
            if (isOnArc(edge, ax, ay)) {
                most = Math.max(most, distance(ox + ax, oy + ay));
            }
        }
        // concentric arcs lie equally far apart everywhere
        return size > 1e-12 * r || sweep == 0 ? most : Math.abs(r - radius);
    }

    private boolean isOnArc(int edge, double ax, double ay) {
        double fromX = path.x()[edge] - path.centreX()[edge];
        double fromY = path.y()[edge] - path.centreY()[edge];
        double turn = path.sweepOf(edge);
        double angle = Math.atan2(fromX * ay - fromY * ax, fromX * ax + fromY * ay) * Math.signum(turn);
        return (angle < 0 ? angle + 2 * Math.PI : angle) <= Math.abs(turn);
    }
}
