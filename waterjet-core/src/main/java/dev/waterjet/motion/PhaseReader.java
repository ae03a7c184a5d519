package dev.waterjet.motion;

/**
 * Cuts the motion without limits of jerk into phases for a grid, stretch by stretch in order: parts of constant acceleration,
 * and near rest the ramps of constant jerk.
 */
final class PhaseReader {

    /** Change of acceleration, relative to the greater one, that counts as a jump. */
    private static final double JUMP = 0.1;

    /**
     * Length from rest at which the ramp of constant jerk comes up to constant acceleration, over a^3/j^2: there
     * {@code 2 a s = (4.5 j s^2)^(2/3)}.
     */
    private static final double RAMP = 8 / (4.5 * 4.5);

    /** Angle of a step on an arc with limits of the axes, times the steps per jerk time, in rad. */
    private static final double ANGLE_STEPS = 0.6;

    /** Shortest step, over the time of its phase, where the jerk has no limit or a very high one. */
    private static final double SHORTEST_STEP = 1e-6;

    private final Stretches stretches;
    private final MotionCurve reference;
    private final double stepsPerJerkTime;
    private final double[] untilEventS;
    private int stretch;
    private int interval;
    private double sinceS;
    private int nextRest;
    private double lastRestM;
    private double nextRestM;

    // geometry and limits of the phases that are being read
    private double jerk;
    private double acceleration;
    private double rampM;
    private double angleSteps;

    PhaseReader(Stretches stretches, MotionCurve reference, double stepsPerJerkTime) {
        this.stretches = stretches;
        this.reference = reference;
        this.stepsPerJerkTime = stepsPerJerkTime;
        untilEventS = new double[reference.intervals() + 1];
        for (int k = reference.intervals() - 1; k >= 0; k--) {
            double time = reference.timeS(k + 1) - reference.timeS(k);
            untilEventS[k] = time + (isEvent(k + 1) ? 0 : untilEventS[k + 1]);
        }
    }

    /** Whether the acceleration of the reference jumps at a node. */
    private boolean isEvent(int node) {
        if (node == 0 || node == reference.intervals() || reference.square(node) == 0) {
            return true;
        }
        double before = reference.acceleration(node - 1);
        double after = reference.acceleration(node);
        return Math.abs(after - before) > JUMP * Math.max(Math.abs(before), Math.abs(after));
    }

    boolean hasNext() {
        return stretch < stretches.count();
    }

    /** Index of the next stretch. */
    int next() {
        return stretch;
    }

    /** Adds the phases of the next stretch. */
    void read(PhaseList phases) {
        int index = stretch++;
        double at = stretches.startM(index);
        double end = stretches.startM(index + 1);
        passRests(index);
        while (at < end) {
            while (reference.placeM(interval + 1) <= at) {
                interval++;
                sinceS = isEvent(interval) ? 0 : sinceS;
            }
            double until = Math.min(end, reference.placeM(interval + 1));
            addPhases(phases, index, at, until);
            at = until;
        }
    }

    private void passRests(int index) {
        if (stretches.startM(index) < nextRestM) {
            return;
        }
        lastRestM = nextRestM;
        nextRest = Math.max(nextRest, index) + 1;
        while (stretches.pointSquare(nextRest) > 0) {
            nextRest++;
        }
        nextRestM = stretches.startM(nextRest);
    }

    /** Adds a part of one interval of the reference, cut where the ramps from and to rest end. */
    private void addPhases(PhaseList phases, int index, double fromM, double toM) {
        double middle = (fromM + toM) / 2;
        jerk = stretches.tangentialJerk(index, middle);
        acceleration = stretches.tangentialAcceleration(index, middle);
        rampM = jerk == Double.POSITIVE_INFINITY
                ? 0
                : Math.min(RAMP * Math.pow(acceleration, 3) / (jerk * jerk), (nextRestM - lastRestM) / 2);
        angleSteps =
                stretches.isTurning(index) ? Math.abs(stretches.curvature(index)) * stepsPerJerkTime / ANGLE_STEPS : 0;
        double first = Math.min(toM, Math.max(fromM, lastRestM + rampM));
        double second = Math.min(toM, Math.max(first, nextRestM - rampM));
        addPhase(phases, index, fromM, first);
        addPhase(phases, index, first, second);
        addPhase(phases, index, second, toM);
    }

    private void addPhase(PhaseList phases, int index, double fromM, double toM) {
        if (toM <= fromM) {
            return;
        }
        GridPhase phase = phases.add();
        phase.stretch = index;
        phase.startM = fromM;
        phase.lengthM = toM - fromM;
        phase.startSpeed = reference.feedIn(interval, fromM);
        phase.endSpeed = reference.feedIn(interval, toM);
        phase.timeS = 2 * phase.lengthM / (phase.startSpeed + phase.endSpeed);
        phase.sinceS = sinceS;
        phase.untilS = Math.max(0, reference.timeS(interval) + untilEventS[interval] - reference.timeIn(interval, toM));
        sinceS += phase.timeS;
        phase.rampJerk = 0;
        if (toM <= lastRestM + rampM) {
            phase.rampFrom(lastRestM, jerk);
        } else if (fromM >= nextRestM - rampM) {
            phase.rampTo(nextRestM, jerk);
        }
        double fastest = Math.max(phase.startSpeed, phase.endSpeed);
        double jerkTime = Math.min(acceleration / jerk, Math.sqrt(fastest / jerk));
        phase.stepsPerJerkTime = stepsPerJerkTime;
        phase.stepS = Math.max(jerkTime / stepsPerJerkTime, SHORTEST_STEP * phase.timeS);
        phase.angleSteps = angleSteps * phase.lengthM;
    }
}
