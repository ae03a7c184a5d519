package dev.waterjet.jet;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Evident;
import dev.waterjet.evidence.Source;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.quantity.Dimensionless;

/**
 * How close the abrasive comes to the speed that an ideal exchange of momentum would give it.
 *
 * <p>The literature gives 0.65 to 0.85, with a mean of 0.75 here and a standard uncertainty that makes this range about
 * one deviation to each side. It falls with loading, by how much is not published: a shop that needs better calibrates.
 */
public final class MixingEfficiency implements Described, Evident, Serializable {

    private static final long serialVersionUID = 1L;

    private static final MixingEfficiency USUAL = new MixingEfficiency(
            0.75,
            0.10,
            Evidence.of(
                            EvidenceGrade.FROM_MEMORY,
                            Source.of("abrasive-waterjet literature on momentum transfer, range 0.65 to 0.85"))
                    .withNote(
                            "Measured ratios of particle to water speed range from 0.30 (Trans. JSME B 65 (1999) 1914)"
                                    + " to 0.57 (WPI industry workshop 2013)."));

    private final double value;
    private final double standardUncertainty;
    private final Evidence evidence;

    private MixingEfficiency(double value, double standardUncertainty, Evidence evidence) {
        this.value = Require.positive("mixing efficiency", value, Units.ONE);
        Require.atMost("mixing efficiency", value, 1, Units.ONE, "no more momentum than the water has");
        this.standardUncertainty =
                Require.notNegative("uncertainty of the mixing efficiency", standardUncertainty, Units.ONE);
        this.evidence = Objects.requireNonNull(evidence, "evidence");
    }

    /**
     * The usual efficiency, 0.75 with a standard uncertainty of 0.10.
     *
     * @return the efficiency
     */
    public static MixingEfficiency usual() {
        return USUAL;
    }

    /**
     * An efficiency of one's own.
     *
     * @param value efficiency, above 0 to 1
     * @param standardUncertainty its standard uncertainty
     * @param evidence what speaks for it
     * @return the efficiency
     */
    public static MixingEfficiency of(double value, double standardUncertainty, Evidence evidence) {
        return new MixingEfficiency(value, standardUncertainty, evidence);
    }

    /**
     * The efficiency with its uncertainty.
     *
     * @return an estimate of the ratio
     */
    public Estimate<Dimensionless> value() {
        return Estimate.of(Kind.RATIO, value, standardUncertainty);
    }

    double valueSi() {
        return value;
    }

    double relativeUncertainty() {
        return standardUncertainty / value;
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
                .put("evidence", evidence)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MixingEfficiency that
                && value == that.value
                && standardUncertainty == that.standardUncertainty;
    }

    @Override
    public int hashCode() {
        return Objects.hash(value, standardUncertainty);
    }

    @Override
    public String toString() {
        return "mixing efficiency " + value + " +/- " + standardUncertainty;
    }
}
