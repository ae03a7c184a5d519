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
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.quantity.Dimensionless;

/**
 * A material, as the jet meets it.
 *
 * <p>The machinability number N_m is an empirical measure of how readily a material is cut: hardened tool steel has about
 * 80, soft pine about 2600 (Zeng, Kim, Wallace 1992). The cut's speed goes with N_m to the power 1.15. Its relative
 * standard uncertainty here is a judgement by how surely the number was recalled; a shop that fits its own number
 * replaces it.
 */
public final class Material implements Described, HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    /** Relative uncertainty from which a machinability number draws a caution. */
    private static final double UNSURE = 0.25;

    private final String id;
    private final String name;
    private final double machinability;
    private final double relativeUncertainty;
    private final MaterialClass materialClass;
    private final Evidence evidence;
    private final List<Caution> cautions;

    private Material(
            String id, String name, double machinability, double relativeUncertainty, MaterialClass materialClass, Evidence evidence) {
        if (!isId(id)) {
            throw new TextException(
                    "\"" + id + "\" is no id of a material: use lower-case letters and digits, parted by hyphens");
        }
        this.id = id;
        this.name = Objects.requireNonNull(name, "name");
        this.machinability = Require.positive("machinability of " + id, machinability, Units.ONE);
        this.relativeUncertainty =
                Require.notNegative("uncertainty of the machinability of " + id, relativeUncertainty, Units.PERCENT);
        this.materialClass = Objects.requireNonNull(materialClass, "materialClass");
        this.evidence = Objects.requireNonNull(evidence, "evidence");
        this.cautions = relativeUncertainty < UNSURE
                ? List.of()
                : List.of(Caution.notice(
                        "unsure-machinability",
                        "the machinability of " + name + " is known to about "
                                + QuantityText.round(100 * relativeUncertainty, 2) + " % only; make test cuts"));
    }

    /** Lower-case letters and digits, parted by single hyphens. */
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
     * A material whose machinability the caller states.
     *
     * @param id id in lower-case letters and digits, parted by hyphens
     * @param machinability machinability number, above zero
     * @param relativeUncertainty relative standard uncertainty of that number: 0.1 for 10 percent
     * @param materialClass how it behaves
     * @return the material, with the evidence "assumed"
     */
    public static Material of(String id, double machinability, double relativeUncertainty, MaterialClass materialClass) {
        return new Material(
                id,
                id.replace('-', ' '),
                machinability,
                relativeUncertainty,
                materialClass,
                Evidence.of(EvidenceGrade.ASSUMED, Source.of("stated by the caller")));
    }

    /**
     * This material under another name for people.
     *
     * @param name name as people say it
     * @return the material with that name
     */
    public Material withName(String name) {
        return new Material(id, name, machinability, relativeUncertainty, materialClass, evidence);
    }

    /**
     * This material with another machinability, as from a fit of test cuts.
     *
     * @param machinability machinability number, above zero
     * @param relativeUncertainty its relative standard uncertainty
     * @param evidence what speaks for it
     * @return the material with that number
     */
    public Material withMachinability(double machinability, double relativeUncertainty, Evidence evidence) {
        return new Material(id, name, machinability, relativeUncertainty, materialClass, evidence);
    }

    /**
     * Id of the material in a catalogue.
     *
     * @return lower-case letters and digits, parted by hyphens
     */
    public String id() {
        return id;
    }

    /**
     * Name as people say it.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Machinability number with its uncertainty.
     *
     * @return an estimate of the number
     */
    public Estimate<Dimensionless> machinability() {
        return Estimate.withinFactor(Kind.RATIO, machinability, relativeUncertainty, cautions);
    }

    /**
     * Machinability number.
     *
     * @return the number
     */
    public double machinabilitySi() {
        return machinability;
    }

    /**
     * Relative standard uncertainty of the machinability number.
     *
     * @return the ratio
     */
    public double relativeUncertainty() {
        return relativeUncertainty;
    }

    /**
     * How the material behaves.
     *
     * @return the materialClass
     */
    public MaterialClass materialClass() {
        return materialClass;
    }

    /**
     * What the reader of a result on this material must know.
     *
     * @return the cautions; empty if there are none
     */
    public List<Caution> cautions() {
        return cautions;
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("material")
                .put("id", id)
                .put("name", name)
                .put("machinability", machinability)
                .put("relative_uncertainty", relativeUncertainty)
                .put("materialClass", materialClass)
                .put("evidence", evidence)
                .put("cautions", cautions)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Material that
                && id.equals(that.id)
                && name.equals(that.name)
                && machinability == that.machinability
                && relativeUncertainty == that.relativeUncertainty
                && materialClass == that.materialClass
                && evidence.equals(that.evidence);
    }

    @Override
    public int hashCode() {
        return Objects.hash(id, name, machinability, relativeUncertainty, materialClass, evidence);
    }

    @Override
    public String toString() {
        return id + " (machinability " + QuantityText.round(machinability, 4) + ")";
    }
}
