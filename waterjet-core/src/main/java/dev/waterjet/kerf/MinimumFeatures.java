package dev.waterjet.kerf;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** The smallest features that one kerf can give a part. Derived from its widths; the web is common practice, no source. */
public final class MinimumFeatures implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final Caution WEB_BY_PRACTICE = Caution.notice(
            "web-by-practice",
            "that a web should be no thinner than the kerf is wide is common practice without a source; brittle and"
                    + " layered materials need more");

    private static final Caution PIERCE_WIDENS = Caution.notice(
            "pierce-widens", "a pierced hole grows with the dwell of the jet: the width of the kerf is its least size");

    private final Kerf kerf;

    private MinimumFeatures(Kerf kerf) {
        this.kerf = kerf;
    }

    /**
     * The smallest features of a kerf.
     *
     * @param kerf the kerf
     * @return its smallest features
     */
    public static MinimumFeatures of(Kerf kerf) {
        return new MinimumFeatures(kerf);
    }

    /**
     * Smallest inner radius: half of the largest width.
     *
     * @return the radius
     */
    public Estimate<Length> innerRadius() {
        return kerf.minimumInnerRadius();
    }

    /**
     * Narrowest slot: the largest width.
     *
     * @return the width of the slot
     */
    public Estimate<Length> slot() {
        return kerf.smallestSlot();
    }

    /**
     * Thinnest web between two kerfs: the largest width once more.
     *
     * @return the thickness of the web
     */
    public Estimate<Length> web() {
        return kerf.largestWidth().with(List.of(WEB_BY_PRACTICE));
    }

    /**
     * Diameter of a hole that is pierced and left: at least the largest width.
     *
     * @return the diameter
     */
    public Estimate<Length> piercedHole() {
        return kerf.largestWidth().with(List.of(PIERCE_WIDENS));
    }

    /**
     * Diameter from which on a hole cut round its edge leaves a slug: twice the largest width.
     *
     * @return the diameter
     */
    public Estimate<Length> trepannedHole() {
        Estimate<Length> width = kerf.largestWidth();
        return Estimate.of(Kind.LENGTH, 2 * width.si(), 2 * width.standardUncertaintySi())
                .with(width.cautions());
    }

    /**
     * What is left between two kerfs where they come nearest, at their widest place.
     *
     * @param spacing distance between the two paths, zero or more
     * @return the thickness of the web; zero or less where the kerfs touch
     */
    public Estimate<Length> remainingWeb(Quantity<Length> spacing) {
        double spacingM = Require.notNegative("distance between the paths", Kind.LENGTH.si(spacing), Units.MILLIMETRE);
        Estimate<Length> width = kerf.largestWidth();
        return Estimate.of(Kind.LENGTH, spacingM - width.si(), width.standardUncertaintySi())
                .with(width.cautions());
    }

    /**
     * Whether two kerfs touch somewhere over the depth, by the best value of their width.
     *
     * @param spacing distance between the two paths, zero or more
     * @return true if nothing is left between them
     */
    public boolean kerfsOverlapAt(Quantity<Length> spacing) {
        return remainingWeb(spacing).si() <= 0;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("smallest features")
                .put("inner_radius", innerRadius())
                .put("slot", slot())
                .put("web", web())
                .put("pierced_hole", piercedHole())
                .put("trepanned_hole", trepannedHole())
                .map();
    }

    @Override
    public String toString() {
        return "smallest features of a " + kerf;
    }
}
