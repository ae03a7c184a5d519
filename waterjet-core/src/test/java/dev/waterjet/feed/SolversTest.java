package dev.waterjet.feed;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import org.junit.jupiter.api.Test;

/** Searches of this package on functions whose answers are known. */
class SolversTest {

    @Test
    void aFallingFunctionIsTurnedAround() {
        assertThat(FallingKernel.inverse(x -> 1 / x, 5, 0.2)).isCloseTo(0.2, within(1e-15));
        assertThat(FallingKernel.inverse(x -> 1 / x, 5, 1e-9)).isCloseTo(0.2, within(1e-14));
        assertThat(FallingKernel.inverse(x -> 1 / x, 5, 1e9)).isCloseTo(0.2, within(1e-14));
        assertThat(FallingKernel.inverse(x -> Math.exp(-x), 0.5, 3)).isCloseTo(Math.log(2), within(1e-14));
        // zero beyond 1: the root of 1 - x is found all the same
        assertThat(FallingKernel.inverse(x -> Math.max(0, 1 - x), 0.25, 4)).isCloseTo(0.75, within(1e-14));
        assertThat(FallingKernel.inverse(x -> 2 / (1 + x), 3, 1)).isZero();
    }

    @Test
    void theBestIsFoundInsideOrAtAnEnd() {
        assertThat(InverseKernel.best(x -> -Math.pow(Math.log(x / 3), 2), 0.1, 100))
                .isCloseTo(3, within(1e-6));
        assertThat(InverseKernel.best(x -> x, 0.1, 100)).isEqualTo(100);
        assertThat(InverseKernel.best(x -> 1 / x, 0.1, 100)).isCloseTo(0.1, within(1e-6));
        assertThat(InverseKernel.best(x -> -Math.pow(Math.log(x / 99), 2), 0.1, 100))
                .isCloseTo(99, within(1e-4));
        // as good everywhere: the most is not worse than the rest
        assertThat(InverseKernel.best(x -> 1, 0.1, 100)).isEqualTo(100);
    }

    @Test
    void theLeastSettingThatIsEnoughIsFound() {
        assertThat(InverseKernel.least(x -> x * x, 9, 0.1, 100)).isCloseTo(3, within(1e-12));
        assertThat(InverseKernel.least(x -> x * x, 0.001, 0.1, 100)).isEqualTo(0.1);
        assertThat(InverseKernel.least(x -> x * x, 0.01, 0.1, 100)).isCloseTo(0.1, within(1e-12));
        assertThat(InverseKernel.least(x -> x * x, 1e4, 0.1, 100)).isCloseTo(100, within(1e-12));
        assertThat(InverseKernel.least(x -> x * x, 2e4, 0.1, 100)).isEqualTo(100);
        assertThat(InverseKernel.least(x -> Math.max(0, x - 1), 2, 0.1, 100)).isCloseTo(3, within(1e-12));
    }

    @Test
    void aSlopeIsAnExponentAndNeverFlat() {
        assertThat(InverseKernel.relativeSlope(x -> 5 * x * x * x, 2)).isCloseTo(3, within(1e-8));
        assertThat(InverseKernel.relativeSlope(x -> 5 / (x * x), 2)).isCloseTo(2, within(1e-8));
        assertThat(InverseKernel.relativeSlope(x -> 5, 2)).isEqualTo(0.1);
    }

    /** The last digit counts fastest: 2 pressures by 3 indices are read as a table of two rows. */
    @Test
    void aSweepCountsLikeAnOdometer() {
        AbrasiveJet jet = FeedModelContract.jet(345, 0.30, 0.9, 400);
        Workpiece plate = Workpiece.of(Materials.standard().get("mild-steel"), millimetres(12));
        FeedSweep sweep = FeedSweep.of(MachinabilityFeed.published(), jet, plate, 1)
                .overPressure(QuantityArray.ofSi(Kind.PRESSURE, 2e8, 3e8))
                .overIndex(QuantityArray.ofSi(Kind.RATIO, 1, 2, 3));
        StringBuilder seen = new StringBuilder();
        sweep.each((p, o, t, m, h, q, feed) ->
                seen.append((int) (p / 1e8)).append((int) q).append(' '));
        StringBuilder tail = new StringBuilder();
        sweep.each(
                4,
                6,
                (p, o, t, m, h, q, feed) ->
                        tail.append((int) (p / 1e8)).append((int) q).append(' '));

        assertThat(seen).hasToString("21 22 23 31 32 33 ");
        assertThat(tail).hasToString("32 33 ");
        assertThat(sweep).hasToString("sweep of 6 feeds of " + plate.material().name() + " by machinability");
        sweep.each(6, 6, (p, o, t, m, h, q, feed) -> {
            throw new AssertionError("nothing is asked");
        });
    }
}
