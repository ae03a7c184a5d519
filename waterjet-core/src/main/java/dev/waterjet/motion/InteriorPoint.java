package dev.waterjet.motion;

import java.util.Arrays;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;

/**
 * Least time over a grid under rows of speed, acceleration and jerk, by a primal-dual interior point method with predictor
 * and corrector. It starts from any positive squares of the feed, within the rows or not.
 *
 * <p>The matrix has two diagonals on either side, so that time and memory grow in proportion to the nodes. Sources: S.
 * Mehrotra, SIAM J. Optim. 2 (1992) 575, for predictor and corrector (from memory); the tangent of the convex side of the
 * jerk rows makes each step safe (derived).
 */
final class InteriorPoint {

    private static final int MAX_ITERATIONS = 120;

    /** Gap between slacks and multipliers at which the search ends, relative to the time. */
    private static final double GAP = 1e-6;

    /** Excess over a limit at which the search ends, relative to the limit. */
    private static final double EXCESS = 1e-9;

    /** Gap and excess with which a search that stalls still counts as ended. */
    private static final double STALLED_GAP = 1e-3;

    private static final double STALLED_EXCESS = 1e-6;

    /** Sum of slack times multiplier at the start, relative to the time. */
    private static final double START_GAP = 3;

    private static final double TO_BOUNDARY = 0.99;

    /** Greatest decrease of a square of the feed in one iteration. */
    private static final double MAX_FALL = 0.9;

    private static final double MIN_CENTRING = 1e-3;

    private final JerkWindow window;
    private final TravelTime time;
    private final SpeedRows speed;
    private final AccelerationRows acceleration;
    private final JerkRows jerk;
    private final BandMatrix matrix;
    private final double[] change;
    private final double[] best;
    private double bestTimeS;
    private boolean isBestFair;

    InteriorPoint(JerkWindow window) {
        this.window = window;
        this.time = window.time;
        this.speed = window.speed;
        this.acceleration = window.acceleration;
        this.jerk = window.jerk;
        this.matrix = new BandMatrix(window.capacity() + 1);
        this.change = new double[window.capacity() + 3];
        this.best = new double[window.capacity() + 1];
    }

    /**
     * Improves the squares of the window's free nodes; returns whether the search ended within its tolerances, or stalled
     * near them. If it did not, the squares are those that would be fastest if they were scaled into the limits.
     */
    boolean solve() {
        bestTimeS = Double.POSITIVE_INFINITY;
        isBestFair = false;
        if (!window.hasFreeNodes()) {
            window.evaluateTime();
            return true;
        }
        double perRow = START_GAP * window.start() / rows();
        each(slacks -> slacks.startMultipliers(perRow));
        for (int i = 0; i < MAX_ITERATIONS; i++) {
            double total = window.evaluateTime();
            double excess = window.evaluateRows();
            double gap = sum(Slacks::gap);
            if (gap < GAP * total && excess < EXCESS) {
                return true;
            }
            if (!(gap < Double.POSITIVE_INFINITY)) {
                break;
            }
            keepBest(total, excess, gap);
            correct(predict(gap));
        }
        System.arraycopy(best, 0, window.x, 0, window.intervals() + 1);
        return isBestFair;
    }

    private void keepBest(double total, double excess, double gap) {
        double scaled = total * Math.sqrt(1 + excess);
        if (scaled < bestTimeS) {
            bestTimeS = scaled;
            isBestFair = gap < STALLED_GAP * total && excess < STALLED_EXCESS;
            System.arraycopy(window.x, 0, best, 0, window.intervals() + 1);
        }
    }

    private int rows() {
        return speed.slacks().count()
                + acceleration.slacks().count()
                + jerk.slacks().count();
    }

    /** Lays the matrix, solves for the step to the boundary, and returns the product that the corrector aims at. */
    private double predict(double gap) {
        int n = window.intervals();
        matrix.clear(n + 1);
        Arrays.fill(change, 0, n + 1, 0);
        time.assemble(matrix, change, n);
        speed.assemble(matrix, change);
        acceleration.assemble(matrix, change);
        jerk.assemble(matrix, change, time);
        matrix.factor(window.from(), window.to());
        solveForChange();
        speed.predict(change);
        acceleration.predict(change);
        jerk.predict(change, time);
        each(Slacks::sumPredictor);
        double length = Math.min(1, 1 / max(Slacks::slackFall));
        double other = Math.min(1, 1 / max(Slacks::multiplierFall));
        double left = sum(slacks -> slacks.predictedGap(length, other)) / gap;
        return Math.max(MIN_CENTRING, left * left * left) * gap / rows();
    }

    private void correct(double product) {
        int n = window.intervals();
        Arrays.fill(change, 0, n + 1, 0);
        time.subtractGradient(change, n);
        speed.addForces(change, product);
        acceleration.addForces(change, product);
        jerk.addForces(change, time, product);
        solveForChange();
        speed.correct(change, product);
        acceleration.correct(change, product);
        jerk.correct(change, time, product);
        each(Slacks::sumCorrector);
        double length = Math.min(1, Math.min(TO_BOUNDARY / max(Slacks::slackFall), MAX_FALL / fall()));
        double other = Math.min(1, TO_BOUNDARY / max(Slacks::multiplierFall));
        for (int i = window.from(); i <= window.to(); i++) {
            window.x[i] += length * change[i];
        }
        each(slacks -> slacks.move(length, other));
    }

    private void solveForChange() {
        matrix.solve(change, window.from(), window.to());
        Arrays.fill(change, 0, window.from(), 0);
        Arrays.fill(change, window.to() + 1, window.intervals() + 1, 0);
    }

    /** Greatest decrease of a square relative to it. */
    private double fall() {
        double most = 0;
        for (int i = window.from(); i <= window.to(); i++) {
            if (-change[i] > most * window.x[i]) {
                most = -change[i] / window.x[i];
            }
        }
        return most;
    }

    private void each(Consumer<Slacks> action) {
        action.accept(speed.slacks());
        action.accept(acceleration.slacks());
        action.accept(jerk.slacks());
    }

    private double sum(ToDoubleFunction<Slacks> term) {
        return term.applyAsDouble(speed.slacks())
                + term.applyAsDouble(acceleration.slacks())
                + term.applyAsDouble(jerk.slacks());
    }

    private double max(ToDoubleFunction<Slacks> term) {
        return Math.max(
                term.applyAsDouble(speed.slacks()),
                Math.max(term.applyAsDouble(acceleration.slacks()), term.applyAsDouble(jerk.slacks())));
    }
}
