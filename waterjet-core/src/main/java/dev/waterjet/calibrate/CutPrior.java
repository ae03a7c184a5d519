package dev.waterjet.calibrate;

import dev.waterjet.material.Material;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;

/**
 * Prior knowledge before the cuts: the spread of the catalogue's machinability, a factor common to the cuts of a shop, the scatter
 * of a cut, and the spread between plates. All are standard deviations of the logarithm of depth.
 *
 * <pre>{@code
 * CutPrior prior = CutPrior.catalogue(titanium).withScatter(2, 0.06);
 * CalibratedFeed own = Calibration.ofMachinability(titanium, model).withPrior(prior).fit(threeCuts);
 * }</pre>
 *
 * <p>A variance has a scaled inverse chi-square distribution. Its degrees of freedom count as that many cuts of that scatter.
 * The numbers of {@link #catalogue} are assumed, without a source. No prior is right for every scatter: with 2 to 5 cuts of a
 * shop whose cuts scatter by 15 %, an interval of 95 % holds the next cut in 85 % to 90 %; such a shop gives its own scatter.
 *
 * @param material standard deviation of the material's machinability by the catalogue, above 0
 * @param shop standard deviation of a factor common to all cuts of a shop, 0 or more
 * @param scatterFreedom degrees of freedom of the prior of the scatter, above 0
 * @param scatter scatter of a cut, above 0
 * @param plateFreedom degrees of freedom of the prior of the spread between plates, above 0
 * @param plateSpread spread between plates, above 0
 */
public record CutPrior(
        double material, double shop, double scatterFreedom, double scatter, double plateFreedom, double plateSpread)
        implements Described, Serializable {

    /** No catalogue value is better known than this: assumed. */
    private static final double MIN_MATERIAL = 0.05;

    /** Scatter of 15 % of the published model in feed rate, over the feed exponent: assumed. */
    private static final double SHOP = 0.13;

    private static final double FREEDOM = 2;
    private static final double SCATTER = 0.06;
    private static final double PLATE_SPREAD = 0.05;

    /** A factor of e to this power bounds no machinability: it is taken as unknown. */
    private static final double UNKNOWN = 100;

    /** Deviation of an exponent of a setting from the published one, and of the logarithm of the feed exponent: assumed. */
    static final double EXPONENT = 0.3;

    static final double LOG_FEED_EXPONENT = 0.15;

    /**
     * Checks the components.
     *
     * @param material standard deviation of the material's machinability by the catalogue, above 0
     * @param shop standard deviation of a factor common to all cuts of a shop, 0 or more
     * @param scatterFreedom degrees of freedom of the prior of the scatter, above 0
     * @param scatter scatter of a cut, above 0
     * @param plateFreedom degrees of freedom of the prior of the spread between plates, above 0
     * @param plateSpread spread between plates, above 0
     */
    public CutPrior {
        material = Require.positive("deviation of the material", material, Units.ONE);
        shop = Require.notNegative("deviation of the shop", shop, Units.ONE);
        scatterFreedom = Require.positive("degrees of freedom of the scatter", scatterFreedom, Units.ONE);
        scatter = Require.positive("scatter", scatter, Units.ONE);
        plateFreedom = Require.positive("degrees of freedom of the plates", plateFreedom, Units.ONE);
        plateSpread = Require.positive("spread between plates", plateSpread, Units.ONE);
    }

    /**
     * Returns the prior of a material of the catalogue: its uncertainty, but no less than 5 %; a shop factor of 13 %; a scatter
     * of 6 % and a spread between plates of 5 %, each worth two cuts (assumed).
     *
     * @param material the material
     * @return the prior
     */
    public static CutPrior catalogue(Material material) {
        Objects.requireNonNull(material, "material");
        double own = Math.max(MIN_MATERIAL, material.relativeUncertainty());
        return new CutPrior(own, SHOP, FREEDOM, SCATTER, FREEDOM, PLATE_SPREAD);
    }

    /**
     * Returns a prior of the scatter alone: nothing is known of the machinability. With it a ladder whose intervals all overlap has
     * an answer.
     *
     * @param freedom degrees of freedom, above 0: the number of cuts that it is worth
     * @param deviation standard deviation of the logarithm of depth, above 0
     * @return the prior; its spread between plates is that of {@link #catalogue}
     */
    public static CutPrior ofScatter(double freedom, double deviation) {
        return new CutPrior(UNKNOWN, 0, freedom, deviation, FREEDOM, PLATE_SPREAD);
    }

    /** Whether the machinability has no prior. */
    boolean isOfScatterAlone() {
        return material >= UNKNOWN;
    }

    /**
     * Returns this prior with another scatter.
     *
     * @param freedom degrees of freedom, above 0: the number of cuts that it is worth
     * @param deviation standard deviation of the logarithm of depth, above 0
     * @return the prior
     */
    public CutPrior withScatter(double freedom, double deviation) {
        return new CutPrior(material, shop, freedom, deviation, plateFreedom, plateSpread);
    }

    /**
     * Returns this prior with another spread between plates.
     *
     * @param freedom degrees of freedom, above 0: the number of plates that it is worth
     * @param deviation standard deviation of the logarithm of depth, above 0
     * @return the prior
     */
    public CutPrior withPlates(double freedom, double deviation) {
        return new CutPrior(material, shop, scatterFreedom, scatter, freedom, deviation);
    }

    /**
     * Returns this prior with another factor of the shop.
     *
     * @param deviation standard deviation of the logarithm of depth, 0 or more
     * @return the prior
     */
    public CutPrior withShop(double deviation) {
        return new CutPrior(material, deviation, scatterFreedom, scatter, plateFreedom, plateSpread);
    }

    /** Standard deviation of the logarithm of the machinability of a material in one shop. */
    double machinability() {
        return Math.hypot(material, shop);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("cut prior")
                .put("material", material)
                .put("shop", shop)
                .put("scatter_degrees_of_freedom", scatterFreedom)
                .put("scatter", scatter)
                .put("plate_degrees_of_freedom", plateFreedom)
                .put("plate_spread", plateSpread)
                .map();
    }
}
