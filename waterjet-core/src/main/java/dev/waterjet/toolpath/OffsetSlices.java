package dev.waterjet.toolpath;

import dev.waterjet.part.BoxTree;
import dev.waterjet.part.EdgeCursor;
import java.util.Arrays;

/** Elements of an offset cut at every point that they share, in metres. */
final class OffsetSlices {

    private final OffsetElements elements;
    private final EdgeCursor a = new EdgeCursor();
    private final EdgeCursor b = new EdgeCursor();
    private final ElementCrossing crossing = new ElementCrossing();

    private int cuts;
    private int[] cutElement = new int[16];
    private double[] cutShare = new double[16];
    private double[] cutX = new double[16];
    private double[] cutY = new double[16];

    int size;
    int[] element = new int[0];
    double[] from = new double[0];
    double[] to = new double[0];
    double[] x0 = new double[0];
    double[] y0 = new double[0];
    double[] x1 = new double[0];
    double[] y1 = new double[0];

    private OffsetSlices(OffsetElements elements) {
        this.elements = elements;
    }

    static OffsetSlices of(OffsetElements elements) {
        OffsetSlices slices = new OffsetSlices(elements);
        slices.findCuts();
        slices.slice();
        return slices;
    }

    private void findCuts() {
        double[] boxes = elements.boxes(ElementCrossing.TOUCH_M);
        BoxTree.Walk walk = BoxTree.ofSi(boxes).walk();
        for (int i = 0; i < elements.size; i++) {
            elements.load(i, a);
            walk.start(boxes[4 * i], boxes[4 * i + 1], boxes[4 * i + 2], boxes[4 * i + 3]);
            for (int j = walk.next(); j >= 0; j = walk.next()) {
                if (j > i) {
                    elements.load(j, b);
                    crossing.find(a, b);
                    for (int k = 0; k < crossing.count; k++) {
                        cut(i, a, crossing.x[k], crossing.y[k]);
                        cut(j, b, crossing.x[k], crossing.y[k]);
                    }
                }
            }
        }
    }

    /** Notes a cut unless it is at an end of the element. */
    private void cut(int i, EdgeCursor shape, double x, double y) {
        double touch = OffsetDrawing.SHORT_M;
        if (Math.hypot(x - shape.startX(), y - shape.startY()) <= touch
                || Math.hypot(x - shape.endX(), y - shape.endY()) <= touch) {
            return;
        }
        if (cuts == cutElement.length) {
            cutElement = Arrays.copyOf(cutElement, 2 * cuts);
            cutShare = Arrays.copyOf(cutShare, 2 * cuts);
            cutX = Arrays.copyOf(cutX, 2 * cuts);
            cutY = Arrays.copyOf(cutY, 2 * cuts);
        }
        cutElement[cuts] = i;
        cutShare[cuts] = shape.shareAt(x, y);
        cutX[cuts] = x;
        cutY[cuts++] = y;
    }

    private void slice() {
        int[] first = new int[elements.size + 1];
        int[] order = sortedCuts(first);
        int most = elements.size + cuts;
        element = new int[most];
        from = new double[most];
        to = new double[most];
        x0 = new double[most];
        y0 = new double[most];
        x1 = new double[most];
        y1 = new double[most];
        for (int i = 0; i < elements.size; i++) {
            elements.load(i, a);
            double share = 0;
            double x = a.startX();
            double y = a.startY();
            for (int k = first[i]; k < first[i + 1]; k++) {
                int cut = order[k];
                if (Math.hypot(cutX[cut] - x, cutY[cut] - y) > OffsetDrawing.SHORT_M) {
                    add(i, share, cutShare[cut], x, y, cutX[cut], cutY[cut]);
                    share = cutShare[cut];
                    x = cutX[cut];
                    y = cutY[cut];
                }
            }
            add(i, share, 1, x, y, a.endX(), a.endY());
        }
    }

    private void add(int i, double fromShare, double toShare, double fromX, double fromY, double toX, double toY) {
        element[size] = i;
        from[size] = fromShare;
        to[size] = toShare;
        x0[size] = fromX;
        y0[size] = fromY;
        x1[size] = toX;
        y1[size++] = toY;
    }

    /** Cuts by element and share; {@code first} receives where those of each element start. */
    private int[] sortedCuts(int[] first) {
        for (int k = 0; k < cuts; k++) {
            first[cutElement[k] + 1]++;
        }
        for (int i = 0; i < elements.size; i++) {
            first[i + 1] += first[i];
        }
        int[] order = new int[cuts];
        int[] at = first.clone();
        for (int k = 0; k < cuts; k++) {
            int i = cutElement[k];
            int place = at[i]++;
            while (place > first[i] && cutShare[order[place - 1]] > cutShare[k]) {
                order[place] = order[place - 1];
                place--;
            }
            order[place] = k;
        }
        return order;
    }

    int elementCount() {
        return elements.size;
    }

    /** Whether a slice goes around a vertex. */
    boolean isCorner(int slice) {
        return elements.isCorner[element[slice]];
    }

    /** Place in the middle of a slice. */
    void middle(int slice, double[] into) {
        elements.load(element[slice], a);
        double share = (from[slice] + to[slice]) / 2;
        into[0] = a.xAt(share);
        into[1] = a.yAt(share);
    }
}
