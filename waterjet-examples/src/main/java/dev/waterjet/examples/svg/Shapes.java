package dev.waterjet.examples.svg;

/** The basic shapes (SVG 1.1, section 9), each drawn from the start and in the direction that the standard says. */
final class Shapes {

    private Shapes() {}

    static void rectangle(Pen pen, double x, double y, double width, double height, double rx, double ry) {
        double roundX = Math.min(rx, width / 2);
        double roundY = Math.min(ry, height / 2);
        double right = x + width;
        double bottom = y + height;
        pen.moveTo(x + roundX, y);
        pen.lineTo(right - roundX, y);
        pen.arcTo(roundX, roundY, 0, false, true, right, y + roundY);
        pen.lineTo(right, bottom - roundY);
        pen.arcTo(roundX, roundY, 0, false, true, right - roundX, bottom);
        pen.lineTo(x + roundX, bottom);
        pen.arcTo(roundX, roundY, 0, false, true, x, bottom - roundY);
        pen.lineTo(x, y + roundY);
        pen.arcTo(roundX, roundY, 0, false, true, x + roundX, y);
        pen.close();
    }

    static void ellipse(Pen pen, double centreX, double centreY, double rx, double ry) {
        pen.moveTo(centreX + rx, centreY);
        pen.arcTo(rx, ry, 0, false, true, centreX - rx, centreY);
        pen.arcTo(rx, ry, 0, false, true, centreX + rx, centreY);
        pen.close();
    }

    /** A row of points, closed or not. */
    static void points(Pen pen, Scanner in, boolean isClosed) {
        boolean isFirst = true;
        while (!in.isAtEnd()) {
            double x = in.number();
            double y = in.number();
            if (isFirst) {
                pen.moveTo(x, y);
            } else {
                pen.lineTo(x, y);
            }
            isFirst = false;
        }
        if (isClosed) {
            pen.close();
        } else {
            pen.endOpen();
        }
    }
}
