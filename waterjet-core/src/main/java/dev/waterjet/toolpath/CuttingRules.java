package dev.waterjet.toolpath;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * The rooms that a cut wants: how leads are shaped, how far the jet pierces from the part, how much material stays between
 * cuts. The values of {@link #of} are common practice without a source, but for the radius of leads: arcs above 3 mm leave
 * a smaller mark (Machines 11 (2023) 800). Each can be changed.
 */
public final class CuttingRules implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final double kerfM;
    private final double leadLengthM;
    private final double leadRadiusM;
    private final double pierceRoomM;
    private final double cornerRoomM;
    private final double leastWebM;

    private CuttingRules(double... values) {
        kerfM = Require.positive("kerf width", values[0], Units.MILLIMETRE);
        leadLengthM = Require.positive("length of the lead", values[1], Units.MILLIMETRE);
        leadRadiusM = Require.positive("radius of the lead", values[2], Units.MILLIMETRE);
        pierceRoomM = Require.atLeast(
                "distance of the pierce point", values[3], values[0], Units.MILLIMETRE, "one kerf width");
        cornerRoomM = Require.notNegative("distance of a lead from a corner", values[4], Units.MILLIMETRE);
        leastWebM = Require.positive("least web", values[5], Units.MILLIMETRE);
    }

    /**
     * Usual rules: leads of 3 mm and radius 3.5 mm, piercing three kerf widths off, two kerf widths from a corner, webs of
     * two kerf widths or a quarter of the thickness.
     *
     * @param kerfWidth widest width of the kerf, above 0
     * @param plate thickness of the plate, above 0
     * @return the rules
     */
    public static CuttingRules of(Quantity<Length> kerfWidth, Quantity<Length> plate) {
        double kerf = Kind.LENGTH.si(kerfWidth);
        double thickness = Require.positive("thickness", Kind.LENGTH.si(plate), Units.MILLIMETRE);
        return new CuttingRules(kerf, 0.003, 0.0035, 3 * kerf, 2 * kerf, Math.max(2 * kerf, thickness / 4));
    }

    /**
     * These rules with other leads.
     *
     * @param straight length of the straight piece, above 0
     * @param radius radius of the arc that meets the part, above 0
     * @return the rules with those leads
     */
    public CuttingRules withLead(Quantity<Length> straight, Quantity<Length> radius) {
        return with(1, straight).with(2, radius);
    }

    /**
     * These rules with another distance of the pierce point.
     *
     * @param room distance from the middle of the pierced hole to every cut, one kerf width or more
     * @return the rules with that distance
     */
    public CuttingRules withPierceClearance(Quantity<Length> room) {
        return with(3, room);
    }

    /**
     * These rules with another distance of leads from corners.
     *
     * @param room distance along the contour, 0 or more
     * @return the rules with that distance
     */
    public CuttingRules withCornerClearance(Quantity<Length> room) {
        return with(4, room);
    }

    /**
     * These rules with another least web.
     *
     * @param web material that must stay between two cuts, above 0
     * @return the rules with that web
     */
    public CuttingRules withMinimumWeb(Quantity<Length> web) {
        return with(5, web);
    }

    private CuttingRules with(int index, Quantity<Length> length) {
        double[] values = values();
        values[index] = Kind.LENGTH.si(length);
        return new CuttingRules(values);
    }

    /** These rules with leads made smaller, for holes in which the usual ones do not fit. */
    public CuttingRules withLeadScaled(double share) {
        double[] values = values();
        values[1] *= share;
        values[2] *= share;
        return new CuttingRules(values);
    }

    private double[] values() {
        return new double[] {kerfM, leadLengthM, leadRadiusM, pierceRoomM, cornerRoomM, leastWebM};
    }

    public double kerfSi() {
        return kerfM;
    }

    public double leadLengthSi() {
        return leadLengthM;
    }

    public double leadRadiusSi() {
        return leadRadiusM;
    }

    public double pierceClearanceSi() {
        return pierceRoomM;
    }

    public double cornerClearanceSi() {
        return cornerRoomM;
    }

    public double minimumWebSi() {
        return leastWebM;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("cutting rules")
                .put("kerf_width", Kind.LENGTH, kerfM)
                .put("lead_length", Kind.LENGTH, leadLengthM)
                .put("lead_radius", Kind.LENGTH, leadRadiusM)
                .put("pierce_room", Kind.LENGTH, pierceRoomM)
                .put("corner_room", Kind.LENGTH, cornerRoomM)
                .put("least_web", Kind.LENGTH, leastWebM)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CuttingRules that && Arrays.equals(values(), that.values());
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(values());
    }

    @Override
    public String toString() {
        return describe().toString();
    }
}
