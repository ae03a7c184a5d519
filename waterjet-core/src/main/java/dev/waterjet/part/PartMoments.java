package dev.waterjet.part;

/** Area of a part and its first moments, in metres. */
final class PartMoments {

    private PartMoments() {}

    /** Area and its first moments about the axes: integrals of 1, x and y over the part. */
    static double[] of(Part part) {
        double[] sums = new double[3];
        add(part.outline(), 1, sums);
        for (Contour hole : part.holes()) {
            add(hole, -1, sums);
        }
        return sums;
    }

    /** The triangles between chords and the start, and the segments of circles between chords and arcs. */
    private static void add(Contour contour, int sign, double[] sums) {
        EdgeCursor edge = new EdgeCursor();
        // about the start, so that a contour far from the origin loses no digits
        double startX = contour.xSi(0);
        double startY = contour.ySi(0);
        double area = 0;
        double x = 0;
        double y = 0;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            double x0 = edge.x0 - startX;
            double y0 = edge.y0 - startY;
            double x1 = edge.x1 - startX;
            double y1 = edge.y1 - startY;
            double triangle = (x0 * y1 - x1 * y0) / 2;
            area += triangle;
            x += triangle * (x0 + x1) / 3;
            y += triangle * (y0 + y1) / 3;
            if (edge.isArc()) {
                double segment = EdgeKernel.segment(edge);
                double share = centreShare(edge.sweep);
                area += segment;
                x += segment * (edge.cx + share * (edge.xAt(0.5) - edge.cx) - startX);
                y += segment * (edge.cy + share * (edge.yAt(0.5) - edge.cy) - startY);
            }
        }
        double signed = area >= 0 ? sign : -sign;
        sums[0] += signed * area;
        sums[1] += signed * (x + startX * area);
        sums[2] += signed * (y + startY * area);
    }

    /**
     * Distance of the centre of area of a segment of a circle from the centre, over the radius: {@code 4 sin^3(a/2) / (3 (a - sin
     * a))} for the angle a (any text-book of statics).
     */
    private static double centreShare(double sweep) {
        double sine = Math.sin(sweep / 2);
        return 4 * sine * sine * sine / (3 * EdgeKernel.excess(sweep));
    }
}
