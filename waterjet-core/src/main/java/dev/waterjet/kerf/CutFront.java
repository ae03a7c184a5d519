package dev.waterjet.kerf;

import dev.waterjet.evidence.Caution;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Cut front of one jet in one workpiece: its steady shape at a feed and its motion when the feed changes, on SI doubles.
 *
 * <p>At a steady feed u the front is the parabola L(u, z) = c z<sup>2</sup> / H(u), with H the depth that the jet just
 * separates. The only law without memory that has all of these parabolas as solutions lets each point of the front recede
 * at a speed that depends on the slope there: dX/dt = u<sub>sep</sub>(2 c z / p), where X(z, t) is the position of the front
 * along the path and {@code p = -dX/dz}. Information travels downwards only:
 *
 * <ul>
 *   <li>a feed u reaches the depth z after the travel time {@code tau = dL/du}, which is {@code L/(k u)} for the power law
 *       H = A u<sup>-1/k</sup>;
 *   <li>the front is at {@code X(z, t) = max over t0 <= t of s(t0) - C(z, t - t0)}, where s is the position of the nozzle along the path and
 *       {@code C(z, theta) = max over v of L(v, z) - theta v} is the shortfall of a standing nozzle;
 *   <li>the steady lag of a feed is reached exactly after the nozzle has run {@code u tau}, the run-in: {@code L/k} for the
 *       power law.
 * </ul>
 *
 * <p>Evidence: the parabola is published (Momber, Kovacevic 1995) and its coefficient derived, see {@link LagModel}; the
 * law of motion is derived from the parabolas, and that it has no memory is assumed. No measured transient is known.
 *
 * <p>Validity: {@code L(v)} must be concave, for a power law {@code k >= 1}. Where a model gives another relation, the smallest
 * concave one above it is used, which never gives a smaller lag, and {@link #cautions} says so. Lags at an index above 6 are
 * extrapolated.
 *
 * <p>Units: m, s, m/s; depths are measured from the top side, positions and lags along the path.
 */
public abstract sealed class CutFront permits PowerLawFront, TabulatedFront {

    /** Quality index above which a lag lies far from the cuts that gave the parabola, which reach from 1 to 2. */
    private static final double MAX_INDEX = 6;

    private final double lagCoefficient;
    private final double thicknessM;

    CutFront(double lagCoefficient, double thicknessM) {
        this.lagCoefficient = Require.positive("lag coefficient", lagCoefficient, Units.ONE);
        this.thicknessM = Require.positive("thickness", thicknessM, Units.MILLIMETRE);
    }

    /**
     * Returns the cut front that follows from a feed model: in closed form if the model is a power law, otherwise from a
     * table.
     *
     * @param lagModel steady front
     * @param cut conditions of the cut
     * @return the front
     * @throws dev.waterjet.measure.DomainException if the jet does not cut the workpiece at all
     */
    public static CutFront of(LagModel lagModel, CutConditions cut) {
        return ofFeeds(lagModel, cut, 1);
    }

    /**
     * Returns the cut front of a jet that cuts faster or slower than its feed model says: to follow the uncertainty of the
     * model.
     *
     * @param lagModel steady front
     * @param cut conditions of the cut
     * @param factor feeds over those of the feed model, above 0
     * @return the front
     * @throws dev.waterjet.measure.DomainException if the jet does not cut the workpiece at all
     */
    public static CutFront ofFeeds(LagModel lagModel, CutConditions cut, double factor) {
        Objects.requireNonNull(cut, "cut");
        Objects.requireNonNull(lagModel, "lagModel");
        double times = Require.positive("factor on feed rates", factor, Units.ONE);
        return new FrontLaw(feed -> cut.separationDepthSi(feed / times), depth -> times * cut.separationFeedSi(depth))
                .front(lagModel.coefficient(), cut.thicknessSi());
    }

    /**
     * Returns the cut front of the power law H(u) = A u<sup>-1/k</sup>.
     *
     * @param lagModel steady front
     * @param thicknessM thickness of the workpiece, above 0
     * @param exponent k, above 0: about 1.15 for machinability, 1 for specific energy
     * @param depthAtUnitFeedM A, the separation depth at 1 m/s, above 0
     * @return the front
     */
    public static CutFront powerLaw(LagModel lagModel, double thicknessM, double exponent, double depthAtUnitFeedM) {
        Objects.requireNonNull(lagModel, "lagModel");
        return new PowerLawFront(lagModel.coefficient(), thicknessM, exponent, depthAtUnitFeedM);
    }

    /**
     * Returns the depth that the jet just separates.
     *
     * @param feedMPerS feed u, above 0
     * @return H(u); falls as the feed grows
     */
    public abstract double separationDepthSi(double feedMPerS);

    /**
     * Returns the feed at which the jet just separates a depth: the inverse of {@link #separationDepthSi}.
     *
     * @param depthM depth, above 0
     * @return the feed
     */
    public abstract double separationFeedSi(double depthM);

    /** Lag at the depth of 1 m, concave in the feed: L(u, z) = z<sup>2</sup> times this. */
    abstract double unitLag(double feedMPerS);

    /** Feed of a lag at the depth of 1 m. */
    abstract double feedForUnitLag(double lagPerM);

    /** Travel time to the depth of 1 m: the slope of the lag over the feed. */
    abstract double unitTravelTime(double feedMPerS);

    /** Shortfall at the depth of 1 m after a time; infinite where no signal has arrived yet. */
    abstract double unitShortfall(double elapsedS);

    /** Whether the lag at a feed is that of the feed model, and not that of the concave relation above it. */
    abstract boolean isConcaveAt(double feedMPerS);

    /** {@return c in L = c z^2 / H} */
    public final double lagCoefficient() {
        return lagCoefficient;
    }

    /** {@return the thickness of the workpiece in m} */
    public final double thicknessSi() {
        return thicknessM;
    }

    /**
     * Returns the steady lag at a depth.
     *
     * @param feedMPerS feed, 0 or more
     * @param depthM depth, 0 or more
     * @return L(u, z); grows with both
     */
    public final double lagSi(double feedMPerS, double depthM) {
        return feedMPerS > 0 ? depthM * depthM * unitLag(feedMPerS) : 0;
    }

    /**
     * Returns the steady lag at the exit.
     *
     * @param feedMPerS feed, 0 or more
     * @return L(u, h)
     */
    public final double exitLagSi(double feedMPerS) {
        return lagSi(feedMPerS, thicknessM);
    }

    /**
     * Returns the feed whose steady lag at a depth has a length: the inverse of {@link #lagSi}.
     *
     * @param lagM lag, above 0
     * @param depthM depth, above 0
     * @return the feed
     */
    public final double feedForLagSi(double lagM, double depthM) {
        return feedForUnitLag(lagM / (depthM * depthM));
    }

    /**
     * Returns the time that a feed needs from the top side down to a depth.
     *
     * @param feedMPerS feed, above 0
     * @param depthM depth, 0 or more
     * @return tau(z; u)
     */
    public final double travelTimeSi(double feedMPerS, double depthM) {
        return depthM * depthM * unitTravelTime(feedMPerS);
    }

    /**
     * Returns the distance by which the front is behind the place where the nozzle set a feed, at the moment when that
     * feed arrives.
     *
     * @param feedMPerS feed, above 0
     * @param depthM depth, 0 or more
     * @return {@code L - u tau}: (1 - 1/k) L for a power law
     */
    public final double setBackSi(double feedMPerS, double depthM) {
        return lagSi(feedMPerS, depthM) - feedMPerS * travelTimeSi(feedMPerS, depthM);
    }

    /**
     * Returns the length that the nozzle must run at a feed until the lag at the exit is the steady one, whatever went
     * before.
     *
     * @param feedMPerS feed, above 0
     * @return {@code u tau(h; u)}: L/k for a power law
     */
    public final double runInSi(double feedMPerS) {
        return feedMPerS * travelTimeSi(feedMPerS, thicknessM);
    }

    /**
     * Returns the distance that the front at a depth still lacks when the nozzle has stood for a time, after a long run at
     * any feed whose signal has been overtaken by then.
     *
     * @param depthM depth, above 0
     * @param elapsedS time since the nozzle was there, above 0
     * @return C(z, theta); falls with the time; infinite for k = 1 until the travel time is over
     */
    public final double shortfallSi(double depthM, double elapsedS) {
        double unit = depthM * depthM;
        return unit * unitShortfall(elapsedS / unit);
    }

    /**
     * Returns the lag at a depth after one change of feed, which had been kept for long.
     *
     * @param feedBeforeMPerS feed before the change, 0 or more
     * @param feedAfterMPerS feed from then on, 0 or more; 0 if the nozzle is stationary
     * @param depthM depth, above 0
     * @param elapsedS time since the change, 0 or more
     * @return the lag; between the steady lags of both feeds
     */
    public final double lagAfterStepSi(double feedBeforeMPerS, double feedAfterMPerS, double depthM, double elapsedS) {
        double lagBefore = lagSi(feedBeforeMPerS, depthM);
        double lagAfter = lagSi(feedAfterMPerS, depthM);
        if (feedAfterMPerS >= feedBeforeMPerS) {
            return Math.min(lagBefore + (feedAfterMPerS - feedBeforeMPerS) * elapsedS, lagAfter);
        }
        if (elapsedS <= travelTimeSi(feedBeforeMPerS, depthM)) {
            return lagBefore - (feedBeforeMPerS - feedAfterMPerS) * elapsedS;
        }
        if (feedAfterMPerS > 0 && elapsedS >= travelTimeSi(feedAfterMPerS, depthM)) {
            return lagAfter;
        }
        return feedAfterMPerS * elapsedS + shortfallSi(depthM, elapsedS);
    }

    /**
     * Computes the position of the front at a depth for many times in one pass: a divide and conquer on the pieces of
     * constant feed, whose best one never goes back, so the cost grows with {@code (pieces + times) log(times)}.
     *
     * @param motion motion of the nozzle
     * @param depthM depth, above 0
     * @param timesS times, ascending
     * @param positionsM receives the positions along the path, as many as there are times
     * @throws dev.waterjet.measure.DomainException if the times do not ascend, or if there is too little space for the
     *     positions
     */
    public final void positionsSi(NozzleMotion motion, double depthM, double[] timesS, double[] positionsM) {
        Objects.requireNonNull(motion, "motion");
        Objects.requireNonNull(positionsM, "positionsM");
        Objects.requireNonNull(timesS, "timesS");
        new FrontMotion(this, motion, depthM).positions(timesS, positionsM);
    }

    /**
     * Returns the lag at a depth and time: the position of the nozzle minus that of the front.
     *
     * @param motion motion of the nozzle
     * @param depthM depth, above 0
     * @param timeS time
     * @return the lag, 0 or more
     */
    public final double lagAtSi(NozzleMotion motion, double depthM, double timeS) {
        Objects.requireNonNull(motion, "motion");
        return motion.waySi(timeS) - new FrontMotion(this, motion, depthM).position(timeS);
    }

    /**
     * Returns the cautions of a lag at a feed rate.
     *
     * @param feedMPerS feed, above 0
     * @return the cautions; empty if there are none
     */
    public final List<Caution> cautions(double feedMPerS) {
        List<Caution> cautions = new ArrayList<>();
        if (!isConcaveAt(feedMPerS)) {
            cautions.add(Caution.warning(Message.of(
                    "front-law-not-concave",
                    "the feed model lets the lag grow faster than the feed; the cut front uses a lag that is larger")));
        }
        double index = separationDepthSi(feedMPerS) / thicknessM;
        if (index > MAX_INDEX) {
            cautions.add(Caution.notice(Message.of(
                            "lag-extrapolated",
                            "the lag at feed rate {feed} (quality index {index}) is extrapolated; the cut front is"
                                    + " known for quality indices up to {maximum_index}")
                    .with("feed", Kind.SPEED, feedMPerS, Units.MILLIMETRE_PER_MINUTE)
                    .with("index", index)
                    .with("maximum_index", MAX_INDEX)));
        }
        return cautions;
    }
}
