package dev.waterjet.program;

/**
 * Closed loop of a cut, in blocks counted from 0 within the cut. It can start and end within a block, where the path crosses
 * or touches its first edges.
 *
 * @param first block in which it starts
 * @param end block after that in which it ends
 * @param x x of the place where it closes, in m
 * @param y y of that place
 * @param startsWithin whether a stretch of the first block lies before it
 * @param endsWithin whether a stretch of the last block lies beyond it
 * @param pierceFrom first block of a moving pierce before it
 * @param pierceEnd block after the moving pierce; the same if there is none
 */
record Loop(
        int first,
        int end,
        double x,
        double y,
        boolean startsWithin,
        boolean endsWithin,
        int pierceFrom,
        int pierceEnd) {

    Loop withPierce(int from, int pierceEndBlock) {
        return new Loop(first, end, x, y, startsWithin, endsWithin, from, pierceEndBlock);
    }

    boolean isBefore(Loop other) {
        return end <= other.first;
    }
}
