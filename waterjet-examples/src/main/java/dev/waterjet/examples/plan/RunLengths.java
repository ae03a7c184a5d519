package dev.waterjet.examples.plan;

import dev.waterjet.measure.Kind;
import dev.waterjet.program.CutFeeds;
import dev.waterjet.program.ProgramCut;

/** Lengths that the control runs for the blocks of a written cut, block after block. */
final class RunLengths {

    private final CutFeeds feeds;

    /** Length of the written cut for each metre of the feeds. */
    private final double scale;

    private double atM;
    private double ranM;
    private int next;

    /** Length run before the current stretch of the feeds. */
    private double beforeM;

    RunLengths(CutFeeds feeds, ProgramCut written) {
        this.feeds = feeds;
        this.scale =
                Kind.LENGTH.si(written.length()) / feeds.ends().si(feeds.ends().size() - 1);
    }

    /** Length that the control runs for the next block, from its length as written. */
    double next(double lengthM) {
        atM += lengthM;
        int last = feeds.ends().size() - 1;
        while (next < last && feeds.ends().si(next) * scale < atM) {
            beforeM += feeds.paths().si(next);
            next++;
        }
        double start = next == 0 ? 0 : feeds.ends().si(next - 1);
        double share = (atM / scale - start) / (feeds.ends().si(next) - start);
        double ran = beforeM + share * feeds.paths().si(next);
        double length = ran - ranM;
        ranM = ran;
        return length;
    }
}
