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
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Speed;

/**
 * Feed rate by the declination of the jet at the exit, Hlaváč's angle: &theta; = &theta;<sub>lim</sub> (v / v<sub>lim</sub>)<sup>n</sup>.
 *
 * <p>Symbols: theta angle between jet axis and the trace of the jet at the exit, in rad; v feed rate; v<sub>lim</sub> the feed rate
 * that just separates the plate, by another model; &theta;<sub>lim</sub> the angle at that feed rate; n exponent, 1.5 in the older papers
 * and 1 in the newer (Materials 14 (2021) 4032).
 *
 * <p>The limiting angle of 27.3 degrees is derived from the parabolic cut front of Momber and Kovacevic (1995): a front
 * x = 0.2576 z<sup>2</sup>/h<sub>max</sub> has the slope 0.515 at its end. The quality index q requires a slope that is q times smaller,
 * as that parabola has at the exit of a plate cut with q times the depth; so v = v<sub>lim</sub> q<sup>-1/n</sup>. Compared with the
 * machinability model, q<sup>-1.15</sup>, the exponent 1.5 gives higher feed rates for good cut surfaces, the exponent 1 about the
 * same.
 */
public final class DeclinationFeed implements ForwardingFeed {

    private static final long serialVersionUID = 1L;

    /** Slope of the front at the exit of a plate that just separates: 2 times 0.2576 (derived). */
    private static final double LIMITING_SLOPE = 2 * 0.2576;

    private static final Evidence EVIDENCE = Evidence.of(
                    EvidenceGrade.DERIVED,
                    Source.of("Hlaváč, Materials 14 (2021) 4032").at("exponents 1.5 and 1"))
            .withNote("The exponents are published; the limiting angle of 27.3 degrees and its tie to the index are"
                    + " derived from Momber, Kovacevic, Proc. IMechE B 209 (1995) 491-498.");

    /** Checked content, and the serial form. */
    private record Values(FeedModel separation, double exponent, double limitingAngleRad) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(separation, "separation");
            exponent = Require.between(
                    "exponent of the declination", exponent, 0.1, 10, Units.ONE, "published are 1.5 and 1");
            Require.positive("limiting declination", limitingAngleRad, Units.DEGREE);
            limitingAngleRad = Require.atMost(
                    "limiting declination",
                    limitingAngleRad,
                    Math.nextDown(Math.PI / 2),
                    Units.DEGREE,
                    "the jet leaves the plate at its bottom side");
        }

        private Object readResolve() {
            return new DeclinationFeed(this);
        }
    }

    private final transient Values values;

    private DeclinationFeed(Values values) {
        this.values = values;
    }

    /**
     * Returns the model with the exponent 1 of the newer papers.
     *
     * @param separation model of the feed rate that just separates
     * @return the model
     */
    public static DeclinationFeed linear(FeedModel separation) {
        return new DeclinationFeed(new Values(separation, 1, Math.atan(LIMITING_SLOPE)));
    }

    /**
     * Returns the model with the exponent 1.5 of the older papers.
     *
     * @param separation model of the feed rate that just separates
     * @return the model
     */
    public static DeclinationFeed threeHalvesPower(FeedModel separation) {
        return new DeclinationFeed(new Values(separation, 1.5, Math.atan(LIMITING_SLOPE)));
    }

    /**
     * Returns this model with a measured limiting angle.
     *
     * @param angle declination at the feed rate that just separates, above 0 and below 90 degrees
     * @return the model
     */
    public DeclinationFeed withLimitingAngle(Quantity<Angle> angle) {
        return new DeclinationFeed(
                new Values(values.separation, values.exponent, Kind.ANGLE.si(Objects.requireNonNull(angle, "angle"))));
    }

    /**
     * Returns this model with another exponent.
     *
     * @param exponent n, 0.1 to 10
     * @return the model
     */
    public DeclinationFeed withExponent(double exponent) {
        return new DeclinationFeed(new Values(values.separation, exponent, values.limitingAngleRad));
    }

    /**
     * Returns the declination at the exit of a workpiece.
     *
     * @param jet jet
     * @param workpiece workpiece
     * @param feed feed rate, above 0, at most the one that just separates
     * @return the angle between jet axis and trace; the uncertainty is propagated from the separation feed rate
     * @throws NoSolutionException if the feed rate does not separate the workpiece; with the one that does
     */
    public Estimate<Angle> declination(AbrasiveJet jet, Workpiece workpiece, Quantity<Speed> feed) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(workpiece, "workpiece");
        double feedSi = Settings.feed(feed);
        Material material = workpiece.material();
        double limit = values.separation.separationFeedSi(jet, material, workpiece.thicknessSi());
        if (feedSi > limit) {
            throw new NoSolutionException(
                    Message.of("not-separated", "at {feed} the jet does not separate {workpiece}; at most {limit} does")
                            .with("feed", Kind.SPEED, feedSi, Units.MILLIMETRE_PER_MINUTE)
                            .with("workpiece", workpiece.toString())
                            .with("limit", Kind.SPEED, limit, Units.MILLIMETRE_PER_MINUTE),
                    Kind.SPEED,
                    limit);
        }
        return Estimate.withinFactor(
                        Kind.ANGLE,
                        values.limitingAngleRad * Math.pow(feedSi / limit, values.exponent),
                        values.exponent * relativeUncertainty(material),
                        jet.cautions())
                .with(material.cautions());
    }

    /**
     * Returns the feed rate that leaves a declination at the exit.
     *
     * @param jet jet
     * @param workpiece workpiece
     * @param declination allowed angle, above 0 to the limiting angle
     * @return the feed rate
     */
    public Estimate<Speed> feedForDeclination(AbrasiveJet jet, Workpiece workpiece, Quantity<Angle> declination) {
        Objects.requireNonNull(declination, "declination");
        double angle = Require.positive("declination", Kind.ANGLE.si(declination), Units.DEGREE);
        Require.atMost(
                "declination", angle, values.limitingAngleRad, Units.DEGREE, "beyond it the plate is not separated");
        // the index whose angle this is
        return feed(jet, workpiece, values.limitingAngleRad / angle);
    }

    @Override
    public FeedModel model() {
        return values.separation;
    }

    @Override
    public String name() {
        double n = values.exponent;
        return n == 1.5 ? "declination 1.5" : n == 1 ? "declination 1" : "declination " + n;
    }

    @Override
    public Evidence evidence() {
        return EVIDENCE;
    }

    @Override
    public double feedSi(JetSettings jet, Material material, double thicknessM, double index) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return values.separation.separationFeedSi(jet, material, thicknessM)
                * Math.pow(Settings.index(index), -1 / values.exponent);
    }

    @Override
    public double indexSi(JetSettings jet, Material material, double thicknessM, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        double limit = values.separation.separationFeedSi(jet, material, thicknessM);
        return Math.pow(feedMPerS / limit, -values.exponent);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DeclinationFeed that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return name() + " on " + values.separation;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
