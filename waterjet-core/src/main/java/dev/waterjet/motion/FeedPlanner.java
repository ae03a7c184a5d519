package dev.waterjet.motion;

import dev.waterjet.kerf.LagFunction;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Side;
import java.io.Serializable;
import java.util.Objects;

/**
 * Finds the fastest feed along a contour that no limit forbids, from rest to rest.
 *
 * <p>First each edge and each corner gets the feed that the front allows (grade, lag on arcs and at corners) and that the
 * machine allows (speed and acceleration of each axis). Slow places are then held over the lag before and after them, so
 * that the front recovers. At last a walk forward and a walk back make the rest reachable by acceleration, and by jerk
 * where the machine has a limit of it. The work grows in proportion to the number of edges.
 *
 * <p>The plan is a calculation, not a command: what a machine runs is for its manual, its maker and the people licensed to
 * run it to say. A jet that cuts steel cuts a hand.
 */
public final class FeedPlanner implements Serializable {

    private static final long serialVersionUID = 1L;

    private final MachineLimits machine;
    private final QualityFeeds feeds;
    private final LagFunction law;
    private final double recoveryLags;

    private FeedPlanner(MachineLimits machine, QualityFeeds feeds, LagFunction law, double recoveryLags) {
        this.machine = Objects.requireNonNull(machine, "machine");
        this.feeds = Objects.requireNonNull(feeds, "feeds");
        this.law = Objects.requireNonNull(law, "law");
        this.recoveryLags =
                Require.between("recovery of the front", recoveryLags, 0, 100, Units.ONE, "it is counted in lags");
    }

    /**
     * A planner that holds slow places over one lag.
     *
     * @param machine what the machine can follow
     * @param feeds the feed that each grade allows
     * @param law lag of the jet at a feed
     * @return the planner
     */
    public static FeedPlanner of(MachineLimits machine, QualityFeeds feeds, LagFunction law) {
        return new FeedPlanner(machine, feeds, law, 1);
    }

    /**
     * This planner with another stretch over which the front recovers.
     *
     * @param lags stretch before and after a slow place, in lags at the feed of the edge's finish: 0 for none, 1 usual
     * @return the planner with that recovery
     */
    public FeedPlanner withRecovery(double lags) {
        return new FeedPlanner(machine, feeds, law, lags);
    }

    /**
     * This planner for another machine.
     *
     * @param other what that machine can follow
     * @return the planner for it
     */
    public FeedPlanner withMachine(MachineLimits other) {
        return new FeedPlanner(other, feeds, law, recoveryLags);
    }

    /**
     * Plans the feed along a contour.
     *
     * @param contour the path of the jet, from its start
     * @param part the side of the path on which the part lies: it tells inside corners from outside ones
     * @return the feed along the path, and its time
     * @throws GeometryException if no feed keeps an arc or a corner within its tolerance, with the edge and its place
     */
    public FeedPlan plan(Contour contour, Side part) {
        EdgeLimits finishes = new EdgeLimits(contour.requirements(), feeds, law, machine);
        SegmentLimits limits = new SegmentLimits(contour, part, machine, finishes, law);
        Segments spans = limits.walk();
        if (limits.hasSlowPlaces() && recoveryLags > 0) {
            double[] reach = finishes.lagM.clone();
            for (int i = 0; i < reach.length; i++) {
                reach[i] *= recoveryLags;
            }
            spans = FrontRecovery.recover(spans, requirementOfEdge(contour), reach, finishes.fastestMPerS);
        }
        MotionProfile motion = machine.hasJerk() ? SmoothPass.run(spans, machine.jerkSi()) : TrapezoidPass.run(spans);
        return new FeedPlan(contour, motion, feeds);
    }

    private static short[] requirementOfEdge(Contour contour) {
        short[] index = new short[contour.size()];
        for (int i = 0; i < index.length; i++) {
            index[i] = (short) contour.requirementIndex(i);
        }
        return index;
    }
}
