package dev.waterjet.feed;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Speed;

/**
 * Grades a cut by how far the jet has turned back where it leaves the plate: the declination angle of Hlavac,
 * {@code theta = theta_lim (v / v_lim)^n}.
 *
 * <p>Symbols: theta angle between jet axis and the trace of the jet at the exit, in rad; v feed; v_lim the feed that just
 * separates the plate, which another model gives; theta_lim the angle at that feed; n exponent, 1.5 in the older papers and
 * 1 in the newer (Materials 14 (2021) 4032).
 *
 * <p>The limiting angle starts at 27.3 degrees, derived from the parabolic cut front of Momber and Kovacevic (1995): a front
 * {@code x = 0.2576 z^2/h_max} has the slope 0.515 at its end. A grade's index q asks for a slope that is q times
 * smaller, as that parabola has at the exit of a plate cut q times slower in depth; so {@code v = v_lim q^(-1/n)}. Against
 * the machinability model, q^-1.15, the exponent 1.5 lets good faces be cut faster, the exponent 1 hardly.
 */
public final class DeclinationFeed implements ForwardingFeed {

    private static final long serialVersionUID = 1L;

    /** Slope of the front at the exit of a plate that just separates: 2 times 0.2576 (derived). */
    private static final double LIMITING_SLOPE = 2 * 0.2576;

    private static final Evidence EVIDENCE = Evidence.of(
                    EvidenceGrade.DERIVED,
                    Source.of("Hlavac et al., Materials 14 (2021) 4032").at("exponents 1.5 and 1"))
            .withNote(
                    "The exponents are published; the limiting angle of 27.3 degrees and its tie to the index are derived"
                            + " from Momber, Kovacevic, Proc. IMechE B 209 (1995) 491-498.");

    private final FeedModel separation;
    private final double exponent;
    private final double limitingAngleRad;

    private DeclinationFeed(FeedModel separation, double exponent, double limitingAngleRad) {
        this.separation = Objects.requireNonNull(separation, "separation");
        this.exponent =
                Require.between("exponent of the declination", exponent, 0.1, 10, Units.ONE, "published are 1.5 and 1");
        this.limitingAngleRad = Require.positive("limiting declination", limitingAngleRad, Units.DEGREE);
        Require.atMost(
                "limiting declination",
                limitingAngleRad,
                Math.nextDown(Math.PI / 2),
                Units.DEGREE,
                "the jet leaves the plate downwards");
    }

    /**
     * The model with the exponent 1 of the newer papers.
     *
     * @param separation the model that says which feed just separates
     * @return the model
     */
    public static DeclinationFeed linear(FeedModel separation) {
        return new DeclinationFeed(separation, 1, Math.atan(LIMITING_SLOPE));
    }

    /**
     * The model with the exponent 1.5 of the older papers.
     *
     * @param separation the model that says which feed just separates
     * @return the model
     */
    public static DeclinationFeed threeHalvesPower(FeedModel separation) {
        return new DeclinationFeed(separation, 1.5, Math.atan(LIMITING_SLOPE));
    }

    /**
     * This model with a measured limiting angle.
     *
     * @param angle declination at the feed that just separates, above 0 and below 90 degrees
     * @return the model
     */
    public DeclinationFeed withLimitingAngle(Quantity<Angle> angle) {
        return new DeclinationFeed(separation, exponent, Kind.ANGLE.si(angle));
    }

    /**
     * This model with an exponent of one's own.
     *
     * @param exponent n, 0.1 to 10
     * @return the model
     */
    public DeclinationFeed withExponent(double exponent) {
        return new DeclinationFeed(separation, exponent, limitingAngleRad);
    }

    /**
     * Declination at the exit of a workpiece.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param feed the feed, above zero, no faster than the one that just separates
     * @return the angle between jet axis and trace; the uncertainty is that of the separating feed, carried over
     * @throws CannotReachException if the feed does not separate the workpiece
     */
    public Estimate<Angle> declination(AbrasiveJet jet, Workpiece piece, Quantity<Speed> feed) {
        double feedSi = Require.positive("feed", Kind.SPEED.si(feed), Units.MILLIMETRE_PER_MINUTE);
        double limit = separation.separationFeedSi(jet, piece.material(), piece.thicknessSi());
        if (feedSi > limit) {
            throw new CannotReachException(feedSi, limit, "this jet in " + piece, "where it just separates");
        }
        return Estimate.withinFactor(
                        Kind.ANGLE,
                        limitingAngleRad * Math.pow(feedSi / limit, exponent),
                        exponent * relativeUncertainty(piece.material()),
                        jet.cautions())
                .with(piece.material().cautions());
    }

    /**
     * Feed that leaves a declination at the exit.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param declination the angle allowed, above zero to the limiting angle
     * @return the feed
     */
    public Estimate<Speed> feedForDeclination(AbrasiveJet jet, Workpiece piece, Quantity<Angle> declination) {
        double angle = Require.positive("declination", Kind.ANGLE.si(declination), Units.DEGREE);
        Require.atMost("declination", angle, limitingAngleRad, Units.DEGREE, "beyond it the plate is not separated");
        // the index whose angle this is
        return feed(jet, piece, limitingAngleRad / angle);
    }

    @Override
    public FeedModel model() {
        return separation;
    }

    @Override
    public String name() {
        return exponent == 1.5 ? "declination 1.5" : exponent == 1 ? "declination 1" : "declination " + exponent;
    }

    @Override
    public Evidence evidence() {
        return EVIDENCE;
    }

    @Override
    public double feedSi(JetSettings jet, Material material, double thicknessM, double index) {
        return separation.separationFeedSi(jet, material, thicknessM) * Math.pow(Settings.index(index), -1 / exponent);
    }

    @Override
    public double indexSi(JetSettings jet, Material material, double thicknessM, double feedMPerS) {
        double limit = separation.separationFeedSi(jet, material, thicknessM);
        return Math.pow(feedMPerS / limit, -exponent);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DeclinationFeed that
                && separation.equals(that.separation)
                && exponent == that.exponent
                && limitingAngleRad == that.limitingAngleRad;
    }

    @Override
    public int hashCode() {
        return Objects.hash(separation, exponent, limitingAngleRad);
    }

    @Override
    public String toString() {
        return name() + " on " + separation;
    }
}
