package dev.waterjet.cost;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.pierce.Pierce;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;

/** Work on one part: cutting, piercing, rapid traverse and handling. */
public final class PartWork implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final double cuttingS;
    private final double cuttingUncertainty;
    private final int pierces;
    private final double onePierceS;
    private final double pierceUncertainty;
    private final double idleS;
    private final double removedKg;

    private PartWork(
            double cuttingS,
            double cuttingUncertainty,
            int pierces,
            double onePierceS,
            double pierceUncertainty,
            double idleS,
            double removedKg) {
        this.cuttingS = cuttingS;
        this.cuttingUncertainty = cuttingUncertainty;
        this.pierces = pierces;
        this.onePierceS = onePierceS;
        this.pierceUncertainty = pierceUncertainty;
        this.idleS = idleS;
        this.removedKg = removedKg;
    }

    /**
     * Returns work that consists of cutting only.
     *
     * @param cutting jet-on time along the contours, above 0; its relative uncertainty is that of the feed rate
     * @return the work
     */
    public static PartWork of(Estimate<Time> cutting) {
        double s = Require.positive("cutting time", cutting.si(), Units.SECOND);
        return new PartWork(s, cutting.relativeUncertainty(), 0, 0, 0, 0, 0);
    }

    /**
     * Returns this work with a number of equal pierces.
     *
     * @param count number of pierces, 1 or more
     * @param pierce one of them
     * @return the work with those pierces
     */
    public PartWork withPierces(int count, Pierce pierce) {
        Require.atLeast("number of pierces", count, 1, Units.ONE, "");
        double s = pierce.time().si();
        return new PartWork(
                cuttingS,
                cuttingUncertainty,
                count,
                s,
                s > 0 ? pierce.time().relativeUncertainty() : 0,
                idleS + count * Kind.TIME.si(pierce.idleTime()),
                removedKg);
    }

    /**
     * Returns this work with additional jet-off time, such as rapid traverse and unloading.
     *
     * @param idle time per part, 0 or more
     * @return the work with that time added
     */
    public PartWork withIdle(Quantity<Time> idle) {
        double more = Require.notNegative("idle time", Kind.TIME.si(idle), Units.SECOND);
        return new PartWork(
                cuttingS, cuttingUncertainty, pierces, onePierceS, pierceUncertainty, idleS + more, removedKg);
    }

    /**
     * Returns this work with the mass of material removed from the kerf, which adds to the sludge.
     *
     * @param removed mass per part, 0 or more
     * @return the work with that mass
     */
    public PartWork withRemoved(Quantity<Mass> removed) {
        return new PartWork(
                cuttingS,
                cuttingUncertainty,
                pierces,
                onePierceS,
                pierceUncertainty,
                idleS,
                Require.notNegative("mass of the material removed", Kind.MASS.si(removed), Units.KILOGRAM));
    }

    /**
     * Returns the jet-on time.
     *
     * @return cutting and piercing together
     */
    public Estimate<Time> jetTime() {
        double s = jetTimeSi();
        double spread = Math.hypot(cuttingS * cuttingUncertainty, pierces * onePierceS * pierceUncertainty);
        return Estimate.withinFactor(Kind.TIME, s, spread / s, List.of());
    }

    /**
     * Returns the jet-off time.
     *
     * @return the time, in s
     */
    public Quantity<Time> idleTime() {
        return Kind.TIME.of(idleS);
    }

    double jetTimeSi() {
        return cuttingS + pierces * onePierceS;
    }

    double cuttingSi() {
        return cuttingS;
    }

    double cuttingUncertainty() {
        return cuttingUncertainty;
    }

    double piercingSi() {
        return pierces * onePierceS;
    }

    double pierceUncertainty() {
        return pierceUncertainty;
    }

    double idleSi() {
        return idleS;
    }

    double removedSi() {
        return removedKg;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("work on one part")
                .put("cutting", Kind.TIME, cuttingS)
                .put("cutting_uncertainty", cuttingUncertainty)
                .put("pierces", pierces)
                .put("piercing", Kind.TIME, piercingSi())
                .put("pierce_uncertainty", pierceUncertainty)
                .put("idle", Kind.TIME, idleS)
                .put("removed", Kind.MASS, removedKg)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PartWork that
                && cuttingS == that.cuttingS
                && cuttingUncertainty == that.cuttingUncertainty
                && pierces == that.pierces
                && onePierceS == that.onePierceS
                && pierceUncertainty == that.pierceUncertainty
                && idleS == that.idleS
                && removedKg == that.removedKg;
    }

    @Override
    public int hashCode() {
        return Objects.hash(cuttingS, cuttingUncertainty, pierces, onePierceS, pierceUncertainty, idleS, removedKg);
    }

    @Override
    public String toString() {
        return cuttingS + " s of cutting, " + pierces + " pierces, " + idleS + " s idle";
    }
}
