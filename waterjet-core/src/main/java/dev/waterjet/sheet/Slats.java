package dev.waterjet.sheet;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Box;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/** Support slats below the sheet, with the check whether a loose part can fall between them or tip. */
public final class Slats implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final int TURNS = 36;

    /** Checked content, and the serial form. */
    private record Values(double pitchM, double thicknessM, double directionRad) implements Serializable {

        Values {
            pitchM = Require.positive("pitch of the slats", pitchM, Units.MILLIMETRE);
            thicknessM = Require.notNegative("thickness of a slat", thicknessM, Units.MILLIMETRE);
            Require.above("pitch of the slats", pitchM, thicknessM, Units.MILLIMETRE, "the thickness of a slat");
            directionRad = Require.finite("direction of the slats", directionRad, Units.DEGREE);
        }

        private Object readResolve() {
            return new Slats(this);
        }
    }

    /** Extent of a part across the slats: to either side of its centre, in m. */
    private record Extent(double aheadM, double behindM) {

        double widthM() {
            return aheadM + behindM;
        }

        double shorterM() {
            return Math.min(aheadM, behindM);
        }
    }

    private final transient Values values;

    private Slats(Values values) {
        this.values = values;
    }

    /**
     * Returns slats along y.
     *
     * @param pitch distance from slat to slat
     * @param thickness thickness of a slat, 0 or more and below the pitch
     * @return the slats
     */
    public static Slats of(Quantity<Length> pitch, Quantity<Length> thickness) {
        Objects.requireNonNull(pitch, "pitch");
        Objects.requireNonNull(thickness, "thickness");
        return new Slats(new Values(Kind.LENGTH.si(pitch), Kind.LENGTH.si(thickness), Math.PI / 2));
    }

    /**
     * Returns these slats in another direction.
     *
     * @param direction angle from the x axis, counter-clockwise
     * @return the slats in that direction
     */
    public Slats withDirection(Quantity<Angle> direction) {
        Objects.requireNonNull(direction, "direction");
        return new Slats(new Values(values.pitchM, values.thicknessM, Kind.ANGLE.si(direction)));
    }

    /**
     * Checks whether a part stays where it is, wherever it lies between the slats. It can fall if its extent across the slats is
     * less than the gap; it can tip if from its centre it extends by less than the gap to either side, since then there may be no
     * slat under that side. Derived; slats worn by the jet and the surge of the tank are not considered.
     *
     * @param part the part
     * @return the finding, with the code {@code slats-fall}, {@code slats-tip} or {@code slats-rest}
     */
    public Finding check(Part part) {
        Objects.requireNonNull(part, "part");
        Point centre = part.centroid();
        Extent extent = extent(part, values.directionRad);
        double gap = gapM();
        Message[] remedies = remedies(part);
        if (extent.widthM() < gap) {
            return Finding.violated(
                    Message.of(
                                    "slats-fall",
                                    "the part extends {width} across the slats, less than the gap of {gap}: it can"
                                            + " fall between them")
                            .with("width", Kind.LENGTH, extent.widthM(), Units.MILLIMETRE)
                            .with("gap", Kind.LENGTH, gap, Units.MILLIMETRE),
                    centre,
                    remedies);
        }
        if (extent.shorterM() < gap) {
            return Finding.violated(
                    Message.of(
                                    "slats-tip",
                                    "from its centre the part extends only {reach} across the slats, less than the gap"
                                            + " of {gap}: it can tip up into the head")
                            .with("reach", Kind.LENGTH, extent.shorterM(), Units.MILLIMETRE)
                            .with("gap", Kind.LENGTH, gap, Units.MILLIMETRE),
                    centre,
                    remedies);
        }
        return Finding.satisfied(
                Message.of("slats-rest", "slats lie under both sides of the part wherever it is placed"), centre);
    }

    /**
     * Returns the angle by which to turn a part so that it rests.
     *
     * @param part the part
     * @return the smallest angle in steps of 5 degrees, counter-clockwise; empty if no turn helps
     */
    public Optional<Quantity<Angle>> suggestRotation(Part part) {
        Objects.requireNonNull(part, "part");
        for (int step = 0; step < TURNS; step++) {
            double angle = step * Math.PI / TURNS;
            // turning the part is turning the slats the other way
            if (extent(part, values.directionRad - angle).shorterM() >= gapM()) {
                return Optional.of(Kind.ANGLE.of(angle));
            }
        }
        return Optional.empty();
    }

    private double gapM() {
        return values.pitchM - values.thicknessM;
    }

    private static Extent extent(Part part, double directionRad) {
        Box turned = part.outline().rotatedBy(Kind.ANGLE.of(-directionRad)).box();
        Point centre = part.centroid();
        double middle = centre.ySi() * Math.cos(directionRad) - centre.xSi() * Math.sin(directionRad);
        return new Extent(
                turned.maximum().ySi() - middle, middle - turned.minimum().ySi());
    }

    private Message[] remedies(Part part) {
        List<Message> remedies = new ArrayList<>();
        remedies.add(Message.of("leave-tabs", "leave holding tabs"));
        suggestRotation(part)
                .ifPresent(angle -> remedies.add(Message.of("rotate-part", "rotate the part by {angle}")
                        .with("angle", Kind.ANGLE, Kind.ANGLE.si(angle), Units.DEGREE)));
        return remedies.toArray(new Message[0]);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Slats that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "slats every " + QuantityText.forPeople(Kind.LENGTH, Kind.LENGTH.of(values.pitchM));
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
