package dev.waterjet.part;

/** Edges of a contour in a {@link BoxTree}, for searches of near edges. A search allocates nothing. */
public final class EdgeTree {

    private final Contour contour;
    private final BoxTree boxes;

    private EdgeTree(Contour contour, BoxTree boxes) {
        this.contour = contour;
        this.boxes = boxes;
    }

    /**
     * Sorts the edges of a contour; the work grows about as n log n.
     *
     * @param contour the contour
     * @return the tree
     */
    public static EdgeTree of(Contour contour) {
        double[] boxes = new double[4 * contour.size()];
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            boxes[4 * i] = edge.minimumX();
            boxes[4 * i + 1] = edge.minimumY();
            boxes[4 * i + 2] = edge.maximumX();
            boxes[4 * i + 3] = edge.maximumY();
        }
        return new EdgeTree(contour, BoxTree.ofSi(boxes));
    }

    /** {@return the contour} */
    public Contour contour() {
        return contour;
    }

    /**
     * Returns a walk over edges whose boxes meet a given box, to be used by one thread.
     *
     * @return the walk
     */
    public BoxTree.Walk walk() {
        return boxes.walk();
    }

    /**
     * Returns the shortest distance to the contour of another tree.
     *
     * @param other the other tree
     * @return the distance, in m; zero where the contours touch or cross
     */
    public double clearance(EdgeTree other) {
        EdgeCursor mine = new EdgeCursor();
        EdgeCursor theirs = new EdgeCursor();
        double[] scratch = new double[4];
        contour.load(0, mine);
        other.contour.load(0, theirs);
        double least = EdgeKernel.distance(mine, theirs, scratch);
        BoxTree.Walk walk = other.walk();
        for (int i = 0; i < contour.size() && least > 0; i++) {
            contour.load(i, mine);
            least = other.distance(mine, least, walk, theirs, scratch);
        }
        return least;
    }

    /**
     * Returns the shortest distance of an edge from the contour, if it is below a bound.
     *
     * @param edge the edge
     * @param bound upper bound, in m
     * @param walk a walk of this tree
     * @return the distance, in m; the bound if nothing is nearer
     */
    public double distance(EdgeCursor edge, double bound, BoxTree.Walk walk) {
        return distance(edge, bound, walk, new EdgeCursor(), new double[4]);
    }

    private double distance(EdgeCursor edge, double bound, BoxTree.Walk walk, EdgeCursor scratch, double[] points) {
        double best = bound;
        double x0 = edge.minimumX();
        double y0 = edge.minimumY();
        double x1 = edge.maximumX();
        double y1 = edge.maximumY();
        walk.start(x0 - best, y0 - best, x1 + best, y1 + best);
        for (int i = walk.next(); i >= 0; i = walk.next()) {
            contour.load(i, scratch);
            double distance = EdgeKernel.distance(edge, scratch, points);
            if (distance < best) {
                best = distance;
                walk.narrow(x0 - best, y0 - best, x1 + best, y1 + best);
            }
        }
        return best;
    }

    /**
     * Returns the distance of a point from the contour, if it is below a bound.
     *
     * @param x x of the point, in m
     * @param y y of the point, in m
     * @param bound upper bound, in m
     * @param walk a walk of this tree
     * @param scratch a cursor to work with
     * @return the distance, in m; the bound if nothing is nearer
     */
    public double distance(double x, double y, double bound, BoxTree.Walk walk, EdgeCursor scratch) {
        double best = bound;
        walk.start(x - best, y - best, x + best, y + best);
        for (int edge = walk.next(); edge >= 0; edge = walk.next()) {
            contour.load(edge, scratch);
            double distance = EdgeKernel.distance(scratch, x, y);
            if (distance < best) {
                best = distance;
                walk.narrow(x - best, y - best, x + best, y + best);
            }
        }
        return best;
    }
}
