package dev.waterjet.motion;

/**
 * Time over a grid as a function of the squares x of the feed at its nodes: the sum of {@code 2 h/(v_k + v_(k+1))} with
 * {@code v = sqrt(x)}, which is convex in x. Gradient and Hessian by interval.
 */
final class TravelTime {

    final double[] timeS;
    /** Derivative of an interval's time by the square at its start. */
    final double[] byStart;
    /** Derivative of an interval's time by the square at its end. */
    final double[] byEnd;

    private final double[] inverseSpeed;
    private final double[] inverseSum;

    TravelTime(int capacity) {
        timeS = new double[capacity];
        byStart = new double[capacity];
        byEnd = new double[capacity];
        inverseSpeed = new double[capacity + 1];
        inverseSum = new double[capacity];
    }

    /** Evaluates times and derivatives; a node at rest is fixed and counts without a derivative. */
    double evaluate(double[] x, double[] lengthM, int intervals) {
        double speed = Math.sqrt(x[0]);
        double inverse = speed > 0 ? 1 / speed : 0;
        inverseSpeed[0] = inverse;
        double total = 0;
        for (int k = 0; k < intervals; k++) {
            double next = Math.sqrt(x[k + 1]);
            double nextInverse = next > 0 ? 1 / next : 0;
            double sum = 1 / (speed + next);
            double h = lengthM[k];
            double time = 2 * h * sum;
            double weight = h * sum * sum;
            inverseSum[k] = sum;
            inverseSpeed[k + 1] = nextInverse;
            timeS[k] = time;
            byStart[k] = -weight * inverse;
            byEnd[k] = -weight * nextInverse;
            total += time;
            speed = next;
            inverse = nextInverse;
        }
        return total;
    }

    /** Adds the Hessian to the matrix and subtracts the gradient from the right side. */
    void assemble(BandMatrix matrix, double[] right, int intervals) {
        for (int k = 0; k < intervals; k++) {
            double start = inverseSpeed[k];
            double end = inverseSpeed[k + 1];
            double weight = -byStart[k] * start;
            double weightEnd = -byEnd[k] * end;
            double sum = inverseSum[k];
            // h (1/(S^3 v^2) + 1/(2 S^2 v^3)) with S = v_k + v_(k+1)
            matrix.diagonal[k] += weight * (sum + 0.5 * start);
            matrix.diagonal[k + 1] += weightEnd * (sum + 0.5 * end);
            matrix.first[k] -= byStart[k] * sum * end;
            right[k] -= byStart[k];
            right[k + 1] -= byEnd[k];
        }
    }

    void subtractGradient(double[] right, int intervals) {
        for (int k = 0; k < intervals; k++) {
            right[k] -= byStart[k];
            right[k + 1] -= byEnd[k];
        }
    }
}
