package dev.waterjet.kerf;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;

/**
 * Position of the front at one depth while the nozzle moves: {@code X(t) = max over t0 of s(t0) - C(t - t0)}.
 *
 * <p>C falls and is convex, so within a piece of constant feed the best t0 is known: one travel time ago, if that lies in
 * the piece, and otherwise the end of the piece. And the later of two places, once it is the better one, stays so: the best
 * t0 never goes back. A search for many times therefore finds the best piece for the middle one, and looks for the earlier
 * times only before it and for the later ones only behind it.
 */
final class FrontMotion {

    private final CutFront front;
    private final NozzleMotion motion;
    private final double depthM;
    private final double[] travelTimeS;
    private final double[] lagM;

    /** The best place that the last search found. */
    private int bestPiece;

    FrontMotion(CutFront front, NozzleMotion motion, double depthM) {
        this.front = front;
        this.motion = motion;
        this.depthM = depthM;
        this.travelTimeS = new double[motion.pieces() + 1];
        this.lagM = new double[motion.pieces() + 1];
        for (int i = 0; i < lagM.length; i++) {
            double feed = motion.feed(i);
            travelTimeS[i] = feed > 0 ? front.travelTimeSi(feed, depthM) : Double.POSITIVE_INFINITY;
            lagM[i] = front.lagSi(feed, depthM);
        }
    }

    double position(double timeS) {
        return search(timeS, 0, motion.pieces());
    }

    void positions(double[] timesS, double[] positionsM) {
        Require.atLeast("space for positions", positionsM.length, timesS.length, Units.ONE, "one for each time");
        for (int i = 1; i < timesS.length; i++) {
            Require.atLeast("time", timesS[i], timesS[i - 1], Units.SECOND, "times ascend");
        }
        positions(timesS, positionsM, 0, timesS.length, 0, motion.pieces());
    }

    private void positions(double[] timesS, double[] positionsM, int from, int to, int firstPiece, int lastPiece) {
        if (from >= to) {
            return;
        }
        int middle = (from + to) >>> 1;
        positionsM[middle] = search(timesS[middle], firstPiece, lastPiece);
        int best = bestPiece;
        positions(timesS, positionsM, from, middle, firstPiece, best);
        positions(timesS, positionsM, middle + 1, to, best, lastPiece);
    }

    /** The maximum position from any place in some pieces; no place gives more than its own position. */
    private double search(double timeS, int firstPiece, int lastPiece) {
        double best = Double.NEGATIVE_INFINITY;
        bestPiece = firstPiece;
        for (int i = lastPiece; i >= firstPiece && motion.endWay(i) > best; i--) {
            double position = position(i, timeS);
            if (position > best) {
                best = position;
                bestPiece = i;
            }
        }
        return best;
    }

    /** The maximum position from a place in one piece; nothing if an earlier piece has a better place. */
    private double position(int piece, double timeS) {
        if (piece == 0 && motion.feed(0) == 0) {
            return 0;
        }
        double placeS = timeS - travelTimeS[piece];
        double endS = motion.endTime(piece);
        if (placeS > endS) {
            return motion.endWay(piece) - front.shortfallSi(depthM, timeS - endS);
        }
        if (piece > 0 && placeS < motion.endTime(piece - 1)) {
            return Double.NEGATIVE_INFINITY;
        }
        return motion.endWay(piece) - motion.feed(piece) * (endS - timeS) - lagM[piece];
    }
}
