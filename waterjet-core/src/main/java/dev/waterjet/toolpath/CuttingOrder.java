package dev.waterjet.toolpath;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.part.Box;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Order of cutting: what lies inside a contour is cut before it, since the outer cut lets the part loose; among what remains
 * free, rapid traverses are short.
 *
 * <p>A path is a closed contour, or an open one with leads around a closed stretch, or an open cut. The traverse goes from
 * where one path ends to where the next one pierces.
 */
public final class CuttingOrder {

    private CuttingOrder() {}

    /**
     * Returns an order that cuts from inside to outside with short traverses, starting from the origin: the nearest next path,
     * then improved by exchanges until no reversal or move of a stretch makes it shorter.
     *
     * @param paths paths with or without leads, none crossing another
     * @return indices of the paths in the order of cutting
     */
    public static List<Integer> suggest(List<Contour> paths) {
        return suggest(paths, Point.ofSi(0, 0));
    }

    /**
     * Returns an order that cuts from inside to outside with short traverses.
     *
     * @param paths paths with or without leads, none crossing another
     * @param start point from which the head comes
     * @return indices of the paths in the order of cutting
     */
    public static List<Integer> suggest(List<Contour> paths, Point start) {
        Objects.requireNonNull(paths, "paths");
        Objects.requireNonNull(start, "start");
        return new OrderSearch(paths, inside(paths), start).run();
    }

    /**
     * Returns the length of the rapid traverses of an order.
     *
     * @param paths the paths
     * @param order indices of the paths in the order of cutting
     * @param start point from which the head comes
     * @return the length, in m
     */
    public static Quantity<Length> traverse(List<Contour> paths, List<Integer> order, Point start) {
        Objects.requireNonNull(order, "order");
        Objects.requireNonNull(paths, "paths");
        Objects.requireNonNull(start, "start");
        double sum = 0;
        Point at = start;
        for (int index : order) {
            Contour path = paths.get(index(index, paths));
            sum += Kind.LENGTH.si(at.distance(path.start()));
            at = path.end();
        }
        return Kind.LENGTH.of(sum);
    }

    private static int index(int index, List<Contour> paths) {
        return Require.index("path", index, paths.size());
    }

    /**
     * Checks whether an order cuts every path once, and what lies inside before what lies around it.
     *
     * @param paths paths with or without leads, none crossing another
     * @param order indices of the paths in the order of cutting
     * @return a finding {@code path-left-out}, {@code path-repeated} or {@code inner-path-late} for each fault; one
     *     {@code inside-first} that is satisfied if there is none
     * @throws dev.waterjet.measure.DomainException if an index names no path
     */
    public static List<Finding> check(List<Contour> paths, List<Integer> order) {
        Objects.requireNonNull(order, "order");
        Objects.requireNonNull(paths, "paths");
        List<Finding> findings = new ArrayList<>();
        int[] place = new int[paths.size()];
        Arrays.fill(place, -1);
        for (int k = 0; k < order.size(); k++) {
            int path = index(order.get(k), paths);
            if (place[path] >= 0) {
                findings.add(Finding.violated(
                        named(Message.of("path-repeated", "path {path} is cut twice"), paths, path),
                        paths.get(path).start()));
            }
            place[path] = k;
        }
        for (int path = 0; path < place.length; path++) {
            if (place[path] < 0) {
                findings.add(Finding.violated(
                        named(Message.of("path-left-out", "path {path} is not cut"), paths, path),
                        paths.get(path).start()));
            }
        }
        addLate(paths, place, findings);
        if (findings.isEmpty()) {
            Point at = paths.isEmpty() ? Point.ofSi(0, 0) : paths.get(0).start();
            findings.add(Finding.satisfied(
                    Message.of("inside-first", "every path is cut once, from inside to outside"), at));
        }
        return List.copyOf(findings);
    }

    private static void addLate(List<Contour> paths, int[] place, List<Finding> findings) {
        List<List<Integer>> inside = inside(paths);
        for (int outer = 0; outer < paths.size(); outer++) {
            for (int inner : inside.get(outer)) {
                if (place[outer] >= 0 && place[inner] > place[outer]) {
                    Message late = Message.of(
                                    "inner-path-late",
                                    "path {path} lies inside path {outer} and is cut after it, when the part may have"
                                            + " moved")
                            .with("outer", label(paths, outer));
                    findings.add(Finding.violated(
                            named(late, paths, inner),
                            paths.get(inner).start(),
                            named(Message.of("cut-first", "cut path {path} first"), paths, inner)));
                }
            }
        }
    }

    private static Message named(Message message, List<Contour> paths, int path) {
        return message.with("path", label(paths, path));
    }

    private static String label(List<Contour> paths, int path) {
        Contour contour = paths.get(path);
        return contour.name().isEmpty() ? Integer.toString(path) : contour.label();
    }

    /** For each path, those that lie inside the closed stretch of it. */
    private static List<List<Integer>> inside(List<Contour> paths) {
        List<Contour> loops = paths.stream().map(CuttingOrder::loop).toList();
        List<Box> boxes = loops.stream().map(Contour::box).toList();
        List<List<Integer>> inside = new ArrayList<>();
        for (int outer = 0; outer < paths.size(); outer++) {
            List<Integer> found = new ArrayList<>();
            Contour loop = loops.get(outer);
            for (int inner = 0; loop.isClosed() && inner < paths.size(); inner++) {
                if (inner != outer
                        && boxes.get(outer).isAround(boxes.get(inner))
                        && (!boxes.get(outer).equals(boxes.get(inner)) || isLarger(loops, outer, inner))
                        && loop.isAround(loops.get(inner).start())) {
                    found.add(inner);
                }
            }
            inside.add(found);
        }
        return inside;
    }

    /** Of two loops in the same box one at most is inside the other, though the start of each may lie on both. */
    private static boolean isLarger(List<Contour> loops, int one, int other) {
        double area = area(loops.get(one));
        double otherArea = area(loops.get(other));
        return area > otherArea || (area == otherArea && one < other);
    }

    private static double area(Contour loop) {
        return loop.isClosed() ? Math.abs(Kind.AREA.si(loop.signedArea())) : 0;
    }

    /** A path without its leads; closed if its ends then meet. */
    private static Contour loop(Contour path) {
        if (path.isClosed()) {
            return path;
        }
        int first = 0;
        int last = path.size() - 1;
        while (first < last && path.requirement(first).isLead()) {
            first++;
        }
        while (last > first && path.requirement(last).isLead()) {
            last--;
        }
        EdgeCursor edge = new EdgeCursor();
        ContourBuilder builder = Contour.fromSi(path.xSi(first), path.ySi(first));
        for (int i = first; i <= last; i++) {
            path.load(i, edge);
            builder.edgeTo(edge);
        }
        double gap = Math.hypot(path.xSi(first) - path.xSi(last + 1), path.ySi(first) - path.ySi(last + 1));
        boolean isLoop = gap <= 1e-5 && (last > first + 1 || path.isArc(first));
        return isLoop ? builder.close() : builder.open();
    }
}
