package dev.waterjet.program;

import dev.waterjet.part.EdgeCursor;
import java.util.Arrays;

/** Cutting blocks of a program in primitive arrays: geometry, and what a new text of the block depends on. */
final class ProgramBlocks {

    /** Flags of a block. */
    static final byte INCH = 1;

    static final byte INCREMENTAL = 2;
    static final byte CENTRE_ABSOLUTE = 4;
    static final byte COMPENSATED = 8;

    /** A kerf offset starts in this block. */
    static final byte OFFSET_STARTS = 16;

    /** Start and end of each block in m, and the centre of its arc. */
    double[] startX = new double[64];

    double[] startY = new double[64];
    double[] endX = new double[64];
    double[] endY = new double[64];
    double[] centreX = new double[64];
    double[] centreY = new double[64];

    /** Origin of the program's coordinates. */
    double[] originX = new double[64];

    double[] originY = new double[64];

    /** 0 for a line, 1 for an arc to the left, -1 for one to the right. */
    byte[] turn = new byte[64];

    byte[] flags = new byte[64];

    /** Line of the text, from 1, as its author counts. */
    int[] line = new int[64];

    /** Offsets of the line in the text. */
    int[] lineFrom = new int[64];

    int[] lineTo = new int[64];

    /** Offsets in the text that the feed word replaces; equal where it is inserted. */
    int[] feedFrom = new int[64];

    int[] feedTo = new int[64];

    /** Feed in force in m/s; zero if the program has stated none. */
    double[] feed = new double[64];

    int count;

    /** Adds a block with its geometry; the caller sets the rest. */
    int add(double fromX, double fromY, double toX, double toY) {
        if (count == line.length) {
            resize(count * 2);
        }
        startX[count] = fromX;
        startY[count] = fromY;
        endX[count] = toX;
        endY[count] = toY;
        return count++;
    }

    void trim() {
        resize(count);
    }

    private void resize(int capacity) {
        startX = Arrays.copyOf(startX, capacity);
        startY = Arrays.copyOf(startY, capacity);
        endX = Arrays.copyOf(endX, capacity);
        endY = Arrays.copyOf(endY, capacity);
        centreX = Arrays.copyOf(centreX, capacity);
        centreY = Arrays.copyOf(centreY, capacity);
        originX = Arrays.copyOf(originX, capacity);
        originY = Arrays.copyOf(originY, capacity);
        turn = Arrays.copyOf(turn, capacity);
        flags = Arrays.copyOf(flags, capacity);
        line = Arrays.copyOf(line, capacity);
        lineFrom = Arrays.copyOf(lineFrom, capacity);
        lineTo = Arrays.copyOf(lineTo, capacity);
        feedFrom = Arrays.copyOf(feedFrom, capacity);
        feedTo = Arrays.copyOf(feedTo, capacity);
        feed = Arrays.copyOf(feed, capacity);
    }

    boolean has(int block, byte flag) {
        return (flags[block] & flag) != 0;
    }

    /** Whether a kerf offset starts or ends in the course of a block. */
    boolean changesOffset(int block) {
        boolean ends = block > 0 && has(block - 1, COMPENSATED) && !has(block, COMPENSATED);
        return ends || has(block, OFFSET_STARTS);
    }

    /** Unit of length of a block, in m. */
    double unitM(int block) {
        return has(block, INCH) ? 0.0254 : 0.001;
    }

    void load(int block, EdgeCursor edge) {
        if (turn[block] == 0) {
            edge.line(startX[block], startY[block], endX[block], endY[block]);
        } else {
            edge.arc(
                    startX[block],
                    startY[block],
                    endX[block],
                    endY[block],
                    centreX[block],
                    centreY[block],
                    ArcGeometry.sweep(
                            startX[block],
                            startY[block],
                            endX[block],
                            endY[block],
                            centreX[block],
                            centreY[block],
                            turn[block]));
        }
    }

    double length(int block) {
        return turn[block] == 0
                ? Math.hypot(endX[block] - startX[block], endY[block] - startY[block])
                : ArcGeometry.length(
                        startX[block],
                        startY[block],
                        endX[block],
                        endY[block],
                        centreX[block],
                        centreY[block],
                        turn[block]);
    }

    /** Whether the blocks of a range have the same geometry in other blocks. */
    boolean equalWithin(ProgramBlocks other, int from, int end, int otherEnd) {
        return Arrays.equals(startX, from, end, other.startX, from, otherEnd)
                && Arrays.equals(startY, from, end, other.startY, from, otherEnd)
                && Arrays.equals(endX, from, end, other.endX, from, otherEnd)
                && Arrays.equals(endY, from, end, other.endY, from, otherEnd)
                && Arrays.equals(centreX, from, end, other.centreX, from, otherEnd)
                && Arrays.equals(centreY, from, end, other.centreY, from, otherEnd)
                && Arrays.equals(turn, from, end, other.turn, from, otherEnd)
                && Arrays.equals(line, from, end, other.line, from, otherEnd);
    }
}
