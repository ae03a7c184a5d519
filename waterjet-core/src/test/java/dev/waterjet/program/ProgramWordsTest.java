package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Words, lines and what the values of this package tell. */
class ProgramWordsTest {

    private static PartProgram open(String program) {
        return PartProgram.parse(program, ProgramCodes.defaults().withOpenContours());
    }

    private static Contour path(PartProgram program, int cut) {
        return program.cuts().get(cut).path(EdgeRequirement.defaults());
    }

    private static double cuttingMm(PartProgram program) {
        return 1000 * Kind.LENGTH.si(program.cuttingLength());
    }

    private static void refused(String program, String refusal) {
        assertThat(Refusals.of(() -> PartProgram.parse(program))).endsWith(refusal);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "G2 X4 Y4 I4 J0",
                "X4 G2 Y4 I4 J0",
                "Y4 X4 G2 J0 I4",
                "I4 G2 X4 Y4",
                "J0 I4 X4 Y4 G2",
                "R4 G2 X4 Y4",
                "Y4 X4 R4 G2",
                "F9 X4 Y4 R4 G2",
                "N1G2X4Y4R4",
            })
    void wordsStandInAnyOrder(String block) {
        // a quarter of a circle of 4 mm about (4, 0)
        PartProgram program = open("M3\n" + block + "\nM5\n");

        assertThat(path(program, 0).edge(0).centre().orElseThrow().xSi()).isCloseTo(0.004, within(1e-15));
        assertThat(cuttingMm(program)).isCloseTo(2 * Math.PI, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(strings = {"I2 X9", "J2 X9", "R2 X9", "I2", "J2", "R2"})
    void theCentreOfALineIsRefusedWhereverItStands(String block) {
        refused("M3\nG1 X5\n" + block, "line 3, column 1: word-without-arc");
    }

    @ParameterizedTest
    @CsvSource({"I2 R4, 4", "J2 R4, 4", "R4 I2, 1", "R4 J2, 1"})
    void anArcHasOneKindOfCentre(String words, int column) {
        refused("M3\nG2\nX4 Y4 " + words, "line 3, column " + (column + 6) + ": radius-and-centre");
    }

    @ParameterizedTest
    @CsvSource({"Z1 X4 I2, 1, helix", "I2 X5, 1, arc-misses-centre", "R2 X5, 1, arc-misses-radius"})
    void faultsOfAnArcAreToldAtTheirWord(String words, int column, String message) {
        refused("M3\nG2\n" + words, "line 3, column " + column + ": " + message);
    }

    @Test
    void endsOfAnArcMayBeRoundedByAHundredthOfAMillimetre() {
        assertThat(cuttingMm(open("M3\nG2 X8.009 I4\nM5"))).isCloseTo(4 * Math.PI, within(0.02));
        refused("M3\nG2 X8.011 I4\nM5", "arc-misses-centre");
        assertThat(cuttingMm(open("M3\nG2 X8.009 R4\nM5"))).isCloseTo(4 * Math.PI, within(0.02));
        refused("M3\nG2 X8.011 R4\nM5", "arc-misses-radius");
    }

    @Test
    void anArcNeedsARadius() {
        refused("M3\nG2 X8 I0\nM5", "line 2, column 7: zero-radius");
        refused("M3\nG2 X8 I8\nM5", "line 2, column 7: zero-radius");
        refused("M3\nG2 X8 R0\nM5", "line 2, column 7: zero-radius");
    }

    @Test
    void centresThatAreAbsoluteFollowTheOriginAndMayLackAWord() {
        // the origin is shifted to (10, 20); the centre (4, 0) then lies at (14, 20)
        PartProgram shifted = open("G0 X10 Y20\nG92 X0 Y0\nG90.1\nM3\nG3 X8 Y0 I4 J0\nM5\n");
        assertThat(path(shifted, 0).edge(0).centre().orElseThrow().xSi()).isCloseTo(0.014, within(1e-12));
        assertThat(path(shifted, 0).edge(0).centre().orElseThrow().ySi()).isCloseTo(0.020, within(1e-12));

        PartProgram onlyY = open("G0 X3 Y2\nG90.1 M3\nG3 X3 Y8 J5\nM5\n");
        assertThat(path(onlyY, 0).edge(0).centre().orElseThrow().xSi()).isCloseTo(0.003, within(1e-15));
        PartProgram onlyX = open("G0 X3 Y2\nG90.1 M3\nG3 X9 Y2 I6\nM5\n");
        assertThat(path(onlyX, 0).edge(0).centre().orElseThrow().ySi()).isCloseTo(0.002, within(1e-15));
        PartProgram again = open("G0 X3 Y2\nG90.1\nG91.1 M3\nG3 X9 Y2 I3\nM5\n");
        assertThat(path(again, 0).edge(0).centre().orElseThrow().xSi()).isCloseTo(0.006, within(1e-15));
    }

    @Test
    void theOriginIsShiftedInOneDirectionAlone() {
        PartProgram program = open("G0 X10 Y20\nG92 Y5\nM3\nG1 X11 Y6\nM5\nG92 X1\nG0 X2 Y6\nM3\nG1 Y7\nM5\n");

        assertThat(path(program, 0).end().xSi()).isCloseTo(0.011, within(1e-15));
        assertThat(path(program, 0).end().ySi()).isCloseTo(0.021, within(1e-15));
        // 11 mm is now called 1, so that 2 is 12 mm
        assertThat(path(program, 1).start().xSi()).isCloseTo(0.012, within(1e-15));
        assertThat(path(program, 1).end().ySi()).isCloseTo(0.022, within(1e-15));
        assertThat(open("G0 X10\nX4 G92\nM3\nG1 X5\nM5\n").cuts().get(0).start().xSi())
                .isCloseTo(0.010, within(1e-15));
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void everyEndOfLineCountsOnce(String end) {
        String program = String.join(end, "G0 X1", "", "M3", "G3 I-1", "M5", "G12");

        refused(program, "line 6, column 1: unknown-word");
        assertThat(PartProgram.parse(program.replace("G12", "M2")).cuts().get(0).line())
                .isEqualTo(3);
        assertThat(PartProgram.parse("\uFEFF" + program.replace("G12", "M30")).line(0))
                .isEqualTo(4);
    }

    @Test
    void tapeMarksAreNoBlocks() {
        assertThat(PartProgram.parse("%\nO12 (name)\nG0 X1\nM3\n%% rubbish\nG3 I-1\nM5\n%")
                        .size())
                .isEqualTo(1);
    }

    @Test
    void stopsAndEndsAreKnownWhateverOpensTheJet() {
        ProgramCodes codes = ProgramCodes.defaults().withJetOn(10).withJetOff(11);

        assertThat(PartProgram.parse("M0\nM1\nG0 X1\nM10\nG3 I-1\nM11\nM2\nM77", codes)
                        .size())
                .isEqualTo(1);
        assertThat(Refusals.of(() -> PartProgram.parse("M3", codes))).endsWith("unknown-machine-code");
        assertThat(Refusals.of(() -> PartProgram.parse("M29", codes))).endsWith("unknown-machine-code");
    }

    @Test
    void onlyTheXyPlaneAndFeedsPerMinuteAreTaken() {
        PartProgram program = open("G17 G40 G61 G94 G54\nG64 G54 G0 X1\nM3\nG1 X2\nM5\n");

        assertThat(program.size()).isEqualTo(1);
        for (String word : List.of("G18", "G19")) {
            refused(word, "not-in-xy-plane");
        }
        for (String word : List.of("G93", "G95")) {
            refused(word, "feed-mode-not-supported");
        }
        for (String word : List.of("G55", "G56", "G57", "G58", "G59")) {
            refused("G54\n" + word, "second-work-offset");
            assertThat(open(word + " G0 X1\nM3\nG1 X2\nM5\n").size()).isEqualTo(1);
        }
    }

    @ParameterizedTest
    @CsvSource({"G20, true", "G21, true", "G70, true", "G71, true", "G90, false", "G17, false"})
    void aProgramSaysItsUnitOrDoesNot(String word, boolean says) {
        assertThat(open(word + "\nM3\nG1 X1\nM5\n").hasUnit()).isEqualTo(says);
    }

    @Test
    void lettersThatBeginNoWordAreShown() {
        refused("G0 ~", "line 1, column 4: not-a-word");
        refused("G0 \u00e4", "line 1, column 4: not-a-word");
        refused("G0 \u0001", "line 1, column 4: not-a-word");
        refused("G0 X.", "line 1, column 4: word-without-number");
        refused("G0 X-", "line 1, column 4: word-without-number");
        refused("G0 X1-2", "line 1, column 6: not-a-word");
        refused("G0 X1.2.3", "line 1, column 8: not-a-word");
    }

    @Test
    void commentsSpeakOnceAndToTheEnd() {
        refused("(waterjet: name a)(waterjet: open)", "line 1, column 20: second-note");
        refused("G0 X1 (open\nG0 X2)", "line 1, column 7: open-comment");
        PartProgram program =
                PartProgram.parse("(waterjet: name a b)\n(waterjet: open , tolerance 1 mm)\nM3\nG1 X1\nM5\n");
        assertThat(program.cuts().get(0).name()).isEqualTo("a b");
        assertThat(program.cuts().get(0).tolerance()).isPresent();
        assertThat(program.cuts().get(0).isClosed()).isFalse();
    }

    @Test
    void errorsTellLineColumnAndDistances() {
        refused("G0 X1\n  M3\nG1 X5", "line 2, column 3: jet-never-off");
        refused("G0 X10 Y20\n M3\nG1 X12\nX13 Y24\nM5", "line 2, column 2: contour-not-closed");
        refused("G0 X5\n\nG4 P1\nM2", "nothing-cut");
        refused("G17\nP3", "line 2, column 1: word-without-dwell");
        refused("U3", "line 1, column 1: word-without-dwell");
    }

    @Test
    void movesWithTheJetOffAreCountedLegByLeg() {
        PartProgram program = open("G0 X3 Y4\nG0 X6 Y8\nG1 X9 Y12\nG3 X9 Y14 J1\nM3\nG1 X10\nM5\nG0 Y2\n");

        assertThat(1000 * Kind.LENGTH.si(program.rapidLength())).isCloseTo(15 + Math.PI + 12, within(1e-9));
    }

    @Test
    void blocksAreCountedOverTheProgramAndWithinTheCut() {
        PartProgram program = open("M3\nG1 X1\nX2\nM5\nG0 X5\n\nM3\nG1 X6\n\nX7\nX8\nM5\n");
        ProgramCut second = program.cuts().get(1);

        assertThat(second.firstBlock()).isEqualTo(2);
        assertThat(second.size()).isEqualTo(3);
        assertThat(second.line()).isEqualTo(7);
        assertThat(second.line(0)).isEqualTo(8);
        assertThat(second.line(2)).isEqualTo(11);
        assertThat(program.line(1)).isEqualTo(3);
        assertThat(program.line(4)).isEqualTo(11);
        assertThat(program.cuts().get(0).firstBlock()).isZero();
        assertThat(second).hasToString("cut at line 7, 3 blocks");
        assertThat(open("(waterjet: name rim)\nM3\nG1 X6\nM5\n").cuts().get(0)).hasToString("rim at line 2, 1 blocks");
    }

    @Test
    void feedsComeAsAnArrayToo() {
        PartProgram program = open("M3\nG1 X1\nF3 X2\nM5\n");

        assertThat(program.withFeeds(
                        QuantityArray.of(Kind.SPEED, new double[] {90, 120.5}, Units.MILLIMETRE_PER_MINUTE)))
                .isEqualTo("M3\nG1 X1 F90\nF120.5 X2\nM5\n");
    }

    @Test
    void aBlankBeforeTheFirstWordIsABlank() {
        assertThat(open(" M3G1X1\nM5").withFeedsSi(0.01)).isEqualTo(" M3G1X1 F600\nM5");
        assertThat(open("M3G1X1\nM5").withFeedsSi(0.01)).isEqualTo("M3G1X1F600\nM5");
        assertThat(open(" M3\nG1X1\nM5").withFeedsSi(0.01)).isEqualTo(" M3\nG1X1F600\nM5");
    }

    @Test
    void theSideIsThatOfTheCutAndEndsWithIt() {
        List<ProgramCut> cuts =
                open("M3\nG41 G1 X1\nG40 X2\nM5\nM3\nG1 X3\nM5\n").cuts();

        assertThat(cuts.get(0).jetSide()).contains(Side.LEFT);
        assertThat(cuts.get(1).jetSide()).isEmpty();
    }

    @Test
    void aProgramIsItsTextAndItsCodes() {
        String text = "M3\nG1 X1\nM5\n";
        ProgramCodes codes = ProgramCodes.defaults().withOpenContours();

        ValueContract.of(() -> PartProgram.parse(text, codes))
                .has("text", PartProgram::text, text)
                .has("codes", PartProgram::codes, codes)
                .has("size", PartProgram::size, 1)
                .differs("text", PartProgram.parse(text + " ", codes))
                .differs("codes", PartProgram.parse(text, codes.withPassThrough(List.of("7"))))
                .prints("1 cuts", "1 blocks")
                .check();
    }

    @Test
    void codesTellWhatWasGiven() {
        ValueContract.of(ProgramCodes::defaults)
                .change("jet on", codes -> codes.withJetOn(62), ProgramCodes::jetOn, 62)
                .change("jet off", codes -> codes.withJetOff(63), ProgramCodes::jetOff, 63)
                .change(
                        "passed",
                        codes -> codes.withPassThrough(List.of("M9", "8")),
                        ProgramCodes::passThrough,
                        List.of("M8", "M9"))
                .change("open", ProgramCodes::withOpenContours, ProgramCodes::allowsOpenContours, true)
                .prints("M3", "M5")
                .check();
        assertThat(ProgramCodes.defaults()
                        .withPassThrough(List.of("M8"))
                        .withPassThrough(List.of("G5.1"))
                        .passThrough())
                .containsExactly("G5.1", "M8");
        assertThat(Refusals.of(() -> ProgramCodes.defaults().withJetOn(-1))).isEqualTo("must-be-at-least");
        assertThat(Refusals.of(() -> ProgramCodes.defaults().withJetOff(10000))).isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> ProgramCodes.defaults().withPassThrough(List.of("-5"))))
                .isEqualTo("must-be-at-least");
    }
}
