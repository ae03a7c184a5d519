package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.Refusals;
import dev.waterjet.measure.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Input at a limit of the reader is read; input beyond it is refused with the limit and its place. */
class ProgramLimitsTest {

    private static void refused(String program, String refusal) {
        assertThat(Refusals.of(() -> PartProgram.parse(program))).endsWith(refusal);
    }

    @Test
    void programsHaveFiftyMillionCharacters() {
        String cut = "G0 X1\nM3\nG3 I-1\nM5\nM2\n";
        String atTheLimit = cut + " ".repeat(50_000_000 - cut.length());

        assertThat(PartProgram.parse(atTheLimit).size()).isEqualTo(1);
        refused(atTheLimit + " ", "text-too-long");
    }

    @Test
    void programsHaveTwoMillionBlocks() {
        String there = "X1\nX0\n".repeat(1_000_000);

        refused("M3\nG1\n" + there + "X1\nM5\n", "line 2000003, column 1: too-many-blocks");
    }

    @Test
    void linesHaveFortyWords() {
        String program = "G0 X1\nM3\n" + "G17 ".repeat(38) + "G3 I-1%s\nM5\n";

        assertThat(PartProgram.parse(String.format(program, "")).size()).isEqualTo(1);
        refused(String.format(program, " F9"), "line 3, column 160: too-many-words");
    }

    @Test
    void numbersHaveTwentyFourCharacters() {
        String one = "0".repeat(23) + "1";

        assertThat(Kind.LENGTH.si(
                        PartProgram.parse("G0 X" + one + "\nM3\nG3 I-1\nM5\n").rapidLength()))
                .isEqualTo(0.001);
        refused("G0 X0" + one, "line 1, column 4: number-too-long");
    }

    @Test
    void placesLieWithinAKilometre() {
        assertThat(Kind.LENGTH.si(PartProgram.parse("G0 X1000000 Y-1000000\nM3\nG3 I-1\nM5\n")
                        .rapidLength()))
                .isEqualTo(1000 * Math.sqrt(2));
        refused("G0 X1000000.1", "line 1, column 4: place-beyond-limit");
        refused("G0 Y-1000000.1", "line 1, column 4: place-beyond-limit");
        refused("G91 G0 X900000\nX100001", "line 2, column 1: place-beyond-limit");
        refused("G20 G0 X39370.1", "line 1, column 8: place-beyond-limit");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "G3 X1 Y1 I1000000.1 J0 | 10",
                "G3 X1 Y1 I0 J-2000000 | 13",
                "G2 X1 Y1 R1000001 | 10",
                "G92 X1000001 | 5",
                "G92 X0 Y-1000001 | 8",
            })
    void radiiCentresAndShiftsAreWithinAKilometre(String block, int column) {
        refused("G0 X0 Y0\n" + block, "line 2, column " + column + ": word-beyond-limit");
    }

    @Test
    void anArcMayHaveARadiusOfAKilometre() {
        PartProgram program = PartProgram.parse("(waterjet: open)\nM3\nG2 X1000 R1000000\nM5\n");

        // a chord of 1 m on a radius of 1000 m: 2 R asin(c/2R) is longer by c^3/24 R^2
        assertThat(Kind.LENGTH.si(program.cuttingLength()) - 1).isBetween(4.1e-8, 4.2e-8);
    }

    @ParameterizedTest
    @CsvSource({"G429496730.6", "G1000", "G-1", "G99999999999999999999", "M4294967299", "M-3", "M3.5"})
    void noGreatNumberPassesForASmallCode(String word) {
        // 429496730.6 tenths wrap round to G1 in 32 bits
        refused(
                "G0 X1\n" + word + " X2",
                word.startsWith("G") || !word.matches("M[0-9]+")
                        ? "line 2, column 1: unknown-word"
                        : "line 2, column 1: unknown-machine-code");
    }
}
