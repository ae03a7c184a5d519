package dev.waterjet.examples.dxf;

import dev.waterjet.examples.drawing.AffineMap;
import dev.waterjet.examples.drawing.StrokePen;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import java.util.ArrayList;
import java.util.List;

/**
 * Rational B-spline in homogeneous coordinates, cut exactly into Bézier curves, one for each span between knots: the control
 * points of a span from a to b are the values of its blossom at (a, ..., a, b, ..., b) (Ramshaw's blossoming, evaluated by de
 * Boor's recursion; Farin, <i>Curves and Surfaces for CAGD</i>, from memory).
 */
final class BSpline {

    private static final int MAX_DEGREE = 15;
    private static final int MAX_POINTS = 100_000;

    private final int degree;
    private final List<Double> knots = new ArrayList<>();
    private final List<double[]> points = new ArrayList<>();

    private BSpline(int degree) {
        this.degree = degree;
    }

    /** Spline of an entity, its control points mapped to metres. */
    static BSpline of(Entity entity, AffineMap map) {
        int degree = entity.whole(71, 3);
        double[] xs = entity.numbers(10);
        double[] ys = entity.numbers(20);
        double[] knots = entity.numbers(40);
        double[] weights = entity.numbers(41);
        boolean isSound = degree >= 1
                && degree <= MAX_DEGREE
                && xs.length > degree
                && xs.length <= MAX_POINTS
                && ys.length == xs.length
                && knots.length == xs.length + degree + 1
                && (weights.length == 0 || weights.length == xs.length);
        if (!isSound) {
            throw damaged(entity);
        }
        BSpline spline = new BSpline(degree);
        for (int i = 0; i < knots.length; i++) {
            if (i > 0 && knots[i] < knots[i - 1]) {
                throw damaged(entity);
            }
            spline.knots.add(knots[i]);
        }
        for (int i = 0; i < xs.length; i++) {
            double w = weights.length == 0 ? 1 : weights[i];
            if (!(w > 0)) {
                throw damaged(entity);
            }
            spline.points.add(new double[] {map.x(xs[i], ys[i]) * w, map.y(xs[i], ys[i]) * w, w});
        }
        return spline;
    }

    private static TextException damaged(Entity entity) {
        return entity.fault(Message.of(
                "spline-damaged",
                "the numbers of control points, knots and weights of the SPLINE do not fit its degree, or knots"
                        + " decrease, or a weight is not above 0"));
    }

    /** Draws the spline as Bézier curves, from the first knot of its domain to the last. */
    void draw(StrokePen pen) {
        boolean isFirst = true;
        for (int span = degree; span < points.size(); span++) {
            double from = knots.get(span);
            double to = knots.get(span + 1);
            if (from < to) {
                piece(pen, span, from, to, isFirst);
                isFirst = false;
            }
        }
        pen.end();
    }

    private void piece(StrokePen pen, int span, double from, double to, boolean isFirst) {
        double[] x = new double[degree + 1];
        double[] y = new double[degree + 1];
        double[] w = new double[degree + 1];
        for (int k = 0; k <= degree; k++) {
            double[] point = blossom(span, k, from, to);
            x[k] = point[0] / point[2];
            y[k] = point[1] / point[2];
            w[k] = point[2];
        }
        if (isFirst) {
            pen.moveTo(x[0], y[0]);
        }
        if (degree == 1) {
            pen.lineTo(x[1], y[1]);
        } else {
            pen.bezierTo(x, y, w);
        }
    }

    /** Value of the blossom of a span at {@code count} times its end and else its start. */
    private double[] blossom(int span, int count, double from, double to) {
        double[][] d = new double[degree + 1][];
        for (int j = 0; j <= degree; j++) {
            d[j] = points.get(span - degree + j).clone();
        }
        for (int r = 1; r <= degree; r++) {
            double at = r <= count ? to : from;
            for (int j = degree; j >= r; j--) {
                double low = knots.get(span - degree + j);
                double high = knots.get(span + 1 + j - r);
                double share = (at - low) / (high - low);
                for (int c = 0; c < 3; c++) {
                    d[j][c] = (1 - share) * d[j - 1][c] + share * d[j][c];
                }
            }
        }
        return d[degree];
    }
}
