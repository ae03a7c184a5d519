package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.plan.PartPlannerTest.MEDIUM;
import static dev.waterjet.plan.PartPlannerTest.PLATE;
import static dev.waterjet.plan.PartPlannerTest.SETUP;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.motion.TiltingHead;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.program.ProgramMove;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Moves of a plan follow each other, lie on their arcs, and are written in that order. */
class PlannedMovesTest {

    private static final TiltingHead HEAD = TiltingHead.of(
            degrees(10), Kind.ANGULAR_SPEED.of(Math.toRadians(60)), Kind.ANGULAR_ACCELERATION.of(Math.toRadians(500)));

    private static Part roundedPlate() {
        return Part.of(
                Contour.from(Point.millimetres(0, 0))
                        .requirement(MEDIUM)
                        .lineTo(Point.millimetres(60, 0))
                        .lineTo(Point.millimetres(60, 50))
                        .arcTo(Point.millimetres(50, 60), Point.millimetres(50, 50), Side.LEFT)
                        .lineTo(Point.millimetres(0, 60))
                        .close(),
                Contour.circle(Point.millimetres(25, 30), millimetres(9), MEDIUM));
    }

    /** With a tilting head moves are divided where the tilt changes: still one path, and arcs about their centres. */
    @Test
    void piecesOfATiltedMoveLieOnTheMove() {
        for (Setup setup : List.of(SETUP, SETUP.withTiltingHead(HEAD))) {
            List<Move> moves = PartPlanner.of(setup).plan(roundedPlate(), PLATE).moves();
            Move before = moves.get(0);
            int arcs = 0;
            for (Move move : moves.subList(1, moves.size())) {
                assertThat(Kind.LENGTH.si(move.start().distance(before.end()))).isLessThan(1e-9);
                assertThat(Kind.LENGTH.si(move.length())).isCloseTo(lengthM(move), within(1e-9));
                arcs += move.isArc() ? 1 : 0;
                before = move;
            }
            assertThat(arcs).isPositive();
        }
    }

    /** Length of a move from its ends, centre and turn alone. */
    private static double lengthM(Move move) {
        if (!move.isArc()) {
            return Kind.LENGTH.si(move.start().distance(move.end()));
        }
        Point centre = move.centre().orElseThrow();
        double radius = Kind.LENGTH.si(centre.distance(move.start()));
        assertThat(Kind.LENGTH.si(centre.distance(move.end()))).isCloseTo(radius, within(1e-9));
        double from = Math.atan2(move.start().ySi() - centre.ySi(), move.start().xSi() - centre.xSi());
        double to = Math.atan2(move.end().ySi() - centre.ySi(), move.end().xSi() - centre.xSi());
        double turn = move.turn().orElseThrow() == Side.LEFT ? to - from : from - to;
        double sweep = turn - 2 * Math.PI * Math.floor(turn / (2 * Math.PI));
        return radius * (sweep < 1e-9 ? 2 * Math.PI : sweep);
    }

    @Test
    void aProgramOfAPlanSwitchesTheJetOnceACut() {
        PartPlan plan = PartPlanner.of(SETUP).plan(roundedPlate(), PLATE);
        List<ProgramMove> moves = new PlanProgram(plan).moves();

        assertThat(moves.get(0)).isInstanceOf(ProgramMove.Rapid.class);
        assertThat(moves.get(moves.size() - 1)).isInstanceOf(ProgramMove.JetOff.class);
        assertThat(moves).filteredOn(ProgramMove.JetOff.class::isInstance).hasSize(plan.pierces());
        assertThat(moves).filteredOn(ProgramMove.Rapid.class::isInstance).hasSize(plan.pierces());
    }

    /** From rest to rest: s/v + v/a from where the speed is reached, s = v^2/a, below that 2 sqrt(s/a). */
    @ParameterizedTest
    @CsvSource({"0.5, 2, 0.2, 0.65", "0.5, 2, 0.125, 0.5", "0.5, 2, 0.02, 0.2", "2, 0.5, 2, 4", "2, 0.5, 18, 13"})
    void rapidTraverseIsATrapezoid(double speed, double acceleration, double length, double seconds) {
        Setup setup = SETUP.withRapidTraverse(metresPerSecond(speed), metresPerSquareSecond(acceleration));

        assertThat(setup.rapidTimeSi(length)).isCloseTo(seconds, within(1e-12));
    }

    @Test
    void progressCountsTheCutsOfAProgram() {
        List<Double> seen = new ArrayList<>();

        PartPlanner.of(SETUP).withProgress(seen::add).plan(PartProgram.parse(NESTED), PLATE);

        assertThat(seen).containsExactly(0.2, 0.4, 0.6, 0.8, 1.0);
    }

    /** A frame: plate, window, island in the window, a hole in the island; beside it a disc. All run counter-clockwise. */
    private static final String NESTED =
            square(0, 100) + square(10, 80) + square(20, 60) + square(40, 20) + square(200, 30);

    private static String square(int from, int side) {
        int to = from + side;
        return "G0 X%1$d Y%1$d%nM3%nG1 X%2$d%nY%2$d%nX%1$d%nY%1$d%nM5%n".formatted(from, to);
    }

    @Test
    void theMaterialLiesInsideAndOutsideInTurn() {
        List<ProgramCut> cuts = PartProgram.parse(NESTED).cuts();

        assertThat(ProgramSides.of(cuts)).containsExactly(Side.LEFT, Side.RIGHT, Side.LEFT, Side.RIGHT, Side.LEFT);
        List<ProgramCut> reversed = new ArrayList<>(cuts);
        java.util.Collections.reverse(reversed);
        assertThat(ProgramSides.of(reversed)).containsExactly(Side.LEFT, Side.RIGHT, Side.LEFT, Side.RIGHT, Side.LEFT);
    }

    /** A slot narrower than the kerf, with the offset inside, is found at its line. */
    @Test
    void aSlotNarrowerThanTheJetIsFoundAtItsLine() {
        String slot = "G0 X5 Y0.15%nM3%nG42 D1 G1 X0 Y0%nY0.3%nX10%nY0%nX0%nG40 G1 X5 Y0.15%nM5%n".formatted();
        String wide = slot.replace("0.15", "2").replace("0.3", "4");

        assertThat(PartPlanner.of(SETUP).plan(PartProgram.parse(slot), PLATE).violations())
                .anySatisfy(finding -> {
                    assertThat(finding.code()).isEqualTo("jet-does-not-fit");
                    assertThat(finding.message().parameters()).containsKey("line");
                });
        assertThat(PartPlanner.of(SETUP).plan(PartProgram.parse(wide), PLATE).violations())
                .noneMatch(finding -> finding.code().equals("jet-does-not-fit"));
    }

    /** Pieces of 1, 2 and 3 m beside blocks of the same ends; a block runs up to its end. */
    @Test
    void placesOfAPathBelongToTheirBlocks() {
        double[] ends = {1, 3, 6};
        List<JetPiece> pieces = new ArrayList<>();
        double from = 0;
        for (double end : ends) {
            EdgeCursor edge = new EdgeCursor();
            edge.line(from, 0, end, 0);
            pieces.add(new JetPiece(edge, MEDIUM, 0, from, end));
            from = end;
        }
        JetPath path = JetPath.of(pieces, ends);

        for (int i = 0; i < ends.length; i++) {
            assertThat(path.block(i, 0)).isEqualTo(i);
            assertThat(path.block(i, 0.01)).isEqualTo(i);
            assertThat(path.block(i, 0.99)).isEqualTo(i);
            assertThat(path.block(i, 1)).isEqualTo(Math.min(i + 1, 2));
        }
    }

    /** A piece cut at a point of itself keeps what lies before or behind it, on a line and on an arc. */
    @Test
    void aPieceEndsAndStartsAtAPointOfItself() {
        for (boolean isArc : new boolean[] {false, true}) {
            JetPiece head = piece(isArc);
            JetPiece tail = piece(isArc);
            double share = 0.25;
            double x = head.edge.xAt(share);
            double y = head.edge.yAt(share);
            double length = head.edge.length();

            head.endAt(x, y);
            tail.startAt(x, y);

            assertThat(head.edge.length()).isCloseTo(share * length, within(1e-12));
            assertThat(tail.edge.length()).isCloseTo((1 - share) * length, within(1e-12));
            assertThat(Math.hypot(tail.edge.startX() - x, tail.edge.startY() - y))
                    .isLessThan(1e-12);
            assertThat(Math.hypot(head.edge.endX() - x, head.edge.endY() - y)).isLessThan(1e-12);
            assertThat(head.toM).isCloseTo(3, within(1e-12));
            assertThat(tail.fromM).isCloseTo(3, within(1e-12));
        }
    }

    private static JetPiece piece(boolean isArc) {
        EdgeCursor edge = new EdgeCursor();
        if (isArc) {
            edge.arc(1, 0, 0, 1, 0, 0, Math.PI / 2);
        } else {
            edge.line(1, 0, 0, 1);
        }
        return new JetPiece(edge, MEDIUM, 0, 2, 6);
    }

    @Test
    void planAndSetupDescribeWhatTheyHold() {
        PartPlan plan = PartPlanner.of(SETUP).plan(roundedPlate(), PLATE);

        assertThat(SETUP.describe()).doesNotContainKey("shear_strength_Pa");
        assertThat(SETUP.withShearStrength(megapascals(300)).describe()).containsEntry("shear_strength_Pa", 300e6);
        assertThat(plan.cuts().get(0).describe())
                .containsEntry("source", (long) plan.cuts().get(0).source())
                .containsEntry("time_s", Kind.TIME.si(plan.cuts().get(0).time()))
                .containsEntry("length_m", Kind.LENGTH.si(plan.cuts().get(0).length()));
        assertThat(plan.toString()).contains("2 cuts");
        assertThat(PartPlanner.of(SETUP)
                        .plan(Part.of(roundedPlate().outline()), PLATE)
                        .toString())
                .contains("1 cut,");
        assertThat(plan.moves())
                .allSatisfy(move ->
                        assertThat(move.toString()).contains(move.purpose().label()));
    }
}
