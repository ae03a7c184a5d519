package dev.waterjet.motion;

import java.util.ArrayList;
import java.util.List;

/** List of phases that are used again and again. */
final class PhaseList {

    private final List<GridPhase> phases = new ArrayList<>();
    private int count;

    int count() {
        return count;
    }

    GridPhase get(int index) {
        return phases.get(index);
    }

    /** Adds a phase, which still holds old values. */
    GridPhase add() {
        if (count == phases.size()) {
            phases.add(new GridPhase());
        }
        return phases.get(count++);
    }

    /** Moves the phases from an index on to the front, and forgets those before them. */
    void keepFrom(int index) {
        int kept = count - index;
        for (int i = 0; i < kept; i++) {
            GridPhase phase = phases.get(i);
            phases.set(i, phases.get(index + i));
            phases.set(index + i, phase);
        }
        count = kept;
    }

    /** Sum of the steps of the phases from an index on, if they are even in time. */
    double evenSteps(int from) {
        double steps = 0;
        for (int i = from; i < count; i++) {
            steps += phases.get(i).evenSteps();
        }
        return steps;
    }
}
