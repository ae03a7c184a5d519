package dev.waterjet.toolpath;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Pierce point and leads of one contour, with the whole path and the findings of every check.
 *
 * @param pierce middle of the pierced hole
 * @param entry point of the contour at which the cut starts and ends
 * @param toolPath path of the jet axis: lead-in, all the way round, lead-out
 * @param path the same along the edges of the part, for machines that offset the jet themselves (G41, G42); its first line
 *     switches the offset on
 * @param findings one for each check
 */
public record Lead(Point pierce, Point entry, ToolPath toolPath, Contour path, List<Finding> findings)
        implements Described {

    /**
     * Checks the components.
     *
     * @param pierce middle of the pierced hole
     * @param entry point of the contour at which the cut starts and ends
     * @param toolPath path of the jet axis
     * @param path path along the edges of the part
     * @param findings one for each check
     */
    public Lead {
        Objects.requireNonNull(findings, "findings");
        Objects.requireNonNull(pierce, "pierce");
        Objects.requireNonNull(entry, "entry");
        Objects.requireNonNull(toolPath, "toolPath");
        Objects.requireNonNull(path, "path");
        findings = List.copyOf(findings);
    }

    /** {@return whether every check is satisfied} */
    public boolean isSatisfied() {
        return findings.stream().allMatch(Finding::isSatisfied);
    }

    /**
     * {@return whether the kerf of pierce and leads stays clear of the part; other findings, such as a small radius, cost
     * quality only}
     */
    public boolean isClear() {
        return findings.stream()
                .filter(finding -> LeadTrial.isClearance(finding.code()))
                .allMatch(Finding::isSatisfied);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("lead")
                .put("pierce", pierce)
                .put("entry", entry)
                .put("tool_path", toolPath)
                .put("findings", findings)
                .map();
    }

    @Override
    public String toString() {
        return "lead from " + pierce + " to " + entry;
    }
}
