package dev.waterjet.jet;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;

/**
 * Wear of a focusing tube: its exit bore grows linearly with jet-on time after run-in (form from memory). No rate is published
 * for general use. It is measured in the shop by two readings with a pin gauge and the hours between them.
 */
public final class TubeWear implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values(double rateMPerS) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            rateMPerS = Require.positive("wear rate of the focusing tube", rateMPerS, Units.MICROMETRE_PER_HOUR);
        }

        private Object readResolve() {
            return new TubeWear(this);
        }
    }

    private final transient Values values;

    private TubeWear(Values values) {
        this.values = values;
    }

    /**
     * Returns wear at a known rate.
     *
     * @param rate growth of the exit bore over jet-on time, above 0
     * @return the wear
     */
    public static TubeWear of(Quantity<Speed> rate) {
        Objects.requireNonNull(rate, "rate");
        return new TubeWear(new Values(Kind.SPEED.si(rate)));
    }

    /**
     * Returns wear at the rate of a measured tube.
     *
     * @param tube the tube as measured, its exit bore above that when new
     * @param used jet-on time since it was new, above 0
     * @return the wear
     */
    public static TubeWear measured(FocusingTube tube, Quantity<Time> used) {
        Objects.requireNonNull(tube, "tube");
        Objects.requireNonNull(used, "used");
        double usedS = Require.positive("jet-on time of the focusing tube", Kind.TIME.si(used), Units.HOUR);
        return new TubeWear(new Values((tube.exitBoreSi() - tube.boreSi()) / usedS));
    }

    /**
     * Returns a tube after further use.
     *
     * @param tube the tube at present
     * @param more further jet-on time, 0 or more
     * @return the tube with its larger exit bore
     */
    public FocusingTube after(FocusingTube tube, Quantity<Time> more) {
        Objects.requireNonNull(more, "more");
        Objects.requireNonNull(tube, "tube");
        double moreS = Require.notNegative("jet-on time of the focusing tube", Kind.TIME.si(more), Units.HOUR);
        return tube.withExitBore(Kind.LENGTH.of(tube.exitBoreSi() + values.rateMPerS * moreS));
    }

    /**
     * Returns the jet-on time until the exit bore reaches a maximum.
     *
     * @param tube the tube at present
     * @param maximum exit bore at which the tube is replaced, above 0
     * @return the jet-on time; 0 if the replacement is due
     */
    public Quantity<Time> until(FocusingTube tube, Quantity<Length> maximum) {
        Objects.requireNonNull(maximum, "maximum");
        Objects.requireNonNull(tube, "tube");
        double maximumM = Require.positive("maximum exit bore", Kind.LENGTH.si(maximum), Units.MILLIMETRE);
        return Kind.TIME.of(Math.max(0, (maximumM - tube.exitBoreSi()) / values.rateMPerS));
    }

    /** {@return the growth of the exit bore over jet-on time} */
    public Quantity<Speed> rate() {
        return Kind.SPEED.of(values.rateMPerS);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("tube wear")
                .put("rate", Kind.SPEED, values.rateMPerS)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TubeWear that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "exit bore grows by " + QuantityText.forPeople(Kind.SPEED, rate());
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
