package dev.waterjet.material;

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

/** A plate of a material: what lies on the table. */
public final class Workpiece implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double GREATEST_THICKNESS_M = 1;

    private final Material material;
    private final double thicknessM;

    private Workpiece(Material material, double thicknessM) {
        this.material = Objects.requireNonNull(material, "material");
        this.thicknessM = Require.positive("thickness", thicknessM, Units.MILLIMETRE);
        Require.atMost("thickness", thicknessM, GREATEST_THICKNESS_M, Units.MILLIMETRE, "no jet cuts thicker");
    }

    /**
     * A plate.
     *
     * @param material what it is made of
     * @param thickness its thickness, above 0 to 1 m
     * @return the workpiece
     */
    public static Workpiece of(Material material, Quantity<Length> thickness) {
        return new Workpiece(material, Kind.LENGTH.si(thickness));
    }

    /**
     * This workpiece in another thickness.
     *
     * @param thickness the thickness, above 0 to 1 m
     * @return the workpiece of that thickness
     */
    public Workpiece withThickness(Quantity<Length> thickness) {
        return new Workpiece(material, Kind.LENGTH.si(thickness));
    }

    /**
     * What it is made of.
     *
     * @return the material
     */
    public Material material() {
        return material;
    }

    /**
     * Its thickness.
     *
     * @return the thickness, in m
     */
    public Quantity<Length> thickness() {
        return Kind.LENGTH.of(thicknessM);
    }

    /**
     * Its thickness as a number.
     *
     * @return the thickness in m
     */
    public double thicknessSi() {
        return thicknessM;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("workpiece")
                .put("material", material)
                .put("thickness", Kind.LENGTH, thicknessM)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Workpiece that && material.equals(that.material) && thicknessM == that.thicknessM;
    }

    @Override
    public int hashCode() {
        return Objects.hash(material, thicknessM);
    }

    @Override
    public String toString() {
        return QuantityText.print(Kind.LENGTH, thickness(), Units.MILLIMETRE, 4) + " of " + material.name();
    }
}
