package dev.waterjet.feed;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Collections;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.TreeMap;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;

/**
 * Flow strengths of materials under the impact of particles, by the id of the material. Immutable.
 *
 * <p>The standard table takes a fourteenth of Young's modulus, &sigma;<sub>f</sub> = E/14 (Hashish 1989, from memory), for the
 * ductile metals of {@link Materials#standard()}, whose moduli are those of handbooks at room temperature (from memory).
 */
public final class FlowStrengths implements HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double MODULUS_OVER_STRENGTH = 14;

    private static final Evidence EVIDENCE = Evidence.of(
                    EvidenceGrade.FROM_MEMORY, Source.of("Hashish, J. Eng. Mater. Technol. 111 (1989) 154-162"))
            .withNote("sigma_f = E/14; moduli of common handbooks, from memory.");

    /** Group of the ductile materials that are no metals. */
    private static final String PLASTIC = "plastic";

    private static final FlowStrengths STANDARD = new FlowStrengths(new Values(ofCatalogue()));

    /** Checked content, and the serial form. */
    private record Values(Map<String, Double> strengthsPa) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Map<String, Double> checked = new TreeMap<>();
            Map.copyOf(strengthsPa)
                    .forEach((id, strength) ->
                            checked.put(id, Require.positive("flow strength", strength, Units.MEGAPASCAL)));
            strengthsPa = Collections.unmodifiableMap(checked);
        }

        private Object readResolve() {
            return new FlowStrengths(this);
        }
    }

    private final transient Values values;

    private FlowStrengths(Values values) {
        this.values = values;
    }

    private static Map<String, Double> ofCatalogue() {
        Map<String, Double> strengths = new TreeMap<>();
        for (Material material : Materials.standard().all()) {
            if (material.materialClass() == MaterialClass.DUCTILE
                    && !material.group().equals(PLASTIC)) {
                material.youngsModulus()
                        .ifPresent(modulus ->
                                strengths.put(material.id(), Kind.PRESSURE.si(modulus) / MODULUS_OVER_STRENGTH));
            }
        }
        return strengths;
    }

    /** {@return the standard table: ductile metals by a fourteenth of Young's modulus} */
    public static FlowStrengths standard() {
        return STANDARD;
    }

    /**
     * Returns this table with the flow strength of a material, added or changed.
     *
     * @param material material
     * @param strength its flow strength, above 0
     * @return the table
     */
    public FlowStrengths with(Material material, Quantity<Pressure> strength) {
        Objects.requireNonNull(material, "material");
        Map<String, Double> more = new TreeMap<>(values.strengthsPa);
        more.put(material.id(), Kind.PRESSURE.si(Objects.requireNonNull(strength, "strength")));
        return new FlowStrengths(new Values(more));
    }

    /**
     * Returns the flow strength of a material as a number.
     *
     * @param material material
     * @return the strength in Pa; empty if the table has none
     */
    public OptionalDouble strengthSi(Material material) {
        Double strength = values.strengthsPa.get(
                Objects.requireNonNull(material, "material").id());
        return strength == null ? OptionalDouble.empty() : OptionalDouble.of(strength);
    }

    @Override
    public Evidence evidence() {
        return EVIDENCE;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FlowStrengths that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "flow strengths of " + String.join(", ", values.strengthsPa.keySet());
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
