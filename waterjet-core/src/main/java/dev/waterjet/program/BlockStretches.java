package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import java.util.Arrays;

/** Stretches of constant feed within the blocks of a cut, block after block. The time of a stretch is never lost. */
final class BlockStretches {

    /** Ends nearer than this to the end of a block are that end. */
    private static final double SAME_M = 1e-7;

    /** Accepted difference of the length of a cut and of its feeds: paths are simplified before they are planned. */
    private static final double LENGTH_RATIO = 0.01;

    private final CutFeeds feeds;

    /** Length of the cut for each metre of the feeds. */
    private final double scale;

    private int next;
    private double doneM;

    /** Pieces of the current block: where each ends, from the start of the block, and its time. */
    double[] end = new double[4];

    double[] timeS = new double[4];
    int count;

    BlockStretches(CutFeeds feeds, ProgramCut cut) {
        this.feeds = feeds;
        double planned = feeds.ends().si(feeds.ends().size() - 1);
        this.scale = cut.lengthSi() / planned;
        if (Math.abs(scale - 1) > LENGTH_RATIO) {
            throw new TextException(
                    cut.line(),
                    1,
                    Message.of("feeds-of-other-cut", "the feeds cover {planned}; the cut is {length} long")
                            .with("planned", Kind.LENGTH, planned, Units.MILLIMETRE)
                            .with("length", Kind.LENGTH, cut.lengthSi(), Units.MILLIMETRE));
        }
    }

    /** Takes the pieces of the next block; pieces shorter than a minimum join their neighbour. */
    void take(double lengthM, double minimumM) {
        count = 0;
        double blockEnd = doneM + lengthM;
        double from = doneM;
        int last = feeds.feeds().size() - 1;
        while (next < last && feeds.ends().si(next) * scale < blockEnd - SAME_M) {
            double to = feeds.ends().si(next) * scale;
            if (to > from) {
                add(to - doneM, (to - from) / scale / feeds.feeds().si(next));
                from = to;
            }
            next++;
        }
        add(lengthM, (blockEnd - from) / scale / feeds.feeds().si(next));
        if (next < last && feeds.ends().si(next) * scale <= blockEnd + SAME_M) {
            next++;
        }
        doneM = blockEnd;
        join(minimumM);
    }

    /** Splits pieces that are longer than a maximum into equal ones. */
    void subdivide(double maximumM) {
        double[] ends = Arrays.copyOf(end, count);
        double[] times = Arrays.copyOf(timeS, count);
        count = 0;
        double from = 0;
        for (int i = 0; i < ends.length; i++) {
            int parts = (int) Math.ceil((ends[i] - from) / maximumM - 1e-9);
            for (int k = 1; k <= parts; k++) {
                add(k == parts ? ends[i] : from + (ends[i] - from) * k / parts, times[i] / parts);
            }
            from = ends[i];
        }
    }

    double totalS() {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += timeS[i];
        }
        return sum;
    }

    private void add(double endM, double seconds) {
        if (count == end.length) {
            end = Arrays.copyOf(end, count * 2);
            timeS = Arrays.copyOf(timeS, count * 2);
        }
        end[count] = endM;
        timeS[count] = seconds;
        count++;
    }

    private void join(double minimumM) {
        int kept = 0;
        double waitingS = 0;
        for (int i = 0; i < count; i++) {
            double start = kept == 0 ? 0 : end[kept - 1];
            boolean isShort = end[i] - start < minimumM;
            if (isShort && i + 1 < count) {
                waitingS += timeS[i];
            } else if (isShort && kept > 0) {
                end[kept - 1] = end[i];
                timeS[kept - 1] += timeS[i] + waitingS;
            } else {
                end[kept] = end[i];
                timeS[kept] = timeS[i] + waitingS;
                waitingS = 0;
                kept++;
            }
        }
        count = kept;
    }
}
