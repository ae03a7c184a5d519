package dev.waterjet.motion;

import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.measure.AngularAcceleration;
import dev.waterjet.measure.AngularSpeed;
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
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;

/**
 * Tilting head of a machine: its limits, and the errors that it compensates.
 *
 * <pre>{@code
 * TiltingHead head = TiltingHead.of(degrees(8), Kind.ANGULAR_SPEED.of(1), Kind.ANGULAR_ACCELERATION.of(10));
 * FeedPlan plan = FeedPlanner.of(machine, cut).withTiltingHead(head).plan(contour, Side.LEFT);
 * plan.tilt();
 * }</pre>
 *
 * <p>A side tilt compensates the taper of the wall on the part, a lead angle the lag of the front. Limits are those of the
 * direction of the jet, for either axis of a gimbal and for the inclination of a fork; the rotation of a fork about the
 * vertical has limits of its own, which are not checked. A limit of zero is a head that stays upright. The limits of a machine
 * are stated by its manual and its maker.
 */
@Experimental
public final class TiltingHead implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Above this inclination the geometry of a leaning jet is no longer a small correction. */
    private static final double MAX_INCLINATION_RAD = Math.PI / 4;

    /** Checked content, and the serial form. */
    private record Values(double inclination, double speed, double acceleration, boolean taper, double lead)
            implements Serializable {

        Values {
            inclination = Require.between(
                    "maximum inclination", inclination, 0, MAX_INCLINATION_RAD, Units.DEGREE, "a head tilts less");
            speed = Require.notNegative("angular speed of the head", speed, Units.DEGREE_PER_SECOND);
            acceleration = Require.notNegative(
                    "angular acceleration of the head", acceleration, Units.DEGREE_PER_SQUARE_SECOND);
            lead = Require.between("share of the lag that the lead compensates", lead, 0, 1, Units.ONE, "");
        }

        private Object readResolve() {
            return new TiltingHead(this);
        }
    }

    private final transient Values values;

    private TiltingHead(Values values) {
        this.values = values;
    }

    /**
     * Returns a head that compensates taper and lag. Its lead angle is {@link HeadTilt#MINIMAX_LEAD} of the one that brings
     * the exit of the jet under its entry, which leaves the smallest lag over the depth.
     *
     * @param inclination maximum angle between its axis and the vertical, 0 to 45 degrees
     * @param speed maximum angular speed, 0 or more
     * @param acceleration maximum angular acceleration, 0 or more
     * @return the head
     */
    public static TiltingHead of(
            Quantity<Angle> inclination, Quantity<AngularSpeed> speed, Quantity<AngularAcceleration> acceleration) {
        Objects.requireNonNull(acceleration, "acceleration");
        Objects.requireNonNull(inclination, "inclination");
        Objects.requireNonNull(speed, "speed");
        return new TiltingHead(new Values(
                Kind.ANGLE.si(inclination),
                Kind.ANGULAR_SPEED.si(speed),
                Kind.ANGULAR_ACCELERATION.si(acceleration),
                true,
                HeadTilt.MINIMAX_LEAD));
    }

    /**
     * Returns this head with or without compensation of the taper.
     *
     * @param isCompensated whether the side tilt makes the wall of the part square
     * @return the head
     */
    public TiltingHead withTaperCompensation(boolean isCompensated) {
        return new TiltingHead(
                new Values(values.inclination, values.speed, values.acceleration, isCompensated, values.lead));
    }

    /**
     * Returns this head with another lead angle.
     *
     * @param lead share of the lead that brings the exit of the jet under its entry, 0 to 1; 0 for no compensation of the lag
     * @return the head
     */
    public TiltingHead withLead(double lead) {
        return new TiltingHead(new Values(values.inclination, values.speed, values.acceleration, values.taper, lead));
    }

    /** {@return the maximum angle between its axis and the vertical} */
    public Quantity<Angle> inclination() {
        return Kind.ANGLE.of(values.inclination);
    }

    /** {@return the maximum angular speed} */
    public Quantity<AngularSpeed> speed() {
        return Kind.ANGULAR_SPEED.of(values.speed);
    }

    /** {@return the maximum angular acceleration} */
    public Quantity<AngularAcceleration> acceleration() {
        return Kind.ANGULAR_ACCELERATION.of(values.acceleration);
    }

    /** {@return whether the side tilt makes the wall of the part square} */
    public boolean compensatesTaper() {
        return values.taper;
    }

    /** {@return the share of the lead that brings the exit of the jet under its entry; 0 for no compensation of the lag} */
    public double lead() {
        return values.lead;
    }

    /** {@return whether the head can tilt and has something to compensate} */
    public boolean isTilting() {
        return values.inclination > 0
                && values.speed > 0
                && values.acceleration > 0
                && (values.taper || values.lead > 0);
    }

    /** Largest displacement of the jet over depth. */
    double maximumSlope() {
        return Math.tan(values.inclination);
    }

    double speedSi() {
        return values.speed;
    }

    double accelerationSi() {
        return values.acceleration;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("tilting head")
                .put("inclination", Kind.ANGLE, values.inclination)
                .put("angular_speed", Kind.ANGULAR_SPEED, values.speed)
                .put("angular_acceleration", Kind.ANGULAR_ACCELERATION, values.acceleration)
                .put("taper_compensation", values.taper)
                .put("lead", values.lead)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TiltingHead that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "tilting head, " + QuantityText.forPeople(Kind.ANGLE, values.inclination) + ", "
                + QuantityText.forPeople(Kind.ANGULAR_SPEED, values.speed) + ", "
                + QuantityText.forPeople(Kind.ANGULAR_ACCELERATION, values.acceleration);
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
