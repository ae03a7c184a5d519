package dev.waterjet.examples.svg;

import java.util.Set;

/** Shapes of a drawing, drawn from their attributes. */
final class SvgShapes {

    private static final Set<String> DRAWN = Set.of("path", "rect", "circle", "ellipse", "line", "polyline", "polygon");

    private SvgShapes() {}

    /** Whether an element has a line to cut. */
    static boolean isDrawn(Tag tag) {
        return DRAWN.contains(tag.name());
    }

    static void draw(Tag tag, Pen pen) {
        switch (tag.name()) {
            case "path" -> PathData.draw(tag.scan("d"), pen);
            case "rect" -> rectangle(tag, pen);
            case "circle" -> ellipse(tag, pen, tag.size("r"), tag.size("r"));
            case "ellipse" -> ellipse(tag, pen, tag.size("rx"), tag.size("ry"));
            case "line" -> {
                pen.moveTo(tag.length("x1", 0), tag.length("y1", 0));
                pen.lineTo(tag.length("x2", 0), tag.length("y2", 0));
                pen.endOpen();
            }
            case "polyline" -> Shapes.points(pen, tag.scan("points"), false);
            case "polygon" -> Shapes.points(pen, tag.scan("points"), true);
            default -> throw tag.fault("<" + tag.name() + "> cannot be cut: turn it into paths in the drawing program");
        }
    }

    private static void rectangle(Tag tag, Pen pen) {
        double width = tag.size("width");
        double height = tag.size("height");
        // a missing radius is as the other
        double rx = tag.length("rx", tag.length("ry", 0));
        double ry = tag.length("ry", rx);
        if (width > 0 && height > 0) {
            Shapes.rectangle(
                    pen, tag.length("x", 0), tag.length("y", 0), width, height, Math.max(0, rx), Math.max(0, ry));
        }
    }

    private static void ellipse(Tag tag, Pen pen, double rx, double ry) {
        if (rx > 0 && ry > 0) {
            Shapes.ellipse(pen, tag.length("cx", 0), tag.length("cy", 0), rx, ry);
        }
    }
}
