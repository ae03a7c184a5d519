package dev.waterjet.motion;

import dev.waterjet.kerf.ArcLagKernel;
import dev.waterjet.kerf.LagFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

class LagLimitsTest {

    /** R = 4 mm, L = 3 mm: the hypotenuse is 5 mm. */
    @Test
    void anArcIsMissedByTheHypotenuseLessTheRadius() {
        assertThat(ArcLagKernel.arcError(0.004, 0.003)).isCloseTo(0.001, within(1e-18));
        assertThat(ArcLagKernel.arcLag(0.004, 0.001)).isCloseTo(0.003, within(1e-18));
    }

    @Test
    void aCornerIsMissedByTheSineAndBeyondARightAngleByTheWholeLag() {
        double half = Math.sqrt(3) / 2;

        assertThat(ArcLagKernel.cornerError(0.5, half, 0.002)).isEqualTo(0.001);
        assertThat(ArcLagKernel.cornerError(-0.5, half, 0.002)).isEqualTo(0.001);
        assertThat(ArcLagKernel.cornerError(1, 0, 0.002)).isEqualTo(0.002);
        assertThat(ArcLagKernel.cornerError(0.5, -half, 0.002)).isEqualTo(0.002);
        assertThat(ArcLagKernel.cornerLag(0.5, half, 0.001)).isEqualTo(0.002);
        assertThat(ArcLagKernel.cornerLag(-0.5, half, 0.001)).isEqualTo(0.002);
        assertThat(ArcLagKernel.cornerLag(0.5, -half, 0.001)).isEqualTo(0.001);
    }

    /**
     * By the picture of a trailer the bottom cuts an outside corner off by less than half of what an inside corner is
     * taken to lose, up to a right angle: the path of the trailer is followed step by step, beside its closed form.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1, 10, 30, 45, 60, 75, 90})
    void aTrailerCutsOffLessThanHalf(double degrees) {
        double turn = Math.toRadians(degrees);
        double lost = cutOff(turn);
        double taken = ArcLagKernel.cornerError(Math.sin(turn), degrees == 90 ? 0 : Math.cos(turn), 1);

        assertThat(lost).isBetween(0.36 * taken, 0.5 * taken);
        if (degrees == 1) {
            assertThat(lost).isCloseTo(Math.sin(turn) / Math.E, within(1e-3 * taken));
        }
        if (degrees == 90) {
            assertThat(lost).isCloseTo(0.48, within(5e-3));
        }
    }

    /** How far a trailer of length 1 gets from both edges; the new edge runs along x, the old one ends at the origin. */
    private static double cutOff(double turn) {
        double x = -Math.cos(turn);
        double y = -Math.sin(turn);
        int steps = 20_000;
        double worst = 0;
        for (int i = 1; i <= steps; i++) {
            double head = 6.0 * i / steps;
            double apart = Math.hypot(head - x, y);
            x += (head - x) * (1 - 1 / apart);
            y -= y * (1 - 1 / apart);
            double along = x * Math.cos(turn) + y * Math.sin(turn);
            double fromOld = along < 0 ? Math.abs(y * Math.cos(turn) - x * Math.sin(turn)) : Math.hypot(x, y);
            double fromNew = x > 0 ? -y : Math.hypot(x, y);
            worst = Math.max(worst, Math.min(fromOld, fromNew));
        }
        return worst;
    }

    @Test
    void theFeedForALagIsFoundByHalving() {
        LagFunction law = feed -> 30 * feed * feed;

        assertThat(law.feedSi(0.0003)).isCloseTo(Math.sqrt(1e-5), within(1e-12));
        assertThat(law.lagSi(law.feedSi(0.0003))).isLessThanOrEqualTo(0.0003);
        LagFunction bounded = feed -> Math.min(feed, 0.001);
        assertThat(bounded.feedSi(0.002)).isInfinite();
        assertThat(bounded.feedSi(0.0005)).isCloseTo(0.0005, within(1e-12));
        // a lag that the slowest feed tried has already: 1e-6 m/s
        assertThat(((LagFunction) feed -> feed * 1000).feedSi(1e-4)).isCloseTo(1e-7, within(1e-16));
        assertThat(LagFunction.none().lagSi(1)).isZero();
        assertThat(LagFunction.none().feedSi(1e-6)).isInfinite();
    }
}
