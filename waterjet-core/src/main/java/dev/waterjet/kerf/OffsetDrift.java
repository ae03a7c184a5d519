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
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Drift of the kerf offset while the focusing tube wears. After run-in the exit bore grows about linearly in time (from
 * memory); its rate is not published, so the caller states it.
 *
 * <p>The separation depth is held: the effect of a wider tube on it is part of the feed model.
 *
 * @param kerf kerf of the tube in its present state
 * @param plane height at which the part is measured
 * @param boreGrowth rate at which the exit bore grows in diameter, above 0
 */
public record OffsetDrift(Kerf kerf, MeasuringPlane plane, Quantity<Speed> boreGrowth)
        implements Described, Serializable {

    /**
     * Checks the components.
     *
     * @throws dev.waterjet.measure.DomainException if the growth is not above 0
     * @param kerf kerf of the tube in its present state
     * @param plane height at which the part is measured
     * @param boreGrowth rate at which the exit bore grows in diameter, above 0
     */
    public OffsetDrift {
        Objects.requireNonNull(boreGrowth, "boreGrowth");
        Objects.requireNonNull(kerf, "kerf");
        Objects.requireNonNull(plane, "plane");
        boreGrowth = Kind.SPEED.of(
                Require.positive("growth of the exit bore", Kind.SPEED.si(boreGrowth), Units.MICROMETRE_PER_HOUR));
    }

    /**
     * Returns the drift that starts from a kerf.
     *
     * @param kerf kerf of the tube in its present state
     * @param plane height at which the part is measured
     * @param boreGrowth rate at which the exit bore grows in diameter, above 0
     * @return the drift
     */
    public static OffsetDrift of(Kerf kerf, MeasuringPlane plane, Quantity<Speed> boreGrowth) {
        Objects.requireNonNull(boreGrowth, "boreGrowth");
        return new OffsetDrift(kerf, plane, boreGrowth);
    }

    /**
     * Returns the correct offset after some time of cutting.
     *
     * @param cuttingTime jet-on time with abrasive, 0 or more
     * @return the offset
     */
    public Estimate<Length> offsetAfter(Quantity<Time> cuttingTime) {
        Objects.requireNonNull(cuttingTime, "cuttingTime");
        KerfShape worn = kerf.shape().withBore(kerf.shape().boreM() + grown(cuttingTime));
        KerfSpread spread = kerf.spread();
        double uncertainty = Math.hypot(spread.of(worn, plane::halfWidth), spread.widthM() / 2);
        return Estimate.of(Kind.LENGTH, plane.halfWidth(worn), uncertainty).with(kerf.cautions());
    }

    /**
     * Returns the growth of the correct offset: by this much a part is undersize per side if the offset is left unchanged.
     *
     * @param cuttingTime jet-on time with abrasive, 0 or more
     * @return growth of the correct offset
     */
    public Estimate<Length> driftAfter(Quantity<Time> cuttingTime) {
        Objects.requireNonNull(cuttingTime, "cuttingTime");
        double grown = grown(cuttingTime);
        return Estimate.of(
                Kind.LENGTH, drift(kerf.shape(), grown), kerf.spread().of(kerf.shape(), shape -> drift(shape, grown)));
    }

    private double growthMPerS() {
        return Kind.SPEED.si(boreGrowth);
    }

    private double grown(Quantity<Time> cuttingTime) {
        return growthMPerS() * Require.notNegative("cutting time", Kind.TIME.si(cuttingTime), Units.HOUR);
    }

    private double drift(KerfShape shape, double grownM) {
        return plane.halfWidth(shape.withBore(shape.boreM() + grownM)) - plane.halfWidth(shape);
    }

    /**
     * Returns the time until the drift has used up a tolerance.
     *
     * @param perSide distance by which the wall may move, above 0
     * @return jet-on time with abrasive
     */
    public Estimate<Time> timeUntil(Quantity<Length> perSide) {
        Objects.requireNonNull(perSide, "perSide");
        double tolerance = Require.positive("tolerance per side", Kind.LENGTH.si(perSide), Units.MILLIMETRE);
        KerfShape now = kerf.shape();
        Require.above(
                "width of the kerf at the " + plane.label(),
                2 * plane.halfWidth(now),
                0,
                Units.MILLIMETRE,
                "where the jet just separates, wear changes nothing");
        return Estimate.of(
                Kind.TIME,
                growthUntil(now, tolerance) / growthMPerS(),
                kerf.spread().of(now, shape -> growthUntil(shape, tolerance)) / growthMPerS());
    }

    /** Half-widths grow with the bore without limit, so an upper end is found by doubling. */
    private double growthUntil(KerfShape shape, double toleranceM) {
        if (plane.halfWidth(shape) <= 0) {
            return 0;
        }
        double high = 2 * toleranceM;
        while (drift(shape, high) < toleranceM) {
            high *= 2;
        }
        return new BrentSolver(1e-12, 1e-12).solve(1000, grown -> drift(shape, grown) - toleranceM, 0, high);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("offset drift")
                .put("kerf", kerf)
                .put("plane", plane)
                .put("bore_growth", Kind.SPEED, growthMPerS())
                .map();
    }

    @Override
    public String toString() {
        return "drift of the kerf offset at the " + plane.label() + ", bore growing "
                + QuantityText.print(Kind.SPEED, boreGrowth, Units.MICROMETRE_PER_HOUR, 4);
    }
}
