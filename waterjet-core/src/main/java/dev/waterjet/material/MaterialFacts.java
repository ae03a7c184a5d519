package dev.waterjet.material;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Properties that a catalogue states of a material beside its machinability number.
 *
 * @param group kind of material in words, such as "stainless steel"; empty if not stated
 * @param aliases other names
 * @param recall part of the relative uncertainty that comes from memory alone
 * @param rule code of the class rule by which the machinability number is assumed; empty if it is not
 * @param densityKgPerM3 density in kg/m3; null if not stated
 * @param modulusPa Young's modulus in Pa; null if not stated
 * @param strengthPa strength that keeps the material whole in Pa; null if not stated
 * @param strengthUncertainty relative standard uncertainty of the strength
 * @param waterAlone use of water without abrasive: "yes", "thin", or empty for not usual
 * @param hazard danger of the material when it is cut, in words; empty if none is stated
 */
record MaterialFacts(
        String group,
        List<String> aliases,
        double recall,
        String rule,
        @Nullable Double densityKgPerM3,
        @Nullable Double modulusPa,
        @Nullable Double strengthPa,
        double strengthUncertainty,
        String waterAlone,
        String hazard)
        implements Serializable {

    private static final long serialVersionUID = 1L;

    static final MaterialFacts NONE = new MaterialFacts("", List.of(), 0, "", null, null, null, 0, "", "");

    MaterialFacts {
        Objects.requireNonNull(group, "group");
        aliases = List.copyOf(aliases);
        recall = Require.notNegative("uncertainty of recall", recall, Units.PERCENT);
        Objects.requireNonNull(rule, "rule");
        if (densityKgPerM3 != null) {
            densityKgPerM3 =
                    Require.positive("density of the material", densityKgPerM3, Units.KILOGRAM_PER_CUBIC_METRE);
        }
        if (modulusPa != null) {
            modulusPa = Require.positive("Young's modulus", modulusPa, Units.MEGAPASCAL);
        }
        if (strengthPa != null) {
            strengthPa = Require.positive("strength of the material", strengthPa, Units.MEGAPASCAL);
        }
        strengthUncertainty =
                Require.notNegative("relative uncertainty of the strength", strengthUncertainty, Units.PERCENT);
        Objects.requireNonNull(waterAlone, "waterAlone");
        Objects.requireNonNull(hazard, "hazard");
    }

    /** The same material with a number of its own: no class rule and no recall. */
    MaterialFacts withoutRule() {
        return new MaterialFacts(
                group, aliases, 0, "", densityKgPerM3, modulusPa, strengthPa, strengthUncertainty, waterAlone, hazard);
    }

    MaterialFacts withDensity(double kgPerM3) {
        return new MaterialFacts(
                group, aliases, recall, rule, kgPerM3, modulusPa, strengthPa, strengthUncertainty, waterAlone, hazard);
    }

    MaterialFacts withAliases(List<String> more) {
        return new MaterialFacts(
                group,
                more,
                recall,
                rule,
                densityKgPerM3,
                modulusPa,
                strengthPa,
                strengthUncertainty,
                waterAlone,
                hazard);
    }
}
