package dev.waterjet.program;

import static dev.waterjet.program.ProgramDialectTest.RING;
import static dev.waterjet.program.ProgramDialectTest.codes;
import static dev.waterjet.program.ProgramDialectTest.cut;
import static dev.waterjet.program.ProgramDialectTest.loopMm;
import static dev.waterjet.program.ProgramDialectTest.purposes;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Side;
import dev.waterjet.program.ProgramCut.Purpose;
import dev.waterjet.quality.EdgeRequirement;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Ends of contours in programs as shops write them: overcuts, roundings, crossings; stops, and sub-programs. */
class ContourEndsTest {

    @ParameterizedTest
    @CsvSource({"X25 Y0, 5", "X29.99 Y0, 0.01", "X0 Y0, 30"})
    void anOvercutClosesTheContour(String last, double overcut) {
        // lines of a square of 60 mm from the middle of a side; the last goes on over the first
        String square =
                "G0 X30 Y-5\nM3\nG1 X30 Y0\nG1 X0 Y0\nG1 X0 Y60\nG1 X60 Y60\nG1 X60 Y0\nG1 " + last + "\nG1 Y-5\nM5\n";
        ProgramCut cut = cut(square);

        assertThat(loopMm(cut)).isCloseTo(240, within(1e-9));
        assertThat(1000 * Kind.LENGTH.si(cut.overcut())).isCloseTo(overcut, within(1e-9));
        assertThat(purposes(cut).get(0)).isEqualTo(Purpose.LEAD_IN);
        assertThat(purposes(cut).get(6)).isEqualTo(Purpose.LEAD_OUT);
        assertThat(cut.loop(EdgeRequirement.defaults()).orElseThrow().size()).isEqualTo(5);
    }

    @Test
    void anOvercutMayRunAroundACorner() {
        ProgramCut cut = cut("G0 X5 Y-5\nM3\nG1 X5 Y0\nX0\nY60\nX60\nY0\nX0\nY8\nX-3 Y9\nM5\n");

        assertThat(loopMm(cut)).isCloseTo(240, within(1e-9));
        assertThat(1000 * Kind.LENGTH.si(cut.overcut())).isCloseTo(5 + 8, within(1e-9));
        assertThat(purposes(cut).subList(6, 8)).containsExactly(Purpose.OVERCUT, Purpose.LEAD_OUT);
    }

    @ParameterizedTest
    @ValueSource(strings = {"X0.004 Y0.003", "X-0.007", "Y0.009"})
    void incrementsMayEndWithinTheRounding(String end) {
        String square = "G91 G0 X-3\nM3\nG41 D1 G1 X3\nY20\nX20\nY-20\nX-20\n";
        ProgramCut cut =
                cut(square.replace("X-20\n", "G90 G1 " + (end.contains("X") ? end : "X0 " + end) + "\n") + "M5\n");

        assertThat(cut.isClosed()).isTrue();
        assertThat(loopMm(cut)).isCloseTo(80, within(0.03));
    }

    @Test
    void aGapBeyondTheRoundingIsOpen() {
        assertThat(Refusals.of(() -> cut("G0 X-3\nM3\nG1 X0\nY20\nX20\nY0\nX0.011\nM5\n")))
                .endsWith("contour-not-closed");
    }

    @Test
    void anOvercutMayHaveABlockOfItsOwn() {
        ProgramCut circle = cut("G0 X15 Y0\nM3\nG41 D1 G1 X20\nG3 I-20\nG3 X0 Y20 I-20 J0\nG1 Y15\nM5\n");

        assertThat(purposes(circle)).containsExactly(Purpose.LEAD_IN, Purpose.CUT, Purpose.OVERCUT, Purpose.LEAD_OUT);
        assertThat(Kind.LENGTH.si(circle.overcut())).isCloseTo(0.01 * Math.PI, within(1e-12));
        assertThat(circle.path(EdgeRequirement.defaults()).edge(2).requirement().isLead())
                .isFalse();
    }

    @Test
    void arcsMayOvercutToo() {
        // two half circles, the second goes on by 30 degrees
        double x = 20 * Math.cos(Math.PI / 6);
        ProgramCut cut = cut(String.format(
                Locale.ROOT, "G0 X15 Y0\nM3\nG41 D1 G1 X20\nG3 X-20 I-20\nG3 X%.6f Y10 I20 J0\nG1 X10 Y5\nM5\n", x));

        assertThat(loopMm(cut)).isCloseTo(40 * Math.PI, within(1e-5));
        assertThat(1000 * Kind.LENGTH.si(cut.overcut())).isCloseTo(20 * Math.PI / 6, within(1e-5));
    }

    @Test
    void aContourMayCloseByCrossingItsFirstEdge() {
        // the lead-in runs on as the first edge; the last edge crosses it at (10, 0)
        ProgramCut cut = cut("G0 X0 Y0\nM3\nG1 X50\nY40\nX10\nY-6\nM5\n");

        assertThat(loopMm(cut)).isCloseTo(160, within(1e-9));
        assertThat(cut.loop(EdgeRequirement.defaults()).orElseThrow().start().xSi())
                .isCloseTo(0.010, within(1e-12));
        assertThat(1000 * Kind.LENGTH.si(cut.overcut())).isCloseTo(6, within(1e-9));
    }

    @Test
    void leadsThatCrossInTheScrapDoNotMoveTheContour() {
        ProgramCut cut = cut("G0 X28 Y-5\nM3\nG1 X32 Y0\nX0\nY60\nX60\nY0\nX32\nX28 Y-3\nX34 Y-5\nM5\n");

        assertThat(cut.leadIn()).isEqualTo(1);
        assertThat(loopMm(cut)).isCloseTo(240, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(doubles = {25, 25.0004, 24.9996, 25.002, 25.009})
    void aFullCircleWithARoundedEndIsFull(double end) {
        ProgramCut cut = cut("G0 X20 Y0\nM3\nG41 D1 G1 X25 Y0\nG3 X" + end + " Y0 I-25 J0\nM5\n");

        assertThat(loopMm(cut)).isCloseTo(50 * Math.PI, within(1e-6));
        assertThat(1000 * Kind.LENGTH.si(cut.length())).isCloseTo(5 + 50 * Math.PI, within(1e-6));
    }

    @Test
    void aFullCircleInInchesMayEndATenThousandthOff() {
        ProgramCut cut = cut("G20 G0 X0.9 Y0\nM3\nG41 D1 G1 X1\nG2 X1 Y0.0001 I-1 J0\nM5\n");

        assertThat(loopMm(cut)).isCloseTo(50.8 * Math.PI, within(1e-6));
    }

    @Test
    void aShortArcByItsRadiusIsNoCircle() {
        PartProgram program = PartProgram.parse(
                "M3\nG3 X0.002 R5\nM5\n", ProgramCodes.defaults().withOpenContours());

        assertThat(Kind.LENGTH.si(program.cuttingLength())).isCloseTo(2e-6, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({
        "G4 P500, G4 P ms, 0.5",
        "G4 P1.5, G4 P s, 1.5",
        "G4 X2, G4 P ms, 2",
        "G4 F0.1, G4 X s, 0.1",
        "G4 P100 (a)~G04 P200, G4 P ms, 0.3",
    })
    void theDwellAfterJetOnIsKept(String dwell, String form, double seconds) {
        PartProgram program = PartProgram.parse(
                RING.replace("M3\n", "M3\n" + dwell.replace('~', '\n') + "\n"), ProgramCodes.parse("dwell = " + form));

        assertThat(Kind.TIME.si(program.cuts().get(0).dwell().orElseThrow())).isCloseTo(seconds, within(1e-12));
        assertThat(cut(RING).dwell()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"G41, LEFT", "G42, RIGHT"})
    void anOffsetThatStartsOnAnArcIsFound(String word, Side side) {
        PartProgram program =
                PartProgram.parse("G0 X50 Y0\nM3\n" + word + " D1\nG3 X52 Y2 I0 J2\nG3 I-20\nG40 G3 X50 Y4 I-2\nM5\n");

        assertThat(codes(program)).containsExactly("4 offset-on-arc", "6 offset-on-arc");
        assertThat(program.cuts().get(0).jetSide()).contains(side);
        assertThat(codes(PartProgram.parse(RING.replace("M5", "M5 G40")))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"M0, 1", "M01, 1", "M0 M5, 0"})
    void aStopWithTheJetOnIsFound(String words, int count) {
        PartProgram program = PartProgram.parse(RING.replace("G3 I-25\n", "G3 I-25\n" + words + "\n"));

        assertThat(codes(program)).hasSize(count).allMatch("5 stop-with-jet-on"::equals);
    }

    @Test
    void subProgramsAreUnrolledWithTheirCounts() {
        String text = """
            %
            O1
            G21 G90
            G0 X20 Y0 M98 P200 L3
            M98 P200
            M30
            O200 (ring and step)
            M3
            M98 P300
            M5
            G91 G0 X100
            G90
            M99
            O300
            G91 G1 X5
            G3 I-25
            G90 M99
            %
            """;
        PartProgram program = PartProgram.parse(text);

        assertThat(program.cuts()).hasSize(4);
        assertThat(program.cuts()).extracting(ProgramCut::line).containsOnly(8);
        assertThat(program.line(1)).isEqualTo(16);
        assertThat(program.cuts().get(3).start().xSi()).isCloseTo(0.335, within(1e-12));
        assertThat(program.text()).isEqualTo(text);
        double[] feeds = {0.01, 0.02, 0.01, 0.02, 0.01, 0.02, 0.01, 0.02};
        String written = program.withFeedsSi(feeds);
        assertThat(PartProgram.parse(written).cuttingLength()).isEqualTo(program.cuttingLength());
        assertThat(written).contains("G0 X20 Y0").doesNotContain("M98", "M99");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "M98 P7 | line 1, column 1: no-such-sub-program",
                "M98 | line 1, column 1: call-not-understood",
                "M98 P7 L10000~O7~M99 | line 1, column 1: call-not-understood",
                "M98 P7~M2~O7~M98 P7~M99 | line 4, column 1: sub-programs-too-deep",
                "M98 P7~M2~O7~M99~M99 | line 5, column 1: return-without-sub-program",
            })
    void callsThatLeadNowhereAreRefused(String program, String refusal) {
        assertThat(Refusals.of(() -> PartProgram.parse(program.replace('~', '\n'))))
                .isEqualTo(refusal);
    }

    @Test
    void callsMayBeRefused() {
        assertThat(Refusals.of(() -> PartProgram.parse(
                        "M98 P7\nM2\nO7\nM99\n", ProgramCodes.defaults().withSubPrograms(false))))
                .isEqualTo("line 1, column 1: unknown-machine-code");
    }
}
