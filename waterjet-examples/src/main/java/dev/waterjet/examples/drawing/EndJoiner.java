package dev.waterjet.examples.drawing;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Pairs the loose ends of strokes that meet within a gap. Ends are kept in a grid of cells as wide as the gap, so each end
 * looks at nine cells and the work is linear. An end that meets two others is a branch: which way the jet goes on is not
 * for a reader to guess.
 *
 * <p>End {@code 2 i} is the start of stroke i, end {@code 2 i + 1} its end.
 */
final class EndJoiner {

    private static final int NONE = -1;

    /** More ends in one cell than this are a branch for certain. */
    private static final int CROWD = 8;

    private final List<Stroke> strokes;
    private final double gapM;
    private final boolean mayBranch;
    private final Map<Long, int[]> cells = new HashMap<>();
    private final int[] partner;

    private EndJoiner(List<Stroke> strokes, double gapM, boolean mayBranch) {
        this.strokes = strokes;
        this.gapM = Math.max(gapM, 1e-9);
        this.mayBranch = mayBranch;
        this.partner = new int[2 * strokes.size()];
        Arrays.fill(partner, NONE);
    }

    /** For each end the end that it meets, or -1. */
    static int[] partners(List<Stroke> strokes, double gapM, boolean mayBranch) {
        EndJoiner joiner = new EndJoiner(strokes, gapM, mayBranch);
        joiner.run();
        return joiner.partner;
    }

    private void run() {
        for (int end = 0; end < partner.length; end++) {
            long key = key(cell(x(end)), cell(y(end)));
            int[] at = cells.getOrDefault(key, new int[0]);
            if (at.length <= CROWD) {
                int[] more = Arrays.copyOf(at, at.length + 1);
                more[at.length] = end;
                cells.put(key, more);
            }
        }
        for (int end = 0; end < partner.length; end++) {
            partner[end] = only(end);
        }
        for (int end = 0; end < partner.length; end++) {
            if (partner[end] != NONE && partner[partner[end]] != end) {
                partner[end] = NONE;
            }
        }
    }

    /** The one end that meets an end; -1 if there is none, or several where that is allowed. */
    private int only(int end) {
        int found = NONE;
        long column = cell(x(end));
        long row = cell(y(end));
        for (long c = column - 1; c <= column + 1; c++) {
            for (long r = row - 1; r <= row + 1; r++) {
                for (int other : cells.getOrDefault(key(c, r), new int[0])) {
                    if (other != end && distance(end, other) <= gapM) {
                        if (found != NONE) {
                            if (mayBranch) {
                                return NONE;
                            }
                            throw branch(end, found, other);
                        }
                        found = other;
                    }
                }
            }
        }
        return found;
    }

    private TextException branch(int end, int one, int other) {
        return new TextException(Message.of(
                        "drawing-branch",
                        "more than two lines meet at ({x}, {y}): {first}, {second}, {third}; a contour has no branches")
                .with("x", Kind.LENGTH, x(end), Units.MILLIMETRE)
                .with("y", Kind.LENGTH, y(end), Units.MILLIMETRE)
                .with("first", strokes.get(end / 2).origin().place())
                .with("second", strokes.get(one / 2).origin().place())
                .with("third", strokes.get(other / 2).origin().place()));
    }

    private double x(int end) {
        var path = strokes.get(end / 2).path();
        return path.xSi(end % 2 == 0 ? 0 : path.size());
    }

    private double y(int end) {
        var path = strokes.get(end / 2).path();
        return path.ySi(end % 2 == 0 ? 0 : path.size());
    }

    private double distance(int one, int other) {
        return Math.hypot(x(one) - x(other), y(one) - y(other));
    }

    private long cell(double coordinate) {
        return (long) Math.floor(coordinate / gapM);
    }

    private static long key(long column, long row) {
        return column * 0x9E3779B97F4A7C15L + row;
    }
}
