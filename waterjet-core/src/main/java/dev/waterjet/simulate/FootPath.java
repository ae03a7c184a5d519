package dev.waterjet.simulate;

import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.LagGeometry;

/**
 * Path on which the jet acts at one depth: the place of the front there for each node of the nozzle, and the segments between
 * them; in m, s. A tilted jet is displaced by the depth times the displacement of the tilt; the front lags behind that jet.
 * So a lead that compensates the whole lag leaves no deviation on a bend, in any geometry.
 */
final class FootPath {

    /** A lag or step below this is none. */
    private static final double NOTHING_M = 1e-12;

    private final HeadPath head;
    private final LagGeometry geometry;
    private final double[] positions;
    /** Lag at each node. */
    final double[] lag;

    private final double[] jetX;
    private final double[] jetY;
    private final double[] x;
    private final double[] y;
    final FootSegments segments;

    FootPath(HeadPath head, LagGeometry geometry) {
        this.head = head;
        this.geometry = geometry;
        this.positions = new double[head.time.length];
        this.lag = new double[head.count];
        this.jetX = head.isTilted() ? new double[head.count] : head.x;
        this.jetY = head.isTilted() ? new double[head.count] : head.y;
        this.x = new double[head.count];
        this.y = new double[head.count];
        this.segments = new FootSegments(head.count + 1);
    }

    /** Turns to a depth. */
    void at(CutFront front, double depthM) {
        lags(front, depthM);
        jet(depthM);
        switch (geometry) {
            case TANGENT -> tangent();
            case TRACTRIX -> tractrix();
            case FOLLOWING -> following();
        }
        collect();
    }

    /** Place of a jet without lag: that of the nozzle, displaced by the tilt. */
    private void jet(double depthM) {
        if (head.isTilted()) {
            for (int i = 0; i < head.count; i++) {
                jetX[i] = head.x[i] + depthM * head.tiltX[i];
                jetY[i] = head.y[i] + depthM * head.tiltY[i];
            }
        }
    }

    private void lags(CutFront front, double depthM) {
        int n = head.count;
        if (depthM > 0) {
            double[] times = new double[n];
            System.arraycopy(head.time, 0, times, 0, n);
            front.positionsSi(head.motion(), depthM, times, positions);
            for (int i = 0; i < n; i++) {
                lag[i] = Math.max(0, head.distance[i] - positions[i]);
            }
        } else {
            java.util.Arrays.fill(lag, 0);
        }
    }

    private void tangent() {
        for (int i = 0; i < head.count; i++) {
            x[i] = jetX[i] - lag[i] * head.directionX[i];
            y[i] = jetY[i] - lag[i] * head.directionY[i];
        }
    }

    /**
     * The front is drawn on a string as long as the lag. While the jet makes a straight step of the length d, the angle a
     * between step and string goes to 2 atan(tan(a/2) exp(-d/L)); a slack string leaves the front where it is.
     */
    private void tractrix() {
        for (int i = 0; i < head.count; i++) {
            double length = lag[i];
            if (i == 0 || head.isBreak[i]) {
                x[i] = jetX[i] - length * head.directionX[i];
                y[i] = jetY[i] - length * head.directionY[i];
                continue;
            }
            double fromX = jetX[i] - x[i - 1];
            double fromY = jetY[i] - y[i - 1];
            double away = Math.hypot(fromX, fromY);
            double stepX = jetX[i] - jetX[i - 1];
            double stepY = jetY[i] - jetY[i - 1];
            double step = Math.hypot(stepX, stepY);
            if (away <= length) {
                x[i] = x[i - 1];
                y[i] = y[i - 1];
            } else if (length < NOTHING_M || step < NOTHING_M) {
                x[i] = jetX[i] - fromX * (length / away);
                y[i] = jetY[i] - fromY * (length / away);
            } else {
                pull(i, stepX / step, stepY / step, step);
            }
        }
    }

    private void pull(int i, double ex, double ey, double step) {
        double stringX = jetX[i - 1] - x[i - 1];
        double stringY = jetY[i - 1] - y[i - 1];
        double angle = Math.atan2(ex * stringY - ey * stringX, ex * stringX + ey * stringY);
        double length = lag[i];
        if (Math.abs(angle) >= Math.PI / 2) {
            double fromX = jetX[i] - x[i - 1];
            double fromY = jetY[i] - y[i - 1];
            double away = Math.hypot(fromX, fromY);
            x[i] = jetX[i] - fromX * (length / away);
            y[i] = jetY[i] - fromY * (length / away);
            return;
        }
        double after = 2 * Math.atan(Math.tan(angle / 2) * Math.exp(-step / length));
        double cosine = Math.cos(after);
        double sine = Math.sin(after);
        x[i] = jetX[i] - length * (cosine * ex - sine * ey);
        y[i] = jetY[i] - length * (sine * ex + cosine * ey);
    }

    /** The front is on the path itself, one lag behind; before its start in a straight line. */
    private void following() {
        int behind = 0;
        for (int i = 0; i < head.count; i++) {
            double at = head.distance[i] - lag[i];
            while (behind + 1 < i && head.distance[behind + 1] <= at) {
                behind++;
            }
            while (behind < i && head.isBreak[behind + 1]) {
                behind++;
            }
            if (lag[i] < NOTHING_M) {
                x[i] = jetX[i];
                y[i] = jetY[i];
                continue;
            }
            int next = Math.min(behind + 1, head.count - 1);
            double gap = head.distance[next] - head.distance[behind];
            double share = gap > 0 ? (at - head.distance[behind]) / gap : 0;
            if (share < 0 || next == behind) {
                double back = at - head.distance[behind];
                x[i] = jetX[behind] + back * head.directionX[behind];
                y[i] = jetY[behind] + back * head.directionY[behind];
            } else {
                x[i] = jetX[behind] + share * (jetX[next] - jetX[behind]);
                y[i] = jetY[behind] + share * (jetY[next] - jetY[behind]);
            }
        }
    }

    private void collect() {
        segments.clear();
        for (int i = 1; i < head.count; i++) {
            double spent = head.time[i] - head.time[i - 1];
            if (spent > 0 && !head.isBreak[i]) {
                segments.add(x[i - 1], y[i - 1], x[i], y[i], spent, i - 1);
            }
        }
    }
}
