package dev.waterjet.pierce;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Time;

/** The way to pierce a plate that was chosen, why, and what it takes. */
public final class Pierce implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final PierceMethod way;
    private final double pressurePa;
    private final Estimate<Time> time;
    private final double idleS;
    private final String reason;
    private final List<Caution> cautions;

    private Pierce(
            PierceMethod way,
            double pressurePa,
            Estimate<Time> time,
            double idleS,
            String reason,
            List<Caution> cautions) {
        this.way = way;
        this.pressurePa = pressurePa;
        this.time = time;
        this.idleS = idleS;
        this.reason = reason;
        this.cautions = List.copyOf(cautions);
    }

    public static Pierce of(
            PierceMethod way,
            double pressurePa,
            Estimate<Time> time,
            double idleS,
            String reason,
            List<Caution> cautions) {
        return new Pierce(way, pressurePa, time, idleS, reason, cautions);
    }

    /**
     * The way chosen.
     *
     * @return the way
     */
    public PierceMethod method() {
        return way;
    }

    /**
     * Pressure while it pierces.
     *
     * @return gauge pressure at the orifice, in Pa; where the hole is drilled, the pressure at which the cut starts
     */
    public Quantity<Pressure> pressure() {
        return Kind.PRESSURE.of(pressurePa);
    }

    /**
     * Time with the jet on until the jet is through.
     *
     * @return the time; zero where the hole is drilled
     */
    public Estimate<Time> time() {
        return time;
    }

    /**
     * Time beside it with the jet off or at rest: raising the pressure, or drilling.
     *
     * @return the time, in s
     */
    public Quantity<Time> idleTime() {
        return Kind.TIME.of(idleS);
    }

    /**
     * Time beside it as a number.
     *
     * @return the time in s
     */
    public double idleTimeSi() {
        return idleS;
    }

    /**
     * Why this way.
     *
     * @return one sentence
     */
    public String reason() {
        return reason;
    }

    /**
     * What the shop must know.
     *
     * @return the cautions; empty if there are none
     */
    public List<Caution> cautions() {
        return cautions;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("pierce")
                .put("way", way)
                .put("pressure", Kind.PRESSURE, pressurePa)
                .put("time", time)
                .put("idle_time", Kind.TIME, idleS)
                .put("reason", reason)
                .put("cautions", cautions)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Pierce that
                && way == that.way
                && pressurePa == that.pressurePa
                && time.equals(that.time)
                && idleS == that.idleS
                && reason.equals(that.reason)
                && cautions.equals(that.cautions);
    }

    @Override
    public int hashCode() {
        return Objects.hash(way.name(), pressurePa, time, idleS, reason, cautions);
    }

    @Override
    public String toString() {
        return way.label() + " at " + QuantityText.print(Kind.PRESSURE, pressure(), Units.MEGAPASCAL, 3) + ", "
                + QuantityText.round(time.si(), 2) + " s: " + reason;
    }
}
