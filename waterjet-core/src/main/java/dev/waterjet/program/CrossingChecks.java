package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Checks that closed contours cross neither themselves nor each other. Touching is no crossing, nor is a spike or a slit, which
 * runs out and back on the same line. A crossing that cuts off a loop no wider than the rounding of the program's coordinates
 * is none: the sides of a narrow slot, rounded, may cross.
 */
final class CrossingChecks {

    private static final double SAME_M = 1e-9;
    private static final double SAME_RAD = 1e-6;

    /** Width that rounding takes from or adds to a narrow loop, in last places of the coordinates: one on either side. */
    private static final double ROUNDED_PLACES = 2;

    /** One edge of a contour, and its extent. */
    private record Item(int cut, int edge, double from, double to, double low, double high) {}

    private final ContourNesting nesting;
    private final String text;
    private final EdgeCursor a = new EdgeCursor();
    private final EdgeCursor b = new EdgeCursor();
    private final EdgeCursor neighbour = new EdgeCursor();
    private final double[] places = new double[4];
    private final double[] rays = new double[4];
    private final Set<Long> reported = new HashSet<>();

    CrossingChecks(ContourNesting nesting, String text) {
        this.nesting = nesting;
        this.text = text;
    }

    void find(List<ProgramFinding> found) {
        List<Item> items = items();
        for (int i = 0; i < items.size(); i++) {
            Item first = items.get(i);
            for (int k = i + 1; k < items.size() && items.get(k).from() <= first.to(); k++) {
                Item second = items.get(k);
                if (second.low() <= first.high() && first.low() <= second.high()) {
                    compare(first, second, found);
                }
            }
        }
    }

    /** Edges by their lower end along the axis on which they are shorter, so that few overlap. */
    private List<Item> items() {
        List<Item> alongX = new ArrayList<>();
        double sumX = 0;
        double sumY = 0;
        for (int c = 0; c < nesting.cuts.size(); c++) {
            Contour contour = nesting.contours.get(c);
            for (int i = 0; contour.isClosed() && i < contour.size(); i++) {
                contour.load(i, a);
                alongX.add(new Item(c, i, a.minimumX(), a.maximumX(), a.minimumY(), a.maximumY()));
                sumX += a.maximumX() - a.minimumX();
                sumY += a.maximumY() - a.minimumY();
            }
        }
        boolean isTurned = sumY < sumX;
        return alongX.stream()
                .map(item -> isTurned
                        ? new Item(item.cut(), item.edge(), item.low(), item.high(), item.from(), item.to())
                        : item)
                .sorted(Comparator.comparingDouble(Item::from))
                .toList();
    }

    private void compare(Item one, Item other, List<ProgramFinding> found) {
        boolean isInOrder = one.cut() < other.cut() || (one.cut() == other.cut() && one.edge() < other.edge());
        Item first = isInOrder ? one : other;
        Item second = isInOrder ? other : one;
        Contour contour = nesting.contours.get(first.cut());
        Contour otherContour = nesting.contours.get(second.cut());
        boolean isSame = first.cut() == second.cut();
        int apart = second.edge() - first.edge();
        if (isSame && (apart == 1 || apart == contour.size() - 1)) {
            return;
        }
        contour.load(first.edge(), a);
        otherContour.load(second.edge(), b);
        int count = a.crossings(b, places);
        for (int i = 0; i < count; i++) {
            double x = places[2 * i];
            double y = places[2 * i + 1];
            ray(contour, first.edge(), a, x, y, 0);
            ray(otherContour, second.edge(), b, x, y, 2);
            if (isCrossing()
                    && !(isSame && isRounding(first, second, x, y))
                    && reported.add(first.cut() * 4_000_000_007L + second.cut())) {
                found.add(finding(first, second, x, y));
            }
        }
    }

    private boolean isRounding(Item first, Item second, double x, double y) {
        double width = ROUNDED_PLACES * nesting.cuts.get(first.cut()).lastPlaceM(text);
        return CutOffLoop.isThin(nesting.contours.get(first.cut()), first.edge(), second.edge(), x, y, width);
    }

    private ProgramFinding finding(Item first, Item second, double x, double y) {
        ProgramCut cut = nesting.cuts.get(first.cut());
        ProgramCut other = nesting.cuts.get(second.cut());
        boolean isSame = first.cut() == second.cut();
        Message message = isSame
                ? Message.of("contour-crosses-itself", "the contour crosses itself at ({x}, {y}), by line {other}")
                : Message.of("contours-cross", "the contour crosses that of line {other} at ({x}, {y})");
        int otherLine = line(other, second.edge());
        return ProgramFinding.violated(
                line(cut, first.edge()),
                x,
                y,
                message.with("x", Kind.LENGTH, x, Units.MILLIMETRE)
                        .with("y", Kind.LENGTH, y, Units.MILLIMETRE)
                        .with("other", otherLine));
    }

    /** Line of an edge of the contour; the closing line of a contour has none of its own. */
    private static int line(ProgramCut cut, int edge) {
        return cut.line(Math.min(cut.leadIn() + edge, cut.size() - 1));
    }

    /** Puts the angles in which a contour comes to a place on its edge, seen from there, and leaves it. */
    private void ray(Contour contour, int edge, EdgeCursor at, double x, double y, int into) {
        boolean isStart = Math.hypot(x - at.startX(), y - at.startY()) <= SAME_M;
        boolean isEnd = Math.hypot(x - at.endX(), y - at.endY()) <= SAME_M;
        double out = isEnd ? startOf(contour, edge + 1) : angleAt(at, x, y);
        double in = isStart ? endOf(contour, edge - 1) : angleAt(at, x, y);
        rays[into] = in + Math.PI;
        rays[into + 1] = out;
    }

    private double startOf(Contour contour, int edge) {
        contour.load(Math.floorMod(edge, contour.size()), neighbour);
        return Math.atan2(neighbour.startDirectionY(), neighbour.startDirectionX());
    }

    private double endOf(Contour contour, int edge) {
        contour.load(Math.floorMod(edge, contour.size()), neighbour);
        return Math.atan2(neighbour.endDirectionY(), neighbour.endDirectionX());
    }

    private static double angleAt(EdgeCursor edge, double x, double y) {
        return edge.isArc()
                ? Math.atan2(y - edge.centreY(), x - edge.centreX()) + Math.signum(edge.sweep()) * Math.PI / 2
                : Math.atan2(edge.startDirectionY(), edge.startDirectionX());
    }

    /** Whether of the two rays of one path each lies on another side of the other path. */
    private boolean isCrossing() {
        double wedge = turn(rays[0], rays[1]);
        double in = turn(rays[2], rays[1]);
        double out = turn(rays[3], rays[1]);
        boolean isClear = isAway(in, 0) && isAway(in, wedge) && isAway(out, 0) && isAway(out, wedge);
        return isClear && (in < wedge) != (out < wedge);
    }

    /** Angle from one direction to another to the left, 0 to 2 pi. */
    private static double turn(double to, double from) {
        double angle = to - from;
        return angle - 2 * Math.PI * Math.floor(angle / (2 * Math.PI));
    }

    private static boolean isAway(double angle, double from) {
        double apart = Math.abs(angle - from);
        return Math.min(apart, 2 * Math.PI - apart) > SAME_RAD;
    }
}
