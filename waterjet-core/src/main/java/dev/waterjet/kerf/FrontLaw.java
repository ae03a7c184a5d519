package dev.waterjet.kerf;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.function.DoubleUnaryOperator;

/**
 * Relation of feed and separation depth, from which a cut front follows.
 *
 * @param depthOfFeed H(u), falling
 * @param feedOfDepth its inverse
 */
record FrontLaw(DoubleUnaryOperator depthOfFeed, DoubleUnaryOperator feedOfDepth) {

    /** Depths over the thickness at which a power law is recognized. */
    private static final double[] PROBES = {0.5, 4, 30, 200};

    private static final double SAME_EXPONENT = 1e-9;

    /** A front in closed form if the law is a power law within rounding, otherwise from a table. */
    CutFront front(double lagCoefficient, double thicknessM) {
        double feed = Require.positive(
                "feed rate that separates the workpiece",
                feedOfDepth.applyAsDouble(Require.positive("thickness", thicknessM, Units.MILLIMETRE)),
                Units.MILLIMETRE_PER_MINUTE);
        double exponent = exponentTo(PROBES[0] * thicknessM, feed, thicknessM);
        for (int i = 1; i < PROBES.length; i++) {
            double other = exponentTo(PROBES[i] * thicknessM, feed, thicknessM);
            if (!(Math.abs(other - exponent) <= SAME_EXPONENT * exponent)) {
                return new TabulatedFront(lagCoefficient, thicknessM, this);
            }
        }
        return new PowerLawFront(lagCoefficient, thicknessM, exponent, thicknessM * Math.pow(feed, 1 / exponent));
    }

    private double exponentTo(double depthM, double feedMPerS, double thicknessM) {
        return Math.log(feedMPerS / feedOfDepth.applyAsDouble(depthM)) / Math.log(depthM / thicknessM);
    }
}
