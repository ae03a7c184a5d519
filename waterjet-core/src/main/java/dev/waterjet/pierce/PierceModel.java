package dev.waterjet.pierce;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;

/**
 * Model of the depth of a blind hole over time: {@code h = a t^b}, with {@code a} the depth after one second.
 *
 * <pre>{@code
 * PierceModel model = PierceModel.derived(cut, PierceMethod.STATIONARY);
 * Estimate<Time> time = model.time(millimetres(12));
 * }</pre>
 *
 * <p>The form is published (Orbanic, Junkar, Proc. IMechE B 218 (2004)); no {@code a} or {@code b} is. A shop fits its own
 * from timed pierces of known depth ({@code PierceMeasurement} in package {@code calibrate}). Until then {@link #derived}
 * gets both from a feed model; a time is then known within a factor of 2 to 3, and has a caution.
 */
public final class PierceModel implements Described, HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    /** Share of a cut's removal that reaches the bottom of a blind hole while the jet is stationary. Assumed. */
    private static final double STATIONARY_SHARE = 0.02;

    /** The same while the jet moves, so that the returning water does not meet it. Assumed. */
    private static final double MOVING_SHARE = 0.05;

    /** Standard uncertainty of the logarithm of a derived time: within a factor of 2.2, two times out of three. Assumed. */
    private static final double DERIVED_UNCERTAINTY = 0.8;

    private static final double STEP = 1.001;

    /** Checked content, and the serial form. */
    private record Values(double afterOneSecondM, double exponent, double relativeUncertainty, Evidence evidence)
            implements Serializable {

        Values {
            afterOneSecondM = Require.positive("pierced depth after one second", afterOneSecondM, Units.MILLIMETRE);
            exponent = Require.positive("exponent of the pierce model", exponent, Units.ONE);
            relativeUncertainty =
                    Require.notNegative("relative uncertainty of the pierce time", relativeUncertainty, Units.ONE);
            Objects.requireNonNull(evidence, "evidence");
        }

        private Object readResolve() {
            return new PierceModel(this);
        }
    }

    private final transient Values values;

    private PierceModel(Values values) {
        this.values = values;
    }

    /**
     * Returns a model of given numbers.
     *
     * @param afterOneSecond depth after one second, above 0
     * @param exponent exponent of the time, above 0
     * @param relativeUncertainty relative standard uncertainty of a time, 0 or more
     * @param evidence evidence for the numbers
     * @return the model
     */
    public static PierceModel of(
            Quantity<Length> afterOneSecond, double exponent, double relativeUncertainty, Evidence evidence) {
        return new PierceModel(new Values(Kind.LENGTH.si(afterOneSecond), exponent, relativeUncertainty, evidence));
    }

    /**
     * Returns the model that follows from a feed model: a small, assumed share of the removal of a cut reaches the bottom of
     * a blind hole. Where the feed rate of the model goes with the depth to the power {@code -n}, the exponent is {@code 1/n}.
     *
     * @param cut conditions of the cut, with the pressure of the pierce
     * @param method pierce method; of a stationary jet unless the method is {@link PierceMethod#MOVING}
     * @return the model, known within a factor of 2 to 3
     */
    public static PierceModel derived(CutConditions cut, PierceMethod method) {
        double depthM = cut.thicknessSi();
        double feed = cut.separationFeedSi(depthM);
        double slope = PierceKernel.slope(feed, cut.separationFeedSi(depthM * STEP), STEP);
        double share = method == PierceMethod.MOVING ? MOVING_SHARE : STATIONARY_SHARE;
        double rate = PierceKernel.rate(share, feed, depthM, cut.jet().tubeExitBoreSi());
        return new PierceModel(new Values(
                PierceKernel.depthAfterOneSecond(depthM, rate, slope),
                1 / slope,
                Math.hypot(DERIVED_UNCERTAINTY, cut.relativeUncertainty()),
                Evidence.of(
                                EvidenceGrade.DERIVED,
                                Source.of("feed model \"" + cut.feedModel().name() + "\""))
                        .withNote("Form by Orbanic, Junkar (2004); the share of the removal that reaches the"
                                + " bottom of a blind hole (0.02 stationary, 0.05 moving) is assumed. Time"
                                + " your own pierces.")));
    }

    /**
     * Returns the time of a pierce.
     *
     * @param depth depth of the hole, above 0
     * @return the time
     */
    public Estimate<Time> time(Quantity<Length> depth) {
        double depthM = Require.positive("pierced depth", Kind.LENGTH.si(depth), Units.MILLIMETRE);
        return Estimate.withinFactor(
                Kind.TIME,
                PierceKernel.time(values.afterOneSecondM, values.exponent, depthM),
                values.relativeUncertainty,
                cautions());
    }

    /**
     * Returns the depth of a hole after a time.
     *
     * @param time jet-on time, above 0
     * @return the depth
     */
    public Estimate<Length> depth(Quantity<Time> time) {
        double timeS = Require.positive("pierce time", Kind.TIME.si(time), Units.SECOND);
        return Estimate.withinFactor(
                Kind.LENGTH,
                PierceKernel.depth(values.afterOneSecondM, values.exponent, timeS),
                values.relativeUncertainty * values.exponent,
                cautions());
    }

    private List<Caution> cautions() {
        return values.evidence.grade() == EvidenceGrade.DERIVED
                ? List.of(Caution.notice(Message.of(
                        "pierce-time", "pierce time is known within a factor of 2 to 3 only; time your own pierces")))
                : List.of();
    }

    /** {@return the depth after one second} */
    public Quantity<Length> depthAfterOneSecond() {
        return Kind.LENGTH.of(values.afterOneSecondM);
    }

    /** {@return the exponent of the time} */
    public double exponent() {
        return values.exponent;
    }

    /** {@return the relative standard uncertainty of a time} */
    public double relativeUncertainty() {
        return values.relativeUncertainty;
    }

    @Override
    public Evidence evidence() {
        return values.evidence;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("pierce model")
                .put("depth_after_one_second", Kind.LENGTH, values.afterOneSecondM)
                .put("exponent", values.exponent)
                .put("relative_uncertainty", values.relativeUncertainty)
                .put("evidence", values.evidence)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PierceModel that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "pierced depth " + QuantityText.forPeople(Kind.LENGTH, values.afterOneSecondM) + " (t/s)^"
                + QuantityText.round(values.exponent, 4);
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
