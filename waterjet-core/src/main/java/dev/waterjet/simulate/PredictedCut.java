package dev.waterjet.simulate;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Predicted cut along one contour of a part.
 *
 * @param map deviations along the contour and over the depth
 * @param places largest gouge and largest excess of material at each level, against the tolerance of the edge
 * @param findings whether the part is separated everywhere, and whether each level is within its tolerance
 * @param cautions reasons why the prediction can be wrong
 */
public record PredictedCut(DeviationMap map, List<CutPlace> places, List<Finding> findings, List<Caution> cautions)
        implements Described {

    /**
     * Checks the components.
     *
     * @param map deviations along the contour and over the depth
     * @param places largest gouge and largest excess of material at each level
     * @param findings findings
     * @param cautions cautions
     */
    public PredictedCut {
        Objects.requireNonNull(map, "map");
        places = List.copyOf(places);
        findings = List.copyOf(findings);
        cautions = List.copyOf(cautions);
    }

    /** {@return the predicted edge of the part near the top side, an open polyline; empty if nothing is cut} */
    public Optional<Contour> topOutline() {
        return map.outline(0);
    }

    /** {@return the predicted edge of the part at the bottom side, an open polyline; empty if nothing is cut} */
    public Optional<Contour> bottomOutline() {
        return map.outline(map.depths().size() - 1);
    }

    /** {@return whether the part comes free everywhere at all depths} */
    public boolean isSeparated() {
        return findings.stream()
                .allMatch(finding -> finding.isSatisfied() || !finding.code().equals("predicted-separation"));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("predicted cut")
                .put("contour", map.contour().name())
                .put("points", map.size())
                .put("places", places)
                .put("findings", findings)
                .put("cautions", cautions)
                .map();
    }

    @Override
    public String toString() {
        return "predicted cut: " + map + (isSeparated() ? "" : ", not separated");
    }
}
