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

/** Focusing tube (mixing tube) of a cutting head. Its exit bore grows with wear; a new tube has one bore. */
public final class FocusingTube implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values(double boreM, double exitBoreM, double lengthM) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            boreM = Require.positive("focusing tube bore", boreM, Units.MILLIMETRE);
            exitBoreM = Require.atLeast(
                    "exit bore of the focusing tube", exitBoreM, boreM, Units.MILLIMETRE, "its bore when new");
            lengthM = Require.above("focusing tube length", lengthM, boreM, Units.MILLIMETRE, "its bore");
        }

        private Object readResolve() {
            return new FocusingTube(this);
        }
    }

    private final transient Values values;

    private FocusingTube(Values values) {
        this.values = values;
    }

    /**
     * Returns a new tube.
     *
     * @param bore diameter of the bore, above 0
     * @param length length of the tube, above its bore
     * @return the tube
     */
    public static FocusingTube of(Quantity<Length> bore, Quantity<Length> length) {
        Objects.requireNonNull(bore, "bore");
        Objects.requireNonNull(length, "length");
        double boreM = Kind.LENGTH.si(bore);
        return new FocusingTube(new Values(boreM, boreM, Kind.LENGTH.si(length)));
    }

    /**
     * Returns this tube after wear.
     *
     * @param exitBore diameter at the exit, at least the bore when new
     * @return the worn tube
     */
    public FocusingTube withExitBore(Quantity<Length> exitBore) {
        Objects.requireNonNull(exitBore, "exitBore");
        return new FocusingTube(new Values(values.boreM, Kind.LENGTH.si(exitBore), values.lengthM));
    }

    /** {@return the diameter of the bore when new} */
    public Quantity<Length> bore() {
        return Kind.LENGTH.of(values.boreM);
    }

    /** {@return the present diameter of the bore at the exit, which is that of the jet there} */
    public Quantity<Length> exitBore() {
        return Kind.LENGTH.of(values.exitBoreM);
    }

    /** {@return the length of the tube} */
    public Quantity<Length> length() {
        return Kind.LENGTH.of(values.lengthM);
    }

    /** {@return the diameter of the bore when new, in m} */
    public double boreSi() {
        return values.boreM;
    }

    /** {@return the present diameter of the bore at the exit, in m} */
    public double exitBoreSi() {
        return values.exitBoreM;
    }

    /** {@return the length of the tube, in m} */
    public double lengthSi() {
        return values.lengthM;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("focusing tube")
                .put("bore", Kind.LENGTH, values.boreM)
                .put("exit_bore", Kind.LENGTH, values.exitBoreM)
                .put("length", Kind.LENGTH, values.lengthM)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FocusingTube that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        String worn =
                values.exitBoreM > values.boreM ? ", exit bore " + QuantityText.forPeople(Kind.LENGTH, exitBore()) : "";
        return "focusing tube " + QuantityText.forPeople(Kind.LENGTH, bore()) + " x "
                + QuantityText.forPeople(Kind.LENGTH, length()) + worn;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
