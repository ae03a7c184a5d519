package dev.waterjet.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Blocks of a plan as pieces of constant acceleration, against the equations of motion. */
class FeedPiecesTest {

    private static FeedPieces block(double length, double entry, double peak, double exit, double time) {
        FeedPieces pieces = new FeedPieces();
        pieces.addBlock(length, entry, peak, exit, time);
        return pieces;
    }

    private static double time(FeedPieces pieces) {
        double[] at = pieces.distances();
        double sum = 0;
        for (int i = 0; i + 1 < at.length; i++) {
            sum += 2 * (at[i + 1] - at[i]) / (pieces.starts()[i] + pieces.ends()[i]);
        }
        return sum;
    }

    /** Ramp up, cruise, ramp down: v^2 = v0^2 + 2 a l on the ramps. */
    @ParameterizedTest
    @CsvSource({
        "0.05, 0, 0.02, 0, 0.4",
        "0.05, 0.01, 0.02, 0.005, 0.4",
        "0.05, 0.005, 0.02, 0.01, 3",
        "0.2, 0.03, 0.08, 0, 0.05",
        "7, 0, 0.5, 0.1, 2"
    })
    void aBlockAcceleratesCruisesAndBrakesAtOneAcceleration(
            double length, double entry, double peak, double exit, double acceleration) {
        double up = (peak * peak - entry * entry) / (2 * acceleration);
        double down = (peak * peak - exit * exit) / (2 * acceleration);
        double cruise = length - up - down;
        double time = (peak - entry) / acceleration + cruise / peak + (peak - exit) / acceleration;

        FeedPieces pieces = block(length, entry, peak, exit, time);

        double tolerance = 1e-9 * length;
        assertThat(cruise).isPositive();
        assertThat(pieces.distances()).containsExactly(new double[] {0, up, length - down, length}, within(tolerance));
        assertThat(pieces.starts()).containsExactly(entry, peak, peak);
        assertThat(pieces.ends()).containsExactly(peak, peak, exit);
        assertThat(time(pieces)).isCloseTo(time, within(1e-9 * time));
    }

    /** One ramp where the block is entered or left at its peak. */
    @Test
    void aBlockEnteredOrLeftAtItsPeakHasOneRamp() {
        double ramp = (0.02 * 0.02 - 0.01 * 0.01) / (2 * 0.5);
        double time = 0.01 / 0.5 + (0.03 - ramp) / 0.02;

        FeedPieces braking = block(0.03, 0.02, 0.02, 0.01, time);
        FeedPieces speeding = block(0.03, 0.01, 0.02, 0.02, time);

        assertThat(braking.distances()).containsExactly(new double[] {0, 0.03 - ramp, 0.03}, within(1e-12));
        assertThat(braking.ends()).containsExactly(0.02, 0.01);
        assertThat(speeding.distances()).containsExactly(new double[] {0, ramp, 0.03}, within(1e-12));
        assertThat(speeding.starts()).containsExactly(0.01, 0.02);
    }

    @Test
    void aBlockAtOneFeedIsOnePiece() {
        FeedPieces pieces = block(0.06, 0.02, 0.02, 0.02, 3);

        assertThat(pieces.distances()).containsExactly(0, 0.06);
        assertThat(pieces.starts()).containsExactly(new double[] {0.02}, within(1e-15));
        assertThat(pieces.ends()).containsExactly(new double[] {0.02}, within(1e-15));
    }

    /** A limit of jerk makes ramps of more than the block: 10 mm from rest to rest in 3 s, with a peak of 5 mm/s. */
    @Test
    void aBlockWhoseRampsAreLongerThanItselfRunsAtItsMeanFeed() {
        FeedPieces pieces = block(0.01, 0, 0.004, 0, 20);

        assertThat(pieces.distances()).containsExactly(0, 0.01);
        assertThat(pieces.starts()).containsExactly(new double[] {0.0005}, within(1e-15));
        assertThat(time(pieces)).isCloseTo(20, within(1e-12));
    }

    /** Ramps that meet in the middle leave no cruise: from rest to rest at 0.5 m/s2 over 20 mm. */
    @Test
    void rampsThatMeetLeaveTwoPieces() {
        FeedPieces pieces = block(0.02, 0, 0.1, 0, 0.4);

        assertThat(time(pieces)).isCloseTo(0.4, within(1e-9));
        assertThat(pieces.distances()).hasSizeBetween(3, 4);
        assertThat(pieces.distances()[1]).isCloseTo(0.01, within(1e-9));
        assertThat(pieces.ends()[pieces.ends().length - 1]).isZero();
    }

    @Test
    void manyPiecesAreKeptInOrderAndEmptyOnesLeftOut() {
        FeedPieces pieces = new FeedPieces();
        for (int i = 0; i < 100; i++) {
            pieces.add(0, 1, 2);
            pieces.add(1, i, i + 1);
            pieces.add(1, 0, 0);
            pieces.add(-1, 1, 1);
        }

        assertThat(pieces.distances()).hasSize(101);
        for (int i = 0; i < 100; i++) {
            assertThat(pieces.distances()[i + 1]).isEqualTo(i + 1);
            assertThat(pieces.starts()[i]).isEqualTo(i);
            assertThat(pieces.ends()[i]).isEqualTo(i + 1);
        }
    }
}
