package dev.waterjet.material;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import java.util.ArrayList;
import java.util.List;

/** Cautions of a material. */
final class MaterialCautions {

    /** Standard deviations of a 95 % interval. */
    private static final double COVERAGE = 1.96;

    private MaterialCautions() {}

    static List<Caution> of(Material material, MaterialFacts facts) {
        List<Caution> all = new ArrayList<>();
        double factor = Math.round(10 * Math.exp(COVERAGE * material.relativeUncertainty())) / 10.0;
        if (!facts.rule().isEmpty()) {
            all.add(Caution.notice(Message.of(
                            "assumed-machinability",
                            "the machinability number of {material} is assumed by the class rule {rule}, within a"
                                    + " factor of {factor} (95 %); make test cuts")
                    .with("material", material.name())
                    .with("rule", facts.rule())
                    .with("factor", factor)));
        } else if (material.relativeUncertainty() >= Material.UNCERTAIN) {
            all.add(Caution.notice(Message.of(
                            "unsure-machinability",
                            "the machinability number of {material} has a relative uncertainty of"
                                    + " {relative_uncertainty}, within a factor of {factor} (95 %); make test cuts")
                    .with("material", material.name())
                    .with("relative_uncertainty", Kind.RATIO, material.relativeUncertainty(), Units.PERCENT)
                    .with("factor", factor)));
        }
        if (facts.waterAlone().equals("yes")) {
            all.add(Caution.notice(
                    Message.of("water-alone", "{material} is usually cut by water alone; no abrasive may be required")
                            .with("material", material.name())));
        }
        if (!facts.hazard().isEmpty()) {
            all.add(Caution.warning(Message.of("material-hazard", "{material}: {hazard}")
                    .with("material", material.name())
                    .with("hazard", facts.hazard())));
        }
        return List.copyOf(all);
    }
}
