package dev.waterjet.motion;

import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagGeometry;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * Errors that a slowdown zone leaves on the part, in one setting and within one straight feed: the lag that is left, and the
 * growth of the kerf, since a slow nozzle leaves a larger dose.
 *
 * <p>All formulas are derived from the cut front and the dose; none holds a number that was adjusted. Deviations are
 * counted from the wall of the straight cut at the same depth. Units: m, m/s, rad.
 */
final class SlowdownErrors {

    /** Length of a pass that counts as endless. */
    private static final double ENDLESS_M = 1;

    private static final int DEPTHS = 9;
    private static final double FIRST_DEPTH = 0.02;

    private static final int NOTCH_STEPS = 64;
    /** Reach of the dose in spreads: beyond it less than a part in 10^30 is left. */
    private static final double REACH_IN_SPREADS = 12;

    private static final double NOTCH_IN_SPREADS = 3;

    private static final double RELATIVE_ACCURACY = 1e-14;
    private static final double ACCURACY_M = 1e-18;
    private static final int MAX_EVALUATIONS = 200;

    private final KerfProfile profile;
    private final CutFront front;
    private final RemainingLag remaining;
    private final double straightMPerS;
    private final double thicknessM;
    /** Feed that just separates the workpiece. */
    private final double separationMPerS;

    private final double spreadM;
    private final double exitRadiusM;
    /** Half-width of the straight cut at the exit. */
    private final double exitHalfWidthM;

    private final double[] depthM = new double[DEPTHS];
    private final double[] logSeparation = new double[DEPTHS];
    private final double[] straightHalfWidthM = new double[DEPTHS];

    SlowdownErrors(KerfProfile profile, double straightMPerS, RemainingLag remaining) {
        this.profile = profile;
        this.remaining = remaining;
        this.front = profile.front();
        this.straightMPerS = straightMPerS;
        this.thicknessM = front.thicknessSi();
        this.separationMPerS = front.separationFeedSi(thicknessM);
        this.spreadM = profile.spreadSi();
        this.exitRadiusM = profile.jetRadiusSi(thicknessM);
        this.exitHalfWidthM = profile.halfWidthSi(thicknessM, straightMPerS);
        for (int i = 0; i < DEPTHS; i++) {
            depthM[i] = thicknessM * (FIRST_DEPTH + (1 - FIRST_DEPTH) * i / (DEPTHS - 1));
            logSeparation[i] = Math.log(front.separationFeedSi(depthM[i]));
            straightHalfWidthM[i] = profile.halfWidthSi(depthM[i], straightMPerS);
        }
    }

    CutFront front() {
        return front;
    }

    private boolean isSlow(double feedMPerS) {
        return feedMPerS < straightMPerS;
    }

    /** Feed whose straight pass leaves the dose in the middle of a zone: 1/u1 + (1/u - 1/u1) erf(a / (sqrt2 sigma)). */
    double effectiveFeed(double feedMPerS, double halfLengthM) {
        double share = profile.doseShareSi(halfLengthM);
        return 1 / (1 / straightMPerS + (1 / feedMPerS - 1 / straightMPerS) * share);
    }

    /** Growth of the kerf in the middle of a zone: the greatest over the depths. */
    double growth(double feedMPerS, double halfLengthM) {
        if (!isSlow(feedMPerS)) {
            return 0;
        }
        double logFeed = Math.log(effectiveFeed(feedMPerS, halfLengthM));
        double growth = 0;
        for (int i = 0; i < DEPTHS; i++) {
            double halfWidth = profile.halfWidthOfExcessSi(depthM[i], logSeparation[i] - logFeed);
            growth = Math.max(growth, halfWidth - straightHalfWidthM[i]);
        }
        return growth;
    }

    /** Growth at a corner: the zone is one lag long on both sides. */
    double growthAtCorner(double feedMPerS) {
        return growth(feedMPerS, front.exitLagSi(feedMPerS));
    }

    /** Length of the pass at a feed that ends at a corner: the zone on both sides, endless at the straight feed. */
    private double passLength(double feedMPerS) {
        return isSlow(feedMPerS) ? 2 * front.exitLagSi(feedMPerS) : ENDLESS_M;
    }

    /**
     * Reach of the cut ahead of the end of a pass, at the exit. Below zero the pass cuts through only up to that distance
     * before its end; minus half its length if it does not at all.
     */
    double reach(double feedMPerS, double lengthM) {
        double needed = 2 * feedMPerS / separationMPerS;
        UnivariateFunction excess = x -> profile.doseShareSi(x + lengthM) - profile.doseShareSi(x) - needed;
        if (excess.value(-lengthM / 2) <= 0) {
            return -lengthM / 2;
        }
        double low = Math.max(-lengthM / 2, -REACH_IN_SPREADS * spreadM);
        if (excess.value(low) <= 0) {
            return low;
        }
        double end = solver().solve(MAX_EVALUATIONS, excess, low, REACH_IN_SPREADS * spreadM);
        return end > 0 ? KerfProfile.smoothMinimumSi(end, exitRadiusM) : end;
    }

    private static BracketingNthOrderBrentSolver solver() {
        return new BracketingNthOrderBrentSolver(RELATIVE_ACCURACY, ACCURACY_M, 5);
    }

    /**
     * Notch at an inside corner in the tangent geometry: how far the pass that starts one lag behind the corner, on the
     * line of the new edge, reaches past the wall of the old one.
     */
    double notch(double feedMPerS, double turnRad) {
        double lag = remaining.atCorner(feedMPerS, straightMPerS, turnRad);
        double length = passLength(feedMPerS);
        double reach = reach(feedMPerS, length);
        if (turnRad >= Math.PI / 2) {
            return lag + reach - exitHalfWidthM;
        }
        double ahead = Math.max(reach, 0);
        double step = (ahead + NOTCH_IN_SPREADS * spreadM) / NOTCH_STEPS;
        double sine = Math.sin(turnRad);
        double cosine = Math.cos(turnRad);
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= NOTCH_STEPS; i++) {
            double along = i * step - ahead;
            if ((lag - along) * sine + exitRadiusM * cosine <= most) {
                break;
            }
            double halfWidth = halfWidthNearStart(feedMPerS, length, along);
            most = Math.max(most, (lag - along) * sine + halfWidth * cosine);
        }
        return most - exitHalfWidthM;
    }

    /** Half-width at the exit beside a place of a pass of a length; before its start if the place is below zero. */
    private double halfWidthNearStart(double feedMPerS, double lengthM, double alongM) {
        double relativeDose = (profile.doseShareSi(alongM) + profile.doseShareSi(lengthM - alongM))
                * separationMPerS
                / (2 * feedMPerS);
        double beforeM = Math.min(alongM, 0);
        double squared = relativeDose > 0 ? 2 * spreadM * spreadM * Math.log(relativeDose) + beforeM * beforeM : 0;
        if (!(squared > 0)) {
            return 0;
        }
        double distance = KerfProfile.smoothMinimumSi(Math.sqrt(squared), exitRadiusM);
        return Math.sqrt(Math.max(0, distance * distance - beforeM * beforeM));
    }

    /** Errors at a corner where the part is re-entrant, over the feed. */
    DoubleUnaryOperator insideCorner(double turnRad, LagGeometry geometry) {
        if (geometry == LagGeometry.TANGENT) {
            return feed -> Math.max(notch(feed, turnRad), growthAtCorner(feed));
        }
        double factor = tractrixFactor(turnRad, geometry);
        return feed -> Math.max(factor * remaining.atCorner(feed, straightMPerS, turnRad), growthAtCorner(feed));
    }

    /** Errors at any other corner, over the feed. */
    DoubleUnaryOperator outsideCorner(double turnRad, LagGeometry geometry) {
        double factor = tractrixFactor(turnRad, geometry);
        return feed -> factor * remaining.atCorner(feed, straightMPerS, turnRad) + growthAtCorner(feed);
    }

    private static double tractrixFactor(double turnRad, LagGeometry geometry) {
        return geometry == LagGeometry.TRACTRIX ? TractrixCorner.factor(turnRad) : 0;
    }

    /** Error on an arc of the tool path, whose zone is the whole arc and one lag on both sides. */
    double arc(double feedMPerS, double radiusM, double lengthM, LagGeometry geometry) {
        double zone = front.exitLagSi(feedMPerS) + lengthM / 2;
        return geometry.arcErrorSi(remaining.onArc(feedMPerS, radiusM), radiusM) + growth(feedMPerS, zone);
    }

    /** Whether the front on an arc is slow enough to separate the workpiece. */
    boolean isSeparatedOnArc(double feedMPerS, double radiusM) {
        return excessOnArc(feedMPerS, radiusM) <= 0;
    }

    /** Speed of the bottom of the front on its larger circle, less the feed that separates the workpiece. */
    double excessOnArc(double feedMPerS, double radiusM) {
        return feedMPerS * Math.hypot(1, remaining.onArc(feedMPerS, radiusM) / radiusM) - separationMPerS;
    }

    /**
     * Length of the bottom that is left uncut before a corner in the tangent geometry, where the front jumps over it.
     * Zero or below: the part is separated. Grows with the feed.
     */
    double uncutBottom(double feedMPerS, double turnRad) {
        return remaining.atCorner(feedMPerS, straightMPerS, turnRad)
                - reach(feedMPerS, ENDLESS_M)
                - profile.halfWidthSi(thicknessM, feedMPerS) / Math.sin(Math.min(turnRad, Math.PI / 2));
    }
}
