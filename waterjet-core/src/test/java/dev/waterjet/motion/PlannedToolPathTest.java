package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.LeadPlacer;
import dev.waterjet.toolpath.ToolPath;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Plans of tool paths with leads and tabs, and of heads that tilt or do not. */
class PlannedToolPathTest {

    private static final FeedPlanner PLANNER = FeedPlanTest.planner("mild-steel-a36", 20);
    private static final TiltingHead HEAD =
            TiltingHead.of(Kind.ANGLE.of(0.15), Kind.ANGULAR_SPEED.of(1), Kind.ANGULAR_ACCELERATION.of(10));

    private static ToolPath path() {
        Part part = Part.of(FeedPlanTest.square(60, FeedPlanTest.MEDIUM));
        ToolPath path = LeadPlacer.of(part, CuttingRules.of(Measures.millimetres(1), Measures.millimetres(6)))
                .at(0, Measures.millimetres(15))
                .toolPath();
        return path.withTabs(
                QuantityArray.ofSi(Kind.LENGTH, 0.06, 0.15), Measures.millimetres(2), Measures.millimetres(1));
    }

    /** An end at a tab is separated like an open end; the end in scrap is not. */
    @Test
    void onlyTheLastStretchEndsInScrap() {
        ToolPath path = path();
        List<Contour> cuts = path.cuts();
        List<FeedPlan> plans = PLANNER.plan(path);

        assertThat(plans).hasSize(3);
        assertThat(path.purpose(path.size() - 1)).isEqualTo(ToolPath.Purpose.LEAD_OUT);
        for (int i = 0; i < 3; i++) {
            FeedPlan open = PLANNER.planAsDrawn(cuts.get(i), path.partSide());
            assertThat(plans.get(i).source()).isEqualTo(cuts.get(i));
            double length = plans.get(i).contour().lengthSi();
            assertThat(plans.get(i).feedAtSi(length - 0.0005)).isCloseTo(open.feedAtSi(length - 0.0005), within(1e-12));
            assertThat(plans.get(i).time()).isEqualTo(open.time());
        }
        double first = plans.get(0).contour().lengthSi();
        assertThat(plans.get(0).feedAtSi(first - 0.0005))
                .isLessThan(0.9 * plans.get(0).feedAtSi(first / 2));
    }

    @Test
    void cautionsAreThoseOfTheCutTheFrontAndTheTilt() {
        Contour square = FeedPlanTest.square(60, FeedPlanTest.MEDIUM);
        List<Caution> upright = PLANNER.plan(square, Side.LEFT).cautions();
        List<Caution> tilting =
                PLANNER.withTiltingHead(HEAD).plan(square, Side.LEFT).cautions();

        assertThat(upright)
                .extracting(Caution::code)
                .contains("lag-extrapolated")
                .doesNotContain("leaning-front-unknown");
        assertThat(tilting).extracting(Caution::code).contains("leaning-front-unknown");
        assertThat(FeedPlanner.withoutLag(FeedPlanTest.MACHINE, PLANNER.feeds())
                        .plan(square, Side.LEFT)
                        .cautions())
                .isEmpty();
    }

    /** A front that follows the path needs no lead; the other geometries have one. */
    @ParameterizedTest
    @EnumSource
    void theLeadFollowsTheGeometryOfTheFront(LagGeometry geometry) {
        Contour line = Contour.from(Point.millimetres(0, 0))
                .requirement(FeedPlanTest.MEDIUM)
                .lineTo(Point.millimetres(80, 0))
                .open();
        FeedPlanner planner = PLANNER.withLagGeometry(geometry);
        TiltProfile tilt =
                planner.withTiltingHead(HEAD).plan(line, Side.LEFT).tilt().orElseThrow();

        double lead = Kind.ANGLE.si(tilt.lead(Measures.millimetres(40)));
        assertThat(lead > 1e-3).isEqualTo(geometry != LagGeometry.FOLLOWING);
        assertThat(planner.withTiltingHead(HEAD.withTaperCompensation(false))
                        .plan(line, Side.LEFT)
                        .tilt()
                        .isPresent())
                .isEqualTo(geometry != LagGeometry.FOLLOWING);
        assertThat(planner.plan(line, Side.LEFT).tilt()).isEmpty();
        assertThat(FeedPlanner.withoutLag(FeedPlanTest.MACHINE, PLANNER.feeds())
                        .withTiltingHead(HEAD)
                        .plan(line, Side.LEFT)
                        .tilt())
                .isEmpty();
    }

    @Test
    void timesOfEdgesAreThoseBetweenTheirEnds() {
        FeedPlan plan = PLANNER.plan(FeedPlanTest.path(5), Side.RIGHT);
        double at = 0;
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < plan.contour().size(); i++) {
            plan.contour().load(i, edge);
            double end = Math.min(plan.contour().lengthSi(), at + edge.length());
            assertThat(Kind.TIME.si(plan.timeOfEdge(i)))
                    .isCloseTo(plan.timeAtSi(end) - plan.timeAtSi(at), within(1e-7));
            at = end;
        }
        double whole = 0;
        for (int i = 0; i < plan.size(); i++) {
            double end = Math.min(plan.contour().lengthSi(), whole + plan.lengthSi(i));
            assertThat(plan.entrySi(i)).isCloseTo(plan.feedAtSi(whole), within(1e-9));
            assertThat(plan.exitSi(i)).isCloseTo(plan.feedAtSi(end), within(1e-9));
            assertThat(plan.timeSi(i)).isCloseTo(plan.timeAtSi(end) - plan.timeAtSi(whole), within(1e-7));
            assertThat(Kind.SPEED.si(plan.feedAt(Kind.LENGTH.of(end)))).isEqualTo(plan.feedAtSi(end));
            whole = end;
        }
    }
}
