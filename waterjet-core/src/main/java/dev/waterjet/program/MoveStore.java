package dev.waterjet.program;

import java.util.Arrays;

/** Moves of a program in growing arrays, so that a long program costs no object a move. */
final class MoveStore {

    private int size;
    private int[] line = new int[64];
    private ProgramMove.Shape[] shape = new ProgramMove.Shape[64];
    private double[] coordinates = new double[64 * 6];
    private int[] feedFrom = new int[64];
    private int[] feedTo = new int[64];
    private boolean[] isInch = new boolean[64];

    int size() {
        return size;
    }

    void add(ProgramMove move, int feedFrom, int feedTo, boolean isInch) {
        if (size == line.length) {
            int larger = size * 2;
            line = Arrays.copyOf(line, larger);
            shape = Arrays.copyOf(shape, larger);
            coordinates = Arrays.copyOf(coordinates, larger * 6);
            this.feedFrom = Arrays.copyOf(this.feedFrom, larger);
            this.feedTo = Arrays.copyOf(this.feedTo, larger);
            this.isInch = Arrays.copyOf(this.isInch, larger);
        }
        line[size] = move.line();
        shape[size] = move.shape();
        int at = size * 6;
        coordinates[at] = move.startX();
        coordinates[at + 1] = move.startY();
        coordinates[at + 2] = move.endX();
        coordinates[at + 3] = move.endY();
        coordinates[at + 4] = move.centreX();
        coordinates[at + 5] = move.centreY();
        this.feedFrom[size] = feedFrom;
        this.feedTo[size] = feedTo;
        this.isInch[size] = isInch;
        size++;
    }

    ProgramMove get(int index) {
        int at = index * 6;
        return new ProgramMove(
                line[index],
                shape[index],
                coordinates[at],
                coordinates[at + 1],
                coordinates[at + 2],
                coordinates[at + 3],
                coordinates[at + 4],
                coordinates[at + 5]);
    }

    double startX(int index) {
        return coordinates[index * 6];
    }

    double startY(int index) {
        return coordinates[index * 6 + 1];
    }

    double endX(int index) {
        return coordinates[index * 6 + 2];
    }

    double endY(int index) {
        return coordinates[index * 6 + 3];
    }

    int line(int index) {
        return line[index];
    }

    /** Offset in the text where the feed word of a move stands or belongs. */
    int feedFrom(int index) {
        return feedFrom[index];
    }

    /** Offset behind the feed word that the move has; equal to {@link #feedFrom} if it has none. */
    int feedTo(int index) {
        return feedTo[index];
    }

    boolean isInch(int index) {
        return isInch[index];
    }
}
