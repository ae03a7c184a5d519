package dev.waterjet.part;

/**
 * The longest line and the longest arc that leave one vertex of a path and keep the vertices after it within a tolerance.
 * Both end on a vertex. Each vertex is looked at once; nothing is allocated.
 *
 * <p>In the frame of the first vertex, x towards the first vertex that lies clearly off it, a curve that leaves at slope t
 * and has curvature k passes a point (X, Y) within e exactly if {@code |X t + q (D - e^2)/2 - Y| <= e/cos(atan t)}, where
 * {@code D = X^2 + Y^2} and {@code q = k/cos(atan t)} (derived from the distance to the centre). The cosine is taken as 1,
 * which is on the safe side.
 */
final class PieceScan {

    /** A line is preferred to an arc that is longer by no more than this. */
    private static final double LINE_SHARE = 0.7;

    /** Clipping goes a little further than it must; so an exact circle does not clip the polygon at every vertex. */
    private static final double CLIP_SHARE = 0.99;

    /** Tangents within 45 degrees of the frame are considered. */
    private static final double MAX_SLOPE = 1;

    /** Vertices looked at beyond the last possible end, as a multiple of those before it, and at least. */
    private static final int LOOK_AHEAD = 3;

    private static final int LEAST_LOOK_AHEAD = 64;

    private static final int LOOK_BACK = 32;

    private final EdgeArrays path;
    private final double tolerance;
    private final double tolerance2;
    private final double clipTolerance;
    private final double flattening;
    private final FitPolygon polygon = new FitPolygon();
    private final FitPolygon saved = new FitPolygon();

    private int from;
    private double startX;
    private double startY;
    private double alongX;
    private double alongY;
    private double lastX;
    private double lastY;
    private double longest2;
    private double bendLimit;

    private boolean isLineAlive;
    private double lowSlope;
    private double highSlope;
    private double farthestX;
    private int lineEnd;

    private boolean isArcAlive;
    private double cosine;
    private double sine;
    private double slack;
    private double deficit;
    private int arcEnd;
    private int clips;
    private int arcEndClips;

    /** Last vertex of the piece found. */
    int end;

    /** Its signed sweep; zero for a line. */
    double sweep;

    double centreX;
    double centreY;

    PieceScan(EdgeArrays path, double tolerance, double flattening) {
        this.path = path;
        this.tolerance = tolerance;
        this.tolerance2 = tolerance * tolerance;
        this.clipTolerance = CLIP_SHARE * tolerance;
        this.flattening = flattening;
    }

    /** Finds the piece from a vertex, which ends at {@code limit} at the latest. */
    void scan(int vertex, int limit) {
        begin(vertex, limit);
        int i = vertex + 1;
        while (i <= limit && take(i) && i - lastEnd() <= LEAST_LOOK_AHEAD + LOOK_AHEAD * (lastEnd() - vertex)) {
            i++;
        }
        choose();
    }

    private int lastEnd() {
        return Math.max(from, Math.max(lineEnd, arcEnd));
    }

    /** The line of the last scan, where its arc turned out to be wrong. */
    boolean hasLine() {
        return lineEnd > from && sweep != 0;
    }

    void takeLine() {
        end = lineEnd;
        sweep = 0;
    }

    private void begin(int vertex, int limit) {
        from = vertex;
        startX = path.x()[vertex];
        startY = path.y()[vertex];
        aim(vertex, limit);
        lastX = 0;
        lastY = 0;
        longest2 = 0;
        bendLimit = 1 / (4 * tolerance);
        polygon.reset(MAX_SLOPE, bendLimit);
        isLineAlive = true;
        lowSlope = Double.NEGATIVE_INFINITY;
        highSlope = Double.POSITIVE_INFINITY;
        farthestX = 0;
        lineEnd = -1;
        isArcAlive = true;
        deficit = 0;
        arcEnd = -1;
        clips = 0;
        arcEndClips = -1;
        clipped();
    }

    /** Turns the frame towards the first vertex farther than four tolerances. */
    private void aim(int vertex, int limit) {
        double far2 = 16 * tolerance2;
        double best2 = 0;
        alongX = 1;
        alongY = 0;
        for (int i = vertex + 1; i <= limit && best2 <= far2; i++) {
            double dx = path.x()[i] - startX;
            double dy = path.y()[i] - startY;
            double distance2 = dx * dx + dy * dy;
            if (distance2 > best2) {
                double distance = Math.sqrt(distance2);
                best2 = distance2;
                alongX = dx / distance;
                alongY = dy / distance;
            }
        }
    }

    /** Takes the edge that ends at a vertex; false if neither a line nor an arc goes on. */
    private boolean take(int i) {
        int edge = i - 1;
        double chord2 = path.chordSquared(edge);
        double chordX = path.x()[i] - path.x()[edge];
        double chordY = path.y()[i] - path.y()[edge];
        if (path.sweepOf(edge) != 0) {
            // a small arc: its middle counts as a vertex
            double half = Math.tan(path.sweepOf(edge) / 4) / 2;
            double midX = (path.x()[i] + path.x()[edge]) / 2 + half * chordY;
            double midY = (path.y()[i] + path.y()[edge]) / 2 - half * chordX;
            if (!point(midX, midY, chord2 / 4, -1, path.isCurve(edge))) {
                return false;
            }
            chord2 /= 4;
        }
        return point(path.x()[i], path.y()[i], chord2, i, path.isCurve(edge));
    }

    private boolean point(double x, double y, double chord2, int vertex, boolean isCurve) {
        double dx = x - startX;
        double dy = y - startY;
        double px = dx * alongX + dy * alongY;
        double py = dy * alongX - dx * alongY;
        double d2 = px * px + py * py;
        if (chord2 > longest2 && !isCurve) {
            longest2 = chord2;
            limitBend(8 * flattening / chord2);
        }
        double stepX = px - lastX;
        double stepY = py - lastY;
        lastX = px;
        lastY = py;
        if (d2 <= tolerance2) {
            if (vertex >= 0 && farthestX == 0 && d2 > EdgeArrays.TOUCH_M * EdgeArrays.TOUCH_M) {
                lineEnd = vertex;
            }
            return farthestX <= 2 * tolerance;
        }
        isLineAlive = isLineAlive && line(px, py, vertex);
        isArcAlive = isArcAlive && arc(px, py, d2, stepX, stepY, vertex);
        return isLineAlive || isArcAlive;
    }

    private boolean line(double px, double py, int vertex) {
        if (px <= 0 || px < farthestX - tolerance) {
            return false;
        }
        boolean isThrough = py >= lowSlope * px && py <= highSlope * px;
        if (py - tolerance > lowSlope * px) {
            lowSlope = (py - tolerance) / px;
        }
        if (py + tolerance < highSlope * px) {
            highSlope = (py + tolerance) / px;
        }
        if (lowSlope > highSlope) {
            return false;
        }
        if (isThrough && vertex >= 0 && (px >= farthestX || isEnd(vertex, alongX, alongY))) {
            lineEnd = vertex;
        }
        farthestX = Math.max(farthestX, px);
        return true;
    }

    private boolean arc(double px, double py, double d2, double stepX, double stepY, int vertex) {
        double h = (d2 - tolerance2) / 2;
        polygon.range(px, h, py);
        if (polygon.minimum > tolerance || polygon.maximum < -tolerance || px * cosine + py * sine <= 0) {
            return false;
        }
        if (polygon.maximum > tolerance || polygon.minimum < -tolerance) {
            beforeClip();
            polygon.clip(px, h, py + clipTolerance);
            polygon.clip(-px, -h, clipTolerance - py);
            clipped();
            if (polygon.isEmpty()) {
                return false;
            }
            polygon.range(px, h, py);
        }
        // tangent at the point of an arc through it: the starting tangent, mirrored by the chord
        double chordC = px * px - py * py;
        double chordS = 2 * px * py;
        double tangentX = chordC * cosine + chordS * sine;
        double tangentY = chordS * cosine - chordC * sine;
        double forward = stepX * tangentX + stepY * tangentY;
        if (deficit > 0 || forward < 0) {
            deficit = Math.max(0, deficit - forward / d2);
            if (deficit > tolerance) {
                return false;
            }
        }
        boolean isThrough = polygon.minimum + slack <= 0 && polygon.maximum - slack >= 0;
        if (isThrough
                && vertex >= 0
                && (deficit == 0
                        || isEnd(
                                vertex,
                                tangentX * alongX - tangentY * alongY,
                                tangentX * alongY + tangentY * alongX))) {
            arcEnd = vertex;
            arcEndClips = clips;
        }
        return true;
    }

    /** Whether the vertices before that lie ahead of one, seen in a direction, are within the tolerance of it. */
    private boolean isEnd(int vertex, double directionX, double directionY) {
        double[] x = path.x();
        double[] y = path.y();
        for (int j = vertex - 1; j > from; j--) {
            double dx = x[j] - x[vertex];
            double dy = y[j] - y[vertex];
            double distance2 = dx * dx + dy * dy;
            if (distance2 > 16 * tolerance2) {
                return true;
            }
            if ((distance2 > tolerance2 && dx * directionX + dy * directionY > 0) || vertex - j > LOOK_BACK) {
                return false;
            }
        }
        return true;
    }

    private void limitBend(double limit) {
        if (limit < bendLimit) {
            bendLimit = limit;
            if (isArcAlive && polygon.largestBend() > limit) {
                beforeClip();
                polygon.clip(0, 1, limit);
                polygon.clip(0, -1, limit);
                isArcAlive = !polygon.isEmpty();
                clipped();
            }
        }
    }

    /** Keeps the polygon of the last vertex at which an arc may end. */
    private void beforeClip() {
        if (arcEndClips == clips) {
            saved.copy(polygon);
        }
        clips++;
    }

    private void clipped() {
        if (polygon.isEmpty()) {
            return;
        }
        double slope = polygon.meanSlope();
        cosine = 1 / Math.sqrt(1 + slope * slope);
        sine = slope * cosine;
        slack = tolerance2 / 2 * polygon.largestBend();
    }

    private void choose() {
        end = lineEnd;
        sweep = 0;
        if (arcEnd <= lineEnd) {
            return;
        }
        double dx = path.x()[arcEnd] - startX;
        double dy = path.y()[arcEnd] - startY;
        double px = dx * alongX + dy * alongY;
        double py = dy * alongX - dx * alongY;
        double d2 = px * px + py * py;
        double slope = (arcEndClips == clips ? polygon : saved).slopeThrough(px, d2 / 2, py);
        double half = Math.atan2(py - slope * px, px + slope * py);
        double chord = Math.sqrt(d2);
        if (Double.isNaN(slope) || Math.abs(half) < 1e-9) {
            return;
        }
        double length = chord * half / Math.sin(half);
        double lineLength = lineEnd < 0 ? 0 : Math.hypot(path.x()[lineEnd] - startX, path.y()[lineEnd] - startY);
        if (lineLength >= LINE_SHARE * length) {
            return;
        }
        double towards = 1 / (2 * Math.tan(half));
        end = arcEnd;
        sweep = 2 * half;
        centreX = startX + dx / 2 - towards * dy;
        centreY = startY + dy / 2 + towards * dx;
    }
}
