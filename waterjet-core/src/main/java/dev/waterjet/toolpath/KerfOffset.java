package dev.waterjet.toolpath;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Side;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Offset of the jet axis from a contour of the part by half the kerf. Lines and arcs are offset exactly; features that vanish
 * and crossings of the path with itself are removed; every piece keeps the edge that it cuts.
 *
 * <pre>{@code
 * OffsetResult result = KerfOffset.of(millimetres(0.55)).apply(part.outline(), part.partSide(part.holes().size()).opposite());
 * ToolPath path = result.path();
 * }</pre>
 *
 * <p>Condition a contour first ({@link dev.waterjet.part.ContourConditioner}): then a curve is offset as arcs, and its chords
 * leave no corners.
 *
 * <p>Offsets can differ by edge, as kerfs do with the feed. At corners the offset lines meet, at blunt ones beyond the end of
 * the edge with the larger offset; where two edges touch smoothly, a straight ramp of twenty times the difference lies inside the
 * edge of the smaller offset: what is wrong there is material left, never a gouge.
 *
 * <p>Of an open contour, the free ends are no obstacle: a path that comes back past an end may pass nearer than its offset.
 */
public final class KerfOffset implements Serializable {

    private static final long serialVersionUID = 1L;

    /** Change of offset per length along a ramp. */
    static final double RAMP_SLOPE = 0.05;

    /** Common practice, no source. */
    private static final double DEFAULT_CORNER_TOLERANCE_M = 1e-4;

    /** Path around an outer corner. */
    public enum CornerStyle {
        /** An arc about the corner: the jet stays at the part. */
        ROUND,
        /** Tangents up to where they meet; beyond a right angle cut off at the distance of a right angle. */
        EXTENDED
    }

    /** Policy for places that are too narrow for the jet. */
    public enum NarrowPlaces {
        /** The offset is refused. */
        REFUSE,
        /** The longest loop is kept; what it does not reach is reported. */
        BRIDGE,
        /** Every loop is kept; what none of them reaches is reported. */
        SPLIT
    }

    /** Checked content, and the serial form. A single offset is for all edges. */
    private record Values(
            QuantityArray<Length> offsets, CornerStyle corners, NarrowPlaces narrow, double cornerToleranceM)
            implements Serializable {

        Values {
            Objects.requireNonNull(corners, "corners");
            Objects.requireNonNull(narrow, "narrow");
            cornerToleranceM = Require.notNegative("corner tolerance", cornerToleranceM, Units.MILLIMETRE);
            Require.atLeast("number of offsets", offsets.size(), 1, Units.ONE, "");
            for (int i = 0; i < offsets.size(); i++) {
                Require.above("kerf offset", offsets.si(i), 1e-7, Units.MILLIMETRE, "0.1 µm");
            }
        }

        private Object readResolve() {
            return new KerfOffset(this);
        }
    }

    private final transient Values values;

    private KerfOffset(Values values) {
        this.values = values;
    }

    /**
     * Returns an offset that is the same for all edges, round at outer corners, and refused where the jet does not fit.
     *
     * @param offset half the width of the kerf, above 0
     * @return the offset
     */
    public static KerfOffset of(Quantity<Length> offset) {
        Objects.requireNonNull(offset, "offset");
        return perEdge(QuantityArray.ofSi(Kind.LENGTH, new double[] {Kind.LENGTH.si(offset)}));
    }

    /**
     * Returns an offset for each edge.
     *
     * @param offsets one for each edge of the contour to come, each above 0
     * @return the offset
     */
    public static KerfOffset perEdge(QuantityArray<Length> offsets) {
        Objects.requireNonNull(offsets, "offsets");
        return new KerfOffset(new Values(offsets, CornerStyle.ROUND, NarrowPlaces.REFUSE, DEFAULT_CORNER_TOLERANCE_M));
    }

    /**
     * Returns this offset with another path around outer corners.
     *
     * @param corners the path
     * @return the offset with that path
     */
    public KerfOffset withCorners(CornerStyle corners) {
        return new KerfOffset(new Values(values.offsets, corners, values.narrow, values.cornerToleranceM));
    }

    /**
     * Returns this offset with another policy for narrow places.
     *
     * @param narrow the policy
     * @return the offset with that policy
     */
    public KerfOffset withNarrowPlaces(NarrowPlaces narrow) {
        return new KerfOffset(new Values(values.offsets, values.corners, narrow, values.cornerToleranceM));
    }

    /**
     * Returns this offset with another tolerance of inner corners. A jet leaves material in a corner narrower than itself; more
     * than the tolerance is a finding that is not satisfied. The default is 0.1 mm (common practice, no source).
     *
     * @param tolerance depth of material that may stay, 0 or more
     * @return the offset with that tolerance
     */
    public KerfOffset withCornerTolerance(Quantity<Length> tolerance) {
        Objects.requireNonNull(tolerance, "tolerance");
        return new KerfOffset(new Values(values.offsets, values.corners, values.narrow, Kind.LENGTH.si(tolerance)));
    }

    /**
     * Returns the paths of the jet along a contour.
     *
     * @param contour contour of the part, closed or open, simple
     * @param jetSide side of the contour on which the jet runs
     * @return the paths, with a finding for each inner corner that the jet rounds and for each narrow place
     * @throws GeometryException with code {@code jet-does-not-fit}, the place, the width there and that of the jet, if narrow
     *     places are refused, or if the jet fits nowhere
     */
    public OffsetResult apply(Contour contour, Side jetSide) {
        Objects.requireNonNull(contour, "contour");
        Objects.requireNonNull(jetSide, "jetSide");
        return new OffsetBuilder(contour, jetSide, offsets(contour), values.corners, values.cornerToleranceM)
                .build(values.narrow);
    }

    private double[] offsets(Contour contour) {
        double[] all = new double[contour.size()];
        int given = values.offsets.size();
        if (given > 1) {
            Require.between("number of offsets", given, all.length, all.length, Units.ONE, "one for each edge");
        }
        for (int i = 0; i < all.length; i++) {
            all[i] = values.offsets.si(given > 1 ? i : 0);
        }
        return all;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof KerfOffset that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        String width = QuantityText.forPeople(Kind.LENGTH, Kind.LENGTH.of(values.offsets.si(0)));
        return "kerf offset of " + width + (values.offsets.size() > 1 ? " and others" : "");
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
