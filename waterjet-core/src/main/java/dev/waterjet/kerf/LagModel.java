package dev.waterjet.kerf;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/**
 * How far the foot of the jet trails behind its head: the front of the cut is the parabola {@code x(z) = k z^2 / H}, with H
 * the depth that the jet just separates at the feed.
 *
 * <p>The standard coefficient follows from the published critical point of aluminium, cast iron and stainless steel: the
 * smooth zone ends at 0.52 H, where the striations lean 15 degrees from the jet's axis. So {@code k = tan(15 deg) / (2 *
 * 0.52) = 0.2576}: in a plate of thickness h cut at index q the lag at the exit is 0.2576 h/q. The parabola is published, the
 * coefficient derived; its relative standard uncertainty of 0.3 is assumed.
 *
 * <p>Worked number: 20 mm at index 2 trails by 2.58 mm.
 */
public final class LagModel implements HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    /** The smooth zone ends at this part of the separation depth (Momber, Kovacevic 1995). */
    public static final double CRITICAL_DEPTH_RATIO = 0.52;

    private static final double CRITICAL_ANGLE_RAD = Math.toRadians(15);
    private static final double ASSUMED_UNCERTAINTY = 0.3;

    private static final LagModel STANDARD = new LagModel(
            LagKernel.coefficient(CRITICAL_DEPTH_RATIO, CRITICAL_ANGLE_RAD),
            ASSUMED_UNCERTAINTY,
            Evidence.of(EvidenceGrade.DERIVED, Source.of("Momber, Kovacevic, Proc. IMechE B 209 (1995) 491-498"))
                    .withNote(
                            "Parabolic front and critical point (0.52 of the greatest depth, 15 degrees) are published; the"
                                    + " lag that follows is derived. The relative uncertainty of 0.3 is assumed."));

    private final double coefficient;
    private final double relativeUncertainty;
    private final Evidence evidence;

    private LagModel(double coefficient, double relativeUncertainty, Evidence evidence) {
        this.coefficient = Require.positive("lag coefficient", coefficient, Units.ONE);
        this.relativeUncertainty =
                Require.notNegative("relative uncertainty of the lag coefficient", relativeUncertainty, Units.ONE);
        this.evidence = Objects.requireNonNull(evidence, "evidence");
    }

    /**
     * The front through the published critical point.
     *
     * @return the model
     */
    public static LagModel standard() {
        return STANDARD;
    }

    /**
     * A front with another coefficient.
     *
     * @param coefficient k in {@code x = k z^2 / H}, above zero
     * @param relativeUncertainty relative standard uncertainty of k, zero or more
     * @param evidence what speaks for it
     * @return the model
     */
    public static LagModel of(double coefficient, double relativeUncertainty, Evidence evidence) {
        return new LagModel(coefficient, relativeUncertainty, evidence);
    }

    /**
     * The coefficient k.
     *
     * @return k in {@code x = k z^2 / H}, above zero
     */
    public double coefficient() {
        return coefficient;
    }

    /**
     * Relative standard uncertainty of the coefficient.
     *
     * @return the ratio, zero or more
     */
    public double relativeUncertainty() {
        return relativeUncertainty;
    }

    /**
     * The lag of a jet in a workpiece at a feed.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param feeds what is known of feed and depth
     * @param feed the feed, no faster than the one that just separates the workpiece
     * @return the lag
     * @throws dev.waterjet.measure.DomainException if the jet does not separate the workpiece at that feed
     */
    public Lag lag(AbrasiveJet jet, Workpiece piece, FeedModel feeds, Quantity<Speed> feed) {
        return Lag.of(this, piece.thicknessSi(), Separation.of(jet, piece, feeds, feed));
    }

    /**
     * Lag at the exit for loops over many feeds, on SI numbers.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param feeds what is known of feed and depth
     * @param feedMPerS the feed in m/s, above zero; one too fast to separate is not refused here
     * @return lag in m, above zero; grows with the feed
     */
    public double exitLagSi(AbrasiveJet jet, Workpiece piece, FeedModel feeds, double feedMPerS) {
        return LagKernel.lag(
                coefficient, piece.thicknessSi(), feeds.separationDepthSi(jet, piece.material(), feedMPerS));
    }

    /**
     * Fastest feed that keeps the lag at the exit below a limit, on SI numbers: the inverse of {@link #exitLagSi}.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param feeds what is known of feed and depth
     * @param lagM lag allowed, in m, above zero
     * @return feed in m/s, never faster than the one that just separates the workpiece
     */
    public double feedForExitLagSi(AbrasiveJet jet, Workpiece piece, FeedModel feeds, double lagM) {
        double thickness = piece.thicknessSi();
        double depth = coefficient * thickness * thickness / Require.positive("lag", lagM, Units.MILLIMETRE);
        return feeds.separationFeedSi(jet, piece.material(), Math.max(thickness, depth));
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof LagModel that
                && coefficient == that.coefficient
                && relativeUncertainty == that.relativeUncertainty
                && evidence.describe().equals(that.evidence.describe());
    }

    @Override
    public int hashCode() {
        return Objects.hash(coefficient, relativeUncertainty);
    }

    @Override
    public String toString() {
        return "lag " + coefficient + " z^2/H";
    }
}
