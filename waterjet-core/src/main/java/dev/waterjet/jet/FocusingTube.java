package dev.waterjet.jet;

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

/** The tube in which water and abrasive mix and are bundled. Its exit bore widens with wear; a new tube has one bore. */
public final class FocusingTube implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final double boreM;
    private final double exitBoreM;
    private final double lengthM;

    private FocusingTube(double boreM, double exitBoreM, double lengthM) {
        this.boreM = Require.positive("focusing-tube bore", boreM, Units.MILLIMETRE);
        this.exitBoreM = Require.atLeast(
                "worn exit bore of the focusing tube", exitBoreM, boreM, Units.MILLIMETRE, "its bore when new");
        this.lengthM =
                Require.above("focusing-tube length", lengthM, boreM, Units.MILLIMETRE, "a tube is longer than wide");
    }

    /**
     * A new tube.
     *
     * @param bore diameter of the bore
     * @param length length of the tube, above its bore
     * @return the tube
     */
    public static FocusingTube of(Quantity<Length> bore, Quantity<Length> length) {
        double boreM = Kind.LENGTH.si(bore);
        return new FocusingTube(boreM, boreM, Kind.LENGTH.si(length));
    }

    /**
     * This tube after wear.
     *
     * @param exitBore diameter at the exit, no smaller than the bore when new
     * @return the worn tube
     */
    public FocusingTube withExitBore(Quantity<Length> exitBore) {
        return new FocusingTube(boreM, Kind.LENGTH.si(exitBore), lengthM);
    }

    /**
     * Diameter of the bore when new.
     *
     * @return the bore, in m
     */
    public Quantity<Length> bore() {
        return Kind.LENGTH.of(boreM);
    }

    /**
     * Diameter of the bore at the exit, as it is now: the jet has this diameter where it leaves.
     *
     * @return the bore, in m
     */
    public Quantity<Length> exitBore() {
        return Kind.LENGTH.of(exitBoreM);
    }

    /**
     * Length of the tube.
     *
     * @return the length, in m
     */
    public Quantity<Length> length() {
        return Kind.LENGTH.of(lengthM);
    }

    /**
     * Diameter of the bore when new, as a number.
     *
     * @return the bore in m
     */
    public double boreSi() {
        return boreM;
    }

    /**
     * Diameter of the bore at the exit, as a number.
     *
     * @return the bore in m
     */
    public double exitBoreSi() {
        return exitBoreM;
    }

    /**
     * Length of the tube, as a number.
     *
     * @return the length in m
     */
    public double lengthSi() {
        return lengthM;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("focusing tube")
                .put("bore", Kind.LENGTH, boreM)
                .put("exit_bore", Kind.LENGTH, exitBoreM)
                .put("length", Kind.LENGTH, lengthM)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FocusingTube that
                && boreM == that.boreM
                && exitBoreM == that.exitBoreM
                && lengthM == that.lengthM;
    }

    @Override
    public int hashCode() {
        return Objects.hash(boreM, exitBoreM, lengthM);
    }

    @Override
    public String toString() {
        String worn = exitBoreM > boreM
                ? ", worn to " + QuantityText.print(Kind.LENGTH, exitBore(), Units.MILLIMETRE, 4)
                : "";
        return "focusing tube " + QuantityText.print(Kind.LENGTH, bore(), Units.MILLIMETRE, 4) + " x "
                + QuantityText.print(Kind.LENGTH, length(), Units.MILLIMETRE, 4) + worn;
    }
}
