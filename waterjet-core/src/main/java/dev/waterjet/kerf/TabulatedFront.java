package dev.waterjet.kerf;

import java.util.Arrays;
import java.util.Objects;

/**
 * Cut front of any feed model: the upper concave hull of its lag over the feed, sampled up to the feed that just
 * separates the workpiece.
 *
 * <p>Where neighbouring samples are both corners of the hull, the lag is that of the feed model itself; elsewhere it is
 * the chord. Faster feeds, which do not cut through, follow the power law of the last corner. A nozzle that stands for
 * ever leaves the lag of the feed zero, which is above zero where the separation depth is bounded.
 */
final class TabulatedFront extends CutFront {

    private static final int SAMPLES = 4000;
    /** Slowest sample over the feed that separates the workpiece. */
    private static final double SLOWEST = 1e-6;
    /** A lag this much below the hull is not that of the hull. */
    private static final double TOUCHING = 1e-6;

    private final FrontLaw law;

    /** Corners of the hull by feed; the first at feed zero. */
    private final double[] feeds;

    private final double[] lags;
    /** Slope of the lag at each corner: falling. */
    private final double[] slopes;
    /** Sample that each corner is; -1 for feed zero. */
    private final int[] samples;
    /** For each step from a sample to the next, the last corner at or before the sample. */
    private final int[] cornerOfStep = new int[SAMPLES];

    private final double logSlowest;
    private final double logStep;
    private final PowerLawFront faster;

    TabulatedFront(double lagCoefficient, double thicknessM, FrontLaw law) {
        super(lagCoefficient, thicknessM);
        this.law = law;
        double fastest = law.feedOfDepth().applyAsDouble(thicknessM);
        this.logSlowest = Math.log(fastest * SLOWEST);
        this.logStep = -Math.log(SLOWEST) / (SAMPLES - 1);
        double[] feed = new double[SAMPLES + 1];
        double[] lag = new double[SAMPLES + 1];
        for (int i = 0; i < SAMPLES; i++) {
            feed[i + 1] = i == SAMPLES - 1 ? fastest : Math.exp(logSlowest + i * logStep);
            lag[i + 1] = modelLag(feed[i + 1]);
        }
        lag[0] = Math.max(0, lag[1] * (1 - exponent(lag, 1)));
        int[] corners = ConcaveHull.corners(feed, lag);
        this.feeds = Arrays.stream(corners).mapToDouble(i -> feed[i]).toArray();
        this.lags = Arrays.stream(corners).mapToDouble(i -> lag[i]).toArray();
        this.samples = Arrays.stream(corners).map(i -> i - 1).toArray();
        this.slopes = slopes(lag);
        for (int i = 0, corner = 0; i < SAMPLES; i++) {
            corner += corner + 1 < samples.length && samples[corner + 1] <= i ? 1 : 0;
            cornerOfStep[i] = corner;
        }
        int last = feeds.length - 1;
        double n = Math.min(1, slopes[last] * fastest / lags[last]);
        this.faster = new PowerLawFront(
                lagCoefficient, thicknessM, 1 / n, lagCoefficient / lags[last] * Math.pow(fastest, n));
    }

    private double modelLag(double feedMPerS) {
        return lagCoefficient() / law.depthOfFeed().applyAsDouble(feedMPerS);
    }

    /** Local exponent of the lag over the feed at a sample. */
    private double exponent(double[] lag, int at) {
        int before = Math.max(1, at - 1);
        int after = Math.min(SAMPLES, at + 1);
        return Math.log(lag[after] / lag[before]) / ((after - before) * logStep);
    }

    /** The model's own slope at each corner, kept between those of the chords on both sides. */
    private double[] slopes(double[] lag) {
        double[] found = new double[feeds.length];
        double before = Double.POSITIVE_INFINITY;
        for (int i = 0; i < found.length; i++) {
            double after = i + 1 < found.length ? (lags[i + 1] - lags[i]) / (feeds[i + 1] - feeds[i]) : 0;
            double own = i == 0 ? after : exponent(lag, samples[i] + 1) * lags[i] / feeds[i];
            found[i] = Math.min(before, Math.max(after, own));
            before = after;
        }
        return found;
    }

    @Override
    public double separationDepthSi(double feedMPerS) {
        return law.depthOfFeed().applyAsDouble(feedMPerS);
    }

    @Override
    public double separationFeedSi(double depthM) {
        return law.feedOfDepth().applyAsDouble(depthM);
    }

    private boolean isFaster(double feedMPerS) {
        return feedMPerS >= feeds[feeds.length - 1];
    }

    /** Last corner at or before a feed below the fastest. */
    private int corner(double feedMPerS) {
        int step = (int) Math.floor((Math.log(feedMPerS) - logSlowest) / logStep);
        return step < 0 ? 0 : Math.min(cornerOfStep[Math.min(step, SAMPLES - 1)], feeds.length - 2);
    }

    private boolean isChord(int corner) {
        return samples[corner + 1] - samples[corner] > 1 || corner == 0;
    }

    @Override
    double unitLag(double feedMPerS) {
        if (isFaster(feedMPerS)) {
            return faster.unitLag(feedMPerS);
        }
        int i = corner(feedMPerS);
        return isChord(i) ? lags[i] + (feedMPerS - feeds[i]) * chordSlope(i) : modelLag(feedMPerS);
    }

    private double chordSlope(int corner) {
        return (lags[corner + 1] - lags[corner]) / (feeds[corner + 1] - feeds[corner]);
    }

    @Override
    double feedForUnitLag(double lagPerM) {
        int last = lags.length - 1;
        if (lagPerM >= lags[last]) {
            return faster.feedForUnitLag(lagPerM);
        }
        int i = Math.min(last - 1, floor(lags, lagPerM));
        if (i < 0) {
            return 0;
        }
        return isChord(i)
                ? feeds[i] + (lagPerM - lags[i]) / chordSlope(i)
                : separationFeedSi(lagCoefficient() / lagPerM);
    }

    private static int floor(double[] ascending, double value) {
        int at = Arrays.binarySearch(ascending, value);
        return at >= 0 ? at : -at - 2;
    }

    @Override
    double unitTravelTime(double feedMPerS) {
        if (isFaster(feedMPerS)) {
            return faster.unitTravelTime(feedMPerS);
        }
        int i = corner(feedMPerS);
        if (isChord(i)) {
            return chordSlope(i);
        }
        double share = Math.log(feedMPerS / feeds[i]) / Math.log(feeds[i + 1] / feeds[i]);
        return slopes[i] * Math.pow(slopes[i + 1] / slopes[i], share);
    }

    /** Greatest L(v) - theta v: at a corner, or within a step of the model itself. */
    @Override
    double unitShortfall(double elapsedS) {
        int last = slopes.length - 1;
        if (!(elapsedS > slopes[last])) {
            return faster.unitShortfall(elapsedS);
        }
        if (elapsedS >= slopes[0]) {
            return lags[0];
        }
        int i = cornerOfSlope(elapsedS);
        double most = Math.max(lags[i] - elapsedS * feeds[i], lags[i + 1] - elapsedS * feeds[i + 1]);
        if (!isChord(i) && slopes[i] > slopes[i + 1]) {
            double share = Math.log(elapsedS / slopes[i]) / Math.log(slopes[i + 1] / slopes[i]);
            double feed = feeds[i] * Math.pow(feeds[i + 1] / feeds[i], share);
            most = Math.max(most, modelLag(feed) - elapsedS * feed);
        }
        return most;
    }

    /** Corner i with slope i above a slope and slope i + 1 not above it. */
    private int cornerOfSlope(double slope) {
        int low = 0;
        int high = slopes.length - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (slopes[middle] > slope) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    @Override
    boolean isConcaveAt(double feedMPerS) {
        return isFaster(feedMPerS) || unitLag(feedMPerS) <= modelLag(feedMPerS) * (1 + TOUCHING);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TabulatedFront that
                && lagCoefficient() == that.lagCoefficient()
                && thicknessSi() == that.thicknessSi()
                && Arrays.equals(feeds, that.feeds)
                && Arrays.equals(lags, that.lags);
    }

    @Override
    public int hashCode() {
        return Objects.hash(lagCoefficient(), thicknessSi(), Arrays.hashCode(lags));
    }

    @Override
    public String toString() {
        return "cut front from a table of " + feeds.length + " feed rates";
    }
}
