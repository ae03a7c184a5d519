package dev.waterjet.part;

/** Area of a part and its first moments, in metres. */
final class PartMoments {

    private PartMoments() {}

    /** Area and its first moments about the axes: integrals of 1, x and y, by Green's theorem along each contour. */
    static double[] of(Part part) {
        double[] sums = new double[3];
        add(part.outline(), 1, sums);
        for (Contour hole : part.holes()) {
            add(hole, -1, sums);
        }
        return sums;
    }

    private static void add(Contour contour, int sign, double[] sums) {
        EdgeCursor edge = new EdgeCursor();
        double area = ContourGeometry.signedArea(contour);
        double signed = area >= 0 ? sign : -sign;
        double x = 0;
        double y = 0;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            x += edge.isArc() ? arcMomentX(edge) : (square(edge.x0, edge.x1) / 6) * (edge.y1 - edge.y0);
            y += edge.isArc() ? arcMomentY(edge) : -(square(edge.y0, edge.y1) / 6) * (edge.x1 - edge.x0);
        }
        sums[0] += signed * area;
        sums[1] += signed * x;
        sums[2] += signed * y;
    }

    private static double square(double a, double b) {
        return a * a + a * b + b * b;
    }

    /** Integral of x^2/2 dy along an arc. */
    private static double arcMomentX(EdgeCursor arc) {
        double from = Math.atan2(arc.y0 - arc.cy, arc.x0 - arc.cx);
        double to = from + arc.sweep;
        double r = arc.radius;
        double first = Math.sin(to) - Math.sin(from);
        double second = arc.sweep / 2 + (Math.sin(2 * to) - Math.sin(2 * from)) / 4;
        double third = first - (cube(Math.sin(to)) - cube(Math.sin(from))) / 3;
        return r / 2 * (arc.cx * arc.cx * first + 2 * arc.cx * r * second + r * r * third);
    }

    /** Integral of -y^2/2 dx along an arc. */
    private static double arcMomentY(EdgeCursor arc) {
        double from = Math.atan2(arc.y0 - arc.cy, arc.x0 - arc.cx);
        double to = from + arc.sweep;
        double r = arc.radius;
        double first = Math.cos(from) - Math.cos(to);
        double second = arc.sweep / 2 - (Math.sin(2 * to) - Math.sin(2 * from)) / 4;
        double third = first + (cube(Math.cos(to)) - cube(Math.cos(from))) / 3;
        return r / 2 * (arc.cy * arc.cy * first + 2 * arc.cy * r * second + r * r * third);
    }

    private static double cube(double x) {
        return x * x * x;
    }
}
