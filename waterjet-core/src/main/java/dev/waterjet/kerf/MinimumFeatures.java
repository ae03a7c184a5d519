package dev.waterjet.kerf;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Minimum features that a kerf can give a part. Derived from its widths; the web is common practice, no source.
 *
 * @param kerf the kerf
 */
public record MinimumFeatures(Kerf kerf) implements Described, Serializable {

    private static final Caution WEB_BY_PRACTICE = Caution.notice(Message.of(
            "web-by-practice",
            "a web at least as thick as the kerf is wide is common practice without a source; brittle and layered"
                    + " materials need more"));

    private static final Caution PIERCE_WIDENS = Caution.notice(Message.of(
            "pierce-widens", "a pierced hole grows while the jet dwells; the width of the kerf is its minimum size"));

    /**
     * Checks the component.
     *
     * @param kerf the kerf
     */
    public MinimumFeatures {
        Objects.requireNonNull(kerf, "kerf");
    }

    /**
     * Returns the minimum features of a kerf.
     *
     * @param kerf the kerf
     * @return its minimum features
     */
    public static MinimumFeatures of(Kerf kerf) {
        return new MinimumFeatures(kerf);
    }

    /** {@return the minimum inner radius: half of the maximum width} */
    public Estimate<Length> innerRadius() {
        return kerf.minimumInnerRadius();
    }

    /** {@return the minimum width of a slot: the maximum width} */
    public Estimate<Length> slot() {
        return kerf.minimumSlotWidth();
    }

    /** {@return the minimum thickness of a web between two kerfs: the maximum width once more} */
    public Estimate<Length> web() {
        return kerf.maximumWidth().with(List.of(WEB_BY_PRACTICE));
    }

    /** {@return the minimum diameter of a hole that is only pierced: the maximum width} */
    public Estimate<Length> piercedHole() {
        return kerf.maximumWidth().with(List.of(PIERCE_WIDENS));
    }

    /** {@return the minimum diameter of a hole that is cut round and leaves a slug: twice the maximum width} */
    public Estimate<Length> trepannedHole() {
        Estimate<Length> width = kerf.maximumWidth();
        return Estimate.of(Kind.LENGTH, 2 * width.si(), 2 * width.standardUncertaintySi())
                .with(width.cautions());
    }

    /**
     * Returns the thickness that remains between two kerfs where they are widest.
     *
     * @param spacing distance between the two tool paths, 0 or more
     * @return the thickness of the web; 0 or less where the kerfs overlap
     */
    public Estimate<Length> remainingWeb(Quantity<Length> spacing) {
        Objects.requireNonNull(spacing, "spacing");
        double spacingM = Require.notNegative("distance between the paths", Kind.LENGTH.si(spacing), Units.MILLIMETRE);
        Estimate<Length> width = kerf.maximumWidth();
        return Estimate.of(Kind.LENGTH, spacingM - width.si(), width.standardUncertaintySi())
                .with(width.cautions());
    }

    /**
     * Returns whether two kerfs overlap at some depth, by the best value of their width.
     *
     * @param spacing distance between the two tool paths, 0 or more
     * @return true if no web remains between them
     */
    public boolean kerfsOverlapAt(Quantity<Length> spacing) {
        Objects.requireNonNull(spacing, "spacing");
        return remainingWeb(spacing).si() <= 0;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("minimum features")
                .put("kerf", kerf)
                .put("inner_radius", innerRadius())
                .put("slot", slot())
                .put("web", web())
                .put("pierced_hole", piercedHole())
                .put("trepanned_hole", trepannedHole())
                .map();
    }

    @Override
    public String toString() {
        return "minimum slot " + QuantityText.forPeople(Kind.LENGTH, slot().si()) + ", inner radius "
                + QuantityText.forPeople(Kind.LENGTH, innerRadius().si());
    }
}
