package dev.waterjet.plan;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.motion.QualityFeeds;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

class PartPlannerTest {

    private static final FeedModel MODEL = MachinabilityFeed.published();
    private static final Workpiece PLATE = Jobs.plate("stainless-304", 6);
    private static final Contour HOLE =
            Contour.circle(Point.millimetres(20, 20), millimetres(5), EdgeRequirement.of(CutQuality.FINE));
    private static final Contour OUTLINE =
            Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(60, 40), EdgeRequirement.of(CutQuality.MEDIUM));

    private static PartPlanner planner() {
        return PartPlanner.of(
                FeedPlanner.of(
                        MachineLimits.of(millimetresPerMinute(10000), metresPerSquareSecond(1)),
                        QualityFeeds.of(MODEL, Jobs.JET, PLATE),
                        LagModel.standard().function(CutConditions.of(Jobs.JET, PLATE, MODEL))),
                MODEL);
    }

    private static PartPlan plan() {
        return planner()
                .plan(
                        Jobs.JET,
                        PLATE,
                        List.of(HOLE, OUTLINE),
                        List.of(HOLE.enclosedSide().opposite(), OUTLINE.enclosedSide()));
    }

    @Test
    void timesAddUpOverContoursPiercesAndMoves() {
        PartPlan plan = plan();
        double cutting = plan.cuts().stream()
                .mapToDouble(cut -> Kind.TIME.si(cut.time()))
                .sum();

        assertThat(plan.cuttingTime().si()).isCloseTo(cutting, within(1e-9 * cutting));
        assertThat(plan.timeByLimit().values().stream()
                        .mapToDouble(Kind.TIME::si)
                        .sum())
                .isCloseTo(cutting, within(1e-9 * cutting));
        assertThat(plan.work().jetTime().si())
                .isCloseTo(cutting + 2 * plan.pierce().time().si(), within(1e-9 * cutting));
        assertThat(Kind.LENGTH.si(plan.cutLength())).isCloseTo(0.2 + 0.01 * Math.PI, within(1e-9));
        // no faster than the feed of each grade without corners
        double fine = MODEL.feed(Jobs.JET, PLATE, CutQuality.FINE).si();
        double medium = MODEL.feed(Jobs.JET, PLATE, CutQuality.MEDIUM).si();
        assertThat(cutting).isGreaterThanOrEqualTo(0.01 * Math.PI / fine + 0.2 / medium);
    }

    @Test
    void aMoveSpeedsUpAndBrakes() {
        // from (25, 20) to (0, 0): 32.0 mm; at 1 m/s2 and 10 m/min the speed is reached at 27.8 mm
        double length = Math.hypot(0.025, 0.020);
        double speed = 10.0 / 60;
        PartPlan plan = plan();

        assertThat(Kind.LENGTH.si(plan.moveLength())).isCloseTo(length, within(1e-12));
        assertThat(Kind.TIME.si(plan.work().idleTime())).isCloseTo(length / speed + speed, within(1e-12));
        PartPlan slow = planner()
                .withMoves(millimetresPerMinute(60000), metresPerSquareSecond(1))
                .plan(Jobs.JET, PLATE, List.of(HOLE, OUTLINE), List.of(Side.RIGHT, Side.LEFT));
        assertThat(Kind.TIME.si(slow.work().idleTime())).isCloseTo(2 * Math.sqrt(length), within(1e-12));
    }

    @Test
    void aPlanIsAsSureAsItsFeed() {
        double relative = plan().cuttingTime().relativeUncertainty();

        assertThat(relative)
                .isBetween(
                        0.5 * MODEL.relativeUncertainty(PLATE.material()), MODEL.relativeUncertainty(PLATE.material()));
        assertThat(Kind.MASS.si(plan().consumption(0.65).abrasive()))
                .isCloseTo(0.005 * plan().work().jetTime().si(), within(1e-12));
    }

    @Test
    void aPartWithoutContoursIsRefused() {
        assertThatThrownBy(() -> planner().plan(Jobs.JET, PLATE, List.of(), List.of()))
                .isInstanceOf(DomainException.class)
                .hasMessage("number of contours is 0; it must be at least 1 (a part has an outline)");
        assertThatThrownBy(() -> planner().plan(Jobs.JET, PLATE, List.of(HOLE), List.of()))
                .hasMessageContaining("number of sides is 0");
    }

    @Test
    void aMoveTakesTheTimeOfItsTrapezoidAtAnyAcceleration() {
        double length = Math.hypot(0.025, 0.020);
        PartPlan quick = planner()
                .withMoves(millimetresPerMinute(6000), metresPerSquareSecond(2))
                .plan(Jobs.JET, PLATE, List.of(HOLE, OUTLINE), List.of(Side.RIGHT, Side.LEFT));
        PartPlan slow = planner()
                .withMoves(millimetresPerMinute(60000), metresPerSquareSecond(2))
                .plan(Jobs.JET, PLATE, List.of(HOLE, OUTLINE), List.of(Side.RIGHT, Side.LEFT));

        // 0.1 m/s is reached after 2.5 mm and 0.05 s; 1 m/s would need 250 mm
        assertThat(Kind.TIME.si(quick.work().idleTime())).isCloseTo(length / 0.1 + 0.05, within(1e-12));
        assertThat(Kind.TIME.si(slow.work().idleTime())).isCloseTo(2 * Math.sqrt(length / 2), within(1e-12));
    }

    @Test
    void aPlanTellsWhatItHolds() {
        PartPlan plan = plan();

        assertThat(plan.describe())
                .containsEntry("contours", 2L)
                .containsKeys("jet", "piece", "pierce", "cut_length_m", "cutting_time", "time_under_grade_s");
        assertThat(plan.toString()).startsWith("2 contours, 0.2314 m in ");
        assertThat(plan.jet()).isEqualTo(Jobs.JET);
        assertThat(plan.workpiece()).isEqualTo(PLATE);
    }
}
