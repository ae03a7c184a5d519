package dev.waterjet.examples.drawing;

import java.util.function.IntConsumer;

/**
 * Rational Bézier curve of any degree in homogeneous form: control point {@code (x w, y w, w)}. It is halved by de Casteljau's
 * algorithm until its control points lie within a tolerance of the chord; with positive weights the curve lies in the convex
 * hull of its control points, so the chord is within the tolerance of the curve (Farin, <i>Curves and Surfaces for CAGD</i>,
 * from memory).
 */
final class RationalCurve {

    private static final int DEEPEST = 20;

    private final double toleranceM;
    private final StrokeSink sink;
    private final IntConsumer count;

    /** Receiver of samples. */
    interface StrokeSink {
        /** Takes the end of a chord. */
        void put(double x, double y);
    }

    RationalCurve(double toleranceM, StrokeSink sink, IntConsumer count) {
        this.toleranceM = toleranceM;
        this.sink = sink;
        this.count = count;
    }

    /** Sends the ends of the chords, without the start of the curve. */
    void sample(double[] xw, double[] yw, double[] w) {
        split(xw, yw, w, 0);
    }

    private void split(double[] xw, double[] yw, double[] w, int depth) {
        int n = w.length - 1;
        if (depth == DEEPEST || (depth > 0 && isFlat(xw, yw, w))) {
            count.accept(1);
            sink.put(xw[n] / w[n], yw[n] / w[n]);
            return;
        }
        double[][] left = new double[3][n + 1];
        double[][] right = {xw.clone(), yw.clone(), w.clone()};
        for (int k = 0; k <= n; k++) {
            for (int c = 0; c < 3; c++) {
                left[c][k] = right[c][0];
                for (int i = 0; i < n - k; i++) {
                    right[c][i] = (right[c][i] + right[c][i + 1]) / 2;
                }
            }
        }
        split(left[0], left[1], left[2], depth + 1);
        split(right[0], right[1], right[2], depth + 1);
    }

    private boolean isFlat(double[] xw, double[] yw, double[] w) {
        int n = w.length - 1;
        double x0 = xw[0] / w[0];
        double y0 = yw[0] / w[0];
        double dx = xw[n] / w[n] - x0;
        double dy = yw[n] / w[n] - y0;
        double chord2 = dx * dx + dy * dy;
        for (int i = 1; i < n; i++) {
            double px = xw[i] / w[i] - x0;
            double py = yw[i] / w[i] - y0;
            double share = chord2 > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / chord2)) : 0;
            if (Math.hypot(px - share * dx, py - share * dy) > toleranceM) {
                return false;
            }
        }
        return true;
    }
}
