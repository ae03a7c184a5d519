package dev.waterjet.jet;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import javax.measure.quantity.Dimensionless;

/**
 * How close the abrasive comes to the speed that an ideal exchange of momentum would give it.
 *
 * <p>The literature gives 0.65 to 0.85, with a mean of 0.75 here and a standard uncertainty that makes this range about
 * one deviation to each side.
 *
 * <p>It falls with loading, by how much is not published. {@link #decreasing} gives it the form {@code eta = eta_0 exp(-R/s)}
 * with R the loading ratio and s a scale, for a shop to calibrate: from measured speeds, or by {@link #scaleForOptimumLoading} from
 * the loading at which its jet cuts best.
 */
public final class MixingEfficiency implements Described, HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    private static final MixingEfficiency STANDARD = new MixingEfficiency(
            0.75,
            0.10,
            Double.POSITIVE_INFINITY,
            Evidence.of(
                            EvidenceGrade.FROM_MEMORY,
                            Source.of("abrasive-waterjet literature on momentum transfer, range 0.65 to 0.85"))
                    .withNote(
                            "Measured ratios of particle to water speed range from 0.30 (Trans. JSME B 65 (1999) 1914)"
                                    + " to 0.57 (WPI industry workshop 2013)."));

    /** Keeps a jet choked with abrasive from a speed of zero. */
    private static final double LEAST_SHARE = 1e-6;

    private final double value;
    private final double standardUncertainty;
    private final double loadingScale;
    private final Evidence evidence;

    private MixingEfficiency(double value, double standardUncertainty, double loadingScale, Evidence evidence) {
        this.value = Require.positive("mixing efficiency", value, Units.ONE);
        Require.atMost("mixing efficiency", value, 1, Units.ONE, "no more momentum than the water has");
        this.standardUncertainty =
                Require.notNegative("uncertainty of the mixing efficiency", standardUncertainty, Units.ONE);
        if (!(loadingScale > 0)) {
            throw new DomainException(
                    "scale of loading", loadingScale, "above", 0, Units.ONE, "the efficiency falls with loading");
        }
        this.loadingScale = loadingScale;
        this.evidence = Objects.requireNonNull(evidence, "evidence");
    }

    /**
     * The usual efficiency, 0.75 with a standard uncertainty of 0.10.
     *
     * @return the efficiency
     */
    public static MixingEfficiency standard() {
        return STANDARD;
    }

    /**
     * An efficiency of one's own, the same at any loading.
     *
     * @param value efficiency, above 0 to 1
     * @param standardUncertainty its standard uncertainty
     * @param evidence what speaks for it
     * @return the efficiency
     */
    public static MixingEfficiency of(double value, double standardUncertainty, Evidence evidence) {
        return new MixingEfficiency(value, standardUncertainty, Double.POSITIVE_INFINITY, evidence);
    }

    /**
     * An efficiency that falls with loading: {@code eta_0 exp(-R/s)}.
     *
     * @param unloaded efficiency eta_0 of the first grains, above 0 to 1
     * @param standardUncertainty standard uncertainty of eta_0
     * @param loadingScale scale s: the loading ratio at which the efficiency has fallen to 37 percent, above zero
     * @param evidence what speaks for it
     * @return the efficiency
     */
    public static MixingEfficiency decreasing(
            double unloaded, double standardUncertainty, double loadingScale, Evidence evidence) {
        return new MixingEfficiency(unloaded, standardUncertainty, loadingScale, evidence);
    }

    /**
     * The scale with which the power of the abrasive is greatest at a given loading: {@code s = 2/(1/R - 2/(1 + R))}.
     * Derived: the power goes with {@code R eta^2/(1 + R)^2}, and its derivative vanishes there.
     *
     * @param loadingRatio loading ratio at which the jet cuts best, above 0 and below 1
     * @return the scale, for {@link #decreasing}
     */
    public static double scaleForOptimumLoading(double loadingRatio) {
        Require.positive("best loading ratio", loadingRatio, Units.ONE);
        Require.atMost(
                "best loading ratio",
                loadingRatio,
                Math.nextDown(1.0),
                Units.ONE,
                "at 1 a lossless jet is at its best");
        return 2 / (1 / loadingRatio - 2 / (1 + loadingRatio));
    }

    /**
     * The efficiency with its uncertainty; of one that falls with loading that of the first grains.
     *
     * @return an estimate of the ratio
     */
    public Estimate<Dimensionless> value() {
        return Estimate.of(Kind.RATIO, value, standardUncertainty);
    }

    /**
     * The efficiency at a loading, as a number.
     *
     * @param loadingRatio mass flow of abrasive over mass flow of water
     * @return the efficiency, no less than a millionth of that of the first grains
     */
    public double atSi(double loadingRatio) {
        return value * Math.max(LEAST_SHARE, Math.exp(-loadingRatio / loadingScale));
    }

    double relativeUncertainty() {
        return standardUncertainty / value;
    }

    private boolean isFalling() {
        return loadingScale < Double.POSITIVE_INFINITY;
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("mixing efficiency")
                .put("value", value)
                .put("standard_uncertainty", standardUncertainty)
                .put(
                        "loading_scale",
                        Kind.RATIO,
                        isFalling() ? OptionalDouble.of(loadingScale) : OptionalDouble.empty())
                .put("evidence", evidence)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MixingEfficiency that
                && value == that.value
                && standardUncertainty == that.standardUncertainty
                && loadingScale == that.loadingScale
                && evidence.equals(that.evidence);
    }

    @Override
    public int hashCode() {
        return Objects.hash(value, standardUncertainty, loadingScale, evidence);
    }

    @Override
    public String toString() {
        return "mixing efficiency " + value + " +/- " + standardUncertainty
                + (isFalling() ? ", falling with loading over " + loadingScale : "");
    }
}
