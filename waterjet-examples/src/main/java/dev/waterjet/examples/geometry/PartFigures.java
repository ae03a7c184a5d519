package dev.waterjet.examples.geometry;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Edge;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * Part in the geometry of JTS: outline and holes. JTS works in millimetres here, on chords that keep within a micrometre of
 * the arcs.
 */
public final class PartFigures {

    private static final double MM = 1000;
    private static final double CHORD_MM = 1e-3;
    private static final double NEAR_MM = 1e-3;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final List<Contour> contours;
    private final List<LinearRing> rings;
    private final int outline;
    private final Polygon part;

    private PartFigures(List<Contour> contours, List<LinearRing> rings) {
        this.contours = List.copyOf(contours);
        this.rings = rings;
        this.outline = largest(rings);
        this.part = part(rings, outline);
    }

    /**
     * Returns the part bounded by closed contours: the largest is its outline, the others are its holes.
     *
     * @param contours the contours, closed
     * @return the part
     * @throws TextException if there is no closed contour, or the contours do not bound one part
     */
    public static PartFigures of(List<Contour> contours) {
        List<Contour> closed = contours.stream().filter(Contour::isClosed).toList();
        if (closed.isEmpty()) {
            throw new TextException("no contour is closed; close the outline of the part");
        }
        PartFigures figures =
                new PartFigures(closed, closed.stream().map(PartFigures::ring).toList());
        if (!figures.part.isValid()) {
            throw new TextException(
                    "the contours do not bound one part: they cross, or a hole lies outside the outline");
        }
        return figures;
    }

    private static int largest(List<LinearRing> rings) {
        int largest = 0;
        for (int i = 1; i < rings.size(); i++) {
            if (rings.get(i).getEnvelopeInternal().getArea()
                    > rings.get(largest).getEnvelopeInternal().getArea()) {
                largest = i;
            }
        }
        return largest;
    }

    private static Polygon part(List<LinearRing> rings, int outline) {
        List<LinearRing> holes = new ArrayList<>(rings);
        LinearRing shell = holes.remove(outline);
        return FACTORY.createPolygon(shell, holes.toArray(LinearRing[]::new));
    }

    private static LinearRing ring(Contour contour) {
        List<Coordinate> points = new ArrayList<>();
        for (int i = 0; i < contour.size(); i++) {
            addEdge(contour.edge(i), points);
        }
        points.add(points.get(0).copy());
        return FACTORY.createLinearRing(points.toArray(Coordinate[]::new));
    }

    /** The start of an edge, and points along it if it is an arc. */
    private static void addEdge(Edge edge, List<Coordinate> points) {
        double startX = edge.start().xSi() * MM;
        double startY = edge.start().ySi() * MM;
        points.add(new Coordinate(startX, startY));
        edge.centre().ifPresent(centre -> {
            double atX = centre.xSi() * MM;
            double atY = centre.ySi() * MM;
            double radius = Math.hypot(startX - atX, startY - atY);
            double from = Math.atan2(startY - atY, startX - atX);
            double sweep = Math.abs(Kind.ANGLE.si(edge.sweep()));
            double sign = edge.turn().orElseThrow() == Side.LEFT ? 1 : -1;
            // a chord of step a leaves its arc by r (1 - cos(a/2))
            double step = 2 * Math.acos(Math.max(0, 1 - CHORD_MM / radius));
            int chords = (int) Math.ceil(sweep / step);
            for (int i = 1; i < chords; i++) {
                double angle = from + sign * sweep * i / chords;
                points.add(new Coordinate(atX + radius * Math.cos(angle), atY + radius * Math.sin(angle)));
            }
        });
    }

    /**
     * Returns the contours in cutting order: holes before the outline.
     *
     * @return the contours
     */
    public List<Contour> inOrder() {
        List<Contour> order = new ArrayList<>(contours);
        order.add(order.remove(outline));
        return List.copyOf(order);
    }

    /**
     * Returns the length of all contours.
     *
     * @return the length of cut
     */
    public Quantity<Length> cutLength() {
        return Kind.LENGTH.of(contours.stream()
                .mapToDouble(contour -> Kind.LENGTH.si(contour.length()))
                .sum());
    }

    /**
     * Returns the area of the part without its holes.
     *
     * @return the area
     */
    public Quantity<Area> area() {
        return Kind.AREA.of(part.getArea() / (MM * MM));
    }

    /**
     * Returns the size of the part along x.
     *
     * @return width of its bounding box
     */
    public Quantity<Length> width() {
        return Kind.LENGTH.of(part.getEnvelopeInternal().getWidth() / MM);
    }

    /**
     * Returns the size of the part along y.
     *
     * @return height of its bounding box
     */
    public Quantity<Length> height() {
        return Kind.LENGTH.of(part.getEnvelopeInternal().getHeight() / MM);
    }

    /**
     * Returns the minimum inner radius of all contours. A corner between lines is ignored: every jet rounds it.
     *
     * @return the radius; empty if no arc or curve is concave
     */
    public Optional<Quantity<Length>> smallestRadius() {
        OptionalDouble least = OptionalDouble.empty();
        for (int i = 0; i < contours.size(); i++) {
            Side inside = contours.get(i).enclosedSide();
            OptionalDouble radius = hollow(contours.get(i), i == outline ? inside : inside.opposite());
            least = radius.isPresent() && !(least.orElse(Double.POSITIVE_INFINITY) < radius.getAsDouble())
                    ? radius
                    : least;
        }
        return least.isPresent() ? Optional.of(Kind.LENGTH.of(least.getAsDouble())) : Optional.empty();
    }

    private static OptionalDouble hollow(Contour contour, Side partSide) {
        double sampled =
                contour.minimumInnerRadius(partSide).map(Kind.LENGTH::si).orElse(0.0);
        return sampled > 0 ? OptionalDouble.of(sampled) : hollowArc(contour, partSide);
    }

    /** An arc is concave where it turns away from the part. */
    private static OptionalDouble hollowArc(Contour contour, Side partSide) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < contour.size(); i++) {
            Edge edge = contour.edge(i);
            if (edge.isArc() && edge.turn().orElseThrow() != partSide) {
                least = Math.min(least, Kind.LENGTH.si(edge.radius().orElseThrow()));
            }
        }
        return least < Double.POSITIVE_INFINITY ? OptionalDouble.of(least) : OptionalDouble.empty();
    }

    /**
     * Returns the minimum slot width: a slot, a narrow part of a hole, a gap between two arms. A wider kerf would cut the part.
     * The search widens the cut until holes split or vanish, or the gap closes.
     *
     * @param widest maximum width to search
     * @return the width; empty if every slot is at least as wide as {@code widest}
     */
    public Optional<Quantity<Length>> narrowestPassage(Quantity<Length> widest) {
        double most = Require.positive("maximum slot width to search", Kind.LENGTH.si(widest), Units.MILLIMETRE) * MM;
        if (isPassable(most)) {
            return Optional.empty();
        }
        double open = 0;
        double shut = most;
        while (shut - open > NEAR_MM) {
            double middle = (open + shut) / 2;
            if (isPassable(middle)) {
                open = middle;
            } else {
                shut = middle;
            }
        }
        return Optional.of(Kind.LENGTH.of(open / MM));
    }

    /** Whether the path of a kerf's middle line is still one closed line for each contour. */
    private boolean isPassable(double kerfMm) {
        for (int i = 0; i < rings.size(); i++) {
            Polygon bounded = FACTORY.createPolygon(rings.get(i));
            Geometry path = bounded.buffer(i == outline ? kerfMm / 2 : -kerfMm / 2);
            if (path.isEmpty() || !(path instanceof Polygon polygon) || polygon.getNumInteriorRing() > 0) {
                return false;
            }
        }
        return true;
    }

    /**
     * Returns the minimum web width between two contours of the part.
     *
     * @return the distance; empty if there is only one contour
     */
    public Optional<Quantity<Length>> thinnestWall() {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < rings.size(); i++) {
            for (int j = 0; j < i; j++) {
                least = Math.min(least, rings.get(i).distance(rings.get(j)));
            }
        }
        return least < Double.POSITIVE_INFINITY ? Optional.of(Kind.LENGTH.of(least / MM)) : Optional.empty();
    }

    /**
     * Returns the shift of a copy of the part along x that leaves a gap between the two outlines. Parts with concave sides nest
     * closer than their boxes.
     *
     * @param gap free distance, kerf and web; zero or more
     * @return the shift, no more than width and gap
     */
    public Quantity<Length> nestingPitch(Quantity<Length> gap) {
        double gapMm = Require.notNegative("gap between parts", Kind.LENGTH.si(gap), Units.MILLIMETRE) * MM;
        Polygon shell = FACTORY.createPolygon(rings.get(outline));
        Envelope box = shell.getEnvelopeInternal();
        double shift = box.getWidth() + gapMm;
        // the distance changes by no more than the shift does, so that this never goes too far
        for (int step = 0; step < 10_000; step++) {
            double spare = shell.distance(
                            AffineTransformation.translationInstance(shift, 0).transform(shell))
                    - gapMm;
            if (spare <= NEAR_MM) {
                break;
            }
            shift -= spare;
        }
        return Kind.LENGTH.of(shift / MM);
    }
}
