package dev.waterjet.toolpath;

import dev.waterjet.part.BoxTree;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.EdgeTree;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Finds the stretches of a contour that an offset does not reach: inner corners, and places too narrow for the jet. */
final class OffsetFit {

    /** Stretches shorter than this are rounding. */
    private static final double SHORT_M = 1e-7;

    /** An inner corner that leaves more than this, in offsets, is a narrow place, unless two edges alone form it. */
    private static final double MAX_CORNER_DEPTH = 3;

    /** Turns within this of half a turn are a slot, not a corner. */
    private static final double SLOT_RAD = 0.02;

    /** Places of each edge at which the width of a passage is measured. */
    private static final int PROBES = 4;

    private final Contour contour;
    private final BoxTree.Walk walk;
    private final ElementCrossing crossing = new ElementCrossing();
    private final int side;
    private final double[] offset;
    /** Depth of material in an inner corner that may stay. */
    private final double tolerance;

    private final EdgeCursor edge = new EdgeCursor();
    private final EdgeCursor next = new EdgeCursor();

    /** Stretches of the contour in reach, as edge plus share, by where they start. */
    private double[][] reached = {};

    /**
     * A stretch of the contour that is out of reach.
     *
     * @param from where it starts, as edge plus share
     * @param to where it ends; above the number of edges where it goes over the start
     * @param lengthM its length
     * @param depthM largest distance of it from the jet in the corner
     * @param isCorner whether it is an inner corner, which comes out round
     */
    record Stretch(double from, double to, double lengthM, double depthM, boolean isCorner) {}

    OffsetFit(EdgeTree tree, int side, double[] offset, double tolerance) {
        this.tolerance = tolerance;
        this.contour = tree.contour();
        this.walk = tree.walk();
        this.side = side;
        this.offset = offset;
    }

    /** Stretches out of reach of some chains of slices. */
    List<Stretch> stretches(OffsetElements elements, OffsetSlices slices, List<int[]> chains) {
        List<double[]> intervals = new ArrayList<>();
        for (int[] chain : chains) {
            for (int slice : chain) {
                int element = slices.element[slice];
                if (!elements.isCorner[element]) {
                    double base = elements.source[element];
                    intervals.add(new double[] {
                        base + elements.shareOf(element, slices.from[slice]),
                        base + elements.shareOf(element, slices.to[slice])
                    });
                }
            }
        }
        reached = intervals.toArray(new double[0][]);
        Arrays.sort(reached, (one, other) -> Double.compare(one[0], other[0]));
        return gaps();
    }

    private List<Stretch> gaps() {
        List<Stretch> stretches = new ArrayList<>();
        int n = contour.size();
        double at = contour.isClosed() ? Double.NaN : 0;
        double first = Double.NaN;
        for (double[] interval : reached) {
            if (Double.isNaN(first)) {
                first = interval[0];
            }
            if (interval[0] > at) {
                add(at, interval[0], stretches);
            }
            at = Double.isNaN(at) ? interval[1] : Math.max(at, interval[1]);
        }
        if (reached.length > 0) {
            add(at, contour.isClosed() ? first + n : n, stretches);
        }
        return stretches;
    }

    private void add(double from, double to, List<Stretch> stretches) {
        double length = length(from, to);
        if (length > SHORT_M) {
            double depth = depth(from, to);
            stretches.add(new Stretch(from, to, length, depth, isCorner(from, to, depth)));
        }
    }

    private double length(double from, double to) {
        double sum = 0;
        for (int i = (int) Math.floor(from); i < to; i++) {
            contour.load(i % contour.size(), edge);
            sum += edge.length() * (Math.min(to, i + 1.0) - Math.max(from, i));
        }
        return sum;
    }

    /** Largest distance of the stretch from the jet where it turns back: at vertices and at the far sides of arcs. */
    private double depth(double from, double to) {
        int first = (int) Math.floor(from) % contour.size();
        double[] jet = jet(from);
        double most = 0;
        for (int i = (int) Math.floor(from); i < to; i++) {
            contour.load(i % contour.size(), edge);
            double start = Math.max(0, from - i);
            double end = Math.min(1, to - i);
            most = Math.max(most, Math.hypot(edge.xAt(start) - jet[0], edge.yAt(start) - jet[1]));
            most = Math.max(most, Math.hypot(edge.xAt(end) - jet[0], edge.yAt(end) - jet[1]));
            if (edge.isArc()) {
                double away = Math.hypot(edge.centreX() - jet[0], edge.centreY() - jet[1]);
                double x = edge.centreX() + edge.radius() * (edge.centreX() - jet[0]) / away;
                double y = edge.centreY() + edge.radius() * (edge.centreY() - jet[1]) / away;
                double share = away > 0 && edge.spans(x, y) ? edge.shareAt(x, y) : start;
                most = share > start && share < end ? Math.max(most, away + edge.radius()) : most;
            }
        }
        return most - offset[first];
    }

    /** The jet opposite a place of the contour. */
    double[] jet(double place) {
        double[] at = point(place);
        return new double[] {at[0] + at[2] * at[4], at[1] + at[3] * at[4]};
    }

    /** Place of the contour: x, y, direction towards the jet, offset. At a vertex that of the edge before it. */
    private double[] point(double place) {
        int i = (int) Math.floor(place);
        boolean isVertex = place == i && (i > 0 || contour.isClosed());
        int n = contour.size();
        return isVertex ? point((i + n - 1) % n, 1) : inside(place);
    }

    /** The same; at a vertex that of the edge after it. */
    private double[] inside(double place) {
        int i = (int) Math.floor(place);
        return point(i, place - i);
    }

    private double[] point(int i, double share) {
        int n = contour.size();
        contour.load(i % n, next);
        return new double[] {
            next.xAt(share),
            next.yAt(share),
            -side * next.directionYAt(share),
            side * next.directionXAt(share),
            offset[i % n]
        };
    }

    /** Whether the stretch only turns towards the jet, and by less than half a turn. */
    private boolean isCorner(double from, double to, double depth) {
        int n = contour.size();
        int first = (int) Math.floor(from);
        int last = (int) Math.ceil(to) - 1;
        if (depth <= tolerance) {
            return true;
        }
        boolean isOfTwoEdges = last == first + 1;
        double turned = 0;
        for (int i = first; i <= last; i++) {
            contour.load(i % n, edge);
            double swept = side * edge.sweep() * (Math.min(1, to - i) - Math.max(0, from - i));
            double turn = 0;
            if (i < last) {
                contour.load((i + 1) % n, next);
                turn = side * next.turnFrom(edge);
            }
            // an edge that bends away from the jet still forms a corner with the one that it meets
            if ((swept < -SLOT_RAD && !isOfTwoEdges) || turn < -SLOT_RAD) {
                return false;
            }
            turned += (isOfTwoEdges ? Math.max(0, swept) : swept) + turn;
        }
        return turned < Math.PI - SLOT_RAD && (isOfTwoEdges || depth <= MAX_CORNER_DEPTH * offset[first % n]);
    }

    /** Middle of a stretch: x and y. */
    double[] middle(Stretch stretch) {
        double left = stretch.lengthM() / 2;
        int n = contour.size();
        int i = (int) Math.floor(stretch.from());
        double from = stretch.from() - i;
        while (true) {
            contour.load(i % n, edge);
            double part = edge.length() * (Math.min(1, stretch.to() - i) - from);
            if (left <= part || i + 1 >= stretch.to()) {
                double share = Math.min(1, from + left / edge.length());
                return new double[] {edge.xAt(share), edge.yAt(share)};
            }
            left -= part;
            from = 0;
            i++;
        }
    }

    /** Middle of the passage where the jet has to turn back, and its minimum width: x, y, width. */
    double[] mouth(Stretch stretch) {
        double[] at = inside(stretch.from());
        double width = across(at);
        double least = width;
        int n = contour.size();
        for (int i = (int) Math.floor(stretch.from()); i < stretch.to(); i++) {
            double start = Math.max(0, stretch.from() - i);
            double end = Math.min(1, stretch.to() - i);
            for (int part = 1; part < PROBES; part++) {
                least = Math.min(least, across(inside(i % n + start + (end - start) * part / PROBES)));
            }
        }
        return new double[] {at[0] + at[2] * width / 2, at[1] + at[3] * width / 2, least};
    }

    /** Distance from a place to the opposite side of the passage, along its normal; at most two offsets. */
    private double across(double[] at) {
        double least = 2 * at[4];
        double x = at[0] + SHORT_M * at[2];
        double y = at[1] + SHORT_M * at[3];
        next.line(x, y, at[0] + least * at[2], at[1] + least * at[3]);
        walk.start(next.minimumX(), next.minimumY(), next.maximumX(), next.maximumY());
        for (int i = walk.next(); i >= 0; i = walk.next()) {
            contour.load(i, edge);
            crossing.find(next, edge);
            for (int k = 0; k < crossing.count; k++) {
                least = Math.min(least, Math.hypot(crossing.x[k] - at[0], crossing.y[k] - at[1]));
            }
        }
        return least;
    }
}
