package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import org.junit.jupiter.api.Test;

class PartPlannerTest {

    private static final FeedModel MODEL = MachinabilityFeed.published();
    private static final Workpiece PLATE = Jobs.plate("stainless-304", 6);
    private static final CutConditions CONDITIONS = CutConditions.of(Jobs.JET, PLATE, MODEL);
    private static final Contour HOLE =
            Contour.circle(Point.millimetres(20, 20), millimetres(5), EdgeRequirement.of(CutQuality.FINE));
    private static final Contour OUTLINE = Contour.rectangle(
            Point.millimetres(0, 0), Point.millimetres(60, 40), EdgeRequirement.of(CutQuality.MEDIUM));

    private static PartPlanner planner() {
        return PartPlanner.of(
                FeedPlanner.of(MachineLimits.of(millimetresPerMinute(10000), metresPerSquareSecond(1)), CONDITIONS),
                CONDITIONS);
    }

    private static PartPlan plan() {
        return planner()
                .plan(List.of(HOLE, OUTLINE), List.of(HOLE.enclosedSide().opposite(), OUTLINE.enclosedSide()));
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

        assertThat(Kind.LENGTH.si(plan.rapidLength())).isCloseTo(length, within(1e-12));
        assertThat(Kind.TIME.si(plan.work().idleTime())).isCloseTo(length / speed + speed, within(1e-12));
        PartPlan slow = planner()
                .withRapidTraverse(millimetresPerMinute(60000), metresPerSquareSecond(1))
                .plan(List.of(HOLE, OUTLINE), List.of(Side.RIGHT, Side.LEFT));
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
    void aPartWithoutContoursIsRejected() {
        assertThat(Refusals.of(() -> planner().plan(List.of(), List.of()))).isEqualTo("must-be-at-least");
        assertThat(Refusals.of(() -> planner().plan(List.of(HOLE), List.of()))).isEqualTo("must-be-at-least");
    }

    @Test
    void rapidTraverseRequiresSpeedAndAcceleration() {
        assertThat(Refusals.of(() -> planner().withRapidTraverse(millimetresPerMinute(0), metresPerSquareSecond(1))))
                .isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> planner().withRapidTraverse(millimetresPerMinute(1), metresPerSquareSecond(0))))
                .isEqualTo("must-be-above");
    }

    @Test
    void aMoveTakesTheTimeOfItsTrapezoidAtAnyAcceleration() {
        double length = Math.hypot(0.025, 0.020);
        PartPlan quick = planner()
                .withRapidTraverse(millimetresPerMinute(6000), metresPerSquareSecond(2))
                .plan(List.of(HOLE, OUTLINE), List.of(Side.RIGHT, Side.LEFT));
        PartPlan slow = planner()
                .withRapidTraverse(millimetresPerMinute(60000), metresPerSquareSecond(2))
                .plan(List.of(HOLE, OUTLINE), List.of(Side.RIGHT, Side.LEFT));

        // 0.1 m/s is reached after 2.5 mm and 0.05 s; 1 m/s would need 250 mm
        assertThat(Kind.TIME.si(quick.work().idleTime())).isCloseTo(length / 0.1 + 0.05, within(1e-12));
        assertThat(Kind.TIME.si(slow.work().idleTime())).isCloseTo(2 * Math.sqrt(length / 2), within(1e-12));
    }

    @Test
    void aPlanDescribesItsCuts() {
        PartPlan plan = plan();

        assertThat((List<?>) plan.describe().get("cuts")).hasSize(2);
        assertThat(plan.describe())
                .containsKeys("conditions", "pierce", "cut_length_m", "cutting_time", "time_limited_by_quality_s");
        assertThat(plan.toString()).startsWith("2 contours, 0.2314 m in ");
    }

    /** Every caution of the feed rate, the jet and the pierce reaches the plan. */
    @Test
    void aPlanHasTheCautionsOfItsParts() {
        PartPlan plan = plan();

        assertThat(plan.cautions())
                .containsAll(CONDITIONS.cautions())
                .containsAll(plan.pierce().cautions())
                .doesNotHaveDuplicates();
    }
}
