package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Steps of a phase against the sum over small times of what each adds, and places against the motion stepped in small times. */
class GridPhaseTest {

    private static final int FINE = 20_000;

    private static GridPhase phase(double start, double length, double startSpeed, double endSpeed) {
        GridPhase phase = new GridPhase();
        phase.startM = start;
        phase.lengthM = length;
        phase.startSpeed = startSpeed;
        phase.endSpeed = endSpeed;
        phase.timeS = 2 * length / (startSpeed + endSpeed);
        phase.stepsPerJerkTime = 4;
        phase.stepS = phase.timeS / 200;
        phase.sinceS = 0.02 * phase.timeS;
        phase.untilS = 0.1 * phase.timeS;
        return phase;
    }

    /** Length of a step: the given one up to two jerk times from an event, then ln 1.5 longer for each step of time. */
    private static double step(GridPhase phase, double after) {
        if (!phase.isGrowing) {
            return phase.stepS;
        }
        double off = Math.min(phase.sinceS + after, phase.untilS + phase.timeS - after) / phase.stepS;
        return phase.stepS * (1 + Math.log(1.5) * Math.max(0, off - 2 * phase.stepsPerJerkTime));
    }

    private static double speed(GridPhase phase, double start, double after) {
        return start + (phase.endSpeed - phase.startSpeed) * after / phase.timeS;
    }

    @ParameterizedTest
    @CsvSource({"true, 0", "false, 0", "true, 30", "false, 30", "true, 900"})
    void stepsAddUpOverTheTimeAndPlacesAreTheirInverse(boolean isGrowing, double angleSteps) {
        for (double endSpeed : new double[] {0, 0.4, 1, 3}) {
            GridPhase phase = phase(7, 2, 1, endSpeed);
            phase.isGrowing = isGrowing;
            phase.angleSteps = angleSteps;
            double dt = phase.timeS / FINE;
            double steps = 0;
            double at = 7;
            for (int i = 0; i < FINE; i++) {
                double middle = (i + 0.5) * dt;
                double way = speed(phase, 1, middle) * dt;
                steps += dt / step(phase, middle) + angleSteps * way / 2;
                at += way;
                if (i % 1999 == 0) {
                    assertThat(phase.placeAfter(steps)).isCloseTo(at, within(1e-6));
                }
            }
            assertThat(phase.steps()).isCloseTo(steps, within(1e-4 * steps));
            assertThat(phase.evenSteps()).isCloseTo(200 + angleSteps, within(1e-9));
            assertThat(phase.placeAfter(phase.steps())).isCloseTo(9, within(1e-9));
            assertThat(phase.placeAfter(0)).isCloseTo(7, within(1e-12));
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "5, 0", "0, 3", "100, 0", "0, 100"})
    void stepsGrowFromTheNearestEvent(double since, double until) {
        GridPhase phase = phase(0, 1, 1, 1);
        phase.isGrowing = true;
        phase.sinceS = since;
        phase.untilS = until;
        double before = 0;
        double beforeStep = 0;
        for (int i = 1; i <= (int) phase.steps(); i++) {
            double at = phase.placeAfter(i);
            double own = at - before;
            // the speed is 1, so that places are times
            assertThat(own)
                    .isBetween(
                            phase.stepS * (1 - 1e-9),
                            (1 + 1e-9) * Math.max(phase.stepS, 0.55 * Math.min(since + at, until + 1 - before)));
            if (since == 0 && until == 100 && before > phase.stepS * 10) {
                assertThat(own / beforeStep).isCloseTo(1.5, within(1e-6));
            }
            before = at;
            beforeStep = own;
        }
        assertThat(phase.placeAfter(phase.steps() / 2)).isBetween(0.0, 1.0);
    }

    /** From rest at constant jerk the place is j t^3/6 and the speed j t^2/2. */
    @ParameterizedTest
    @CsvSource({"0, 0.3", "0.05, 0.2", "0.3, 0.01"})
    void aRampFromRestIsThatOfConstantJerk(double near, double length) {
        double jerk = 3;
        GridPhase phase = phase(11 + near, length, 100, 100);
        phase.rampFrom(11, jerk);

        double first = Math.cbrt(6 * near / jerk);
        double last = Math.cbrt(6 * (near + length) / jerk);
        assertThat(phase.timeS).isCloseTo(last - first, within(1e-12));
        assertThat(phase.startSpeed).isCloseTo(jerk * first * first / 2, within(1e-12));
        assertThat(phase.endSpeed).isCloseTo(jerk * last * last / 2, within(1e-12));
        phase.stepS = phase.timeS / 50;
        for (double share : new double[] {0.1, 0.5, 0.9}) {
            double t = first + share * (last - first);
            assertThat(phase.placeAfter(50 * share)).isCloseTo(11 + jerk * t * t * t / 6, within(1e-12));
        }
        phase.angleSteps = 20;
        assertBoth(phase, first, last, t -> 11 + jerk * t * t * t / 6);
    }

    private static void assertBoth(GridPhase phase, double first, double last, DoubleUnaryOperator place) {
        for (double share : new double[] {0.2, 0.6, 0.95}) {
            double at = place.applyAsDouble(first + share * (last - first));
            double number = 50 * share + 20 * (at - phase.startM) / phase.lengthM;
            assertThat(phase.placeAfter(number)).isCloseTo(at, within(1e-9 * phase.lengthM));
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 0.3", "0.05, 0.2", "0.3, 0.01"})
    void aRampToRestIsOneFromRestBackwards(double near, double length) {
        double jerk = 3;
        GridPhase phase = phase(11 - near - length, length, 100, 100);
        phase.rampTo(11, jerk);

        double first = Math.cbrt(6 * (near + length) / jerk);
        double last = Math.cbrt(6 * near / jerk);
        assertThat(phase.timeS).isCloseTo(first - last, within(1e-12));
        assertThat(phase.startSpeed).isCloseTo(jerk * first * first / 2, within(1e-12));
        assertThat(phase.endSpeed).isCloseTo(jerk * last * last / 2, within(1e-12));
        phase.stepS = phase.timeS / 50;
        for (double share : new double[] {0.1, 0.5, 0.9}) {
            double t = first + share * (last - first);
            assertThat(phase.placeAfter(50 * share)).isCloseTo(11 - jerk * t * t * t / 6, within(1e-12));
        }
        phase.angleSteps = 20;
        assertBoth(phase, first, last, t -> 11 - jerk * t * t * t / 6);
    }

    @Test
    void aFasterRampIsNotTaken() {
        GridPhase phase = phase(0.5, 1, 0.1, 0.3);
        phase.rampFrom(0, 1e9);
        phase.rampTo(2, 1e9);

        assertThat(phase.rampJerk).isZero();
        assertThat(phase.timeS).isCloseTo(5, within(1e-12));
        assertThat(phase.startSpeed).isEqualTo(0.1);
        assertThat(phase.endM()).isEqualTo(1.5);
    }

    @Test
    void constantSpeedIsToldFromAccelerationAndRamp() {
        assertThat(phase(0, 1, 2, 2).isAtConstantSpeed()).isTrue();
        assertThat(phase(0, 1, 2, 2 + 1e-10).isAtConstantSpeed()).isTrue();
        assertThat(phase(0, 1, 2, 2 + 1e-7).isAtConstantSpeed()).isFalse();
        assertThat(phase(0, 1, 2 + 1e-7, 2).isAtConstantSpeed()).isFalse();
        GridPhase ramp = phase(0.5, 1, 2, 2);
        ramp.rampJerk = 1;
        assertThat(ramp.isAtConstantSpeed()).isFalse();
    }

    @Test
    void movedPhasesOfAListKeepTheirOrder() {
        Random random = new Random(3);
        PhaseList list = new PhaseList();
        List<Double> expected = new ArrayList<>();
        for (int round = 0; round < 50; round++) {
            int more = random.nextInt(5);
            for (int i = 0; i < more; i++) {
                double start = random.nextDouble();
                GridPhase phase = list.add();
                phase.startM = start;
                phase.timeS = start;
                phase.stepS = 2;
                phase.angleSteps = 1;
                expected.add(start);
            }
            int from = random.nextInt(expected.size() + 1);
            list.keepFrom(from);
            expected = new ArrayList<>(expected.subList(from, expected.size()));
            assertThat(list.count()).isEqualTo(expected.size());
            for (int i = 0; i < expected.size(); i++) {
                assertThat(list.get(i).startM).isEqualTo(expected.get(i));
            }
            double steps = 0;
            for (int i = expected.size() / 2; i < expected.size(); i++) {
                steps += expected.get(i) / 2 + 1;
            }
            assertThat(list.evenSteps(expected.size() / 2)).isCloseTo(steps, within(1e-12));
        }
    }
}
