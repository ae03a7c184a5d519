package dev.waterjet.pierce;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * Depth of a blind hole over time: {@code h = a t^b}, with {@code a} the depth after one second.
 *
 * <p>The form is published (Orbanic, Junkar, Proc. IMechE B 218 (2004)); no {@code a} or {@code b} is. A shop finds its own
 * with {@link #fitted}, from a stop watch and a handful of pierces of known depth. Until then {@link #derived} reads one out
 * of a feed model, which is good to a factor of two or three and says so.
 */
public final class PierceModel implements Described, HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    /** Share of a cut's removal that reaches the bottom of a blind hole while the jet stands still. Assumed. */
    private static final double STATIONARY_SHARE = 0.02;

    /** The same while the jet moves, so that the returning water does not meet it. Assumed. */
    private static final double MOVING_SHARE = 0.05;

    /** Standard uncertainty of the logarithm of a derived time: within a factor of 2.2, two times out of three. Assumed. */
    private static final double DERIVED_UNCERTAINTY = 0.8;

    private static final double STEP = 1.001;
    private static final int FEWEST_PIERCES = 3;

    private final double afterOneSecondM;
    private final double exponent;
    private final double relativeUncertainty;
    private final Evidence evidence;

    private PierceModel(double afterOneSecondM, double exponent, double relativeUncertainty, Evidence evidence) {
        this.afterOneSecondM = Require.positive("pierced depth after one second", afterOneSecondM, Units.MILLIMETRE);
        this.exponent = Require.positive("exponent of the pierce law", exponent, Units.ONE);
        this.relativeUncertainty =
                Require.notNegative("uncertainty of the pierce time", relativeUncertainty, Units.PERCENT);
        this.evidence = Objects.requireNonNull(evidence, "evidence");
    }

    /**
     * A law whose numbers the caller knows.
     *
     * @param afterOneSecond depth after one second, above zero
     * @param exponent exponent of the time, above zero
     * @param relativeUncertainty relative standard uncertainty of a time, zero or more
     * @param evidence what speaks for it
     * @return the law
     */
    public static PierceModel of(
            Quantity<Length> afterOneSecond, double exponent, double relativeUncertainty, Evidence evidence) {
        return new PierceModel(Kind.LENGTH.si(afterOneSecond), exponent, relativeUncertainty, evidence);
    }

    /**
     * The law that a shop's own pierces show: a straight line through the logarithms of depth and time.
     *
     * @param times how long each pierce took, above zero
     * @param depths how deep each went, above zero
     * @return the law, its uncertainty being the scatter of the times about it
     * @throws dev.waterjet.measure.DomainException if there are fewer than three pierces, the two counts differ, a value is
     *     not above zero, or the depths do not grow with time
     */
    public static PierceModel fitted(QuantityArray<Time> times, QuantityArray<Length> depths) {
        Require.atLeast(
                "number of pierces", times.size(), FEWEST_PIERCES, Units.ONE, "a line and its scatter need three");
        Require.between("number of depths", depths.size(), times.size(), times.size(), Units.ONE, "one for each time");
        SimpleRegression line = new SimpleRegression();
        for (int i = 0; i < times.size(); i++) {
            line.addData(
                    Math.log(Require.positive("pierced depth", depths.si(i), Units.MILLIMETRE)),
                    Math.log(Require.positive("pierce time", times.si(i), Units.SECOND)));
        }
        // ln t = c + ln h / b, so that the scatter is that of the times
        double slope = Require.positive("slope of pierce time over depth", line.getSlope(), Units.ONE);
        double scatter = Math.sqrt(Math.max(0, line.getMeanSquareError()));
        return new PierceModel(
                Math.exp(-line.getIntercept() / slope),
                1 / slope,
                scatter,
                Evidence.of(
                        EvidenceGrade.FITTED, Source.of("fitted from " + times.size() + " pierces of the caller's")));
    }

    /**
     * The law that follows from a feed model: a small, assumed share of the removal of a cut reaches the bottom of a blind
     * hole. Where the model's feed goes with the depth to the power {@code -n}, the exponent is {@code 1/n}.
     *
     * @param model the feed model
     * @param jet the jet that pierces, at the pressure at which it does
     * @param piece the workpiece
     * @param moving whether the jet moves meanwhile
     * @return the law, known within a factor of two or three
     */
    public static PierceModel derived(FeedModel model, AbrasiveJet jet, Workpiece piece, boolean moving) {
        double depthM = piece.thicknessSi();
        double feed = model.separationFeedSi(jet, piece.material(), depthM);
        double deeper = model.separationFeedSi(jet, piece.material(), depthM * STEP);
        double slope = PierceKernel.slope(feed, deeper, STEP);
        double rate = PierceKernel.rate(
                moving ? MOVING_SHARE : STATIONARY_SHARE,
                feed,
                depthM,
                jet.head().tube().exitBoreSi());
        return new PierceModel(
                PierceKernel.depthAfterOneSecond(depthM, rate, slope),
                1 / slope,
                Math.hypot(DERIVED_UNCERTAINTY, model.relativeUncertainty(piece.material())),
                Evidence.of(EvidenceGrade.DERIVED, Source.of("feed model \"" + model.name() + "\""))
                        .withNote(
                                "Form by Orbanic, Junkar (2004); the share of the removal that reaches the bottom of a"
                                        + " blind hole (0.02 standing, 0.05 moving) is assumed. Time your own pierces."));
    }

    /**
     * How long a hole takes.
     *
     * @param depth depth of the hole, above zero
     * @return the time
     */
    public Estimate<Time> time(Quantity<Length> depth) {
        double depthM = Require.positive("pierced depth", Kind.LENGTH.si(depth), Units.MILLIMETRE);
        return Estimate.withinFactor(
                Kind.TIME, PierceKernel.time(afterOneSecondM, exponent, depthM), relativeUncertainty, cautions());
    }

    /**
     * How deep a hole is after a time.
     *
     * @param time time since the jet came, above zero
     * @return the depth
     */
    public Estimate<Length> depth(Quantity<Time> time) {
        double timeS = Require.positive("pierce time", Kind.TIME.si(time), Units.SECOND);
        return Estimate.withinFactor(
                Kind.LENGTH,
                PierceKernel.depth(afterOneSecondM, exponent, timeS),
                relativeUncertainty * exponent,
                cautions());
    }

    private List<Caution> cautions() {
        return evidence.grade() == EvidenceGrade.DERIVED
                ? List.of(Caution.notice(
                        "pierce-time",
                        "pierce time is known within a factor of two or three only; time your own pierces"))
                : List.of();
    }

    /**
     * Depth after one second.
     *
     * @return the depth, in m
     */
    public Quantity<Length> depthAfterOneSecond() {
        return Kind.LENGTH.of(afterOneSecondM);
    }

    /**
     * Exponent of the time.
     *
     * @return the exponent
     */
    public double exponent() {
        return exponent;
    }

    /**
     * Relative standard uncertainty of a time.
     *
     * @return the ratio
     */
    public double relativeUncertainty() {
        return relativeUncertainty;
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("pierce law")
                .put("after_one_second", Kind.LENGTH, afterOneSecondM)
                .put("exponent", exponent)
                .put("relative_uncertainty", relativeUncertainty)
                .put("evidence", evidence)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PierceModel that
                && afterOneSecondM == that.afterOneSecondM
                && exponent == that.exponent
                && relativeUncertainty == that.relativeUncertainty;
    }

    @Override
    public int hashCode() {
        return Objects.hash(afterOneSecondM, exponent, relativeUncertainty);
    }

    @Override
    public String toString() {
        return "h = " + afterOneSecondM * 1000 + " mm (t/s)^" + exponent;
    }
}
