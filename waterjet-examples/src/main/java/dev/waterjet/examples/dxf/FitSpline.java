package dev.waterjet.examples.dxf;

import dev.waterjet.examples.drawing.AffineMap;
import dev.waterjet.examples.drawing.StrokePen;
import dev.waterjet.measure.Message;
import java.util.ArrayList;
import java.util.List;

/**
 * Curve through the fit points of a spline that has no control points: the cubic spline with continuous curvature over the
 * lengths of the chords (de Boor, <i>A Practical Guide to Splines</i>, from memory). At an end it has the tangent of the file, or
 * no curvature where the file has none; a closed one is periodic. Commons Math has the form without tangents only.
 */
final class FitSpline {

    private static final int MAX_POINTS = 100_000;
    private static final double SAME_M = 1e-9;
    private static final double[] POLYNOMIAL = {1, 1, 1, 1};

    private final List<double[]> points = new ArrayList<>();
    private final boolean isClosed;
    private final double[] startTangent;
    private final double[] endTangent;

    private FitSpline(Entity entity, AffineMap map) {
        double[] xs = entity.numbers(11);
        double[] ys = entity.numbers(21);
        if (xs.length < 2 || xs.length > MAX_POINTS || ys.length != xs.length) {
            throw damaged(entity);
        }
        for (int i = 0; i < xs.length; i++) {
            double[] point = {map.x(xs[i], ys[i]), map.y(xs[i], ys[i])};
            if (points.isEmpty() || distance(points.get(points.size() - 1), point) > SAME_M) {
                points.add(point);
            }
        }
        isClosed = entity.hasFlag(70, 1);
        if (isClosed && distance(points.get(0), points.get(points.size() - 1)) > SAME_M) {
            points.add(points.get(0));
        }
        if (points.size() < (isClosed ? 4 : 2)) {
            throw damaged(entity);
        }
        startTangent = tangent(entity, 12, map);
        endTangent = tangent(entity, 13, map);
    }

    static FitSpline of(Entity entity, AffineMap map) {
        return new FitSpline(entity, map);
    }

    private static RuntimeException damaged(Entity entity) {
        return entity.fault(
                Message.of("spline-damaged", "the SPLINE has neither control points nor two fit points that differ"));
    }

    /** Unit tangent of an end; empty if the file has none. */
    private static double[] tangent(Entity entity, int code, AffineMap map) {
        double x = entity.number(code, 0);
        double y = entity.number(code + 10, 0);
        double dx = map.x(x, y) - map.x(0, 0);
        double dy = map.y(x, y) - map.y(0, 0);
        double length = Math.hypot(dx, dy);
        return length > 0 ? new double[] {dx / length, dy / length} : new double[0];
    }

    private static double distance(double[] a, double[] b) {
        return Math.hypot(b[0] - a[0], b[1] - a[1]);
    }

    /** Draws the curve as Bézier curves, one from point to point. */
    void draw(StrokePen pen) {
        int last = points.size() - 1;
        double[] steps = new double[last];
        for (int i = 0; i < last; i++) {
            steps[i] = distance(points.get(i), points.get(i + 1));
        }
        double[] slopeX = slopes(steps, 0);
        double[] slopeY = slopes(steps, 1);
        pen.moveTo(points.get(0)[0], points.get(0)[1]);
        for (int i = 0; i < last; i++) {
            double third = steps[i] / 3;
            double[] from = points.get(i);
            double[] to = points.get(i + 1);
            pen.bezierTo(
                    new double[] {from[0], from[0] + third * slopeX[i], to[0] - third * slopeX[i + 1], to[0]},
                    new double[] {from[1], from[1] + third * slopeY[i], to[1] - third * slopeY[i + 1], to[1]},
                    POLYNOMIAL);
        }
        if (isClosed) {
            pen.close();
        } else {
            pen.end();
        }
    }

    /** Slopes at the points, of one coordinate: h[i] m[i-1] + 2 (h[i-1] + h[i]) m[i] + h[i-1] m[i+1] = 3 (h[i-1] d[i] + h[i] d[i-1]). */
    private double[] slopes(double[] h, int axis) {
        int last = points.size() - 1;
        double[] chord = new double[last];
        for (int i = 0; i < last; i++) {
            chord[i] = (points.get(i + 1)[axis] - points.get(i)[axis]) / h[i];
        }
        if (isClosed) {
            return periodic(h, chord);
        }
        Tridiagonal system = new Tridiagonal(last + 1);
        end(system, 0, startTangent, axis, chord[0]);
        for (int i = 1; i < last; i++) {
            system.row(i, h[i], 2 * (h[i - 1] + h[i]), h[i - 1], 3 * (h[i - 1] * chord[i] + h[i] * chord[i - 1]));
        }
        end(system, last, endTangent, axis, chord[last - 1]);
        return system.solve();
    }

    private static void end(Tridiagonal system, int row, double[] tangent, int axis, double chord) {
        if (tangent.length > 0) {
            system.row(row, 0, 1, 0, tangent[axis]);
        } else {
            system.row(row, row > 0 ? 1 : 0, 2, row > 0 ? 0 : 1, 3 * chord);
        }
    }

    /** The same around a closed curve, by the formula of Sherman and Morrison. */
    private static double[] periodic(double[] h, double[] chord) {
        int n = h.length;
        Tridiagonal given = new Tridiagonal(n);
        Tridiagonal corners = new Tridiagonal(n);
        double gamma = -2 * (h[n - 1] + h[0]);
        double first = h[0];
        double corner = h[n - 2];
        for (int i = 0; i < n; i++) {
            double before = h[(i + n - 1) % n];
            double right = 3 * (before * chord[i] + h[i] * chord[(i + n - 1) % n]);
            double middle = 2 * (before + h[i]);
            middle -= i == 0 ? gamma : 0;
            middle -= i == n - 1 ? corner * first / gamma : 0;
            given.row(i, h[i], middle, before, right);
            corners.row(i, h[i], middle, before, i == 0 ? gamma : i == n - 1 ? corner : 0);
        }
        double[] y = given.solve();
        double[] z = corners.solve();
        double ratio = first / gamma;
        double factor = (y[0] + ratio * y[n - 1]) / (1 + z[0] + ratio * z[n - 1]);
        double[] slopes = new double[n + 1];
        for (int i = 0; i < n; i++) {
            slopes[i] = y[i] - factor * z[i];
        }
        slopes[n] = slopes[0];
        return slopes;
    }

    /** System of equations with three diagonals, of which the middle one dominates. */
    private static final class Tridiagonal {

        private final double[] below;
        private final double[] middle;
        private final double[] above;
        private final double[] right;

        Tridiagonal(int size) {
            below = new double[size];
            middle = new double[size];
            above = new double[size];
            right = new double[size];
        }

        void row(int i, double before, double at, double after, double value) {
            below[i] = before;
            middle[i] = at;
            above[i] = after;
            right[i] = value;
        }

        double[] solve() {
            int n = middle.length;
            for (int i = 1; i < n; i++) {
                double factor = below[i] / middle[i - 1];
                middle[i] -= factor * above[i - 1];
                right[i] -= factor * right[i - 1];
            }
            double[] found = new double[n];
            found[n - 1] = right[n - 1] / middle[n - 1];
            for (int i = n - 2; i >= 0; i--) {
                found[i] = (right[i] - above[i] * found[i + 1]) / middle[i];
            }
            return found;
        }
    }
}
