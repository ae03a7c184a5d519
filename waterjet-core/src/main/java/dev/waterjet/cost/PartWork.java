package dev.waterjet.cost;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.pierce.Pierce;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
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

    /** Checked content, and the serial form. */
    private record Values(
            double cuttingS,
            double cuttingUncertainty,
            int pierces,
            double onePierceS,
            double pierceUncertainty,
            double idleS,
            double removedKg)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            cuttingS = Require.positive("cutting time", cuttingS, Units.SECOND);
            cuttingUncertainty = Require.relativeUncertainty("cutting time", cuttingUncertainty, "");
            Require.atLeast("number of pierces", pierces, 0, Units.ONE, "");
            onePierceS = Require.notNegative("pierce time", onePierceS, Units.SECOND);
            pierceUncertainty = Require.relativeUncertainty("pierce time", pierceUncertainty, "");
            idleS = Require.notNegative("idle time", idleS, Units.SECOND);
            removedKg = Require.notNegative("mass of the material removed", removedKg, Units.KILOGRAM);
        }

        private Object readResolve() {
            return new PartWork(this);
        }

        Values with(double idle, double removed) {
            return new Values(cuttingS, cuttingUncertainty, pierces, onePierceS, pierceUncertainty, idle, removed);
        }
    }

    private final transient Values values;

    private PartWork(Values values) {
        this.values = values;
    }

    /**
     * Returns work that consists of cutting only.
     *
     * @param cutting jet-on time along the contours, above 0; its relative uncertainty is that of the feed rate
     * @return the work
     */
    public static PartWork of(Estimate<Time> cutting) {
        Objects.requireNonNull(cutting, "cutting");
        double s = Require.positive("cutting time", cutting.si(), Units.SECOND);
        return new PartWork(new Values(s, cutting.relativeUncertainty(), 0, 0, 0, 0, 0));
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
        double s = Objects.requireNonNull(pierce, "pierce").time().si();
        return new PartWork(new Values(
                values.cuttingS,
                values.cuttingUncertainty,
                count,
                s,
                s > 0 ? pierce.time().relativeUncertainty() : 0,
                values.idleS + count * Kind.TIME.si(pierce.idleTime()),
                values.removedKg));
    }

    /**
     * Returns this work with additional jet-off time, such as rapid traverse and unloading.
     *
     * @param idle time per part, 0 or more
     * @return the work with that time added
     */
    public PartWork withIdle(Quantity<Time> idle) {
        Objects.requireNonNull(idle, "idle");
        double more = Require.notNegative("idle time", Kind.TIME.si(idle), Units.SECOND);
        return new PartWork(values.with(values.idleS + more, values.removedKg));
    }

    /**
     * Returns this work with the mass of material removed from the kerf, which adds to the sludge.
     *
     * @param removed mass per part, 0 or more
     * @return the work with that mass
     */
    public PartWork withRemoved(Quantity<Mass> removed) {
        Objects.requireNonNull(removed, "removed");
        return new PartWork(values.with(values.idleS, Kind.MASS.si(removed)));
    }

    /**
     * Returns the jet-on time.
     *
     * @return cutting and piercing together
     */
    public Estimate<Time> jetTime() {
        double s = jetTimeSi();
        double spread = Math.hypot(
                values.cuttingS * values.cuttingUncertainty,
                values.pierces * values.onePierceS * values.pierceUncertainty);
        return Estimate.withinFactor(Kind.TIME, s, spread / s, List.of());
    }

    /**
     * Returns the jet-off time.
     *
     * @return the time, in s
     */
    public Quantity<Time> idleTime() {
        return Kind.TIME.of(values.idleS);
    }

    double jetTimeSi() {
        return values.cuttingS + values.pierces * values.onePierceS;
    }

    double cuttingSi() {
        return values.cuttingS;
    }

    double cuttingUncertainty() {
        return values.cuttingUncertainty;
    }

    double piercingSi() {
        return values.pierces * values.onePierceS;
    }

    double pierceUncertainty() {
        return values.pierceUncertainty;
    }

    double idleSi() {
        return values.idleS;
    }

    double removedSi() {
        return values.removedKg;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("work on one part")
                .put("cutting", Kind.TIME, values.cuttingS)
                .put("cutting_uncertainty", values.cuttingUncertainty)
                .put("pierces", values.pierces)
                .put("piercing", Kind.TIME, piercingSi())
                .put("pierce_uncertainty", values.pierceUncertainty)
                .put("idle", Kind.TIME, values.idleS)
                .put("removed", Kind.MASS, values.removedKg)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PartWork that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.cuttingS + " s of cutting, " + values.pierces + " pierces, " + values.idleS + " s idle";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
