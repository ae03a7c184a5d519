package dev.waterjet.kerf;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/**
 * A head tilted sideways, across its path, so that the wall of the part comes out square. A tilt turns both walls alike: by
 * theta - beta the wall of the part leans, by theta + beta that of the scrap (derived).
 *
 * <p>The path through the plate grows by 1/cos(beta), a quarter of a per cent at 4 degrees, which is left out.
 */
public final class TaperCompensation implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final Estimate<Angle> taper;
    private final double tiltRad;

    private TaperCompensation(Estimate<Angle> taper, double tiltRad) {
        this.taper = taper;
        this.tiltRad = tiltRad;
    }

    /**
     * The tilt that squares the part side of a kerf: as much as the wall tapers.
     *
     * @param kerf the kerf of an upright head
     * @return the tilt
     */
    public static TaperCompensation forSquarePartSide(Kerf kerf) {
        Estimate<Angle> taper = kerf.taperPerSide();
        return new TaperCompensation(taper, taper.si());
    }

    /**
     * A tilt of one's own.
     *
     * @param kerf the kerf of an upright head
     * @param tilt tilt towards the scrap at the entry, below 90 degrees; below zero for the other way
     * @return the tilt
     */
    public static TaperCompensation of(Kerf kerf, Quantity<Angle> tilt) {
        double limit = Math.nextDown(Math.PI / 2);
        return new TaperCompensation(
                kerf.taperPerSide(),
                Require.between("tilt", Kind.ANGLE.si(tilt), -limit, limit, Units.DEGREE, "the head stands above"));
    }

    /**
     * This tilt as far as a machine can go.
     *
     * @param limit greatest tilt of the machine, to either side, from zero to below 90 degrees
     * @return the tilt, cut to the limit
     */
    public TaperCompensation within(Quantity<Angle> limit) {
        double limitRad = Require.between(
                "tilt limit of the machine",
                Kind.ANGLE.si(limit),
                0,
                Math.nextDown(Math.PI / 2),
                Units.DEGREE,
                "the head stands above");
        return new TaperCompensation(taper, Math.max(-limitRad, Math.min(limitRad, tiltRad)));
    }

    /**
     * The angle of the head.
     *
     * @return the tilt; above zero it takes from a kerf that narrows downwards
     */
    public Quantity<Angle> tilt() {
        return Kind.ANGLE.of(tiltRad);
    }

    /**
     * What the wall of the part still leans: zero where the tilt squares it, the rest where the machine's limit does not
     * let it.
     *
     * @return taper less tilt
     */
    public Estimate<Angle> partSideTaper() {
        return turned(-tiltRad);
    }

    /**
     * What the wall of the scrap leans.
     *
     * @return taper and tilt together
     */
    public Estimate<Angle> scrapSideTaper() {
        return turned(tiltRad);
    }

    private Estimate<Angle> turned(double byRad) {
        List<Caution> cautions = taper.cautions();
        return Estimate.of(Kind.ANGLE, taper.si() + byRad, taper.standardUncertaintySi())
                .with(cautions);
    }

    /**
     * How far the jet's point of entry moves when the head turns, and so how far the path must be moved back.
     *
     * @param pivotHeight height of the point about which the machine turns the head, above the entry face; zero where the
     *     control keeps the point of entry, the stand-off where it keeps the tip of the tube
     * @return the shift; below zero for a tilt below zero
     */
    public Quantity<Length> pathShift(Quantity<Length> pivotHeight) {
        double height = Require.notNegative("height of the pivot", Kind.LENGTH.si(pivotHeight), Units.MILLIMETRE);
        return Kind.LENGTH.of(height * Math.tan(tiltRad));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("side tilt")
                .put("tilt", Kind.ANGLE, tiltRad)
                .put("part_side", partSideTaper())
                .put("scrap_side", scrapSideTaper())
                .map();
    }

    @Override
    public String toString() {
        return "side tilt of " + Math.toDegrees(tiltRad) + " deg";
    }
}
