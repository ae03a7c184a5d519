package dev.waterjet.material;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Material that stands for layers of several materials. */
final class LayerMaterial {

    /** From the most robust to the most delicate. */
    private static final List<MaterialClass> DELICACY =
            List.of(MaterialClass.DUCTILE, MaterialClass.SOFT, MaterialClass.BRITTLE, MaterialClass.LAMINATED);

    private LayerMaterial() {}

    /**
     * The material of the layers if they have one; else one by {@code H/N = sum h_i/N_i} (derived: exact where the depth of a cut is
     * proportional to the machinability number).
     */
    static Material of(List<Workpiece> layers) {
        Material first = layers.get(0).material();
        if (layers.stream().allMatch(layer -> layer.material().equals(first))) {
            return first;
        }
        double thickness = layers.stream().mapToDouble(Workpiece::thicknessSi).sum();
        double shares = 0;
        double uncertainty = 0;
        for (Workpiece layer : layers) {
            double share = layer.thicknessSi() / layer.material().machinabilitySi();
            shares += share;
            uncertainty += share * layer.material().relativeUncertainty();
        }
        String names =
                layers.stream().map(layer -> layer.material().name()).distinct().collect(Collectors.joining(" and "));
        return Material.of(
                "layers",
                "layers of " + names,
                thickness / shares,
                uncertainty / shares,
                materialClass(layers),
                Evidence.of(EvidenceGrade.DERIVED, Source.of("machinability numbers of the layers")),
                facts(layers, thickness));
    }

    private static MaterialClass materialClass(List<Workpiece> layers) {
        return layers.stream()
                .map(layer -> layer.material().materialClass())
                .max(Comparator.comparingInt(DELICACY::indexOf))
                .orElseThrow();
    }

    private static MaterialFacts facts(List<Workpiece> layers, double thicknessM) {
        return new MaterialFacts(
                "layers", List.of(), 0, "", density(layers, thicknessM), null, weakest(layers), 0, "", "");
    }

    private static @Nullable Double density(List<Workpiece> layers, double thicknessM) {
        double mass = 0;
        for (Workpiece layer : layers) {
            Double density = layer.material().facts().densityKgPerM3();
            if (density == null) {
                return null;
            }
            mass += density * layer.thicknessSi();
        }
        return mass / thicknessM;
    }

    /** The least strength of the delicate layers; unknown if one of them is. */
    private static @Nullable Double weakest(List<Workpiece> layers) {
        Double weakest = null;
        for (Workpiece layer : layers) {
            MaterialClass materialClass = layer.material().materialClass();
            if (materialClass == MaterialClass.BRITTLE || materialClass == MaterialClass.LAMINATED) {
                Double strength = layer.material().facts().strengthPa();
                if (strength == null) {
                    return null;
                }
                weakest = weakest == null ? strength : Math.min(weakest, strength);
            }
        }
        return weakest;
    }
}
