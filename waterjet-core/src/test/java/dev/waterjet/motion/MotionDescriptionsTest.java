package dev.waterjet.motion;

import static dev.waterjet.Refusals.assertRefused;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.junit.jupiter.api.Test;

/** Descriptions and texts of the values of this package hold what the values hold. */
class MotionDescriptionsTest {

    private static final MachineLimits LIMITS =
            MachineLimits.of(Kind.SPEED.of(0.3), Kind.ACCELERATION.of(2)).withMinimumFeed(Kind.SPEED.of(0.001));

    private static Quantity<Length> metres(double si) {
        return Kind.LENGTH.of(si);
    }

    private static Quantity<Speed> speed(double si) {
        return Kind.SPEED.of(si);
    }

    private static Quantity<Time> seconds(double si) {
        return Kind.TIME.of(si);
    }

    @Test
    void aMachineDescribesTheLimitsThatItHas() {
        assertThat(LIMITS.describe())
                .containsEntry("type", "machine limits")
                .containsEntry(Kind.SPEED.column("speed_x"), 0.3)
                .containsEntry(Kind.SPEED.column("speed_y"), 0.3)
                .containsEntry(Kind.ACCELERATION.column("acceleration_x"), 2.0)
                .containsEntry(Kind.ACCELERATION.column("acceleration_y"), 2.0)
                .containsEntry(Kind.LENGTH.column("corner_deviation"), 1e-5)
                .containsEntry(Kind.SPEED.column("minimum_feed"), 0.001)
                .hasSize(8);
        Map<String, Object> all = LIMITS.withAxisSpeeds(speed(0.1), speed(0.2))
                .withAxisAccelerations(Kind.ACCELERATION.of(3), Kind.ACCELERATION.of(4))
                .withAxisJerks(Kind.JERK.of(5), Kind.JERK.of(6))
                .withPathAcceleration(Kind.ACCELERATION.of(7))
                .withJerk(Kind.JERK.of(8))
                .withCornerDeviation(metres(9e-5))
                .withCornerJump(speed(0.01), speed(0.02))
                .describe();
        assertThat(all)
                .containsEntry(Kind.SPEED.column("speed_x"), 0.1)
                .containsEntry(Kind.SPEED.column("speed_y"), 0.2)
                .containsEntry(Kind.ACCELERATION.column("acceleration_x"), 3.0)
                .containsEntry(Kind.ACCELERATION.column("acceleration_y"), 4.0)
                .containsEntry(Kind.JERK.column("jerk_x"), 5.0)
                .containsEntry(Kind.JERK.column("jerk_y"), 6.0)
                .containsEntry(Kind.ACCELERATION.column("path_acceleration"), 7.0)
                .containsEntry(Kind.JERK.column("jerk"), 8.0)
                .containsEntry(Kind.LENGTH.column("corner_deviation"), 9e-5)
                .containsEntry(Kind.SPEED.column("corner_jump_x"), 0.01)
                .containsEntry(Kind.SPEED.column("corner_jump_y"), 0.02)
                .hasSize(14);
    }

    @Test
    void aMachineKeepsTheLimitsThatItWasGiven() {
        DynamicLimits dynamics = LIMITS.withJerk(Kind.JERK.of(8))
                .withPathAcceleration(Kind.ACCELERATION.of(7))
                .dynamics();

        assertThat(dynamics.path()).isEqualTo(new PathLimits(7, Double.POSITIVE_INFINITY, 8, 8));
        assertThat(dynamics.x()).isEqualTo(new AxisLimits(0.3, 2, Double.POSITIVE_INFINITY));
        assertThat(LIMITS.withCornerPulse(metres(2e-5)).dynamics().corner()).isEqualTo(CornerRule.pulse(2e-5));
        assertThat(LIMITS.withCornerDeviation(metres(2e-5))
                        .withStopAtCorners()
                        .dynamics()
                        .corner())
                .isEqualTo(CornerRule.stop(2e-5));
        assertThat(LIMITS.withCornerDeviation(metres(2e-5))
                        .withCornerJump(speed(0.1), speed(0.2))
                        .dynamics()
                        .corner())
                .isEqualTo(CornerRule.jump(2e-5, 0.1, 0.2));
        assertThat(LIMITS.minimumFeedSi()).isEqualTo(0.001);
        assertThat(LIMITS.withMinimumFeed(speed(0)).minimumFeedSi()).isZero();
        assertThat(LIMITS.toString()).contains("18000 mm/min", "machine");
        assertRefused(() -> LIMITS.withAxisSpeeds(speed(Double.POSITIVE_INFINITY), speed(1)), "must-be-at-most");
        assertRefused(() -> LIMITS.withCornerPulse(metres(-1)), "must-be-above", "deviation at a corner", 0);
        assertRefused(() -> LIMITS.withPathAcceleration(Kind.ACCELERATION.of(0)), "must-be-above");
        assertRefused(() -> MachineLimits.of(speed(0), Kind.ACCELERATION.of(1)), "must-be-above");
        assertRefused(() -> MachineLimits.of(speed(1), Kind.ACCELERATION.of(0)), "must-be-above");
    }

    private static PlanBlock block() {
        return new PlanBlock(
                3,
                Point.ofSi(1, 2),
                Point.ofSi(3, 4),
                Optional.of(Point.ofSi(5, 6)),
                Optional.of(Side.LEFT),
                metres(7),
                metres(8),
                speed(9),
                speed(10),
                speed(11),
                speed(12),
                seconds(13),
                FeedLimit.LEAD);
    }

    @Test
    void aBlockDescribesItsComponents() {
        assertThat(block().describe())
                .containsEntry("type", "block")
                .containsEntry("edge", 3L)
                .containsEntry(Kind.LENGTH.column("starts_at"), 7.0)
                .containsEntry(Kind.LENGTH.column("length"), 8.0)
                .containsEntry(Kind.SPEED.column("entry_feed"), 9.0)
                .containsEntry(Kind.SPEED.column("peak_feed"), 10.0)
                .containsEntry(Kind.SPEED.column("exit_feed"), 11.0)
                .containsEntry(Kind.SPEED.column("allowed_feed"), 12.0)
                .containsEntry(Kind.TIME.column("time"), 13.0)
                .containsKeys("limit");
        assertThat(Kind.SPEED.si(block().meanFeed())).isEqualTo(8.0 / 13);
        assertThat(block().toString()).contains("8000 mm", FeedLimit.LEAD.label());
    }

    @Test
    void aSlowZoneAndASourceBlockDescribeTheirComponents() {
        SlowZone zone = new SlowZone(
                2, Point.ofSi(1, 2), metres(3), metres(5), speed(0.5), speed(4), seconds(8), FeedLimit.SEPARATION);
        assertThat(zone.describe())
                .containsEntry("type", "slow zone")
                .containsEntry("edge", 2L)
                .containsEntry(Kind.LENGTH.column("x"), 1.0)
                .containsEntry(Kind.LENGTH.column("y"), 2.0)
                .containsEntry(Kind.LENGTH.column("starts_at"), 3.0)
                .containsEntry(Kind.LENGTH.column("ends_at"), 5.0)
                .containsEntry(Kind.SPEED.column("minimum_feed"), 0.5)
                .containsEntry(Kind.SPEED.column("nominal_feed"), 4.0)
                .containsEntry(Kind.TIME.column("time"), 8.0)
                .containsKeys("limit");
        assertThat(Kind.SPEED.si(zone.meanFeed())).isEqualTo(0.25);
        assertThat(zone.toString()).contains(FeedLimit.SEPARATION.label());
        SourceBlock block = new SourceBlock(4, 0.25, 0.5, metres(3), speed(1.5), seconds(2), FeedLimit.JERK);
        assertThat(block.describe())
                .containsEntry("type", "source block")
                .containsEntry("edge", 4L)
                .containsEntry("from", 0.25)
                .containsEntry("to", 0.5)
                .containsEntry(Kind.LENGTH.column("length"), 3.0)
                .containsEntry(Kind.SPEED.column("feed"), 1.5)
                .containsEntry(Kind.TIME.column("time"), 2.0)
                .containsKeys("limit");
        assertThat(block.toString()).contains("edge 4", "3000 mm");
        assertRefused(
                () -> new SourceBlock(4, -0.1, 0.5, metres(3), speed(1.5), seconds(2), FeedLimit.JERK),
                "must-be-at-least");
        assertRefused(
                () -> new SourceBlock(4, 0.6, 0.5, metres(3), speed(1.5), seconds(2), FeedLimit.JERK),
                "must-be-at-least");
        assertRefused(
                () -> new SourceBlock(4, 0.6, 1.1, metres(3), speed(1.5), seconds(2), FeedLimit.JERK),
                "must-be-at-most");
    }

    @Test
    void aPlanDescribesItsLimitsAndBlocks() {
        Contour line = Contour.fromSi(0, 0).lineToSi(0.1, 0).lineToSi(0.1, 0.1).open();
        FeedPlan plan =
                FeedPlanner.withoutLag(LIMITS, QualityFeeds.same(speed(0.02))).plan(line, Side.LEFT);
        Map<String, Object> described = plan.describe();

        assertThat(described)
                .containsEntry("type", "feed plan")
                .containsEntry(Kind.TIME.column("time"), Kind.TIME.si(plan.time()))
                .containsEntry(Kind.LENGTH.column("length"), 0.2)
                .containsEntry("findings", List.of())
                .containsEntry("cautions", List.of());
        assertThat((List<?>) described.get("blocks")).hasSize(plan.size());
        assertThat((List<?>) described.get("limits")).hasSize(plan.timeByLimit().size());
        assertThat(String.valueOf(described.get("limits"))).contains("limit", "time");
        assertThat(plan.toString()).contains("200 mm", plan.size() + " blocks");
        assertThat(plan.source()).isEqualTo(line);
        assertThat(plan.contour().lengthSi()).isEqualTo(0.2);
    }

    @Test
    void feedsAndHeadsDescribeTheirComponents() {
        QualityFeeds feeds = QualityFeeds.same(speed(0.02)).with(CutQuality.FINE, speed(0.01));
        assertThat(feeds.describe())
                .containsEntry("type", "feed rates by cut quality")
                .containsEntry(Kind.SPEED.column("fine"), 0.01)
                .containsEntry(Kind.SPEED.column("very_coarse"), 0.02)
                .hasSize(1 + CutQuality.values().length);
        assertThat(feeds.toString()).contains("very coarse 1200 mm/min, coarse", ", fine 600 mm/min");
        TiltingHead head = TiltingHead.of(
                        Measures.degrees(9), Kind.ANGULAR_SPEED.of(2), Kind.ANGULAR_ACCELERATION.of(30))
                .withLead(0.25)
                .withTaperCompensation(false);
        assertThat(head.describe())
                .containsEntry("type", "tilting head")
                .containsEntry(Kind.ANGULAR_SPEED.column("angular_speed"), 2.0)
                .containsEntry(Kind.ANGULAR_ACCELERATION.column("angular_acceleration"), 30.0)
                .containsEntry("taper_compensation", false)
                .containsEntry("lead", 0.25)
                .containsKey(Kind.ANGLE.column("inclination"));
        assertThat(head.toString()).contains("9 °");
        assertThat(head.isTilting()).isTrue();
        assertThat(head.withLead(0).isTilting()).isFalse();
        assertThat(head.withLead(0).withTaperCompensation(true).isTilting()).isTrue();
    }

    @Test
    void aPlannerKeepsWhatItWasGiven() {
        FeedPlanner planner = FeedPlanner.withoutLag(LIMITS, QualityFeeds.same(speed(1)));

        assertRefused(() -> planner.withReach(-0.1), "must-be-at-least");
        assertRefused(() -> planner.withReach(10.1), "must-be-at-most");
        assertThat(planner.withReach(10).machine()).isEqualTo(LIMITS);
        assertThat(planner.feeds()).isEqualTo(QualityFeeds.same(speed(1)));
        assertThat(planner.withFeeds(QualityFeeds.same(speed(2))).feeds()).isEqualTo(QualityFeeds.same(speed(2)));
    }
}
