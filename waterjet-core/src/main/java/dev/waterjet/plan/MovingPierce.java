package dev.waterjet.plan;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.program.CutFeeds;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.List;

/**
 * Blocks of a cut by which a moving pierce goes through the plate. They take the time of the pierce, less a dwell before them: the
 * upper end of its 95 % interval, since the cut behind them must start through the plate.
 */
final class MovingPierce {

    private static final double COVERAGE = 0.95;
    private static final double SHORT_M = 1e-6;

    private final double fromM;
    private final double toM;
    private final double dwellS;

    private MovingPierce(double fromM, double toM, double dwellS) {
        this.fromM = fromM;
        this.toM = toM;
        this.dwellS = dwellS;
    }

    static MovingPierce of(ProgramCut cut) {
        Contour path = cut.path(EdgeRequirement.defaults());
        EdgeCursor edge = new EdgeCursor();
        double at = 0;
        double from = 0;
        double to = 0;
        // the pierce is at the start of a cut
        for (int i = 0; i < cut.leadIn(); i++) {
            path.load(i, edge);
            boolean isPierce = cut.purpose(i) == ProgramCut.Purpose.PIERCE;
            from = isPierce && to == 0 ? at : from;
            at += edge.length();
            to = isPierce ? at : to;
        }
        return new MovingPierce(from, to, cut.dwell().map(Kind.TIME::si).orElse(0.0));
    }

    boolean isThere() {
        return toM > fromM;
    }

    /** Feeds that give the pierce its time; the others stay. */
    CutFeeds slowed(CutFeeds feeds, Pierce pierce) {
        double seconds = Kind.TIME.si(pierce.time().upper(COVERAGE)) - dwellS;
        if (!isThere() || !(seconds > 0)) {
            return feeds;
        }
        List<double[]> stretches = new ArrayList<>();
        double before = 0;
        double pathM = 0;
        for (int i = 0; i < feeds.feeds().size(); i++) {
            double end = feeds.ends().si(i);
            double density = feeds.paths().si(i) / (end - before);
            double feed = feeds.feeds().si(i);
            add(stretches, before, Math.min(end, fromM), density, feed);
            double within = Math.min(end, toM) - Math.max(before, fromM);
            pathM += within > 0 ? within * density : 0;
            if (end >= toM - SHORT_M && before < toM - SHORT_M) {
                stretches.add(new double[] {toM, pathM, Math.min(feed, pathM / seconds)});
            }
            add(stretches, Math.max(before, toM), end, density, feed);
            before = end;
        }
        return new CutFeeds(
                QuantityArray.ofSi(Kind.LENGTH, column(stretches, 0)),
                QuantityArray.ofSi(Kind.SPEED, column(stretches, 2)),
                QuantityArray.ofSi(Kind.LENGTH, column(stretches, 1)));
    }

    private static void add(List<double[]> stretches, double fromM, double toM, double density, double feed) {
        if (toM - fromM > SHORT_M) {
            stretches.add(new double[] {toM, (toM - fromM) * density, feed});
        }
    }

    private static double[] column(List<double[]> rows, int column) {
        return rows.stream().mapToDouble(row -> row[column]).toArray();
    }
}
