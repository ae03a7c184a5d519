package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.degrees;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.placement.RigidMove;
import dev.waterjet.program.PartProgram;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Parts and programs planned where a location puts them. */
class LocatedPlanTest {

    private static final PartPlanner PLANNER = PartPlanner.of(Setup.of(
            Jobs.JET.head(),
            PumpSetting.ofPower(Measures.kilowatts(30), Measures.megapascals(380)),
            MachineLimits.of(Measures.millimetresPerMinute(10_000), Measures.metresPerSquareSecond(1))));

    private static final Workpiece PLATE = Jobs.plate("stainless-304", 6);

    private static final String PROGRAM = """
        G21 G90
        G0 X20 Y20
        M3
        G42 D1 G1 X25 Y20
        G2 I-5 J0
        G40 G1 X20
        M5
        G0 X-5 Y-5
        M3
        G41 D1 G1 X0 Y0
        Y40
        X50
        G2 X60 Y30 I0 J-10
        G1 Y0
        X0
        G40 X-5 Y-5
        M5
        M30
        """;

    private static RigidMove move(double turnDegrees) {
        return RigidMove.of(degrees(turnDegrees), Point.millimetres(321.5, -87.25));
    }

    /** The limits of both axes are equal, so that quarters of a turn change no time. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 90, 180, -90})
    void quartersOfATurnMoveEveryMoveAndChangeNoTime(double turnDegrees) {
        RigidMove move = move(turnDegrees);
        PartProgram program = PartProgram.parse(PROGRAM);
        PartPlan before = PLANNER.plan(program, PLATE);
        PartPlan after = PLANNER.plan(program.movedBy(move), PLATE);

        assertThat(after.moves()).hasSameSizeAs(before.moves());
        for (int i = 0; i < after.moves().size(); i++) {
            Move one = before.moves().get(i);
            Move other = after.moves().get(i);
            assertThat(other.purpose()).isEqualTo(one.purpose());
            assertThat(Kind.LENGTH.si(other.end().distance(move.apply(one.end()))))
                    .isLessThan(1e-6);
            assertThat(Kind.TIME.si(other.time())).isCloseTo(Kind.TIME.si(one.time()), within(1e-4));
        }
        assertThat(after.findings()).hasSameSizeAs(before.findings());
    }

    /** In between, both axes share the acceleration: the path is the same, the time nearly so. */
    @ParameterizedTest
    @ValueSource(doubles = {12.3, 45, -123})
    void otherTurnsKeepThePathAndNearlyTheTime(double turnDegrees) {
        PartProgram program = PartProgram.parse(PROGRAM);
        PartPlan before = PLANNER.plan(program, PLATE);
        PartPlan after = PLANNER.plan(program.movedBy(move(turnDegrees)), PLATE);

        assertThat(Kind.LENGTH.si(after.cutLength())).isCloseTo(Kind.LENGTH.si(before.cutLength()), within(1e-5));
        assertThat(after.cuttingTime().si()).isCloseTo(before.cuttingTime().si(), withinPercentage(3));
        assertThat(after.pierces()).isEqualTo(before.pierces());
    }

    @Test
    void aMovedPartHasThePlanOfThePart() {
        Part part = PartPlannerTest.mirrorPlate();
        PartPlan before = PLANNER.plan(part, PLATE);
        PartPlan after = PLANNER.plan(move(90).apply(part), PLATE);

        assertThat(after.cuts())
                .extracting(PlannedCut::name)
                .containsExactlyInAnyOrderElementsOf(
                        before.cuts().stream().map(PlannedCut::name).toList());
        assertThat(after.cuttingTime().si()).isCloseTo(before.cuttingTime().si(), withinPercentage(1));
        assertThat(Kind.LENGTH.si(after.cutLength()))
                .isCloseTo(Kind.LENGTH.si(before.cutLength()), withinPercentage(1));
    }
}
