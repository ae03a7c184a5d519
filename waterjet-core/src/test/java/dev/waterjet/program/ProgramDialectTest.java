package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.measure.Kind;
import dev.waterjet.program.ProgramCut.Purpose;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Programs as shops write them: safe starts, notes in capitals, moving pierces, overcuts, sub-programs. */
class ProgramDialectTest {

    static final String RING = "G0 X20 Y0\nM3\nG41 D1 G1 X25\nG3 I-25\nM5\nM30\n";

    static ProgramCut cut(String program) {
        return PartProgram.parse(program).cuts().get(0);
    }

    static double loopMm(ProgramCut cut) {
        return 1000
                * Kind.LENGTH.si(
                        cut.loop(EdgeRequirement.defaults()).orElseThrow().length());
    }

    static List<Purpose> purposes(ProgramCut cut) {
        return IntStream.range(0, cut.size()).mapToObj(cut::purpose).toList();
    }

    static List<String> codes(PartProgram program) {
        return program.findings().stream()
                .map(found -> found.line() + " " + found.code())
                .toList();
    }

    @ParameterizedTest
    @CsvSource({"40, 1", "12, 1.5", "3, 0.4"})
    void aMovingPierceIsNotTheContour(double diameter, double pierce) {
        double start = diameter / 2 - 2.5 * pierce;
        ProgramCut cut = cut(String.format(
                Locale.ROOT,
                "G0 X%s Y0\nM3\nG3 I-%s J0\nG41 D1 G1 X%s\nG3 I-%s\nG40 G1 X%s Y0.1\nM5\n",
                start,
                pierce,
                diameter / 2,
                diameter / 2,
                start));

        assertThat(purposes(cut)).containsExactly(Purpose.PIERCE, Purpose.LEAD_IN, Purpose.CUT, Purpose.LEAD_OUT);
        assertThat(loopMm(cut)).isCloseTo(Math.PI * diameter, within(1e-9));
    }

    @Test
    void aPierceCircleThatBeginsOnTheContourIsNotPartOfIt() {
        ProgramCut cut = cut("G0 X0 Y0\nM3\nG3 I-1\nG3 I-1\nG1 X30\nY20\nX0\nY0\nM5\n");

        assertThat(purposes(cut).subList(0, 3)).containsExactly(Purpose.PIERCE, Purpose.PIERCE, Purpose.CUT);
        assertThat(loopMm(cut)).isCloseTo(100, within(1e-9));
    }

    @Test
    void theLoopUnderAnOffsetIsTheContour() {
        // a round of 3 mm frees the slug of a hole of 2 mm before its edge is cut
        ProgramCut cut = cut("G0 X0 Y0\nM3\nG3 I-3\nG41 D1 G1 X2\nG3 I-2\nM5\n");

        assertThat(loopMm(cut)).isCloseTo(4 * Math.PI, within(1e-9));
    }

    @Test
    void aColonNumbersABlock() {
        String named = "G0 X0 Y-5\nM3\nG1 Y0\nX120\nY40\n%s G1 X150 Y60\nX120 Y80\nX0\nY0\nM5\n";

        assertThat(PartProgram.parse(String.format(named, ":60")).cuttingLength())
                .isEqualTo(PartProgram.parse(String.format(named, "N60")).cuttingLength());
        assertThat(Refusals.of(() -> PartProgram.parse(":12 part\n" + RING))).startsWith("line 1, column");
        assertThat(Refusals.of(() -> PartProgram.parse("G0 X1 :60\n"))).isEqualTo("line 1, column 7: not-a-word");
    }

    @ParameterizedTest
    @CsvSource({"G1 Y50 Z-20, 0.02", "G91 G1 Y50 Z0.5, 0.0005", "G20 G1 Z-1, 0.0254"})
    void aMoveOfZWithTheJetOnIsFound(String block, double change) {
        PartProgram program = PartProgram.parse(
                "G0 X0 Y0 Z0\nM3\n" + block + "\nG90 G1 X90 Y0\nX-90 Y9\nX0 Y0\nM5\n",
                ProgramCodes.defaults().withOpenContours());

        assertThat(codes(program)).containsExactly("3 height-with-jet-on");
        assertThat(program.findings().get(0).finding().message().parameters().get("change_m"))
                .asInstanceOf(InstanceOfAssertFactories.DOUBLE)
                .isCloseTo(change, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "G0 Z5\nG0 X20 Y0\nG0 Z1\nM3\nG41 D1 G1 X25 Z1\nG3 I-25\nM5\nG0 Z20\n",
                "G91 G28 Z0\nG90 G0 X20 Y0\nG92 Z4\nM3\nG41 D1 G1 X25 Z4\nG3 I-25\nM5\nG53 Z0\n",
            })
    void zAtRestOrWithTheJetOffIsNoFinding(String program) {
        assertThat(codes(PartProgram.parse(program))).isEmpty();
    }

    @Test
    void aHeightThatIsUnknownIsFoundToo() {
        assertThat(codes(PartProgram.parse("G28 Z0\nG0 X20 Y0\nM3\nG41 D1 G1 X25 Z1\nG3 I-25\nM5\n")))
                .containsExactly("4 height-with-jet-on");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "(WATERJET: NAME BORE, QUALITY FINE, TOLERANCE 0.05 MM)",
                "(WaterJet: name BORE, Quality Fine, Tolerance 50 um)",
                "; waterjet : NAME BORE,GRADE FINE,TOLERANCE .05 mm",
            })
    void notesMayBeWrittenInCapitals(String note) {
        ProgramCut cut = cut(note + "\n" + RING);

        assertThat(cut.quality()).contains(CutQuality.FINE);
        assertThat(cut.name()).isEqualTo("BORE");
        assertThat(Kind.LENGTH.si(cut.tolerance().orElseThrow())).isCloseTo(5e-5, within(1e-15));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "(waterjet quality fine) | 1 note-not-read",
                "(WATERJET) | 1 note-not-read",
                "(waterjet: speed 3, quality fine) | 1 unknown-note",
                "(waterjet: quality fine,) | 1 unknown-note",
                "(waterjet:) | 1 unknown-note",
            })
    void aNoteThatIsNotReadIsFound(String note, String found) {
        PartProgram program = PartProgram.parse(note + "\n" + RING);

        assertThat(codes(program)).containsExactly(found);
        assertThat(program.cuts().get(0).quality().isPresent()).isEqualTo(note.contains(": ") && note.contains("fine"));
    }

    @Test
    void aCommentAboutSomethingElseIsNoNote() {
        assertThat(codes(PartProgram.parse("(waterjets are cold)\n(the waterjet: off)\n" + RING)))
                .isEmpty();
    }

    @Test
    void aTestOfTheValveLeavesTheNoteToTheCut() {
        PartProgram program = PartProgram.parse("(waterjet: quality fine)\nG0 X0 Y0\nM3\nG4 P200\nM5\nM3\nM5\n" + RING);

        assertThat(program.spots()).isEqualTo(2);
        assertThat(program.cuts().get(0).quality()).contains(CutQuality.FINE);
    }

    @Test
    void aSpikeAndASlitBelongToTheContour() {
        ProgramCut spike = cut("G0 X30 Y30\nM3\nG41 D1 G1 Y0\nX60\nX61 Y-1\nX60 Y0\nY60\nX0\nY0\nX30 Y0\nM5\n");
        ProgramCut slit = cut("G0 X50 Y-5\nM3\nG42 D1 G1 Y0\nX100\nY50\nX50\nY70\nY50\nX0\nY0\nX50\nM5\n");

        assertThat(loopMm(spike)).isCloseTo(240 + 2 * Math.sqrt(2), within(1e-9));
        assertThat(loopMm(slit)).isCloseTo(300 + 40, within(1e-9));
    }

    @Test
    void aContourThatCrossesItselfIsStillTheContour() {
        assertThat(cut("G0 X0 Y-5\nM3\nG42 D1 G1 Y0\nX60 Y60\nX60 Y0\nX0 Y60\nX0 Y0\nM5\n")
                        .leadIn())
                .isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "G90 G94 G17 G49 G40 G80",
                "G21 G98\nG43 H1\nG97 S0\nG99\nG50\nG69\nG9\nG61.1\nG64 P0.01 Q0.02",
                "G54.1 P3\nG54.1 P3",
                "G00 G53 Z0",
            })
    void wordsOfASafeStartArePassedOver(String start) {
        PartProgram program = PartProgram.parse(start + "\n" + RING);

        assertThat(codes(program)).isEmpty();
        assertThat(program.cuttingLength()).isEqualTo(PartProgram.parse(RING).cuttingLength());
        assertThat(program.withFeedsSi(0.01, 0.01)).startsWith(start + "\n");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "G28 X0 | line 1, column 1: machine-place",
                "G28 | line 1, column 1: machine-place",
                "G53 G0 X0 | line 1, column 1: place-not-stated",
                "G50 X200 | line 1, column 1: place-not-stated",
                "G54.1 P1~G54.1 P2 | line 2, column 1: second-work-offset",
                "G54~G54.1 P1 | line 2, column 1: second-work-offset",
                "G43.4 H1 | line 1, column 1: unknown-word",
                "M8 | line 1, column 1: unknown-machine-code",
                "G20 G21 G90 G91 | line 1, column 5: words-contradict",
                "G90 G0 G1 X0 | line 1, column 8: words-contradict",
                "G41 D1 G42 | line 1, column 8: words-contradict",
                "G70 G71 | line 1, column 5: words-contradict",
                "G4 G92 X0 | line 1, column 4: words-contradict",
                "M3 M5 | line 1, column 4: words-contradict",
                "M5 M3 | line 1, column 4: words-contradict",
                "M2 M30 | line 1, column 4: words-contradict",
            })
    void wordsThatAreUnclearAreRefused(String program, String refusal) {
        assertThat(Refusals.of(() -> PartProgram.parse(program.replace('~', '\n'))))
                .isEqualTo(refusal);
    }

    @Test
    void wordsThatMeanTheSameContradictNothing() {
        assertThat(codes(PartProgram.parse("G21 G71 G90 G90 G17 G17\n" + RING))).isEmpty();
    }

    @Test
    void otherWordsAreCopiedOnDemand() {
        String text = "G5.1 Q1\nM8\nM64 P2\n" + RING.replace("M3\n", "M3 M9\n");
        ProgramCodes codes = ProgramCodes.defaults().withPassThrough(List.of("G5.1,M8".split(",")));

        assertThat(Refusals.of(() -> PartProgram.parse(text, codes)))
                .isEqualTo("line 3, column 1: unknown-machine-code");
        PartProgram program = PartProgram.parse(text, codes.withPassThrough(List.of("m64", "9")));
        assertThat(program.withFeedsSi(0.01, 0.01)).startsWith("G5.1 Q1\nM8\nM64 P2\n");
        assertThat(Refusals.of(() -> PartProgram.parse("G5.1 X9\n" + RING, codes)))
                .isEqualTo("line 1, column 1: place-not-stated");
        for (String word : List.of("X8", "G", "", "M8;", "8,9")) {
            assertThat(Refusals.of(() -> codes.withPassThrough(List.of(word))))
                    .as(word)
                    .isEqualTo("not-a-word-to-pass");
        }
    }
}
