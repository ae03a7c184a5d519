package dev.waterjet.jet;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import javax.measure.quantity.Dimensionless;
import org.jspecify.annotations.Nullable;

/**
 * Mixing efficiency (momentum transfer efficiency): speed of the abrasive particles over that of an ideal exchange of momentum.
 *
 * <p>The literature gives 0.65 to 0.85. The standard value is 0.75 with a standard uncertainty of 0.10, so that this range is
 * about one standard uncertainty to either side.
 *
 * <p>The efficiency decreases with loading; no rate is published. {@link #decreasing} gives it the form &eta; =
 * &eta;<sub>0</sub> exp(-<i>R</i>/<i>s</i>) with the loading ratio <i>R</i> and a scale <i>s</i>, to be calibrated from
 * measured particle speeds, or by {@link #scaleForOptimumLoading} from the loading at which the jet cuts best.
 */
public final class MixingEfficiency implements Described, HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    private static final MixingEfficiency STANDARD = of(
            0.75,
            0.10,
            Evidence.of(
                            EvidenceGrade.FROM_MEMORY,
                            Source.of("abrasive-waterjet literature on momentum transfer, range 0.65 to 0.85"))
                    .withNote(
                            "Measured ratios of particle to water speed range from 0.30 (Trans. JSME B 65 (1999) 1914)"
                                    + " to 0.57 (WPI industry workshop 2013)."));

    /** Keeps the particle speed of an extreme loading above 0. */
    private static final double MIN_SHARE = 1e-6;

    /** Checked content, and the serial form; no scale if the efficiency is independent of loading. */
    private record Values(
            double value,
            double standardUncertainty,
            @Nullable Double loadingScale,
            Evidence evidence) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Require.positive("mixing efficiency", value, Units.ONE);
            value = Require.atMost("mixing efficiency", value, 1, Units.ONE, "");
            standardUncertainty =
                    Require.notNegative("uncertainty of the mixing efficiency", standardUncertainty, Units.ONE);
            if (loadingScale != null) {
                loadingScale = Require.positive("loading scale of the mixing efficiency", loadingScale, Units.ONE);
            }
            Objects.requireNonNull(evidence, "evidence");
        }

        private Object readResolve() {
            return new MixingEfficiency(this);
        }
    }

    private final transient Values values;
    private final transient double loadingScale;

    private MixingEfficiency(Values values) {
        this.values = values;
        this.loadingScale = values.loadingScale == null ? Double.POSITIVE_INFINITY : values.loadingScale;
    }

    /** {@return the standard efficiency, 0.75 with a standard uncertainty of 0.10} */
    public static MixingEfficiency standard() {
        return STANDARD;
    }

    /**
     * Returns a custom efficiency, independent of loading.
     *
     * @param value efficiency, above 0 to 1
     * @param standardUncertainty standard uncertainty, 0 or more
     * @param evidence evidence for it
     * @return the efficiency
     */
    public static MixingEfficiency of(double value, double standardUncertainty, Evidence evidence) {
        return new MixingEfficiency(new Values(value, standardUncertainty, null, evidence));
    }

    /**
     * Returns an efficiency that decreases with loading: &eta;<sub>0</sub> exp(-<i>R</i>/<i>s</i>).
     *
     * @param unloaded efficiency &eta;<sub>0</sub> at negligible loading, above 0 to 1
     * @param standardUncertainty standard uncertainty of &eta;<sub>0</sub>, 0 or more
     * @param loadingScale scale <i>s</i>, above 0: the loading ratio at which the efficiency is 37 % of &eta;<sub>0</sub>
     * @param evidence evidence for it
     * @return the efficiency
     */
    public static MixingEfficiency decreasing(
            double unloaded, double standardUncertainty, double loadingScale, Evidence evidence) {
        return new MixingEfficiency(new Values(unloaded, standardUncertainty, loadingScale, evidence));
    }

    /**
     * Returns the scale that maximizes the power of the abrasive at a given loading: <i>s</i> = 2/(1/<i>R</i> -
     * 2/(1 + <i>R</i>)). Derived: the power is proportional to <i>R</i> &eta;<sup>2</sup>/(1 + <i>R</i>)<sup>2</sup>, and its
     * derivative is 0 there.
     *
     * @param loadingRatio loading ratio at which the jet cuts best, above 0 and below 1
     * @return the scale, for {@link #decreasing}
     */
    public static double scaleForOptimumLoading(double loadingRatio) {
        Require.positive("optimum loading ratio", loadingRatio, Units.ONE);
        Require.atMost(
                "optimum loading ratio",
                loadingRatio,
                Math.nextDown(1.0),
                Units.ONE,
                "a jet without mixing loss has its optimum at 1");
        return 2 / (1 / loadingRatio - 2 / (1 + loadingRatio));
    }

    /**
     * Returns the scale for which a feed rate model that is corrected by {@link #decreasing} cuts deepest at a given loading:
     * <i>s</i> = 2 <i>R</i>/<i>e</i>. Derived: with a depth proportional to the abrasive flow rate to the power <i>e</i> the
     * corrected depth is proportional to <i>R<sup>e</sup></i> exp(-2 <i>R</i>/<i>s</i>). For the machinability model <i>e</i>
     * is 0.343.
     *
     * @param loadingRatio loading ratio at which the jet cuts deepest, above 0; measured optima are 0.10 to 0.25 (from memory)
     * @param flowExponent exponent <i>e</i> of the abrasive flow rate in the depth of the model, above 0
     * @return the scale, for {@link #decreasing}
     */
    public static double scaleForOptimumLoading(double loadingRatio, double flowExponent) {
        Require.positive("optimum loading ratio", loadingRatio, Units.ONE);
        Require.positive("exponent of the abrasive flow rate", flowExponent, Units.ONE);
        return 2 * loadingRatio / flowExponent;
    }

    /** {@return the efficiency with its uncertainty; the one at negligible loading, if it decreases with loading} */
    public Estimate<Dimensionless> value() {
        return Estimate.of(Kind.RATIO, values.value, values.standardUncertainty);
    }

    /**
     * Returns the efficiency at a loading, as a number.
     *
     * @param loadingRatio abrasive flow rate over water flow rate by mass
     * @return the efficiency, at least a millionth of that at negligible loading
     */
    public double atSi(double loadingRatio) {
        return values.value * Math.max(MIN_SHARE, Math.exp(-loadingRatio / loadingScale));
    }

    double relativeUncertainty() {
        return values.standardUncertainty / values.value;
    }

    @Override
    public Evidence evidence() {
        return values.evidence;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("mixing efficiency")
                .put("value", values.value)
                .put("standard_uncertainty", values.standardUncertainty)
                .put(
                        "loading_scale",
                        Kind.RATIO,
                        values.loadingScale == null ? OptionalDouble.empty() : OptionalDouble.of(values.loadingScale))
                .put("evidence", values.evidence)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MixingEfficiency that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "mixing efficiency " + QuantityText.round(values.value, 4) + " \u00b1 "
                + QuantityText.round(values.standardUncertainty, 2)
                + (values.loadingScale == null
                        ? ""
                        : ", decreasing with loading over " + QuantityText.round(values.loadingScale, 4));
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
