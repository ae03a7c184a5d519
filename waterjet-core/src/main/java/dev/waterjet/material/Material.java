package dev.waterjet.material;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.quantity.Dimensionless;

/**
 * Workpiece material with its machinability number.
 *
 * <p>The machinability number <i>N</i><sub>m</sub> is an empirical measure of how fast a material can be cut: hardened tool
 * steel has about 80, soft pine about 2600 (Zeng, Kim, Wallace 1992). The feed rate is proportional to
 * <i>N</i><sub>m</sub><sup>1.15</sup>. The relative standard uncertainty of the standard numbers is a judgement of how surely
 * each was recalled; a number fitted to test cuts replaces it.
 */
public final class Material implements Described, HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    /** Relative uncertainty from which a machinability number draws a caution. */
    private static final double UNCERTAIN = 0.25;

    /** Checked content, and the serial form. */
    private record Values(
            String id,
            String name,
            double machinability,
            double relativeUncertainty,
            MaterialClass materialClass,
            Evidence evidence)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            if (!isId(id)) {
                throw new TextException(Message.of(
                                "material-id",
                                "invalid material id {id}; use lower-case letters and digits, separated by single"
                                        + " hyphens")
                        .withInput("id", id));
            }
            Objects.requireNonNull(name, "name");
            machinability = Require.positive("machinability number", machinability, Units.ONE);
            relativeUncertainty = Require.notNegative(
                    "relative uncertainty of the machinability number", relativeUncertainty, Units.PERCENT);
            Objects.requireNonNull(materialClass, "materialClass");
            Objects.requireNonNull(evidence, "evidence");
        }

        private Object readResolve() {
            return new Material(this);
        }

        Values withName(String other) {
            return new Values(id, other, machinability, relativeUncertainty, materialClass, evidence);
        }

        Values withMachinability(double number, double uncertainty, Evidence source) {
            return new Values(id, name, number, uncertainty, materialClass, source);
        }
    }

    private final transient Values values;

    private Material(Values values) {
        this.values = values;
    }

    /** Lower-case letters and digits, separated by single hyphens. */
    private static boolean isId(String text) {
        char before = '-';
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean isSign = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
            if (!isSign && (c != '-' || before == '-')) {
                return false;
            }
            before = c;
        }
        return before != '-';
    }

    /**
     * Returns a material with the machinability number of the caller.
     *
     * @param id id in lower-case letters and digits, separated by single hyphens
     * @param machinability machinability number, above 0
     * @param relativeUncertainty relative standard uncertainty of that number, 0 or more; 0.1 is 10 %
     * @param materialClass behaviour of the material
     * @return the material, with the evidence grade "assumed"
     * @throws dev.waterjet.measure.WaterjetException if the id or a number is invalid
     */
    public static Material of(
            String id, double machinability, double relativeUncertainty, MaterialClass materialClass) {
        return new Material(new Values(
                id,
                id.replace('-', ' '),
                machinability,
                relativeUncertainty,
                materialClass,
                Evidence.of(EvidenceGrade.ASSUMED, Source.of("stated by the caller"))));
    }

    /** Reads all values at once, for a catalogue. */
    static Material of(
            String id,
            String name,
            double machinability,
            double relativeUncertainty,
            MaterialClass materialClass,
            Evidence evidence) {
        return new Material(new Values(id, name, machinability, relativeUncertainty, materialClass, evidence));
    }

    /**
     * Returns this material with another name for people.
     *
     * @param name name for people
     * @return the material with that name
     */
    public Material withName(String name) {
        return new Material(values.withName(name));
    }

    /**
     * Returns this material with another machinability number, such as one fitted to test cuts.
     *
     * @param machinability machinability number, above 0
     * @param relativeUncertainty its relative standard uncertainty, 0 or more
     * @param evidence evidence for it
     * @return the material with that number
     */
    public Material withMachinability(double machinability, double relativeUncertainty, Evidence evidence) {
        return new Material(values.withMachinability(machinability, relativeUncertainty, evidence));
    }

    /**
     * {@return the id in a catalogue: lower-case letters and digits, separated by single hyphens}
     */
    public String id() {
        return values.id;
    }

    /**
     * {@return the name for people}
     */
    public String name() {
        return values.name;
    }

    /**
     * {@return the machinability number with its uncertainty}
     */
    public Estimate<Dimensionless> machinability() {
        return Estimate.withinFactor(Kind.RATIO, values.machinability, values.relativeUncertainty, cautions());
    }

    /**
     * {@return the machinability number}
     */
    public double machinabilitySi() {
        return values.machinability;
    }

    /**
     * {@return the relative standard uncertainty of the machinability number}
     */
    public double relativeUncertainty() {
        return values.relativeUncertainty;
    }

    /**
     * {@return the behaviour of the material}
     */
    public MaterialClass materialClass() {
        return values.materialClass;
    }

    /**
     * {@return the cautions for results on this material; empty if there are none}
     */
    public List<Caution> cautions() {
        // created on request: few callers use them, and the first message of a JVM loads the unit tables
        return values.relativeUncertainty < UNCERTAIN ? List.of() : List.of(uncertain());
    }

    private Caution uncertain() {
        return Caution.notice(Message.of(
                        "unsure-machinability",
                        "the machinability number of {material} has a relative uncertainty of {relative_uncertainty};"
                                + " make test cuts")
                .with("material", values.name)
                .with("relative_uncertainty", Kind.RATIO, values.relativeUncertainty, Units.PERCENT));
    }

    @Override
    public Evidence evidence() {
        return values.evidence;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("material")
                .put("id", values.id)
                .put("name", values.name)
                .put("machinability", values.machinability)
                .put("relative_uncertainty", values.relativeUncertainty)
                .put("class", values.materialClass)
                .put("evidence", values.evidence)
                .put("cautions", cautions())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Material that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.name + ", machinability number " + QuantityText.round(values.machinability, 4);
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
