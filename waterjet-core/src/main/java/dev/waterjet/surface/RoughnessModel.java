package dev.waterjet.surface;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Model of the roughness down a cut surface: {@code Ra(z) = k g (1 + a z/H) + b d e(z/H)}.
 *
 * <pre>{@code
 * Kerf kerf = KerfModel.standard().kerf(cut, millimetresPerMinute(120));
 * SurfaceRoughness roughness = RoughnessModel.standard().roughness(kerf);
 * Estimate<Length> ra = roughness.raAtExit();
 * }</pre>
 *
 * <p>The abrasive sets the texture at the entry, which hardly depends on the feed rate; down to about 0.52 of the separation
 * depth H it grows slowly, from there on striations grow, so that the exit depends strongly on the feed rate. Symbols: g mean
 * grain size; d exit bore of the focusing tube; H depth separated at the feed rate; e rises linearly from 0.52 on, with a
 * smooth bend.
 *
 * <p>Evidence: it is published that roughness grows linearly with depth, hardly depends on the feed rate near the entry and
 * strongly near the exit. Published is also a critical point at 0.52 of the maximum depth, where the striation angle is about 75
 * degrees; that the smooth zone ends there is derived from it. The coefficients are assumed: k = 0.02 within a factor of 1.5,
 * a = 1 and b = 0.1 within a factor of 2, Rz = 6 Ra and Pa = 1.5 Ra. Pz = 11 Pa is published as 10 to 12.
 *
 * <p>Range: by this model every cut of quality index 1.92 or more is smooth to the exit. Shops see striations at the bottom of
 * coarse and medium cuts (common practice, no source), caused by vibration, changes of feed rate and of abrasive flow that the
 * model leaves out; such a surface has a caution. Fit k and b to measured surfaces.
 *
 * <p>Ra and Rz are of the roughness profile, Pa and Pz of the primary profile, which contains the waviness too: neither
 * replaces the other.
 *
 * <p>Worked number: 80 mesh (180 &micro;m), tube 1 mm, halfway down to H: Ra = 3.6 * 1.5 + 1000 * 0.1 * 0.0157 = 7.0 &micro;m.
 */
public final class RoughnessModel implements HasEvidence, Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final String UNKNOWN = "the measured surfaces do not determine it";

    private static final RoughnessModel STANDARD = new RoughnessModel(new Values(
            new RoughnessNumbers(0.02, 1, 0.1, 6, 1.5, 11),
            new RoughnessNumbers(Math.log(1.5), Math.log(2), Math.log(2), 0.25, 0.3, 0.05),
            Evidence.of(
                            EvidenceGrade.DERIVED,
                            Source.of("Linear growth: Tavodova 2013; critical point: Momber, Kovacevic, Proc. IMechE B"
                                    + " 209 (1995); entry and exit: JMMP 9 (2025) 80; grain size: Hashish 1991"))
                    .withNote("The form follows published trends; that the smooth zone ends at the critical point is"
                            + " derived, the coefficients are assumed within wide factors.")));

    /** Checked content, and the serial form. */
    private record Values(RoughnessNumbers numbers, RoughnessNumbers relative, Evidence evidence)
            implements Serializable {

        Values {
            Objects.requireNonNull(numbers, "numbers");
            Require.above(
                    "Rz over Ra", numbers.rzOverRa(), 1, Units.ONE, "a profile is higher than its mean deviation");
            Require.relativeUncertainty("texture at the entry", relative.textureRatio(), UNKNOWN);
            Require.relativeUncertainty("growth of the striations", relative.striationGrowth(), UNKNOWN);
            Require.relativeUncertainty("Rz over Ra", relative.rzOverRa(), UNKNOWN);
            Objects.requireNonNull(evidence, "evidence");
        }

        private Object readResolve() {
            return new RoughnessModel(this);
        }
    }

    private final transient Values values;

    private RoughnessModel(Values values) {
        this.values = values;
    }

    /** {@return the model with assumed numbers} */
    public static RoughnessModel standard() {
        return STANDARD;
    }

    /**
     * Returns this model with another texture at the entry.
     *
     * @param ratio Ra at the entry over the mean grain size: k, above 0
     * @param relativeUncertainty its relative standard uncertainty, 0 to 3
     * @param evidence evidence for the model with that texture
     * @return the model with that texture
     */
    public RoughnessModel withTextureRatio(double ratio, double relativeUncertainty, Evidence evidence) {
        return new RoughnessModel(new Values(
                values.numbers.withTextureRatio(
                        Require.positive("Ra at the entry over the mean grain size", ratio, Units.ONE)),
                values.relative.withTextureRatio(relativeUncertainty),
                evidence));
    }

    /**
     * Returns this model with another growth of the striations.
     *
     * @param growth growth of Ra per separation depth in the striation zone, over the exit bore: b, 0 or more
     * @param relativeUncertainty its relative standard uncertainty, 0 to 3
     * @param evidence evidence for the model with that growth
     * @return the model with that growth
     */
    public RoughnessModel withStriationGrowth(double growth, double relativeUncertainty, Evidence evidence) {
        return new RoughnessModel(new Values(
                values.numbers.withStriationGrowth(growth),
                values.relative.withStriationGrowth(relativeUncertainty),
                evidence));
    }

    /**
     * Returns this model with another ratio of Rz to Ra, as measured on own cut surfaces.
     *
     * @param ratio Rz over Ra, above 1
     * @param relativeUncertainty its relative standard uncertainty, 0 to 3
     * @return the model with that ratio
     */
    public RoughnessModel withRzOverRa(double ratio, double relativeUncertainty) {
        return new RoughnessModel(new Values(
                values.numbers.withRzOverRa(ratio),
                values.relative.withRzOverRa(relativeUncertainty),
                values.evidence));
    }

    RoughnessNumbers numbers() {
        return values.numbers;
    }

    RoughnessNumbers relative() {
        return values.relative;
    }

    /** {@return Ra at the entry over the mean grain size: k} */
    public double textureRatio() {
        return values.numbers.textureRatio();
    }

    /** {@return the growth of Ra per separation depth in the striation zone, over the exit bore: b} */
    public double striationGrowth() {
        return values.numbers.striationGrowth();
    }

    /**
     * Returns the roughness of the cut surface of a kerf.
     *
     * @param kerf the kerf
     * @return the roughness at any depth
     */
    public SurfaceRoughness roughness(Kerf kerf) {
        return new SurfaceRoughness(this, kerf);
    }

    /**
     * Returns Ra at a depth, on SI numbers, for loops and fits.
     *
     * @param jet settings of the jet
     * @param separationDepthM depth that the jet just separates in m, above 0
     * @param depthM depth below the top side in m, 0 or more
     * @return Ra in m
     */
    public double raSi(JetSettings jet, double separationDepthM, double depthM) {
        Objects.requireNonNull(jet, "jet");
        return ra(jet, depthM / separationDepthM, values.numbers);
    }

    static double ra(JetSettings jet, double depthRatio, RoughnessNumbers numbers) {
        return RoughnessKernel.ra(depthRatio, jet.abrasive().mesh().meanGrainSizeSi(), jet.tubeExitBoreSi(), numbers);
    }

    /**
     * Returns the minimum separation depth from which Ra at a depth is at most a limit: the depth of the maximum feed rate.
     *
     * @param cut conditions of the cut
     * @param depth depth below the top side, above 0 and at most the thickness
     * @param ra maximum Ra, above 0
     * @return the separation depth, at least the thickness; empty if even the texture at the entry is rougher
     */
    public Optional<Estimate<Length>> separationDepthForRa(
            CutConditions cut, Quantity<Length> depth, Quantity<Length> ra) {
        Objects.requireNonNull(cut, "cut");
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(ra, "ra");
        double depthM = Require.between(
                "depth", Kind.LENGTH.si(depth), Double.MIN_VALUE, cut.thicknessSi(), Units.MILLIMETRE, "the thickness");
        double raM = Require.positive("roughness Ra", Kind.LENGTH.si(ra), Units.MICROMETRE);
        double maximum = depthM / cut.thicknessSi();
        double ratio = depthRatio(values.numbers, cut.jet(), raM, maximum);
        if (!(ratio > 0)) {
            return Optional.empty();
        }
        double floor = maximum / 1e4;
        double spread = values.numbers.spread(
                values.relative, moved -> Math.max(floor, depthRatio(moved, cut.jet(), raM, maximum)));
        return Optional.of(Estimate.withinFactor(Kind.LENGTH, depthM / ratio, spread, List.of()));
    }

    /**
     * Returns the same minimum separation depth for a mean profile height.
     *
     * @param cut conditions of the cut
     * @param depth depth below the top side, above 0 and at most the thickness
     * @param rz maximum Rz, above 0
     * @return the separation depth, at least the thickness; empty if even the texture at the entry is rougher
     */
    public Optional<Estimate<Length>> separationDepthForRz(
            CutConditions cut, Quantity<Length> depth, Quantity<Length> rz) {
        Objects.requireNonNull(rz, "rz");
        double ra = Kind.LENGTH.si(rz) / values.numbers.rzOverRa();
        return separationDepthForRa(cut, depth, Kind.LENGTH.of(ra));
    }

    /** Maximum z/H at which Ra keeps the limit; 0 where the entry is rougher already. */
    private static double depthRatio(RoughnessNumbers numbers, JetSettings jet, double raM, double maximum) {
        if (ra(jet, 0, numbers) >= raM) {
            return 0;
        }
        if (ra(jet, maximum, numbers) <= raM) {
            return maximum;
        }
        return new BrentSolver(1e-14, 1e-14).solve(200, ratio -> ra(jet, ratio, numbers) / raM - 1, 0, maximum);
    }

    @Override
    public Evidence evidence() {
        return values.evidence;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("roughness model")
                .put("texture_ratio", values.numbers.textureRatio())
                .put("fine_growth", values.numbers.fineGrowth())
                .put("striation_growth", values.numbers.striationGrowth())
                .put("rz_over_ra", values.numbers.rzOverRa())
                .put("pa_over_ra", values.numbers.paOverRa())
                .put("pz_over_pa", values.numbers.pzOverPa())
                .put("texture_ratio_relative_uncertainty", values.relative.textureRatio())
                .put("fine_growth_relative_uncertainty", values.relative.fineGrowth())
                .put("striation_growth_relative_uncertainty", values.relative.striationGrowth())
                .put("rz_over_ra_relative_uncertainty", values.relative.rzOverRa())
                .put("pa_over_ra_relative_uncertainty", values.relative.paOverRa())
                .put("pz_over_pa_relative_uncertainty", values.relative.pzOverPa())
                .put("evidence", values.evidence)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RoughnessModel that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "roughness model, Ra " + QuantityText.round(values.numbers.textureRatio(), 4)
                + " grain sizes at the entry";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
