package dev.waterjet.part;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;

/** Checks of the arrays of a contour. */
final class ContourCheck {

    private ContourCheck() {}

    static Message open(double gapM) {
        return Message.of("open-contour", "the contour is open: its end lies {gap} from its start")
                .with("gap", Kind.LENGTH, gapM, Units.MILLIMETRE);
    }

    static void requireClosed(Contour contour) {
        if (!contour.isClosed()) {
            int end = contour.size();
            double x = contour.xSi(end);
            double y = contour.ySi(end);
            double gap = Math.hypot(x - contour.xSi(0), y - contour.ySi(0));
            throw new GeometryException(contour, end - 1, x, y, open(gap));
        }
    }

    static Message notFinite() {
        return Message.of("coordinate-not-finite", "a coordinate is not a finite number");
    }

    static Message noLength() {
        return Message.of("zero-length-edge", "zero-length edge: repeated point");
    }

    static Message noRadius() {
        return Message.of("arc-without-radius", "the arc has no radius");
    }

    static Message radiiDiffer(double startRadiusM, double endRadiusM, double limitM) {
        return Message.of(
                        "arc-radii-differ",
                        "the arc starts {start_radius} from its centre and ends {end_radius} from it; the two must"
                                + " agree within {limit}")
                .with("start_radius", Kind.LENGTH, startRadiusM, Units.MILLIMETRE)
                .with("end_radius", Kind.LENGTH, endRadiusM, Units.MILLIMETRE)
                .with("limit", Kind.LENGTH, limitM, Units.MILLIMETRE);
    }

    static Message noArea() {
        return Message.of("contour-without-area", "the closed contour encloses no area");
    }

    /** Lines with finite ends and a length; zeros lose their sign. */
    static void requireLines(EdgeArrays edges) {
        double[] x = edges.x();
        double[] y = edges.y();
        for (int i = 0; i < x.length; i++) {
            int edge = Math.max(0, i - 1);
            if (!Double.isFinite(x[i]) || !Double.isFinite(y[i])) {
                throw new GeometryException(edge, x[i], y[i], notFinite());
            }
            x[i] += 0.0;
            y[i] += 0.0;
            boolean isLine = i > 0 && edges.sweepOf(edge) == 0;
            if (isLine && Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]) <= EdgeArrays.TOUCH_M) {
                throw new GeometryException(edge, x[i], y[i], noLength());
            }
        }
    }

    /** Everything that the builder guarantees. */
    static void require(EdgeArrays edges, int requirements) {
        int n = edges.size();
        int arcs = edges.sweep().length;
        boolean isSized = n > 0
                && edges.x().length == n + 1
                && edges.y().length == n + 1
                && (arcs == 0 || arcs == n)
                && edges.centreX().length == arcs
                && edges.centreY().length == arcs
                && (edges.isCurve().length == 0 || edges.isCurve().length == n);
        if (!isSized) {
            throw new GeometryException(
                    0, Double.NaN, Double.NaN, Message.of("contour-damaged", "the arrays of the contour do not match"));
        }
        requireLines(edges);
        boolean hasArc = false;
        for (int i = 0; i < n; i++) {
            Require.between("index of a requirement", edges.key()[i], 0, requirements - 1.0, Units.ONE, "");
            if (edges.sweepOf(i) != 0) {
                hasArc = true;
                requireArc(edges, i);
            }
        }
        boolean isMet = edges.x()[n] == edges.x()[0] && edges.y()[n] == edges.y()[0];
        if (edges.isClosed() && (!isMet || (!hasArc && n < 3))) {
            throw new GeometryException(n - 1, edges.x()[n], edges.y()[n], noArea());
        }
    }

    private static void requireArc(EdgeArrays edges, int i) {
        double x = edges.x()[i];
        double y = edges.y()[i];
        double toX = edges.x()[i + 1];
        double toY = edges.y()[i + 1];
        double cx = edges.centreX()[i] += 0.0;
        double cy = edges.centreY()[i] += 0.0;
        double atStart = Math.hypot(x - cx, y - cy);
        double atEnd = Math.hypot(toX - cx, toY - cy);
        double sweep = edges.sweep()[i];
        double slack = 1e-9 + 1e-9 * atStart;
        if (!(Math.abs(sweep) <= 2 * Math.PI && Double.isFinite(atStart))) {
            throw new GeometryException(i, cx, cy, notFinite());
        }
        if (atStart <= EdgeArrays.TOUCH_M) {
            throw new GeometryException(i, x, y, noRadius());
        }
        double cos = Math.cos(sweep);
        double sin = Math.sin(sweep);
        double missX = cx + (x - cx) * cos - (y - cy) * sin - toX;
        double missY = cy + (x - cx) * sin + (y - cy) * cos - toY;
        if (Math.abs(atStart - atEnd) > slack || Math.hypot(missX, missY) > slack) {
            throw new GeometryException(i, x, y, radiiDiffer(atStart, atEnd, slack));
        }
    }
}
