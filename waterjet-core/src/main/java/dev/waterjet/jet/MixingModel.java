package dev.waterjet.jet;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Experimental;
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
import java.util.OptionalDouble;
import javax.measure.quantity.Dimensionless;
import org.jspecify.annotations.Nullable;

/**
 * Coefficients of the one-dimensional model of mixing in the focusing tube, with their uncertainty: what {@link TubeMixing}
 * computes with.
 *
 * <pre>{@code
 * MixingModel model = MixingModel.standard();
 * TubeMixing mixing = model.mixing(jet);
 * CuttingHead sameHead = jet.head().withMixing(model.efficiency(jet));
 * }</pre>
 *
 * <p>The contact drag is the drag coefficient of a particle times the share of the water that it meets; the two occur as this
 * product only. Crowding, if given, lets that share fall with the loading ratio <i>R</i>: exp(-<i>R</i>/<i>s</i>).
 */
@Experimental
public final class MixingModel implements Described, HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double MIN_CONTACT_DRAG = 0.001;
    private static final double MAX_CONTACT_DRAG = 10;
    private static final double MAX_WALL = 0.1;
    private static final double MAX_LOG_DEVIATION = 3;

    /** Of angular grains, and their Reynolds number in the tube; sphericities of 0.7 and 0.8 are 18 % to either side. */
    private static final double SPHERICITY = 0.75;

    private static final double REYNOLDS = 1e4;
    private static final double DRAG_SPREAD = 0.18;

    private static final MixingModel STANDARD = of(
                    0.26,
                    0.001,
                    Evidence.of(EvidenceGrade.ASSUMED, Source.of("derived from the standard mixing efficiency"))
                            .withNote(
                                    "The contact drag gives a usual head an efficiency of 0.75 ± 0.10, from memory; the"
                                            + " wall coefficient is assumed."))
            .withDeviations(0.9, Math.log(2), 0);

    /** Checked content, and the serial form; no scale if the contact drag is independent of loading. */
    private record Values(
            double contactDrag,
            double wallCoefficient,
            double dragDeviation,
            double wallDeviation,
            double correlation,
            @Nullable Double crowdingScale,
            Evidence evidence)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            contactDrag =
                    Require.between("contact drag", contactDrag, MIN_CONTACT_DRAG, MAX_CONTACT_DRAG, Units.ONE, "");
            wallCoefficient = Require.between("wall coefficient", wallCoefficient, 0, MAX_WALL, Units.ONE, "");
            dragDeviation = Require.between(
                    "deviation of the contact drag", dragDeviation, 0, MAX_LOG_DEVIATION, Units.ONE, "");
            wallDeviation = Require.between(
                    "deviation of the wall coefficient", wallDeviation, 0, MAX_LOG_DEVIATION, Units.ONE, "");
            correlation = Require.between("correlation of the coefficients", correlation, -1, 1, Units.ONE, "");
            if (crowdingScale != null) {
                crowdingScale = Require.positive("loading scale of the contact drag", crowdingScale, Units.ONE);
            }
            Objects.requireNonNull(evidence, "evidence");
        }

        private Object readResolve() {
            return new MixingModel(this);
        }
    }

    private final transient Values values;

    private MixingModel(Values values) {
        this.values = values;
    }

    /**
     * Returns the default coefficients: a contact drag of 0.26 within a factor of 2.5, a wall coefficient of 0.001 within a factor
     * of 2.
     *
     * @return the model, with evidence of grade assumed
     */
    public static MixingModel standard() {
        return STANDARD;
    }

    /**
     * Returns a model with given coefficients, taken as exact until {@link #withDeviations} gives their uncertainty.
     *
     * @param contactDrag drag coefficient times the share of the water that a particle meets, 0.001 to 10
     * @param wallCoefficient friction coefficient of the wall, 0 to 0.1
     * @param evidence evidence for them
     * @return the model
     */
    public static MixingModel of(double contactDrag, double wallCoefficient, Evidence evidence) {
        return new MixingModel(new Values(contactDrag, wallCoefficient, 0, 0, 0, null, evidence));
    }

    /**
     * Returns this model with the uncertainty of its coefficients.
     *
     * @param contactDrag standard uncertainty of the logarithm of the contact drag, 0 to 3: 0.7 is a factor of 2
     * @param wallCoefficient standard uncertainty of the logarithm of the wall coefficient, 0 to 3
     * @param correlation correlation of the two logarithms, -1 to 1
     * @return the model
     */
    public MixingModel withDeviations(double contactDrag, double wallCoefficient, double correlation) {
        return new MixingModel(new Values(
                values.contactDrag,
                values.wallCoefficient,
                contactDrag,
                wallCoefficient,
                correlation,
                values.crowdingScale,
                values.evidence));
    }

    /**
     * Returns this model with a contact drag that falls with the loading ratio <i>R</i> as exp(-<i>R</i>/<i>s</i>). A head whose
     * {@link MixingEfficiency} decreases with loading already has this effect.
     *
     * @param loadingScale scale <i>s</i>, above 0
     * @return the model
     */
    public MixingModel withCrowding(double loadingScale) {
        return new MixingModel(new Values(
                values.contactDrag,
                values.wallCoefficient,
                values.dragDeviation,
                values.wallDeviation,
                values.correlation,
                loadingScale,
                values.evidence));
    }

    /**
     * Returns the mixing of a jet.
     *
     * @param jet jet with its head, abrasive and flow rates; a worn tube widens evenly to its exit bore
     * @return the mixing
     */
    public TubeMixing mixing(AbrasiveJet jet) {
        return TubeMixing.of(jet, this);
    }

    /**
     * Returns the mixing efficiency of a jet as one number, for its head and the feed models that use the particle speed.
     *
     * @param jet jet
     * @return the efficiency, with the uncertainty and the evidence of this model
     */
    public MixingEfficiency efficiency(AbrasiveJet jet) {
        Estimate<Dimensionless> efficiency = mixing(jet).efficiency();
        return MixingEfficiency.of(Math.min(1, efficiency.si()), efficiency.standardUncertaintySi(), values.evidence);
    }

    /**
     * Returns the speed of the particles at the exit of the tube, as {@link #mixing} without its uncertainty.
     *
     * @param jet jet
     * @return the speed, in m/s
     */
    public double particleSpeedSi(AbrasiveJet jet) {
        return TubeMixing.particleSpeedSi(Objects.requireNonNull(jet, "jet"), this);
    }

    /**
     * Returns the share of the water that a particle meets: the contact drag over the drag coefficient of an angular grain. A share
     * above 1 is not possible: then the speeds are wrong or not those of this model.
     *
     * @return the share; the drag coefficient is that of a sphericity of 0.75 at a Reynolds number of 10 000 by Haider and
     *     Levenspiel (1989), within 18 %
     */
    public Estimate<Dimensionless> waterShare() {
        double share = values.contactDrag / DragKernel.ofSphericity(SPHERICITY, REYNOLDS);
        return Estimate.withinFactor(Kind.RATIO, share, Math.hypot(values.dragDeviation, DRAG_SPREAD), List.of());
    }

    /** {@return the drag coefficient times the share of the water that a particle meets, at negligible loading} */
    public double contactDrag() {
        return values.contactDrag;
    }

    /** {@return the friction coefficient of the wall} */
    public double wallCoefficient() {
        return values.wallCoefficient;
    }

    /** {@return the loading ratio at which the contact drag has fallen to 37 %; empty if it does not fall} */
    public OptionalDouble crowdingScale() {
        return values.crowdingScale == null ? OptionalDouble.empty() : OptionalDouble.of(values.crowdingScale);
    }

    double contactDragAt(double loadingRatio) {
        double share = values.crowdingScale == null ? 1 : Math.exp(-loadingRatio / values.crowdingScale);
        return Math.max(values.contactDrag * share, MIN_CONTACT_DRAG);
    }

    double dragDeviation() {
        return values.dragDeviation;
    }

    double wallDeviation() {
        return values.wallDeviation;
    }

    double correlation() {
        return values.correlation;
    }

    @Override
    public Evidence evidence() {
        return values.evidence;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("mixing model")
                .put("contact_drag", values.contactDrag)
                .put("wall_coefficient", values.wallCoefficient)
                .put("contact_drag_log_deviation", values.dragDeviation)
                .put("wall_coefficient_log_deviation", values.wallDeviation)
                .put("correlation", values.correlation)
                .put("loading_scale", Kind.RATIO, crowdingScale())
                .put("evidence", values.evidence)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MixingModel that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "mixing with a contact drag of " + QuantityText.round(values.contactDrag, 3)
                + " and a wall coefficient of " + QuantityText.round(values.wallCoefficient, 3);
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
