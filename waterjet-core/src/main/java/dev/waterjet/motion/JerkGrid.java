package dev.waterjet.motion;

/**
 * Grid for motion with jerk, laid along the path cell by cell. A cell is one stretch, or a cluster of stretches that are
 * shorter than a step. Nodes stand at the ends of cells; in between they are even in the time of the motion without limits of
 * jerk, a given number to the jerk time, and wider off the places where that motion's acceleration jumps. The intervals of a
 * cluster take the lowest cap that they touch.
 */
final class JerkGrid {

    /** Steps after which a cluster is closed by a node. */
    private static final double MAX_CLUSTER_STEPS = 64;

    /** Jerk times on either side of an interval at the cap that make it steady. */
    private static final double STEADY_JERK_TIMES = 3.5;

    /** Shortest interval, in m: shorter ones hold no more than the rounding of places. */
    private static final double SHORTEST_M = 1e-12;

    private final Stretches stretches;
    private final DynamicLimits limits;
    private final MotionCurve reference;
    private final PhaseReader reader;
    private final PhaseList phases = new PhaseList();
    /** Phases of the present cell; those behind them belong to a stretch that was read ahead. */
    private int cellPhases;

    private int referenceInterval;

    JerkGrid(Stretches stretches, MotionCurve reference, double stepsPerJerkTime) {
        this.stretches = stretches;
        this.limits = stretches.limits;
        this.reference = reference;
        this.reader = new PhaseReader(stretches, reference, stepsPerJerkTime);
    }

    /** Whether the grid has come to the end of the path. */
    boolean isComplete() {
        return !reader.hasNext() && cellPhases == phases.count();
    }

    /** Adds the nodes of the next cell. */
    void extend(GridNodes nodes) {
        if (nodes.count == 0) {
            nodes.add(0, 0, 0);
            nodes.cap(0, stretches.pointSquare(0), stretches.pointWhy(0));
        }
        phases.keepFrom(cellPhases);
        if (phases.count() == 0) {
            reader.read(phases);
        }
        int first = phases.get(0).stretch;
        double steps = phases.evenSteps(0);
        cellPhases = phases.count();
        int last = steps < 1 ? extendCluster(first, steps) : first;
        lay(nodes, first, last);
    }

    /** Reads on while stretches are shorter than a step; returns the last stretch of the cluster. */
    private int extendCluster(int first, double stepsOfFirst) {
        int last = first;
        double steps = stepsOfFirst;
        while (reader.hasNext() && stretches.pointSquare(reader.next()) > 0 && steps < MAX_CLUSTER_STEPS) {
            int next = reader.next();
            reader.read(phases);
            double more = phases.evenSteps(cellPhases);
            if (more >= 1) {
                break;
            }
            steps += more;
            last = next;
            cellPhases = phases.count();
        }
        return last;
    }

    /** Adds the nodes of a cell of stretches from one index up to and including another. */
    private void lay(GridNodes nodes, int first, int last) {
        double all = 0;
        for (int i = 0; i < cellPhases; i++) {
            GridPhase phase = phases.get(i);
            phase.isGrowing = first == last;
            all += phase.steps();
        }
        int n = Math.max(1, (int) Math.ceil(all - 1e-9));
        int firstNode = nodes.count - 1;
        double end = stretches.startM(last + 1);
        nodes.stretch[firstNode] = first;
        int p = 0;
        double done = 0;
        double here = phases.get(0).steps();
        for (int j = 1; j < n; j++) {
            double target = all * j / n;
            while (p < cellPhases - 1 && done + here < target) {
                done += here;
                here = phases.get(++p).steps();
            }
            GridPhase phase = phases.get(p);
            double place = phase.placeAfter(target - done);
            if (place - nodes.placeM[nodes.count - 1] >= SHORTEST_M && end - place >= SHORTEST_M) {
                nodes.add(place, referenceSquare(place), phase.stretch);
            }
        }
        close(nodes, firstNode, last);
        if (first == last) {
            markSteady(nodes, firstNode);
        }
    }

    /** Adds the node at the end of a cell and caps all of its nodes. */
    private void close(GridNodes nodes, int firstNode, int last) {
        double end = stretches.startM(last + 1);
        nodes.add(end, referenceSquare(end), last + 1);
        for (int k = firstNode; k < nodes.count - 1; k++) {
            int at = nodes.stretch[k];
            capInterval(nodes, k, at);
            while (at < last && stretches.startM(at + 1) < nodes.placeM[k + 1]) {
                at++;
                nodes.cap(k, stretches.pointSquare(at), stretches.pointWhy(at));
                nodes.cap(k + 1, stretches.pointSquare(at), stretches.pointWhy(at));
                capInterval(nodes, k, at);
            }
        }
        nodes.cap(nodes.count - 1, stretches.pointSquare(last + 1), stretches.pointWhy(last + 1));
    }

    private void capInterval(GridNodes nodes, int k, int at) {
        for (int node = k; node <= k + 1; node++) {
            nodes.cap(node, stretches.capSquare(at), stretches.capWhy(at));
            if (stretches.isTurning(at)) {
                double heading = stretches.headingAt(at, nodes.placeM[node]);
                double tx = Math.cos(heading);
                double ty = Math.sin(heading);
                double speed = limits.axisSpeed(tx, ty);
                nodes.cap(node, speed * speed, limits.axisSpeedLimit(tx, ty).code());
            }
        }
    }

    /** Marks the interval in the middle of a long part at the cap. */
    private void markSteady(GridNodes nodes, int firstNode) {
        for (int i = 0; i < cellPhases; i++) {
            GridPhase phase = phases.get(i);
            double margin = STEADY_JERK_TIMES * phase.stepsPerJerkTime * phase.stepS * phase.startSpeed;
            if (stretches.isTurning(phase.stretch) || !phase.isAtConstantSpeed() || phase.lengthM <= 2 * margin) {
                continue;
            }
            double middle = phase.startM + phase.lengthM / 2;
            int k = firstNode;
            while (nodes.placeM[k + 1] <= middle) {
                k++;
            }
            nodes.isSteady[k] = nodes.placeM[k] >= phase.startM + margin
                    && nodes.placeM[k + 1] <= phase.endM() - margin
                    && nodes.capSquare[k] == nodes.capSquare[k + 1];
        }
    }

    /** Square of the reference's feed at a place not before the last one asked. */
    private double referenceSquare(double atM) {
        while (referenceInterval < reference.intervals() - 1 && reference.placeM(referenceInterval + 1) < atM) {
            referenceInterval++;
        }
        return reference.squareIn(referenceInterval, Math.min(atM, reference.placeM(referenceInterval + 1)));
    }
}
