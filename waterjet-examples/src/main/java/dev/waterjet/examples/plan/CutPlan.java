package dev.waterjet.examples.plan;

import dev.waterjet.kerf.Kerf;
import dev.waterjet.motion.FeedLimit;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.part.Contour;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.CutQuality;

/**
 * The plan of one cut. A block of the program runs at one feed: the highest that front and machine allow along it. Its
 * time counts the slower stretches at its ends as well.
 */
public final class CutPlan {

    private final ProgramCut cut;
    private final CutQuality grade;
    private final Kerf kerf;
    private final Contour path;
    private final double[] feedMPerS;
    private final double[] timeS;
    private final FeedLimit[] limit;

    private CutPlan(ProgramCut cut, CutQuality grade, Kerf kerf, FeedPlan plan) {
        this.cut = cut;
        this.grade = grade;
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

    static CutPlan of(ProgramCut cut, CutQuality grade, Kerf kerf, FeedPlan plan) {
        return new CutPlan(cut, grade, kerf, plan);
    }

    /** The cut of the program. */
    public ProgramCut cut() {
        return cut;
    }

    /** Grade of its faces. */
    public CutQuality grade() {
        return grade;
    }

    /** The kerf at the feed of its grade. */
    public Kerf kerf() {
        return kerf;
    }

    /** Its path, leads among it; an edge for each block. */
    public Contour path() {
        return path;
    }

    /** Feed of a block, in m/s. */
    public double feedSi(int block) {
        return feedMPerS[block];
    }

    /** Time of a block, in s. */
    public double timeSi(int block) {
        return timeS[block];
    }

    /** What holds the feed of a block down. */
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
