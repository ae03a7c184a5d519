package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Edge;
import dev.waterjet.part.Point;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Refusals and findings with their places and parameters, at their limits and just within. */
class ProgramRefusalsTest {

    private static String text(String program) {
        return program.replace('~', '\n');
    }

    private static PartProgram parse(String program) {
        return PartProgram.parse(text(program), ProgramCodes.defaults().withOpenContours());
    }

    private static TextException refused(String program) {
        TextException refusal = catchThrowableOfType(TextException.class, () -> parse(program));
        assertThat(refusal).as(program).isNotNull();
        return refusal;
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "G21~~M3~G1 X5~ G0 X9 | 5 | 5 | rapid-with-jet-on | line | 3",
                "G21~~M3~G1 X5~G1 X6 M3 | 5 | 7 | jet-already-on | line | 3",
                "G21~M3~G2 X10 Y1 I4 | 3 | 11 | arc-misses-centre | start_radius_m | 0.004",
                "G21~M3~G2 X10 I4 | 3 | 8 | arc-misses-centre | end_radius_m | 0.006",
                "G21~M3~G2 X3 Y4 R2 | 3 | 10 | arc-misses-radius | chord_m | 0.005",
                "G21~M3~G2 X3 Y4 R-2 | 3 | 10 | arc-misses-radius | radius_m | 0.002",
                "G21~M3~G2 R2 | 3 | 4 | circle-by-radius | word | R2",
                "G21~M3~G2 X4 Y0 I2 R2 | 3 | 13 | radius-and-centre | word | R2",
                "G21~M3~G2 X4 I2 Z1 | 3 | 10 | helix | word | Z1",
                "G1 X5 Y5 X6 | 1 | 10 | word-twice | letter | X",
                "G1 G2 X5 | 1 | 4 | words-contradict | other | G1",
                "M3 M5 | 1 | 4 | words-contradict | other | M3",
                "M5  M 3 | 1 | 5 | words-contradict | word | M3",
                "M2 M30 | 1 | 4 | words-contradict | other | M2",
                "G1 X1,5 | 1 | 6 | decimal-comma | |",
                "G1 X1 # 5 | 1 | 7 | not-a-word | character | #",
                "G1 X1 \u00b0 | 1 | 7 | not-a-word | character | \\u00b0",
                "G1 /X1 | 1 | 4 | optional-block | |",
                "G1 X1000000.1 | 1 | 4 | place-beyond-limit | limit_m | 1000",
                "G0 X900000~G91 X100000.1 | 2 | 5 | place-beyond-limit | word | X100000.1",
                "M3~G2 X5 I1000000.1 | 2 | 7 | word-beyond-limit | limit_m | 1000",
                "G92 X1000000.1 | 1 | 5 | word-beyond-limit | word | X1000000.1",
                "G1 X1234567890123456789012.45 | 1 | 4 | number-too-long | limit | 24",
                "G54~G1 X1~ G55 | 3 | 2 | second-work-offset | word | G55",
                "G54.1 P3~G54.1 P4 | 2 | 1 | second-work-offset | word | G54.1",
                "G28 X0 | 1 | 1 | machine-place | word | G28",
                "G0 A5 | 1 | 4 | rotary-axis | word | A5",
                "M3~G1 X5~X5 | 3 | 1 | zero-length-line | |",
                "X5 | 1 | 1 | no-motion-code | |",
                "M98 P7~M30~O7~M99 P1~M98 P8~ | 5 | 1 | no-such-sub-program | number | 8",
                "M98 P7 L10000 | 1 | 1 | call-not-understood | limit | 9999",
                "M98 P1.5 | 1 | 1 | call-not-understood | limit | 9999",
                "M98 P-1 | 1 | 1 | call-not-understood | limit | 9999",
                "M98 P7 L-1 | 1 | 1 | call-not-understood | limit | 9999",
            })
    void aRefusalHasItsPlaceAndItsParameters(
            String program, int line, int column, String code, String parameter, String value) {
        TextException refusal = refused(program);

        assertThat(refusal.code()).isEqualTo(code);
        assertThat(refusal.line()).isEqualTo(line);
        assertThat(refusal.column()).isEqualTo(column);
        if (parameter != null) {
            Object found = refusal.parameters().get(parameter);
            if (found instanceof Number number) {
                assertThat(number.doubleValue()).isCloseTo(Double.parseDouble(value), within(1e-12));
            } else {
                assertThat(found).isEqualTo(value);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({
        "M3~G1 X1000000",
        "M3~G1 X123456789012.12345678901",
        "M3~G1 X900000~G91 X100000",
        "M3~G2 X10.0099 I5",
        "M3~G2 X10.0099 R5",
        "G54~G54 M3~G1 X5",
        "G54.1 P3~G54.1 P3 M3~G1 X5",
        "G28 Z0 M3~G1 X5",
        "G53 G0 Z5~M3~G1 X5",
        "M2.0 M30.0~M3~G1 X5",
        "M5 M5~M3 M3~G1 X5 G1",
    })
    void whatIsAtItsLimitOrSaysTheSameTwiceIsRead(String program) {
        boolean isBeyond = program.contains("123456789012");
        boolean isEnded = program.startsWith("M2.0");
        if (isBeyond) {
            assertThat(refused(program + "~M5").code()).isEqualTo("place-beyond-limit");
        } else if (isEnded) {
            assertThat(refused(program + "~M5").code()).isEqualTo("words-contradict");
        } else {
            assertThat(parse(program + "~M5").size()).isPositive();
        }
    }

    /** A quarter of a circle about (0, 4): the word of the centre may begin the block, and the other may be absent. */
    @ParameterizedTest
    @CsvSource({
        "G91.1, J4 X4 Y4 G3",
        "G91.1, X4 J4 Y4 G3",
        "G90.1, J4 X4 Y4 G3",
        "G90.1, J4 I0 X4 Y4 G3",
        "G90.1, G3 X4 Y4 I0 J4",
        "G90, G3 J4 X4 Y4"
    })
    void theWordsOfACentreStandAnywhere(String mode, String block) {
        Edge edge = parse(mode + " M3~" + block + "~M5")
                .cuts()
                .get(0)
                .path(EdgeRequirement.defaults())
                .edge(0);

        assertThat(edge.centre()).contains(Point.millimetres(0, 4));
        assertThat(edge.end()).isEqualTo(Point.millimetres(4, 4));
        assertThat(Kind.ANGLE.si(edge.sweep())).isCloseTo(Math.PI / 2, within(1e-12));
    }

    @Test
    void aLineHasFortyWordsAtMost() {
        String forty = "M3 " + "N1 ".repeat(1) + "G1 X5 " + "G40 ".repeat(36);
        assertThat(parse(forty + "~M5").size()).isEqualTo(1);
        TextException refusal = refused(forty + "G40~M5");
        assertThat(refusal.code()).isEqualTo("too-many-words");
        assertThat(refusal.parameters()).containsEntry("limit", 40L);
        assertThat(refusal.column()).isEqualTo(forty.length() + 1);
    }

    @Test
    void aContourThatDoesNotCloseNamesItsEndAndItsGap() {
        TextException refusal = catchThrowableOfType(
                TextException.class, () -> PartProgram.parse("G0 X5 Y5\n  M3\nG1 X9\n\nY12\nX8 Y9\nM5\n"));

        assertThat(refusal.code()).isEqualTo("contour-not-closed");
        assertThat(refusal.line()).isEqualTo(2);
        assertThat(refusal.column()).isEqualTo(3);
        assertThat(refusal.parameters()).containsEntry("end_line", 6L);
        assertThat(Double.parseDouble(String.valueOf(refusal.parameters().get("gap_m"))))
                .isCloseTo(0.005, within(1e-12));
    }

    @Test
    void findingsNameTheirWords() {
        PartProgram program =
                PartProgram.parse("G0 X0 Y-5\nM3\nG1 Y0\nX40\n M1\nY30\nG42 D1 G3 X30 Y40 I-10\nG1 X0\nY0\nZ-3\nM5\n");

        assertThat(program.findings()).hasSize(3);
        assertThat(program.findings().get(0).line()).isEqualTo(5);
        assertThat(program.findings().get(0).finding().message().parameters()).containsEntry("word", "M1");
        assertThat(program.findings().get(1).line()).isEqualTo(7);
        assertThat(program.findings().get(1).finding().message().parameters()).containsEntry("word", "G42");
        assertThat(program.findings().get(2).line()).isEqualTo(10);
        assertThat(program.findings().get(2).code()).isEqualTo("height-with-jet-on");
    }

    @Test
    void requirementsOfNotesHoldFromTheirBlockOn() {
        PartProgram program =
                parse("(waterjet: name rim, quality fine)~G0 X0~M3~G1 X10~X20~(waterjet: tolerance 0.2 mm)~X30~X40"
                        + "~(waterjet: quality coarse)~X50~M5~G0 X90~M3~G1 X95~M5~");
        ProgramCut cut = program.cuts().get(0);
        EdgeRequirement unstated = EdgeRequirement.defaults();

        CutQuality[] qualities = {CutQuality.FINE, CutQuality.FINE, CutQuality.FINE, CutQuality.FINE, CutQuality.COARSE
        };
        for (int i = 0; i < 5; i++) {
            assertThat(cut.requirement(i, unstated).quality()).isEqualTo(qualities[i]);
            boolean isStated = cut.requirement(i, unstated)
                    .lagTolerance()
                    .map(tolerance -> Math.abs(Kind.LENGTH.si(tolerance) - 2e-4) < 1e-12)
                    .orElse(false);
            assertThat(isStated).isEqualTo(i >= 2);
        }
        assertThat(program.cuts().get(1).requirement(0, unstated)).isEqualTo(unstated);
        assertThat(program.cuts().get(1).name()).isEmpty();
    }
}
