package dev.waterjet.docs.explorer;

import org.teavm.jso.JSBody;

/** Functions of {@code java.lang.Math} that the class library of the compiler computes with too few digits. */
final class MathFunctions {

    private static final double LARGEST_FRACTION = 0x1p52;

    private MathFunctions() {}

    static double ulp(double x) {
        double size = Math.abs(x);
        if (!(size < Double.POSITIVE_INFINITY)) {
            return size;
        }
        long bits = Double.doubleToRawLongBits(size);
        return size == Double.MAX_VALUE
                ? size - Double.longBitsToDouble(bits - 1)
                : Double.longBitsToDouble(bits + 1) - size;
    }

    static double rint(double x) {
        double size = Math.abs(x);
        if (!(size < LARGEST_FRACTION)) {
            return x;
        }
        double rounded = size + LARGEST_FRACTION - LARGEST_FRACTION;
        return x < 0 || 1 / x < 0 ? -rounded : rounded;
    }

    @JSBody(params = "x", script = "return Math.expm1(x);")
    static native double expm1(double x);

    @JSBody(params = "x", script = "return Math.log1p(x);")
    static native double log1p(double x);

    @JSBody(
            params = {"x", "y"},
            script = "return Math.hypot(x, y);")
    static native double hypot(double x, double y);
}
