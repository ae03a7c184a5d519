package dev.waterjet.part;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;

/** Loops over the edges of a contour, in metres. */
final class ContourGeometry {

    private ContourGeometry() {}

    static double length(Contour contour) {
        EdgeCursor edge = new EdgeCursor();
        double sum = 0;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            sum += edge.length();
        }
        return sum;
    }

    static Box box(Contour contour) {
        EdgeCursor edge = new EdgeCursor();
        double minimumX = Double.POSITIVE_INFINITY;
        double minimumY = Double.POSITIVE_INFINITY;
        double maximumX = Double.NEGATIVE_INFINITY;
        double maximumY = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            minimumX = Math.min(minimumX, edge.minimumX());
            minimumY = Math.min(minimumY, edge.minimumY());
            maximumX = Math.max(maximumX, edge.maximumX());
            maximumY = Math.max(maximumY, edge.maximumY());
        }
        return Box.ofSi(minimumX, minimumY, maximumX, maximumY);
    }

    static double signedArea(Contour contour) {
        EdgeCursor edge = new EdgeCursor();
        // about the start, so that a contour far from the origin loses no digits
        double x = contour.edges.x()[0];
        double y = contour.edges.y()[0];
        double sum = 0;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            edge.x0 -= x;
            edge.x1 -= x;
            edge.y0 -= y;
            edge.y1 -= y;
            sum += EdgeKernel.areaTerm(edge);
        }
        return sum;
    }

    static int winding(Contour contour, double x, double y) {
        EdgeCursor edge = new EdgeCursor();
        int sum = 0;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            sum += EdgeKernel.winding(edge, x, y);
        }
        int n = contour.size();
        if (!contour.isClosed()) {
            edge.line(contour.xSi(n), contour.ySi(n), contour.xSi(0), contour.ySi(0));
            sum += EdgeKernel.winding(edge, x, y);
        }
        return sum;
    }

    static double distance(Contour contour, double x, double y) {
        EdgeCursor edge = new EdgeCursor();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            least = Math.min(least, EdgeKernel.distance(edge, x, y));
        }
        return least;
    }

    static double minimumInnerRadius(Contour contour, int partSign) {
        ConditionedContour conditioned = ContourConditioner.defaults().condition(contour);
        Contour pieces = conditioned.contour();
        EdgeCursor edge = new EdgeCursor();
        EdgeCursor next = new EdgeCursor();
        double least = Double.POSITIVE_INFINITY;
        int n = pieces.size();
        for (int i = 0; i < n; i++) {
            pieces.load(i, edge);
            // hollow: the path turns away from the part
            if (edge.sweep * partSign < 0) {
                least = Math.min(least, edge.radius);
            }
            // the ends of an open path are no corners
            if (conditioned.isCorner(i + 1)) {
                pieces.load((i + 1) % n, next);
                least = next.turnFrom(edge) * partSign < 0 ? 0 : least;
            }
        }
        return least;
    }

    static ContourPlace locate(Contour contour, double distanceM) {
        EdgeCursor edge = new EdgeCursor();
        double total = length(contour);
        double left = distanceM;
        if (contour.isClosed()) {
            left -= Math.floor(left / total) * total;
        } else {
            double slack = 1e-9;
            Require.between(
                    "distance along the path", left, -slack, total + slack, Units.MILLIMETRE, "the length of the path");
        }
        int n = contour.size();
        double length = 0;
        for (int i = 0; i < n; i++) {
            contour.load(i, edge);
            length = edge.length();
            if (left < length) {
                return new ContourPlace(i, Math.max(0, left) / length);
            }
            left -= length;
        }
        return new ContourPlace(n - 1, 1);
    }

    static Contour startingAt(Contour contour, double distanceM) {
        ContourPlace place = locate(contour, distanceM);
        EdgeCursor edge = new EdgeCursor();
        contour.load(place.edge(), edge);
        double length = edge.length();
        double before = place.share() * length;
        if (before <= EdgeKernel.ROUNDING_M) {
            return drawn(contour, place.edge(), 0);
        }
        return length - before <= EdgeKernel.ROUNDING_M
                ? drawn(contour, (place.edge() + 1) % contour.size(), 0)
                : drawn(contour, place.edge(), place.share());
    }

    /** The closed contour from a share of an edge on, all the way round. */
    private static Contour drawn(Contour contour, int first, double share) {
        int n = contour.size();
        EdgeCursor edge = new EdgeCursor();
        contour.load(first, edge);
        double startX = edge.xAt(share);
        double startY = edge.yAt(share);
        ContourBuilder builder = Contour.fromSi(startX, startY);
        for (int step = 0; step < n; step++) {
            int i = (first + step) % n;
            contour.load(i, edge);
            builder.requirement(contour.requirement(i))
                    .asCurve(contour.isCurve(i))
                    .edgeTo(edge, edge.x1, edge.y1);
        }
        if (share > 0) {
            contour.load(first, edge);
            builder.requirement(contour.requirement(first))
                    .asCurve(contour.isCurve(first))
                    .edgeTo(edge, startX, startY);
        }
        return builder.close().named(contour.name());
    }
}
