package dev.waterjet.program;

import java.util.Arrays;

/** Cutting blocks of a program in primitive arrays: end points, arcs, and the place of each feed word in the text. */
final class ProgramBlocks {

    /** End of each block in m, and the centre of its arc. */
    double[] endX = new double[64];

    double[] endY = new double[64];
    double[] centreX = new double[64];
    double[] centreY = new double[64];

    /** 0 for a line, 1 for an arc to the left, -1 for one to the right. */
    byte[] turn = new byte[64];

    boolean[] isInch = new boolean[64];

    /** Line of the text, from 1. */
    int[] line = new int[64];

    /** Offsets in the text that the feed word replaces; equal where it is inserted. */
    int[] feedFrom = new int[64];

    int[] feedTo = new int[64];

    int count;

    void add(double x, double y, double atX, double atY, int turned, int atLine) {
        if (count == line.length) {
            int capacity = count * 2;
            endX = Arrays.copyOf(endX, capacity);
            endY = Arrays.copyOf(endY, capacity);
            centreX = Arrays.copyOf(centreX, capacity);
            centreY = Arrays.copyOf(centreY, capacity);
            turn = Arrays.copyOf(turn, capacity);
            isInch = Arrays.copyOf(isInch, capacity);
            line = Arrays.copyOf(line, capacity);
            feedFrom = Arrays.copyOf(feedFrom, capacity);
            feedTo = Arrays.copyOf(feedTo, capacity);
        }
        endX[count] = x;
        endY[count] = y;
        centreX[count] = atX;
        centreY[count] = atY;
        turn[count] = (byte) turned;
        line[count] = atLine;
        count++;
    }

    /** Sets the place of the feed word of the last block. */
    void feedOfLast(boolean inInches, int from, int to) {
        isInch[count - 1] = inInches;
        feedFrom[count - 1] = from;
        feedTo[count - 1] = to;
    }

    void trim() {
        endX = Arrays.copyOf(endX, count);
        endY = Arrays.copyOf(endY, count);
        centreX = Arrays.copyOf(centreX, count);
        centreY = Arrays.copyOf(centreY, count);
        turn = Arrays.copyOf(turn, count);
        isInch = Arrays.copyOf(isInch, count);
        line = Arrays.copyOf(line, count);
        feedFrom = Arrays.copyOf(feedFrom, count);
        feedTo = Arrays.copyOf(feedTo, count);
    }

    /** Whether the blocks of a range have the same geometry in other blocks. */
    boolean equalWithin(ProgramBlocks other, int from, int end, int otherEnd) {
        return Arrays.equals(endX, from, end, other.endX, from, otherEnd)
                && Arrays.equals(endY, from, end, other.endY, from, otherEnd)
                && Arrays.equals(centreX, from, end, other.centreX, from, otherEnd)
                && Arrays.equals(centreY, from, end, other.centreY, from, otherEnd)
                && Arrays.equals(turn, from, end, other.turn, from, otherEnd)
                && Arrays.equals(line, from, end, other.line, from, otherEnd);
    }
}
