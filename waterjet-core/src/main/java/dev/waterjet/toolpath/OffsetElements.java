package dev.waterjet.toolpath;

import dev.waterjet.part.EdgeCursor;
import java.util.Arrays;

/**
 * Lines and arcs of which an offset may consist, before what lies too near is taken away: images of edges, arcs and
 * extensions at corners, ramps. In metres.
 */
final class OffsetElements {

    private static final int NUMBERS = 7;

    private double[] geometry = new double[NUMBERS * 16];
    /** Edge of the contour; for a corner the edge before it. */
    int[] source = new int[16];

    /** Whether it goes around the vertex at the end of an edge; else it lies along an edge. */
    boolean[] isCorner = new boolean[16];

    /** Stretch of the edge whose image this is, as shares of its length. */
    double[] fromShare = new double[16];

    double[] toShare = new double[16];
    int size;

    void add(EdgeCursor shape, int sourceEdge, boolean isAroundVertex, double from, double to) {
        if (size == source.length) {
            int capacity = 2 * size;
            geometry = Arrays.copyOf(geometry, NUMBERS * capacity);
            source = Arrays.copyOf(source, capacity);
            isCorner = Arrays.copyOf(isCorner, capacity);
            fromShare = Arrays.copyOf(fromShare, capacity);
            toShare = Arrays.copyOf(toShare, capacity);
        }
        put(size, shape);
        source[size] = sourceEdge;
        isCorner[size] = isAroundVertex;
        fromShare[size] = from;
        toShare[size] = to;
        size++;
    }

    private void put(int i, EdgeCursor shape) {
        int at = NUMBERS * i;
        geometry[at] = shape.startX();
        geometry[at + 1] = shape.startY();
        geometry[at + 2] = shape.endX();
        geometry[at + 3] = shape.endY();
        geometry[at + 4] = shape.centreX();
        geometry[at + 5] = shape.centreY();
        geometry[at + 6] = shape.sweep();
    }

    void load(int i, EdgeCursor shape) {
        int at = NUMBERS * i;
        if (geometry[at + 6] == 0) {
            shape.line(geometry[at], geometry[at + 1], geometry[at + 2], geometry[at + 3]);
        } else {
            shape.arc(
                    geometry[at],
                    geometry[at + 1],
                    geometry[at + 2],
                    geometry[at + 3],
                    geometry[at + 4],
                    geometry[at + 5],
                    geometry[at + 6]);
        }
    }

    /** Share of the source edge at a share of the element. */
    double shareOf(int i, double part) {
        return fromShare[i] + part * (toShare[i] - fromShare[i]);
    }

    double[] boxes(double margin) {
        double[] boxes = new double[4 * size];
        EdgeCursor shape = new EdgeCursor();
        for (int i = 0; i < size; i++) {
            load(i, shape);
            boxes[4 * i] = shape.minimumX() - margin;
            boxes[4 * i + 1] = shape.minimumY() - margin;
            boxes[4 * i + 2] = shape.maximumX() + margin;
            boxes[4 * i + 3] = shape.maximumY() + margin;
        }
        return boxes;
    }
}
