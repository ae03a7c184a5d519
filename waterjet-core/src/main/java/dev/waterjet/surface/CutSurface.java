package dev.waterjet.surface;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.quality.Iso9013;
import dev.waterjet.quality.QualityIndexTable;
import dev.waterjet.quality.QualityProbabilities;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * A face as predicted for one jet, workpiece and feed: its walls, its roughness, its grade, and the ranges of ISO 9013 that
 * it meets, where the parties agree on that standard.
 */
public final class CutSurface implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final Kerf kerf;
    private final SurfaceRoughness roughness;
    private final QualityIndexTable table;

    private CutSurface(Kerf kerf, SurfaceRoughness roughness, QualityIndexTable table) {
        this.kerf = kerf;
        this.roughness = roughness;
        this.table = table;
    }

    static CutSurface of(AbrasiveJet jet, Kerf kerf, RoughnessModel roughness, QualityIndexTable table) {
        return new CutSurface(kerf, roughness.roughness(jet, kerf), table);
    }

    /**
     * The kerf.
     *
     * @return widths, taper and lag
     */
    public Kerf kerf() {
        return kerf;
    }

    /**
     * The roughness.
     *
     * @return roughness down the face
     */
    public SurfaceRoughness roughness() {
        return roughness;
    }

    /**
     * Grade of the face, with the probability of each.
     *
     * @return the odds
     */
    public QualityProbabilities quality() {
        Estimate<Length> depth = kerf.separationDepth();
        return QualityProbabilities.of(
                Estimate.withinFactor(Kind.RATIO, kerf.index(), depth.relativeUncertainty(), depth.cautions()), table);
    }

    /**
     * The ranges of ISO 9013 for this thickness.
     *
     * @return the ranges
     */
    public Iso9013 standard() {
        return Iso9013.forThickness(kerf.thickness());
    }

    /**
     * Perpendicularity tolerance u over the height that ISO 9013 measures.
     *
     * @return u of an upright head
     */
    public Estimate<Length> perpendicularity() {
        return kerf.wallDeviation(standard().edgeHeight());
    }

    /**
     * Mean height of the profile Rz5 where it is greatest: as near to the exit as ISO 9013 measures u.
     *
     * @return Rz5
     */
    public Estimate<Length> profileHeight() {
        double edge = Kind.LENGTH.si(standard().edgeHeight());
        Quantity<Length> depth = Kind.LENGTH.of(Kind.LENGTH.si(kerf.thickness()) - edge);
        return roughness.rzAt(depth);
    }

    /**
     * Range of perpendicularity by the best value of u.
     *
     * @return 1, the finest, to 5; nothing beyond
     */
    public OptionalInt perpendicularityRange() {
        return standard().perpendicularityRange(perpendicularity().value());
    }

    /**
     * Range of profile height by the best value of Rz5.
     *
     * @return 1, the finest, to 4; nothing beyond
     */
    public OptionalInt profileHeightRange() {
        return standard().profileHeightRange(profileHeight().value());
    }

    /**
     * What the reader must know.
     *
     * @return the cautions of kerf and roughness, and that the standard applies by agreement
     */
    public List<Caution> cautions() {
        List<Caution> all = new ArrayList<>(kerf.cautions());
        roughness.smoothZone().cautions().stream()
                .filter(caution -> !all.contains(caution))
                .forEach(all::add);
        all.add(Iso9013.byAgreement());
        return List.copyOf(all);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("cut face")
                .put("kerf", kerf)
                .put("roughness", roughness)
                .put("grade", quality())
                .put("perpendicularity", perpendicularity())
                .put("profile_height", profileHeight())
                .map();
    }

    @Override
    public String toString() {
        return "face of a " + kerf;
    }
}
