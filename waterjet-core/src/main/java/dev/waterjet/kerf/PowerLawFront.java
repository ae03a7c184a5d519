package dev.waterjet.kerf;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;

/**
 * Cut front of the power law H = A u^(-1/k), in closed form.
 *
 * <p>With k below 1 the lag is convex over the feed. The smallest concave relation above it, up to the feed that just separates
 * the workpiece, is the line through that feed: the front then follows k = 1.
 */
final class PowerLawFront extends CutFront {

    /** An exponent this near to 1 is 1: the closed form would raise numbers to powers of 10^9. */
    private static final double NEARLY_ONE = 1e-9;

    /** A time this little short of the travel time is rounding of a difference of times. */
    private static final double ROUNDING = 1e-12;

    private final double exponent;
    private final double coefficientM;

    /** Exponent of the front, 1 or more. */
    private final double k;

    /** Lag at the depth of 1 m and 1 m/s. */
    private final double lagAtUnitFeed;

    PowerLawFront(double lagCoefficient, double thicknessM, double exponent, double coefficientM) {
        super(lagCoefficient, thicknessM);
        this.exponent = Require.positive("exponent of the feed over depth", exponent, Units.ONE);
        this.coefficientM = Require.positive("separation depth at unit feed", coefficientM, Units.METRE);
        this.k = exponent < 1 + NEARLY_ONE ? 1 : exponent;
        double atUnitFeedM = exponent < 1 - NEARLY_ONE ? thicknessM * separationFeedSi(thicknessM) : coefficientM;
        this.lagAtUnitFeed = lagCoefficient / atUnitFeedM;
    }

    @Override
    public double separationDepthSi(double feedMPerS) {
        return coefficientM * Math.pow(feedMPerS, -1 / exponent);
    }

    @Override
    public double separationFeedSi(double depthM) {
        return Math.pow(coefficientM / depthM, exponent);
    }

    @Override
    double unitLag(double feedMPerS) {
        return lagAtUnitFeed * (k == 1 ? feedMPerS : Math.pow(feedMPerS, 1 / k));
    }

    @Override
    double feedForUnitLag(double lagPerM) {
        double ratio = lagPerM / lagAtUnitFeed;
        return k == 1 ? ratio : Math.pow(ratio, k);
    }

    @Override
    double unitTravelTime(double feedMPerS) {
        return k == 1 ? lagAtUnitFeed : unitLag(feedMPerS) / (k * feedMPerS);
    }

    /** C = (k - 1) theta v with v = (a / (k theta))^(k/(k - 1)), the feed whose signal arrives now; a = L/u^(1/k). */
    @Override
    double unitShortfall(double elapsedS) {
        if (k == 1) {
            return elapsedS >= lagAtUnitFeed * (1 - ROUNDING) ? 0 : Double.POSITIVE_INFINITY;
        }
        if (!(elapsedS > 0)) {
            return Double.POSITIVE_INFINITY;
        }
        return (k - 1) * elapsedS * Math.pow(lagAtUnitFeed / (k * elapsedS), k / (k - 1));
    }

    @Override
    boolean isConcaveAt(double feedMPerS) {
        return exponent >= 1 - NEARLY_ONE;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PowerLawFront that
                && lagCoefficient() == that.lagCoefficient()
                && thicknessSi() == that.thicknessSi()
                && exponent == that.exponent
                && coefficientM == that.coefficientM;
    }

    @Override
    public int hashCode() {
        return Objects.hash(lagCoefficient(), thicknessSi(), exponent, coefficientM);
    }

    @Override
    public String toString() {
        return "cut front of a power law, exponent " + exponent;
    }
}
