package dev.waterjet.surface;

/** Growth of roughness down a face, on SI doubles. */
public final class RoughnessKernel {

    /** The smooth zone ends at this part of the separation depth (Momber, Kovacevic, Proc. IMechE B 209 (1995)). */
    static final double CRITICAL_DEPTH_RATIO = 0.52;

    /** Half-width of the change from the smooth to the grooved zone, over the separation depth. A choice of ours. */
    private static final double BEND = 0.05;

    private RoughnessKernel() {}

    /**
     * Ra(z) = k g (1 + a x) + b d e(x), x = z/H: the entry texture k g of grains of size g, growing linearly with depth, and
     * the grooves, growing linearly from the critical depth on. Each linear growth as in Tavodova (2013); derived.
     */
    public static double ra(double depthRatio, double grainM, double boreM, RoughnessNumbers numbers) {
        return numbers.textureRatio() * grainM * (1 + numbers.fineGrowth() * depthRatio)
                + numbers.grooveGrowth() * boreM * groove(depthRatio);
    }

    /** e(x): zero at the entry, about x - 0.52 beyond the critical depth, smooth between. */
    static double groove(double depthRatio) {
        return bent(depthRatio - CRITICAL_DEPTH_RATIO) - bent(-CRITICAL_DEPTH_RATIO);
    }

    private static double bent(double beyond) {
        return (beyond + Math.hypot(beyond, BEND)) / 2;
    }
}
