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
import dev.waterjet.measure.NoSolutionException;
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
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;

/**
 * Model of the depth of a blind hole over time.
 *
 * <pre>{@code
 * PierceModel model = PierceModel.derived(cut, PierceMethod.STATIONARY);
 * Estimate<Time> time = model.time(millimetres(12));
 * }</pre>
 *
 * <p>The damped form is the default: the water that returns from the hole meets the jet and takes momentum from it, so that
 * the rate falls with depth, {@code dh/dt = r/(1 + h/l)} and t = h/r + h<sup>2</sup>/(2 l r) (derived). Its time goes with the
 * depth in a shallow hole and with its square in a deep one. The power form h = a t<sup>b</sup> is published (Orbanic, Junkar,
 * Proc. IMechE B 218 (2004)), without {@code a} or {@code b}; it is one slope in between. A shop fits its own from timed
 * pierces of known depth ({@code PierceMeasurement} in package {@code calibrate}).
 *
 * <p>Worked number: r = 2 mm/s and l = 7.5 mm give 8.3 s to 10 mm, 33 s to 25 mm, 108 s to 50 mm and 383 s to 100 mm.
 */
public final class PierceModel implements Described, HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    /**
     * Share of the removal of a cut of 10 mm that reaches the bottom of a hole that begins, so that mild steel at 380 MPa,
     * 0.33/1.02 mm and 400 g/min is pierced at 2 mm/s. Fitted to ranges of common practice that have no source.
     */
    private static final double SHARE = 0.0174;

    private static final double REFERENCE_DEPTH_M = 0.010;

    /** Damping length over the bore of the focusing tube: 7.5 mm with 1.02 mm. From the same ranges. */
    private static final double DAMPING_BORES = 7.35;

    /** A moving jet leaves the returning water a way out: faster at the surface, and less damped. Assumed. */
    private static final double MOVING_RATE = 1.5;

    private static final double MOVING_DAMPING = 2;

    /** Standard uncertainty of the logarithm of the time in steel near the jet of the ranges, and elsewhere. Assumed. */
    private static final double NEAR_UNCERTAINTY = 0.5;

    private static final double FAR_UNCERTAINTY = 0.8;

    /** Machinability numbers of steels, and pressures of the ranges. */
    private static final double MIN_STEEL = 75;

    private static final double MAX_STEEL = 95;
    private static final double MIN_NEAR_PA = 300e6;
    private static final double MAX_NEAR_PA = 420e6;

    /** Standard deviations of a 95 % interval. */
    private static final double COVERAGE = 1.96;

    private enum Form {
        DAMPED,
        POWER
    }

    /**
     * Checked content, and the serial form. The two numbers are, for the damped form, the rate in m/s and the damping length
     * in m; for the power form, the depth after one second in m and the exponent.
     */
    private record Values(Form form, double first, double second, double relativeUncertainty, Evidence evidence)
            implements Serializable {

        Values {
            Objects.requireNonNull(form, "form");
            if (form == Form.DAMPED) {
                first = Require.positive("rate of the pierce", first, Units.MILLIMETRE_PER_SECOND);
                second = Require.positive("damping length of the pierce", second, Units.MILLIMETRE);
            } else {
                first = Require.positive("pierced depth after one second", first, Units.MILLIMETRE);
                second = Require.positive("exponent of the pierce model", second, Units.ONE);
            }
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
     * Returns a model of the power form, h = a t<sup>b</sup>.
     *
     * @param afterOneSecond depth after one second, above 0
     * @param exponent exponent of the time, above 0
     * @param relativeUncertainty relative standard uncertainty of a time, 0 or more
     * @param evidence evidence for the numbers
     * @return the model
     */
    public static PierceModel of(
            Quantity<Length> afterOneSecond, double exponent, double relativeUncertainty, Evidence evidence) {
        Objects.requireNonNull(afterOneSecond, "afterOneSecond");
        return new PierceModel(
                new Values(Form.POWER, Kind.LENGTH.si(afterOneSecond), exponent, relativeUncertainty, evidence));
    }

    /**
     * Returns a model of the damped form, t = h/r + h<sup>2</sup>/(2 l r).
     *
     * @param rate rate at which the hole deepens at the surface, above 0
     * @param damping damping length: depth at which the rate is half of that, above 0
     * @param relativeUncertainty relative standard uncertainty of a time, 0 or more
     * @param evidence evidence for the numbers
     * @return the model
     */
    public static PierceModel damped(
            Quantity<Speed> rate, Quantity<Length> damping, double relativeUncertainty, Evidence evidence) {
        Objects.requireNonNull(damping, "damping");
        Objects.requireNonNull(rate, "rate");
        return new PierceModel(
                new Values(Form.DAMPED, Kind.SPEED.si(rate), Kind.LENGTH.si(damping), relativeUncertainty, evidence));
    }

    /**
     * Returns the damped model that follows from a feed model: a small share of the removal of a cut reaches the bottom of the
     * hole, and the damping length is proportional to the bore of the focusing tube. Both constants come from ranges of common
     * practice for mild steel.
     *
     * @param cut conditions of the cut, with the pressure of the pierce
     * @param method pierce method: of a moving jet for {@link PierceMethod#MOVING} and {@link PierceMethod#CIRCULAR}, else of a
     *     stationary one
     * @return the model; its times are known within a factor of 2.7 (95 %) in steel at 300 MPa to 420 MPa, of 5 or more elsewhere
     * @throws NoSolutionException if the jet does not cut the material at this pressure; code {@code no-pierce}
     */
    public static PierceModel derived(CutConditions cut, PierceMethod method) {
        Objects.requireNonNull(cut, "cut");
        Objects.requireNonNull(method, "method");
        double boreM = cut.jet().tubeExitBoreSi();
        double feed = cut.separationFeedSi(REFERENCE_DEPTH_M);
        if (!(feed > 0)) {
            throw new NoSolutionException(Message.of("no-pierce", "the jet does not pierce {material} at {pressure}")
                    .with("material", cut.material().name())
                    .with("pressure", Kind.PRESSURE, cut.jet().pressureSi(), Units.MEGAPASCAL));
        }
        double rate = PierceKernel.rate(SHARE, feed, REFERENCE_DEPTH_M, boreM);
        boolean isMoving = method == PierceMethod.MOVING || method == PierceMethod.CIRCULAR;
        return new PierceModel(new Values(
                Form.DAMPED,
                isMoving ? MOVING_RATE * rate : rate,
                DAMPING_BORES * boreM * (isMoving ? MOVING_DAMPING : 1),
                derivedUncertainty(cut),
                Evidence.of(
                                EvidenceGrade.DERIVED,
                                Source.of("feed model \"" + cut.feedModel().name() + "\""))
                        .withNote("Share of the removal (0.0174) and damping length (7.35 tube bores) from ranges of"
                                + " common practice for mild steel, no source; a moving jet is assumed 1.5 times"
                                + " as fast, with twice the damping length. Time your own pierces.")));
    }

    private static double derivedUncertainty(CutConditions cut) {
        double machinability = cut.material().machinabilitySi();
        double pressurePa = cut.jet().pressureSi();
        boolean isNear = machinability >= MIN_STEEL
                && machinability <= MAX_STEEL
                && pressurePa >= MIN_NEAR_PA
                && pressurePa <= MAX_NEAR_PA;
        return isNear ? NEAR_UNCERTAINTY : Math.hypot(FAR_UNCERTAINTY, cut.relativeUncertainty());
    }

    /**
     * Returns the time of a pierce.
     *
     * @param depth depth of the hole, above 0
     * @return the time
     */
    public Estimate<Time> time(Quantity<Length> depth) {
        Objects.requireNonNull(depth, "depth");
        double depthM = Require.positive("pierced depth", Kind.LENGTH.si(depth), Units.MILLIMETRE);
        return estimate(timeSi(depthM));
    }

    double timeSi(double depthM) {
        return values.form == Form.DAMPED
                ? PierceKernel.dampedTime(values.first, values.second, depthM)
                : PierceKernel.time(values.first, values.second, depthM);
    }

    /** A time with the uncertainty and the cautions of this model. */
    Estimate<Time> estimate(double timeS) {
        return Estimate.withinFactor(Kind.TIME, timeS, values.relativeUncertainty, cautions());
    }

    /**
     * Returns the depth of a hole after a time.
     *
     * @param time jet-on time, above 0
     * @return the depth
     */
    public Estimate<Length> depth(Quantity<Time> time) {
        Objects.requireNonNull(time, "time");
        double timeS = Require.positive("pierce time", Kind.TIME.si(time), Units.SECOND);
        double depthM = values.form == Form.DAMPED
                ? PierceKernel.dampedDepth(values.first, values.second, timeS)
                : PierceKernel.depth(values.first, values.second, timeS);
        return Estimate.withinFactor(
                Kind.LENGTH, depthM, values.relativeUncertainty * exponentAt(Kind.LENGTH.of(depthM)), cautions());
    }

    private List<Caution> cautions() {
        return values.evidence.grade() == EvidenceGrade.DERIVED
                ? List.of(Caution.notice(Message.of(
                                "pierce-time",
                                "the pierce time is known within a factor of {factor} (95 %) only; time your own"
                                        + " pierces")
                        .with("factor", Math.round(10 * Math.exp(COVERAGE * values.relativeUncertainty)) / 10.0)))
                : List.of();
    }

    /** {@return the depth after one second} */
    public Quantity<Length> depthAfterOneSecond() {
        return Kind.LENGTH.of(
                values.form == Form.DAMPED ? PierceKernel.dampedDepth(values.first, values.second, 1) : values.first);
    }

    /**
     * Returns the exponent of the time at a depth, {@code d ln h/d ln t}: constant in the power form, falling from 1 to 1/2 in
     * the damped one.
     *
     * @param depth depth of the hole, above 0
     * @return the exponent
     */
    public double exponentAt(Quantity<Length> depth) {
        Objects.requireNonNull(depth, "depth");
        double depthM = Require.positive("pierced depth", Kind.LENGTH.si(depth), Units.MILLIMETRE);
        double half = depthM / (2 * values.second);
        return values.form == Form.DAMPED ? (1 + half) / (1 + 2 * half) : values.second;
    }

    /** {@return the rate at which a hole deepens at the surface; empty for the power form, whose rate there has no limit} */
    public Optional<Quantity<Speed>> rate() {
        return values.form == Form.DAMPED ? Optional.of(Kind.SPEED.of(values.first)) : Optional.empty();
    }

    /** {@return the depth at which the rate is half of that at the surface; empty for the power form} */
    public Optional<Quantity<Length>> damping() {
        return values.form == Form.DAMPED ? Optional.of(Kind.LENGTH.of(values.second)) : Optional.empty();
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
        Description description = Description.of("pierce model");
        if (values.form == Form.DAMPED) {
            description.put("rate", Kind.SPEED, values.first).put("damping", Kind.LENGTH, values.second);
        } else {
            description.put("depth_after_one_second", Kind.LENGTH, values.first).put("exponent", values.second);
        }
        return description
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
        return values.form == Form.DAMPED
                ? "pierced at " + QuantityText.forPeople(Kind.SPEED, values.first) + ", halved at a depth of "
                        + QuantityText.forPeople(Kind.LENGTH, values.second)
                : "pierced depth " + QuantityText.forPeople(Kind.LENGTH, values.first) + " (t/s)^"
                        + QuantityText.round(values.second, 4);
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
