package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.feed.FaceGrade;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PartProgramTest {

    private static final String SQUARE = """
            %
            O7 (blank for the slit mask)
            N10 G71 G90
            N20 G0 X-2 Y5
            N30 M3 (jet on)
            N40 G1 X0 ; lead-in
            N50 Y10
            N60 X10
            N70 Y0
            N80 X0
            N90 Y5
            N100 M5
            N110 M30
            %
            """;

    @Test
    void aSquareWithLeadInIsUnderstood() {
        PartProgram program = PartProgram.parse(SQUARE);

        assertThat(program.moves()).isEqualTo(6);
        assertThat(program.contours()).singleElement().satisfies(contour -> {
            assertThat(contour.isClosed()).isTrue();
            assertThat(contour.loopStart()).isEqualTo(1);
            assertThat(contour.loopEnd()).isEqualTo(6);
            assertThat(contour.grade()).isEmpty();
        });
        assertThat(Kind.LENGTH.si(program.cuttingLength())).isCloseTo(0.042, within(1e-15));
    }

    @Test
    void feedsAreWrittenOnCuttingBlocksAndNothingElseChanges() {
        double[] feeds = new double[6];
        Arrays.fill(feeds, 0.25 / 60);

        String written = PartProgram.parse(SQUARE).withFeeds(feeds);

        assertThat(written)
                .contains("N40 G1 X0 F250 ; lead-in\n")
                .contains("N90 Y5 F250\n")
                .contains("N30 M3 (jet on)\n");
        assertThat(written.replace(" F250", "")).isEqualTo(SQUARE);
    }

    @Test
    void aFeedThatStandsThereIsReplacedInPlace() {
        String program = "G21\r\nG0 X1\r\nM3\r\nG3 F99 I-1 (rim)\r\nM5\r\n";

        assertThat(PartProgram.parse(program).withFeeds(new double[] {1.23456 / 60}))
                .isEqualTo("G21\r\nG0 X1\r\nM3\r\nG3 F1234.5 I-1 (rim)\r\nM5\r\n");
    }

    @ParameterizedTest
    @CsvSource({"0.01, F600", "0.0041666, F249.9", "1e-6, F0.06", "1.5e-7, F0.009", "0.0002, F12"})
    void feedsAreRoundedDownAndKeepTheirFigures(double feed, String word) {
        StringBuilder into = new StringBuilder();
        FeedWord.append(into, feed, false);

        assertThat(into).hasToString(word);
    }

    @Test
    void inchProgramsHaveFeedsInInchesAMinute() {
        String program = "G70 G0 X1 Y0\nM3\nG2 X-1 Y0 I-1 J0\nX1 I1\nM5\n";
        PartProgram read = PartProgram.parse(program);

        assertThat(read.move(0).radius()).isEqualTo(0.0254);
        assertThat(read.withFeeds(new double[] {0.0254 / 6, 0.0254 / 6}))
                .isEqualTo("G70 G0 X1 Y0\nM3\nG2 X-1 Y0 I-1 J0 F10\nX1 I1 F10\nM5\n");
    }

    @Test
    void incrementalAndAbsoluteSayTheSame() {
        PartProgram absolute = PartProgram.parse("G90 G0 X10 Y10 M3\nG1 X20\nG3 X20 Y30 R12\nG1 X10\nG3 Y10 R12\nM5\n"
                .replace("G0 X10 Y10 M3", "G0 X10 Y10\nM3"));
        PartProgram incremental =
                PartProgram.parse("G91 G0 X10 Y10\nM3\nG1 X10\nG3 Y20 R12\nG1 X-10\nG3 Y-20 R12\nM5\n");

        for (int i = 0; i < 4; i++) {
            ProgramMove a = absolute.move(i);
            ProgramMove b = incremental.move(i);
            assertThat(b.length()).isCloseTo(a.length(), within(1e-12));
            assertThat(b.centreX()).isCloseTo(a.centreX(), within(1e-9));
        }
        assertThat(Kind.LENGTH.si(absolute.cuttingLength()))
                .isCloseTo(0.020 + 2 * 0.012 * 2 * Math.asin(10 / 12.0), within(1e-12));
    }

    @Test
    void aCircleThatClosesByRoundedSumsIsAWholeCircle() {
        PartProgram program = PartProgram.parse("G91 G0 X0.1\nX0.2\nM3\nG3 X0 Y0 I1 J0\nM5\n");

        assertThat(program.move(0).sweep()).isEqualTo(2 * Math.PI);
        assertThat(PartProgram.parse("G0 X0 Y0\nM3\nG2 I5\nM5\n").move(0).sweep())
                .isEqualTo(-2 * Math.PI);
    }

    @Test
    void theShorterAndTheLongerArcOfARadius() {
        PartProgram shorter = PartProgram.parse("(open cut)\nM3\nG3 X10 Y10 R10\nM5\n");
        PartProgram longer = PartProgram.parse("(open cut)\nM3\nG3 X10 Y10 R-10\nM5\n");

        assertThat(shorter.move(0).sweep()).isCloseTo(Math.PI / 2, within(1e-12));
        assertThat(longer.move(0).sweep()).isCloseTo(3 * Math.PI / 2, within(1e-12));
        assertThat(shorter.move(0).centreX()).isCloseTo(0, within(1e-15));
        assertThat(shorter.move(0).centreY()).isCloseTo(0.010, within(1e-15));
    }

    @Test
    void commentsSetTheGradeOfTheNextContourOnly() {
        PartProgram program = PartProgram.parse(
                "(face: extra-fine)\nG0 X1\nM3\nG3 I-1\nM5\nG0 X5\nM3\nG3 I-1\nM5\n(FACE:  Coarse )\nM3\nG3 I-1\nM5\n");

        assertThat(program.contours())
                .extracting(contour -> contour.grade().orElse(null))
                .containsExactly(FaceGrade.EXTRA_FINE, null, FaceGrade.COARSE);
    }

    @Test
    void jetWordsAreTheMachines() {
        String program = "G0 X1\nM62\nG3 I-1\nM63\n";

        assertThat(PartProgram.parse(program, JetWords.of("M62", "m063")).moves())
                .isEqualTo(1);
        assertThatThrownBy(() -> PartProgram.parse(program)).hasMessageContaining("cuts nothing");
        assertThatThrownBy(() -> JetWords.of("M3", "M03")).hasMessageContaining("cannot both start and stop");
        assertThatThrownBy(() -> JetWords.of("G3", "M5")).hasMessageContaining("no M word");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "G1 X1 Q3 | line 1, column 7: the word Q3 is not known",
                "G33 X1 | line 1, column 1: the word G33 is not known",
                "G90.1 | line 1, column 1: the word G90.1 is not known",
                "M3~G1 X | line 2, column 4: the word X has no number",
                "M3~G1 X1 X2 | line 2, column 7: the word X stands twice",
                "M3~G2 X10 I4 | line 2, column 8: the arc's ends do not fit its centre: they lie 4.0000 and 6.0000 mm",
                "M3~G2 X10 R4 | line 2, column 8: the arc's ends do not fit its radius",
                "M3~G2 X10 R4 I5 | line 2, column 8: an arc has a radius (R) or a centre (I, J), not both",
                "M3~G2 X10 | line 2, column 4: the arc has neither",
                "M3~G1 X10~X20~M5 | line 1, column 1: the contour that starts here never closes: it ends on line 3",
                "M3~G1 X10~X0 | line 1, column 1: the jet is started here and never stopped",
                "M3~G0 X10 | line 2, column 4: a rapid move (G0) while the jet is on",
                "M3~G1 X10 Z2 | line 2, column 8: a move of the height",
                "M3~G1 X10~X10 | line 3, column 1: the line has no length",
                "G0 X5~(end | line 2, column 1: the comment never ends",
                "G0 X5 # 3 | line 1, column 7: \"#\" starts no word",
                "(face: shiny)~M3 | line 1, column 2: \"shiny\" is no grade of a face",
                "M3~M3 | line 2, column 1: the jet is started again",
                "G0 X5 Y5 | the program cuts nothing",
                "G0 X1e3 | line 1, column 6: the word e3 is not known",
                "G0 X99999999999 | line 1, column 4: X99999999999 lies more than 1000 m",
                "M3~G1 X5 I2 | line 2, column 7: I, J and R belong to an arc",
            })
    void whatAProgramCannotMeanIsRefusedWithItsPlace(String program, String message) {
        assertThatThrownBy(() -> PartProgram.parse(program.replace('~', '\n')))
                .isInstanceOf(TextException.class)
                .hasMessageContaining(message);
    }

    @Test
    void aProgramThatStopsTheJetTwiceIsRead() {
        assertThat(PartProgram.parse("M5\nG0 X1\nM3\nG4 P500\nG3 I-1\nM5\nM5\nM30\n")
                        .moves())
                .isEqualTo(1);
    }

    @Test
    void feedsMustFitTheMoves() {
        PartProgram program = PartProgram.parse("G0 X1\nM3\nG3 I-1\nM5\n");

        assertThatThrownBy(() -> program.withFeeds(new double[2])).hasMessageContaining("2 feeds");
        assertThatThrownBy(() -> program.withFeeds(new double[1])).hasMessageContaining("feed of move 1 is 0 mm/min");
    }
}
