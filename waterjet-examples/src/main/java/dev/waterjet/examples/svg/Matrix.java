package dev.waterjet.examples.svg;

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
record Matrix(double a, double b, double c, double d, double e, double f) {

    static final Matrix IDENTITY = new Matrix(1, 0, 0, 1, 0, 0);

    /** How far a map may stray from a similarity and still keep circles round. */
    private static final double ROUND = 1e-9;

    static Matrix translate(double x, double y) {
        return new Matrix(1, 0, 0, 1, x, y);
    }

    static Matrix scale(double x, double y) {
        return new Matrix(x, 0, 0, y, 0, 0);
    }

    static Matrix rotate(double degrees) {
        double sin = Math.sin(Math.toRadians(degrees));
        double cos = Math.cos(Math.toRadians(degrees));
        return new Matrix(cos, sin, -sin, cos, 0, 0);
    }

    static Matrix skew(double degreesX, double degreesY) {
        return new Matrix(1, Math.tan(Math.toRadians(degreesY)), Math.tan(Math.toRadians(degreesX)), 1, 0, 0);
    }

    /** The map that first does the other, then this one: a nested transform. */
    Matrix with(Matrix inner) {
        return new Matrix(
                a * inner.a + c * inner.b,
                b * inner.a + d * inner.b,
                a * inner.c + c * inner.d,
                b * inner.c + d * inner.d,
                x(inner.e, inner.f),
                y(inner.e, inner.f));
    }

    double x(double x, double y) {
        return a * x + c * y + e;
    }

    double y(double x, double y) {
        return b * x + d * y + f;
    }

    /** Whether circles stay circles. */
    boolean isSimilarity() {
        double size = Math.hypot(a, b);
        return Math.abs(Math.hypot(c, d) - size) <= ROUND * size && Math.abs(a * c + b * d) <= ROUND * size * size;
    }

    /** Whether it turns the plane over, so that left turns become right turns. */
    boolean isMirror() {
        return a * d - b * c < 0;
    }

    boolean isFinite() {
        return Double.isFinite(a + b + c + d + e + f);
    }
}
