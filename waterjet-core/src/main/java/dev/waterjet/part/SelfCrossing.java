package dev.waterjet.part;

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
        EdgeTree.Walk walk = EdgeTree.of(contour).walk();
        double touch = EdgeKernel.TOUCH_M;
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
                throw new GeometryException(
                        i,
                        x,
                        y,
                        count == 2 && !a.isArc() && !b.isArc()
                                ? "it runs along edge " + j + "; a contour may not retrace itself"
                                : "it crosses edge " + j);
            }
        }
        if (!isNext && !isLast) {
            refuseTouch(i, j, a.x0, a.y0, b);
            refuseTouch(i, j, a.x1, a.y1, b);
            refuseTouch(i, j, b.x0, b.y0, a);
            refuseTouch(i, j, b.x1, b.y1, a);
        }
    }

    private static void refuseTouch(int i, int j, double x, double y, EdgeCursor edge) {
        if (EdgeKernel.distance(edge, x, y) <= EdgeKernel.TOUCH_M) {
            throw new GeometryException(i, x, y, "it touches edge " + j);
        }
    }
}
