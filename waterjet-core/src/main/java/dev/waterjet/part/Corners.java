package dev.waterjet.part;

import java.util.Arrays;

/** The corners of a closed contour by their distance along it from its start, in metres. */
public final class Corners {

    private final double[] places;
    private final double total;

    private Corners(double[] places, double total) {
        this.places = places;
        this.total = total;
    }

    public static Corners of(Contour contour) {
        EdgeCursor before = new EdgeCursor();
        EdgeCursor after = new EdgeCursor();
        double[] places = new double[contour.size()];
        int count = 0;
        double atM = 0;
        contour.load(contour.size() - 1, before);
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, after);
            if (Math.abs(ContourGeometry.turn(before, after)) > ContourGeometry.CORNER_RAD) {
                places[count++] = atM;
            }
            atM += after.length();
            contour.load(i, before);
        }
        return new Corners(Arrays.copyOf(places, count), atM);
    }

    /** Distance along the contour from a place to the nearest corner, either way; without limit if there is none. */
    public double distance(double placeM) {
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
