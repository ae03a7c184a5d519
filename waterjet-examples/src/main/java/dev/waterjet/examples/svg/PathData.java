package dev.waterjet.examples.svg;

/** Reader of the commands of a path (SVG 1.1, section 8.3; SVG 2, section 9.3), which it draws. */
final class PathData {

    private final Scanner in;
    private final Pen pen;

    /** Second control point of the last cubic or only one of the last quadratic, for the smooth forms. */
    private double controlX;

    private double controlY;
    private char before;

    private PathData(Scanner in, Pen pen) {
        this.in = in;
        this.pen = pen;
    }

    static void draw(Scanner in, Pen pen) {
        new PathData(in, pen).draw();
    }

    private void draw() {
        if (in.isAtEnd()) {
            return;
        }
        // each path starts with the pen at the origin, so that a relative first move is absolute (SVG 2, 9.3.3)
        if (Character.toUpperCase(in.peek()) != 'M') {
            throw in.fault("a path starts with M or m");
        }
        while (!in.isAtEnd()) {
            int place = in.place();
            char command = in.take();
            if ("MmLlHhVvCcSsQqTtAaZz".indexOf(command) < 0) {
                throw in.fault(place, "unknown path command \"" + command + "\"");
            }
            commands(command);
        }
        pen.endOpen();
    }

    /** One command, and the same again as long as numbers follow. */
    private void commands(char command) {
        boolean isRelative = Character.isLowerCase(command);
        char kind = Character.toUpperCase(command);
        if (kind == 'Z') {
            pen.close();
            before = kind;
            return;
        }
        boolean isFirst = true;
        do {
            one(kind == 'M' && !isFirst ? 'L' : kind, isRelative);
            isFirst = false;
            if (in.peek() == ',') {
                in.take();
                if (!in.isNumberNext()) {
                    throw in.fault("a number is missing after the comma");
                }
            }
        } while (in.isNumberNext());
    }

    private void one(char kind, boolean isRelative) {
        double fromX = isRelative ? pen.x() : 0;
        double fromY = isRelative ? pen.y() : 0;
        double currentX = pen.x();
        double currentY = pen.y();
        switch (kind) {
            case 'M' -> pen.moveTo(fromX + in.number(), fromY + in.number());
            case 'L' -> pen.lineTo(fromX + in.number(), fromY + in.number());
            case 'H' -> pen.lineTo(fromX + in.number(), currentY);
            case 'V' -> pen.lineTo(currentX, fromY + in.number());
            case 'C' -> cubic(fromX + in.number(), fromY + in.number(), fromX, fromY);
            case 'S' -> cubic(mirrored(currentX, controlX, "CS"), mirrored(currentY, controlY, "CS"), fromX, fromY);
            case 'Q' -> quadratic(fromX + in.number(), fromY + in.number(), fromX, fromY);
            case 'T' -> quadratic(mirrored(currentX, controlX, "QT"), mirrored(currentY, controlY, "QT"), fromX, fromY);
            default -> arc(fromX, fromY);
        }
        before = kind;
    }

    private double mirrored(double current, double control, String after) {
        return after.indexOf(before) >= 0 ? 2 * current - control : current;
    }

    private void cubic(double x1, double y1, double fromX, double fromY) {
        controlX = fromX + in.number();
        controlY = fromY + in.number();
        pen.cubicTo(x1, y1, controlX, controlY, fromX + in.number(), fromY + in.number());
    }

    private void quadratic(double x1, double y1, double fromX, double fromY) {
        controlX = x1;
        controlY = y1;
        pen.quadraticTo(x1, y1, fromX + in.number(), fromY + in.number());
    }

    private void arc(double fromX, double fromY) {
        double radiusX = in.number();
        double radiusY = in.number();
        double degrees = in.number();
        boolean isLarge = in.flag();
        boolean isPositive = in.flag();
        pen.arcTo(radiusX, radiusY, degrees, isLarge, isPositive, fromX + in.number(), fromY + in.number());
    }
}
