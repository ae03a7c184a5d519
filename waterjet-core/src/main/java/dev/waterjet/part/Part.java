package dev.waterjet.part;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;

/** A part: its outline and the holes in it, all closed, none crossing itself or another. */
public final class Part implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final Contour outline;
    private final List<Contour> holes;

    private Part(Contour outline, List<Contour> holes) {
        this.outline = outline;
        this.holes = List.copyOf(holes);
    }

    /**
     * A part.
     *
     * @param outline its outline
     * @param holes the holes in it, none inside another
     * @return the part
     * @throws GeometryException if a contour is open or crosses itself, or a hole does not lie inside the outline and clear of
     *     the others; with the place
     */
    public static Part of(Contour outline, Contour... holes) {
        return of(outline, List.of(holes));
    }

    /**
     * A part.
     *
     * @param outline its outline
     * @param holes the holes in it, none inside another
     * @return the part
     * @throws GeometryException if a contour is open or crosses itself, or a hole does not lie inside the outline and clear of
     *     the others; with the place
     */
    public static Part of(Contour outline, List<Contour> holes) {
        outline.requireClosed().requireSimple();
        for (int i = 0; i < holes.size(); i++) {
            Contour hole = holes.get(i).requireClosed().requireSimple();
            Point start = hole.start();
            if (!outline.isAround(start) || isMeeting(hole, outline)) {
                throw new GeometryException(0, start.xSi(), start.ySi(), "hole " + i + " does not lie inside the outline");
            }
            for (int j = 0; j < i; j++) {
                Contour other = holes.get(j);
                if (isMeeting(hole, other) || other.isAround(start) || hole.isAround(other.start())) {
                    throw new GeometryException(0, start.xSi(), start.ySi(), "hole " + i + " meets hole " + j);
                }
            }
        }
        return new Part(outline, holes);
    }

    private static boolean isMeeting(Contour a, Contour b) {
        return PartKernel.boxesApart(a.box(), b.box()) <= 0 && Kind.LENGTH.si(a.clearance(b)) == 0;
    }

    /**
     * Its outline.
     *
     * @return the outline
     */
    public Contour outline() {
        return outline;
    }

    /**
     * Its holes.
     *
     * @return the holes, in the order given
     */
    public List<Contour> holes() {
        return holes;
    }

    /**
     * All contours: the holes in their order, then the outline. Cut in this order, nothing is cut out of a part that has
     * come loose.
     *
     * @return the contours
     */
    public List<Contour> contours() {
        List<Contour> all = new ArrayList<>(holes);
        all.add(outline);
        return List.copyOf(all);
    }

    /**
     * Side of a contour of this part on which the part lies, along the contour's direction.
     *
     * @param contour index in {@link #contours()}
     * @return the side
     */
    public Side partSide(int contour) {
        Contour at = contours().get(contour);
        return contour == holes.size() ? at.enclosedSide() : at.enclosedSide().opposite();
    }

    /**
     * Area of the part without its holes.
     *
     * @return the area, in m2
     */
    public Quantity<Area> area() {
        return Kind.AREA.of(PartKernel.moments(this)[0]);
    }

    /**
     * Centre of its area.
     *
     * @return the centre
     */
    public Point centroid() {
        double[] moments = PartKernel.moments(this);
        return Point.ofSi(moments[1] / moments[0], moments[2] / moments[0]);
    }

    /**
     * The narrowest stretch of material between two of its contours; between the two sides of one contour it does not
     * look.
     *
     * @return the width, in m; infinite if there are no holes
     */
    public Quantity<Length> minimumWebWidth() {
        List<Contour> all = contours();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < all.size(); i++) {
            for (int j = 0; j < i; j++) {
                if (i == all.size() - 1
                        || PartKernel.boxesApart(all.get(i).box(), all.get(j).box()) < least) {
                    least = Math.min(least, Kind.LENGTH.si(all.get(i).clearance(all.get(j))));
                }
            }
        }
        return Kind.LENGTH.of(least);
    }

    /**
     * The part elsewhere on the sheet.
     *
     * @param by where the origin comes to lie
     * @return the part, moved
     */
    public Part translatedBy(Point by) {
        return new Part(
                outline.translatedBy(by),
                holes.stream().map(hole -> hole.translatedBy(by)).toList());
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("part")
                .put("outline", outline)
                .put("holes", holes)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Part that && outline.equals(that.outline) && holes.equals(that.holes);
    }

    @Override
    public int hashCode() {
        return 31 * outline.hashCode() + holes.hashCode();
    }

    @Override
    public String toString() {
        return "part of " + outline.size() + " edges with " + holes.size() + " holes";
    }
}
