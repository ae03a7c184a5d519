package dev.waterjet.toolpath;

import dev.waterjet.part.ConditionedContour;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourConditioner;
import dev.waterjet.part.EdgeCursor;
import java.util.Arrays;

/** Corners of a closed contour by their distance along it from its start, in metres. */
final class Corners {

    private final double[] places;
    private final double total;

    private Corners(double[] places, double total) {
        this.places = places;
        this.total = total;
    }

    static Corners of(Contour contour) {
        ConditionedContour conditioned = ContourConditioner.defaults().condition(contour);
        double[] startOfEdge = new double[contour.size()];
        EdgeCursor edge = new EdgeCursor();
        double at = 0;
        for (int i = 0; i < startOfEdge.length; i++) {
            startOfEdge[i] = at;
            contour.load(i, edge);
            at += edge.length();
        }
        double[] places = new double[conditioned.contour().size()];
        int count = 0;
        for (int i = 0; i < places.length; i++) {
            if (conditioned.isCorner(i)) {
                places[count++] = startOfEdge[conditioned.firstSourceEdge(i)];
            }
        }
        double[] sorted = Arrays.copyOf(places, count);
        Arrays.sort(sorted);
        return new Corners(sorted, at);
    }

    /** Distance along the contour from a place to the nearest corner, either way; infinite if there is none. */
    double distance(double placeM) {
        if (places.length == 0) {
            return Double.POSITIVE_INFINITY;
        }
        int found = Arrays.binarySearch(places, placeM);
        int next = found >= 0 ? found : -found - 1;
        int last = places.length - 1;
        double within = Math.min(apart(Math.max(0, next - 1), placeM), apart(Math.min(last, next), placeM));
        return Math.min(within, Math.min(apart(0, placeM), apart(last, placeM)));
    }

    private double apart(int corner, double placeM) {
        double oneWay = Math.abs(places[corner] - placeM);
        return Math.min(oneWay, total - oneWay);
    }
}
