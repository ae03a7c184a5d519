package dev.waterjet.jet;

/** Exchange of momentum between water and abrasive, on SI doubles. */
final class MixingKernel {

    private MixingKernel() {}

    /** Momentum balance: v_a = eta v_j / (1 + R). */
    static double particleSpeed(double efficiency, double waterSpeedMPerS, double loadingRatio) {
        return efficiency * waterSpeedMPerS / (1 + loadingRatio);
    }

    /** Kinetic power of the abrasive: P = m_a v_a^2 / 2. */
    static double abrasivePower(double abrasiveFlowKgPerS, double particleSpeedMPerS) {
        return abrasiveFlowKgPerS * particleSpeedMPerS * particleSpeedMPerS / 2;
    }
}
