package dev.waterjet.part;

/**
 * Lines and arcs that leave one vertex, as a convex polygon: {@code slope} is the tangent of the angle at which the curve
 * leaves, {@code bend} its curvature divided by the cosine of that angle, in 1/m. That a curve passes a point within a
 * tolerance is a pair of half-planes here, so that points clip the polygon. It is kept at six corners by cutting off the
 * smallest: what remains is a subset of the true one, and the work for a point is bounded.
 */
final class FitPolygon {

    private static final int MAX_CORNERS = 6;

    private double[] slope = new double[MAX_CORNERS + 2];
    private double[] bend = new double[MAX_CORNERS + 2];
    private double[] nextSlope = new double[MAX_CORNERS + 2];
    private double[] nextBend = new double[MAX_CORNERS + 2];
    private int size;

    /** Range of {@code x slope + h bend - y} over the corners, set by {@link #range}. */
    double minimum;

    double maximum;

    void reset(double maxSlope, double maxBend) {
        size = 4;
        for (int i = 0; i < size; i++) {
            slope[i] = i == 0 || i == 3 ? -maxSlope : maxSlope;
            bend[i] = i < 2 ? -maxBend : maxBend;
        }
    }

    void copy(FitPolygon other) {
        size = other.size;
        System.arraycopy(other.slope, 0, slope, 0, size);
        System.arraycopy(other.bend, 0, bend, 0, size);
    }

    boolean isEmpty() {
        return size == 0;
    }

    double meanSlope() {
        double sum = 0;
        for (int i = 0; i < size; i++) {
            sum += slope[i];
        }
        return sum / size;
    }

    void range(double x, double h, double y) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < size; i++) {
            double value = x * slope[i] + h * bend[i];
            // comparisons, not Math.min: this is the innermost loop
            if (value < least) {
                least = value;
            }
            if (value > most) {
                most = value;
            }
        }
        minimum = least - y;
        maximum = most - y;
    }

    double largestBend() {
        double most = 0;
        for (int i = 0; i < size; i++) {
            most = Math.max(most, Math.abs(bend[i]));
        }
        return most;
    }

    /** Keeps what satisfies {@code a slope + b bend <= c}. */
    void clip(double a, double b, double c) {
        int count = 0;
        for (int i = 0; i < size; i++) {
            int j = i + 1 == size ? 0 : i + 1;
            double here = a * slope[i] + b * bend[i] - c;
            double there = a * slope[j] + b * bend[j] - c;
            if (here <= 0) {
                nextSlope[count] = slope[i];
                nextBend[count++] = bend[i];
            }
            if ((here < 0 && there > 0) || (here > 0 && there < 0)) {
                double share = here / (here - there);
                nextSlope[count] = slope[i] + share * (slope[j] - slope[i]);
                nextBend[count++] = bend[i] + share * (bend[j] - bend[i]);
            }
        }
        double[] spare = slope;
        slope = nextSlope;
        nextSlope = spare;
        spare = bend;
        bend = nextBend;
        nextBend = spare;
        size = count < 3 ? 0 : count;
        while (size > MAX_CORNERS) {
            dropSmallestCorner();
        }
    }

    private void dropSmallestCorner() {
        int smallest = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < size; i++) {
            int before = i == 0 ? size - 1 : i - 1;
            int after = i + 1 == size ? 0 : i + 1;
            double area = Math.abs((slope[i] - slope[before]) * (bend[after] - bend[before])
                    - (bend[i] - bend[before]) * (slope[after] - slope[before]));
            if (area < least) {
                least = area;
                smallest = i;
            }
        }
        size--;
        for (int i = smallest; i < size; i++) {
            slope[i] = slope[i + 1];
            bend[i] = bend[i + 1];
        }
    }

    /**
     * Middle of the stretch of {@code x slope + h bend = y} within the polygon.
     *
     * @return its slope; NaN if the line misses the polygon
     */
    double slopeThrough(double x, double h, double y) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < size; i++) {
            int j = i + 1 == size ? 0 : i + 1;
            double here = x * slope[i] + h * bend[i] - y;
            double there = x * slope[j] + h * bend[j] - y;
            if (here <= 0 != there <= 0) {
                double at = slope[i] + here / (here - there) * (slope[j] - slope[i]);
                least = Math.min(least, at);
                most = Math.max(most, at);
            }
        }
        return least <= most ? (least + most) / 2 : Double.NaN;
    }
}
