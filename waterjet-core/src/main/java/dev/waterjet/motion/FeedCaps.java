package dev.waterjet.motion;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Arrays;

/**
 * Maximum feed of the process over the distance along the path: constant on stretches that follow one another. A stretch
 * without length caps the feed at one place.
 */
final class FeedCaps {

    private int count;
    private double[] untilM = new double[4];
    private double[] feedMPerS = new double[4];
    private byte[] code = new byte[4];

    /** One cap for the whole path. */
    static FeedCaps same(double feedMPerS, int code) {
        return new FeedCaps().until(Double.POSITIVE_INFINITY, feedMPerS, code);
    }

    /**
     * Adds the next stretch.
     *
     * @param endM distance of its end from the start of the path, not below that of the stretch before
     * @param feed maximum feed, above 0 and finite
     * @param why code of the reason, from 0 to {@link GoverningLimit#FIRST_CODE}, which results return
     */
    FeedCaps until(double endM, double feed, int why) {
        Require.positive("maximum feed of the process", feed, Units.MILLIMETRE_PER_MINUTE);
        double least = count == 0 ? 0 : untilM[count - 1];
        if (!(endM >= least)) {
            throw new DomainException(
                    "end of a stretch of the path",
                    endM,
                    "at least",
                    least,
                    Units.MILLIMETRE,
                    "stretches follow in order");
        }
        if (count == untilM.length) {
            untilM = Arrays.copyOf(untilM, 2 * count);
            feedMPerS = Arrays.copyOf(feedMPerS, 2 * count);
            code = Arrays.copyOf(code, 2 * count);
        }
        untilM[count] = endM;
        feedMPerS[count] = feed;
        code[count] = (byte) why;
        count++;
        return this;
    }

    int count() {
        return count;
    }

    double untilM(int stretch) {
        return untilM[stretch];
    }

    double feedMPerS(int stretch) {
        return feedMPerS[stretch];
    }

    byte code(int stretch) {
        return code[stretch];
    }
}
