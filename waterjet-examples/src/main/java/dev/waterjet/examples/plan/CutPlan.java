package dev.waterjet.examples.plan;

import dev.waterjet.kerf.Kerf;
import dev.waterjet.motion.FeedLimit;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.part.Contour;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.CutQuality;

/**
 * Plan of one cut. A block of the program has one feed rate: the highest that cut front and machine allow along it. Its
 * time includes the slower stretches at its ends.
 */
public final class CutPlan {

    private final ProgramCut cut;
    private final CutQuality quality;
    private final Kerf kerf;
    private final Contour path;
    private final double[] feedMPerS;
    private final double[] timeS;
    private final FeedLimit[] limit;

    private CutPlan(ProgramCut cut, CutQuality quality, Kerf kerf, FeedPlan plan) {
        this.cut = cut;
        this.quality = quality;
        this.kerf = kerf;
        this.path = plan.contour();
        this.feedMPerS = new double[cut.size()];
        this.timeS = new double[cut.size()];
        this.limit = new FeedLimit[cut.size()];
        for (int i = 0; i < plan.size(); i++) {
            int edge = plan.edge(i);
            timeS[edge] += plan.timeSi(i);
            if (plan.allowedSi(i) > feedMPerS[edge]) {
                feedMPerS[edge] = plan.allowedSi(i);
                limit[edge] = plan.limit(i);
            }
        }
    }

    static CutPlan of(ProgramCut cut, CutQuality quality, Kerf kerf, FeedPlan plan) {
        return new CutPlan(cut, quality, kerf, plan);
    }

    /** The cut of the program. */
    public ProgramCut cut() {
        return cut;
    }

    /** Its cut quality. */
    public CutQuality quality() {
        return quality;
    }

    /** The kerf at the feed rate of its cut quality. */
    public Kerf kerf() {
        return kerf;
    }

    /** Its path with leads; an edge for each block. */
    public Contour path() {
        return path;
    }

    /** Feed rate of a block, in m/s. */
    public double feedSi(int block) {
        return feedMPerS[block];
    }

    /** Time of a block, in s. */
    public double timeSi(int block) {
        return timeS[block];
    }

    /** Governing limit of a block. */
    public FeedLimit limit(int block) {
        return limit[block];
    }

    /** Time of all blocks, in s. */
    public double timeSi() {
        double time = 0;
        for (double each : timeS) {
            time += each;
        }
        return time;
    }
}
