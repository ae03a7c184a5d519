package dev.waterjet.toolpath;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Where a contour is pierced and entered, the whole path with its leads, and what the checks of the place say. */
public final class Lead implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final Point pierce;
    private final Point entry;
    private final Contour path;
    private final List<Finding> findings;

    public Lead(Point pierce, Point entry, Contour path, List<Finding> findings) {
        this.pierce = pierce;
        this.entry = entry;
        this.path = path;
        this.findings = List.copyOf(findings);
    }

    /**
     * Where the jet pierces.
     *
     * @return the middle of the pierced hole
     */
    public Point pierce() {
        return pierce;
    }

    /**
     * Where the jet meets the contour, and leaves it again.
     *
     * @return the point of the contour
     */
    public Point entry() {
        return entry;
    }

    /**
     * The whole path: a straight piece and an arc into the contour, all the way round, an arc out of it.
     *
     * @return the open path, whose leads are so marked
     */
    public Contour path() {
        return path;
    }

    /**
     * What the checks say.
     *
     * @return one finding for each check
     */
    public List<Finding> findings() {
        return findings;
    }

    /**
     * Whether every check is met.
     *
     * @return true if all is well
     */
    public boolean isGood() {
        return findings.stream().allMatch(Finding::isSatisfied);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("lead")
                .put("pierce", pierce)
                .put("entry", entry)
                .put("path", path)
                .put("findings", findings)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Lead that && path.equals(that.path) && findings.equals(that.findings);
    }

    @Override
    public int hashCode() {
        return Objects.hash(path, findings);
    }

    @Override
    public String toString() {
        return "lead from " + pierce + " to " + entry;
    }
}
