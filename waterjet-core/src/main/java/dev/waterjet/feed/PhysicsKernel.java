package dev.waterjet.feed;

/** Balances of energy and erosion on SI doubles. */
final class PhysicsKernel {

    /** Constant of Hashish's cutting wear: 14 = 2 x 7 follows from sin 2a = 2a for the small angles of attack. */
    private static final double CUTTING_WEAR = 14 / Math.PI;

    /** 0.02164 of the published equation, times the cube root of 10^4.5 sqrt(2) that makes of its water jet a particle speed. */
    private static final double INITIAL_ANGLE = 0.02164 * Math.cbrt(Math.pow(10, 4.5) * Math.sqrt(2));

    private PhysicsKernel() {}

    /** P / (w d_f) in m2/s, P = m_a v_a^2 / 2: the area that the jet opens in a time. */
    static double areaRate(double abrasiveKgPerS, double speedMPerS, double energyJPerM3, double kerfM) {
        return abrasiveKgPerS * speedMPerS * speedMPerS / 2 / (energyJPerM3 * kerfM);
    }

    /** C_k = sqrt(3 sigma_f R_f^(3/5) / rho_p), m/s. Hashish (1989), re-derived. */
    static double characteristicSpeed(double flowStrengthPa, double roundness, double particleKgPerM3) {
        return Math.sqrt(3 * flowStrengthPa * Math.pow(roundness, 0.6) / particleKgPerM3);
    }

    /** h_c = d_j (V_0 / C_k) (14 m_a / (pi u d_j^2 rho_p))^(2/5). Hashish (1989), re-derived. */
    static double cuttingWear(
            double jetM,
            double speedMPerS,
            double characteristicMPerS,
            double abrasiveKgPerS,
            double feedMPerS,
            double particleKgPerM3) {
        return jetM
                * speedMPerS
                / characteristicMPerS
                * Math.pow(CUTTING_WEAR * abrasiveKgPerS / (feedMPerS * jetM * jetM * particleKgPerM3), 0.4);
    }

    /**
     * Angle of attack at the end of the cutting zone: {@code (C_k / V_0) (pi u d_j^2 rho_p / (14 m_a))^(2/5)}, the bore over the depth of
     * {@link #cuttingWear}.
     */
    static double attackAngle(double jetM, double cuttingWearM) {
        return jetM / cuttingWearM;
    }

    /**
     * Angle at which the particles first strike the front: {@code 0.768 f_r^(2/5) (C_k / (K^2 V_0))^(1/3)}. Published with the
     * number 0.02164 for a water jet in mm, kg and MPa; K is the ratio of normal to tangential force, 3.
     */
    static double initialAngle(double speedMPerS, double characteristicMPerS, double roundness, double forceRatio) {
        return INITIAL_ANGLE
                * Math.pow(roundness, 0.4)
                * Math.cbrt(characteristicMPerS / (forceRatio * forceRatio * speedMPerS));
    }

    /** 0.4 d_j (1/a_t - 1/a_0), and 0 where the front ends steeper than it begins. */
    static double cuttingWear(double jetM, double attackAngle, double initialAngle) {
        return Math.max(0, 0.4 * jetM * (1 / attackAngle - 1 / initialAngle));
    }

    /**
     * Speed of a particle below which contact stays elastic: 5 pi^2 sigma^(5/2) / rho_p^(1/2) ((1 - n_p^2)/E_p + (1 - n_w^2)/E_w)^2.
     */
    static double elasticSpeed(double elasticLimitPa, double particleKgPerM3, double compliancePerPa) {
        return 5
                * Math.PI
                * Math.PI
                * Math.pow(elasticLimitPa, 2.5)
                / Math.sqrt(particleKgPerM3)
                * compliancePerPa
                * compliancePerPa;
    }

    /**
     * 1/h_d = pi d_j sigma_f u / (2 C_1 m_a (V_0 - V_e)^2) + (C_f / d_j) V_0 / (V_0 - V_e). Hashish (1989), re-derived; zero
     * where the particles are no faster than the threshold V_e.
     */
    static double deformationWear(
            double jetM,
            double speedMPerS,
            double thresholdMPerS,
            double flowStrengthPa,
            double share,
            double abrasiveKgPerS,
            double feedMPerS,
            double friction) {
        double excess = speedMPerS - thresholdMPerS;
        if (excess <= 0) {
            return 0;
        }
        double removal = Math.PI * jetM * flowStrengthPa * feedMPerS / (2 * share * abrasiveKgPerS * excess * excess);
        return 1 / (removal + friction / jetM * speedMPerS / excess);
    }

    /** h = C_s (p - p_thr) / v^(0.86 + 2.09 / v). Blickwedel et al. (1990), from memory; v in the unit of its fit. */
    static double thresholdDepth(double coefficient, double excessPa, double feed) {
        return excessPa <= 0 ? 0 : coefficient * excessPa / Math.pow(feed, 0.86 + 2.09 / feed);
    }
}
