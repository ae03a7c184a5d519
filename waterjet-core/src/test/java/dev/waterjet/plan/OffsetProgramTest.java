package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.plan.PartPlannerTest.MEDIUM;
import static dev.waterjet.plan.PartPlannerTest.PLATE;
import static dev.waterjet.plan.PartPlannerTest.SETUP;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.program.OffsetFeed;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramCodes;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.program.ProgramWriter;
import dev.waterjet.toolpath.KerfOffset;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Programs whose kerf offset the machine applies: their words, run as they stand, take the planned time. */
class OffsetProgramTest {

    private static PartPlan plan(String text) {
        return plan(text, ProgramCodes.defaults());
    }

    private static PartPlan plan(String text, ProgramCodes codes) {
        return PartPlanner.of(SETUP).plan(PartProgram.parse(text, codes), PLATE);
    }

    private static PartProgram written(PartPlan plan, String text, ProgramCodes codes) {
        PartProgram program = PartProgram.parse(text, codes);
        return PartProgram.parse(ProgramWriter.of(codes).rewrite(program, plan.feeds()), codes);
    }

    /** A hole about the origin, entered from its centre. */
    private static String hole(double radius) {
        return String.format(Locale.ROOT, "G0 X0 Y0%nM3%nG42 D1 G1 X%1$s%nG2 X%1$s I-%1$s J0%nG40 G1 X0%nM5%n", radius);
    }

    private static double feedSi(PartProgram program, int block) {
        return Kind.SPEED.si(program.feed(block).orElseThrow());
    }

    private static double offset(PartPlan plan) {
        return Kind.LENGTH.si(plan.cuts().get(0).offset().orElseThrow());
    }

    /** A control that keeps its words along the axis: lines to the circle of R - d and back, arcs of that circle. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 1.5, 2.5, 6, 20})
    void theWordsOfAHoleTakeThePlannedTime(double radius) {
        PartPlan plan = plan(hole(radius));
        PartProgram program = written(plan, hole(radius), ProgramCodes.defaults());
        double r = radius / 1000 - offset(plan);
        ProgramCut cut = program.cuts().get(0);
        Contour path = cut.path(MEDIUM);
        EdgeCursor edge = new EdgeCursor();
        double time = 0;
        for (int i = 0; i < cut.size(); i++) {
            path.load(i, edge);
            time += (edge.isArc() ? Math.abs(edge.sweep()) * r : r) / feedSi(program, i);
        }

        assertThat(time).isCloseTo(plan.cuttingTime().si(), within(2e-3 * time));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 2.5, 20})
    void aControlThatKeepsItsWordsAlongTheEdgeGetsOthers(double radius) {
        ProgramCodes codes = ProgramCodes.defaults().withOffsetFeed(OffsetFeed.EDGE);
        PartPlan plan = plan(hole(radius), codes);
        PartProgram alongEdge = written(plan, hole(radius), codes);
        PartProgram alongAxis = written(plan(hole(radius)), hole(radius), ProgramCodes.defaults());
        double ratio = radius / 1000 / (radius / 1000 - offset(plan));

        assertThat(alongEdge.size()).isEqualTo(alongAxis.size());
        for (int i = 1; i < alongEdge.size() - 1; i++) {
            assertThat(feedSi(alongEdge, i))
                    .isCloseTo(feedSi(alongAxis, i) * ratio, within(2e-3 * feedSi(alongEdge, i)));
        }
        assertThat(plan.cuttingTime().si())
                .isCloseTo(plan(hole(radius)).cuttingTime().si(), within(1e-9));
    }

    /** Sides of the square, three quarters of a circle about its corners at the word before, and the leads. */
    @ParameterizedTest
    @CsvSource({"40, 12", "8, 30", "150, 3"})
    void theWordsOfAnOutlineTakeThePlannedTime(double side, double thickness) {
        String text = String.format(
                Locale.ROOT, "G0 X-5 Y0%nM3%nG41 D1 G1 X0 Y0%nY%1$s%nX%1$s%nY0%nX0%nG40 G1 Y-5%nM5%n", side);
        Workpiece plate = Jobs.plate("stainless-304", thickness);
        PartPlan plan = PartPlanner.of(SETUP).plan(PartProgram.parse(text), plate);
        PartProgram program = written(plan, text, ProgramCodes.defaults());
        double d = offset(plan);
        ProgramCut cut = program.cuts().get(0);
        Contour path = cut.path(MEDIUM);
        EdgeCursor edge = new EdgeCursor();
        EdgeCursor next = new EdgeCursor();
        double time = (0.005 - d) / feedSi(program, 0);
        int corners = 0;
        for (int i = 1; i < cut.size(); i++) {
            path.load(i, edge);
            boolean isLast = i + 1 == cut.size();
            path.load(isLast ? i : i + 1, next);
            boolean isCorner = i + 2 < cut.size() && Math.abs(next.turnFrom(edge)) > 1;
            double length = isLast ? 0.005 - d : edge.length();
            time += (length + (isCorner ? Math.PI / 2 * d : 0)) / feedSi(program, i);
            corners += isCorner ? 1 : 0;
        }

        assertThat(corners).isEqualTo(3);
        assertThat(time).isCloseTo(plan.cuttingTime().si(), within(0.01 * time));
    }

    /** The axis of a loop is what the offset of its contour is, drawn by other rules: as a whole and not joint by joint. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.3, 1.1, 2.9})
    void theAxisIsTheOffsetOfTheLoop(double turned) {
        Contour shape = Contour.from(Point.millimetres(0, 0))
                .requirement(MEDIUM)
                .lineTo(Point.millimetres(40, 0))
                .lineTo(Point.millimetres(40, 12))
                .arcTo(Point.millimetres(28, 12), Point.millimetres(34, 12), Side.LEFT)
                .lineTo(Point.millimetres(28, 8))
                .arcTo(Point.millimetres(22, 8), Point.millimetres(25, 8), Side.RIGHT)
                .lineTo(Point.millimetres(20, 30))
                .lineTo(Point.millimetres(12, 16))
                .arcTo(Point.millimetres(0, 20), Point.millimetres(0, 0), Side.LEFT)
                .close()
                .rotatedBy(Kind.ANGLE.of(turned));
        for (Side side : Side.values()) {
            String text = program(shape, side);
            PartPlan plan = plan(text);
            Contour axis = plan.cuts().get(0).feeds().get(0).source();
            Contour offset = KerfOffset.of(Kind.LENGTH.of(offset(plan)))
                    .apply(shape, side)
                    .path()
                    .contour();
            double leads = 0;
            EdgeCursor edge = new EdgeCursor();
            axis.load(0, edge);
            leads += edge.length();
            axis.load(axis.size() - 1, edge);
            leads += edge.length();

            assertThat(axis.lengthSi() - leads).isCloseTo(offset.lengthSi(), within(3e-6));
            for (int i = 2; i + 1 < axis.size(); i++) {
                assertThat(Kind.LENGTH.si(shape.clearance(Point.ofSi(axis.xSi(i), axis.ySi(i)))))
                        .isCloseTo(offset(plan), within(2e-8));
            }
        }
    }

    /** The loop from the middle of its first edge, entered and left at a right angle from the side of the jet. */
    private static String program(Contour shape, Side side) {
        Contour loop = shape.startingAt(millimetres(10));
        EdgeCursor edge = new EdgeCursor();
        loop.load(0, edge);
        double outX = edge.startX() - side.sign() * edge.startDirectionY() * 0.004;
        double outY = edge.startY() + side.sign() * edge.startDirectionX() * 0.004;
        StringBuilder text = new StringBuilder(
                        String.format(Locale.ROOT, "G0 X%.7f Y%.7f%nM3%n", outX * 1e3, outY * 1e3))
                .append(side == Side.LEFT ? "G41" : "G42")
                .append(String.format(Locale.ROOT, " D1 G1 X%.7f Y%.7f%n", edge.startX() * 1e3, edge.startY() * 1e3));
        for (int i = 0; i < loop.size(); i++) {
            loop.load(i, edge);
            text.append(edge.isArc() ? (edge.sweep() > 0 ? "G3" : "G2") : "G1")
                    .append(String.format(Locale.ROOT, " X%.7f Y%.7f", edge.endX() * 1e3, edge.endY() * 1e3));
            if (edge.isArc()) {
                text.append(String.format(
                        Locale.ROOT,
                        " I%.7f J%.7f",
                        (edge.centreX() - edge.startX()) * 1e3,
                        (edge.centreY() - edge.startY()) * 1e3));
            }
            text.append('\n');
        }
        return text.append(String.format(Locale.ROOT, "G40 G1 X%.7f Y%.7f%nM5%n", outX * 1e3, outY * 1e3))
                .toString();
    }

    @Test
    void aPartAndItsProgramTakeTheSameTime() {
        for (double thickness : new double[] {5, 10, 25}) {
            for (double radius : new double[] {1.5, 3, 6}) {
                Workpiece plate = Jobs.plate("stainless-304", thickness);
                PartPlan ofPart = PartPlanner.of(SETUP)
                        .plan(
                                Part.of(
                                        Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(60, 40), MEDIUM),
                                        Contour.circle(Point.millimetres(30, 20), millimetres(radius), MEDIUM)),
                                plate);
                double loops = 0;
                for (Move move : ofPart.moves()) {
                    loops += move.purpose() == Move.Purpose.CUT ? Kind.TIME.si(move.time()) : 0;
                }
                String text = String.format(
                        Locale.ROOT,
                        "G0 X30 Y20%nM3%nG42 D1 G1 X%1$s Y20%nG2 X%1$s I-%2$s J0%nG40 G1 X30%nM5%nG0 X30 Y-5%nM3%n"
                                + "G41 D1 G1 Y0%nX0%nY40%nX60%nY0%nX30%nG40 G1 Y-5%nM5%n",
                        30 + radius,
                        radius);
                double written = 0;
                for (Move move : PartPlanner.of(SETUP)
                        .plan(PartProgram.parse(text), plate)
                        .moves()) {
                    written += move.purpose() == Move.Purpose.CUT ? Kind.TIME.si(move.time()) : 0;
                }

                // leads differ: straight ones are corners, before and behind which the contour is slowed
                assertThat(written).isCloseTo(loops, within(0.035 * loops));
            }
        }
    }

    /** A block that ends nearer to an inner corner than the offset would vanish beside it, which stops a control. */
    @Test
    void noBlockIsLostInAnInnerCorner() {
        String text = "G0 X-5 Y0\nM3\nG41 D1 G1 X0 Y0\nY40\nX20\nY20\nX50\nY0\nX0\nG40 G1 Y-5\nM5\n";
        PartPlan plan = PartPlanner.of(SETUP).plan(PartProgram.parse(text), Jobs.plate("stainless-304", 25));
        PartProgram program = written(plan, text, ProgramCodes.defaults());
        Contour path = program.cuts().get(0).path(MEDIUM);
        EdgeCursor edge = new EdgeCursor();
        int beside = 0;
        for (int i = 0; i < path.size(); i++) {
            path.load(i, edge);
            boolean isAtCorner = Math.hypot(edge.endX() - 0.02, edge.endY() - 0.02) < 1e-6
                    || Math.hypot(edge.startX() - 0.02, edge.startY() - 0.02) < 1e-6;
            if (isAtCorner) {
                beside++;
                assertThat(edge.length()).isGreaterThan(offset(plan));
            }
        }

        assertThat(beside).isEqualTo(2);
        assertThat(program.size()).isGreaterThan(15);
    }

    @Test
    void chordsTakeTheTimeOfTheirArc() {
        StringBuilder chords = new StringBuilder("G0 X0 Y0\nM3\nG42 D1 G1 X6\n");
        for (int i = 1; i <= 240; i++) {
            chords.append(String.format(
                    Locale.ROOT, "X%.4f Y%.4f%n", 6 * Math.cos(i * Math.PI / 120), -6 * Math.sin(i * Math.PI / 120)));
        }
        String text = chords.append("G40 G1 X0 Y0\nM5\n").toString();
        double ofArc = plan(hole(6)).cuttingTime().si();
        PartPlan plan = plan(text);

        assertThat(plan.cuttingTime().si()).isCloseTo(ofArc, within(0.01 * ofArc));
        assertThat(written(plan, text, ProgramCodes.defaults()).size()).isGreaterThan(240);
    }

    /** The same outline in inches, in steps, turned by a quarter, by radius, from a sub-program, with G41 on a line of its own. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "G20 G90~G0 X0 Y-0.25~M3~G41 D1 G1 Y0~X-1~Y1~X0~G2 Y0 R0.5~G40 G1 Y-0.25~M5~",
                "G21 G91~G0 Y-6.35~M3~G41 D1 G1 Y6.35~X-25.4~Y25.4~X25.4~G2 Y-25.4 J-12.7~G40 G1 Y-6.35~M5~",
                "G0 X6.35 Y0~M3~G41 D1 G1 X0~Y-25.4~X-25.4~Y0~G2 X0 I12.7~G40 G1 X6.35~M5~",
                "G0 Y-6.35~M98 P7~M30~O7~M3~G41 D1 G1 Y0~X-25.4~Y25.4~X0~G2 Y0 J-12.7~G40 G1 Y-6.35~M5~M99~",
                "G0 Y-6.35~M3~G41 D1~G1 Y0~X-25.4~Y25.4~X0~G2 Y0 J-12.7~G40~G1 Y-6.35~M5~"
            })
    void theFormOfTheWordsChangesNothing(String lines) {
        String text = lines.replace('~', '\n');
        PartPlan plain = plan(
                "G0 X0 Y-6.35\nM3\nG41 D1 G1 X0 Y0\nX-25.4\nY25.4\nX0\nG2 X0 Y0 I0 J-12.7\nG40 G1 X0 Y-6.35\nM5\n");
        PartPlan plan = plan(text);

        assertThat(plan.cuttingTime().si())
                .isCloseTo(
                        plain.cuttingTime().si(),
                        within(1e-3 * plain.cuttingTime().si()));
        assertThat(plan.cuts().get(0).offset()).isPresent();
        assertThat(written(plan, text, ProgramCodes.defaults()).cuts()).hasSize(1);
    }

    @Test
    void anOffsetThatIsOnBeforeTheJetPiercesBesideThePath() {
        PartPlan plan = plan("G0 X-9 Y-5\nG41 D1 G0 X-5 Y0\nM3\nG1 X0 Y0\nY30\nX30\nY0\nX-5\nM5\nG40 G0 X-9\n");

        assertThat(plan.moves().get(0).start().ySi()).isCloseTo(offset(plan), within(1e-12));
        assertThat(plan.violations()).extracting(Finding::code).doesNotContain("offset-not-followed");
    }

    @Test
    void anOffsetThatDoesNotFitIsAFindingAndThePathIsPlannedAsWritten() {
        PartPlan plan = plan("G0 X0.2 Y0\nM3\nG41 D1 G3 X0.2 I-0.2 J0\nM5\n");

        assertThat(plan.violations()).extracting(Finding::code).contains("offset-not-followed");
        assertThat(plan.cuts().get(0).offset()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0.98, 0.98, 2", "0.98, 1.02, 1", "1.02, 0.98, 1", "1.02, 1.02, 0"})
    void aLeadShorterThanTheOffsetIsAFinding(double in, double out, int expected) {
        double offset = 1000 * offset(plan(hole(20)));
        PartPlan plan = plan(String.format(
                Locale.ROOT,
                "G0 X-%.6f Y0%nM3%nG41 D1 G1 X0 Y0%nY30%nX30%nY0%nX0%nG40 G1 X-%.6f%nM5%n",
                in * offset,
                out * offset));

        assertThat(plan.violations())
                .filteredOn(finding -> finding.code().equals("short-offset-change"))
                .hasSize(expected)
                .allSatisfy(finding ->
                        assertThat(finding.message().parameters().get("line")).isIn(3L, 8L));
    }

    /** A relief cut out and back, a step smaller than the jet, and a corner arc smaller than the offset. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "G0 X-5 Y0~M3~G41 D1 G1 X0 Y0~Y30~X30~X34~X30~Y0~X0~G40 G1 Y-5~M5~",
                "G0 X-5 Y0~M3~G41 D1 G1 X0 Y0~Y30~X15~Y29.8~X30~Y0~X0~G40 G1 Y-5~M5~",
                "G0 X-5 Y0~M3~G41 D1 G1 X0 Y0~Y30~X15~Y20.1~G3 X15.1 Y20 I0.1 J0~G1 X30~Y0~X0~G40 G1 Y-5~M5~"
            })
    void spikesAndSmallStepsAreFollowed(String lines) {
        String text = lines.replace('~', '\n');
        PartPlan plan = plan(text);
        PartProgram program = written(plan, text, ProgramCodes.defaults());

        assertThat(plan.violations()).extracting(Finding::code).doesNotContain("offset-not-followed");
        assertThat(plan.cuts().get(0).feeds().get(0).source().lengthSi())
                .isCloseTo(Kind.LENGTH.si(program.cuttingLength()), within(8 * offset(plan)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "G0 X-5 Y0~M3~G41 D1 G1 X0 Y0~Y30~X30~X34~X30~Y0~X0~G40 G1 Y-5~M5~",
                "G0 X-5 Y0~M3~G41 D1 G1 X0 Y0~Y30~X30~X33 Y33~X30 Y30~Y0~X0~G40 G1 Y-5~M5~"
            })
    void aReliefOutAndBackIsNoCrossing(String lines) {
        assertThat(plan(lines.replace('~', '\n')).violations())
                .extracting(Finding::code)
                .contains("fit-not-checked")
                .doesNotContain("crosses-itself", "retraces-itself", "touches-itself");
    }
}
