package dev.waterjet.motion;

/**
 * Fastest motion under limits of speed, acceleration and jerk, from rest to rest, window by window.
 *
 * <p>A window ends at rest, or in the middle of a long part at the cap, or where it is full. A full window brakes to rest at
 * its end; all but its last part is committed, and the next window goes on with the speed and acceleration there. Memory is
 * that of a window, and time grows in proportion to the grid. If a window that goes on has no solution, the braking of the
 * one before is kept, which is slower but safe.
 */
final class JerkPass {

    /** Angle of an interval of the reference motion on arcs with limits of the axes. */
    private static final double REFERENCE_ANGLE = Math.PI / 100;

    /** Shares of the reference's squares from which the search starts, one after the other if it fails. */
    private static final double[] START_SHARES = {0.7, 0.3};

    /** Stretches at the end of a full window that are not committed, and jerk times besides the braking distance. */
    private static final int OPEN_STRETCHES = 4;

    private static final double OPEN_JERK_TIMES = 6.5;

    private static final int MIN_CAPACITY = 256;

    /** Times that a window is halved whose optimum is not found, and nodes below which it is not. */
    private static final int MAX_RESIZINGS = 3;

    private static final int MIN_WINDOW = 64;

    private final Stretches stretches;
    private final MotionSettings settings;
    private final boolean closesAtCap;
    private final int windowNodes;
    private final JerkGrid grid;
    private final GridNodes nodes = new GridNodes(MIN_CAPACITY);
    private final MotionCurve curve = new MotionCurve(MIN_CAPACITY);
    private final RowLayer layer;
    private JerkWindow window;
    private InteriorPoint solver;
    private WindowLimits governing;

    private boolean isAtRest = true;
    /** Last node of a full window's solution, which ends at rest there; 0 if there is none. */
    private int tail;

    JerkPass(Stretches stretches, MotionSettings settings) {
        this(stretches, settings, true);
    }

    private JerkPass(Stretches stretches, MotionSettings settings, boolean closesAtCap) {
        this.stretches = stretches;
        this.settings = settings;
        this.closesAtCap = closesAtCap;
        windowNodes = settings.windowNodes();
        MotionCurve reference = AccelerationWalk.run(stretches, REFERENCE_ANGLE);
        grid = new JerkGrid(stretches, reference, settings.stepsPerJerkTime());
        layer = new RowLayer(stretches, nodes);
        window = new JerkWindow(layer, nodes, MIN_CAPACITY);
        solver = new InteriorPoint(window);
        governing = new WindowLimits(window);
    }

    /**
     * Computes the motion. Each path has one: a window from rest to rest is slowed down into the limits if its optimum is
     * not found, and any other window has the braking of the one before. Only behind a window that closed at the cap there
     * is none; the motion is then computed anew without such windows.
     */
    MotionCurve run() {
        while (!grid.isComplete() || nodes.count > 1) {
            if (!advance()) {
                return new JerkPass(stretches, settings, false).run();
            }
        }
        return curve;
    }

    /** Adds what the next window settles; returns whether there was any. An interval from rest to rest gets a middle. */
    private boolean advance() {
        int most = windowNodes;
        int resizings = 0;
        while (true) {
            int last = gather(most);
            boolean isClosed = isEnd(last);
            if (last == 1 && isAtRest && nodes.capSquare[1] == 0) {
                halveFirst();
                continue;
            }
            boolean isAtRestLast = !isClosed || nodes.capSquare[last] == 0;
            boolean isSolved = solve(last, isAtRestLast);
            if (!isSolved && tail > 0) {
                commitTail();
                return true;
            }
            if (!isSolved && resizings++ < MAX_RESIZINGS && last > MIN_WINDOW) {
                most = last / 2;
                continue;
            }
            if (!isSolved && !(isAtRest && isAtRestLast)) {
                return false;
            }
            if (!isSolved) {
                window.scaleIntoLimits();
                keepSolution(last);
            }
            int commit = isClosed ? last : committed(last);
            if (!isClosed && commit < Math.max(2, last / 4)) {
                tail = last;
                most = 2 * last;
                continue;
            }
            governing.find();
            commit(commit, isClosed && isAtRestLast);
            tail = isClosed ? 0 : last - commit + 1;
            return true;
        }
    }

    private void halveFirst() {
        int slowest = nodes.stretch[0];
        for (int at = slowest + 1; at < stretches.count() && stretches.startM(at) < nodes.placeM[1]; at++) {
            slowest = stretches.capSquare(at) < stretches.capSquare(slowest) ? at : slowest;
        }
        nodes.halve(0, stretches.capSquare(slowest), stretches.capWhy(slowest));
    }

    /** Fills the buffer up to the first node that can close a window; returns the index of the window's last node. */
    private int gather(int most) {
        int checked = isAtRest ? 1 : 2;
        while (true) {
            for (; checked < nodes.count; checked++) {
                if (isEnd(checked) || checked >= most) {
                    return checked;
                }
            }
            grid.extend(nodes);
        }
    }

    private boolean isEnd(int node) {
        return nodes.capSquare[node] == 0 || (closesAtCap && nodes.isSteady[node - 1]);
    }

    private boolean solve(int last, boolean isAtRestLast) {
        if (window.capacity() <= last) {
            window = new JerkWindow(layer, nodes, Math.max(last + 1, 2 * window.capacity()));
            solver = new InteriorPoint(window);
            governing = new WindowLimits(window);
        }
        for (double share : START_SHARES) {
            window.lay(last, isAtRest, isAtRestLast, share);
            if (solver.solve()) {
                keepSolution(last);
                return true;
            }
        }
        return false;
    }

    private void keepSolution(int last) {
        System.arraycopy(window.x, 0, nodes.solution, 0, last + 1);
    }

    /** Index of the last node of a full window that the end of the window does not influence; 0 if there is none. */
    private int committed(int last) {
        for (int i = last - 1; i > 0; i--) {
            double left = nodes.placeM[last] - nodes.placeM[i];
            if (nodes.stretch[last] - nodes.stretch[i] >= OPEN_STRETCHES && left >= openM(i)) {
                return lastFree(i);
            }
        }
        return 0;
    }

    /** Length that braking and the adjustment before it take from a node. */
    private double openM(int node) {
        double square = nodes.reference[node];
        double speed = Math.sqrt(square);
        double a = stretches.tangentialAcceleration(nodes.stretch[node], nodes.placeM[node]);
        double jerk = stretches.tangentialJerk(nodes.stretch[node], nodes.placeM[node]);
        double jerkTime = Math.min(a / jerk, Math.sqrt(speed / jerk));
        return square / (2 * a) + OPEN_JERK_TIMES * jerkTime * speed;
    }

    /** Last node up to a given one from which the motion could go on slower; the given one if there is none near. */
    private int lastFree(int node) {
        for (int i = node; i > 3 * node / 4; i--) {
            if (window.isFree(i)) {
                return i;
            }
        }
        return node;
    }

    /** Adds the intervals up to a node to the motion and drops them; unless it rests there, the last one is kept. */
    private void commit(int last, boolean isAtRestLast) {
        for (int k = isAtRest ? 0 : 1; k < last; k++) {
            curve.add(nodes.placeM[k + 1], nodes.solution[k + 1], governing.code(k));
        }
        nodes.drop(isAtRestLast ? last : last - 1);
        isAtRest = isAtRestLast;
    }

    /** Takes the end of the solution before, which brakes to rest. */
    private void commitTail() {
        for (int k = isAtRest ? 0 : 1; k < tail; k++) {
            curve.add(nodes.placeM[k + 1], nodes.solution[k + 1], GoverningLimit.REST.code());
        }
        nodes.drop(tail);
        isAtRest = true;
        tail = 0;
    }
}
