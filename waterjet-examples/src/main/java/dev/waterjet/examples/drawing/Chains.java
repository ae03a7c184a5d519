package dev.waterjet.examples.drawing;

import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.List;

/**
 * Joins strokes end to end into contours. A gap is closed by moving the end of a line; between two arcs, a gap up to the
 * rounding of coordinates is taken up by the second arc, a wider one is closed by a line.
 */
final class Chains {

    private static final double EXACT_M = 1e-9;

    /** Gap between arcs that the centre of the second takes up, in m. */
    private static final double ROUNDING_M = 1e-6;

    private final List<Stroke> strokes;
    private final int[] partner;
    private final GapLog gaps;
    private final boolean[] isUsed;
    private final List<Stroke> result = new ArrayList<>();

    private Chains(List<Stroke> strokes, int[] partner, GapLog gaps) {
        this.strokes = strokes;
        this.partner = partner;
        this.gaps = gaps;
        this.isUsed = new boolean[strokes.size()];
    }

    /** Joins open strokes; closed ones stay, in the order of the first stroke of each contour. */
    static List<Stroke> join(List<Stroke> strokes, double gapM, boolean mayBranch, GapLog gaps) {
        List<Stroke> open = new ArrayList<>();
        int[] index = new int[strokes.size()];
        for (int i = 0; i < strokes.size(); i++) {
            index[i] = open.size();
            if (!strokes.get(i).path().isClosed()) {
                open.add(strokes.get(i));
            }
        }
        Chains chains = new Chains(open, EndJoiner.partners(open, gapM, mayBranch), gaps);
        for (int i = 0; i < strokes.size(); i++) {
            if (strokes.get(i).path().isClosed()) {
                chains.result.add(strokes.get(i));
            } else if (!chains.isUsed[index[i]]) {
                chains.chain(index[i]);
            }
        }
        return chains.result;
    }

    private void chain(int first) {
        // back to the loose end from which the chain comes, or once round
        int entry = 2 * first;
        while (partner[entry] >= 0 && (partner[entry] ^ 1) != 2 * first) {
            entry = partner[entry] ^ 1;
        }
        boolean isLoop = partner[entry] >= 0;
        if (isLoop) {
            entry = 2 * first;
        }
        List<Integer> entries = new ArrayList<>();
        int at = entry;
        do {
            entries.add(at);
            isUsed[at / 2] = true;
            at = partner[at ^ 1];
        } while (at >= 0 && !isUsed[at / 2]);
        Stroke origin = strokes.get(first);
        boolean isAlone = entries.size() == 1 && !isLoop;
        result.add(
                isAlone
                        ? origin
                        : origin.with(build(entries, isLoop).named(origin.path().name())));
    }

    private Contour directed(int entry) {
        Contour path = strokes.get(entry / 2).path();
        return entry % 2 == 0 ? path : path.reversed();
    }

    private Contour build(List<Integer> entries, boolean isLoop) {
        List<Contour> paths = entries.stream().map(this::directed).toList();
        int n = paths.size();
        Contour first = paths.get(0);
        double[] start = {first.xSi(0), first.ySi(0)};
        if (isLoop) {
            start = joint(paths.get(n - 1), first, entries.get(0));
        }
        ContourBuilder builder = Contour.fromSi(start[0], start[1]);
        double[] pen = start.clone();
        for (int k = 0; k < n; k++) {
            Contour path = paths.get(k);
            boolean isLast = k == n - 1;
            double[] end = {path.xSi(path.size()), path.ySi(path.size())};
            double[] to = !isLast ? joint(path, paths.get(k + 1), entries.get(k + 1)) : isLoop ? start : end;
            draw(builder, path, pen, to);
        }
        return isLoop ? builder.close() : builder.open();
    }

    /** Point at which one path goes over into the next, beyond rounding of its own end where that is an arc. */
    private double[] joint(Contour path, Contour next, int entry) {
        int n = path.size();
        double[] end = {path.xSi(n), path.ySi(n)};
        double[] begin = {next.xSi(0), next.ySi(0)};
        double gap = Math.hypot(end[0] - begin[0], end[1] - begin[1]);
        if (gap <= EXACT_M) {
            return end;
        }
        gaps.add(gap, end, strokes.get(entry / 2).origin());
        return next.isArc(0) && !path.isArc(n - 1) ? begin : end;
    }

    /** Draws a path from where the pen is to a point near its end. */
    private void draw(ContourBuilder builder, Contour path, double[] pen, double[] to) {
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < path.size(); i++) {
            path.load(i, edge);
            builder.requirement(path.requirement(i)).asCurve(path.isCurve(i));
            boolean isLast = i == path.size() - 1;
            double toX = isLast ? to[0] : edge.endX();
            double toY = isLast ? to[1] : edge.endY();
            if (edge.isArc()) {
                lineBeyond(builder, pen, edge.startX(), edge.startY());
                double[] near = isLast && distance(to, edge.endX(), edge.endY()) <= ROUNDING_M
                        ? to
                        : new double[] {edge.endX(), edge.endY()};
                builder.arcToSi(
                        near[0], near[1], edge.centreX(), edge.centreY(), edge.sweep() > 0 ? Side.LEFT : Side.RIGHT);
                move(pen, near[0], near[1]);
                if (isLast) {
                    line(builder, pen, to[0], to[1]);
                }
            } else {
                line(builder, pen, toX, toY);
            }
        }
    }

    private static void lineBeyond(ContourBuilder builder, double[] pen, double toX, double toY) {
        if (distance(pen, toX, toY) > ROUNDING_M) {
            line(builder, pen, toX, toY);
        }
    }

    private static void line(ContourBuilder builder, double[] pen, double toX, double toY) {
        if (distance(pen, toX, toY) > EXACT_M) {
            builder.lineToSi(toX, toY);
            move(pen, toX, toY);
        }
    }

    private static void move(double[] pen, double toX, double toY) {
        pen[0] = toX;
        pen[1] = toY;
    }

    private static double distance(double[] pen, double toX, double toY) {
        return Math.hypot(toX - pen[0], toY - pen[1]);
    }
}
