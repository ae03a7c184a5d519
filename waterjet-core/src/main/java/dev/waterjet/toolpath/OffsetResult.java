package dev.waterjet.toolpath;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Finding;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Paths of the jet along a contour.
 *
 * @param paths the paths; 1 or more; more than one only where narrow places split them
 * @param unreachedLength length of the contour at which the jet does not fit, without the inner corners that it rounds
 * @param findings {@code inner-corner} for each corner that the jet rounds, {@code jet-does-not-fit} for each narrow place
 */
public record OffsetResult(List<ToolPath> paths, Quantity<Length> unreachedLength, List<Finding> findings)
        implements Described {

    /**
     * Copies the lists.
     *
     * @param paths the paths
     * @param unreachedLength length of the contour at which the jet does not fit
     * @param findings one for each inner corner and narrow place
     */
    public OffsetResult {
        Objects.requireNonNull(findings, "findings");
        Objects.requireNonNull(paths, "paths");
        Objects.requireNonNull(unreachedLength, "unreachedLength");
        paths = List.copyOf(paths);
        Require.atLeast("number of paths", paths.size(), 1, Units.ONE, "");
        findings = List.copyOf(findings);
    }

    /** {@return the longest path} */
    public ToolPath path() {
        ToolPath longest = paths.get(0);
        for (ToolPath path : paths) {
            longest = path.contour().lengthSi() > longest.contour().lengthSi() ? path : longest;
        }
        return longest;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("offset")
                .put("paths", paths)
                .put("unreached_length", Kind.LENGTH, Kind.LENGTH.si(unreachedLength))
                .put("findings", findings)
                .map();
    }
}
