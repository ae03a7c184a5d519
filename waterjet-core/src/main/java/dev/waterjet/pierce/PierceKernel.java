package dev.waterjet.pierce;

/** Piercing on SI doubles. */
final class PierceKernel {

    private PierceKernel() {}

    /** h = a t^b (form: Orbanic, Junkar, Proc. IMechE B 218 (2004)); a is the depth after one second. */
    static double depth(double afterOneSecondM, double exponent, double timeS) {
        return afterOneSecondM * Math.pow(timeS, exponent);
    }

    /** t = (h/a)^(1/b), the inverse of {@link #depth}. */
    static double time(double afterOneSecondM, double exponent, double depthM) {
        return Math.pow(depthM / afterOneSecondM, 1 / exponent);
    }

    /**
     * The returning water takes momentum from the jet, so that the hole deepens at dh/dt = r/(1 + h/l): t = h/r + h^2/(2 l r),
     * with the rate r at the surface and the damping length l. Derived.
     */
    static double dampedTime(double rateMPerS, double dampingM, double depthM) {
        return depthM / rateMPerS * (1 + depthM / (2 * dampingM));
    }

    /** h = l (sqrt(1 + 2 r t/l) - 1), the inverse of {@link #dampedTime}, in a form without cancellation. */
    static double dampedDepth(double rateMPerS, double dampingM, double timeS) {
        double scaled = 2 * rateMPerS * timeS / dampingM;
        return 2 * rateMPerS * timeS / (Math.sqrt(1 + scaled) + 1);
    }

    /**
     * Rate at which a hole deepens if a share e of the removal of a cut reaches its bottom. A cut of width d removes u h d at
     * its separation feed rate u; over the area of the hole pi d^2/4 this is dh/dt = e 4 u h/(pi d). Derived.
     */
    static double rate(double share, double feedMPerS, double depthM, double boreM) {
        return share * 4 * feedMPerS * depthM / (Math.PI * boreM);
    }
}
