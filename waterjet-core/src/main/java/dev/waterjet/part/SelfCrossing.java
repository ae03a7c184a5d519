package dev.waterjet.part;

import dev.waterjet.measure.Message;

/** Finds where a contour crosses, touches or retraces itself. */
final class SelfCrossing {

    private final Contour contour;
    private final EdgeCursor a = new EdgeCursor();
    private final EdgeCursor b = new EdgeCursor();
    private final double[] points = new double[4];

    private SelfCrossing(Contour contour) {
        this.contour = contour;
    }

    static void refuse(Contour contour) {
        new SelfCrossing(contour).search();
    }

    private void search() {
        BoxTree.Walk walk = EdgeTree.of(contour).walk();
        double touch = EdgeArrays.TOUCH_M;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, a);
            walk.start(a.minimumX() - touch, a.minimumY() - touch, a.maximumX() + touch, a.maximumY() + touch);
            for (int j = walk.next(); j >= 0; j = walk.next()) {
                if (j > i) {
                    contour.load(j, b);
                    compare(i, j);
                }
            }
        }
    }

    private void compare(int i, int j) {
        boolean isNext = j == i + 1;
        boolean isLast = contour.isClosed() && i == 0 && j == contour.size() - 1;
        int count = EdgeKernel.crossings(a, b, points);
        for (int k = 0; k < count; k++) {
            double x = points[2 * k];
            double y = points[2 * k + 1];
            boolean isAtEnd = isNext && Math.hypot(x - a.x1, y - a.y1) <= EdgeKernel.ROUNDING_M;
            boolean isAtStart = isLast && Math.hypot(x - a.x0, y - a.y0) <= EdgeKernel.ROUNDING_M;
            if (!isAtEnd && !isAtStart) {
                boolean isAlong = count == 2 && !a.isArc() && !b.isArc();
                throw new GeometryException(contour, i, x, y, isAlong ? retraces(j) : crosses(j));
            }
        }
        if (!isNext && !isLast) {
            refuseTouch(i, j, a.x0, a.y0, b);
            refuseTouch(i, j, a.x1, a.y1, b);
            refuseTouch(i, j, b.x0, b.y0, a);
            refuseTouch(i, j, b.x1, b.y1, a);
        }
    }

    private void refuseTouch(int i, int j, double x, double y, EdgeCursor edge) {
        if (EdgeKernel.distance(edge, x, y) <= EdgeArrays.TOUCH_M) {
            throw new GeometryException(
                    contour,
                    i,
                    x,
                    y,
                    Message.of("touches-itself", "the contour touches its edge {other}")
                            .with("other", j));
        }
    }

    private static Message retraces(int edge) {
        return Message.of("retraces-itself", "the contour runs back along its edge {other}")
                .with("other", edge);
    }

    private static Message crosses(int edge) {
        return Message.of("crosses-itself", "the contour crosses its edge {other}")
                .with("other", edge);
    }
}
