package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Point;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ProgramChecksTest {

    private static final String BORE = "G0 X60 Y60\nM3\nG41 D1 G1 X70 Y60\nG3 I-10\nM5\n";
    private static final String COVER = "G0 X-5 Y0\nM3\nG41 D1 G1 X0\nG1 Y120\nX120\nY0\nX0\nM5\n";

    private static List<String> found(ProgramChecks checks, String program) {
        return checks.check(program, ProgramCodes.defaults()).stream()
                .map(found -> found.line() + " " + found.code())
                .toList();
    }

    private static List<String> found(String program) {
        return found(ProgramChecks.defaults(), program);
    }

    private static Map<String, Object> parameters(String program) {
        return ProgramChecks.defaults()
                .check(program, ProgramCodes.defaults())
                .get(0)
                .finding()
                .message()
                .parameters();
    }

    private static String mirrored(String program) {
        // x becomes -x: turns and sides change places
        return program.replaceAll("X-", "x")
                .replaceAll("X(?=[1-9])", "X-")
                .replaceAll("x", "X")
                .replaceAll("I-", "i")
                .replaceAll("I(?=[1-9])", "I-")
                .replaceAll("i", "I")
                .replaceAll("G41", "g42")
                .replaceAll("G42", "G41")
                .replaceAll("g42", "G42")
                .replaceAll("G3", "g2")
                .replaceAll("G2 ", "G3 ")
                .replaceAll("g2", "G2");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                BORE + COVER,
                BORE,
                COVER,
                // a frame: its opening first, then a part in what it leaves, is another matter
                "G0 X30 Y30\nM3\nG1 X20 Y20\nX20 Y0\nX0\nY40\nX40\nY0\nX20\nM5\n",
                // two parts side by side, one with a hole
                BORE + COVER + "G0 X195 Y0\nM3\nG41 D1 G1 X200\nG1 Y120\nX320\nY0\nX200\nM5\n",
            })
    void aSoundProgramHasNoFindings(String program) {
        assertThat(found(program)).isEmpty();
        assertThat(found(mirrored(program))).isEmpty();
    }

    @Test
    void anOffsetOnTheWrongSideIsFound() {
        String bore = BORE.replace("G3", "G2");
        String cover = COVER.replace("G41", "G42");

        assertThat(found(bore + cover)).containsExactly("4 jet-in-part", "9 jet-in-part");
        assertThat(found(mirrored(bore + cover))).containsExactly("4 jet-in-part", "9 jet-in-part");
        assertThat(found(bore + COVER)).containsExactly("4 jet-in-part");
        assertThat(found(bore)).containsExactly("4 jet-in-part");
        assertThat(found(cover)).containsExactly("4 jet-in-part");
        assertThat(parameters(bore + COVER))
                .containsEntry("word", "G41")
                .containsEntry("direction", "clockwise")
                .containsEntry("contour", "hole");
    }

    @ParameterizedTest
    @CsvSource({"85, 60, 0.015", "60, 85, 0.015", "72, 60, 0.002", "115, 60, 0.045"})
    void aPierceInThePartIsFound(double x, double y, double distance) {
        String program = BORE.replace("X60 Y60", "X" + x + " Y" + y) + COVER;

        assertThat(found(program)).containsExactly("2 pierce-in-part");
        assertThat(parameters(program).get("distance_m"))
                .asInstanceOf(InstanceOfAssertFactories.DOUBLE)
                .isCloseTo(distance, within(1e-12));
    }

    @Test
    void aPierceInANeighbourIsFound() {
        String left = COVER;
        String right = "G0 X110 Y130\nM3\nG41 D1 G1 X110 Y125\nY250\nX230\nY125\nX110\nM5\n";

        assertThat(found(left + right)).isEmpty();
        assertThat(found(left + right.replace("Y130", "Y115"))).containsExactly("10 pierce-in-part");
    }

    @Test
    void aLeadFromAnotherHoleRunsThroughThePart() {
        String second = "G0 X60 Y62\nM3\nG41 D1 G1 X100 Y60\nG3 I-8\nM5\n";

        assertThat(found(BORE + second + COVER)).containsExactly("7 lead-through-part");
    }

    @Test
    void anOutlineBeforeItsHoleIsFound() {
        assertThat(found(COVER + BORE)).containsExactly("10 cut-in-freed-piece");
        assertThat(parameters(COVER + BORE)).containsEntry("other", 4L);
        String slot = "(waterjet: open)\nG0 X20 Y20\nM3\nG1 X40\nM5\n";
        assertThat(found(COVER + slot)).containsExactly("11 cut-in-freed-piece");
        assertThat(found(slot + COVER)).isEmpty();
    }

    @Test
    void aPartInAnOpeningIsAPart() {
        // the opening of a frame, and a disc out of the piece that falls
        String disc = "G0 X60 Y85\nM3\nG42 D1 G1 Y80\nG3 J-20\nM5\n";
        String opening = "G0 X5 Y5\nM3\nG42 D1 G1 X0\nY120\nX120\nY0\nX0\nY5\nM5\n";

        assertThat(found(disc + opening)).isEmpty();
        assertThat(found(opening + disc)).containsExactly("11 cut-in-freed-piece");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "G4 F0.1 | 0.1 | 3 short-dwell",
                "G4 P100 | 0.1 | 3 short-dwell",
                "G4 X1.0 | 1.0 | 3 short-dwell",
                "G4 P1100 | 1.1 |",
                "G4 P2000 | 2 |",
            })
    void aDwellShorterThanThePierceIsFound(String dwell, double seconds, String expected) {
        ProgramChecks checks = ProgramChecks.defaults().withPierceTime(Kind.TIME.of(1.1));
        String program = BORE.replace("M3\n", "M3\n" + dwell + "\n");

        assertThat(found(program)).isEmpty();
        assertThat(found(checks, program)).isEqualTo(expected == null ? List.of() : List.of(expected));
        ProgramChecks estimated =
                ProgramChecks.defaults().withPierceTime(Estimate.withinFactor(Kind.TIME, 1.1, 2.2, List.of()));
        assertThat(found(estimated, program)).isEqualTo(expected == null ? List.of() : List.of(expected));
        estimated
                .check(program, ProgramCodes.defaults())
                .forEach(finding -> assertThat(finding.finding().message().parameters())
                        .containsEntry("dwell_s", seconds)
                        .containsEntry("pierce_s", 1.1));
    }

    @Test
    void aMissingDwellIsFoundWhereItIsTheProgramsBusiness() {
        ProgramChecks checks = ProgramChecks.defaults().withPierceTime(Kind.TIME.of(1.1));
        ProgramCodes waiting = ProgramCodes.defaults().withDwell(DwellForm.MACHINE);

        assertThat(found(checks, BORE)).containsExactly("2 no-dwell");
        assertThat(checks.check(BORE, waiting)).isEmpty();
        assertThat(found(BORE.replace("M3\n", "M3\nG4 P900\n") + COVER)).containsExactly("8 no-dwell");
        assertThat(found(checks, BORE.replace("M3\n", "M3\nG3 I-1\n"))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"1, 30, 30", "0.01, 0.3, 0.3", "10, 300, 300"})
    void aContourThatCrossesItselfIsFound(double scale, double x, double y) {
        String program = String.format(
                Locale.ROOT,
                "G0 X0 Y%1$.3f\nM3\nG42 D1 G1 Y0\nG1 X%2$.3f Y%2$.3f\nY0\nX0 Y%2$.3f\nX0 Y0\nM5\n",
                -5 * scale,
                60 * scale);

        assertThat(found(program)).contains("4 contour-crosses-itself");
        ProgramFinding crossing = ProgramChecks.defaults().check(program, ProgramCodes.defaults()).stream()
                .filter(found -> found.code().equals("contour-crosses-itself"))
                .findFirst()
                .orElseThrow();
        assertThat(crossing.finding().message().parameters()).containsEntry("other", 6L);
        Point place = Objects.requireNonNull(crossing.finding().place());
        assertThat(place.xSi()).isCloseTo(x / 1000, within(1e-12));
        assertThat(place.ySi()).isCloseTo(y / 1000, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "G0 X30 Y30\nM3\nG41 D1 G1 Y0\nX60\nX61 Y-1\nX60 Y0\nY60\nX0\nY0\nX30 Y0\nM5\n",
                "G0 X50 Y-5\nM3\nG42 D1 G1 Y0\nX100\nY50\nX50\nY70\nY50\nX0\nY0\nX50\nM5\n",
                // a contour that touches itself at a point: two squares, corner to corner
                "G0 X0 Y-5\nM3\nG42 D1 G1 Y0\nX10\nY10\nX20\nY20\nX10\nY10\nX0\nY0\nM5\n",
            })
    void aSpikeASlitAndATouchAreNoCrossings(String program) {
        assertThat(found(program)).isEmpty();
    }

    @Test
    void contoursThatCrossEachOtherAreFound() {
        String shifted = "G0 X55 Y200\nM3\nG41 D1 G1 X60\nG1 Y180\nX180\nY60\nX60\nY180\nM5\n";

        assertThat(found(COVER + shifted)).contains("5 contours-cross");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "G20 G21 G90 G91 | 1 words-contradict",
                "M3~G0 X5 | 2 rapid-with-jet-on",
                "M3~G1 X5~M5 | 1 contour-not-closed",
                "M3~G1 X5 | 1 jet-never-off",
                "M3~G2 X10 I4 | 2 arc-misses-centre",
            })
    void aProgramThatIsUnderstoodAndCannotRunHasThatAsItsFinding(String program, String expected) {
        assertThat(found(program.replace('~', '\n'))).containsExactly(expected);
    }

    @ParameterizedTest
    @CsvSource({"0, not-a-word", "SECTION, word-without-number", "G1 Q5, unknown-word", "M8, unknown-machine-code"})
    void aProgramThatIsNotUnderstoodIsRefused(String program, String code) {
        assertThat(Refusals.of(() -> found(program))).endsWith(code);
    }

    @Test
    void findingsComeByLineWithThoseOfTheReader() {
        String program = "(waterjet: speed 5)\n" + COVER.replace("M5", "M0\nM5") + BORE.replace("G3", "G2");

        assertThat(found(program))
                .containsExactly("1 unknown-note", "9 stop-with-jet-on", "12 cut-in-freed-piece", "14 jet-in-part");
    }
}
