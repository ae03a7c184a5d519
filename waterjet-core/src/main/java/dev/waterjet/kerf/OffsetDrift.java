package dev.waterjet.kerf;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
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
 * How the path offset drifts while the focusing tube wears. The exit bore grows about linearly in time after run-in (from
 * memory); at what rate is not published, so the caller states it.
 *
 * <p>The separation depth is held: what a wider tube does to it is left to the feed model.
 */
public final class OffsetDrift implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final Kerf kerf;
    private final MeasuringPlane datum;
    private final double growthMPerS;

    private OffsetDrift(Kerf kerf, MeasuringPlane datum, double growthMPerS) {
        this.kerf = kerf;
        this.datum = Objects.requireNonNull(datum, "datum");
        this.growthMPerS = Require.positive("growth of the exit bore", growthMPerS, Units.MICROMETRE_PER_HOUR);
    }

    /**
     * The drift from a kerf on.
     *
     * @param kerf the kerf of the tube as it is now
     * @param datum where the part is measured
     * @param boreGrowth how fast the exit bore grows in diameter, above zero
     * @return the drift
     */
    public static OffsetDrift of(Kerf kerf, MeasuringPlane datum, Quantity<Speed> boreGrowth) {
        return new OffsetDrift(kerf, datum, Kind.SPEED.si(boreGrowth));
    }

    /**
     * The offset that is right after some time of cutting.
     *
     * @param cuttingTime time with abrasive on, zero or more
     * @return the offset
     */
    public Estimate<Length> offsetAfter(Quantity<Time> cuttingTime) {
        return kerf.withBoreGrownBy(grown(cuttingTime)).offset(datum);
    }

    /**
     * By how much a part is then undersize per side if the offset is left as it is.
     *
     * @param cuttingTime time with abrasive on, zero or more
     * @return growth of the right offset
     */
    public Estimate<Length> driftAfter(Quantity<Time> cuttingTime) {
        double grown = grown(cuttingTime);
        return Estimate.of(
                Kind.LENGTH, drift(kerf.shape(), grown), kerf.spread().of(kerf.shape(), shape -> drift(shape, grown)));
    }

    private double grown(Quantity<Time> cuttingTime) {
        return growthMPerS * Require.notNegative("cutting time", Kind.TIME.si(cuttingTime), Units.HOUR);
    }

    private double drift(KerfShape shape, double grownM) {
        return datum.halfWidth(shape.withBore(shape.boreM() + grownM)) - datum.halfWidth(shape);
    }

    /**
     * Time until the drift uses up a tolerance.
     *
     * @param perSide how far the wall may move, above zero
     * @return time with abrasive on
     */
    public Estimate<Time> timeUntil(Quantity<Length> perSide) {
        double tolerance = Require.positive("tolerance per side", Kind.LENGTH.si(perSide), Units.MILLIMETRE);
        Require.above(
                "width of the kerf at the " + datum.label(),
                2 * datum.halfWidth(kerf.shape()),
                0,
                Units.MILLIMETRE,
                "where the jet just separates, wear changes nothing");
        return Estimate.of(
                Kind.TIME,
                growthUntil(kerf.shape(), tolerance) / growthMPerS,
                kerf.spread().of(kerf.shape(), shape -> growthUntil(shape, tolerance)) / growthMPerS);
    }

    /** Half-widths grow with the bore without end, so an upper end is found by doubling. */
    private double growthUntil(KerfShape shape, double toleranceM) {
        if (datum.halfWidth(shape) <= 0) {
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
        return Description.of("compensation drift")
                .put("kerf", kerf)
                .put("datum", datum)
                .put("growth_of_bore", Kind.SPEED, growthMPerS)
                .map();
    }

    @Override
    public String toString() {
        return "drift of the offset at the " + datum.label();
    }
}
