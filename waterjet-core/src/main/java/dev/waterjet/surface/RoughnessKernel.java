package dev.waterjet.surface;

import dev.waterjet.kerf.LagModel;

/** Growth of roughness down a cut surface, on SI doubles. */
final class RoughnessKernel {

    /** Half-width of the change from the smooth to the striation zone, over the separation depth. Chosen here. */
    private static final double BEND = 0.05;

    private RoughnessKernel() {}

    /**
     * Ra(z) = k g (1 + a x) + b d e(x), x = z/H: the entry texture k g of the grain size g, growing linearly with depth, and
     * the striations, growing linearly from the critical depth on. Each linear growth as in Tavodova (2013); derived.
     */
    static double ra(double depthRatio, double grainSizeM, double boreM, RoughnessNumbers numbers) {
        return numbers.textureRatio() * grainSizeM * (1 + numbers.fineGrowth() * depthRatio)
                + numbers.striationGrowth() * boreM * striation(depthRatio);
    }

    /** e(x): zero at the entry, about x - 0.52 beyond the critical depth, smooth between. */
    static double striation(double depthRatio) {
        return bent(depthRatio - LagModel.CRITICAL_DEPTH_RATIO) - bent(-LagModel.CRITICAL_DEPTH_RATIO);
    }

    private static double bent(double beyond) {
        return (beyond + Math.hypot(beyond, BEND)) / 2;
    }
}
