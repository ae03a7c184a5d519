package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Squares from which the search in a window starts, and which of its nodes are free. */
class WindowStartTest {

    private static final double FREE = Double.POSITIVE_INFINITY;
    private static final double LENGTH = 0.2;

    private final Stretches stretches = new Stretches(
            new PathPieces(1).line(LENGTH, 0),
            new FeedCaps().until(0.08, 0.1, 1).until(0.12, 0.05, 2).until(FREE, 0.12, 3),
            new DynamicLimits(
                    AxisLimits.NONE, AxisLimits.NONE, new PathLimits(0.5, FREE, 5, FREE), CornerRule.arc(1e-5)));
    private final GridNodes nodes = new GridNodes(8);
    private final RowLayer layer = new RowLayer(stretches, nodes);

    WindowStartTest() {
        MotionCurve reference = AccelerationWalk.run(stretches, Math.PI / 100);
        JerkGrid grid = new JerkGrid(stretches, reference, 8);
        while (!grid.isComplete()) {
            grid.extend(nodes);
        }
    }

    /** A share of the motion without limits of jerk, below the caps and the ramps from and to rest. */
    private double square(int i, int last, boolean isRestFirst, boolean isRestLast) {
        double square = Math.min(nodes.reference[i], nodes.capSquare[i]);
        if (isRestFirst) {
            square = Math.min(square, ramp(nodes.placeM[i]));
        }
        return isRestLast ? Math.min(square, ramp(nodes.placeM[last] - nodes.placeM[i])) : square;
    }

    /** Square of the speed at a distance from rest: (9/2 j s^2)^(2/3), and 2 a s. */
    private static double ramp(double fromRest) {
        return Math.min(Math.pow(4.5 * 5 * fromRest * fromRest, 2.0 / 3), 2 * 0.5 * fromRest);
    }

    @ParameterizedTest
    @CsvSource({
        "true, true, 0.7, 0",
        "true, false, 0.3, 0",
        "false, true, 0.7, 12",
        "false, false, 1, 30",
        "true, true, 0.5, 9"
    })
    void theStartGoesOverFromTheSolutionBeforeToTheReference(
            boolean isRestFirst, boolean isRestLast, double share, int known) {
        int last = nodes.count - 1 - (isRestLast ? 0 : 20);
        for (int i = 0; i < known; i++) {
            nodes.solution[i] = 1e-3 + 1e-5 * i;
        }
        JerkWindow window = new JerkWindow(layer, nodes, nodes.count);
        window.lay(last, isRestFirst, isRestLast, share);

        assertThat(window.intervals()).isEqualTo(last);
        assertThat(window.from()).isEqualTo(isRestFirst ? 1 : 2);
        assertThat(window.to()).isEqualTo(isRestLast ? last - 1 : last - 2);
        assertThat(window.hasFreeNodes()).isTrue();
        for (int i = window.from(); i <= window.to(); i++) {
            double old = i < known ? 1 - (double) i / known : 0;
            double before = i < known ? nodes.solution[i] : 0;
            double expected = old * before + (1 - old) * share * square(i, last, isRestFirst, isRestLast);
            assertThat(window.x[i]).as("node %d", i).isCloseTo(expected, within(1e-12));
            assertThat(window.lengthM[i]).isEqualTo(nodes.placeM[i + 1] - nodes.placeM[i]);
        }
        assertThat(window.x[0]).isEqualTo(isRestFirst ? 0 : nodes.solution[0]);
        assertThat(window.x[last]).isEqualTo(isRestLast ? 0 : nodes.capSquare[last]);
        if (!isRestFirst) {
            assertThat(window.x[1]).isEqualTo(nodes.solution[1]);
        }
        if (!isRestLast) {
            assertThat(window.x[last - 1]).isEqualTo(nodes.capSquare[last - 1]);
        }
        requireRows(window, last, isRestFirst, isRestLast);
    }

    /** Rows of all intervals and nodes that a free node touches; only beside rest the cap is that of the jerk. */
    private void requireRows(JerkWindow window, int last, boolean isRestFirst, boolean isRestLast) {
        assertThat(window.acceleration.rows()).isEqualTo(window.to() - window.from() + 2);
        assertThat(window.acceleration.interval(0)).isEqualTo(window.from() - 1);
        int firstJerk = Math.max(1, window.from() - 1);
        int lastJerk = Math.min(last - 1, window.to() + 1);
        assertThat(window.jerk.rows()).isEqualTo(lastJerk - firstJerk + 1);
        assertThat(window.jerk.node(0)).isEqualTo(firstJerk);
        assertThat(window.speed.slacks().count()).isEqualTo(window.to() - window.from() + 1);
        assertThat(window.cap[1] < nodes.capSquare[1]).isEqualTo(isRestFirst);
        assertThat(window.cap[last - 1] < nodes.capSquare[last - 1]).isEqualTo(isRestLast);
        assertThat(window.cap[5]).isEqualTo(nodes.capSquare[5]);
    }

    @ParameterizedTest
    @CsvSource({"2, false, false", "1, true, true"})
    void aWindowWithoutFreeNodesIsSolvedAsItStands(int last, boolean isRestFirst, boolean isRestLast) {
        nodes.solution[0] = 4e-4;
        nodes.solution[1] = 5e-4;
        JerkWindow window = new JerkWindow(layer, nodes, nodes.count);
        window.lay(last, isRestFirst, isRestLast, 0.7);

        assertThat(window.hasFreeNodes()).isFalse();
        assertThat(new InteriorPoint(window).solve()).isTrue();
        assertThat(window.acceleration.rows()).isZero();
        assertThat(window.jerk.rows()).isZero();
        if (!isRestFirst) {
            double first = nodes.placeM[1] / ((Math.sqrt(window.x[0]) + Math.sqrt(window.x[1])) / 2);
            assertThat(window.time.timeS[0]).isCloseTo(first, within(1e-12));
        }
    }
}
