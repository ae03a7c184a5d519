package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.reference.CornerCase;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class SlowdownPolicyTest {

    private static final double THICKNESS = 0.025;
    private static final KerfProfile PROFILE = CornerCase.profile(THICKNESS);

    private static double straight(double index) {
        return PROFILE.front().separationFeedSi(index * THICKNESS);
    }

    private static SlowdownPolicy policy(double index, double tolerance) {
        return new SlowdownPolicy(
                PROFILE, straight(index), tolerance, SlowdownSettings.upright(SlowdownRules.cautious()));
    }

    static List<CornerCase> corners() {
        return CornerCase.all();
    }

    @ParameterizedTest
    @MethodSource("corners")
    void theFeedAtACornerIsThatOfTheReference(CornerCase row) {
        Slowdown slowdown = slowdown(row);

        assertThat(slowdown.feedMPerS() / row.straightFeed())
                .isCloseTo(row.feedRatio(), within(0.01 * row.feedRatio()));
    }

    @ParameterizedTest
    @MethodSource("corners")
    void theReasonAtACornerIsThatOfTheReference(CornerCase row) {
        assertThat(slowdown(row).reason().name().toLowerCase(Locale.ROOT).replace('_', '-'))
                .isEqualTo(row.reason());
    }

    @ParameterizedTest
    @MethodSource("corners")
    void thePredictedErrorIsThatOfTheReference(CornerCase row) {
        assertThat(slowdown(row).predictedErrorM()).isCloseTo(row.predictedM(), within(2e-6));
    }

    private static Slowdown slowdown(CornerCase row) {
        return new SlowdownPolicy(
                        row.profile(),
                        row.straightFeed(),
                        row.toleranceM(),
                        SlowdownSettings.upright(SlowdownRules.cautious()))
                .corner(row.turnRad(), row.isInside());
    }

    @Property(tries = 200, seed = "91")
    void aFeedLiesBetweenATwentiethOfTheStraightOneAndItself(
            @ForAll @DoubleRange(min = 1.01, max = 8) double index,
            @ForAll @DoubleRange(min = 0.01, max = 3) double toleranceMm,
            @ForAll @DoubleRange(min = 0.1, max = 180) double turnDeg,
            @ForAll boolean isInside) {
        double straight = straight(index);

        Slowdown slowdown = policy(index, toleranceMm * 1e-3).corner(Math.toRadians(turnDeg), isInside);

        assertThat(slowdown.feedMPerS()).isLessThanOrEqualTo(straight);
        if (slowdown.reason() != SlowdownReason.SEPARATION) {
            assertThat(slowdown.feedMPerS()).isGreaterThanOrEqualTo(straight / 20 * (1 - 1e-12));
        }
    }

    @Property(tries = 100, seed = "92")
    void aWiderToleranceNeverAsksForASlowerFeed(
            @ForAll @DoubleRange(min = 0.01, max = 2) double toleranceMm,
            @ForAll @DoubleRange(min = 1, max = 3) double wider,
            @ForAll @DoubleRange(min = 0.1, max = 180) double turnDeg,
            @ForAll boolean isInside) {
        double turn = Math.toRadians(turnDeg);

        assertThat(policy(3, toleranceMm * wider * 1e-3).corner(turn, isInside).feedMPerS())
                .isGreaterThanOrEqualTo(
                        policy(3, toleranceMm * 1e-3).corner(turn, isInside).feedMPerS() * (1 - 1e-9));
    }

    @Property(tries = 150, seed = "93")
    void theToleranceIsKeptWhereItDecides(
            @ForAll @DoubleRange(min = 0.01, max = 2) double toleranceMm,
            @ForAll @DoubleRange(min = 0.1, max = 180) double turnDeg,
            @ForAll boolean isInside) {
        Slowdown slowdown = new SlowdownPolicy(
                        PROFILE,
                        straight(3),
                        toleranceMm * 1e-3,
                        SlowdownSettings.upright(SlowdownRules.cautious().withSeparation(false)))
                .corner(Math.toRadians(turnDeg), isInside);

        assertThat(slowdown.isWithinTolerance()).isEqualTo(slowdown.reason() != SlowdownReason.LEAST_ERROR);
    }

    @Property(tries = 150, seed = "94")
    void onArcsTheToleranceIsKeptWhereItDecides(
            @ForAll @DoubleRange(min = 0.01, max = 2) double toleranceMm,
            @ForAll @DoubleRange(min = 0.1, max = 50) double radiusMm,
            @ForAll @DoubleRange(min = 0.01, max = 100) double lengthMm) {
        Slowdown slowdown = policy(3, toleranceMm * 1e-3).arc(radiusMm * 1e-3, lengthMm * 1e-3, true);

        assertThat(slowdown.isWithinTolerance()
                        || slowdown.reason() == SlowdownReason.LEAST_ERROR
                        || slowdown.reason() == SlowdownReason.SEPARATION)
                .isTrue();
    }

    @Test
    void theBottomIsCutThroughBeforeATurnUnlessThatIsSwitchedOff() {
        double turn = Math.PI / 2;
        Slowdown separating = policy(1.5, 2e-3).corner(turn, false);
        Slowdown free = new SlowdownPolicy(
                        PROFILE,
                        straight(1.5),
                        2e-3,
                        SlowdownSettings.upright(SlowdownRules.cautious().withSeparation(false)))
                .corner(turn, false);

        assertThat(separating.reason()).isEqualTo(SlowdownReason.SEPARATION);
        assertThat(free.feedMPerS()).isGreaterThan(separating.feedMPerS());
    }

    @Test
    void atTheSeparatingFeedNothingIsLeftUncut() {
        Slowdown end = policy(1.5, 2e-3).end();

        assertThat(new SlowdownErrors(PROFILE, straight(1.5), RemainingLag.upright(PROFILE.front()))
                        .uncutBottom(end.feedMPerS(), Math.PI / 2))
                .isCloseTo(0, within(1e-12));
    }

    @Test
    void theZoneIsTheLagAtItsFeed() {
        Slowdown slowdown = policy(3, 0.65e-3).corner(Math.PI / 2, true);

        assertThat(slowdown.zoneM()).isEqualTo(PROFILE.front().exitLagSi(slowdown.feedMPerS()));
    }

    @Test
    void theZoneIsNoShorterThanTheRunIn() {
        Slowdown slowdown = policy(3, 0.65e-3).corner(Math.PI / 2, true);

        assertThat(slowdown.zoneM()).isGreaterThanOrEqualTo(PROFILE.front().runInSi(slowdown.feedMPerS()));
    }

    @Test
    void aStraightFeedNeedsNoZone() {
        assertThat(policy(3, 5e-3).arc(0.05, 0.1, true).zoneM()).isZero();
    }

    @Test
    void aFrontThatFollowsThePathNeedsNoSlowdown() {
        SlowdownPolicy policy = new SlowdownPolicy(
                PROFILE, straight(3), 0.1e-3, SlowdownSettings.upright(SlowdownRules.of(LagGeometry.FOLLOWING)));

        assertThat(policy.corner(Math.PI / 2, true).reason()).isEqualTo(SlowdownReason.STRAIGHT_FEED);
    }

    @Test
    void aLargerArcIsCutFaster() {
        double before = 0;
        for (double radius = 0.2e-3; radius < 0.1; radius *= 1.3) {
            double feed = policy(3, 0.65e-3).arc(radius, radius, true).feedMPerS();
            assertThat(feed).isGreaterThanOrEqualTo(before);
            before = feed;
        }
    }

    @ParameterizedTest
    @CsvSource({"VERY_FINE, 10, 0.08", "FINE, 10, 0.22", "MEDIUM, 25, 0.65", "COARSE, 50, 1.8", "VERY_COARSE, 100, 4.7"
    })
    void theToleranceOfAQualityIsTheRangeOfTheStandard(CutQuality quality, double thicknessMm, double expectedMm) {
        assertThat(EdgeRequirement.of(quality).lagToleranceSi(thicknessMm * 1e-3) * 1e3)
                .isCloseTo(expectedMm, within(1e-12));
    }

    @Property(tries = 100, seed = "95")
    void theTableGivesThePolicysFeedWithinItsRounding(
            @ForAll @DoubleRange(min = 5, max = 180) double turnDeg, @ForAll boolean isInside) {
        SlowdownPolicy policy = policy(3, 0.3e-3);
        double turn = Math.toRadians(turnDeg);
        double exact = policy.corner(turn, isInside).feedMPerS();

        assertThat(new SlowdownTable(policy, PROFILE.spreadSi())
                        .corner(turn, isInside)
                        .feedMPerS())
                .isBetween(exact * 0.995, exact * (1 + 1e-9));
    }

    @Property(tries = 100, seed = "96")
    void onArcsTheTablesFeedLeavesThePolicysErrorWithinItsRounding(
            @ForAll @DoubleRange(min = 0.2, max = 50) double radiusMm,
            @ForAll @DoubleRange(min = 0.2, max = 100) double lengthMm) {
        double radius = radiusMm * 1e-3;
        double length = lengthMm * 1e-3;
        SlowdownPolicy policy = policy(3, 0.3e-3);
        double feed = new SlowdownTable(policy, PROFILE.spreadSi())
                .arc(radius, length, true)
                .feedMPerS();

        double error = policy.arcError(radius, length, true).applyAsDouble(feed);
        assertThat(error).isLessThan(1.02 * policy.arc(radius, length, true).predictedErrorM());
    }
}
