package dev.waterjet.sheet;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.PartKernel;
import dev.waterjet.part.Point;
import java.io.Serializable;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/** The slats on which the sheet rests: whether a part that has come loose can fall between them or tip. */
public final class Slats implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final int TURNS = 36;

    private final double pitchM;
    private final double thicknessM;
    private final double directionRad;

    private Slats(double pitchM, double thicknessM, double directionRad) {
        this.pitchM = Require.positive("pitch of the slats", pitchM, Units.MILLIMETRE);
        this.thicknessM = Require.notNegative("thickness of a slat", thicknessM, Units.MILLIMETRE);
        Require.above("pitch of the slats", pitchM, thicknessM, Units.MILLIMETRE, "the thickness of a slat");
        this.directionRad = Require.finite("direction of the slats", directionRad, Units.DEGREE);
    }

    /**
     * Slats along y.
     *
     * @param pitch distance from slat to slat
     * @param thickness thickness of a slat, 0 or more and below the pitch
     * @return the slats
     */
    public static Slats of(Quantity<Length> pitch, Quantity<Length> thickness) {
        return new Slats(Kind.LENGTH.si(pitch), Kind.LENGTH.si(thickness), Math.PI / 2);
    }

    /**
     * These slats in another direction.
     *
     * @param direction angle from the x axis, counter-clockwise
     * @return the slats in that direction
     */
    public Slats withDirection(Quantity<Angle> direction) {
        return new Slats(pitchM, thicknessM, Kind.ANGLE.si(direction));
    }

    /**
     * Whether a part stays where it is, wherever it lies between the slats. It can fall if it reaches less far across the
     * slats than the gap; it can tip if from its centre it reaches less far than one pitch to either side, since then there
     * may be no slat under that side. Derived; slats worn by the jet and the surge of the tank are not in it.
     *
     * @param part the part
     * @return the finding, with the code {@code slats-fall}, {@code slats-tip} or {@code slats-rest}
     */
    public Finding check(Part part) {
        Point centre = part.centroid();
        double acrossX = -Math.sin(directionRad);
        double acrossY = Math.cos(directionRad);
        double middle = centre.xSi() * acrossX + centre.ySi() * acrossY;
        double ahead = PartKernel.reach(part.outline(), acrossX, acrossY) - middle;
        double behind = PartKernel.reach(part.outline(), -acrossX, -acrossY) + middle;
        double gap = pitchM - thicknessM;
        String remedy = "leave holding tabs" + turn(part);
        if (ahead + behind < gap) {
            return Finding.of(
                    "slats-fall",
                    false,
                    "the part reaches " + ContourBuilder.told(ahead + behind)
                            + " across the slats, less than the gap of " + ContourBuilder.told(gap)
                            + ": it can fall between them",
                    remedy,
                    centre);
        }
        double shorter = Math.min(ahead, behind);
        if (shorter < pitchM) {
            return Finding.of(
                    "slats-tip",
                    false,
                    "from its centre the part reaches only " + ContourBuilder.told(shorter)
                            + " across the slats, less than their pitch of " + ContourBuilder.told(pitchM)
                            + ": it can tip up into the head",
                    remedy,
                    centre);
        }
        return Finding.of(
                "slats-rest", true, "slats lie under both sides of the part wherever it is placed", "", centre);
    }

    /**
     * By how much to turn a part so that it rests.
     *
     * @param part the part
     * @return the least angle in steps of 5 degrees, counter-clockwise; empty if no turn helps
     */
    public Optional<Quantity<Angle>> suggestRotation(Part part) {
        for (int step = 0; step < TURNS; step++) {
            double angle = step * Math.PI / TURNS;
            // turning the part is turning the slats the other way
            Slats turned = new Slats(pitchM, thicknessM, directionRad - angle);
            if (turned.isRest(part)) {
                return Optional.of(Kind.ANGLE.of(angle));
            }
        }
        return Optional.empty();
    }

    private boolean isRest(Part part) {
        double acrossX = -Math.sin(directionRad);
        double acrossY = Math.cos(directionRad);
        Point centre = part.centroid();
        double middle = centre.xSi() * acrossX + centre.ySi() * acrossY;
        return PartKernel.reach(part.outline(), acrossX, acrossY) - middle >= pitchM
                && PartKernel.reach(part.outline(), -acrossX, -acrossY) + middle >= pitchM;
    }

    private String turn(Part part) {
        return suggestRotation(part)
                .map(angle -> ", or turn the part by " + Math.round(Math.toDegrees(Kind.ANGLE.si(angle))) + " degrees")
                .orElse("");
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Slats that
                && pitchM == that.pitchM
                && thicknessM == that.thicknessM
                && directionRad == that.directionRad;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(pitchM) + 31 * Double.hashCode(thicknessM) + 961 * Double.hashCode(directionRad);
    }

    @Override
    public String toString() {
        return "slats every " + ContourBuilder.told(pitchM);
    }
}
