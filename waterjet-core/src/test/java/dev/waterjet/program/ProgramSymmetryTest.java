package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.placement.RigidMove;
import dev.waterjet.program.ProgramCut.Purpose;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Loops, leads, overcuts and findings known by hand; the same mirrored, turned, scaled, in other words and behind another cut. */
class ProgramSymmetryTest {

    /** A cut with what is expected of it: purposes by their first letters (P, L, C, O, E for lead-out), mm and mm2. */
    record Expected(String name, DrawnProgram program, String purposes, double loop, double area, double overcut) {

        @Override
        public String toString() {
            return name;
        }
    }

    private static DrawnProgram program() {
        return new DrawnProgram();
    }

    private static double x(double radius, double degrees) {
        return radius * Math.cos(Math.toRadians(degrees));
    }

    private static double y(double radius, double degrees) {
        return radius * Math.sin(Math.toRadians(degrees));
    }

    /** Sixty by sixty, from the middle of a side; the last edge goes on over the first as far as given. */
    private static DrawnProgram square(double lastX) {
        return program()
                .rapid(30, -5)
                .on()
                .line(30, 0)
                .line(0, 0)
                .line(0, 60)
                .line(60, 60)
                .line(60, 0)
                .line(lastX, 0)
                .line(lastX, -5)
                .off();
    }

    /** Half the angle of the lens of two circles of 5 whose centres are 6 apart: they cross at (3, 4) and (3, -4). */
    private static final double LENS = Math.acos(0.6);

    static List<Expected> cuts() {
        double degrees = Math.toDegrees(LENS);
        return List.of(
                new Expected("closed at its start", square(30), "LCCCCCE", 240, 3600, 0),
                new Expected("overcut by 5", square(25), "LCCCCCE", 240, 3600, 5),
                new Expected("overcut to the corner", square(0), "LCCCCCE", 240, 3600, 30),
                new Expected(
                        "overcut by a third of a circle",
                        program()
                                .rapid(15, 0)
                                .on()
                                .line(20, 0)
                                .arc(-20, 0, 0, 0, Side.LEFT)
                                .arc(20, 0, 0, 0, Side.LEFT)
                                .arc(x(20, 120), y(20, 120), 0, 0, Side.LEFT)
                                .line(0, 0)
                                .off(),
                        "LCCOE",
                        40 * Math.PI,
                        400 * Math.PI,
                        40 * Math.PI / 3),
                new Expected(
                        "the last arc goes on by 30 degrees",
                        program()
                                .rapid(15, 0)
                                .on()
                                .line(20, 0)
                                .arc(-20, 0, 0, 0, Side.LEFT)
                                .arc(x(20, 30), y(20, 30), 0, 0, Side.LEFT)
                                .line(10, 5)
                                .off(),
                        "LCCE",
                        40 * Math.PI,
                        400 * Math.PI,
                        20 * Math.PI / 6),
                new Expected(
                        "the last line crosses the first",
                        program()
                                .rapid(0, 0)
                                .on()
                                .line(50, 0)
                                .line(50, 40)
                                .line(10, 40)
                                .line(10, -6)
                                .off(),
                        "CCCC",
                        160,
                        1600,
                        6),
                new Expected(
                        "the last line ends on the first",
                        program()
                                .rapid(0, 0)
                                .on()
                                .line(50, 0)
                                .line(50, 40)
                                .line(10, 40)
                                .line(10, 0)
                                .off(),
                        "CCCC",
                        160,
                        1600,
                        0),
                new Expected(
                        "ends on the first line and leaves",
                        program()
                                .rapid(0, 0)
                                .on()
                                .line(50, 0)
                                .line(50, 40)
                                .line(10, 40)
                                .line(10, 0)
                                .line(4, -9)
                                .off(),
                        "CCCCE",
                        160,
                        1600,
                        0),
                new Expected(
                        "arcs that cross within the first and the last block",
                        program()
                                .rapid(x(5, -120), y(5, -120))
                                .on()
                                .arc(5, 0, 0, 0, Side.LEFT)
                                .arc(3, 4, 0, 0, Side.LEFT)
                                .arc(1, 0, 6, 0, Side.LEFT)
                                .arc(6, -5, 6, 0, Side.LEFT)
                                .off(),
                        "CCCC",
                        20 * LENS,
                        2 * (25 * LENS - 12),
                        5 * Math.toRadians(90 - degrees)),
                new Expected(
                        "a moving pierce of two circles",
                        program()
                                .rapid(30, -8)
                                .on()
                                .arc(30, -8, 31, -8, Side.LEFT)
                                .arc(30, -8, 31, -8, Side.LEFT)
                                .line(30, 0)
                                .line(0, 0)
                                .line(0, 60)
                                .line(30, 60)
                                .line(30, 0)
                                .off(),
                        "PPLCCCC",
                        180,
                        1800,
                        0),
                new Expected(
                        "the larger of two loops",
                        program()
                                .rapid(0, 0)
                                .on()
                                .line(9, 0)
                                .line(9, 9)
                                .line(0, 0)
                                .line(0, 20)
                                .line(-20, 20)
                                .line(-20, 0)
                                .line(0, 0)
                                .off(),
                        "PPPCCCC",
                        80,
                        400,
                        0),
                new Expected(
                        "the loop with the offset, though smaller",
                        program()
                                .rapid(0, 0)
                                .on()
                                .offsetLine(1, 9, 0)
                                .line(9, 9)
                                .line(0, 0)
                                .offsetLine(0, 0, 20)
                                .line(-20, 20)
                                .line(-20, 0)
                                .line(0, 0)
                                .off(),
                        "CCCEEEE",
                        18 + Math.sqrt(162),
                        40.5,
                        0),
                new Expected(
                        "an overcut around a corner without a lead",
                        program()
                                .rapid(5, 0)
                                .on()
                                .line(0, 0)
                                .line(0, 60)
                                .line(60, 60)
                                .line(60, 0)
                                .line(0, 0)
                                .line(0, 8)
                                .line(-3, 9)
                                .off(),
                        "CCCCCOE",
                        240,
                        3600,
                        13),
                new Expected(
                        "two arcs of a lens",
                        program()
                                .rapid(3, -9)
                                .on()
                                .line(3, -4)
                                .arc(3, 4, 0, 0, Side.LEFT)
                                .arc(3, -4, 6, 0, Side.LEFT)
                                .off(),
                        "LCC",
                        20 * LENS,
                        2 * (25 * LENS - 12),
                        0),
                new Expected(
                        "an edge cut twice, the second time a little outside",
                        program()
                                .rapid(60, 0)
                                .on()
                                .line(0, 0)
                                .line(0, 60)
                                .line(60, 60)
                                .line(60, 0.0004)
                                .line(0, -0.0004)
                                .line(-9, -9)
                                .off(),
                        "CCCCOE",
                        240,
                        3600,
                        60),
                new Expected(
                        "a gap of nine micrometres",
                        program()
                                .rapid(0, -5)
                                .on()
                                .line(0, 0)
                                .line(40, 0)
                                .line(40, 30)
                                .line(0.009 / 2.5, 0.0)
                                .off(),
                        "LCCC",
                        120,
                        600,
                        0));
    }

    private static String letters(ProgramCut cut) {
        StringBuilder letters = new StringBuilder();
        for (int i = 0; i < cut.size(); i++) {
            Purpose purpose = cut.purpose(i);
            letters.append(purpose == Purpose.LEAD_OUT ? 'E' : purpose.name().charAt(0));
        }
        return letters.toString();
    }

    @ParameterizedTest
    @MethodSource("cuts")
    void aCutHasTheSameLoopInEveryForm(Expected expected) {
        for (DrawnProgram.Image image : DrawnProgram.Image.ALL) {
            // the gap and the edge cut twice depend on the scale
            double scale = image.scale();
            boolean isTight =
                    expected.name().startsWith("a gap") || expected.name().startsWith("an edge cut twice");
            if (isTight && scale > 1) {
                continue;
            }
            for (DrawnProgram.Form form : DrawnProgram.Form.values()) {
                for (boolean isSecond : new boolean[] {false, true}) {
                    String text = expected.program().text(image, form, isSecond);
                    PartProgram program = PartProgram.parse(text);
                    ProgramCut cut = program.cuts().get(isSecond ? 1 : 0);
                    Contour loop = cut.loop(EdgeRequirement.defaults()).orElseThrow();
                    double area = 1e6 * Kind.AREA.si(loop.signedArea());

                    assertThat(letters(cut)).as(text).isEqualTo(expected.purposes());
                    assertThat(1000 * loop.lengthSi()).isCloseTo(scale * expected.loop(), within(0.02));
                    assertThat(Math.abs(area)).isCloseTo(scale * scale * expected.area(), within(0.2));
                    assertThat(1000 * Kind.LENGTH.si(cut.overcut()))
                            .isCloseTo(scale * expected.overcut(), within(1e-4));
                    assertThat(cut.firstBlock()).isEqualTo(isSecond ? 2 : 0);
                    assertThat(cut.line()).isEqualTo(DrawnProgram.linesBefore(form, isSecond) + 2);
                    assertThat(cut.line(cut.size() - 1)).isEqualTo(cut.line() + cut.size());
                    assertThat(program.isInch()).isEqualTo(form == DrawnProgram.Form.INCH);
                }
            }
        }
    }

    /** Places rounded to a micrometre, or to a ten-thousandth of an inch: edges that ran along each other cross or part. */
    @ParameterizedTest
    @MethodSource("cuts")
    void aCutHasTheSameLoopAfterItIsMovedAndRounded(Expected expected) {
        for (DrawnProgram.Form form : DrawnProgram.Form.values()) {
            String text = expected.program()
                    .text(DrawnProgram.Image.ALL.get(0), form, false)
                    .replaceAll("(\\.[0-9]{" + (form == DrawnProgram.Form.INCH ? 4 : 3) + "})[0-9]*", "$1");
            for (int turn = 0; turn < 360; turn += 53) {
                RigidMove move = RigidMove.of(Measures.degrees(turn + 0.4), Point.millimetres(120.3, 77.7));
                PartProgram program = PartProgram.parse(text);
                PartProgram moved = program.movedBy(move);
                assertMoved(program.cuts().get(0), moved.cuts().get(0), move);
                Contour loop =
                        moved.cuts().get(0).loop(EdgeRequirement.defaults()).orElseThrow();
                double area = 1e6 * Math.abs(Kind.AREA.si(loop.signedArea()));

                assertThat(area).as(moved.text()).isCloseTo(expected.area(), within(0.003 * expected.loop()));
                assertThat(1000 * loop.lengthSi()).isCloseTo(expected.loop(), within(0.1));
            }
        }
    }

    /** Both ends of the path lie where the move brings them. */
    private static void assertMoved(ProgramCut cut, ProgramCut moved, RigidMove move) {
        Contour path = cut.path(EdgeRequirement.defaults());
        Contour movedPath = moved.path(EdgeRequirement.defaults());
        assertThat(Kind.LENGTH.si(move.apply(path.start()).distance(movedPath.start())))
                .isLessThan(3e-6);
        assertThat(Kind.LENGTH.si(move.apply(path.end()).distance(movedPath.end())))
                .isLessThan(3e-6);
    }

    /** A program with the findings expected of it, as step and code. */
    record Checked(String findings, DrawnProgram program) {

        @Override
        public String toString() {
            return findings;
        }
    }

    /** A hole of 10 about (60, 60), pierced where stated, with the offset and in the direction stated. */
    private static DrawnProgram bore(DrawnProgram into, double pierceX, double pierceY, int side, Side turn) {
        return into.rapid(pierceX, pierceY)
                .on()
                .offsetLine(side, 70, 60)
                .arc(70, 60, 60, 60, turn)
                .off();
    }

    private static DrawnProgram cover(DrawnProgram into, int side) {
        return into.rapid(-5, 0)
                .on()
                .offsetLine(side, 0, 0)
                .line(0, 120)
                .line(120, 120)
                .line(120, 0)
                .line(0, 0)
                .off();
    }

    static List<Checked> checked() {
        return List.of(
                new Checked("", cover(bore(program(), 60, 60, 1, Side.LEFT), 1)),
                new Checked("3 jet-in-part", cover(bore(program(), 60, 60, 1, Side.RIGHT), 1)),
                new Checked("8 jet-in-part", cover(bore(program(), 60, 60, 1, Side.LEFT), -1)),
                new Checked("1 pierce-in-part", cover(bore(program(), 85, 60, 1, Side.LEFT), 1)),
                new Checked("9 cut-in-freed-piece", bore(cover(program(), 1), 60, 60, 1, Side.LEFT)),
                new Checked(
                        "contour-crosses-itself",
                        program()
                                .rapid(0, -5)
                                .on()
                                .line(0, 0)
                                .line(60, 60)
                                .line(60, 0)
                                .line(0, 60)
                                .line(0, 0)
                                .off()),
                // two discs, apart and crossing
                new Checked("", disc(disc(program(), 0, 0, 10), 20.1, 0, 10)),
                new Checked("contours-cross", disc(disc(program(), 0, 0, 10), 19.9, 0, 10)),
                new Checked("contours-cross", disc(disc(program(), 0, 0, 10), 3, 2, 8)),
                // a corner that touches the side of another contour, and one that goes through it
                new Checked("", triangle(square(program()), 25, 5, 25, 15)),
                new Checked("contours-cross", triangle(square(program()), 25, 5, 15, 15)),
                // one that crosses at two of its corners alone
                new Checked(
                        "contours-cross",
                        square(program())
                                .rapid(26, 10)
                                .on()
                                .line(20, 15)
                                .line(14, 10)
                                .line(20, 5)
                                .line(26, 10)
                                .off()),
                // a disc in the notch of an angle that is cut before
                new Checked(
                        "",
                        disc(
                                program()
                                        .rapid(0, 0)
                                        .on()
                                        .line(60, 0)
                                        .line(60, 10)
                                        .line(10, 10)
                                        .line(10, 60)
                                        .line(0, 60)
                                        .line(0, 0)
                                        .off(),
                                35,
                                35,
                                12)));
    }

    private static DrawnProgram disc(DrawnProgram into, double x, double y, double r) {
        return into.rapid(x + r, y)
                .on()
                .arc(x - r, y, x, y, Side.LEFT)
                .arc(x + r, y, x, y, Side.LEFT)
                .off();
    }

    private static DrawnProgram square(DrawnProgram into) {
        return into.rapid(0, 0)
                .on()
                .line(20, 0)
                .line(20, 20)
                .line(0, 20)
                .line(0, 0)
                .off();
    }

    /** A triangle with a corner in the middle of the side of the square at 20, and its others at given places. */
    private static DrawnProgram triangle(DrawnProgram into, double x1, double y1, double x2, double y2) {
        return into.rapid(x1, y1).on().line(20, 10).line(x2, y2).line(x1, y1).off();
    }

    @Test
    void programsHaveTheSameFindingsInEveryForm() {
        for (Checked checked : checked()) {
            for (DrawnProgram.Image image : DrawnProgram.Image.ALL) {
                for (DrawnProgram.Form form : DrawnProgram.Form.values()) {
                    for (boolean isSecond : new boolean[] {false, true}) {
                        String text = checked.program().text(image, form, isSecond);
                        int before = DrawnProgram.linesBefore(form, isSecond);
                        List<String> found = new ArrayList<>();
                        ProgramChecks.defaults()
                                .check(PartProgram.parse(text))
                                .forEach(finding -> found.add(
                                        checked.findings().startsWith("contour")
                                                ? finding.code()
                                                : finding.line() - before - 1 + " " + finding.code()));
                        if (checked.findings().startsWith("contour")) {
                            // what lies in what is open where contours cross
                            found.removeIf(code -> !code.startsWith("contour"));
                        }
                        assertThat(String.join(", ", found)).as(text).isEqualTo(checked.findings());
                    }
                }
            }
        }
    }
}
