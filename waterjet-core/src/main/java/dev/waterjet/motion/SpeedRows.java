package dev.waterjet.motion;

/** Rows {@code x_i <= cap_i} of the squares of the feed at the nodes from one index to another. */
final class SpeedRows {

    private final Slacks slacks;
    private int from;
    private int to;

    SpeedRows(int capacity) {
        slacks = new Slacks(capacity);
    }

    Slacks slacks() {
        return slacks;
    }

    void lay(int fromNode, int toNode) {
        from = fromNode;
        to = toNode;
        slacks.setCount(Math.max(0, toNode - fromNode + 1));
    }

    void start(double[] x, double[] cap) {
        for (int i = from; i <= to; i++) {
            slacks.start(i - from, x[i] - cap[i], 0.05 * cap[i]);
        }
    }

    /** Takes the values of all rows; returns the greatest excess over a cap, relative to it. */
    double evaluate(double[] x, double[] cap) {
        double worst = 0;
        for (int i = from; i <= to; i++) {
            double excess = slacks.take(i - from, x[i] - cap[i]);
            if (excess > worst * cap[i]) {
                worst = excess / cap[i];
            }
        }
        return worst;
    }

    /** Adds the rows to the matrix and to the right side of the predictor. */
    void assemble(BandMatrix matrix, double[] side) {
        for (int i = from; i <= to; i++) {
            matrix.diagonal[i] += slacks.weight(i - from);
            side[i] -= slacks.predictorForce(i - from);
        }
    }

    void predict(double[] change) {
        for (int i = from; i <= to; i++) {
            slacks.predict(i - from, change[i]);
        }
    }

    void addForces(double[] side, double product) {
        for (int i = from; i <= to; i++) {
            side[i] -= slacks.correctorForce(i - from, product);
        }
    }

    void correct(double[] change, double product) {
        for (int i = from; i <= to; i++) {
            slacks.correct(i - from, change[i], product);
        }
    }

    /** Multiplier of the cap at a node; zero at a fixed node. */
    double multiplier(int node) {
        return node < from || node > to ? 0 : slacks.multiplier(node - from);
    }
}
