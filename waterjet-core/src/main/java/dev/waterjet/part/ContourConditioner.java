package dev.waterjet.part;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Conditioner of contours: it replaces chords and short arcs by the lines and arcs of which they are samples, within an exact
 * bound, so that a feed plan does not depend on how a drawing was sampled.
 *
 * <pre>{@code
 * ConditionedContour conditioned = ContourConditioner.defaults().condition(contour);
 * FeedPlan plan = planner.plan(conditioned.contour(), Side.LEFT);
 * }</pre>
 *
 * <p>Two properties, both common practice, no source:
 *
 * <ul>
 *   <li>The tolerance, 5 µm: every vertex of the contour stays within it of the result. A vertex that scatters by more is
 *       geometry and stays.
 *   <li>The flattening, 20 µm: a chord is the sample of a curve if its sagitta is no more than this, else its ends are
 *       corners. Chords marked as a curve are samples whatever their length.
 * </ul>
 *
 * <p>Every point of the contour lies within the sum of both of the result, of arcs within the tolerance and a quarter. Joints
 * lie on vertices. Edges of different requirements are never merged. The work is linear in the number of edges.
 */
public final class ContourConditioner implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final ContourConditioner DEFAULTS = new ContourConditioner(new Values(5e-6, 20e-6));

    /** Checked content, and the serial form. */
    private record Values(double toleranceM, double flatteningM) implements Serializable {

        Values {
            toleranceM = Require.between(
                    "tolerance of conditioning", toleranceM, 1e-8, 1e-2, Units.MILLIMETRE, "0.00001 mm to 10 mm");
            flatteningM = Require.between(
                    "flattening",
                    flatteningM,
                    0,
                    1e-1,
                    Units.MILLIMETRE,
                    "the largest sagitta of the chord of a curve");
        }

        private Object readResolve() {
            return new ContourConditioner(this);
        }
    }

    private final transient Values values;

    private ContourConditioner(Values values) {
        this.values = values;
    }

    /** {@return the conditioner with a tolerance of 5 µm and a flattening of 20 µm} */
    public static ContourConditioner defaults() {
        return DEFAULTS;
    }

    /**
     * Returns this conditioner with another tolerance.
     *
     * @param tolerance largest distance of a vertex from the result, 0.01 µm to 10 mm
     * @return the conditioner with that tolerance
     */
    public ContourConditioner withTolerance(Quantity<Length> tolerance) {
        Objects.requireNonNull(tolerance, "tolerance");
        return new ContourConditioner(new Values(Kind.LENGTH.si(tolerance), values.flatteningM));
    }

    /**
     * Returns this conditioner with another flattening.
     *
     * @param flattening largest sagitta of the chord of a curve, 0 to 100 mm
     * @return the conditioner with that flattening
     */
    public ContourConditioner withFlattening(Quantity<Length> flattening) {
        Objects.requireNonNull(flattening, "flattening");
        return new ContourConditioner(new Values(values.toleranceM, Kind.LENGTH.si(flattening)));
    }

    /** {@return the largest distance of a vertex from the result, in m} */
    public Quantity<Length> tolerance() {
        return Kind.LENGTH.of(values.toleranceM);
    }

    /** {@return the largest sagitta of the chord of a curve, in m} */
    public Quantity<Length> flattening() {
        return Kind.LENGTH.of(values.flatteningM);
    }

    /**
     * Replaces the edges of a contour by the lines and arcs of which they are samples.
     *
     * @param contour the contour, open or closed; a closed one may come out with another start, if its start is no corner
     * @return the conditioned contour, with the edges that each piece replaces
     */
    public ConditionedContour condition(Contour contour) {
        Objects.requireNonNull(contour, "contour");
        FittedPath fitted = PathFitter.fit(contour.edges, values.toleranceM, values.flatteningM);
        return new ConditionedContour(contour, fitted, values.toleranceM, values.flatteningM);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ContourConditioner that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "conditioner within " + QuantityText.forPeople(Kind.LENGTH, tolerance()) + ", flattening "
                + QuantityText.forPeople(Kind.LENGTH, flattening());
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
