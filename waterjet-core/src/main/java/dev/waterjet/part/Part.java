package dev.waterjet.part;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;

/**
 * Part: its outline and the holes in it, all closed, none crossing itself or another.
 *
 * <pre>{@code
 * Part flange = Part.of(
 *         Contour.circle(Point.millimetres(0, 0), millimetres(60), EdgeRequirement.defaults()).named("rim"),
 *         Contour.circle(Point.millimetres(0, 0), millimetres(20), EdgeRequirement.defaults()).named("bore"));
 * flange.minimumWebWidth();   // 40 mm
 * }</pre>
 */
public final class Part implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values(Contour outline, List<Contour> holes) implements Serializable {

        Values {
            Objects.requireNonNull(outline, "outline");
            holes = List.copyOf(holes);
            new ContourSet(outline, holes).requireHolesInside();
        }

        private Object readResolve() {
            return new Part(this);
        }
    }

    private final transient Values values;

    private Part(Values values) {
        this.values = values;
    }

    /**
     * Returns a part.
     *
     * @param outline its outline
     * @param holes the holes in it, none inside another
     * @return the part
     * @throws GeometryException if a contour is open or crosses itself, or with code {@code hole-outside} or {@code holes-meet}
     *     if a hole does not lie inside the outline and clear of the others; with the place
     */
    public static Part of(Contour outline, Contour... holes) {
        Objects.requireNonNull(holes, "holes");
        return of(outline, List.of(holes));
    }

    /**
     * Returns a part.
     *
     * @param outline its outline
     * @param holes the holes in it, none inside another
     * @return the part
     * @throws GeometryException if a contour is open or crosses itself, or with code {@code hole-outside} or {@code holes-meet}
     *     if a hole does not lie inside the outline and clear of the others; with the place
     */
    public static Part of(Contour outline, List<Contour> holes) {
        Objects.requireNonNull(holes, "holes");
        return new Part(new Values(outline, holes));
    }

    /** {@return the outline} */
    public Contour outline() {
        return values.outline;
    }

    /** {@return the holes, in the order given} */
    public List<Contour> holes() {
        return values.holes;
    }

    /**
     * Returns all contours: the holes in their order, then the outline. Cut in this order, nothing is cut out of a part that
     * has come loose.
     *
     * @return the contours
     */
    public List<Contour> contours() {
        List<Contour> all = new ArrayList<>(values.holes);
        all.add(values.outline);
        return List.copyOf(all);
    }

    /**
     * Returns how messages call a contour of this part: its name in quotes, else {@code hole 0} or {@code outline}.
     *
     * @param contour index in {@link #contours()}
     * @return the label
     */
    public String label(int contour) {
        Contour at = contours().get(Require.index("contour", contour, values.holes.size() + 1));
        if (!at.name().isEmpty()) {
            return at.label();
        }
        return contour == values.holes.size() ? "outline" : "hole " + contour;
    }

    /**
     * Returns the side of a contour of this part on which the part lies, along the contour's direction.
     *
     * @param contour index in {@link #contours()}
     * @return the side
     */
    public Side partSide(int contour) {
        Contour at = contours().get(Require.index("contour", contour, values.holes.size() + 1));
        return contour == values.holes.size()
                ? at.enclosedSide()
                : at.enclosedSide().opposite();
    }

    /** {@return the area of the part without its holes, in m2} */
    public Quantity<Area> area() {
        return Kind.AREA.of(PartMoments.of(this)[0]);
    }

    /** {@return the centre of its area} */
    public Point centroid() {
        double[] moments = PartMoments.of(this);
        return Point.ofSi(moments[1] / moments[0], moments[2] / moments[0]);
    }

    /**
     * Returns the narrowest stretch of material between two of its contours; not between two sides of one contour.
     *
     * @return the width, in m
     * @throws DomainException if there are no holes
     */
    public Quantity<Length> minimumWebWidth() {
        Require.atLeast(
                "number of holes beside a web", values.holes.size(), 1, Units.ONE, "a web lies between contours");
        return Kind.LENGTH.of(new ContourSet(values.outline, values.holes).minimumClearance());
    }

    /**
     * Returns the part elsewhere on the sheet.
     *
     * @param by place to which the origin moves
     * @return the moved part
     */
    public Part translatedBy(Point by) {
        Objects.requireNonNull(by, "by");
        return of(
                values.outline.translatedBy(by),
                values.holes.stream().map(hole -> hole.translatedBy(by)).toList());
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("part")
                .put("outline", values.outline)
                .put("holes", values.holes)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Part that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "part of " + values.outline.size() + " edges with " + values.holes.size() + " holes";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
