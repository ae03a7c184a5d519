package dev.waterjet.program;

import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Contours within contours of a program, and on which side of each the scrap lies. Levels alternate between part and opening;
 * whether the outermost is the outline of a part or an opening is what contradicts fewer sides of the jet and pierces.
 */
final class ContourNesting {

    static final int NONE = -1;

    /** Points nearer to a contour are on it. */
    private static final double ON_M = 1e-6;

    /** Points of a contour that are tried until one does not lie on the other. */
    private static final int TRIES = 8;

    final List<ProgramCut> cuts;

    /** Loop of each cut; the whole path of an open one. */
    final List<Contour> contours;

    /** Innermost closed contour around each, or -1. */
    private final int[] parent;

    private final double[] area;
    private final double[][] box;

    /** Whether the scrap lies within each closed contour. */
    private final boolean[] isHole;

    private ContourNesting(List<ProgramCut> cuts) {
        this.cuts = cuts;
        int count = cuts.size();
        contours = cuts.stream()
                .map(cut -> cut.loop(EdgeRequirement.defaults()).orElseGet(() -> cut.path(EdgeRequirement.defaults())))
                .toList();
        parent = new int[count];
        isHole = new boolean[count];
        area = new double[count];
        box = new double[count][];
        for (int i = 0; i < count; i++) {
            Contour contour = contours.get(i);
            area[i] = contour.isClosed()
                    ? Math.abs(contour.signedArea().getValue().doubleValue())
                    : 0;
            box[i] = new double[] {
                contour.box().minimum().xSi(),
                contour.box().minimum().ySi(),
                contour.box().maximum().xSi(),
                contour.box().maximum().ySi()
            };
        }
    }

    static ContourNesting of(List<ProgramCut> cuts) {
        ContourNesting nesting = new ContourNesting(cuts);
        for (int i = 0; i < cuts.size(); i++) {
            nesting.parent[i] = nesting.findParent(i);
        }
        nesting.classify();
        return nesting;
    }

    boolean isClosed(int cut) {
        return contours.get(cut).isClosed();
    }

    /** The innermost closed contour around a cut, or -1. */
    int parent(int cut) {
        return parent[cut];
    }

    /** Whether the scrap lies within a closed contour. */
    boolean isHole(int cut) {
        return isHole[cut];
    }

    /** The side on which the jet should run along a closed contour. */
    Side scrapSide(int cut) {
        Side inside = contours.get(cut).enclosedSide();
        return isHole[cut] ? inside : inside.opposite();
    }

    /** Whether a cut is pierced off its contour, so that the side of the pierce says where the scrap is. */
    boolean hasPierceAside(int cut) {
        return isClosed(cut)
                && contours.get(cut).clearance(cuts.get(cut).start()).getValue().doubleValue() > ON_M;
    }

    boolean isPiercedInside(int cut) {
        return contours.get(cut).isAround(cuts.get(cut).start());
    }

    /** The innermost closed contour around a point, or -1. */
    int innermost(Point point) {
        int best = NONE;
        for (int i = 0; i < cuts.size(); i++) {
            boolean isSmaller = best == NONE || area[i] < area[best];
            if (isClosed(i) && isSmaller && isInBox(i, point) && contours.get(i).isAround(point)) {
                best = i;
            }
        }
        return best;
    }

    private boolean isInBox(int cut, Point point) {
        double[] of = box[cut];
        return point.xSi() >= of[0] && point.ySi() >= of[1] && point.xSi() <= of[2] && point.ySi() <= of[3];
    }

    private int findParent(int inner) {
        int best = NONE;
        for (int i = 0; i < cuts.size(); i++) {
            boolean isLarger = i != inner && isClosed(i) && area[i] > area[inner] * (1 + 1e-9);
            boolean isSmallest = best == NONE || area[i] < area[best];
            if (isLarger && isSmallest && isBoxAround(i, inner) && isAround(i, inner)) {
                best = i;
            }
        }
        return best;
    }

    private boolean isBoxAround(int outer, int inner) {
        double[] a = box[outer];
        double[] b = box[inner];
        return b[0] >= a[0] - ON_M && b[1] >= a[1] - ON_M && b[2] <= a[2] + ON_M && b[3] <= a[3] + ON_M;
    }

    private boolean isAround(int outer, int inner) {
        Contour contour = contours.get(inner);
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < Math.min(TRIES, contour.size()); i++) {
            contour.load(i, edge);
            Point point = Point.ofSi(edge.xAt(0.5), edge.yAt(0.5));
            if (contours.get(outer).clearance(point).getValue().doubleValue() > ON_M) {
                return contours.get(outer).isAround(point);
            }
        }
        return false;
    }

    private void classify() {
        int count = cuts.size();
        int[] root = new int[count];
        int[] depth = new int[count];
        Integer[] outermostFirst = new Integer[count];
        Arrays.setAll(outermostFirst, i -> i);
        Arrays.sort(outermostFirst, Comparator.comparingDouble((Integer i) -> -area[i]));
        int[] contradictions = new int[count];
        int[] members = new int[count];
        for (int i : outermostFirst) {
            root[i] = parent[i] == NONE ? i : root[parent[i]];
            depth[i] = parent[i] == NONE ? 0 : depth[parent[i]] + 1;
            if (isClosed(i)) {
                members[root[i]]++;
                contradictions[root[i]] += contradictions(i, depth[i] % 2 == 1) - contradictions(i, depth[i] % 2 == 0);
            }
        }
        for (int i : outermostFirst) {
            int balance = contradictions[root[i]];
            boolean isOpening = balance > 0
                    || (balance == 0 && members[root[i]] == 1 && hasPierceAside(root[i]) && isPiercedInside(root[i]));
            isHole[i] = isOpening == (depth[i] % 2 == 0);
        }
    }

    /** Number of statements of a cut that contradict the place of its scrap. */
    private int contradictions(int cut, boolean asHole) {
        Side inside = contours.get(cut).enclosedSide();
        Side scrap = asHole ? inside : inside.opposite();
        int count = cuts.get(cut).jetSide().map(side -> side == scrap ? 0 : 1).orElse(0);
        return count + (hasPierceAside(cut) && isPiercedInside(cut) != asHole ? 1 : 0);
    }
}
