package dev.waterjet.kerf;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Experimental;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/**
 * Direction of a tilted head: the horizontal displacement m of the jet per depth, in the frame of the machine (x, y in the
 * plate, z up). The jet runs along {@code (m, -1)/q}, with q = sqrt(1 + m<sup>2</sup>); the axis of the head points the other
 * way, {@code a = (-m, 1)/q}.
 *
 * <pre>{@code
 * HeadTilt tilt = HeadTilt.along(degrees(1.2), degrees(3), 1, 0, Side.LEFT);   // path along x, part on its left
 * tilt.inclination();                 // from the vertical
 * tilt.gimbalA();                     // about x, then
 * tilt.gimbalB();                     // about y of the turned frame
 * }</pre>
 *
 * <p>A side tilt beta towards the part turns the wall of the part; a lead lambda brings the exit of the jet forward. Both
 * follow from geometry. How a leaning jet changes the cut front is not known: its lag is taken as that of an upright jet.
 *
 * <p>Angles and signs are those of right-handed rotations about the axes named. Those of a machine can differ: see its
 * manual, and try a new setting in air.
 */
@Experimental
public final class HeadTilt implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /**
     * Lead, as a share of the lead that brings the exit under the entry, at which the largest lag that remains over the
     * depth is smallest: 2 sqrt(2) - 2. The lag L z<sup>2</sup>/h<sup>2</sup> - a L z/h is then at most {@code (3 - 2 sqrt(2)) L},
     * 17 per cent of L, and as large at 0.414 h as at the exit with the other sign. Derived.
     */
    public static final double MINIMAX_LEAD = 2 * Math.sqrt(2) - 2;

    private static final double MAX_DISPLACEMENT = 1e6;

    /** Checked content, and the serial form. */
    private record Values(double mX, double mY) implements Serializable {

        Values {
            String reason = "the head is above the workpiece";
            mX = Require.between("displacement in x", mX, -MAX_DISPLACEMENT, MAX_DISPLACEMENT, Units.ONE, reason);
            mY = Require.between("displacement in y", mY, -MAX_DISPLACEMENT, MAX_DISPLACEMENT, Units.ONE, reason);
        }

        private Object readResolve() {
            return new HeadTilt(this);
        }
    }

    private static final Caution UNKNOWN_FRONT = Caution.notice(Message.of(
            "leaning-front-unknown",
            "how a leaning jet changes depth and lag is not known; make a test cut with the tilted head"));

    private static final HeadTilt UPRIGHT = new HeadTilt(new Values(0, 0));

    private final transient Values values;

    private HeadTilt(Values values) {
        this.values = values;
    }

    /** {@return the direction of an upright head} */
    public static HeadTilt upright() {
        return UPRIGHT;
    }

    /**
     * Returns the direction of a jet that moves sideways on its way down.
     *
     * @param mX displacement in x over depth, up to a million to either side
     * @param mY displacement in y over depth
     * @return the direction
     */
    public static HeadTilt ofSi(double mX, double mY) {
        return new HeadTilt(new Values(mX, mY));
    }

    /**
     * Returns the direction of a head that leans to the side and leads along its path: {@code m = tan(beta) n + tan(lambda)
     * t}, with n the unit normal from the path to the part and t the direction of the path.
     *
     * @param side side tilt beta of the jet towards the part, between -90 and 90 degrees; below 0 towards the scrap
     * @param lead lead lambda of the jet along the path, between -90 and 90 degrees
     * @param directionX x of the unit vector along the path
     * @param directionY y of the unit vector along the path
     * @param part side of the path on which the part lies
     * @return the direction
     */
    public static HeadTilt along(
            Quantity<Angle> side, Quantity<Angle> lead, double directionX, double directionY, Side part) {
        Objects.requireNonNull(lead, "lead");
        Objects.requireNonNull(part, "part");
        Objects.requireNonNull(side, "side");
        double across = Math.tan(angle("side tilt", side)) * part.sign();
        double ahead = Math.tan(angle("lead angle", lead));
        return ofSi(ahead * directionX - across * directionY, ahead * directionY + across * directionX);
    }

    private static double angle(String name, Quantity<Angle> angle) {
        double limit = Math.nextDown(Math.PI / 2);
        return Require.between(
                name, Kind.ANGLE.si(angle), -limit, limit, Units.DEGREE, "the head is above the workpiece");
    }

    /**
     * Returns the largest lag that remains over the depth under a lead: of L z<sup>2</sup>/h<sup>2</sup> - a L z/h for z from 0 to h.
     *
     * @param exitLagM lag L of the front at the exit in m, 0 or more
     * @param lead share a of the lead that brings the exit under the entry, 0 to 2
     * @return the lag in m
     */
    public static double residualLagSi(double exitLagM, double lead) {
        return exitLagM * Math.max(Math.min(lead, 2) * Math.min(lead, 2) / 4, Math.abs(1 - lead));
    }

    /** {@return displacement of the jet in x over depth} */
    public double displacementX() {
        return values.mX;
    }

    /** {@return displacement of the jet in y over depth} */
    public double displacementY() {
        return values.mY;
    }

    private double horizontal() {
        return Math.hypot(values.mX, values.mY);
    }

    /** {@return q, the length of the jet over the depth: 1 for an upright head} */
    public double lengthRatio() {
        return Math.hypot(1, horizontal());
    }

    /** {@return x of the unit vector along the axis towards the head} */
    public double axisX() {
        return -values.mX / lengthRatio();
    }

    /** {@return y of the unit vector along the axis towards the head} */
    public double axisY() {
        return -values.mY / lengthRatio();
    }

    /** {@return z of the unit vector along the axis towards the head, above 0} */
    public double axisZ() {
        return 1 / lengthRatio();
    }

    /** {@return the angle between the axis and the vertical} */
    public Quantity<Angle> inclination() {
        return Kind.ANGLE.of(Math.atan(horizontal()));
    }

    /** {@return the direction in which the head leans, from the x axis towards the y axis; empty if it is upright} */
    public Optional<Quantity<Angle>> azimuth() {
        return horizontal() > 0
                ? Optional.of(Kind.ANGLE.of(Math.atan2(0.0 - values.mY, 0.0 - values.mX)))
                : Optional.empty();
    }

    /** {@return the angle A of a gimbal: a rotation about x; the rotation B follows} */
    public Quantity<Angle> gimbalA() {
        return Kind.ANGLE.of(Math.atan(values.mY));
    }

    /** {@return the angle B of a gimbal: a rotation about y of the frame that A has turned} */
    public Quantity<Angle> gimbalB() {
        return Kind.ANGLE.of(Math.asin(0.0 - values.mX / lengthRatio()));
    }

    /**
     * {@return the angle C of a fork: a rotation about z, then {@link #inclination} about the fork's axis; empty for an
     *     upright head, where C keeps its last value}
     */
    public Optional<Quantity<Angle>> forkC() {
        return azimuth();
    }

    /**
     * Returns the direction within the tilt limit of a machine, in the same plane.
     *
     * @param limit maximum inclination, from 0 to below 90 degrees
     * @return this direction, or the nearest one within the limit
     */
    public HeadTilt within(Quantity<Angle> limit) {
        Objects.requireNonNull(limit, "limit");
        double most = Math.tan(Require.between(
                "tilt limit of the machine",
                Kind.ANGLE.si(limit),
                0,
                Math.nextDown(Math.PI / 2),
                Units.DEGREE,
                "the head is above the workpiece"));
        double size = horizontal();
        return size > most ? ofSi(values.mX * most / size, values.mY * most / size) : this;
    }

    /**
     * Returns the place, seen from above, of a point on the axis of the head: the tip of the nozzle at the stand-off
     * distance, or the pivot beyond it.
     *
     * @param entry place at which the jet enters the workpiece
     * @param distance distance from the entry along the axis, 0 or more
     * @return the place; its height above the workpiece is {@code distance * axisZ()}
     */
    public Point pointOnAxis(Point entry, Quantity<Length> distance) {
        Objects.requireNonNull(distance, "distance");
        Objects.requireNonNull(entry, "entry");
        double along = Require.notNegative("distance along the axis", Kind.LENGTH.si(distance), Units.MILLIMETRE);
        return Point.ofSi(entry.xSi() + along * axisX(), entry.ySi() + along * axisY());
    }

    /** {@return the cautions of a cut with this tilt; empty for an upright head} */
    public List<Caution> cautions() {
        return horizontal() > 0 ? List.of(UNKNOWN_FRONT) : List.of();
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("head tilt")
                .put("displacement_x", values.mX)
                .put("displacement_y", values.mY)
                .put("axis_x", axisX())
                .put("axis_y", axisY())
                .put("axis_z", axisZ())
                .put("inclination", Kind.ANGLE, Kind.ANGLE.si(inclination()))
                .put("gimbal_a", Kind.ANGLE, Kind.ANGLE.si(gimbalA()))
                .put("gimbal_b", Kind.ANGLE, Kind.ANGLE.si(gimbalB()));
        azimuth().ifPresent(angle -> description.put("azimuth", Kind.ANGLE, Kind.ANGLE.si(angle)));
        return description.map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof HeadTilt that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return Objects.hashCode(values);
    }

    @Override
    public String toString() {
        return "head tilt " + QuantityText.forPeople(Kind.ANGLE, Kind.ANGLE.si(inclination()));
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
