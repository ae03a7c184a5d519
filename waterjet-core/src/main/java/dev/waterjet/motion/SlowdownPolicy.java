package dev.waterjet.motion;

import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.AllowedSolution;
import org.apache.commons.math3.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * Feed at corners, arcs and ends of one setting, by the error that it is predicted to leave.
 *
 * <ol>
 *   <li>If the straight feed keeps the tolerance, it holds.
 *   <li>Otherwise the fastest feed that keeps the tolerance, or that comes within a tenth of the least error of all feeds
 *       down to a twentieth of the straight feed. Slower, the error hardly falls: the kerf grows as the lag shrinks.
 *   <li>At a corner also at most the feed at which the bottom is cut through before the nozzle turns.
 * </ol>
 *
 * <p>The answer is always a feed, also where the tolerance is out of reach: the caller makes a finding of that. The
 * tenth and the twentieth are choices of this project.
 */
final class SlowdownPolicy {

    private static final int FEEDS = 41;
    private static final double SLOWEST = 1.0 / 20;
    private static final double NEAR_LEAST = 1.1;
    /** Slowest feed over the straight one at which the bottom is looked for. */
    private static final double SLOWEST_SEPARATION = 1e-3;

    private static final double RELATIVE_ACCURACY = 1e-12;
    private static final int MAX_EVALUATIONS = 300;

    private final SlowdownErrors errors;
    private final double straightMPerS;
    private final double toleranceM;
    private final SlowdownRules rules;

    /** Logarithms of the feeds among which the least error is sought; the last is that of the straight feed. */
    private final double[] logFeeds = new double[FEEDS];

    SlowdownPolicy(KerfProfile profile, double straightMPerS, double toleranceM, SlowdownSettings settings) {
        this.straightMPerS = Require.positive("feed rate", straightMPerS, Units.MILLIMETRE_PER_MINUTE);
        this.toleranceM = Require.positive("tolerance at corners", toleranceM, Units.MILLIMETRE);
        this.errors = new SlowdownErrors(profile, straightMPerS, settings.remainingLag(profile.front()));
        this.rules = settings.rules();
        double fastest = Math.log(straightMPerS);
        for (int i = 0; i < FEEDS; i++) {
            logFeeds[i] = fastest + Math.log(SLOWEST) * (FEEDS - 1 - i) / (FEEDS - 1);
        }
    }

    /** Slowdown at a corner; a turn above 0 up to 180 degrees. */
    Slowdown corner(double turnRad, boolean isInside) {
        DoubleUnaryOperator error = cornerError(turnRad, isInside);
        Slowdown allowed = allowed(error);
        if (!rules.isSeparating()) {
            return allowed;
        }
        double separating = separatingFeed(turnRad);
        return allowed.feedMPerS() <= separating
                ? allowed
                : at(separating, error.applyAsDouble(separating), SlowdownReason.SEPARATION);
    }

    private DoubleUnaryOperator cornerError(double turnRad, boolean isInside) {
        return isInside
                ? errors.insideCorner(turnRad, rules.insideCorner())
                : errors.outsideCorner(turnRad, rules.outsideCorner());
    }

    /**
     * Slowdown on an arc of the tool path. The arc errs no more than the sharp corner of the same turn, so that a corner
     * and the arc that rounds it by little have one feed. It is separated if its front, which runs faster on the larger
     * circle in the tangent geometry, is not too fast to separate the workpiece, or if the sharp corner would be.
     */
    Slowdown arc(double radiusM, double lengthM, boolean isInside) {
        DoubleUnaryOperator error = arcError(radiusM, lengthM, isInside);
        Slowdown allowed = allowed(error);
        if (!rules.isSeparating() || errors.isSeparatedOnArc(allowed.feedMPerS(), radiusM)) {
            return allowed;
        }
        double separating = Math.max(separatingFeed(turn(radiusM, lengthM)), separatingFeedOnArc(radiusM));
        return allowed.feedMPerS() <= separating
                ? allowed
                : at(separating, error.applyAsDouble(separating), SlowdownReason.SEPARATION);
    }

    DoubleUnaryOperator arcError(double radiusM, double lengthM, boolean isInside) {
        DoubleUnaryOperator corner = cornerError(turn(radiusM, lengthM), isInside);
        return feed -> Math.min(errors.arc(feed, radiusM, lengthM, rules.arc()), corner.applyAsDouble(feed));
    }

    private static double turn(double radiusM, double lengthM) {
        return Math.min(lengthM / radiusM, Math.PI);
    }

    private double separatingFeedOnArc(double radiusM) {
        double fastest = logFeeds[FEEDS - 1];
        double slowest = fastest + Math.log(SLOWEST_SEPARATION);
        UnivariateFunction excess = logFeed -> errors.excessOnArc(Math.exp(logFeed), radiusM);
        if (excess.value(fastest) <= 0) {
            return straightMPerS;
        }
        return excess.value(slowest) > 0 ? Math.exp(slowest) : Math.exp(lastBelow(excess, slowest, fastest));
    }

    /** Slowdown before the end of a path that nothing overlaps: the bottom has to be cut through there. */
    Slowdown end() {
        double separating = rules.isSeparating() ? separatingFeed(Math.PI / 2) : straightMPerS;
        return at(
                separating,
                errors.growthAtCorner(separating),
                separating < straightMPerS ? SlowdownReason.SEPARATION : SlowdownReason.STRAIGHT_FEED);
    }

    private Slowdown at(double feedMPerS, double errorM, SlowdownReason reason) {
        double zone = feedMPerS < straightMPerS ? errors.front().exitLagSi(feedMPerS) : 0;
        return new Slowdown(feedMPerS, zone, errorM, toleranceM, reason);
    }

    private Slowdown allowed(DoubleUnaryOperator error) {
        double atStraight = error.applyAsDouble(straightMPerS);
        if (atStraight <= toleranceM) {
            return at(straightMPerS, atStraight, SlowdownReason.STRAIGHT_FEED);
        }
        double[] left = new double[FEEDS];
        double least = atStraight;
        left[FEEDS - 1] = atStraight;
        for (int i = 0; i < FEEDS - 1; i++) {
            left[i] = error.applyAsDouble(Math.exp(logFeeds[i]));
            least = Math.min(least, left[i]);
        }
        double goal = Math.max(toleranceM, NEAR_LEAST * least);
        SlowdownReason reason = goal > toleranceM ? SlowdownReason.LEAST_ERROR : SlowdownReason.TOLERANCE;
        int fastest = FEEDS - 1;
        while (left[fastest] > goal) {
            fastest--;
        }
        if (fastest == FEEDS - 1) {
            return at(straightMPerS, atStraight, reason);
        }
        double feed = Math.exp(lastBelow(
                logFeed -> error.applyAsDouble(Math.exp(logFeed)) - goal, logFeeds[fastest], logFeeds[fastest + 1]));
        return at(feed, error.applyAsDouble(feed), reason);
    }

    /** Fastest feed at which the bottom is cut through before a turn; the straight one if it does. */
    private double separatingFeed(double turnRad) {
        if (errors.uncutBottom(straightMPerS, turnRad) <= 0) {
            return straightMPerS;
        }
        double fastest = logFeeds[FEEDS - 1];
        double slowest = fastest + Math.log(SLOWEST_SEPARATION);
        UnivariateFunction uncut = logFeed -> errors.uncutBottom(Math.exp(logFeed), turnRad);
        return uncut.value(slowest) > 0 ? Math.exp(slowest) : Math.exp(lastBelow(uncut, slowest, fastest));
    }

    /**
     * Where a function that is at most zero at the lower limit and above zero at the upper one turns. At the straight feed a
     * tiny turn can leave more than just below it, where the zone is counted; the upper limit is the answer then.
     */
    private static double lastBelow(UnivariateFunction function, double low, double high) {
        if (function.value(low) == 0) {
            return low;
        }
        if (function.value(high) <= 0) {
            return high;
        }
        return new BracketingNthOrderBrentSolver(RELATIVE_ACCURACY, RELATIVE_ACCURACY, 5)
                .solve(MAX_EVALUATIONS, function, low, high, AllowedSolution.BELOW_SIDE);
    }
}
