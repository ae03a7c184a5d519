package dev.waterjet.toolpath;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.ContourGeometry;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;

/**
 * Tabs that hold a part in the sheet until the cut is done, sized against a force on the part. The whole reaction force of
 * the jet is the safe choice: how much of it reaches the part is not known.
 *
 * <p>A tab of width b bridges the kerf w through the plate h. It must bear its share F/n of the force in shear,
 * {@code F S/(n b h)} up to the shear strength, and in bending across the kerf, {@code 3 F S w/(n h b^2)} up to sqrt(3)
 * times the shear strength; S is the safety factor. Derived: a beam held at both ends, strength after von Mises.
 */
public final class HoldingTabs implements Serializable {

    private static final long serialVersionUID = 1L;

    private final double forceN;
    private final double plateM;
    private final double kerfM;
    private final double shearStrengthPa;
    private final double safety;

    private HoldingTabs(double forceN, double plateM, double kerfM, double shearStrengthPa, double safety) {
        this.forceN = Require.positive("force on the part", forceN, Units.NEWTON);
        this.plateM = Require.positive("thickness", plateM, Units.MILLIMETRE);
        this.kerfM = Require.positive("kerf width", kerfM, Units.MILLIMETRE);
        this.shearStrengthPa = Require.positive("shear strength", shearStrengthPa, Units.MEGAPASCAL);
        this.safety = Require.atLeast("safety factor", safety, 1, Units.ONE, "");
    }

    /**
     * Tabs with a safety factor of 3 (common practice, no source).
     *
     * @param force force on the part, such as the reaction force of the jet
     * @param shearStrength shear strength of the material
     * @param plate thickness of the plate
     * @param rules give the kerf width
     * @return the sizing of tabs
     */
    public static HoldingTabs of(
            Quantity<Force> force, Quantity<Pressure> shearStrength, Quantity<Length> plate, CuttingRules rules) {
        return new HoldingTabs(
                Kind.FORCE.si(force), Kind.LENGTH.si(plate), rules.kerfSi(), Kind.PRESSURE.si(shearStrength), 3);
    }

    /**
     * These tabs with another safety factor.
     *
     * @param factor the factor, 1 or more
     * @return the tabs with that factor
     */
    public HoldingTabs withSafety(double factor) {
        return new HoldingTabs(forceN, plateM, kerfM, shearStrengthPa, factor);
    }

    /**
     * Width that each of some tabs needs.
     *
     * @param count how many tabs, 1 or more
     * @return the width, in m
     */
    public Quantity<Length> width(int count) {
        Require.atLeast("number of tabs", count, 1, Units.ONE, "");
        double share = forceN * safety / count;
        double shear = share / (plateM * shearStrengthPa);
        double bending = Math.sqrt(3 * share * kerfM / (plateM * Math.sqrt(3) * shearStrengthPa));
        return Kind.LENGTH.of(Math.max(shear, bending));
    }

    /**
     * Whether tabs hold.
     *
     * @param contour the contour that they interrupt
     * @param count how many, 1 or more; one alone lets the part swing
     * @param width width of each
     * @return the finding, with the code {@code tabs}
     */
    public Finding check(Contour contour, int count, Quantity<Length> width) {
        double wanted = Kind.LENGTH.si(width(count));
        if (count < 2) {
            return Finding.of(
                    "tabs", false, "one tab lets the part swing about it", "leave two or more", contour.start());
        }
        return Finding.atLeast(
                "tabs",
                "width of each of " + count + " tabs",
                Kind.LENGTH.si(width),
                wanted,
                "widen the tabs to " + ContourBuilder.told(wanted) + " or leave more of them",
                contour.start());
    }

    /**
     * Places for tabs: evenly along the contour, each moved to the middle of its edge where a corner would be within two
     * widths of the tab.
     *
     * @param contour the contour that they interrupt
     * @param count how many, 2 or more
     * @return distances of the middles of the tabs from the start of the contour, in rising order
     */
    public QuantityArray<Length> suggest(Contour contour, int count) {
        Require.atLeast("number of tabs", count, 2, Units.ONE, "one tab lets the part swing");
        double total = ContourGeometry.length(contour);
        double room = 2 * Kind.LENGTH.si(width(count));
        EdgeCursor shape = new EdgeCursor();
        double[] offset = new double[1];
        double[] places = new double[count];
        for (int k = 0; k < count; k++) {
            double place = total * (k + 0.5) / count;
            ContourGeometry.locate(contour, place, shape, offset);
            double length = shape.length();
            boolean isNearEnd = offset[0] < room || length - offset[0] < room;
            places[k] = isNearEnd ? place - offset[0] + length / 2 : place;
        }
        Arrays.sort(places);
        return QuantityArray.ofSi(Kind.LENGTH, places);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof HoldingTabs that
                && forceN == that.forceN
                && plateM == that.plateM
                && kerfM == that.kerfM
                && shearStrengthPa == that.shearStrengthPa
                && safety == that.safety;
    }

    @Override
    public int hashCode() {
        return Objects.hash(forceN, plateM, kerfM, shearStrengthPa, safety);
    }

    @Override
    public String toString() {
        return "holding tabs against " + forceN + " N";
    }
}
