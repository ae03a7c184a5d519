package dev.waterjet.simulate;

import java.util.Arrays;

/** Pieces of a path at a constant acceleration each, collected in order; in m, s. */
final class FeedPieces {

    private static final double ROUNDING = 1e-9;

    private int count;
    private double[] distance = new double[17];
    private double[] start = new double[16];
    private double[] end = new double[16];

    /** Adds a piece; one without a length is left out. */
    void add(double lengthM, double startMPerS, double endMPerS) {
        double before = distance[count];
        if (!(before + lengthM > before) || !(startMPerS + endMPerS > 0)) {
            return;
        }
        if (count == start.length) {
            distance = Arrays.copyOf(distance, 2 * count + 1);
            start = Arrays.copyOf(start, 2 * count);
            end = Arrays.copyOf(end, 2 * count);
        }
        start[count] = startMPerS;
        end[count] = endMPerS;
        distance[++count] = before + lengthM;
    }

    /**
     * Adds a block that is entered and left at two feeds, reaches a third one and takes a time. The acceleration a follows
     * from the time: {@code t = l/v + ((v - v0)^2 + (v - v1)^2)/(2 v a)}. Where its ramps are longer than the block, as they
     * can be under a limit of jerk, the block runs at its mean feed.
     */
    void addBlock(double lengthM, double entry, double peak, double exit, double timeS) {
        double squares = (peak - entry) * (peak - entry) + (peak - exit) * (peak - exit);
        double ramps = timeS - lengthM / peak;
        if (ramps <= ROUNDING * timeS || squares <= ROUNDING * peak * peak) {
            add(lengthM, lengthM / timeS, lengthM / timeS);
            return;
        }
        double twice = squares / (peak * ramps);
        double up = (peak - entry) * (peak + entry) / twice;
        double down = (peak - exit) * (peak + exit) / twice;
        if (up + down > lengthM * (1 + ROUNDING)) {
            add(lengthM, lengthM / timeS, lengthM / timeS);
            return;
        }
        add(up, entry, peak);
        add(lengthM - up - down, peak, peak);
        add(down, peak, exit);
    }

    double[] distances() {
        return Arrays.copyOf(distance, count + 1);
    }

    double[] starts() {
        return Arrays.copyOf(start, count);
    }

    double[] ends() {
        return Arrays.copyOf(end, count);
    }
}
