package dev.waterjet.kerf;

import dev.waterjet.jet.JetSettings;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;

/**
 * Walls of the kerf that a jet leaves in one workpiece, from the dose of abrasive particles, on SI doubles.
 *
 * <p>Particles add up, so the dose does: a pass at the feed u leaves the dose exp(-y<sup>2</sup> / (2 &sigma;<sup>2</sup>)) / u beside
 * its path, in s/m, and a dose D separates the depth that the feed 1/D separates. No particle flies outside of the jet's
 * radius y<sub>J</sub>(z) = d/2 + (S + z) tan &alpha;. The wall of a long straight pass is the smooth minimum of both:
 *
 * <p>y<sub>D</sub> = &sigma; sqrt(2 ln(u<sub>sep</sub>(z) / u)),<br>
 * y = (y<sub>D</sub><sup>-8</sup> + y<sub>J</sub><sup>-8</sup>)<sup>-1/8</sup>
 *
 * <p>The wall of a straight pass is that of {@link KerfModel}.
 *
 * <p>Evidence: a Gaussian flux of particles is published (Balz et al. 2013); that doses of separate passes add, the values
 * of sigma and alpha and the exponent 8 are assumed.
 *
 * <p>Units: m, s, m/s.
 */
public final class KerfProfile {

    private final CutFront front;
    private final double spreadM;
    private final double entryRadiusM;
    private final double spreadSlope;
    private final double perShare;

    private KerfProfile(CutFront front, double spreadM, double entryRadiusM, double spreadSlope) {
        this.front = Objects.requireNonNull(front, "front");
        this.spreadM = Require.positive("spread of the dose", spreadM, Units.MILLIMETRE);
        this.entryRadiusM = Require.positive("radius of the jet", entryRadiusM, Units.MILLIMETRE);
        this.spreadSlope = Require.notNegative("slope of the jet's edge", spreadSlope, Units.ONE);
        this.perShare = 1 / (Math.sqrt(2) * spreadM);
    }

    /**
     * Returns the profile that a kerf model gives for a jet.
     *
     * @param model spread of the dose and half-angle of the jet
     * @param front cut front in the workpiece
     * @param jet bore and stand-off distance
     * @return the profile
     */
    public static KerfProfile of(KerfModel model, CutFront front, JetSettings jet) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(model, "model");
        return of(model.doseRatio(), model.spreadSlope(), front, jet);
    }

    /**
     * Returns the profile of a kerf model with its spread of the dose moved by standard uncertainties.
     *
     * @param model spread of the dose and half-angle of the jet
     * @param front cut front in the workpiece
     * @param jet bore and stand-off distance
     * @param deviations number of standard uncertainties of the logarithm
     * @return the profile
     */
    public static KerfProfile ofDoseSpread(KerfModel model, CutFront front, JetSettings jet, double deviations) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(model, "model");
        double factor = Math.exp(deviations * model.spread().doseRelative());
        return of(model.doseRatio() * factor, model.spreadSlope(), front, jet);
    }

    /**
     * Returns the profile of a kerf model with its half-angle moved by standard uncertainties.
     *
     * @param model spread of the dose and half-angle of the jet
     * @param front cut front in the workpiece
     * @param jet bore and stand-off distance
     * @param deviations number of standard uncertainties of the logarithm
     * @return the profile
     */
    public static KerfProfile ofHalfAngle(KerfModel model, CutFront front, JetSettings jet, double deviations) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(model, "model");
        double factor = Math.exp(deviations * model.spread().slopeRelative());
        return of(model.doseRatio(), model.spreadSlope() * factor, front, jet);
    }

    private static KerfProfile of(double doseRatio, double slope, CutFront front, JetSettings jet) {
        double boreM = jet.tubeExitBoreSi();
        return ofSi(front, doseRatio * boreM, entryRadiusSi(boreM, jet.standOffSi(), slope), slope);
    }

    /**
     * Returns the profile of a jet.
     *
     * @param front cut front in the workpiece
     * @param spreadM sigma, standard deviation of the dose across the path, above 0
     * @param entryRadiusM radius of the jet at the top side of the workpiece, above 0
     * @param spreadSlope tangent of the jet's half-angle, 0 or more
     * @return the profile
     */
    public static KerfProfile ofSi(CutFront front, double spreadM, double entryRadiusM, double spreadSlope) {
        return new KerfProfile(front, spreadM, entryRadiusM, spreadSlope);
    }

    /**
     * Returns the spread of the dose that leaves the same walls as a spread of the depth.
     *
     * @param depthSpreadM s in H(y) = H exp(-y<sup>2</sup> / (2 s<sup>2</sup>))
     * @param exponent k of the feed model
     * @return sigma
     */
    public static double doseSpreadSi(double depthSpreadM, double exponent) {
        return depthSpreadM / Math.sqrt(exponent);
    }

    /**
     * Returns the radius of the jet at the top side.
     *
     * @param boreM exit bore of the focusing tube
     * @param standOffM stand-off distance
     * @param spreadSlope tangent of the jet's half-angle
     * @return the radius
     */
    public static double entryRadiusSi(double boreM, double standOffM, double spreadSlope) {
        return boreM / 2 + standOffM * spreadSlope;
    }

    /**
     * Returns the smooth minimum of two half-widths, (a<sup>-8</sup> + b<sup>-8</sup>)<sup>-1/8</sup>.
     *
     * @param firstM above 0
     * @param secondM above 0
     * @return a length below both, by 8 % if they are equal
     */
    public static double smoothMinimumSi(double firstM, double secondM) {
        double ratio = secondM / firstM;
        double squared = ratio * ratio;
        double fourth = squared * squared;
        return secondM / Math.sqrt(Math.sqrt(Math.sqrt(1 + fourth * fourth)));
    }

    /** {@return the cut front in the same workpiece} */
    public CutFront front() {
        return front;
    }

    /** {@return sigma, the standard deviation of the dose across the path} */
    public double spreadSi() {
        return spreadM;
    }

    /**
     * Returns the radius of the jet at a depth.
     *
     * @param depthM depth, 0 or more
     * @return y<sub>J</sub>
     */
    public double jetRadiusSi(double depthM) {
        return entryRadiusM + depthM * spreadSlope;
    }

    /**
     * Returns the half-width of a long straight pass.
     *
     * @param depthM depth, 0 or more
     * @param feedMPerS feed, above 0
     * @return y; 0 where the feed does not separate the depth
     */
    public double halfWidthSi(double depthM, double feedMPerS) {
        double excess = depthM > 0 ? Math.log(front.separationFeedSi(depthM) / feedMPerS) : Double.POSITIVE_INFINITY;
        return halfWidthOfExcessSi(depthM, excess);
    }

    /**
     * Returns the half-width of a long straight pass whose dose exceeds what separates the depth.
     *
     * @param depthM depth, 0 or more
     * @param excess logarithm of the dose on the path over the dose that just separates the depth
     * @return y; 0 if the excess is not above 0
     */
    public double halfWidthOfExcessSi(double depthM, double excess) {
        double radiusM = jetRadiusSi(depthM);
        return excess > 0 ? smoothMinimumSi(spreadM * Math.sqrt(2 * excess), radiusM) : 0;
    }

    /**
     * Returns the share of the dose at a place that comes from the path within a distance on both sides of it.
     *
     * @param distanceM distance along the straight path; below 0 the share has the opposite sign
     * @return erf(x / (sqrt 2 sigma)), from -1 to 1
     */
    public double doseShareSi(double distanceM) {
        return ErrorFunction.value(distanceM * perShare);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof KerfProfile that
                && front.equals(that.front)
                && spreadM == that.spreadM
                && entryRadiusM == that.entryRadiusM
                && spreadSlope == that.spreadSlope;
    }

    @Override
    public int hashCode() {
        return Objects.hash(front, spreadM, entryRadiusM, spreadSlope);
    }

    @Override
    public String toString() {
        return "kerf profile, dose spread " + spreadM * 1e3 + " mm, jet radius " + entryRadiusM * 1e3
                + " mm at the top";
    }
}
