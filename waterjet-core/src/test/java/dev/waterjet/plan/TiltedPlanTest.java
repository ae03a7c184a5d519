package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.litresPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.Caution;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.motion.TiltProfile;
import dev.waterjet.motion.TiltingHead;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.program.PartProgram;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TiltedPlanTest {

    private static final TiltingHead HEAD = TiltingHead.of(
            degrees(10), Kind.ANGULAR_SPEED.of(Math.toRadians(60)), Kind.ANGULAR_ACCELERATION.of(Math.toRadians(500)));
    private static final Setup UPRIGHT = Setup.of(
                    CuttingHead.of(
                            Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(80))),
                    PumpSetting.of(megapascals(380), litresPerMinute(3.5)),
                    MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(0.5)))
            .withAbrasive(Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450));
    private static final Setup TILTED = UPRIGHT.withTiltingHead(HEAD);
    private static final Workpiece PLATE = Jobs.plate("mild-steel-a36", 25);

    /** Bracket of the mirror cell: a re-entrant corner, a rounding and a bore. */
    private static Part bracket() {
        EdgeRequirement medium = EdgeRequirement.of(CutQuality.MEDIUM);
        return Part.of(
                Contour.from(Point.millimetres(0, 0))
                        .requirement(medium)
                        .lineTo(Point.millimetres(60, 0))
                        .lineTo(Point.millimetres(60, 20))
                        .lineTo(Point.millimetres(30, 20))
                        .lineTo(Point.millimetres(30, 50))
                        .arcTo(Point.millimetres(20, 60), Point.millimetres(20, 50), Side.LEFT)
                        .lineTo(Point.millimetres(0, 60))
                        .close()
                        .named("rim"),
                Contour.circle(Point.millimetres(15, 40), millimetres(8), medium)
                        .named("bore"));
    }

    private static final String PROGRAM = """
        G21 G90
        (waterjet: name bracket)
        G0 X0 Y0
        M3
        G1 X5 Y0 F100
        G1 X40 Y0
        G1 X40 Y20
        G2 X30 Y30 I0 J10
        G1 X5 Y30
        G1 X5 Y0
        M5
        M30
        """;

    private static PartPlan planOf(boolean isProgram, Setup setup) {
        return isProgram
                ? PartPlanner.of(setup).plan(PartProgram.parse(PROGRAM), PLATE)
                : PartPlanner.of(setup).plan(bracket(), PLATE);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void movesFollowOneAnotherInPlaceAndTilt(boolean isProgram) {
        List<Move> moves = planOf(isProgram, TILTED).moves();

        for (int i = 1; i < moves.size(); i++) {
            Move before = moves.get(i - 1);
            Move move = moves.get(i);
            assertThat(Kind.LENGTH.si(move.start().distance(before.end()))).isLessThan(1e-8);
            if (before.tilt().isPresent() && move.tilt().isPresent()) {
                HeadTilt end = before.tilt().get().end();
                HeadTilt start = move.tilt().get().start();
                assertThat(start.displacementX()).isCloseTo(end.displacementX(), within(1e-6));
                assertThat(start.displacementY()).isCloseTo(end.displacementY(), within(1e-6));
            }
            assertThat(move.tilt().isPresent()).isEqualTo(move.purpose().isJetOn());
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void theFeedRatesOfTheMovesTakeTheTimeOfThePlan(boolean isProgram) {
        PartPlan plan = planOf(isProgram, TILTED);

        double sum = 0;
        double length = 0;
        for (Move move : plan.moves()) {
            if (move.limit().isPresent()) {
                sum += Kind.LENGTH.si(move.length()) / Kind.SPEED.si(move.feed());
                length += Kind.LENGTH.si(move.length());
            }
        }
        assertThat(sum).isCloseTo(plan.cuttingTime().si(), within(1e-6 * sum));
        assertThat(length).isCloseTo(Kind.LENGTH.si(plan.cutLength()), within(2e-4 * length));
        assertThat(plan.cuttingTime().si())
                .isLessThan(planOf(isProgram, UPRIGHT).cuttingTime().si());
    }

    /** A control that moves place and direction evenly stays within 0.03 degrees of the planned tilt. */
    @Test
    void withinAMoveTheTiltIsLinear() {
        PartPlan plan = planOf(false, TILTED);
        TiltProfile tilt = plan.cuts().get(1).feeds().get(0).tilt().orElseThrow();

        double at = 0;
        for (Move move : plan.moves()) {
            if (move.cut() == 1 && move.limit().isPresent()) {
                double length = Kind.LENGTH.si(move.length());
                MoveTilt lean = move.tilt().orElseThrow();
                HeadTilt middle = tilt.at(Kind.LENGTH.of(at + length / 2));
                double x = (lean.start().displacementX() + lean.end().displacementX()) / 2;
                double y = (lean.start().displacementY() + lean.end().displacementY()) / 2;
                assertThat(Math.hypot(middle.displacementX() - x, middle.displacementY() - y))
                        .isLessThan(Math.toRadians(0.03));
                at += length;
            }
        }
        assertThat(at).isPositive();
    }

    @Test
    void aDirectionIsAUnitVectorAndTwoAngles() {
        double standOff = 0.0;
        for (Move move : planOf(false, TILTED).moves()) {
            if (move.tilt().isEmpty()) {
                assertThat(move.nozzleEnd()).isEqualTo(move.end());
                continue;
            }
            MoveTilt lean = move.tilt().get();
            HeadTilt end = lean.end();
            double a = Kind.ANGLE.si(end.gimbalA());
            double b = Kind.ANGLE.si(end.gimbalB());
            assertThat(Math.hypot(Math.hypot(end.axisX(), end.axisY()), end.axisZ()))
                    .isCloseTo(1, within(1e-12));
            // Rx(A) Ry(B) e_z
            assertThat(end.axisX()).isCloseTo(Math.sin(b), within(1e-12));
            assertThat(end.axisY()).isCloseTo(-Math.sin(a) * Math.cos(b), within(1e-12));
            standOff = Kind.LENGTH.si(lean.standOff());
            assertThat(move.nozzleEnd().xSi() - move.end().xSi()).isCloseTo(standOff * end.axisX(), within(1e-12));
            assertThat(move.nozzleStart().ySi() - move.start().ySi())
                    .isCloseTo(standOff * lean.start().axisY(), within(1e-12));
        }
        assertThat(standOff).isPositive();
    }

    @Test
    void theTableShowsTheTiltOnlyWhereThereIsOne() {
        String upright = planOf(false, UPRIGHT).csv();
        String tilted = planOf(false, TILTED).csv();

        List<String> lines = tilted.lines().toList();
        assertThat(upright.lines().findFirst().orElseThrow()).endsWith(",cause");
        assertThat(lines.get(0)).contains("start_tilt_x", "end_tilt_a_rad", "end_tilt_b_rad", "end_nozzle_x_m");
        long columns = lines.get(0).chars().filter(c -> c == ',').count();
        assertThat(lines)
                .allSatisfy(
                        line -> assertThat(line.chars().filter(c -> c == ',')).hasSize((int) columns));
        assertThat(planOf(false, TILTED).describe().toString()).contains("gimbal_a_rad", "axis_x", "tilting_head");
        assertThat(planOf(false, UPRIGHT).describe().toString()).doesNotContain("gimbal_a_rad");
    }

    @Test
    void aTiltedPlanSaysThatNoProgramHoldsTheTilt() {
        assertThat(planOf(true, TILTED).cautions())
                .filteredOn(caution -> caution.severity() == Caution.Severity.WARNING)
                .extracting(Caution::code)
                .contains("tilt-not-written");
        assertThat(planOf(true, UPRIGHT).cautions()).extracting(Caution::code).doesNotContain("tilt-not-written");
    }

    @Test
    void aHeadWithoutARangeGivesThePlanOfAnUprightOne() {
        Setup still = UPRIGHT.withTiltingHead(TiltingHead.of(degrees(0), HEAD.speed(), HEAD.acceleration()));

        assertThat(planOf(false, still).moves())
                .isEqualTo(planOf(false, UPRIGHT).moves());
        assertThat(still.tiltingHead()).isPresent();
        assertThat(still).isNotEqualTo(UPRIGHT);
    }

    @Test
    void aNegativeStandOffIsRefused() {
        assertThat(Refusals.of(() -> new MoveTilt(HeadTilt.upright(), HeadTilt.upright(), millimetres(-1))))
                .isEqualTo("must-be-at-least");
    }
}
