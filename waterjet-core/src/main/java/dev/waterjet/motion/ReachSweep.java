package dev.waterjet.motion;

import java.util.Arrays;

/**
 * Sweep over a path in one direction: the lowest feed of all places that the sweep has entered and whose reach it has not
 * left. Of the places entered, those are kept that are slower than all with a longer reach; so the work is in proportion to
 * the number of places.
 */
final class ReachSweep {

    private static final byte RECOVERY = (byte) FeedLimit.FRONT_RECOVERY.processCode();

    private final PathPlaces places;
    private final double lengthM;
    private final boolean isForward;

    /** Places within reach, the slowest first and the shortest reach first, from head to tail. */
    private int[] kept = new int[16];

    private int head;
    private int tail;

    private int count;
    private double[] untilM;
    private double[] feedMPerS;
    private byte[] code;

    ReachSweep(PathPlaces places, double lengthM, boolean isForward) {
        this.places = places;
        this.lengthM = lengthM;
        this.isForward = isForward;
        this.untilM = new double[places.count() + 4];
        this.feedMPerS = new double[untilM.length];
        this.code = new byte[untilM.length];
    }

    int count() {
        return count;
    }

    /** End of a stretch along the sweep. */
    double untilM(int stretch) {
        return untilM[stretch];
    }

    double feedMPerS(int stretch) {
        return feedMPerS[stretch];
    }

    byte code(int stretch) {
        return code[stretch];
    }

    ReachSweep run() {
        int n = places.count();
        int next = 0;
        double at = 0;
        while (at < lengthM) {
            while (next < n && startM(next) <= at) {
                enter(index(next));
                next++;
            }
            while (reachEndM(kept[head]) <= at) {
                head++;
            }
            int slowest = kept[head];
            double ownEnd = ownEndM(slowest);
            double until = Math.min(next < n ? startM(next) : lengthM, reachEndM(slowest));
            until = Math.min(lengthM, at < ownEnd ? Math.min(until, ownEnd) : until);
            add(until, places.feedMPerS(slowest), at < ownEnd ? places.code(slowest) : codeBeyond(slowest));
            at = until;
        }
        return this;
    }

    private int index(int order) {
        return isForward ? order : places.count() - 1 - order;
    }

    private double startM(int order) {
        int place = index(order);
        return isForward ? places.startM(place) : lengthM - places.endM(place);
    }

    private double ownEndM(int place) {
        return isForward ? places.endM(place) : lengthM - places.startM(place);
    }

    private double reachEndM(int place) {
        return ownEndM(place) + places.reachM(place);
    }

    /** Limit within the reach: that of a slowdown is its own, beside a slower edge the front recovers. */
    private byte codeBeyond(int place) {
        return places.errorM(place) == PathPlaces.NO_ERROR ? RECOVERY : places.code(place);
    }

    private void enter(int place) {
        double feed = places.feedMPerS(place);
        double end = reachEndM(place);
        int position = tail;
        while (position > head && places.feedMPerS(kept[position - 1]) >= feed) {
            position--;
        }
        if (position > head && reachEndM(kept[position - 1]) >= end) {
            return;
        }
        int last = position;
        while (last < tail && reachEndM(kept[last]) <= end) {
            last++;
        }
        replace(position, last, place);
    }

    /** Puts a place in the stead of those from one position to another. */
    private void replace(int from, int to, int place) {
        if (from == to && tail == kept.length) {
            int size = tail - head;
            int[] moved = new int[Math.max(16, 2 * size)];
            System.arraycopy(kept, head, moved, 0, size);
            int shift = head;
            kept = moved;
            head = 0;
            tail = size;
            replace(from - shift, to - shift, place);
            return;
        }
        System.arraycopy(kept, to, kept, from + 1, tail - to);
        kept[from] = place;
        tail += from + 1 - to;
    }

    private void add(double until, double feed, byte why) {
        if (count > 0 && feedMPerS[count - 1] == feed && code[count - 1] == why) {
            untilM[count - 1] = until;
            return;
        }
        if (count == untilM.length) {
            untilM = Arrays.copyOf(untilM, 2 * count);
            feedMPerS = Arrays.copyOf(feedMPerS, 2 * count);
            code = Arrays.copyOf(code, 2 * count);
        }
        untilM[count] = until;
        feedMPerS[count] = feed;
        code[count] = why;
        count++;
    }
}
