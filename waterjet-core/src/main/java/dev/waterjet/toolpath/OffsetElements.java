package dev.waterjet.toolpath;

import dev.waterjet.part.EdgeCursor;
import java.util.Arrays;

/**
 * Lines and arcs of which an offset may consist, before what lies too near is taken away: images of edges, arcs and
 * extensions at corners, ramps. In metres.
 */
final class OffsetElements {

    /** Image of an edge. */
    static final byte EDGE = 0;

    /** Arc or line around the vertex at the end of an edge. */
    static final byte CORNER = 1;

    /** Transition between two offsets, along an edge. */
    static final byte RAMP = 2;

    private static final int NUMBERS = 7;

    private double[] geometry = new double[NUMBERS * 16];
    /** Edge of the contour; for a corner the edge before it. */
    int[] source = new int[16];

    byte[] kind = new byte[16];
    /** Stretch of the edge whose image this is, as shares of its length. */
    double[] fromShare = new double[16];

    double[] toShare = new double[16];
    int size;

    void add(EdgeCursor shape, int sourceEdge, byte kindOf, double from, double to) {
        if (size == source.length) {
            int capacity = 2 * size;
            geometry = Arrays.copyOf(geometry, NUMBERS * capacity);
            source = Arrays.copyOf(source, capacity);
            kind = Arrays.copyOf(kind, capacity);
            fromShare = Arrays.copyOf(fromShare, capacity);
            toShare = Arrays.copyOf(toShare, capacity);
        }
        put(size, shape);
        source[size] = sourceEdge;
        kind[size] = kindOf;
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

    /** Cuts an element down to a stretch of itself between two points. */
    void trim(int i, double fromPart, double toPart, double x0, double y0, double x1, double y1) {
        EdgeCursor shape = new EdgeCursor();
        load(i, shape);
        if (shape.isArc()) {
            shape.arc(x0, y0, x1, y1, shape.centreX(), shape.centreY(), shape.sweep() * (toPart - fromPart));
        } else {
            shape.line(x0, y0, x1, y1);
        }
        put(i, shape);
        double from = shareOf(i, fromPart);
        toShare[i] = shareOf(i, toPart);
        fromShare[i] = from;
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
