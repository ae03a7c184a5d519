package dev.waterjet.material;

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

/** Workpiece: a plate or sheet of a material with a thickness. */
public final class Workpiece implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double MAX_THICKNESS_M = 1;

    /** Checked content, and the serial form. */
    private record Values(Material material, double thicknessM) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(material, "material");
            Require.positive("thickness", thicknessM, Units.MILLIMETRE);
            thicknessM = Require.atMost("thickness", thicknessM, MAX_THICKNESS_M, Units.MILLIMETRE, "");
        }

        private Object readResolve() {
            return new Workpiece(this);
        }
    }

    private final transient Values values;

    private Workpiece(Values values) {
        this.values = values;
    }

    /**
     * Returns a workpiece.
     *
     * @param material material
     * @param thickness thickness, above 0 to 1 m
     * @return the workpiece
     */
    public static Workpiece of(Material material, Quantity<Length> thickness) {
        return new Workpiece(new Values(material, Kind.LENGTH.si(thickness)));
    }

    /**
     * Returns this workpiece with another thickness.
     *
     * @param thickness thickness, above 0 to 1 m
     * @return the workpiece with that thickness
     */
    public Workpiece withThickness(Quantity<Length> thickness) {
        return new Workpiece(new Values(values.material, Kind.LENGTH.si(thickness)));
    }

    /**
     * {@return the material}
     */
    public Material material() {
        return values.material;
    }

    /**
     * {@return the thickness}
     */
    public Quantity<Length> thickness() {
        return Kind.LENGTH.of(values.thicknessM);
    }

    /**
     * {@return the thickness, in m}
     */
    public double thicknessSi() {
        return values.thicknessM;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("workpiece")
                .put("material", values.material)
                .put("thickness", Kind.LENGTH, values.thicknessM)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Workpiece that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return QuantityText.forPeople(Kind.LENGTH, values.thicknessM) + " of " + values.material.name();
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
