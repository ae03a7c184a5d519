package dev.waterjet.part;

/**
 * Replaces a path by the lines and arcs of which it is a sample, in one pass and within an exact bound: every vertex of the
 * path lies within the tolerance of the piece that replaces it. A chord is the sample of a curve if its sagitta is no more
 * than the flattening. Pieces end on vertices of the path.
 *
 * <p>Each piece is the longest that leaves its first vertex (see {@link PieceScan}); neighbours on one circle are joined.
 * The number of pieces is not the minimum. Time is linear in the number of edges.
 */
final class PathFitter {

    private final EdgeArrays path;
    private final double tolerance;
    private final double flattening;
    private final PieceScan scan;
    private final PieceList pieces;

    private PathFitter(EdgeArrays path, double tolerance, double flattening) {
        this.path = path;
        this.tolerance = tolerance;
        this.flattening = flattening;
        this.scan = new PieceScan(path, tolerance, flattening);
        this.pieces = new PieceList(path, tolerance, flattening);
    }

    static FittedPath fit(EdgeArrays path, double tolerance, double flattening) {
        int corner = path.isClosed() ? sharpestCorner(path, flattening) : -1;
        PathFitter fitter = new PathFitter(corner > 0 ? path.startingAt(corner) : path, tolerance, flattening);
        fitter.run();
        if (path.isClosed() && corner < 0) {
            fitter.pieces.joinEnds();
        }
        return fitter.isDegenerate() ? FittedPath.unchanged(path) : fitter.result(Math.max(0, corner));
    }

    private void run() {
        int n = path.size();
        int edge = 0;
        while (edge < n) {
            int next = edge + 1;
            if (isLongArc(edge)) {
                pieces.addEdge(edge);
                pieces.joinLast();
            } else {
                while (next < n && path.isAlike(edge, next) && !isLongArc(next)) {
                    next++;
                }
                fit(edge, next);
            }
            edge = next;
        }
        new JointShift(path, pieces, tolerance).run();
    }

    /** An arc that is more than a sample stays as it is. */
    private boolean isLongArc(int edge) {
        return path.hasArcs() && path.sagitta(edge) > flattening;
    }

    private void fit(int from, int to) {
        int at = from;
        while (at < to) {
            at = piece(at, to);
            pieces.joinLast();
        }
    }

    private int piece(int from, int limit) {
        int to = limit;
        while (true) {
            scan.scan(from, to);
            if (isAdded(from)) {
                return scan.end;
            }
            if (scan.hasLine()) {
                scan.takeLine();
                if (isAdded(from)) {
                    return scan.end;
                }
            }
            if (scan.end <= from + 1) {
                pieces.addEdge(from);
                return from + 1;
            }
            // the bound does not hold that far
            to = from + (scan.end - from) / 2;
        }
    }

    private boolean isAdded(int from) {
        return scan.end > from + 1 && pieces.addIfWithin(from, scan.end, scan.sweep, scan.centreX, scan.centreY);
    }

    private boolean isDegenerate() {
        boolean hasArc = false;
        for (int i = 0; i < pieces.size; i++) {
            hasArc |= pieces.sweep[i] != 0;
        }
        return path.isClosed() && !hasArc && pieces.size < 3;
    }

    /** The pieces from the one that holds the first edge of the path as it came. */
    private FittedPath result(int corner) {
        int n = path.size();
        int m = pieces.size;
        int start = 0;
        if (path.isClosed()) {
            // a piece that goes over the start is the first
            int origin = (n - corner) % n;
            while (pieces.last[start] < origin) {
                start++;
            }
        }
        FittedPath result = new FittedPath(
                new EdgeArrays(
                        new double[m + 1],
                        new double[m + 1],
                        new double[m],
                        new double[m],
                        new double[m],
                        new short[m],
                        EdgeArrays.noCurves(),
                        path.isClosed()),
                new int[m],
                new int[m],
                new double[m],
                new int[m]);
        for (int k = 0; k < m; k++) {
            put((start + k) % m, k, corner, result);
        }
        int last = m - 1;
        boolean isFull = Math.abs(pieces.sweep[last]) == 2 * Math.PI;
        int end = path.isClosed() ? pieces.first[start] : isFull ? pieces.first[last] : n;
        result.path().x()[m] = path.x()[end];
        result.path().y()[m] = path.y()[end];
        return result;
    }

    private void put(int piece, int k, int corner, FittedPath into) {
        int n = path.size();
        int first = pieces.first[piece];
        into.path().x()[k] = path.x()[first];
        into.path().y()[k] = path.y()[first];
        into.path().sweep()[k] = pieces.sweep[piece];
        into.path().centreX()[k] = pieces.centreX[piece];
        into.path().centreY()[k] = pieces.centreY[piece];
        into.path().key()[k] = path.key()[first];
        into.firstEdge()[k] = (first + corner) % n;
        into.lastEdge()[k] = (pieces.last[piece] + corner) % n;
        into.deviation()[k] = pieces.worst[piece];
        into.worstEdge()[k] = (pieces.worstEdge[piece] + corner) % n;
    }

    /**
     * The vertex of a closed path at which it turns most, measured by the sagitta that a curve with that turn would have;
     * -1 if that is nowhere above the flattening.
     */
    private static int sharpestCorner(EdgeArrays path, double flattening) {
        int n = path.size();
        int sharpest = -1;
        // sagitta l w/8, squared, with w^2 = 2 (1 - cos w)
        double most = 32 * flattening * flattening;
        double[] before = new double[3];
        double[] after = new double[3];
        direction(path, n - 1, false, before);
        for (int i = 0; i < n; i++) {
            double shorter2 = Math.min(before[2], path.chordSquared(i));
            if (shorter2 * 2 > most || path.hasArcs()) {
                direction(path, i, true, after);
                shorter2 = Math.min(before[2], after[2]);
                double value = shorter2 * (1 - before[0] * after[0] - before[1] * after[1]);
                if (value > most) {
                    most = value;
                    sharpest = i;
                }
            }
            direction(path, i, false, before);
        }
        return sharpest;
    }

    /** Direction at the start or end of an edge, and its length squared. */
    private static void direction(EdgeArrays path, int edge, boolean isStart, double[] into) {
        EdgeCursor shape = new EdgeCursor();
        path.load(edge, shape);
        into[0] = isStart ? shape.startDirectionX() : shape.endDirectionX();
        into[1] = isStart ? shape.startDirectionY() : shape.endDirectionY();
        into[2] = shape.length() * shape.length();
    }
}
