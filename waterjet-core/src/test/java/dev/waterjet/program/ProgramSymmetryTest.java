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

    private static DrawnProgram program() {
        return new DrawnProgram();
    }

    private static String letters(ProgramCut cut) {
        StringBuilder letters = new StringBuilder();
        for (int i = 0; i < cut.size(); i++) {
            Purpose purpose = cut.purpose(i);
            letters.append(purpose == Purpose.LEAD_OUT ? 'E' : purpose.name().charAt(0));
        }
        return letters.toString();
    }

    /** Each image in some forms, each form in some images: as the first cut, as the second, or not. */
    private static boolean[] tried(DrawnProgram.Image image, DrawnProgram.Form form) {
        int at = DrawnProgram.Image.ALL.indexOf(image)
                + List.of(DrawnProgram.Form.values()).indexOf(form);
        return at % 3 == 0 ? new boolean[] {at % 2 == 0} : new boolean[0];
    }

    @ParameterizedTest
    @MethodSource("dev.waterjet.program.DrawnCut#all")
    void aCutHasTheSameLoopInEveryForm(DrawnCut expected) {
        for (DrawnProgram.Image image : DrawnProgram.Image.ALL) {
            // the gap and the edge cut twice depend on the scale
            double scale = image.scale();
            boolean isTight =
                    expected.name().startsWith("a gap") || expected.name().startsWith("an edge cut twice");
            if (isTight && scale > 1) {
                continue;
            }
            for (DrawnProgram.Form form : DrawnProgram.Form.values()) {
                for (boolean isSecond : tried(image, form)) {
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
    @MethodSource("dev.waterjet.program.DrawnCut#all")
    void aCutHasTheSameLoopAfterItIsMovedAndRounded(DrawnCut expected) {
        for (DrawnProgram.Form form : DrawnProgram.Form.values()) {
            String text = expected.program()
                    .text(DrawnProgram.Image.ALL.get(0), form, false)
                    .replaceAll("(\\.[0-9]{" + (form == DrawnProgram.Form.INCH ? 4 : 3) + "})[0-9]*", "$1");
            for (int turn = 0; turn < 360; turn += 97) {
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
                    for (boolean isSecond : tried(image, form)) {
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
