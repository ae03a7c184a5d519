package dev.waterjet.surface;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.quality.Iso9013;
import dev.waterjet.quality.QualityIndexTable;
import dev.waterjet.quality.QualityProbabilities;
import java.io.Serializable;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Predicted cut surface: its roughness, its walls, its cut quality, and the ranges of ISO 9013 that it meets, where the parties
 * agree on that standard.
 *
 * @param roughness roughness, with the kerf to which it belongs
 * @param indices quality index that each cut quality requires
 */
public record CutSurface(SurfaceRoughness roughness, QualityIndexTable indices) implements Described, Serializable {

    /**
     * Checks the components.
     *
     * @param roughness roughness, with the kerf to which it belongs
     * @param indices quality index that each cut quality requires
     */
    public CutSurface {
        Objects.requireNonNull(roughness, "roughness");
        Objects.requireNonNull(indices, "indices");
    }

    /** {@return the kerf: widths, taper and lag} */
    public Kerf kerf() {
        return roughness.kerf();
    }

    /** {@return the probability of each cut quality} */
    public QualityProbabilities quality() {
        Estimate<Length> depth = kerf().separationDepth();
        return new QualityProbabilities(
                Estimate.withinFactor(Kind.RATIO, kerf().index(), depth.relativeUncertainty(), depth.cautions()),
                indices);
    }

    /** {@return the ranges of ISO 9013 for this thickness} */
    public Iso9013 standard() {
        return Iso9013.forThickness(kerf().thickness());
    }

    /** {@return the perpendicularity tolerance u of ISO 9013 of an upright head, over the height that the standard measures} */
    public Estimate<Length> perpendicularity() {
        return kerf().wallDeviation(standard().edgeHeight());
    }

    /** {@return the mean profile height Rz5 where it is at its maximum: as near to the exit as ISO 9013 measures u} */
    public Estimate<Length> profileHeight() {
        double edge = Kind.LENGTH.si(standard().edgeHeight());
        Quantity<Length> depth = Kind.LENGTH.of(Kind.LENGTH.si(kerf().thickness()) - edge);
        return roughness.rzAt(depth);
    }

    /** {@return the range of perpendicularity by the best value of u: 1, the finest, to 5; empty beyond} */
    public OptionalInt perpendicularityRange() {
        return standard().perpendicularityRange(perpendicularity().value());
    }

    /** {@return the range of profile height by the best value of Rz5: 1, the finest, to 4; empty beyond} */
    public OptionalInt profileHeightRange() {
        return standard().profileHeightRange(profileHeight().value());
    }

    /** {@return the cautions of kerf and roughness, and that the standard applies by agreement} */
    public List<Caution> cautions() {
        Set<Caution> all = new LinkedHashSet<>(kerf().cautions());
        all.addAll(roughness.cautions());
        all.add(Iso9013.byAgreement());
        return List.copyOf(all);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("cut surface")
                .put("roughness", roughness)
                .put("indices", indices.toString())
                .put("quality", quality())
                .put("perpendicularity", perpendicularity())
                .put("profile_height", profileHeight())
                .map();
    }

    @Override
    public String toString() {
        return "cut surface of a " + kerf() + ", " + roughness;
    }
}
