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
     * Rate at which a hole deepens if a share e of the removal of a cut reaches its bottom. A cut of width d removes u h d at
     * its separation feed rate u; over the area of the hole pi d^2/4 this is dh/dt = e 4 u h/(pi d). Derived.
     */
    static double rate(double share, double feedMPerS, double depthM, double boreM) {
        return share * 4 * feedMPerS * depthM / (Math.PI * boreM);
    }

    /**
     * Slope n of ln u = const - n ln h, between two depths. With it dh/dt goes with h^(1-n), so that
     * h^n = n h^(n-1) (dh/dt) t and the exponent of the power law is 1/n. Derived.
     */
    static double slope(double feedMPerS, double deeperFeedMPerS, double deeperOverDepth) {
        return Math.log(feedMPerS / deeperFeedMPerS) / Math.log(deeperOverDepth);
    }

    /** Depth after one second from rate and slope at a depth: t = h/(n rate) there, so a = h t^(-1/n). Derived. */
    static double depthAfterOneSecond(double depthM, double rateMPerS, double slope) {
        return depthM * Math.pow(slope * rateMPerS / depthM, 1 / slope);
    }
}
