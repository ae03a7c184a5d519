package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Phases against the motion that they cut: places, times, jerk times, and the times to the jumps of the acceleration. */
class PhaseReaderTest {

    private static final double FREE = Double.POSITIVE_INFINITY;
    private static final double STEPS = 8;

    private static DynamicLimits limits(boolean hasAxes, double jerk) {
        AxisLimits x = hasAxes ? new AxisLimits(0.2, 0.6, 6) : AxisLimits.NONE;
        AxisLimits y = hasAxes ? new AxisLimits(0.2, 0.4, 60) : AxisLimits.NONE;
        return new DynamicLimits(x, y, new PathLimits(0.5, FREE, jerk, FREE), CornerRule.stop(1e-5));
    }

    private static PathPieces pieces(Random random) {
        PathPieces pieces = new PathPieces(1);
        double heading = 0;
        for (int i = 0; i < 8; i++) {
            double length = 0.002 + 0.1 * random.nextDouble();
            if (i % 3 == 1) {
                pieces.arc(Math.cos(heading), Math.sin(heading), 0.03, length / 0.03);
                heading += length / 0.03;
            } else {
                pieces.line(length * Math.cos(heading), length * Math.sin(heading));
            }
            heading += i == 4 ? 1 : 0;
        }
        return pieces;
    }

    private static FeedCaps caps(double length) {
        FeedCaps caps = new FeedCaps();
        // the reason changes without the feed, and the feed by little and by much
        return caps.until(0.2 * length, 0.1, 1)
                .until(0.3 * length, 0.1, 2)
                .until(0.5 * length, 0.06, 3)
                .until(0.6 * length, 0.0601, 4)
                .until(FREE, 0.2, 5);
    }

    /** Nodes of the reference at which its acceleration jumps by more than a tenth. */
    private static List<Double> events(MotionCurve reference) {
        List<Double> events = new ArrayList<>(List.of(0.0));
        for (int node = 1; node < reference.intervals(); node++) {
            double before = reference.acceleration(node - 1);
            double after = reference.acceleration(node);
            if (Math.abs(after - before) > 0.1 * Math.max(Math.abs(before), Math.abs(after))) {
                events.add(reference.placeM(node));
            }
        }
        events.add(reference.lengthM());
        return events;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void phasesCutTheMotionAtStretchesIntervalsAndRamps(long seed) {
        PathPieces pieces = pieces(new Random(seed));
        double jerk = seed == 6 ? FREE : 10;
        Stretches stretches = new Stretches(pieces, caps(pieces.lengthM()), limits(seed % 2 == 0, jerk));
        MotionCurve reference = AccelerationWalk.run(stretches, Math.PI / 100);
        PhaseReader reader = new PhaseReader(stretches, reference, STEPS);
        List<Double> events = events(reference);
        double at = 0;
        double since = 0;
        int event = 1;
        for (int index = 0; reader.hasNext(); index++) {
            assertThat(reader.next()).isEqualTo(index);
            PhaseList phases = new PhaseList();
            reader.read(phases);
            for (int p = 0; p < phases.count(); p++) {
                GridPhase phase = phases.get(p);
                assertThat(phase.stretch).isEqualTo(index);
                assertThat(phase.startM).isCloseTo(at, within(1e-12));
                while (events.get(event) <= phase.startM + 1e-13) {
                    since = 0;
                    event++;
                }
                assertThat(phase.sinceS).isCloseTo(since, within(1e-9));
                double until = reference.timeAt(events.get(event)) - reference.timeAt(phase.endM());
                assertThat(phase.untilS).isCloseTo(Math.max(0, until), within(1e-9));
                since += reference.timeAt(phase.endM()) - reference.timeAt(phase.startM);
                requireSteps(stretches, reference, phase);
                at = phase.endM();
            }
            assertThat(at).isCloseTo(stretches.startM(index + 1), within(1e-12));
        }
        assertThat(at).isCloseTo(pieces.lengthM(), within(1e-12));
    }

    private static void requireSteps(Stretches stretches, MotionCurve reference, GridPhase phase) {
        double middle = phase.startM + phase.lengthM / 2;
        double jerk = stretches.tangentialJerk(phase.stretch, middle);
        double acceleration = stretches.tangentialAcceleration(phase.stretch, middle);
        double byReference = reference.timeAt(phase.endM()) - reference.timeAt(phase.startM);
        if (phase.rampJerk == 0) {
            assertThat(phase.timeS).isCloseTo(byReference, within(1e-9));
            assertThat(phase.startSpeed).isCloseTo(reference.feedAt(phase.startM), within(1e-9));
            assertThat(phase.endSpeed).isCloseTo(reference.feedAt(phase.endM()), within(1e-9));
        } else {
            assertThat(phase.timeS).isGreaterThan(byReference);
            // near rest: the ramp comes up to constant acceleration at (4.5 j s^2)^(2/3) = 2 a s
            double off = Math.min(Math.abs(phase.restM - phase.startM), Math.abs(phase.restM - phase.endM()));
            double ramp = 8 * Math.pow(acceleration, 3) / (4.5 * 4.5 * jerk * jerk);
            assertThat(off).isLessThan(ramp * 1.5);
            assertThat(Math.abs(phase.rampJerk)).isCloseTo(jerk, within(0.2 * jerk));
        }
        double fastest = Math.max(phase.startSpeed, phase.endSpeed);
        double jerkTime = Math.min(acceleration / jerk, Math.sqrt(fastest / jerk));
        double step = Math.max(jerkTime / STEPS, 1e-6 * phase.timeS);
        assertThat(phase.stepS).isCloseTo(step, within(0.02 * step));
        assertThat(phase.stepsPerJerkTime).isEqualTo(STEPS);
        double angle = stretches.isTurning(phase.stretch) ? phase.lengthM / 0.03 : 0;
        assertThat(phase.angleSteps).isCloseTo(angle * STEPS / 0.6, within(1e-9));
    }
}
