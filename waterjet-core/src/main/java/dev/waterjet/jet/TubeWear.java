package dev.waterjet.jet;

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

/**
 * How the exit bore of a focusing tube widens: linearly in time after run-in (form from memory). No rate is published for
 * general use, so the shop measures its own: two readings of a pin gauge and the hours between them.
 */
public final class TubeWear implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final double rateMPerS;

    private TubeWear(double rateMPerS) {
        this.rateMPerS = Require.positive("wear rate of the focusing tube", rateMPerS, Units.MICROMETRE_PER_HOUR);
    }

    /**
     * Wear at a known rate.
     *
     * @param rate growth of the exit bore's diameter over time with the jet on, above zero
     * @return the wear
     */
    public static TubeWear of(Quantity<Speed> rate) {
        return new TubeWear(Kind.SPEED.si(rate));
    }

    /**
     * Wear as a shop has measured it.
     *
     * @param tube the tube as measured now, its exit bore above that when new
     * @param used time with the jet on since it was new, above zero
     * @return the wear
     */
    public static TubeWear measured(FocusingTube tube, Quantity<Time> used) {
        double usedS = Require.positive("time of use of the focusing tube", Kind.TIME.si(used), Units.HOUR);
        return new TubeWear((tube.exitBoreSi() - tube.boreSi()) / usedS);
    }

    /**
     * The tube after more use.
     *
     * @param tube the tube as it is
     * @param more time with the jet on, zero or more
     * @return the tube with its wider exit bore
     */
    public FocusingTube after(FocusingTube tube, Quantity<Time> more) {
        double moreS = Require.notNegative("time of use of the focusing tube", Kind.TIME.si(more), Units.HOUR);
        return tube.withExitBore(Kind.LENGTH.of(tube.exitBoreSi() + rateMPerS * moreS));
    }

    /**
     * How long until the exit bore has reached a width.
     *
     * @param tube the tube as it is
     * @param widest exit bore at which it is changed
     * @return time with the jet on; zero if the change is due
     */
    public Quantity<Time> until(FocusingTube tube, Quantity<Length> widest) {
        double widestM = Require.positive("widest exit bore", Kind.LENGTH.si(widest), Units.MILLIMETRE);
        return Kind.TIME.of(Math.max(0, (widestM - tube.exitBoreSi()) / rateMPerS));
    }

    /**
     * Growth of the exit bore.
     *
     * @return the rate, in m/s
     */
    public Quantity<Speed> rate() {
        return Kind.SPEED.of(rateMPerS);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("tube wear").put("rate", Kind.SPEED, rateMPerS).map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TubeWear that && rateMPerS == that.rateMPerS;
    }

    @Override
    public int hashCode() {
        return Objects.hash(rateMPerS);
    }

    @Override
    public String toString() {
        return "exit bore grows by " + rateMPerS * 3600e6 + " um/h";
    }
}
