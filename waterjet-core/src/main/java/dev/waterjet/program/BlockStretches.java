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

    /** Pieces of the current block: where each ends, from the start of the block, what the control runs for it, its time. */
    double[] end = new double[4];

    private double[] pathM = new double[4];
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
                addStretch(to, from);
                from = to;
            }
            next++;
        }
        addStretch(blockEnd, from);
        if (next < last && feeds.ends().si(next) * scale <= blockEnd + SAME_M) {
            next++;
        }
        doneM = blockEnd;
        join(minimumM);
    }

    /** Adds a piece of the current stretch of the feeds between two distances along the cut. */
    private void addStretch(double toM, double fromM) {
        double planned = (toM - fromM) / scale;
        double before = next == 0 ? 0 : feeds.ends().si(next - 1);
        double path = planned * feeds.paths().si(next) / (feeds.ends().si(next) - before);
        add(toM - doneM, path * scale, path / feeds.feeds().si(next));
    }

    /** Splits pieces that are longer than a maximum into equal ones. */
    void subdivide(double maximumM) {
        double[] ends = Arrays.copyOf(end, count);
        double[] paths = Arrays.copyOf(pathM, count);
        double[] times = Arrays.copyOf(timeS, count);
        count = 0;
        double from = 0;
        for (int i = 0; i < ends.length; i++) {
            int parts = (int) Math.ceil((ends[i] - from) / maximumM - 1e-9);
            for (int k = 1; k <= parts; k++) {
                add(k == parts ? ends[i] : from + (ends[i] - from) * k / parts, paths[i] / parts, times[i] / parts);
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

    /** Length that the control runs for the block. */
    double pathM() {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += pathM[i];
        }
        return sum;
    }

    /** Length that the control runs for each metre of a piece. */
    double pathRatio(int piece) {
        return pathM[piece] / (end[piece] - (piece == 0 ? 0 : end[piece - 1]));
    }

    private void add(double endM, double runM, double seconds) {
        if (count == end.length) {
            end = Arrays.copyOf(end, count * 2);
            pathM = Arrays.copyOf(pathM, count * 2);
            timeS = Arrays.copyOf(timeS, count * 2);
        }
        end[count] = endM;
        pathM[count] = runM;
        timeS[count] = seconds;
        count++;
    }

    private void join(double minimumM) {
        int kept = 0;
        double waitingS = 0;
        double waitingM = 0;
        for (int i = 0; i < count; i++) {
            double start = kept == 0 ? 0 : end[kept - 1];
            boolean isShort = end[i] - start < minimumM;
            if (isShort && i + 1 < count) {
                waitingS += timeS[i];
                waitingM += pathM[i];
            } else if (isShort && kept > 0) {
                end[kept - 1] = end[i];
                timeS[kept - 1] += timeS[i] + waitingS;
                pathM[kept - 1] += pathM[i] + waitingM;
            } else {
                end[kept] = end[i];
                timeS[kept] = timeS[i] + waitingS;
                pathM[kept] = pathM[i] + waitingM;
                waitingS = 0;
                waitingM = 0;
                kept++;
            }
        }
        count = kept;
    }
}
