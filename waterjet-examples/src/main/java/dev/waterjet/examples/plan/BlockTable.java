package dev.waterjet.examples.plan;

import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.FeedLimit;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.plan.Move;
import dev.waterjet.plan.PlannedCut;
import dev.waterjet.program.CutFeeds;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramCut;
import java.util.ArrayList;
import java.util.List;

/**
 * Blocks of the written program as CSV, one row each: geometry, feed word, its time, and the limit that governs there. The
 * length is what the control runs at the feed word: beside a path with G41 or G42 that of the jet axis.
 */
public final class BlockTable {

    private static final List<String> HEADER = List.of(
            "cut",
            "name",
            "quality",
            "line",
            "shape",
            "lead",
            "start_x_m",
            "start_y_m",
            "end_x_m",
            "end_y_m",
            "centre_x_m",
            "centre_y_m",
            "radius_m",
            "length_m",
            "feed_m_per_s",
            "time_s",
            "cause");

    private static final long TRILLION = 1_000_000_000_000L;

    /** Numbers below hold twelve decimals exactly. */
    private static final double MAX_EXACT = 9000;

    private final PlanReport report;
    private final PartProgram written;
    private final StringBuilder csv = new StringBuilder(CsvText.row(HEADER)).append('\n');
    private final EdgeCursor edge = new EdgeCursor();

    private BlockTable(PlanReport report) {
        this.report = report;
        this.written = report.written();
    }

    /**
     * Returns the rows as one text.
     *
     * @param report the plan
     * @return CSV with a header
     */
    public static String csv(PlanReport report) {
        return new BlockTable(report).rows();
    }

    private String rows() {
        List<CutFeeds> feeds = report.plan().feeds();
        List<List<Move>> moves = new ArrayList<>();
        report.plan().cuts().forEach(cut -> moves.add(new ArrayList<>()));
        for (Move move : report.plan().moves()) {
            if (move.limit().isPresent()) {
                moves.get(move.cut()).add(move);
            }
        }
        for (int i = 0; i < written.cuts().size(); i++) {
            cut(i, moves.get(i), new RunLengths(feeds.get(i), written.cuts().get(i)));
        }
        return csv.toString();
    }

    private void cut(int index, List<Move> moves, RunLengths lengths) {
        ProgramCut cut = written.cuts().get(index);
        PlannedCut planned = report.plan().cuts().get(index);
        Contour path = cut.path(report.plan().setup().requirement());
        String name = CsvText.row(List.of(CsvText.name(planned.name())));
        double before = 0;
        double movesEnd = 0;
        int move = -1;
        for (int i = 0; i < path.size(); i++) {
            path.load(i, edge);
            double length = lengths.next(edge.length());
            while (move + 1 < moves.size() && movesEnd <= before + length / 2) {
                move++;
                movesEnd += Kind.LENGTH.si(moves.get(move).length());
            }
            FeedLimit cause = moves.get(Math.max(0, move)).limit().orElseThrow();
            double feed = written.feed(cut.firstBlock() + i).map(Kind.SPEED::si).orElseThrow();
            // row by row without lists: a part can have a million blocks, and the name alone needs quotes
            csv.append(index + 1)
                    .append(',')
                    .append(name)
                    .append(',')
                    .append(path.requirement(i).quality().label());
            csv.append(',').append(cut.line(i)).append(edge.isArc() ? ",arc," : ",line,");
            csv.append(path.requirement(i).isLead() ? "yes," : "no,");
            numbers(edge.startX(), edge.startY(), edge.endX(), edge.endY());
            if (edge.isArc()) {
                numbers(edge.centreX(), edge.centreY(), edge.radius());
            } else {
                csv.append(",,,");
            }
            numbers(length, feed, length / feed);
            csv.append(cause.label()).append('\n');
            before += length;
        }
    }

    private void numbers(double... values) {
        for (double value : values) {
            number(value);
            csv.append(',');
        }
    }

    /** A number to twelve decimals, without zeros at its end; the shortest form of a double takes four times as long. */
    private void number(double value) {
        if (!(Math.abs(value) < MAX_EXACT)) {
            csv.append(value);
            return;
        }
        long trillionths = Math.round(Math.abs(value) * TRILLION);
        long rest = trillionths % TRILLION;
        csv.append(value < 0 && trillionths > 0 ? "-" : "").append(trillionths / TRILLION);
        if (rest > 0) {
            csv.append('.');
            for (long tenth = TRILLION / 10; rest < tenth; tenth /= 10) {
                csv.append('0');
            }
            while (rest % 10 == 0) {
                rest /= 10;
            }
            csv.append(rest);
        }
    }
}
