package dev.waterjet.examples.plan;

import dev.waterjet.examples.chart.Fingerprint;
import dev.waterjet.examples.chart.Palette;
import dev.waterjet.examples.chart.SvgText;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.part.Box;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Edge;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.List;

/** The part from above, each block in the colour of its feed, with a legend. */
final class PartDrawing {

    private static final int STEPS = 12;
    private static final int WIDTH = 920;
    private static final int MARGIN = 14;
    private static final int TALLEST = 620;

    /** Resolution of the drawing. */
    private static final double FINEST_PX = 0.35;

    private final PartPlan plan;
    private double leftM = Double.POSITIVE_INFINITY;
    private double lowM = Double.POSITIVE_INFINITY;
    private double rightM = Double.NEGATIVE_INFINITY;
    private double highM = Double.NEGATIVE_INFINITY;
    private double slowest = Double.POSITIVE_INFINITY;
    private double fastest;
    private double scale;
    private double height;
    private final List<StringBuilder> lines = new ArrayList<>();
    private int step = -1;
    private double penX;
    private double penY;

    private PartDrawing(PartPlan plan) {
        this.plan = plan;
        for (int i = 0; i < STEPS; i++) {
            lines.add(new StringBuilder());
        }
    }

    static String svg(PartPlan plan) {
        return new PartDrawing(plan).draw();
    }

    private String draw() {
        measure();
        scale = Math.min((WIDTH - 2 * MARGIN) / (rightM - leftM), (TALLEST - 2 * MARGIN) / (highM - lowM));
        height = scale * (highM - lowM) + 2 * MARGIN;
        double width = scale * (rightM - leftM) + 2 * MARGIN;
        StringBuilder marks = new StringBuilder();
        for (CutPlan cut : plan.cuts()) {
            Contour path = cut.path();
            step = -1;
            for (int i = 0; i < path.size(); i++) {
                add(path.edge(i), cut.feedSi(i));
            }
            if (plan.cuts().size() <= 500) {
                marks.append("<circle cx=\"")
                        .append(px(path.start().xSi()))
                        .append("\" cy=\"")
                        .append(py(path.start().ySi()))
                        .append("\" r=\"3.5\"/>");
            }
        }
        StringBuilder svg = new StringBuilder();
        svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ")
                .append(SvgText.number(width))
                .append(' ')
                .append(SvgText.number(height))
                .append("""
                    " class="part">
                    <g fill="none" stroke-width="3" stroke-linecap="round" stroke-linejoin="round">
                    """);
        for (int i = 0; i < STEPS; i++) {
            if (!lines.get(i).isEmpty()) {
                svg.append("<path stroke=\"")
                        .append(colour(i))
                        .append("\" d=\"")
                        .append(lines.get(i))
                        .append("\"/>\n");
            }
        }
        svg.append("</g>\n<g fill=\"var(--paper)\" stroke=\"var(--ink)\" stroke-width=\"1.5\">")
                .append(marks)
                .append("</g>\n</svg>");
        return SvgText.named(svg.toString(), "The part from above", alt(), fingerprint());
    }

    private void measure() {
        for (CutPlan cut : plan.cuts()) {
            Box box = cut.path().box();
            leftM = Math.min(leftM, box.minimum().xSi());
            lowM = Math.min(lowM, box.minimum().ySi());
            rightM = Math.max(rightM, box.maximum().xSi());
            highM = Math.max(highM, box.maximum().ySi());
            for (int i = 0; i < cut.path().size(); i++) {
                slowest = Math.min(slowest, cut.feedSi(i));
                fastest = Math.max(fastest, cut.feedSi(i));
            }
        }
        double least = 0.02 * Math.max(rightM - leftM, highM - lowM);
        rightM = Math.max(rightM, leftM + least);
        highM = Math.max(highM, lowM + least);
    }

    private void add(Edge edge, double feed) {
        int next = (int) Math.min(STEPS - 1, Math.floor(share(feed) * STEPS));
        StringBuilder line = lines.get(next);
        double x = px(edge.start().xSi());
        double y = py(edge.start().ySi());
        double toX = px(edge.end().xSi());
        double toY = py(edge.end().ySi());
        if (next != step) {
            line.append('M').append(x).append(' ').append(y);
            step = next;
            penX = x;
            penY = y;
        } else if (!edge.isArc() && Math.hypot(toX - penX, toY - penY) < FINEST_PX) {
            return;
        }
        if (edge.isArc()) {
            arc(edge, line, toX, toY);
        } else {
            line.append('L').append(toX).append(' ').append(toY);
        }
        penX = toX;
        penY = toY;
    }

    private void arc(Edge edge, StringBuilder line, double toX, double toY) {
        double radius = Kind.LENGTH.si(edge.radius().orElseThrow()) * scale;
        double sweep = Math.abs(Kind.ANGLE.si(edge.sweep()));
        // y points down on the page, so that a turn to the left is against the positive direction
        int way = edge.turn().orElseThrow() == Side.LEFT ? 0 : 1;
        if (sweep > 1.9 * Math.PI) {
            double acrossX =
                    px(2 * edge.centre().orElseThrow().xSi() - edge.start().xSi());
            double acrossY =
                    py(2 * edge.centre().orElseThrow().ySi() - edge.start().ySi());
            arc(line, radius, 0, way, acrossX, acrossY);
            arc(line, radius, sweep - Math.PI > Math.PI ? 1 : 0, way, toX, toY);
        } else {
            arc(line, radius, sweep > Math.PI ? 1 : 0, way, toX, toY);
        }
    }

    private static void arc(StringBuilder line, double radius, int isLong, int way, double toX, double toY) {
        line.append('A')
                .append(SvgText.number(radius))
                .append(' ')
                .append(SvgText.number(radius))
                .append(" 0 ")
                .append(isLong)
                .append(' ')
                .append(way)
                .append(' ')
                .append(toX)
                .append(' ')
                .append(toY);
    }

    private double share(double feed) {
        return fastest - slowest < 1e-9 * fastest ? 1 : (feed - slowest) / (fastest - slowest);
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

    /** The scale of colours, with the slowest and the fastest feed at its ends. */
    static String legend(PartPlan plan) {
        PartDrawing drawing = new PartDrawing(plan);
        drawing.measure();
        StringBuilder stops = new StringBuilder();
        for (int i = 0; i < STEPS; i++) {
            stops.append(i == 0 ? "" : ", ").append(colour(i));
        }
        return "<p class=\"legend\"><span>" + text(drawing.slowest) + "</span><span class=\"scale\""
                + " style=\"background:linear-gradient(to right, " + stops + ")\"></span><span>"
                + text(drawing.fastest) + "</span></p>";
    }

    private String alt() {
        return plan.cuts().size() + " cuts over " + text("", rightM - leftM) + " by " + text("", highM - lowM)
                + ", in the colour of their feed rate: dark for the slowest, " + text(slowest)
                + ", light for the fastest, " + text(fastest) + ". Rings mark the pierce points.";
    }

    private static String text(double feed) {
        return QuantityText.round(feed * 60e3, 3) + " mm/min";
    }

    private static String text(String before, double lengthM) {
        return before + QuantityText.round(lengthM * 1000, 4) + " mm";
    }

    private String fingerprint() {
        return new Fingerprint()
                .add(alt())
                .add(leftM, lowM, rightM, highM, slowest, fastest)
                .text();
    }
}
