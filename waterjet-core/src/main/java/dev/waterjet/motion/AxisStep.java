package dev.waterjet.motion;

/**
 * Acceleration limits of the axes over one short interval of an arc, between the squares of the feed x at its start and y
 * at its end.
 *
 * <p>The acceleration of an axis is {@code T a + k N v^2} with the components T of the direction and N of the normal
 * along that axis, the curvature k and {@code a = (y - x)/(2 h)}. Each axis gives one row at the start and one at the end
 * of the interval, {@code |alpha y + beta x| <= A}, kept as bounds {@code slope x - width <= y <= slope x + width}.
 */
final class AxisStep {

    private static final int ROWS = 5;

    /** Share of the limit that a row without y may take before it bounds x. */
    private static final double FLAT = 1e-12;

    private final double limitX;
    private final double limitY;
    private final double limitPath;
    private final double[] slope = new double[ROWS];
    private final double[] width = new double[ROWS];
    private double greatestX;

    AxisStep(DynamicLimits limits) {
        limitX = limits.x().accelerationMPerS2();
        limitY = limits.y().accelerationMPerS2();
        limitPath = limits.path().accelerationMPerS2();
    }

    /**
     * Lays the rows of an interval.
     *
     * @param curvature signed curvature
     * @param twiceLength twice the length of the interval
     */
    void lay(double tx0, double ty0, double tx1, double ty1, double curvature, double twiceLength) {
        double per = 1 / twiceLength;
        greatestX = Double.POSITIVE_INFINITY;
        row(0, tx0 * per, -tx0 * per - curvature * ty0, limitX);
        row(1, ty0 * per, -ty0 * per + curvature * tx0, limitY);
        row(2, tx1 * per - curvature * ty1, -tx1 * per, limitX);
        row(3, ty1 * per + curvature * tx1, -ty1 * per, limitY);
        slope[4] = 1;
        width[4] = limitPath * twiceLength;
    }

    private void row(int r, double alpha, double beta, double limit) {
        if (Math.abs(alpha) <= FLAT * Math.abs(beta)) {
            slope[r] = 0;
            width[r] = Double.POSITIVE_INFINITY;
            greatestX = Math.min(greatestX, limit / Math.abs(beta));
            return;
        }
        double inverse = 1 / alpha;
        slope[r] = -beta * inverse;
        width[r] = limit * Math.abs(inverse);
    }

    /**
     * Returns the largest x up to a limit for which some y from 0 to a limit satisfies all rows.
     *
     * <p>The upper bounds of y less the lower ones are concave in x, and not negative at x = 0: the root of the two lines
     * active at x is a better x, until the bounds leave room for y.
     */
    double largestStart(double limitOfX, double limitOfY) {
        double x = Math.min(limitOfX, greatestX);
        for (int i = 0; i < 4 * ROWS && x > 0; i++) {
            double upper = limitOfY;
            double upperSlope = 0;
            double lower = 0;
            double lowerSlope = 0;
            for (int r = 0; r < ROWS; r++) {
                double middle = slope[r] * x;
                if (middle + width[r] < upper) {
                    upper = middle + width[r];
                    upperSlope = slope[r];
                }
                if (middle - width[r] > lower) {
                    lower = middle - width[r];
                    lowerSlope = slope[r];
                }
            }
            if (upper >= lower || lowerSlope <= upperSlope) {
                return x;
            }
            double next = x - (lower - upper) / (lowerSlope - upperSlope);
            if (next >= x) {
                return x;
            }
            x = next;
        }
        return Math.max(0, x);
    }

    /** Returns the largest y up to a limit that satisfies the rows for a given x. */
    double largestEnd(double x, double limitOfY) {
        double y = limitOfY;
        for (int r = 0; r < ROWS; r++) {
            y = Math.min(y, slope[r] * x + width[r]);
        }
        return Math.max(0, y);
    }

    /** Returns the limit whose row is the tightest for the given squares. */
    GoverningLimit tightest(double x, double y) {
        int best = 0;
        double share = -1;
        for (int r = 0; r < ROWS; r++) {
            double used = Math.abs(y - slope[r] * x) / width[r];
            if (used > share) {
                share = used;
                best = r;
            }
        }
        if (best == 4) {
            return GoverningLimit.PATH_ACCELERATION;
        }
        return best % 2 == 0 ? GoverningLimit.X_ACCELERATION : GoverningLimit.Y_ACCELERATION;
    }
}
