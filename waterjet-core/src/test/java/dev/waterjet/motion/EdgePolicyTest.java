package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.reference.CornerCase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Feed and tolerances of an edge, and the slowdowns that a policy with these numbers gives. */
class EdgePolicyTest {

    private static final KerfProfile PROFILE = CornerCase.profile(0.025);
    private static final double STRAIGHT = PROFILE.front().separationFeedSi(0.075);
    private static final QualityFeeds FEEDS = QualityFeeds.same(Kind.SPEED.of(STRAIGHT))
            .with(CutQuality.VERY_COARSE, Kind.SPEED.of(2 * STRAIGHT))
            .with(CutQuality.FINE, Kind.SPEED.of(0.6 * STRAIGHT));
    private static final SlowdownSettings SETTINGS = SlowdownSettings.upright(SlowdownRules.cautious());

    private static EdgePolicy policy(EdgeRequirement requirement) {
        return new EdgePolicy(requirement, FEEDS, PROFILE, SETTINGS);
    }

    private static Slowdown corner(double feed, double toleranceM, double turn, boolean isInside) {
        SlowdownPolicy policy = new SlowdownPolicy(PROFILE, feed, toleranceM, SETTINGS);
        return new SlowdownTable(policy, PROFILE.spreadSi()).corner(turn, isInside);
    }

    @Test
    void theFeedIsThatOfTheQualityUnlessALowerOneIsStated() {
        EdgeRequirement fine = EdgeRequirement.of(CutQuality.FINE);

        assertThat(policy(fine).feedMPerS()).isEqualTo(0.6 * STRAIGHT);
        assertThat(policy(fine).limit()).isEqualTo(FeedLimit.QUALITY);
        EdgePolicy stated = policy(fine.withMaximumFeed(Kind.SPEED.of(0.3 * STRAIGHT)));
        assertThat(stated.feedMPerS()).isEqualTo(0.3 * STRAIGHT);
        assertThat(stated.limit()).isEqualTo(FeedLimit.REQUESTED);
        EdgePolicy higher = policy(fine.withMaximumFeed(Kind.SPEED.of(0.6 * STRAIGHT)));
        assertThat(higher.feedMPerS()).isEqualTo(0.6 * STRAIGHT);
        assertThat(higher.limit()).isEqualTo(FeedLimit.QUALITY);
        assertThat(policy(fine.asLead()).feedMPerS()).isEqualTo(2 * STRAIGHT);
        assertThat(policy(fine.asLead()).limit()).isEqualTo(FeedLimit.LEAD);
        assertThat(policy(fine.withMaximumFeed(Kind.SPEED.of(STRAIGHT)).asLead())
                        .limit())
                .isEqualTo(FeedLimit.REQUESTED);
    }

    @Test
    void lagAndSpreadAreThoseOfTheProfile() {
        EdgePolicy policy = policy(EdgeRequirement.of(CutQuality.FINE));

        assertThat(policy.lagM()).isEqualTo(PROFILE.front().exitLagSi(0.6 * STRAIGHT));
        assertThat(policy.spreadM()).isEqualTo(PROFILE.spreadSi());
        assertThat(policy.isSlowing()).isTrue();
        EdgePolicy thin = new EdgePolicy(EdgeRequirement.of(CutQuality.FINE), FEEDS, null, SETTINGS);
        assertThat(thin.lagM()).isZero();
        assertThat(thin.spreadM()).isZero();
        assertThat(thin.isSlowing()).isFalse();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.3, 1, 2})
    void cornersHaveTheToleranceOfTheirSide(double turn) {
        EdgeRequirement medium = EdgeRequirement.of(CutQuality.MEDIUM).withLagTolerance(Measures.millimetres(0.2));
        EdgePolicy both = policy(medium);
        EdgePolicy apart = policy(medium.withOutsideCornerTolerance(Measures.millimetres(0.4)));
        double outside = medium.outsideCornerToleranceSi(0.025);

        assertThat(both.corner(turn, true)).isEqualTo(corner(STRAIGHT, 2e-4, turn, true));
        assertThat(both.corner(turn, false)).isEqualTo(corner(STRAIGHT, outside, turn, false));
        assertThat(apart.corner(turn, true)).isEqualTo(corner(STRAIGHT, 2e-4, turn, true));
        assertThat(apart.corner(turn, false)).isEqualTo(corner(STRAIGHT, 4e-4, turn, false));
    }

    @Test
    void arcsAndEndsHaveTheToleranceOfTheEdge() {
        EdgeRequirement medium = EdgeRequirement.of(CutQuality.MEDIUM)
                .withLagTolerance(Measures.millimetres(0.2))
                .withOutsideCornerTolerance(Measures.millimetres(0.4));
        SlowdownTable table =
                new SlowdownTable(new SlowdownPolicy(PROFILE, STRAIGHT, 2e-4, SETTINGS), PROFILE.spreadSi());

        assertThat(policy(medium).arc(0.004, 0.005, true)).isEqualTo(table.arc(0.004, 0.005, true));
        assertThat(policy(medium).arc(0.004, 0.005, false)).isEqualTo(table.arc(0.004, 0.005, false));
        assertThat(policy(medium).end()).isEqualTo(table.end());
        EdgePolicy lead = policy(medium.asLead());
        assertThat(lead.isSlowing()).isFalse();
        assertThat(lead.corner(1, true)).isNull();
        assertThat(lead.corner(1, false)).isNull();
        assertThat(lead.arc(0.004, 0.005, true)).isNull();
        assertThat(lead.end()).isNull();
    }
}
