package dev.waterjet.toolpath;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Clearances that a cut requires: the shape of leads, the distance of the pierce point from the part, the material between
 * cuts. The values of {@link #of} are common practice without a source, but for the radius of leads: arcs above 3 mm leave a
 * smaller mark (Machines 11 (2023) 800). Each can be changed.
 */
public final class CuttingRules implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Radius of a pierced hole in kerf widths, common practice, no source: the jet turns back while it pierces. */
    private static final double PIERCED_RADIUS = 0.75;

    /** Clearance of a lead from the part beyond the kerf, in kerf widths; assumed. */
    private static final double MARGIN = 0.1;

    /** Checked content, and the serial form. */
    private record Values(
            double kerfM,
            double leadLengthM,
            double leadRadiusM,
            double pierceClearanceM,
            double cornerClearanceM,
            double minimumWebM,
            CutQuality leadQuality)
            implements Serializable {

        Values {
            kerfM = Require.positive("kerf width", kerfM, Units.MILLIMETRE);
            leadLengthM = Require.notNegative("length of the straight lead", leadLengthM, Units.MILLIMETRE);
            leadRadiusM = Require.notNegative("radius of the lead", leadRadiusM, Units.MILLIMETRE);
            pierceClearanceM = Require.atLeast(
                    "pierce clearance", pierceClearanceM, kerfM / 2, Units.MILLIMETRE, "half the kerf width");
            cornerClearanceM = Require.notNegative("corner clearance of a lead", cornerClearanceM, Units.MILLIMETRE);
            minimumWebM = Require.positive("minimum web", minimumWebM, Units.MILLIMETRE);
            Objects.requireNonNull(leadQuality, "leadQuality");
        }

        private Object readResolve() {
            return new CuttingRules(this);
        }
    }

    private final transient Values values;

    private CuttingRules(Values values) {
        this.values = values;
    }

    /**
     * Returns the default rules: leads of 3 mm with a radius of 3.5 mm at the feed of a separation cut; the pierce point farther
     * from the part than the pierced hole and half a kerf, 1.25 kerf widths; leads two kerf widths from a corner; webs of two
     * kerf widths or a quarter of the thickness.
     *
     * @param kerfWidth largest width of the kerf, above 0
     * @param plate thickness of the plate, above 0
     * @return the rules
     */
    public static CuttingRules of(Quantity<Length> kerfWidth, Quantity<Length> plate) {
        Objects.requireNonNull(kerfWidth, "kerfWidth");
        Objects.requireNonNull(plate, "plate");
        double kerf = Kind.LENGTH.si(kerfWidth);
        double thickness = Require.positive("thickness", Kind.LENGTH.si(plate), Units.MILLIMETRE);
        return new CuttingRules(new Values(
                kerf,
                0.003,
                0.0035,
                (PIERCED_RADIUS + 0.5) * kerf,
                2 * kerf,
                Math.max(2 * kerf, thickness / 4),
                CutQuality.VERY_COARSE));
    }

    /**
     * Returns these rules with other leads.
     *
     * @param straight length of the straight part, 0 or more
     * @param radius radius of the arc on which the jet meets its path, 0 or more; 0 for a straight entry
     * @return the rules with those leads
     */
    public CuttingRules withLead(Quantity<Length> straight, Quantity<Length> radius) {
        Objects.requireNonNull(radius, "radius");
        Objects.requireNonNull(straight, "straight");
        return new CuttingRules(new Values(
                values.kerfM,
                Kind.LENGTH.si(straight),
                Kind.LENGTH.si(radius),
                values.pierceClearanceM,
                values.cornerClearanceM,
                values.minimumWebM,
                values.leadQuality));
    }

    /**
     * Returns these rules with another cut quality of leads. A lead lies in scrap, so that a separation cut will do; a slower
     * lead starts the edge with less lag.
     *
     * @param quality cut quality that sets the feed of leads
     * @return the rules with that quality
     */
    public CuttingRules withLeadQuality(CutQuality quality) {
        Objects.requireNonNull(quality, "quality");
        return new CuttingRules(new Values(
                values.kerfM,
                values.leadLengthM,
                values.leadRadiusM,
                values.pierceClearanceM,
                values.cornerClearanceM,
                values.minimumWebM,
                quality));
    }

    /**
     * Returns these rules with another distance of the pierce point from the part.
     *
     * @param clearance distance from the middle of the pierced hole to every edge of the part, half a kerf width or more
     * @return the rules with that distance
     */
    public CuttingRules withPierceClearance(Quantity<Length> clearance) {
        Objects.requireNonNull(clearance, "clearance");
        return new CuttingRules(new Values(
                values.kerfM,
                values.leadLengthM,
                values.leadRadiusM,
                Kind.LENGTH.si(clearance),
                values.cornerClearanceM,
                values.minimumWebM,
                values.leadQuality));
    }

    /**
     * Returns these rules with another distance of leads from corners.
     *
     * @param clearance distance along the contour, 0 or more
     * @return the rules with that distance
     */
    public CuttingRules withCornerClearance(Quantity<Length> clearance) {
        Objects.requireNonNull(clearance, "clearance");
        return new CuttingRules(new Values(
                values.kerfM,
                values.leadLengthM,
                values.leadRadiusM,
                values.pierceClearanceM,
                Kind.LENGTH.si(clearance),
                values.minimumWebM,
                values.leadQuality));
    }

    /**
     * Returns these rules with another minimum web.
     *
     * @param web material that must stay between two cuts, above 0
     * @return the rules with that web
     */
    public CuttingRules withMinimumWeb(Quantity<Length> web) {
        Objects.requireNonNull(web, "web");
        return new CuttingRules(new Values(
                values.kerfM,
                values.leadLengthM,
                values.leadRadiusM,
                values.pierceClearanceM,
                values.cornerClearanceM,
                Kind.LENGTH.si(web),
                values.leadQuality));
    }

    /** {@return the kerf width, in m} */
    public Quantity<Length> kerfWidth() {
        return Kind.LENGTH.of(values.kerfM);
    }

    /** {@return the material that must stay between two cuts, in m} */
    public Quantity<Length> minimumWeb() {
        return Kind.LENGTH.of(values.minimumWebM);
    }

    double kerfSi() {
        return values.kerfM;
    }

    /** Offset of the jet from the edge of the part. */
    double offsetSi() {
        return values.kerfM / 2;
    }

    double marginSi() {
        return MARGIN * values.kerfM;
    }

    double leadLengthSi() {
        return values.leadLengthM;
    }

    double leadRadiusSi() {
        return values.leadRadiusM;
    }

    double pierceClearanceSi() {
        return values.pierceClearanceM;
    }

    double cornerClearanceSi() {
        return values.cornerClearanceM;
    }

    double minimumWebSi() {
        return values.minimumWebM;
    }

    CutQuality leadQuality() {
        return values.leadQuality;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("cutting rules")
                .put("kerf_width", Kind.LENGTH, values.kerfM)
                .put("lead_length", Kind.LENGTH, values.leadLengthM)
                .put("lead_radius", Kind.LENGTH, values.leadRadiusM)
                .put("lead_quality", values.leadQuality)
                .put("pierce_clearance", Kind.LENGTH, values.pierceClearanceM)
                .put("corner_clearance", Kind.LENGTH, values.cornerClearanceM)
                .put("minimum_web", Kind.LENGTH, values.minimumWebM)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CuttingRules that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "cutting rules for a kerf of " + QuantityText.forPeople(Kind.LENGTH, kerfWidth());
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
