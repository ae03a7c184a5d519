package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Edge;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.Arrays;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
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

    private static double[] feeds(int count, double feed) {
        double[] feeds = new double[count];
        Arrays.fill(feeds, feed);
        return feeds;
    }

    private static Edge edge(PartProgram program, int index) {
        return program.cuts().get(0).path(EdgeRequirement.defaults()).edge(index);
    }

    private static double si(Quantity<Length> length) {
        return Kind.LENGTH.si(length);
    }

    @Test
    void aSquareWithLeadInIsUnderstood() {
        PartProgram program = PartProgram.parse(SQUARE);

        assertThat(program.size()).isEqualTo(6);
        assertThat(program.hasUnit()).isTrue();
        assertThat(program.cuts()).singleElement().satisfies(cut -> {
            assertThat(cut.isClosed()).isTrue();
            assertThat(cut.leadIn()).isEqualTo(1);
            assertThat(cut.leadOut()).isZero();
            assertThat(cut.line()).isEqualTo(5);
            assertThat(cut.line(0)).isEqualTo(6);
            assertThat(cut.quality()).isEmpty();
            assertThat(cut.loop(EdgeRequirement.defaults()).orElseThrow().size())
                    .isEqualTo(5);
            assertThat(si(cut.loop(EdgeRequirement.defaults()).orElseThrow().length()))
                    .isCloseTo(0.040, within(1e-15));
            assertThat(cut.path(EdgeRequirement.defaults())
                            .edge(0)
                            .requirement()
                            .isLead())
                    .isTrue();
            assertThat(cut.path(EdgeRequirement.defaults())
                            .edge(1)
                            .requirement()
                            .isLead())
                    .isFalse();
        });
        assertThat(si(program.cuttingLength())).isCloseTo(0.042, within(1e-15));
        assertThat(si(program.rapidLength())).isCloseTo(Math.hypot(0.002, 0.005), within(1e-15));
    }

    @Test
    void theLoopBeginsWhereTheHeadFirstComesByTwice() {
        PartProgram program = PartProgram.parse("G0 X5 Y-5\nM3\nG1 Y0\nX0\nY9\nX9\nY0\nX5\nY-5\nM5\n");

        ProgramCut cut = program.cuts().get(0);
        assertThat(cut.leadIn()).isEqualTo(1);
        assertThat(cut.leadOut()).isEqualTo(1);
        assertThat(si(cut.loop(EdgeRequirement.defaults()).orElseThrow().length()))
                .isCloseTo(0.036, within(1e-15));
    }

    @Test
    void feedsAreWrittenOnCuttingBlocksAndNothingElseChanges() {
        String written = PartProgram.parse(SQUARE).withFeedsSi(feeds(6, 0.25 / 60));

        assertThat(written)
                .contains("N40 G1 X0 F250 ; lead-in\n")
                .contains("N90 Y5 F250\n")
                .contains("N30 M3 (jet on)\n");
        assertThat(written.replace(" F250", "")).isEqualTo(SQUARE);
    }

    @Test
    void aFeedThatStandsThereIsReplacedInPlace() {
        String program = "G21\r\nG0 X1\r\nM3\r\nG3 F99 I-1 (rim)\r\nM5\r\n";

        assertThat(PartProgram.parse(program).withFeedsSi(0.1234 / 60))
                .isEqualTo("G21\r\nG0 X1\r\nM3\r\nG3 F123.4 I-1 (rim)\r\nM5\r\n");
    }

    @Test
    void wordsWithoutBlanksGetAFeedWithoutBlank() {
        assertThat(PartProgram.parse("G0X1\nM3\nG3I-1\nM5").withFeedsSi(0.01)).isEqualTo("G0X1\nM3\nG3I-1F600\nM5");
    }

    @ParameterizedTest
    @CsvSource({"0.01, F600", "0.0041666, F249.9", "1e-6, F0.06", "1.5e-7, F0.009", "0.0002, F12", "0.3333333, F19990"})
    void feedsAreRoundedDownToFourDigits(double feed, String word) {
        assertThat(PartProgram.parse("G0 X1\nM3\nG3 I-1\nM5").withFeedsSi(feed)).contains("I-1 " + word + "\n");
    }

    @Test
    void inchProgramsHaveFeedsInInchesAMinute() {
        PartProgram read = PartProgram.parse("G70 G0 X1 Y0\nM3\nG2 X-1 Y0 I-1 J0\nX1 I1\nM5\n");

        assertThat(si(edge(read, 0).radius().orElseThrow())).isCloseTo(0.0254, within(1e-17));
        assertThat(read.withFeedsSi(0.0254 / 6, 0.0254 / 6))
                .isEqualTo("G70 G0 X1 Y0\nM3\nG2 X-1 Y0 I-1 J0 F10\nX1 I1 F10\nM5\n");
    }

    @Test
    void incrementalAndAbsoluteSayTheSame() {
        PartProgram absolute =
                PartProgram.parse("G90 G0 X10 Y10\nM3\nG1 X20\nG3 X20 Y30 R12\nG1 X10\nG3 Y10 R12\nM5\n");
        PartProgram incremental =
                PartProgram.parse("G91 G0 X10 Y10\nM3\nG1 X10\nG3 Y20 R12\nG1 X-10\nG3 Y-20 R12\nM5\n");

        for (int i = 0; i < 4; i++) {
            assertThat(si(edge(incremental, i).length()))
                    .isCloseTo(si(edge(absolute, i).length()), within(1e-12));
            assertThat(si(edge(incremental, i).end().distance(edge(absolute, i).end())))
                    .isLessThan(1e-12);
        }
        assertThat(si(absolute.cuttingLength())).isCloseTo(0.020 + 2 * 0.012 * 2 * Math.asin(10 / 12.0), within(1e-12));
    }

    @Test
    void centresAreAbsoluteOrIncremental() {
        PartProgram incremental = PartProgram.parse("G0 X12 Y3\nM3\nG3 I-2 J0\nM5");
        PartProgram absolute = PartProgram.parse("G90.1 G0 X12 Y3\nM3\nG3 I10 J3\nM5");

        assertThat(edge(absolute, 0).centre()).isEqualTo(edge(incremental, 0).centre());
    }

    @Test
    void theOriginIsShifted() {
        PartProgram program = PartProgram.parse("G0 X10 Y10\nG92 X0 Y0\nG0 X5\nM3\nG3 I-5\nM5");

        assertThat(program.cuts().get(0).start().xSi()).isCloseTo(0.015, within(1e-15));
        assertThat(program.cuts().get(0).start().ySi()).isCloseTo(0.010, within(1e-15));
    }

    @Test
    void theShorterAndTheLongerArcOfARadius() {
        PartProgram shorter = PartProgram.parse("(waterjet: open)\nM3\nG3 X10 Y10 R10\nM5\n");
        PartProgram longer = PartProgram.parse("(waterjet: open)\nM3\nG3 X10 Y10 R-10\nM5\n");

        assertThat(Kind.ANGLE.si(edge(shorter, 0).sweep())).isCloseTo(Math.PI / 2, within(1e-12));
        assertThat(Kind.ANGLE.si(edge(longer, 0).sweep())).isCloseTo(3 * Math.PI / 2, within(1e-12));
        assertThat(edge(shorter, 0).centre().orElseThrow().xSi()).isCloseTo(0, within(1e-15));
        assertThat(edge(shorter, 0).centre().orElseThrow().ySi()).isCloseTo(0.010, within(1e-15));
        assertThat(si(longer.cuttingLength())).isCloseTo(1.5 * Math.PI * 0.010, within(1e-12));
    }

    @Test
    void aCircleClosesWhereItBegins() {
        assertThat(Kind.ANGLE.si(edge(PartProgram.parse("G91 G0 X0.1\nX0.2\nM3\nG3 X0 Y0 I1 J0\nM5\n"), 0)
                        .sweep()))
                .isEqualTo(2 * Math.PI);
        assertThat(Kind.ANGLE.si(
                        edge(PartProgram.parse("G0 X0 Y0\nM3\nG2 I5\nM5\n"), 0).sweep()))
                .isEqualTo(-2 * Math.PI);
    }

    @Test
    void commentsSpeakOfTheNextCutOnly() {
        List<ProgramCut> cuts = PartProgram.parse("""
            (waterjet: name bore, quality very-fine, tolerance 0.05 mm)
            G0 X1
            M3
            G3 I-1
            M5
            G0 X5
            M3 (waterjet is a word, not a note)
            G3 I-1
            M5
            M3 ; waterjet: quality Coarse
            G3 I-1
            M5
            """).cuts();

        assertThat(cuts)
                .extracting(cut -> cut.quality().orElse(null))
                .containsExactly(CutQuality.VERY_FINE, null, CutQuality.COARSE);
        assertThat(cuts).extracting(ProgramCut::name).containsExactly("bore", "", "");
        assertThat(si(cuts.get(0).tolerance().orElseThrow())).isCloseTo(5e-5, within(1e-18));
        assertThat(cuts.get(1).tolerance()).isEmpty();
    }

    @Test
    void theSideOfTheJetIsThatOfTheOffset() {
        List<ProgramCut> cuts = PartProgram.parse(
                        "G0 X1\nM3\nG3 I-1\nM5\nM3\nG41 D1 G3 I-1\nG40\nM5\nM3\nG42 G3 I-1\nM5\n")
                .cuts();

        assertThat(cuts).extracting(cut -> cut.jetSide().orElse(null)).containsExactly(null, Side.LEFT, Side.RIGHT);
    }

    @Test
    void codesAreTheMachines() {
        String program = "G0 X1\nM62 M97\nG3 I-1\nM63\nM5\n";
        ProgramCodes codes =
                ProgramCodes.defaults().withJetOn(62).withJetOff(63).withPassThrough(List.of("97", "M5"));

        assertThat(PartProgram.parse(program, codes).size()).isEqualTo(1);
        assertThat(Refusals.of(() -> PartProgram.parse(program))).endsWith("unknown-machine-code");
        assertThat(Refusals.of(() -> ProgramCodes.defaults().withJetOn(5))).isEqualTo("must-be-above");
        assertThat(PartProgram.parse("M3\nG1 X1\nM5\n", ProgramCodes.defaults().withOpenContours())
                        .cuts())
                .hasSize(1);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "G1 X1 Q3 | line 1, column 7: unknown-word",
                "G33 X1 | line 1, column 1: unknown-word",
                "G90.2 | line 1, column 1: unknown-word",
                "G1.04 X1 | line 1, column 1: unknown-word",
                "G18 | line 1, column 1: not-in-xy-plane",
                "G93 | line 1, column 1: feed-mode-not-supported",
                "G54~G55 | line 2, column 1: second-work-offset",
                "M98 P3 | line 1, column 1: no-such-sub-program",
                "P3 | line 1, column 1: word-without-dwell",
                "G1 A90 | line 1, column 4: rotary-axis",
                "/ G1 X5 | line 1, column 1: optional-block",
                "X5 | line 1, column 1: no-motion-code",
                "M3~G1 X | line 2, column 4: word-without-number",
                "M3~G1 X1,5 | line 2, column 6: decimal-comma",
                "M3~G1 X1 X2 | line 2, column 7: word-twice",
                "M3~G2 X10 I4 | line 2, column 8: arc-misses-centre",
                "M3~G2 X10 R4 | line 2, column 8: arc-misses-radius",
                "M3~G2 X0 R4 | line 2, column 7: circle-by-radius",
                "M3~G2 X10 R4 I5 | line 2, column 8: radius-and-centre",
                "M3~G2 X10 | line 2, column 4: arc-without-centre",
                "M3~G2 X10 I5 Z1 | line 2, column 11: helix",
                "M3~G1 X10~X20~M5 | line 1, column 1: contour-not-closed",
                "M3~G1 X10~X0~M5 | line 1, column 1: contour-not-closed",
                "M3~G1 X10~X0 | line 1, column 1: jet-never-off",
                "M3~G0 X10 | line 2, column 4: rapid-with-jet-on",
                "M3~G1 X10~X10 | line 3, column 1: zero-length-line",
                "G0 X5~(end | line 2, column 1: open-comment",
                "G0 X5 # 3 | line 1, column 7: not-a-word",
                "(waterjet: quality shiny)~M3 | line 1, column 12: unknown-cut-quality",
                "(waterjet: tolerance -1 mm) | line 1, column 12: must-be-above",
                "M3~(waterjet: open) | line 2, column 2: note-with-jet-on",
                "M3~M3 | line 2, column 1: jet-already-on",
                "G0 X5 Y5 | nothing-cut",
                "G0 X1e3 | line 1, column 6: unknown-word",
                "G0 X99999999999 | line 1, column 4: place-beyond-limit",
                "M3~G1 X5 I2 | line 2, column 7: word-without-arc",
            })
    void whatAProgramCannotMeanIsRefusedWithItsPlace(String program, String refusal) {
        assertThat(Refusals.of(() -> PartProgram.parse(program.replace('~', '\n'))))
                .isEqualTo(refusal);
    }

    @Test
    void aProgramThatTurnsTheJetOffTwiceIsRead() {
        PartProgram program =
                PartProgram.parse("M5\nG0 X1\nM3\nG4 P500\nG3 I-1\nM5\nM5\nM3\nG4 X2\nM5\nM30\nrubbish\n");

        assertThat(program.size()).isEqualTo(1);
        assertThat(program.spots()).isEqualTo(1);
    }

    @Test
    void feedsMustFitTheBlocks() {
        PartProgram program = PartProgram.parse("G0 X1\nM3\nG3 I-1\nM5\n");

        assertThat(Refusals.of(() -> program.withFeedsSi(1, 1))).isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> program.withFeedsSi(0))).isEqualTo("must-be-above");
    }
}
