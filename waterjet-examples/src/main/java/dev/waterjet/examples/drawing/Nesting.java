package dev.waterjet.examples.drawing;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Box;
import dev.waterjet.part.Contour;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Sorts closed contours into parts by how many others lie around each: none or an even number makes an outline, an odd number
 * a hole of the part whose outline is the next around it.
 */
final class Nesting {

    private final List<Stroke> contours;
    private final Box[] boxes;
    private final double[] areas;
    private final int[] parent;
    private final int[] depth;

    private Nesting(List<Stroke> contours) {
        int n = contours.size();
        this.contours = contours;
        this.boxes = new Box[n];
        this.areas = new double[n];
        this.parent = new int[n];
        this.depth = new int[n];
    }

    static List<DrawnPart> parts(List<Stroke> contours) {
        Nesting nesting = new Nesting(contours);
        nesting.measure();
        nesting.nest();
        return nesting.group();
    }

    private void measure() {
        for (int i = 0; i < contours.size(); i++) {
            Contour contour = contours.get(i).path();
            boxes[i] = contour.box();
            areas[i] = Math.abs(Kind.AREA.si(contour.signedArea()));
            try {
                contour.requireClosed().requireSimple();
            } catch (GeometryException e) {
                throw refusal(contours.get(i), e);
            }
        }
    }

    /** A fault of geometry with the entity of the drawing instead of the number of an edge. */
    private static TextException refusal(Stroke stroke, GeometryException e) {
        Message fault = e.message();
        return new TextException(Message.of(fault.code(), "{entity}: {fault}, near {place}")
                .with("entity", stroke.origin().place())
                .with("fault", fault.text())
                .with("place", Point.ofSi(e.xSi(), e.ySi()).toString()));
    }

    private void nest() {
        List<Integer> bySize = IntStream.range(0, contours.size())
                .boxed()
                .sorted(Comparator.comparingDouble(i -> -areas[i]))
                .toList();
        for (int k = 0; k < bySize.size(); k++) {
            int i = bySize.get(k);
            parent[i] = -1;
            for (int m = k - 1; m >= 0; m--) {
                int j = bySize.get(m);
                if (isClear(boxes[i], boxes[j])) {
                    continue;
                }
                requireApart(i, j);
                if (parent[i] < 0
                        && boxes[j].isAround(boxes[i])
                        && contours.get(j)
                                .path()
                                .isAround(contours.get(i).path().start())) {
                    parent[i] = j;
                    depth[i] = depth[j] + 1;
                }
            }
        }
    }

    private static boolean isClear(Box one, Box other) {
        return one.minimum().xSi() > other.maximum().xSi()
                || one.maximum().xSi() < other.minimum().xSi()
                || one.minimum().ySi() > other.maximum().ySi()
                || one.maximum().ySi() < other.minimum().ySi();
    }

    private void requireApart(int i, int j) {
        Contour one = contours.get(i).path();
        if (Kind.LENGTH.si(one.clearance(contours.get(j).path())) > 0) {
            return;
        }
        Point at = meeting(one, contours.get(j).path());
        throw new TextException(Message.of(
                        "contours-meet",
                        "the contours {first} and {second} meet near ({x}, {y}); contours of parts lie apart")
                .with("first", contours.get(Math.min(i, j)).origin().place())
                .with("second", contours.get(Math.max(i, j)).origin().place())
                .with("x", Kind.LENGTH, at.xSi(), Units.MILLIMETRE)
                .with("y", Kind.LENGTH, at.ySi(), Units.MILLIMETRE));
    }

    /** The vertex of one contour that is nearest to the other. */
    private static Point meeting(Contour one, Contour other) {
        Point best = one.start();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < Math.min(one.size(), 2000); i++) {
            Point at = Point.ofSi(one.xSi(i), one.ySi(i));
            double distance = Kind.LENGTH.si(other.clearance(at));
            if (distance < least) {
                least = distance;
                best = at;
            }
        }
        return best;
    }

    private List<DrawnPart> group() {
        Map<Integer, List<Integer>> holes = new LinkedHashMap<>();
        for (int i = 0; i < contours.size(); i++) {
            if (depth[i] % 2 == 0) {
                holes.put(i, new ArrayList<>());
            }
        }
        for (int i = 0; i < contours.size(); i++) {
            List<Integer> of = depth[i] % 2 == 0 ? null : holes.get(parent[i]);
            if (of != null) {
                of.add(i);
            }
        }
        List<DrawnPart> parts = new ArrayList<>();
        holes.forEach((outline, of) -> parts.add(part(outline, of, parts.size() + 1)));
        return parts;
    }

    private DrawnPart part(int outline, List<Integer> holes, int number) {
        List<Contour> inner = holes.stream().map(i -> contours.get(i).path()).toList();
        List<Origin> origins = new ArrayList<>(
                holes.stream().map(i -> contours.get(i).origin()).toList());
        Origin origin = contours.get(outline).origin();
        origins.add(origin);
        String name = !origin.name().isEmpty() ? origin.name() : origin.group();
        Part part = Part.of(contours.get(outline).path(), inner);
        return new DrawnPart(name.isEmpty() ? "part " + number : name, part, origins);
    }
}
