package dev.waterjet.examples.drawing;

/**
 * An affine map of the plane: {@code x' = a x + c y + e, y' = b x + d y + f}, as SVG writes {@code matrix(a b c d e f)}.
 *
 * @param a x' per x
 * @param b y' per x
 * @param c x' per y
 * @param d y' per y
 * @param e shift of x
 * @param f shift of y
 */
public record AffineMap(double a, double b, double c, double d, double e, double f) {

    /** Map that changes nothing. */
    public static final AffineMap IDENTITY = new AffineMap(1, 0, 0, 1, 0, 0);

    /** Relative deviation from a similarity up to which circles stay round. */
    private static final double ROUND = 1e-9;

    /**
     * Returns a shift.
     *
     * @param x shift of x
     * @param y shift of y
     * @return the map
     */
    public static AffineMap translate(double x, double y) {
        return new AffineMap(1, 0, 0, 1, x, y);
    }

    /**
     * Returns a scaling along the axes.
     *
     * @param x factor of x
     * @param y factor of y
     * @return the map
     */
    public static AffineMap scale(double x, double y) {
        return new AffineMap(x, 0, 0, y, 0, 0);
    }

    /**
     * Returns a rotation about the origin, from x towards y.
     *
     * @param degrees angle in degrees
     * @return the map
     */
    public static AffineMap rotate(double degrees) {
        double sin = Math.sin(Math.toRadians(degrees));
        double cos = Math.cos(Math.toRadians(degrees));
        return new AffineMap(cos, sin, -sin, cos, 0, 0);
    }

    /**
     * Returns a skew along the axes.
     *
     * @param degreesX angle by which x is skewed, in degrees
     * @param degreesY angle by which y is skewed, in degrees
     * @return the map
     */
    public static AffineMap skew(double degreesX, double degreesY) {
        return new AffineMap(1, Math.tan(Math.toRadians(degreesY)), Math.tan(Math.toRadians(degreesX)), 1, 0, 0);
    }

    /**
     * Returns the map that first applies another, then this one, as a nested transform does.
     *
     * @param inner map applied first
     * @return both in one
     */
    public AffineMap with(AffineMap inner) {
        return new AffineMap(
                a * inner.a + c * inner.b,
                b * inner.a + d * inner.b,
                a * inner.c + c * inner.d,
                b * inner.c + d * inner.d,
                x(inner.e, inner.f),
                y(inner.e, inner.f));
    }

    /**
     * Returns x of a mapped point.
     *
     * @param x x before the map
     * @param y y before the map
     * @return x after it
     */
    public double x(double x, double y) {
        return a * x + c * y + e;
    }

    /**
     * Returns y of a mapped point.
     *
     * @param x x before the map
     * @param y y before the map
     * @return y after it
     */
    public double y(double x, double y) {
        return b * x + d * y + f;
    }

    /**
     * Returns whether circles stay circles.
     *
     * @return true if they do
     */
    public boolean isSimilarity() {
        double size = Math.hypot(a, b);
        return Math.abs(Math.hypot(c, d) - size) <= ROUND * size && Math.abs(a * c + b * d) <= ROUND * size * size;
    }

    /**
     * Returns whether it turns the plane over, so that left turns become right turns.
     *
     * @return true if it does
     */
    public boolean isMirror() {
        return a * d - b * c < 0;
    }

    /**
     * Returns whether all its numbers are finite.
     *
     * @return true if they are
     */
    public boolean isFinite() {
        return Double.isFinite(a + b + c + d + e + f);
    }

    /** {@return the length of the image of a unit vector along x} */
    public double size() {
        return Math.hypot(a, b);
    }
}
