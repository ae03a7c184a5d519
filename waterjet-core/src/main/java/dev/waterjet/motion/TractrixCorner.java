package dev.waterjet.motion;

/**
 * Deviation of a point that is drawn round a corner on a string of length 1: the greatest of the smaller distances to both
 * edges.
 *
 * <p>With t the way of the head past the corner, the string makes the angle A = 2 atan(tan(turn/2) e^-t) with the new edge;
 * the point is at x = t - cos A along it and -y = sin A beside it, and |x sin(turn) - y cos(turn)| from the line of the old
 * edge. At first it is nearer to the old edge, at last to the new one; the greatest deviation is where both are equal.
 */
final class TractrixCorner {

    private static final int HALVINGS = 60;
    private static final double END = 10;

    private TractrixCorner() {}

    /**
     * Deviation over the lag.
     *
     * @param turnRad turn, above 0; one above a right angle counts as a right angle
     * @return the factor, 0.4823 at a right angle
     */
    static double factor(double turnRad) {
        double turn = Math.min(turnRad, Math.PI / 2);
        double tangent = Math.tan(turn / 2);
        double sine = Math.sin(turn);
        double cosine = Math.cos(turn);
        double low = 0;
        double high = END;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            double angle = 2 * Math.atan(tangent * Math.exp(-middle));
            double along = middle - Math.cos(angle);
            double beside = Math.sin(angle);
            if (Math.abs(along * sine + beside * cosine) < beside) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Math.sin(2 * Math.atan(tangent * Math.exp(-low)));
    }
}
