package dev.waterjet.kerf;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/**
 * Model of the cut front behind a jet: the parabola x(z) = k z<sup>2</sup> / H, with z the depth below the top side and H the
 * depth that the jet just separates at the feed rate.
 *
 * <pre>{@code
 * CutConditions cut = CutConditions.of(jet, plate, MachinabilityFeed.published());
 * Estimate<Length> exitLag = LagModel.standard().lag(cut, millimetresPerMinute(120)).atExit();
 * double exitLagM = CutFront.of(LagModel.standard(), cut).exitLagSi(0.002);
 * }</pre>
 *
 * <p>The standard coefficient follows from the published critical point of aluminium, cast iron and stainless steel (Momber,
 * Kovacevic, Proc. IMechE B 209 (1995) 491-498): at 0.52 H the striations make an angle of 15 degrees with the axis of the
 * jet. So {@code k = tan(15 deg) / (2 * 0.52) = 0.2576}: in a plate of thickness h cut at the quality index q the exit lag is
 * 0.2576 h/q. The parabola is published, the coefficient derived; its relative standard uncertainty of 0.3 is assumed.
 *
 * <p>Worked number: 20 mm at index 2 have an exit lag of 2.58 mm.
 */
public final class LagModel implements HasEvidence, Described, Serializable {

    private static final long serialVersionUID = 1L;

    /**
     * Depth of the critical point of energy absorption over the separation depth (Momber, Kovacevic 1995). That the smooth
     * zone ends there is derived.
     */
    public static final double CRITICAL_DEPTH_RATIO = 0.52;

    private static final double CRITICAL_ANGLE_RAD = Math.toRadians(15);
    private static final double ASSUMED_UNCERTAINTY = 0.3;

    private static final LagModel STANDARD = of(
            LagKernel.coefficient(CRITICAL_DEPTH_RATIO, CRITICAL_ANGLE_RAD),
            ASSUMED_UNCERTAINTY,
            Evidence.of(EvidenceGrade.DERIVED, Source.of("Momber, Kovacevic, Proc. IMechE B 209 (1995) 491-498"))
                    .withNote(
                            "Parabolic front and critical point (0.52 of the maximum depth, 15 degrees) are published;"
                                    + " the lag that follows is derived. The relative uncertainty of 0.3 is assumed."));

    /** Checked content, and the serial form. */
    private record Values(double coefficient, double relativeUncertainty, Evidence evidence) implements Serializable {

        Values {
            coefficient = Require.positive("lag coefficient", coefficient, Units.ONE);
            relativeUncertainty =
                    Require.notNegative("relative uncertainty of the lag coefficient", relativeUncertainty, Units.ONE);
            Objects.requireNonNull(evidence, "evidence");
        }

        private Object readResolve() {
            return new LagModel(this);
        }
    }

    private final transient Values values;

    private LagModel(Values values) {
        this.values = values;
    }

    /** {@return the model through the published critical point} */
    public static LagModel standard() {
        return STANDARD;
    }

    /**
     * Returns a model with another coefficient.
     *
     * @param coefficient k in x = k z<sup>2</sup> / H, above 0
     * @param relativeUncertainty relative standard uncertainty of k, 0 or more
     * @param evidence evidence for k
     * @return the model
     */
    public static LagModel of(double coefficient, double relativeUncertainty, Evidence evidence) {
        return new LagModel(new Values(coefficient, relativeUncertainty, evidence));
    }

    /** {@return the coefficient k in x = k z<sup>2</sup> / H} */
    public double coefficient() {
        return values.coefficient;
    }

    /** {@return the relative standard uncertainty of the coefficient} */
    public double relativeUncertainty() {
        return values.relativeUncertainty;
    }

    /**
     * Returns the lag of a cut.
     *
     * @param cut conditions of the cut
     * @param feed feed rate, at most the one that just separates the workpiece
     * @return the lag
     * @throws dev.waterjet.measure.DomainException if the jet does not separate the workpiece at that feed rate
     */
    public Lag lag(CutConditions cut, Quantity<Speed> feed) {
        return new Lag(this, cut.workpiece().thickness(), cut.depth(feed));
    }

    /**
     * Returns the lag at a depth, on SI numbers.
     *
     * @param separationDepthM depth that the jet just separates in m, above 0
     * @param depthM depth below the top side in m, 0 or more
     * @return lag in m
     */
    public double lagSi(double separationDepthM, double depthM) {
        return LagKernel.lag(values.coefficient, depthM, separationDepthM);
    }

    @Override
    public Evidence evidence() {
        return values.evidence;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("lag model")
                .put("coefficient", values.coefficient)
                .put("relative_uncertainty", values.relativeUncertainty)
                .put("evidence", values.evidence)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof LagModel that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "lag " + QuantityText.round(values.coefficient, 4) + " z^2/H";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
