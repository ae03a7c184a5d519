package dev.waterjet.program;

import java.io.Serializable;
import java.util.Arrays;

/** The cutting blocks of a program, in primitive arrays: where each leads, and where its feed belongs in the text. */
final class ProgramBlocks implements Serializable {

    private static final long serialVersionUID = 1L;

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

    /** What the feed takes the place of, as offsets in the text; both are the same where it is put in. */
    int[] feedFrom = new int[64];

    int[] feedTo = new int[64];

    int count;

    void add(double x, double y, double atX, double atY, int turned, int atLine) {
        if (count == line.length) {
            int room = count * 2;
            endX = Arrays.copyOf(endX, room);
            endY = Arrays.copyOf(endY, room);
            centreX = Arrays.copyOf(centreX, room);
            centreY = Arrays.copyOf(centreY, room);
            turn = Arrays.copyOf(turn, room);
            isInch = Arrays.copyOf(isInch, room);
            line = Arrays.copyOf(line, room);
            feedFrom = Arrays.copyOf(feedFrom, room);
            feedTo = Arrays.copyOf(feedTo, room);
        }
        endX[count] = x;
        endY[count] = y;
        centreX[count] = atX;
        centreY[count] = atY;
        turn[count] = (byte) turned;
        line[count] = atLine;
        count++;
    }

    /** Says where the feed of the last block belongs. */
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
}
