package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.measure.Kind;
import dev.waterjet.reference.CornerCase;
import org.apache.commons.math3.special.Erf;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Tilts and remaining lags against the formulas of the documentation, written out with the error function of Commons Math. */
class TiltLawTest {

    private static final double THICKNESS = 0.025;
    private static final KerfProfile PROFILE = CornerCase.profile(THICKNESS);
    private static final CutFront FRONT = PROFILE.front();
    private static final double STRAIGHT = FRONT.separationFeedSi(3 * THICKNESS);

    private static TiltingHead head(double inclination, double speed, double acceleration) {
        return TiltingHead.of(
                Kind.ANGLE.of(inclination), Kind.ANGULAR_SPEED.of(speed), Kind.ANGULAR_ACCELERATION.of(acceleration));
    }

    private static TiltLaw law(TiltingHead head) {
        return new TiltLaw(head, PROFILE, STRAIGHT);
    }

    private static double side(double feed) {
        return (PROFILE.jetRadiusSi(0) - PROFILE.halfWidthSi(THICKNESS, feed)) / THICKNESS;
    }

    @Test
    void theSideTiltBringsTheExitOfTheWallUnderItsEntry() {
        for (double feed : new double[] {STRAIGHT / 10, STRAIGHT, 2 * STRAIGHT}) {
            assertThat(law(head(0.2, 1, 10)).side(feed)).isCloseTo(side(feed), within(1e-15));
            assertThat(law(head(0.2, 1, 10).withTaperCompensation(false)).side(feed))
                    .isZero();
        }
        assertThat(law(head(0.2, 1, 10).withLead(0.4)).lead(0.003)).isCloseTo(0.4 * 0.003 / THICKNESS, within(1e-15));
    }

    /** The rate u k m and its change u^2 k^2 m stay below nine tenths of the limits, the size below the inclination. */
    @ParameterizedTest
    @CsvSource({"0.1, 1, 10", "0.5, 0.2, 10", "0.5, 5, 0.3"})
    void aShareKeepsTheLimitsOfTheHeadOnAnArc(double inclination, double speed, double acceleration) {
        TiltLaw law = law(head(inclination, speed, acceleration));
        for (double slope : new double[] {0.01, 0.3, 2}) {
            for (double curvature : new double[] {0, 20, -300}) {
                double rate = 0.01 * Math.abs(curvature);
                double most = Math.tan(inclination);
                if (rate > 0) {
                    most = Math.min(most, Math.min(0.9 * speed / rate, 0.9 * acceleration / (rate * rate)));
                }
                double share = law.share(slope, 0.01, curvature);
                assertThat(share * slope).isCloseTo(Math.min(slope, most), within(1e-12));
            }
        }
        assertThat(law.share(0, 0.01, 20)).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.001, 0.005, 0.1})
    void onAnArcTheLagIsWhatTheLeadLeaves(double radius) {
        for (TiltingHead head : new TiltingHead[] {head(0.02, 1, 10), head(0.3, 0.05, 10), head(0.3, 50, 5000)}) {
            TiltLaw law = law(head);
            double lag = FRONT.exitLagSi(STRAIGHT);
            double slope = Math.hypot(side(STRAIGHT), head.lead() * lag / THICKNESS);
            double lead = head.lead() * law.share(slope, STRAIGHT, 1 / radius);
            assertThat(law.onArc(STRAIGHT, radius)).isCloseTo(HeadTilt.residualLagSi(lag, lead), within(1e-15));
        }
    }

    private static double blend(TiltingHead head) {
        double slope = (PROFILE.jetRadiusSi(THICKNESS) - PROFILE.jetRadiusSi(0)) / THICKNESS;
        double across = head.compensatesTaper() ? Math.max(Math.abs(side(STRAIGHT)), slope) : 0;
        double lead = head.lead() * FRONT.exitLagSi(STRAIGHT) / THICKNESS;
        return TiltBlend.longestS(
                head, Math.min(Math.tan(Kind.ANGLE.si(head.inclination())), Math.hypot(across, lead)));
    }

    /** The exit sweeps S in the blend's time T; its dose T/S erf(S/(2 sqrt2 sigma)) u separates the bottom or does not. */
    @ParameterizedTest
    @ValueSource(doubles = {0.05, 1, Math.PI / 2, 3, 4})
    void atACornerTheSweepCountsIfItSeparates(double turn) {
        int separating = 0;
        int small = 0;
        for (double speed : new double[] {0.02, 0.1, 1, 30}) {
            for (double feed : new double[] {STRAIGHT / 4, STRAIGHT}) {
                for (TiltingHead head : new TiltingHead[] {
                    head(0.2, speed, 10 * speed),
                    head(0.01, speed, 10 * speed),
                    head(0.2, speed, 10 * speed).withTaperCompensation(false)
                }) {
                    TiltLaw law = law(head);
                    double lag = FRONT.exitLagSi(feed);
                    double wanted =
                            Math.hypot(head.compensatesTaper() ? side(STRAIGHT) : 0, head.lead() * lag / THICKNESS);
                    double kept = Math.min(wanted, Math.tan(Kind.ANGLE.si(head.inclination())));
                    double remaining = HeadTilt.residualLagSi(lag, head.lead() * kept / wanted);
                    double sweep = 2 * THICKNESS * kept * Math.sin(Math.min(turn, Math.PI) / 2);
                    double dose = blend(head)
                            / sweep
                            * Erf.erf(sweep / (2 * Math.sqrt(2) * PROFILE.spreadSi()))
                            * FRONT.separationFeedSi(THICKNESS);
                    double expected = dose <= 1 ? remaining : Math.max(remaining, sweep / 2);
                    separating += dose > 1 && sweep / 2 > remaining ? 1 : 0;
                    small += dose <= 1 ? 1 : 0;
                    assertThat(law.atCorner(feed, STRAIGHT, turn)).isCloseTo(expected, within(1e-12));
                }
            }
        }
        assertThat(small).isPositive();
        assertThat(separating).isGreaterThanOrEqualTo(turn < 1 ? 0 : 1);
    }

    @Test
    void anUprightHeadLeavesTheLagOfTheFront() {
        RemainingLag upright =
                SlowdownSettings.upright(SlowdownRules.cautious()).remainingLag(FRONT);

        assertThat(upright.atCorner(STRAIGHT / 2, STRAIGHT, 1)).isEqualTo(FRONT.exitLagSi(STRAIGHT / 2));
        assertThat(upright.onArc(STRAIGHT / 2, 0.01)).isEqualTo(FRONT.exitLagSi(STRAIGHT / 2));
        TiltLaw law = law(head(0.2, 1, 10));
        assertThat(new SlowdownSettings(SlowdownRules.cautious(), law).remainingLag(FRONT))
                .isSameAs(law);
    }
}
