package dev.waterjet.motion;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class MotionValuesTest {

    private static final MachineLimits LIMITS = MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(1));

    private static FeedPlan plan(Contour contour, double mmPerMinute) {
        return FeedPlanner.withoutLag(LIMITS, QualityFeeds.same(millimetresPerMinute(mmPerMinute)))
                .plan(contour, Side.LEFT);
    }

    @Test
    void machineLimitsAreValues() {
        ValueContract.of(() -> LIMITS)
                .has("deviation", MachineLimits::cornerDeviation, millimetres(0.01))
                .change(
                        "jerk",
                        machine -> machine.withJerk(Kind.JERK.of(20)),
                        MachineLimits::jerk,
                        Optional.of(Kind.JERK.of(20)))
                .change(
                        "minimum feed",
                        machine -> machine.withMinimumFeed(millimetresPerMinute(7)),
                        MachineLimits::minimumFeed,
                        millimetresPerMinute(7))
                .differs("deviation", LIMITS.withCornerDeviation(millimetres(0.02)))
                .differs("speed", LIMITS.withAxisSpeeds(metresPerSecond(0.4), metresPerSecond(0.3)))
                .differs(
                        "acceleration of x",
                        LIMITS.withAxisAccelerations(metresPerSquareSecond(3), metresPerSquareSecond(1)))
                .differs("jerk of an axis", LIMITS.withAxisJerks(Kind.JERK.of(3), Kind.JERK.of(4)))
                .differs("path acceleration", LIMITS.withPathAcceleration(metresPerSquareSecond(0.5)))
                .differs("stop", LIMITS.withStopAtCorners())
                .differs("pulse", LIMITS.withCornerPulse(millimetres(0.01)))
                .differs("jump", LIMITS.withCornerJump(metresPerSecond(0.01), metresPerSecond(0.02)))
                .check();
        assertThat(LIMITS.jerk()).isEmpty();
    }

    @Test
    void tiltingHeadsAreValues() {
        ValueContract.of(() -> TiltingHead.of(degrees(8), Kind.ANGULAR_SPEED.of(1), Kind.ANGULAR_ACCELERATION.of(10)))
                .has("inclination", TiltingHead::inclination, degrees(8))
                .has("speed", TiltingHead::speed, Kind.ANGULAR_SPEED.of(1))
                .has("acceleration", TiltingHead::acceleration, Kind.ANGULAR_ACCELERATION.of(10))
                .change("lead", head -> head.withLead(0.5), TiltingHead::lead, 0.5)
                .change("taper", head -> head.withTaperCompensation(false), TiltingHead::compensatesTaper, false)
                .differs(
                        "inclination",
                        TiltingHead.of(degrees(7), Kind.ANGULAR_SPEED.of(1), Kind.ANGULAR_ACCELERATION.of(10)))
                .check();
    }

    @Test
    void limitsOfAMachineAreAboveZero() {
        assertRefused(() -> LIMITS.withJerk(Kind.JERK.of(0)), "must-be-above", "jerk", 0);
        assertRefused(() -> LIMITS.withAxisJerks(Kind.JERK.of(1), Kind.JERK.of(-1)), "must-be-above");
        assertRefused(() -> LIMITS.withCornerDeviation(millimetres(0)), "must-be-above", "deviation at a corner", 0);
        assertRefused(
                () -> LIMITS.withMinimumFeed(millimetresPerMinute(-1)), "must-be-at-least", "minimum feed rate", 0);
        assertRefused(() -> LIMITS.withAxisSpeeds(metresPerSecond(1), metresPerSecond(0)), "must-be-above");
        assertRefused(
                () -> LIMITS.withAxisAccelerations(metresPerSquareSecond(Double.NaN), metresPerSquareSecond(1)),
                "must-be-at-most");
        assertRefused(() -> LIMITS.withCornerJump(metresPerSecond(0), metresPerSecond(1)), "must-be-above");
    }

    /** A right angle between two lines of 40 mm; times in closed form. */
    @Test
    void eachCornerRuleHasItsOwnSpeed() {
        Contour corner =
                Contour.fromSi(0, 0).lineToSi(0.04, 0).lineToSi(0.04, 0.04).open();
        QualityFeeds fast = QualityFeeds.same(metresPerSecond(0.2));
        double e = 1e-5;

        assertThat(atCorner(LIMITS.withStopAtCorners(), fast, corner)).isZero();
        // v^2 = a e cos/(1 - cos) at 45 degrees, with a = sqrt 2 along the bisector
        double cosine = Math.sqrt(0.5);
        assertThat(atCorner(LIMITS, fast, corner))
                .isCloseTo(Math.sqrt(Math.sqrt(2) * e * cosine / (1 - cosine)), within(1e-12));
        // parabola: v = sqrt(2 a e)/sin
        assertThat(atCorner(LIMITS.withCornerPulse(millimetres(0.01)), fast, corner))
                .isCloseTo(Math.sqrt(2 * Math.sqrt(2) * e) / cosine, within(1e-12));
        assertThat(atCorner(LIMITS.withCornerJump(metresPerSecond(0.01), metresPerSecond(0.02)), fast, corner))
                .isCloseTo(0.01, within(1e-12));
    }

    private static double atCorner(MachineLimits machine, QualityFeeds feeds, Contour corner) {
        return FeedPlanner.withoutLag(machine, feeds).plan(corner, Side.LEFT).feedAtSi(0.04);
    }

    @Test
    void feedsByQualityAreValues() {
        ValueContract.of(() -> QualityFeeds.same(millimetresPerMinute(200)))
                .has("medium", feeds -> feeds.feed(CutQuality.MEDIUM), millimetresPerMinute(200))
                .change(
                        "fine",
                        feeds -> feeds.with(CutQuality.FINE, millimetresPerMinute(90)),
                        feeds -> feeds.feed(CutQuality.FINE),
                        millimetresPerMinute(90))
                .differs("all", QualityFeeds.same(millimetresPerMinute(201)))
                .check();
        assertRefused(() -> QualityFeeds.same(millimetresPerMinute(0)), "must-be-above");
    }

    @Test
    void slowZonesOfALineAreItsRamps() {
        Contour line = Contour.fromSi(0, 0).lineToSi(0.1, 0).open();
        double v = 0.02;
        List<SlowZone> zones = plan(line, 1200).slowZones(0.9);
        SlowZone first = zones.get(0);
        SlowZone last = zones.get(1);

        assertThat(zones).hasSize(2);
        assertThat(first.place()).isEqualTo(Point.ofSi(0, 0));
        assertThat(first.limit()).isEqualTo(FeedLimit.PATH_END);
        // 0.9 v is passed 0.81 v^2 / 2 after the start, after 0.9 v
        assertThat(Kind.LENGTH.si(first.endsAt())).isCloseTo(0.81 * v * v / 2, within(1e-12));
        assertThat(Kind.TIME.si(first.time())).isCloseTo(0.9 * v, within(1e-12));
        assertThat(Kind.SPEED.si(first.meanFeed())).isCloseTo(0.45 * v, within(1e-12));
        assertThat(Kind.SPEED.si(first.nominalFeed())).isEqualTo(v);
        assertThat(last.place()).isEqualTo(Point.millimetres(100, 0));
        assertThat(Kind.LENGTH.si(last.startsAt())).isCloseTo(0.1 - 0.81 * v * v / 2, within(1e-12));
    }

    @Test
    void aBlockOfAnArcHasItsCentreAndTurn() {
        Contour path = Contour.from(Point.millimetres(0, 0))
                .arcTo(Point.millimetres(20, 0), Point.millimetres(10, 0), Side.RIGHT)
                .open();
        PlanBlock block = plan(path, 600).block(0);

        assertThat(block.centre()).contains(Point.millimetres(10, 0));
        assertThat(block.turn()).contains(Side.RIGHT);
        assertThat(block.start()).isEqualTo(Point.millimetres(0, 0));
        assertThat(block.end()).isEqualTo(Point.millimetres(20, 0));
        assertThat(Kind.LENGTH.si(block.length())).isCloseTo(Math.PI * 0.01, within(1e-12));
    }

    @Test
    void everyLimitHasALabel() {
        for (FeedLimit limit : FeedLimit.values()) {
            assertThat(limit.label()).isNotBlank();
        }
        for (GoverningLimit limit : GoverningLimit.values()) {
            assertThat(FeedLimit.ofCode(limit == GoverningLimit.PROCESS ? 0 : limit.code()))
                    .isNotNull();
        }
    }
}
