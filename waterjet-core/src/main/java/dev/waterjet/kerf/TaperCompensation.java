package dev.waterjet.kerf;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/**
 * Taper compensation: a head tilted across its path, so that the part side of the kerf is square. A tilt beta turns both
 * walls: the part side then has the taper theta - beta, the scrap side theta + beta (derived).
 *
 * <p>The cut through the plate gets longer by 1/cos(beta), 0.25 % at 4°, which is neglected.
 *
 * @param taper taper per side of an upright head
 * @param tilt tilt angle towards the scrap at the entry, between -90 and 90 degrees; below 0 towards the part
 */
public record TaperCompensation(Estimate<Angle> taper, Quantity<Angle> tilt) implements Described, Serializable {

    private static final double LIMIT_RAD = Math.nextDown(Math.PI / 2);
    private static final String ABOVE = "the head is above the workpiece";

    /**
     * Checks the components.
     *
     * @throws dev.waterjet.measure.DomainException if the tilt is 90 degrees or more to either side
     * @param taper taper per side of an upright head
     * @param tilt tilt angle towards the scrap at the entry, between -90 and 90 degrees; below 0 towards the part
     */
    public TaperCompensation {
        Objects.requireNonNull(tilt, "tilt");
        Objects.requireNonNull(taper, "taper");
        tilt = Kind.ANGLE.of(
                Require.between("tilt angle", Kind.ANGLE.si(tilt), -LIMIT_RAD, LIMIT_RAD, Units.DEGREE, ABOVE));
    }

    /**
     * Returns the tilt for a square part side: as much as the wall tapers.
     *
     * @param kerf kerf of an upright head
     * @return the compensation
     */
    public static TaperCompensation forSquarePartSide(Kerf kerf) {
        Objects.requireNonNull(kerf, "kerf");
        Estimate<Angle> taper = kerf.taperPerSide();
        return new TaperCompensation(taper, taper.value());
    }

    /**
     * Returns a given tilt.
     *
     * @param kerf kerf of an upright head
     * @param tilt tilt angle towards the scrap at the entry, below 90 degrees; below 0 towards the part
     * @return the compensation
     */
    public static TaperCompensation of(Kerf kerf, Quantity<Angle> tilt) {
        Objects.requireNonNull(kerf, "kerf");
        return new TaperCompensation(kerf.taperPerSide(), tilt);
    }

    /**
     * Returns this compensation within the tilt limit of a machine.
     *
     * @param limit maximum tilt of the machine, to either side, from 0 to below 90 degrees
     * @return the compensation, with the tilt cut to the limit
     */
    public TaperCompensation within(Quantity<Angle> limit) {
        Objects.requireNonNull(limit, "limit");
        double limitRad =
                Require.between("tilt limit of the machine", Kind.ANGLE.si(limit), 0, LIMIT_RAD, Units.DEGREE, ABOVE);
        return new TaperCompensation(taper, Kind.ANGLE.of(Math.max(-limitRad, Math.min(limitRad, tiltRad()))));
    }

    private double tiltRad() {
        return Kind.ANGLE.si(tilt);
    }

    /** {@return the taper that the part side keeps: taper less tilt, 0 where the tilt is not limited} */
    public Estimate<Angle> partSideTaper() {
        return turned(-tiltRad());
    }

    /** {@return the taper of the scrap side: taper and tilt together} */
    public Estimate<Angle> scrapSideTaper() {
        return turned(tiltRad());
    }

    private Estimate<Angle> turned(double byRad) {
        return Estimate.of(Kind.ANGLE, taper.si() + byRad, taper.standardUncertaintySi())
                .with(taper.cautions());
    }

    /**
     * Returns the distance by which the entry point moves when the head tilts, and by which the tool path must be moved
     * back.
     *
     * @param pivotHeight height of the pivot of the head above the top side, 0 or more: 0 where the control keeps the entry
     *     point, the stand-off distance where it keeps the tip of the tube
     * @return the shift; below 0 for a tilt below 0
     */
    public Quantity<Length> pathShift(Quantity<Length> pivotHeight) {
        Objects.requireNonNull(pivotHeight, "pivotHeight");
        double height = Require.notNegative("height of the pivot", Kind.LENGTH.si(pivotHeight), Units.MILLIMETRE);
        return Kind.LENGTH.of(height * Math.tan(tiltRad()));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("taper compensation")
                .put("taper", taper)
                .put("tilt", Kind.ANGLE, tiltRad())
                .put("part_side_taper", partSideTaper())
                .put("scrap_side_taper", scrapSideTaper())
                .map();
    }

    @Override
    public String toString() {
        return "tilt " + QuantityText.forPeople(Kind.ANGLE, tiltRad()) + ", part side taper "
                + QuantityText.forPeople(Kind.ANGLE, partSideTaper().si());
    }
}
