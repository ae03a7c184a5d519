package dev.waterjet.feed;

/**
 * The feed equation of Zeng, Kim and Wallace on SI doubles.
 *
 * <p>{@code u = (A / (q h))^1.15}: with {@code A} the cutting ability of jet and material, which each form of the
 * equation writes with other quantities. {@code A} here is in m^(1 + 1/1.15) s^(-1/1.15), so that depth and feed are SI.
 */
final class MachinabilityKernel {

    static final double FEED_EXPONENT = 1.15;

    /** Exponents of the orifice form. */
    static final double PRESSURE_EXPONENT = 1.594;

    static final double ORIFICE_EXPONENT = 1.374;

    /** Exponents of both forms. */
    static final double ABRASIVE_EXPONENT = 0.343;

    static final double TUBE_EXPONENT = 0.618;

    /** Exponents of the water-flow form. */
    static final double FLOW_FORM_PRESSURE_EXPONENT = 1.25;

    static final double WATER_FLOW_EXPONENT = 0.687;

    /** Constant of the orifice form with u in mm/min, p in MPa, lengths in mm, m_a in g/min. */
    private static final double ORIFICE_FORM_CONSTANT = 788;

    /** Constant of the water-flow form with u in mm/s, p in MPa, lengths in mm, m_w in L/min, m_a in g/s. */
    private static final double FLOW_FORM_CONSTANT = 8800;

    private static final double MM_PER_M = 1e3;
    private static final double MPA_PER_PA = 1e-6;

    /** A from the numbers of the orifice form to SI: each input's factor to its power, and back from mm and mm/min. */
    private static final double ORIFICE_FORM_TO_SI = Math.pow(MPA_PER_PA, PRESSURE_EXPONENT)
            * Math.pow(MM_PER_M, ORIFICE_EXPONENT)
            * Math.pow(60e3, ABRASIVE_EXPONENT)
            / Math.pow(MM_PER_M, TUBE_EXPONENT)
            / ORIFICE_FORM_CONSTANT
            / MM_PER_M
            / Math.pow(60e3, 1 / FEED_EXPONENT);

    private static final double FLOW_FORM_TO_SI = Math.pow(MPA_PER_PA, FLOW_FORM_PRESSURE_EXPONENT)
            * Math.pow(60e3, WATER_FLOW_EXPONENT)
            * Math.pow(1e3, ABRASIVE_EXPONENT)
            / Math.pow(MM_PER_M, TUBE_EXPONENT)
            / FLOW_FORM_CONSTANT
            / MM_PER_M
            / Math.pow(1e3, 1 / FEED_EXPONENT);

    private MachinabilityKernel() {}

    /** A = f_a N_m p^1.594 d_o^1.374 m_a^0.343 / (C d_f^0.618). Zeng, Kim (1993), orifice form, from memory. */
    static double orificeForm(
            double machinability, double pressurePa, double orificeM, double abrasiveKgPerS, double tubeM) {
        return ORIFICE_FORM_TO_SI
                * machinability
                * Math.pow(pressurePa, PRESSURE_EXPONENT)
                * Math.pow(orificeM, ORIFICE_EXPONENT)
                * Math.pow(abrasiveKgPerS, ABRASIVE_EXPONENT)
                / Math.pow(tubeM, TUBE_EXPONENT);
    }

    /** A = f_a N_m p^1.25 m_w^0.687 m_a^0.343 / (C d_f^0.618). Zeng, Kim (1993), water-flow form, from memory. */
    static double flowForm(
            double machinability, double pressurePa, double waterM3PerS, double abrasiveKgPerS, double tubeM) {
        return FLOW_FORM_TO_SI
                * machinability
                * Math.pow(pressurePa, FLOW_FORM_PRESSURE_EXPONENT)
                * Math.pow(waterM3PerS, WATER_FLOW_EXPONENT)
                * Math.pow(abrasiveKgPerS, ABRASIVE_EXPONENT)
                / Math.pow(tubeM, TUBE_EXPONENT);
    }

    /** A is multiplied by (x / x_ref)^change for each exponent that differs from the published one. */
    static double change(double valueSi, double referenceSi, double change) {
        return change == 0 ? 1 : Math.pow(valueSi / referenceSi, change);
    }

    /** Another exponent k of the feed turns the model about a reference feed: A is multiplied by u_ref^(1/k - 1/1.15). */
    static double changedFeedExponent(double referenceMPerS, double feedExponent) {
        return feedExponent == FEED_EXPONENT ? 1 : Math.pow(referenceMPerS, 1 / feedExponent - 1 / FEED_EXPONENT);
    }

    /** u = (A / D)^k with D = q h and k = 1.15 as published. */
    static double feed(double ability, double depthM, double feedExponent) {
        return Math.pow(ability / depthM, feedExponent);
    }

    /** {@link #feed} for many D = q h. */
    static double[] feeds(double ability, double[] depthsM, double feedExponent) {
        if (feedExponent == FEED_EXPONENT) {
            return RootPowersKernel.powersOfRatios(ability, depthsM);
        }
        double[] feeds = new double[depthsM.length];
        for (int i = 0; i < feeds.length; i++) {
            feeds[i] = feed(ability, depthsM[i], feedExponent);
        }
        return feeds;
    }

    /** D = A / u^(1/k), the inverse of {@link #feed}. */
    static double depth(double ability, double feedMPerS, double feedExponent) {
        return ability / Math.pow(feedMPerS, 1 / feedExponent);
    }
}
