package dev.waterjet.toolpath;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;

/**
 * Tabs that hold a part in the sheet until the cut is done, sized against a force on the part. The whole reaction force of
 * the jet is the safe choice: which share of it reaches the part is unknown.
 *
 * <p>A tab of width b bridges the kerf w through the plate h. It must bear its share F/n of the force in shear,
 * {@code F S/(n b h)} up to the shear strength, and in bending across the kerf, 3 F S w/(n h b<sup>2</sup>) up to sqrt(3)
 * times the shear strength; S is the safety factor. Derived: a beam held at both ends, strength after von Mises.
 */
public final class HoldingTabs implements Serializable {

    private static final long serialVersionUID = 1L;

    /** Places tried for each tab. */
    private static final int PROBES = 64;

    /** Checked content, and the serial form. */
    private record Values(double forceN, double plateM, double kerfM, double shearStrengthPa, double safety)
            implements Serializable {

        Values {
            forceN = Require.positive("force on the part", forceN, Units.NEWTON);
            plateM = Require.positive("thickness", plateM, Units.MILLIMETRE);
            kerfM = Require.positive("kerf width", kerfM, Units.MILLIMETRE);
            shearStrengthPa = Require.positive("shear strength", shearStrengthPa, Units.MEGAPASCAL);
            safety = Require.atLeast("safety factor", safety, 1, Units.ONE, "");
        }

        private Object readResolve() {
            return new HoldingTabs(this);
        }
    }

    private final transient Values values;

    private HoldingTabs(Values values) {
        this.values = values;
    }

    /**
     * Returns tabs with a safety factor of 3 (common practice, no source).
     *
     * @param force force on the part, such as the reaction force of the jet
     * @param shearStrength shear strength of the material
     * @param plate thickness of the plate
     * @param rules rules with the kerf width
     * @return the sizing of tabs
     */
    public static HoldingTabs of(
            Quantity<Force> force, Quantity<Pressure> shearStrength, Quantity<Length> plate, CuttingRules rules) {
        Objects.requireNonNull(force, "force");
        Objects.requireNonNull(plate, "plate");
        Objects.requireNonNull(rules, "rules");
        Objects.requireNonNull(shearStrength, "shearStrength");
        return new HoldingTabs(new Values(
                Kind.FORCE.si(force), Kind.LENGTH.si(plate), rules.kerfSi(), Kind.PRESSURE.si(shearStrength), 3));
    }

    /**
     * Returns these tabs with another safety factor.
     *
     * @param factor the factor, 1 or more
     * @return the tabs with that factor
     */
    public HoldingTabs withSafety(double factor) {
        return new HoldingTabs(new Values(values.forceN, values.plateM, values.kerfM, values.shearStrengthPa, factor));
    }

    /**
     * Returns the width that each of some tabs requires.
     *
     * @param count number of tabs, 1 or more
     * @return the width, in m
     */
    public Quantity<Length> width(int count) {
        Require.atLeast("number of tabs", count, 1, Units.ONE, "");
        double share = values.forceN * values.safety / count;
        double shear = share / (values.plateM * values.shearStrengthPa);
        double bending = Math.sqrt(3 * share * values.kerfM / (values.plateM * Math.sqrt(3) * values.shearStrengthPa));
        return Kind.LENGTH.of(Math.max(shear, bending));
    }

    /**
     * Checks whether tabs hold.
     *
     * @param contour contour that they interrupt
     * @param count number of tabs, 1 or more; one alone lets the part swing
     * @param width width of each
     * @return the finding, with the code {@code tab-width} or {@code single-tab}
     */
    public Finding check(Contour contour, int count, Quantity<Length> width) {
        Objects.requireNonNull(contour, "contour");
        Objects.requireNonNull(width, "width");
        double required = Kind.LENGTH.si(width(count));
        if (count < 2) {
            return Finding.violated(
                    Message.of("single-tab", "one tab lets the part swing about it"),
                    contour.start(),
                    Message.of("leave-two-tabs", "leave two or more"));
        }
        return Finding.atLeast(
                Message.of("tab-width", "each of {count} tabs is {value} wide; required are {limit}")
                        .with("count", count),
                Kind.LENGTH.si(width),
                required,
                contour.start(),
                Message.of("widen-tabs", "widen the tabs to {width} or leave more of them")
                        .with("width", Kind.LENGTH, required, Units.MILLIMETRE));
    }

    /**
     * Returns places for tabs: evenly along the contour, each moved away from corners, two widths if there is space, and at least
     * a tab width and a kerf width from its neighbours.
     *
     * @param contour contour that they interrupt, closed
     * @param count number of tabs, 2 or more
     * @return distances of the middles of the tabs from the start of the contour, in rising order
     * @throws DomainException with code {@code tabs-do-not-fit} if the contour is too short for them
     */
    public QuantityArray<Length> suggest(Contour contour, int count) {
        Objects.requireNonNull(contour, "contour");
        Require.atLeast("number of tabs", count, 2, Units.ONE, "one tab lets the part swing");
        double total = contour.requireClosed().lengthSi();
        double width = Kind.LENGTH.si(width(count));
        double pitch = total / count;
        double apart = width + values.kerfM;
        if (pitch < apart) {
            throw new DomainException(
                    Message.of(
                                    "tabs-do-not-fit",
                                    "{count} tabs of {width} do not fit on {length}: with the kerf they take {value}"
                                            + " each, above {limit}")
                            .with("count", count)
                            .with("width", Kind.LENGTH, width, Units.MILLIMETRE)
                            .with("length", Kind.LENGTH, total, Units.MILLIMETRE),
                    "length for a tab",
                    apart,
                    pitch,
                    Units.MILLIMETRE);
        }
        Corners corners = Corners.of(contour);
        double[] places = new double[count];
        for (int k = 0; k < count; k++) {
            // tabs that stay in their own window keep their distance
            places[k] = place(corners, pitch * (k + 0.5), (pitch - apart) / 2, 2 * width);
        }
        return QuantityArray.ofSi(Kind.LENGTH, places);
    }

    /** The place nearest to the middle of a window that is far enough from corners, else the one farthest from them. */
    private static double place(Corners corners, double middle, double half, double clearance) {
        double best = middle;
        double bestClearance = Math.min(clearance, corners.distance(middle));
        for (int i = 1; i <= PROBES; i++) {
            for (int way = -1; way <= 1 && bestClearance < clearance; way += 2) {
                double place = middle + way * half * i / PROBES;
                double found = Math.min(clearance, corners.distance(place));
                if (found > bestClearance + 1e-9) {
                    best = place;
                    bestClearance = found;
                }
            }
        }
        return best;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof HoldingTabs that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "holding tabs against " + QuantityText.forPeople(Kind.FORCE, Kind.FORCE.of(values.forceN));
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
