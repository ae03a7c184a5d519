package dev.waterjet.motion;

import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PathValuesTest {

    private static FeedPlan plan(Contour contour, double feedMmPerMin) {
        return FeedPlanner.of(
                        MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(1)),
                        QualityFeeds.same(millimetresPerMinute(feedMmPerMin)),
                        feed -> 0.03 * feed)
                .plan(contour, Side.LEFT);
    }

    @Test
    void limitsOfTheMachine() {
        MachineLimits limits = MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(1));
        ValueContract.of(() -> limits)
                .has("speed", MachineLimits::speedXSi, 0.3)
                .has("deviation", MachineLimits::deviationSi, 1e-5)
                .change(
                        "speed of y",
                        machine -> machine.withAxisSpeeds(metresPerSecond(0.3), metresPerSecond(0.2)),
                        MachineLimits::speedYSi,
                        0.2)
                .change(
                        "acceleration of y",
                        machine -> machine.withAxisAccelerations(metresPerSquareSecond(1), metresPerSquareSecond(2)),
                        MachineLimits::accelerationYSi,
                        2.0)
                .change(
                        "jerk",
                        machine -> machine.withJerk(Kind.JERK.of(20)),
                        MachineLimits::jerk,
                        Optional.of(Kind.JERK.of(20)))
                .change(
                        "least feed",
                        machine -> machine.withMinimumFeed(millimetresPerMinute(7)),
                        MachineLimits::minimumFeed,
                        millimetresPerMinute(7))
                .differs("deviation", limits.withCornerDeviation(millimetres(0.02)))
                .differs("speed", limits.withAxisSpeeds(metresPerSecond(0.4), metresPerSecond(0.3)))
                .differs(
                        "acceleration of x",
                        limits.withAxisAccelerations(metresPerSquareSecond(3), metresPerSquareSecond(1)))
                .prints("speed_x", "speed_y", "acceleration_x", "acceleration_y", "corner_deviation", "least_feed")
                .check();
        assertThat(Kind.SPEED.si(limits.minimumFeed())).isEqualTo(0.001 / 60);
        assertThat(limits.jerk()).isEmpty();
        assertThat(limits.toString()).doesNotContain("jerk");
        assertThat(limits.withJerk(Kind.JERK.of(20)).toString()).contains("jerk");
        // 0.8 of the weaker axis across leaves 0.6 of it along: 0.8^2 + 0.6^2 = 1
        assertThat(Kind.ACCELERATION.si(limits.withAxisAccelerations(metresPerSquareSecond(3), metresPerSquareSecond(2))
                        .centripetalAcceleration()))
                .isEqualTo(1.6);
        assertThatThrownBy(() -> limits.withJerk(Kind.JERK.of(0))).hasMessageStartingWith("jerk is 0");
        assertThatThrownBy(() -> limits.withCornerDeviation(millimetres(0)))
                .hasMessageStartingWith("deviation in rounding a corner is 0 mm");
        assertThatThrownBy(() -> limits.withMinimumFeed(millimetresPerMinute(-1)))
                .hasMessageStartingWith("least feed is -1 mm/min");
        assertThatThrownBy(() -> limits.withAxisSpeeds(metresPerSecond(1), metresPerSecond(0)))
                .hasMessageStartingWith("greatest speed of the y axis is 0");
        assertThatThrownBy(() -> limits.withAxisSpeeds(metresPerSecond(0), metresPerSecond(1)))
                .hasMessageStartingWith("greatest speed of the x axis is 0");
        assertThatThrownBy(() -> limits.withAxisAccelerations(metresPerSquareSecond(0), metresPerSquareSecond(1)))
                .hasMessageStartingWith("acceleration of the x axis is 0");
        assertThatThrownBy(() -> limits.withAxisAccelerations(metresPerSquareSecond(1), metresPerSquareSecond(0)))
                .hasMessageStartingWith("acceleration of the y axis is 0");
    }

    @Test
    void feedsOfGrades() {
        ValueContract.of(() -> QualityFeeds.same(millimetresPerMinute(200)))
                .has("medium", feeds -> feeds.feed(CutQuality.MEDIUM), millimetresPerMinute(200))
                .change(
                        "fine",
                        feeds -> feeds.with(CutQuality.FINE, millimetresPerMinute(90)),
                        feeds -> feeds.feed(CutQuality.FINE),
                        millimetresPerMinute(90))
                .differs("all", QualityFeeds.same(millimetresPerMinute(201)))
                .prints("very_coarse", "coarse", "medium", "fine", "very_fine")
                .check();
        assertThatThrownBy(() -> QualityFeeds.same(millimetresPerMinute(0)))
                .hasMessageStartingWith("feed for a face of grade very coarse is 0 mm/min");
    }

    @Test
    void blocksAndSlowSpots() {
        Contour line = Contour.fromSi(0, 0).lineToSi(0.1, 0).open();
        double v = 0.02;
        ValueContract.of(() -> plan(line, 1200).block(0))
                .has("edge", PlanBlock::edge, 0)
                .has("length", PlanBlock::length, millimetres(100))
                .has("entry", PlanBlock::entry, metresPerSecond(0))
                .has("greatest", PlanBlock::peakFeed, metresPerSecond(v))
                .has("exit", PlanBlock::exit, metresPerSecond(0))
                .has("time", PlanBlock::time, Kind.TIME.of(0.1 / v + v))
                .has("limit", PlanBlock::limit, FeedLimit.QUALITY)
                .differs("feed", plan(line, 1100).block(0))
                .differs(
                        "length",
                        plan(Contour.fromSi(0, 0).lineToSi(0.11, 0).open(), 1200)
                                .block(0))
                .prints("edge", "length", "entry", "greatest", "exit", "time", "limit")
                .check();
        // 0.9 v is passed 0.81 v^2 / 2 after the start, after 0.9 v
        ValueContract.of(() -> plan(line, 1200).slowZones(0.9).get(0))
                .has("edge", SlowZone::edge, 0)
                .has("place", SlowZone::place, Point.ofSi(0, 0))
                .has("start", SlowZone::startsAt, millimetres(0))
                .has("end", spot -> (float) Kind.LENGTH.si(spot.endsAt()), (float) (0.81 * v * v / 2))
                .has("least", SlowZone::minimumFeed, metresPerSecond(0))
                .has("mean", spot -> (float) Kind.SPEED.si(spot.mean()), (float) (0.45 * v))
                .has("usual", SlowZone::nominalFeed, metresPerSecond(v))
                .has("time", spot -> (float) Kind.TIME.si(spot.time()), (float) (0.9 * v))
                .has("limit", SlowZone::limit, FeedLimit.PATH_END)
                .differs("end", plan(line, 1200).slowZones(0.8).get(0))
                .differs("feed", plan(line, 1000).slowZones(0.9).get(0))
                .differs("place", plan(line, 1200).slowZones(0.9).get(1))
                .prints("edge", "starts_at", "ends_at", "least", "usual", "time", "limit")
                .check();
        SlowZone last = plan(line, 1200).slowZones(0.9).get(1);
        assertThat(last.place()).isEqualTo(Point.millimetres(100, 0));
        assertThat(Kind.LENGTH.si(last.endsAt())).isEqualTo(0.1);
        assertThat((float) Kind.LENGTH.si(last.startsAt())).isEqualTo((float) (0.1 - 0.81 * v * v / 2));
        assertThatThrownBy(() -> plan(line, 1200).slowZones(0)).hasMessageStartingWith("share of the feed is 0");
        assertThatThrownBy(() -> plan(line, 1200).slowZones(1.01)).hasMessageStartingWith("share of the feed is 1.01");
        assertThat(plan(line, 1200).slowZones(1)).hasSize(2);
    }

    @Test
    void wordsOfLimitsAndSides() {
        assertThat(FeedLimit.QUALITY.label()).isEqualTo("grade of the face");
        assertThat(FeedLimit.FRONT_RECOVERY.isOfFront()).isTrue();
        assertThat(FeedLimit.LAG_ON_ARC.isOfFront()).isTrue();
        assertThat(FeedLimit.MACHINE_SPEED.isOfFront()).isFalse();
        assertThat(FeedLimit.PATH_END.isOfFront()).isFalse();
        for (FeedLimit limit : FeedLimit.values()) {
            assertThat(FeedLimit.of(limit.code())).isEqualTo(limit);
            assertThat(limit.label()).isNotBlank();
        }
    }
}
