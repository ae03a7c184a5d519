package dev.waterjet.motion;

/**
 * Rows that keep the feed from dipping beside a change of its cap. The fastest motion slows down a little before the cap
 * rises, to arrive with acceleration, and slows down below it after a fall. With these rows the feed does not fall before a
 * rise, and does not rise after a fall.
 *
 * <p>They stand only where the motion without limits of jerk runs at the cap, and is faster beyond the change for a jerk
 * time, so that they never contradict a limit.
 */
final class SteadyApproach {

    /** Acceleration, over its limit, that still counts as steady. */
    private static final double SLACK = 1e-5;

    private static final double SAME = 1e-9;

    private static final int NEWTON_STEPS = 6;

    private final Stretches stretches;
    private final GridNodes nodes;

    SteadyApproach(Stretches stretches, GridNodes nodes) {
        this.stretches = stretches;
        this.nodes = nodes;
    }

    /** Lays the rows of the intervals from one index up to and including another. */
    void lay(AccelerationRows rows, int first, int last) {
        for (int i = first + 1; i <= last; i++) {
            for (int side = -1; side <= 1; side += 2) {
                if (isChange(i, side, first, last)) {
                    laySide(rows, i, side, first, last);
                }
            }
        }
    }

    /** Caps the nodes behind a rise and before a fall by what the jerk allows from the lower cap without acceleration. */
    void cap(double[] cap, byte[] why, int first, int last) {
        for (int i = first + 1; i <= last; i++) {
            for (int side = -1; side <= 1; side += 2) {
                int node = i - side;
                if (node >= first && node <= last + 1 && isChange(i, side, first, last)) {
                    double square = squareBeside(i, node);
                    if (square < cap[node]) {
                        cap[node] = square;
                        why[node] = GoverningLimit.STEADY_APPROACH.code();
                    }
                }
            }
        }
    }

    /** Square of the speed w at the end of an interval h that starts at u: {@code (w - u) (w + u)^2 = 2 j h^2}. */
    private double squareBeside(int node, int beside) {
        double u = Math.sqrt(nodes.capSquare[node]);
        double h = nodes.placeM[beside] - nodes.placeM[node];
        int at = nodes.stretch[Math.min(node, beside)];
        double right = 2 * stretches.tangentialJerk(at, nodes.placeM[node]) * h * h;
        // from above, where the left side is convex, Newton steps fall towards the root
        double w = u + Math.min(Math.cbrt(right), right / (4 * u * u));
        for (int i = 0; i < NEWTON_STEPS; i++) {
            w -= ((w - u) * (w + u) * (w + u) - right) / ((w + u) * (3 * w - u));
        }
        return w * w;
    }

    /** Whether the feed is steady at its cap on one side of a node and higher on the other for a jerk time. */
    private boolean isChange(int node, int side, int first, int last) {
        if (!isAtCap(node) || !isSteadyStep(node, node + side)) {
            return false;
        }
        int at = nodes.stretch[side < 0 ? node - 1 : node];
        double place = nodes.placeM[node];
        double jerkTime = stretches.tangentialAcceleration(at, place) / stretches.tangentialJerk(at, place);
        double time = 0;
        double square = nodes.reference[node];
        for (int i = node - side; i >= first && i <= last + 1 && time < jerkTime; i -= side) {
            if (nodes.reference[i] <= square * (1 + SAME)) {
                return false;
            }
            time += 2
                    * Math.abs(nodes.placeM[i] - nodes.placeM[i + side])
                    / (Math.sqrt(nodes.reference[i]) + Math.sqrt(nodes.reference[i + side]));
        }
        return time >= jerkTime;
    }

    private boolean isSteadyStep(int node, int next) {
        double square = nodes.reference[node];
        return next >= 0
                && next < nodes.count
                && Math.abs(nodes.reference[next] - square) <= SAME * square
                && isAtCap(next);
    }

    private boolean isAtCap(int node) {
        return nodes.reference[node] >= nodes.capSquare[node] * (1 - SAME);
    }

    /** Lays the rows on the steady side of a change, -1 in front of the node or 1 behind it. */
    private void laySide(AccelerationRows rows, int node, int side, int first, int last) {
        int at = nodes.stretch[side < 0 ? node - 1 : node];
        double a = stretches.tangentialAcceleration(at, nodes.placeM[node]);
        int end = node;
        while (end + side >= first && end + side <= last + 1 && isSteadyStep(node, end + side)) {
            layInterval(rows, Math.min(end, end + side), a, side);
            end += side;
        }
    }

    /** One bound of the acceleration in an interval is nearly zero: -slack below for a rise, slack above for a fall. */
    private void layInterval(AccelerationRows rows, int k, double a, int side) {
        double per = 1 / ((1 + SLACK) * a * (nodes.placeM[k + 1] - nodes.placeM[k]));
        rows.add(k, -per, per, GoverningLimit.STEADY_APPROACH.code());
        rows.shift(-side * (1 - SLACK) / (1 + SLACK));
    }
}
