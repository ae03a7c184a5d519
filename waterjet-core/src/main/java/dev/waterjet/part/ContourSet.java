package dev.waterjet.part;

import dev.waterjet.measure.Message;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Holes and outline of a part with their boxes in a tree: of many contours, only near ones are compared edge by edge. */
final class ContourSet {

    private final List<Contour> holes;
    private final Contour outline;
    private final double[] boxes;
    private final @Nullable EdgeTree[] trees;

    ContourSet(Contour outline, List<Contour> holes) {
        this.outline = outline;
        this.holes = holes;
        this.boxes = BoxTree.boxesSi(holes);
        this.trees = new EdgeTree[holes.size() + 1];
    }

    /** Edges of a hole, or of the outline after the last hole. */
    private EdgeTree tree(int contour) {
        EdgeTree tree = trees[contour];
        if (tree == null) {
            tree = EdgeTree.of(contour < holes.size() ? holes.get(contour) : outline);
            trees[contour] = tree;
        }
        return tree;
    }

    /** Refuses a hole that crosses itself, does not lie inside the outline, or meets another one. */
    void requireHolesInside() {
        outline.requireClosed().requireSimple();
        BoxTree.Walk near = BoxTree.ofSi(boxes).walk();
        for (int i = 0; i < holes.size(); i++) {
            Contour hole = holes.get(i).requireClosed().requireSimple();
            if (!outline.isAround(hole.start()) || tree(i).clearance(tree(holes.size())) == 0) {
                throw refused(
                        hole,
                        Message.of("hole-outside", "hole {hole} does not lie inside the outline")
                                .with("hole", label(i)));
            }
            int first = i;
            startWithin(near, i, 0);
            for (int j = near.next(); j >= 0; j = near.next()) {
                first = j < first && isMeeting(i, j) ? j : first;
            }
            if (first < i) {
                throw refused(
                        hole,
                        Message.of("holes-meet", "hole {hole} meets hole {other}")
                                .with("hole", label(i))
                                .with("other", label(first)));
            }
        }
    }

    private boolean isMeeting(int i, int j) {
        return holes.get(j).isAround(holes.get(i).start())
                || holes.get(i).isAround(holes.get(j).start())
                || tree(i).clearance(tree(j)) == 0;
    }

    private static GeometryException refused(Contour hole, Message message) {
        Point start = hole.start();
        return new GeometryException(hole, 0, start.xSi(), start.ySi(), message);
    }

    private String label(int index) {
        Contour hole = holes.get(index);
        return hole.name().isEmpty() ? Integer.toString(index) : hole.label();
    }

    /** The shortest distance between two contours, in m. */
    double minimumClearance() {
        double least = Double.POSITIVE_INFINITY;
        BoxTree.Walk rim = tree(holes.size()).walk();
        for (int i = 0; i < holes.size(); i++) {
            least = nearest(i, holes.size(), rim, least);
        }
        BoxTree.Walk near = BoxTree.ofSi(boxes).walk();
        for (int i = 0; i < holes.size(); i++) {
            startWithin(near, i, least);
            for (int j = near.next(); j >= 0; j = near.next()) {
                if (j < i) {
                    least = nearest(i, j, tree(j).walk(), least);
                }
            }
        }
        return least;
    }

    private void startWithin(BoxTree.Walk near, int i, double margin) {
        near.start(
                boxes[4 * i] - margin, boxes[4 * i + 1] - margin, boxes[4 * i + 2] + margin, boxes[4 * i + 3] + margin);
    }

    /** Distance of the edges of a contour from another one, or a bound if that is less. */
    private double nearest(int contour, int other, BoxTree.Walk walk, double bound) {
        Contour edges = holes.get(contour);
        EdgeCursor edge = new EdgeCursor();
        double least = bound;
        for (int e = 0; e < edges.size() && least > 0; e++) {
            edges.load(e, edge);
            least = tree(other).distance(edge, least, walk);
        }
        return least;
    }
}
