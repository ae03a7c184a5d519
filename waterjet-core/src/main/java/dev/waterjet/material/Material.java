package dev.waterjet.material;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.measure.Density;
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
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Pressure;

/**
 * Workpiece material with its machinability number.
 *
 * <p>The machinability number <i>N</i><sub>m</sub> is an empirical measure of how fast a material can be cut: hardened tool
 * steel has about 80, soft pine about 2600 (Zeng, Kim, Wallace 1992). The feed rate is proportional to
 * <i>N</i><sub>m</sub><sup>1.15</sup>. The relative standard uncertainty of a standard number has two parts: how surely it was
 * recalled, and the {@linkplain #materialSpread() spread of the material} itself; both are judgements. A number fitted to test
 * cuts replaces it.
 */
public final class Material implements Described, HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    /** Relative uncertainty from which a machinability number draws a caution. */
    static final double UNCERTAIN = 0.25;

    /** Checked content, and the serial form. */
    private record Values(
            String id,
            String name,
            double machinability,
            double relativeUncertainty,
            MaterialClass materialClass,
            Evidence evidence,
            MaterialFacts facts)
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
            Objects.requireNonNull(facts, "facts");
            if (facts.recall() > relativeUncertainty) {
                throw new TextException(Message.of(
                        "recall-above-uncertainty",
                        "the uncertainty of recall is a part of the relative uncertainty and cannot exceed it"));
            }
        }

        private Object readResolve() {
            return new Material(this);
        }

        Values withName(String other) {
            return new Values(id, other, machinability, relativeUncertainty, materialClass, evidence, facts);
        }

        Values withMachinability(double number, double uncertainty, Evidence source) {
            return new Values(id, name, number, uncertainty, materialClass, source, facts.withoutRule());
        }

        Values with(Evidence source, MaterialFacts other) {
            return new Values(id, name, machinability, relativeUncertainty, materialClass, source, other);
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
        Objects.requireNonNull(id, "id");
        return new Material(new Values(
                id,
                id.replace('-', ' '),
                machinability,
                relativeUncertainty,
                materialClass,
                Evidence.of(EvidenceGrade.ASSUMED, Source.of("stated by the caller")),
                MaterialFacts.NONE));
    }

    /** All values at once, for a catalogue. */
    static Material of(
            String id,
            String name,
            double machinability,
            double relativeUncertainty,
            MaterialClass materialClass,
            Evidence evidence,
            MaterialFacts facts) {
        return new Material(new Values(id, name, machinability, relativeUncertainty, materialClass, evidence, facts));
    }

    MaterialFacts facts() {
        return values.facts;
    }

    private Material with(Evidence evidence, MaterialFacts facts) {
        return new Material(values.with(evidence, facts));
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
     * Returns this material with its density.
     *
     * @param density density, above 0
     * @return the material with that density
     */
    public Material withDensity(Quantity<Density> density) {
        double kgPerM3 = Kind.DENSITY.si(Objects.requireNonNull(density, "density"));
        return with(values.evidence, values.facts.withDensity(kgPerM3));
    }

    /**
     * Returns this material with other names under which a catalogue finds it.
     *
     * @param aliases names, such as standard numbers
     * @return the material with those names in place of its earlier ones
     */
    public Material withAliases(List<String> aliases) {
        Objects.requireNonNull(aliases, "aliases");
        return with(values.evidence, values.facts.withAliases(aliases));
    }

    /** {@return the id in a catalogue: lower-case letters and digits, separated by single hyphens} */
    public String id() {
        return values.id;
    }

    /** {@return the name for people} */
    public String name() {
        return values.name;
    }

    /** {@return the other names: designations by EN, AISI and UNS, other spellings; empty if none is stated} */
    public List<String> aliases() {
        return values.facts.aliases();
    }

    /** {@return the group of materials to which it belongs, such as "stainless steel"; empty if none is stated} */
    public String group() {
        return values.facts.group();
    }

    /** {@return the density; empty if none is stated} */
    public Optional<Quantity<Density>> density() {
        return Optional.ofNullable(values.facts.densityKgPerM3()).map(Kind.DENSITY::of);
    }

    /** {@return Young's modulus; empty if none is stated} */
    public Optional<Quantity<Pressure>> youngsModulus() {
        return Optional.ofNullable(values.facts.modulusPa()).map(Kind.PRESSURE::of);
    }

    /**
     * {@return the strength that keeps the material whole when it is pierced: tensile strength of a brittle one, strength
     *     between the layers of a laminated one; empty if none is stated}
     */
    public Optional<Estimate<Pressure>> strength() {
        return Optional.ofNullable(values.facts.strengthPa())
                .map(pa -> Estimate.withinFactor(Kind.PRESSURE, pa, values.facts.strengthUncertainty(), List.of()));
    }

    /** {@return the machinability number with its uncertainty} */
    public Estimate<Dimensionless> machinability() {
        return Estimate.withinFactor(Kind.RATIO, values.machinability, values.relativeUncertainty, cautions());
    }

    /** {@return the machinability number} */
    public double machinabilitySi() {
        return values.machinability;
    }

    /** {@return the relative standard uncertainty of the machinability number} */
    public double relativeUncertainty() {
        return values.relativeUncertainty;
    }

    /**
     * {@return the part of the relative uncertainty that is the spread of the material itself, apart from how surely its
     *     number is recalled: recall and spread add in quadrature}
     */
    public double materialSpread() {
        double recall = values.facts.recall();
        return Math.sqrt((values.relativeUncertainty - recall) * (values.relativeUncertainty + recall));
    }

    /** {@return the behaviour of the material} */
    public MaterialClass materialClass() {
        return values.materialClass;
    }

    /** {@return the cautions for results on this material; empty if there are none} */
    public List<Caution> cautions() {
        // created on request: few callers use them, and the first message of a JVM loads the unit tables
        boolean isAssumed = !values.facts.rule().isEmpty();
        if (!isAssumed
                && values.relativeUncertainty < UNCERTAIN
                && values.facts.waterAlone().isEmpty()
                && values.facts.hazard().isEmpty()) {
            return List.of();
        }
        return MaterialCautions.of(this, values.facts);
    }

    @Override
    public Evidence evidence() {
        return values.evidence;
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("material")
                .put("id", values.id)
                .put("name", values.name)
                .put("machinability", values.machinability)
                .put("relative_uncertainty", values.relativeUncertainty)
                .put("class", values.materialClass)
                .put("group", values.facts.group())
                .put("aliases", values.facts.aliases())
                .put("material_spread", materialSpread())
                .put("evidence", values.evidence)
                .put("cautions", cautions());
        density().ifPresent(known -> description.put("density", Kind.DENSITY, Kind.DENSITY.si(known)));
        youngsModulus().ifPresent(known -> description.put("youngs_modulus", Kind.PRESSURE, Kind.PRESSURE.si(known)));
        strength().ifPresent(known -> description.put("strength", known));
        return description.map();
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
