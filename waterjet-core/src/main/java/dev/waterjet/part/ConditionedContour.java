package dev.waterjet.part;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Contour of the lines and arcs of which another contour is a sample, with the mapping back: the edges that each piece replaces,
 * so that a message can name the edge of the user.
 */
public final class ConditionedContour implements Described {

    /** Turns within this are rounding. */
    private static final double STRAIGHT_RAD = 1e-7;

    private final Contour source;
    private final Contour contour;
    private final FittedPath fitted;
    private final double toleranceM;
    private final double flatteningM;

    ConditionedContour(Contour source, FittedPath fitted, double toleranceM, double flatteningM) {
        this.source = source;
        this.fitted = fitted;
        this.toleranceM = toleranceM;
        this.flatteningM = flatteningM;
        this.contour = new Contour(fitted.path().compact(), source.requirements, source.name());
    }

    /** {@return the contour of lines and arcs} */
    public Contour contour() {
        return contour;
    }

    /** {@return the contour that was conditioned} */
    public Contour source() {
        return source;
    }

    /**
     * Returns the first edge of the source that a piece replaces.
     *
     * @param piece index of the piece from 0
     * @return index of the edge from 0
     */
    public int firstSourceEdge(int piece) {
        return fitted.firstEdge()[Require.index("edge", piece, contour.size())];
    }

    /**
     * Returns the last edge of the source that a piece replaces.
     *
     * @param piece index of the piece from 0
     * @return index of the edge from 0; below the first where the piece goes over the start of a closed contour
     */
    public int lastSourceEdge(int piece) {
        return fitted.lastEdge()[Require.index("edge", piece, contour.size())];
    }

    /**
     * Returns the largest distance of a point of the source from the piece that replaces it.
     *
     * @param piece index of the piece from 0
     * @return the distance, in m, exact
     */
    public Quantity<Length> deviation(int piece) {
        return Kind.LENGTH.of(fitted.deviation()[Require.index("edge", piece, contour.size())]);
    }

    /** {@return the largest distance of a point of the source from the conditioned contour, in m, exact} */
    public Quantity<Length> maximumDeviation() {
        return Kind.LENGTH.of(fitted.deviation()[fitted.worstPiece()]);
    }

    /** {@return the edge of the source at which the largest deviation was found, index from 0} */
    public int edgeOfMaximumDeviation() {
        return fitted.worstEdge()[fitted.worstPiece()];
    }

    /**
     * Returns whether the contour has a corner at a vertex. A turn w between pieces is a corner if a curve with that turn, over
     * the length l of the shorter of both, would have a sagitta {@code l w/8} above the flattening. So no fixed angle decides,
     * and turns of 9.9 and 10.1 degrees are alike.
     *
     * @param vertex index from 0 to the number of pieces
     * @return true if it is a corner; false at the ends of an open contour
     */
    public boolean isCorner(int vertex) {
        return isCornerSi(vertex, Double.POSITIVE_INFINITY);
    }

    /**
     * Returns whether a vertex is a corner for something that looks along the path over a length, such as a lagging jet.
     *
     * @param vertex index from 0 to the number of pieces
     * @param over length over which the turn matters, such as the lag of the jet at the bottom of the plate
     * @return true if the sagitta over that length, or the shorter piece, is above the flattening
     */
    public boolean isCorner(int vertex, Quantity<Length> over) {
        Objects.requireNonNull(over, "over");
        return isCornerSi(vertex, Kind.LENGTH.si(over));
    }

    /**
     * Returns whether the turn at a vertex is no more than conditioning leaves between the pieces of a smooth curve: its square
     * is at most {@code 8 e/R}, e being the tolerance and R the smaller radius of both pieces (derived). A machine that rounds
     * corners within the tolerance or more need not slow down there.
     *
     * @param vertex index from 0 to the number of pieces
     * @return true if it is smooth; true at the ends of an open contour
     */
    public boolean isSmooth(int vertex) {
        int n = contour.size();
        Require.index("vertex", vertex, n + 1);
        if (!contour.isClosed() && (vertex == 0 || vertex == n)) {
            return true;
        }
        EdgeCursor before = new EdgeCursor();
        EdgeCursor after = new EdgeCursor();
        contour.load((vertex + n - 1) % n, before);
        contour.load(vertex % n, after);
        double turn = after.turnFrom(before);
        double curvature = Math.max(curvature(before), curvature(after));
        return turn * turn <= 8 * toleranceM * curvature + STRAIGHT_RAD * STRAIGHT_RAD;
    }

    private static double curvature(EdgeCursor edge) {
        return edge.isArc() ? 1 / edge.radius() : 0;
    }

    private boolean isCornerSi(int vertex, double overM) {
        int n = contour.size();
        Require.index("vertex", vertex, n + 1);
        boolean isEnd = vertex == 0 || vertex == n;
        if (isEnd && !contour.isClosed()) {
            return false;
        }
        EdgeCursor before = new EdgeCursor();
        EdgeCursor after = new EdgeCursor();
        contour.load((vertex + n - 1) % n, before);
        contour.load(vertex % n, after);
        double over = Math.min(overM, Math.min(before.length(), after.length()));
        return over * Math.abs(after.turnFrom(before)) / 8 > flatteningM;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("conditioned contour")
                .put("contour", contour)
                .put("maximum_deviation", Kind.LENGTH, Kind.LENGTH.si(maximumDeviation()))
                .put("source_edges", source.size())
                .map();
    }

    @Override
    public String toString() {
        return contour + " for " + source.size() + " edges";
    }
}
