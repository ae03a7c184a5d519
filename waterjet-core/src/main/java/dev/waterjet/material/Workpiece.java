package dev.waterjet.material;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Workpiece: a plate or sheet, a stack of equal sheets, or layers of different materials (laminate, clad or coated plate, sheets
 * of several kinds).
 *
 * <pre>{@code
 * Workpiece plate = Workpiece.of(titanium, millimetres(6));
 * Workpiece stack = Workpiece.sheets(Workpiece.of(titanium, millimetres(2)), 3);
 * Workpiece clad = Workpiece.layers(List.of(Workpiece.of(stainless, millimetres(2)), Workpiece.of(steel, millimetres(10))));
 * }</pre>
 *
 * <p>Each layer uses a share of the depth that the jet can separate, its thickness over the depth that the jet would separate
 * in that layer's material alone; the workpiece is cut at index q where the shares add up to 1/q: sum h<sub>i</sub> / D<sub>i</sub>(u) = 1/q
 * (derived: the abrasive spends its power evenly over the depth). Sheets of one material are thus one plate of the total
 * thickness. Gaps between the sheets, in which the jet spreads, are not included. Every model that takes the conditions of a
 * cut takes such a workpiece.
 */
public final class Workpiece implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double MAX_THICKNESS_M = 1;
    private static final int MAX_LAYERS = 1000;

    /**
     * Checked content, and the serial form. The layers are empty for a plate; else material and thickness follow from them.
     */
    private record Values(Material material, double thicknessM, List<Workpiece> layers) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            layers = List.copyOf(layers);
            Require.atMost("number of layers", layers.size(), MAX_LAYERS, Units.ONE, "");
            Objects.requireNonNull(material, "material");
            thicknessM = Require.positive("thickness", thicknessM, Units.MILLIMETRE);
            if (!layers.isEmpty()) {
                material = LayerMaterial.of(layers);
                thicknessM = layers.stream().mapToDouble(Workpiece::thicknessSi).sum();
            }
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
     * Returns a plate or sheet.
     *
     * @param material material
     * @param thickness thickness, above 0 to 1 m
     * @return the workpiece
     */
    public static Workpiece of(Material material, Quantity<Length> thickness) {
        Objects.requireNonNull(thickness, "thickness");
        return new Workpiece(new Values(material, Kind.LENGTH.si(thickness), List.of()));
    }

    /**
     * Returns a stack of equal sheets that are cut in one pass.
     *
     * @param sheet one sheet
     * @param count number of sheets, 1 to 1000
     * @return the stack, of at most 1 m
     */
    public static Workpiece sheets(Workpiece sheet, int count) {
        Objects.requireNonNull(sheet, "sheet");
        int sheets = (int) Require.between("number of layers", count, 1, MAX_LAYERS, Units.ONE, "");
        return layers(Collections.nCopies(sheets, sheet));
    }

    /**
     * Returns a workpiece of layers, such as a laminate, a clad or coated plate, or sheets of several kinds.
     *
     * @param layers layers, the top one first, 1 to 1000; a layer that has layers itself counts as these
     * @return the workpiece, of at most 1 m
     */
    public static Workpiece layers(List<Workpiece> layers) {
        Objects.requireNonNull(layers, "layers");
        List<Workpiece> flat =
                layers.stream().flatMap(layer -> layer.layers().stream()).toList();
        Require.between("number of layers", flat.size(), 1, MAX_LAYERS, Units.ONE, "");
        return flat.size() == 1
                ? flat.get(0)
                : new Workpiece(new Values(flat.get(0).material(), flat.get(0).thicknessSi(), flat));
    }

    /**
     * Returns this workpiece with another thickness; layers keep their proportions.
     *
     * @param thickness total thickness, above 0 to 1 m
     * @return the workpiece with that thickness
     */
    public Workpiece withThickness(Quantity<Length> thickness) {
        Objects.requireNonNull(thickness, "thickness");
        double thicknessM = Kind.LENGTH.si(thickness);
        if (values.layers.isEmpty()) {
            return new Workpiece(new Values(values.material, thicknessM, List.of()));
        }
        double ratio = Require.positive("thickness", thicknessM, Units.MILLIMETRE) / values.thicknessM;
        return layers(values.layers.stream()
                .map(layer -> of(layer.material(), Kind.LENGTH.of(ratio * layer.thicknessSi())))
                .toList());
    }

    /** {@return the layers, the top one first; this workpiece alone if it is a plate} */
    public List<Workpiece> layers() {
        return values.layers.isEmpty() ? List.of(this) : values.layers;
    }

    /** {@return whether there are layers of more than one material} */
    public boolean hasSeveralMaterials() {
        return values.layers.stream().anyMatch(layer -> !layer.material().equals(values.material));
    }

    /** {@return the cautions of a workpiece of layers, with those of their materials; empty for a plate} */
    public List<Caution> cautions() {
        if (values.layers.isEmpty()) {
            return List.of();
        }
        Set<Caution> all = new LinkedHashSet<>();
        all.add(Caution.warning(Message.of(
                "stack",
                "clamp the stack without gaps: in a gap the jet spreads, and the sheets below are cut worse; pierce it"
                        + " with care, as water between the sheets can separate or bend them")));
        values.layers.forEach(layer -> all.addAll(layer.material().cautions()));
        return List.copyOf(all);
    }

    /**
     * {@return the material; of layers of several materials one with their common machinability number, mean density and most
     *     delicate class}
     */
    public Material material() {
        return values.material;
    }

    /** {@return the thickness; of layers the total} */
    public Quantity<Length> thickness() {
        return Kind.LENGTH.of(values.thicknessM);
    }

    /** {@return the thickness, in m} */
    public double thicknessSi() {
        return values.thicknessM;
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("workpiece")
                .put("material", values.material)
                .put("thickness", Kind.LENGTH, values.thicknessM);
        if (!values.layers.isEmpty()) {
            description.put("layers", values.layers);
        }
        return description.map();
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
        if (hasSeveralMaterials()) {
            return QuantityText.forPeople(Kind.LENGTH, values.thicknessM) + " of " + values.layers.size() + " layers";
        }
        return QuantityText.forPeople(Kind.LENGTH, values.thicknessM) + " of " + values.material.name()
                + (values.layers.isEmpty() ? "" : " in " + values.layers.size() + " sheets");
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
