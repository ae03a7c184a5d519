package dev.waterjet.toolpath;

import dev.waterjet.part.Box;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import java.util.ArrayList;
import java.util.List;

/** Order of cutting closed contours: what lies inside another is cut before it, since the outer one lets the part loose. */
public final class CuttingOrder {

    private CuttingOrder() {}

    /**
     * An order that cuts from inside to outside, and among contours equally deep goes to the nearest start.
     *
     * @param contours closed contours, none crossing another
     * @return indices of the contours in the order of cutting
     */
    public static List<Integer> suggest(List<Contour> contours) {
        List<List<Integer>> inside = inside(contours);
        boolean[] isCut = new boolean[contours.size()];
        List<Integer> order = new ArrayList<>();
        Point at = Point.ofSi(0, 0);
        while (order.size() < contours.size()) {
            int best = -1;
            double bestM = Double.POSITIVE_INFINITY;
            for (int i = 0; i < isCut.length; i++) {
                Point start = contours.get(i).start();
                double apart = Math.hypot(start.xSi() - at.xSi(), start.ySi() - at.ySi());
                if (!isCut[i] && apart < bestM && inside.get(i).stream().allMatch(inner -> isCut[inner])) {
                    best = i;
                    bestM = apart;
                }
            }
            isCut[best] = true;
            order.add(best);
            at = contours.get(best).end();
        }
        return List.copyOf(order);
    }

    /**
     * Whether an order cuts what lies inside before what lies around it.
     *
     * @param contours closed contours, none crossing another
     * @param order indices of the contours in the order of cutting
     * @return a finding with the code {@code order} for each contour that comes too late; one that is met if none does
     */
    public static List<Finding> check(List<Contour> contours, List<Integer> order) {
        List<List<Integer>> inside = inside(contours);
        List<Finding> findings = new ArrayList<>();
        for (int outer = 0; outer < contours.size(); outer++) {
            for (int inner : inside.get(outer)) {
                if (order.indexOf(inner) > order.indexOf(outer)) {
                    findings.add(Finding.of(
                            "order",
                            false,
                            "contour " + inner + " lies inside contour " + outer
                                    + " and is cut after it, when the part may have moved",
                            "cut contour " + inner + " first",
                            contours.get(inner).start()));
                }
            }
        }
        if (findings.isEmpty()) {
            Point place =
                    contours.isEmpty() ? Point.ofSi(0, 0) : contours.get(0).start();
            findings.add(Finding.of("order", true, "contours are cut from inside to outside", "", place));
        }
        return List.copyOf(findings);
    }

    /** For each contour, those that lie inside it. */
    private static List<List<Integer>> inside(List<Contour> contours) {
        List<Box> boxes = new ArrayList<>();
        for (Contour contour : contours) {
            boxes.add(contour.requireClosed().box());
        }
        List<List<Integer>> inside = new ArrayList<>();
        for (int outer = 0; outer < contours.size(); outer++) {
            List<Integer> found = new ArrayList<>();
            for (int inner = 0; inner < contours.size(); inner++) {
                if (inner != outer
                        && boxes.get(outer).isAround(boxes.get(inner))
                        && contours.get(outer).isAround(contours.get(inner).start())) {
                    found.add(inner);
                }
            }
            inside.add(found);
        }
        return inside;
    }
}
