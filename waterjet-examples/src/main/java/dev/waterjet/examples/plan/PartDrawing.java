package dev.waterjet.examples.plan;

import dev.waterjet.examples.chart.Fingerprint;
import dev.waterjet.examples.chart.Palette;
import dev.waterjet.examples.chart.SvgText;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Box;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.plan.Move;
import dev.waterjet.plan.PlannedCut;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The part from above: each move in the colour of its feed rate, pierce points numbered in order, arrows for the direction,
 * the axes of the program at its origin.
 */
final class PartDrawing {

    private static final int STEPS = 12;
    private static final int WIDTH = 920;
    private static final int MARGIN = 34;
    private static final int TALLEST = 560;

    /** Cuts up to which marks have their full size, and beyond which they would hide the part. */
    private static final int FEW = 60;

    private static final int MAX_MARKS = 500;

    /** Places nearer than this on the drawing are one place. */
    private static final double FINEST_PX = 0.35;

    private final PlanReport report;
    private final List<StringBuilder> lines = new ArrayList<>();
    private double leftM;
    private double lowM;
    private double rightM;
    private double highM;
    private double slowest = Double.POSITIVE_INFINITY;
    private double fastest;
    private double scale;
    private double height;
    private int step = -1;
    private double penX;
    private double penY;

    private PartDrawing(PlanReport report) {
        this.report = report;
        for (int i = 0; i < STEPS; i++) {
            lines.add(new StringBuilder());
        }
        measure();
    }

    static String svg(PlanReport report) {
        return new PartDrawing(report).draw();
    }

    private void measure() {
        Box box = report.all();
        leftM = box.minimum().xSi();
        lowM = box.minimum().ySi();
        rightM = box.maximum().xSi();
        highM = box.maximum().ySi();
        for (Move move : report.plan().moves()) {
            if (move.limit().isPresent()) {
                slowest = Math.min(slowest, Kind.SPEED.si(move.feed()));
                fastest = Math.max(fastest, Kind.SPEED.si(move.feed()));
            }
        }
        double least = 0.02 * Math.max(rightM - leftM, highM - lowM);
        rightM = Math.max(rightM, leftM + least);
        highM = Math.max(highM, lowM + least);
        scale = Math.min((WIDTH - 2 * MARGIN) / (rightM - leftM), (TALLEST - 2 * MARGIN) / (highM - lowM));
        height = scale * (highM - lowM) + 2 * MARGIN;
    }

    private String draw() {
        for (Move move : report.plan().moves()) {
            if (move.limit().isPresent()) {
                add(move);
            } else {
                step = -1;
            }
        }
        StringBuilder svg = new StringBuilder("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ")
                .append(SvgText.number(scale * (rightM - leftM) + 2 * MARGIN))
                .append(' ')
                .append(SvgText.number(height))
                .append("\" class=\"part\">\n");
        axes(svg);
        svg.append("<g fill=\"none\" stroke-width=\"3\" stroke-linecap=\"round\" stroke-linejoin=\"round\">\n");
        for (int i = 0; i < STEPS; i++) {
            if (!lines.get(i).isEmpty()) {
                svg.append("<path stroke=\"").append(colour(i)).append("\" d=\"");
                svg.append(lines.get(i)).append("\"/>\n");
            }
        }
        svg.append("</g>\n");
        marks(svg);
        return SvgText.named(svg.append("</svg>").toString(), "The part from above", alt(), fingerprint());
    }

    /** Axes of the program from its origin, or from the lower left corner of the drawing where the origin is outside. */
    private void axes(StringBuilder svg) {
        boolean isInside = leftM <= 0 && rightM >= 0 && lowM <= 0 && highM >= 0;
        double x = isInside ? px(0) : MARGIN - 20.0;
        double y = isInside ? py(0) : height - MARGIN + 20;
        svg.append("<g stroke=\"var(--quiet)\" stroke-width=\"1.5\" fill=\"none\"><path d=\"M")
                .append(x)
                .append(' ')
                .append(y)
                .append("h34m-6 -4l6 4l-6 4M")
                .append(x)
                .append(' ')
                .append(y)
                .append("v-34m-4 6l4 -6l4 6\"/></g>\n")
                .append("<g fill=\"var(--quiet)\" font-size=\"13\">");
        text(svg, x + 38, y + 4, "X");
        text(svg, x - 4, y - 38, "Y");
        if (isInside) {
            text(svg, x + 4, y + 15, "0");
        }
        svg.append("</g>\n");
    }

    private static void text(StringBuilder svg, double x, double y, String text) {
        svg.append("<text x=\"").append(SvgText.number(x)).append("\" y=\"").append(SvgText.number(y));
        svg.append("\">").append(text).append("</text>");
    }

    private void marks(StringBuilder svg) {
        List<PlannedCut> cuts = report.plan().cuts();
        StringBuilder numbers = new StringBuilder();
        if (!hasMarks(report)) {
            return;
        }
        double size = cuts.size() <= FEW ? 1 : Math.max(0.6, Math.sqrt((double) FEW / cuts.size()));
        svg.append("<g fill=\"var(--paper)\" stroke=\"var(--ink)\" stroke-width=\"1.5\">");
        for (int i = 0; i < cuts.size(); i++) {
            Point at = cuts.get(i).feeds().get(0).source().start();
            svg.append("<circle cx=\"").append(px(at.xSi())).append("\" cy=\"").append(py(at.ySi()));
            svg.append("\" r=\"").append(SvgText.number(3.5 * size)).append("\"/>");
            text(numbers, px(at.xSi()) + 6 * size, py(at.ySi()) - 6 * size, Integer.toString(i + 1));
        }
        svg.append("</g>\n<g fill=\"var(--ink)\" stroke=\"none\">");
        Move[] longest = longestMoves();
        for (Move move : longest) {
            arrow(svg, move, size);
        }
        // above lines and arrows, with a rim, so that none hides a number
        svg.append("</g>\n<g fill=\"var(--ink)\" font-size=\"")
                .append(SvgText.number(15 * size))
                .append("\" font-weight=\"650\" paint-order=\"stroke\" stroke=\"var(--paper)\" stroke-width=\"")
                .append(SvgText.number(3 * size))
                .append("\">")
                .append(numbers);
        svg.append("</g>\n");
    }

    /** Whether cuts have their numbers and directions: too many would hide the part. */
    static boolean hasMarks(PlanReport report) {
        return report.plan().cuts().size() <= MAX_MARKS;
    }

    /** The longest move of each cut; null where a cut has none. */
    private @Nullable Move[] longestMoves() {
        @Nullable Move[] longest = new Move[report.plan().cuts().size()];
        for (Move move : report.plan().moves()) {
            if (move.purpose() == Move.Purpose.CUT) {
                Move before = longest[move.cut()];
                if (before == null || Kind.LENGTH.si(move.length()) > Kind.LENGTH.si(before.length())) {
                    longest[move.cut()] = move;
                }
            }
        }
        return longest;
    }

    /** An arrowhead in the middle of a move; none on a short one. */
    private void arrow(StringBuilder svg, @Nullable Move longest, double size) {
        if (longest == null || Kind.LENGTH.si(longest.length()) * scale < 16 * size) {
            return;
        }
        double[] place = middle(longest);
        double angle = Math.toDegrees(Math.atan2(-place[3], place[2]));
        svg.append("<path d=\"M6 0L-5 -5L-5 5Z\" transform=\"translate(")
                .append(px(place[0]))
                .append(' ');
        svg.append(py(place[1]))
                .append(") rotate(")
                .append(SvgText.number(angle))
                .append(size == 1 ? "" : ") scale(" + SvgText.number(size))
                .append(")\"/>");
    }

    /** Place and direction in the middle of a move. */
    private static double[] middle(Move move) {
        double x0 = move.start().xSi();
        double y0 = move.start().ySi();
        double x1 = move.end().xSi();
        double y1 = move.end().ySi();
        if (!move.isArc()) {
            return new double[] {(x0 + x1) / 2, (y0 + y1) / 2, x1 - x0, y1 - y0};
        }
        Point centre = move.centre().orElseThrow();
        double sign = move.turn().orElseThrow() == Side.LEFT ? 1 : -1;
        double radius = Math.hypot(x0 - centre.xSi(), y0 - centre.ySi());
        double half = sign * Kind.LENGTH.si(move.length()) / radius / 2;
        double dx = (x0 - centre.xSi()) * Math.cos(half) - (y0 - centre.ySi()) * Math.sin(half);
        double dy = (x0 - centre.xSi()) * Math.sin(half) + (y0 - centre.ySi()) * Math.cos(half);
        return new double[] {centre.xSi() + dx, centre.ySi() + dy, -sign * dy, sign * dx};
    }

    private void add(Move move) {
        int next = (int) Math.min(STEPS - 1, Math.floor(share(Kind.SPEED.si(move.feed())) * STEPS));
        StringBuilder line = lines.get(next);
        double x = px(move.start().xSi());
        double y = py(move.start().ySi());
        double toX = px(move.end().xSi());
        double toY = py(move.end().ySi());
        if (next != step) {
            line.append('M').append(x).append(' ').append(y);
            step = next;
            penX = x;
            penY = y;
        } else if (!move.isArc() && Math.hypot(toX - penX, toY - penY) < FINEST_PX) {
            return;
        }
        if (move.isArc()) {
            arc(move, line, toX, toY);
        } else {
            line.append('L').append(toX).append(' ').append(toY);
        }
        penX = toX;
        penY = toY;
    }

    private void arc(Move move, StringBuilder line, double toX, double toY) {
        Point centre = move.centre().orElseThrow();
        double radiusM = Kind.LENGTH.si(centre.distance(move.start()));
        double sweep = Kind.LENGTH.si(move.length()) / radiusM;
        // y points down on the page, so that a turn to the left is against the positive direction
        int way = move.turn().orElseThrow() == Side.LEFT ? 0 : 1;
        if (sweep > Math.PI) {
            double[] half = middle(move);
            arc(line, radiusM * scale, way, px(half[0]), py(half[1]));
        }
        arc(line, radiusM * scale, way, toX, toY);
    }

    private static void arc(StringBuilder line, double radius, int way, double toX, double toY) {
        line.append('A')
                .append(SvgText.number(radius))
                .append(' ')
                .append(SvgText.number(radius))
                .append(" 0 0 ");
        line.append(way).append(' ').append(toX).append(' ').append(toY);
    }

    private double share(double feed) {
        return fastest - slowest < 1e-3 * fastest ? 1 : (feed - slowest) / (fastest - slowest);
    }

    private static String colour(int step) {
        return Palette.scale((step + 0.5) / STEPS);
    }

    private double px(double xM) {
        return Math.round(100 * (MARGIN + scale * (xM - leftM))) / 100.0;
    }

    private double py(double yM) {
        return Math.round(100 * (height - MARGIN - scale * (yM - lowM))) / 100.0;
    }

    /** The scale of colours, with the lowest and the highest feed rate at its ends; one feed rate needs no scale. */
    static String legend(PlanReport report) {
        PartDrawing drawing = new PartDrawing(report);
        if (drawing.share(drawing.slowest) == 1) {
            return "<p class=\"legend\">One feed rate: " + drawing.text(drawing.fastest) + "</p>";
        }
        StringBuilder stops = new StringBuilder();
        for (int i = 0; i < STEPS; i++) {
            stops.append(i == 0 ? "" : ", ").append(colour(i));
        }
        return "<p class=\"legend\"><span>" + drawing.text(drawing.slowest) + "</span><span class=\"scale\""
                + " style=\"background:linear-gradient(to right, " + stops + ")\"></span><span>"
                + drawing.text(drawing.fastest) + "</span></p>";
    }

    private String alt() {
        return report.plan().cuts().size() + " cuts of a part of " + report.size()
                + ", in the colour of their feed rate, from " + text(slowest) + " to " + text(fastest)
                + (hasMarks(report) ? ". Rings mark the pierce points, numbers the order, arrows the direction." : ".");
    }

    private String text(double feed) {
        return ReportText.of(Kind.SPEED, Kind.SPEED.of(feed), report.units().feed());
    }

    private String fingerprint() {
        return new Fingerprint()
                .add(alt())
                .add(leftM, lowM, rightM, highM, slowest, fastest)
                .text();
    }
}
