package dev.waterjet.placement;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Point;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/**
 * Place of a part on the machine, found from probed points: the move with its uncertainty, and the residual of every point.
 *
 * <p>The uncertainty follows from those of the points; where the points scatter more than stated, it is widened by as much.
 */
public final class Location implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Scatter over stated uncertainty from which the points disagree. Judgement. */
    private static final double DISAGREEMENT = 2.5;

    private static final double MAX_VARIANCE = 1e12;
    private static final double ROUNDING = 1e-6;

    /** Checked content, and the serial form: variances and covariances of rotation and shift, in rad and m. */
    private record Values(
            RigidMove move,
            double ofRotation,
            double ofX,
            double ofY,
            double ofRotationAndX,
            double ofRotationAndY,
            double ofXAndY,
            double scatter,
            int degreesOfFreedom,
            QuantityArray<Length> residuals)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(move, "move");
            ofRotation = variance(ofRotation);
            ofX = variance(ofX);
            ofY = variance(ofY);
            ofRotationAndX = covariance(ofRotationAndX, ofRotation, ofX);
            ofRotationAndY = covariance(ofRotationAndY, ofRotation, ofY);
            ofXAndY = covariance(ofXAndY, ofX, ofY);
            scatter = Require.notNegative("scatter of the points", scatter, Units.ONE);
            Require.atLeast("degrees of freedom", degreesOfFreedom, 0, Units.ONE, "");
            Objects.requireNonNull(residuals, "residuals");
        }

        private static double variance(double variance) {
            Require.notNegative("variance", variance, Units.ONE);
            return Require.atMost("variance", variance, MAX_VARIANCE, Units.ONE, "");
        }

        /** At most the product of the standard deviations, but for rounding. */
        private static double covariance(double covariance, double one, double other) {
            double largest = (1 + ROUNDING) * Math.sqrt(one * other) + Double.MIN_NORMAL;
            return Require.between("covariance", covariance, -largest, largest, Units.ONE, "");
        }

        private Object readResolve() {
            return new Location(this);
        }
    }

    private final transient Values values;

    private Location(Values values) {
        this.values = values;
    }

    /** By the covariances of rotation, x and y, the scatter over the stated uncertainty, and the residuals in m. */
    static Location of(
            RigidMove move, double[][] covariance, double scatter, int degreesOfFreedom, double[] residualsM) {
        return new Location(new Values(
                move,
                covariance[0][0],
                covariance[1][1],
                covariance[2][2],
                covariance[0][1],
                covariance[0][2],
                covariance[1][2],
                scatter,
                degreesOfFreedom,
                QuantityArray.ofSi(Kind.LENGTH, residualsM)));
    }

    /** {@return the move from the drawing to the machine} */
    public RigidMove move() {
        return values.move;
    }

    /** {@return the standard uncertainty of the rotation} */
    public Quantity<Angle> rotationUncertainty() {
        return Kind.ANGLE.of(Math.sqrt(values.ofRotation));
    }

    /** {@return the standard uncertainty of the shift along x: of the place of the drawing's origin} */
    public Quantity<Length> shiftXUncertainty() {
        return Kind.LENGTH.of(Math.sqrt(values.ofX));
    }

    /** {@return the standard uncertainty of the shift along y: of the place of the drawing's origin} */
    public Quantity<Length> shiftYUncertainty() {
        return Kind.LENGTH.of(Math.sqrt(values.ofY));
    }

    /**
     * Returns the standard uncertainty with which a point of the drawing is found on the machine, in the direction in which it is
     * largest. Far from the probed points the rotation decides.
     *
     * @param known point of the drawing
     * @return the uncertainty
     */
    public Quantity<Length> uncertaintyAt(Point known) {
        Objects.requireNonNull(known, "known");
        Point at = values.move.apply(known);
        double armX = -(at.ySi() - values.move.shift().ySi());
        double armY = at.xSi() - values.move.shift().xSi();
        double xx = values.ofX + 2 * armX * values.ofRotationAndX + armX * armX * values.ofRotation;
        double yy = values.ofY + 2 * armY * values.ofRotationAndY + armY * armY * values.ofRotation;
        double xy = values.ofXAndY
                + armX * values.ofRotationAndY
                + armY * values.ofRotationAndX
                + armX * armY * values.ofRotation;
        double largest = (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy);
        return Kind.LENGTH.of(Math.sqrt(Math.max(0, largest)));
    }

    /**
     * {@return the residual of every point: of a hole the distance of its probed centre from the placed one; of an edge or a wall the
     *     distance of the point from it, positive on the left of the edge and outside of the circle}
     */
    public QuantityArray<Length> residuals() {
        return values.residuals;
    }

    /** {@return the number of probed coordinates beyond the three that the move requires} */
    public int degreesOfFreedom() {
        return values.degreesOfFreedom;
    }

    /** {@return the scatter of the points over their stated uncertainty; 0 without further coordinates} */
    public double scatter() {
        return values.scatter;
    }

    /** {@return the cautions: points that disagree, or none beyond the necessary ones} */
    public List<Caution> cautions() {
        if (values.degreesOfFreedom == 0) {
            return List.of(Caution.notice(Message.of(
                    "no-further-point",
                    "no point more than necessary was probed, so that a wrong one shows in nothing; probe another")));
        }
        return values.scatter <= DISAGREEMENT
                ? List.of()
                : List.of(Caution.warning(Message.of(
                                "probes-disagree",
                                "the probed points scatter {scatter} times as much as their uncertainty; check the"
                                        + " residuals for a wrong feature or a chip under the probe")
                        .with("scatter", values.scatter)));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("location")
                .put("move", values.move)
                .put("rotation_uncertainty", Kind.ANGLE, Kind.ANGLE.si(rotationUncertainty()))
                .put("shift_x_uncertainty", Kind.LENGTH, Kind.LENGTH.si(shiftXUncertainty()))
                .put("shift_y_uncertainty", Kind.LENGTH, Kind.LENGTH.si(shiftYUncertainty()))
                .put("degrees_of_freedom", values.degreesOfFreedom)
                .put("scatter", values.scatter)
                .put("cautions", cautions())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Location that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.move + ", from " + values.residuals.size() + " points";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
