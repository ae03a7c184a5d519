package dev.waterjet.kerf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NozzleMotionTest {

    private static final double[] TIMES = {2, 5, 9, 10};
    private static final double[] FEEDS = {0.01, 0, 0.03};

    /** 3 s at 10 mm/s, 4 s standing, 1 s at 30 mm/s. */
    @ParameterizedTest
    @CsvSource({"0, 0", "2, 0", "3, 0.01", "5, 0.03", "7, 0.03", "9, 0.03", "9.5, 0.045", "10, 0.06", "11, 0.06"})
    void theWayIsTheSumOfFeedsOverTimes(double time, double way) {
        assertThat(NozzleMotion.fromRestSi(TIMES, FEEDS).waySi(time)).isCloseTo(way, within(1e-15));
        double before = time < 2 ? 0.005 * (time - 2) : way;
        assertThat(NozzleMotion.fromSteadyFeedSi(0.005, TIMES, FEEDS).waySi(time))
                .isCloseTo(before, within(1e-15));
    }

    @Test
    void piecesHaveTheirFeedsTimesAndWays() {
        NozzleMotion motion = NozzleMotion.fromSteadyFeedSi(0.005, TIMES, FEEDS);

        assertThat(motion.pieces()).isEqualTo(3);
        assertThat(List.of(motion.feed(0), motion.feed(1), motion.feed(2), motion.feed(3)))
                .containsExactly(0.005, 0.01, 0.0, 0.03);
        assertThat(List.of(motion.endTime(0), motion.endTime(1), motion.endTime(3)))
                .containsExactly(2.0, 5.0, 10.0);
        assertThat(motion.endWay(0)).isZero();
        assertThat(motion.endWay(2)).isCloseTo(0.03, within(1e-15));
        assertThat(motion.startSi()).isEqualTo(2);
        assertThat(motion.endSi()).isEqualTo(10);
        assertThat(NozzleMotion.fromRestSi(TIMES, FEEDS).feed(0)).isZero();
        assertThat(motion).asString().contains("8.0 s", "3 feed rates");
    }

    /** Neighbours of one feed are one piece, also standing ones, but not with the run before the first time. */
    @Test
    void neighboursOfOneFeedAreOnePiece() {
        NozzleMotion split = NozzleMotion.fromRestSi(
                new double[] {2, 3, 4.5, 5, 6, 9, 9.25, 10}, new double[] {0.01, 0.01, 0.01, 0, 0, 0.03, 0.03});
        NozzleMotion whole = NozzleMotion.fromRestSi(TIMES, FEEDS);

        assertThat(split.pieces()).isEqualTo(3);
        assertThat(split).isEqualTo(whole).hasSameHashCodeAs(whole);
        for (double time = 1; time < 11; time += 0.125) {
            assertThat(split.waySi(time)).isCloseTo(whole.waySi(time), within(1e-15));
        }
        NozzleMotion running = NozzleMotion.fromSteadyFeedSi(0.01, TIMES, FEEDS);
        assertThat(running.pieces()).isEqualTo(3);
        assertThat(running).isNotEqualTo(whole).isNotEqualTo(NozzleMotion.fromSteadyFeedSi(0.02, TIMES, FEEDS));
        assertThat(whole)
                .isNotEqualTo(NozzleMotion.fromRestSi(new double[] {2, 5, 9, 11}, FEEDS))
                .isNotEqualTo(NozzleMotion.fromRestSi(TIMES, new double[] {0.01, 0, 0.04}))
                .isNotEqualTo("a motion");
        assertThat(NozzleMotion.fromRestSi(TIMES, new double[] {0.01, 0.0100001, 0.03})
                        .pieces())
                .isEqualTo(3);
        assertThat(NozzleMotion.fromRestSi(TIMES, new double[] {0.0100001, 0.01, 0.03})
                        .pieces())
                .isEqualTo(3);
    }

    @Test
    void motionsThatAreNoneAreRefused() {
        assertThat(Refusals.of(() -> NozzleMotion.fromRestSi(TIMES, new double[] {0.01, 0.02})))
                .isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> NozzleMotion.fromRestSi(TIMES, new double[] {0.01, 0.02, 0.01, 0.02})))
                .isEqualTo("must-be-at-least");
        assertThat(Refusals.of(() -> NozzleMotion.fromRestSi(TIMES, new double[] {0.01, -0.02, 0.01})))
                .isEqualTo("must-be-at-least");
        assertThat(Refusals.of(() -> NozzleMotion.fromRestSi(new double[] {2, 5, 5, 10}, FEEDS)))
                .isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> NozzleMotion.fromSteadyFeedSi(0, TIMES, FEEDS)))
                .isEqualTo("must-be-above");
    }

    /** The front at one time is that of many times at once, in a motion that starts from rest or from a steady feed. */
    @Test
    void manyTimesAreAnsweredAsOneByOne() {
        CutFront front = CutFrontTest.powerLaw(1.15);
        for (NozzleMotion motion : List.of(
                NozzleMotion.fromSteadyFeedSi(1e-3, new double[] {0, 3, 7, 20}, new double[] {2e-4, 0, 1e-3}),
                CutFrontTest.randomMotion(4, 30))) {
            double[] times = new double[80];
            for (int i = 0; i < times.length; i++) {
                times[i] = (i - i % 2) * motion.endSi() / 60 - 1;
            }
            double[] positions = new double[81];
            positions[80] = -7;
            front.positionsSi(motion, 0.02, times, positions);
            for (int i = 0; i < times.length; i++) {
                double lag = front.lagAtSi(motion, 0.02, times[i]);
                assertThat(motion.waySi(times[i]) - positions[i]).isCloseTo(lag, within(1e-15));
            }
            assertThat(positions[80]).isEqualTo(-7);
            Refusals.assertRefused(
                    () -> front.positionsSi(motion, 0.02, times, new double[79]),
                    "must-be-at-least",
                    "space for positions",
                    80);
        }
    }

    /** Before its first time a running nozzle has the steady lag, and one over a pierced hole none. */
    @Test
    void beforeTheMotionTheFrontIsSteady() {
        CutFront front = CutFrontTest.powerLaw(1.3);
        NozzleMotion running = NozzleMotion.fromSteadyFeedSi(1e-3, new double[] {0, 5}, new double[] {5e-4});
        NozzleMotion standing = NozzleMotion.fromRestSi(new double[] {0, 5}, new double[] {5e-4});

        for (double time : new double[] {-100, -1, 0}) {
            assertThat(front.lagAtSi(running, 0.02, time)).isCloseTo(front.lagSi(1e-3, 0.02), within(1e-15));
            assertThat(front.lagAtSi(standing, 0.02, time)).isZero();
        }
    }
}
