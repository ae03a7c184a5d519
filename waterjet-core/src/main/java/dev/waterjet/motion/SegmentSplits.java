package dev.waterjet.motion;

import java.util.Arrays;

/** Pieces into which some spans are cut, each with its feed, in the order of a walk: flat arrays that grow. */
final class SegmentSplits {

    private int count;
    /** How many spans are in pieces. */
    private int spans;

    private int[] span = new int[16];
    private double[] lengthM = new double[16];
    private double[] frontMPerS = new double[16];
    private byte[] frontLimit = new byte[16];

    /** Adds a piece; those of one span come one after the other. */
    void add(int ofSpan, double length, double front, byte limit) {
        if (count == span.length) {
            int room = 2 * count;
            span = Arrays.copyOf(span, room);
            lengthM = Arrays.copyOf(lengthM, room);
            frontMPerS = Arrays.copyOf(frontMPerS, room);
            frontLimit = Arrays.copyOf(frontLimit, room);
        }
        if (count == 0 || span[count - 1] != ofSpan) {
            spans++;
        }
        span[count] = ofSpan;
        lengthM[count] = length;
        frontMPerS[count] = front;
        frontLimit[count] = limit;
        count++;
    }

    int count() {
        return count;
    }

    int spans() {
        return spans;
    }

    int span(int index) {
        return span[index];
    }

    double lengthM(int index) {
        return lengthM[index];
    }

    double frontMPerS(int index) {
        return frontMPerS[index];
    }

    byte frontLimit(int index) {
        return frontLimit[index];
    }
}
