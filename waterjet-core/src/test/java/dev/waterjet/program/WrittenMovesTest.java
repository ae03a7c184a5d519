package dev.waterjet.program;

import static dev.waterjet.Refusals.assertRefused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.part.Contour;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Moves that are written and read back, and sub-programs that are unrolled, in texts whose meaning is plain. */
class WrittenMovesTest {

    private static final ProgramWriter WRITER = ProgramWriter.of(ProgramCodes.defaults());

    private static ProgramMove rapid(double xMm, double yMm) {
        return new ProgramMove.Rapid(Point.millimetres(xMm, yMm));
    }

    private static ProgramMove line(double xMm, double yMm) {
        return new ProgramMove.Line(Point.millimetres(xMm, yMm), Measures.millimetresPerMinute(250));
    }

    private static ProgramMove arc(double xMm, double yMm, double atX, double atY, Side turn) {
        return new ProgramMove.Arc(
                Point.millimetres(xMm, yMm), Point.millimetres(atX, atY), turn, Measures.millimetresPerMinute(250));
    }

    private static ProgramMove on() {
        return new ProgramMove.JetOn(Measures.seconds(0));
    }

    private static ProgramMove off() {
        return new ProgramMove.JetOff();
    }

    private static void assertFault(String code, int index, double xMm, double yMm, ProgramMove... moves) {
        GeometryException refusal = (GeometryException) assertRefused(() -> WRITER.write("", List.of(moves)), code);
        assertThat(refusal.edge()).isEqualTo(index);
        assertThat(refusal.xSi()).isCloseTo(xMm / 1000, within(1e-12));
        assertThat(refusal.ySi()).isCloseTo(yMm / 1000, within(1e-12));
    }

    @Test
    void aMoveThatNeedsTheJetOtherwiseIsRefusedWithItsIndexAndPlace() {
        assertFault("move-with-jet-on", 2, 3, 4, rapid(3, 4), on(), on());
        assertFault("move-with-jet-on", 3, 5, 6, rapid(3, 4), on(), line(5, 6), rapid(0, 0));
        assertFault("move-with-jet-off", 1, 3, 4, rapid(3, 4), off());
        assertFault("move-with-jet-off", 1, 3, 4, rapid(3, 4), line(5, 5));
        assertFault("move-with-jet-off", 1, 3, 4, rapid(3, 4), arc(3, 4, 0, 0, Side.LEFT));
        assertFault("moves-leave-jet-on", 3, 5, 6, rapid(3, 4), on(), line(5, 6));
        assertFault("offset-on-rapid", 1, 0, 0, new ProgramMove.OffsetOn(Side.LEFT), rapid(1, 1));
    }

    /** The ends of an arc may lie at radii that differ by ten micrometres. */
    @Test
    void anArcWhoseEndsDifferIsRefusedBeyondTheRounding() {
        assertFault("arc-ends-differ", 2, 10, 0, rapid(10, 0), on(), arc(0, 10.0101, 0, 0, Side.LEFT), off());
        assertFault("arc-ends-differ", 2, 10, 0, rapid(10, 0), on(), arc(0, 5, 10, 0, Side.LEFT), off());
        assertFault("arc-ends-differ", 2, 10, 0, rapid(10, 0), on(), arc(1e-8, 0, 0, 0, Side.LEFT), off());
        String written = WRITER.write("", List.of(rapid(10, 0), on(), arc(0, 10.0099, 0, 0, Side.LEFT), off()));
        assertThat(written).contains("G3 X0 Y10.01 I-10 J0 F250");
    }

    private static Contour read(ProgramCodes codes, List<ProgramMove> moves) {
        String text = ProgramWriter.of(codes).write("", moves);
        return PartProgram.parse(text, codes.withOpenContours()).cuts().get(0).path(EdgeRequirement.defaults());
    }

    /** Circles too small for the words of an arc are chords of an eighth, on the circle. */
    @Test
    void aTinyCircleIsWrittenAsChordsOfItsEighths() {
        ProgramCodes codes = ProgramCodes.defaults().withDecimals(6);
        for (Side turn : Side.values()) {
            Contour path = read(codes, List.of(rapid(5.008, 7), on(), arc(5.008, 7, 5, 7, turn), off()));
            assertThat(path.size()).isEqualTo(8);
            for (int i = 0; i <= 8; i++) {
                double angle = turn.sign() * Math.PI / 4 * i;
                assertThat(path.xSi(i)).isCloseTo(5e-3 + 8e-6 * Math.cos(angle), within(1e-9));
                assertThat(path.ySi(i)).isCloseTo(7e-3 + 8e-6 * Math.sin(angle), within(1e-9));
            }
        }
    }

    /** An arc of kilometres of radius in chords: each leaves it by a last place at most, and there are no more than needed. */
    @ParameterizedTest
    @CsvSource({"2e6, 900, 3", "2e6, 900, 4", "5e6, 1500, 3", "1.1e6, 300, 2"})
    void aVeryFlatArcIsWrittenAsChordsWithinTheLastPlace(double radiusMm, double chordMm, int decimals) {
        ProgramCodes codes = ProgramCodes.defaults().withDecimals(decimals);
        double place = Math.pow(10, -decimals);
        double depth = Math.sqrt(radiusMm * radiusMm - chordMm * chordMm / 4);
        for (Side turn : Side.values()) {
            Contour path = read(
                    codes, List.of(rapid(0, 0), on(), arc(chordMm, 0, chordMm / 2, turn.sign() * depth, turn), off()));
            double sweep = 2 * Math.asin(chordMm / 2 / radiusMm);
            double flat = Math.sqrt(8 * place / radiusMm);
            assertThat(path.size()).isEqualTo((int) Math.ceil(sweep / flat - 1e-9));
            for (int i = 0; i <= path.size(); i++) {
                double x = 1000 * path.xSi(i) - chordMm / 2;
                double rise = Math.sqrt(radiusMm * radiusMm - x * x) - depth;
                assertThat(-turn.sign() * 1000 * path.ySi(i)).isCloseTo(rise, within(0.51 * place));
            }
        }
    }

    @Test
    void arcsByTheirRadiusAreNoWiderThanAThirdOfATurn() {
        ProgramCodes codes = ProgramCodes.defaults().withRadiusArcs(true).withDecimals(6);
        for (double degrees = 10; degrees < 360; degrees += 25) {
            double end = Math.toRadians(degrees);
            for (Side turn : Side.values()) {
                double sweep = turn == Side.LEFT ? end : 2 * Math.PI - end;
                Contour path = read(
                        codes,
                        List.of(rapid(20, 0), on(), arc(20 * Math.cos(end), 20 * Math.sin(end), 0, 0, turn), off()));
                assertThat(path.size()).isEqualTo((int) Math.ceil(sweep / (2 * Math.PI / 3) - 1e-9));
                assertThat(path.lengthSi()).isCloseTo(0.02 * sweep, within(1e-7));
                for (int i = 0; i < path.size(); i++) {
                    Point centre = path.edge(i).centre().orElseThrow();
                    assertThat(Kind.LENGTH.si(centre.distance(Point.ofSi(0, 0))))
                            .isLessThan(1e-7);
                }
            }
        }
    }

    /** Feeds have four digits and are never above what was asked. */
    @Test
    void aFeedIsRoundedDownToFourDigits() {
        Random random = new Random(1);
        for (int i = 0; i < 20_000; i++) {
            double rate = i % 3 == 0 ? random.nextInt(100_000) / 10.0 + 0.1 : Math.exp(14 * random.nextDouble() - 3);
            for (double unit : new double[] {0.001, 0.0254}) {
                String text = ProgramNumbers.feed(rate * unit / 60, unit);
                BigDecimal exact = BigDecimal.valueOf(rate * (1 + 2e-13)).round(new MathContext(4, RoundingMode.DOWN));
                assertThat(new BigDecimal(text)).as("%s", rate).isEqualByComparingTo(exact);
                assertThat(text).doesNotContain("E").doesNotEndWith(".");
            }
        }
        assertThat(ProgramNumbers.feed(0.005, 0.001)).isEqualTo("300");
        assertThat(ProgramNumbers.feed(9.9999 / 60000, 0.001)).isEqualTo("9.999");
        assertThat(ProgramNumbers.feed(0.99999 / 60000, 0.001)).isEqualTo("0.9999");
        assertThat(ProgramNumbers.feed(99.999 / 60000, 0.001)).isEqualTo("99.99");
        assertThat(ProgramNumbers.feed(999.99 / 60000, 0.001)).isEqualTo("999.9");
        assertThat(ProgramNumbers.feed(9999.9 / 60000, 0.001)).isEqualTo("9999");
        assertThat(ProgramNumbers.feed(12345.0 / 60000, 0.001)).isEqualTo("12340");
    }

    @Test
    void numbersAreReadAsTheStandardParserReadsThem() {
        Random random = new Random(2);
        for (int i = 0; i < 5000; i++) {
            int digits = 1 + random.nextInt(16);
            StringBuilder text = new StringBuilder(random.nextInt(3) == 0 ? "-" : random.nextInt(3) == 0 ? "+" : "");
            int point = random.nextInt(digits + 2) - 1;
            for (int k = 0; k < digits; k++) {
                text.append(k == point ? "." : "").append((char) ('0' + random.nextInt(10)));
            }
            text.append(point == digits ? "." : "");
            String padded = "X" + text + "Y1";
            assertThat(ProgramNumbers.value(padded, 1, padded.length() - 2))
                    .isEqualTo(Double.parseDouble(text.toString()));
        }
    }

    private static List<String> places(String program) {
        List<String> places = new ArrayList<>();
        PartProgram.parse(program, ProgramCodes.defaults().withOpenContours())
                .cuts()
                .forEach(cut -> places.add(cut.start() + " line " + cut.line()));
        return places;
    }

    private static final String SPOT = "M3\nG91 G1 X1\nM5\nG0 X9\nG90\n";

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "M98 P7~M30~O7~SPOTM99 | 4",
                "M98 P7 L3~M30~O7~SPOTM99 | 4 4 4",
                "M98 P7 L0~M98 P7~M30~O7~SPOTM99 | 5",
                "m98p7l2~M30~O7~SPOTM99 | 4 4",
                "N5 M 98 P 7 (call of M98 P8)~M30~O7~SPOTM99 | 4",
                "M98 P7~SPOTM30~O7~SPOTN9 M99 (back) | 9 2",
                "M98 P7~M98 P8~M30~O7~SPOTM98 P8~M99~O8~SPOTSPOTM99 | 5 13 18 13 18",
                "(M98 P9)~M98 P7 ; L5~M30~O7 (spot)~SPOTM99~% | 5",
                "M98 P07~M30~O0007~SPOTM99~O8~SPOTM99 | 4",
            })
    void callsAreReplacedByWhatTheyCall(String program, String lines) {
        String text = "G21 G90\n" + program.replace("SPOT", SPOT).replace('~', '\n');
        List<String> found = places(text);

        assertThat(found).hasSize(lines.split(" ", -1).length);
        for (int i = 0; i < found.size(); i++) {
            int line = Integer.parseInt(lines.split(" ", -1)[i]) + 1;
            assertThat(found.get(i))
                    .isEqualTo("(" + (i == 0 ? "0" : Integer.toString(10 * i)) + " mm, 0 mm) line " + line);
        }
    }

    /** The words beside a call stay, once, before what it calls; those beside a return after it. */
    @Test
    void wordsBesideACallOrAReturnStay() {
        PartProgram program = PartProgram.parse(
                "G21 G90\nG0 X5 M98 P7 L2 T3\nN8 M98 P7\nM30\nO7\nM3\nG91 G1 X1\nM5\nG90 G0 X20 M99\n",
                ProgramCodes.defaults().withOpenContours());

        assertThat(program.unrolledText().replaceAll(" +", " "))
                .isEqualTo("G21 G90\nG0 X5 T3\n" + "M3\nG91 G1 X1\nM5\nG90 G0 X20 \n".repeat(3) + "M30\n");
        assertThat(program.cuts()).hasSize(3);
    }

    @ParameterizedTest
    @CsvSource({"8, no refusal", "9, 'line 19, column 1: sub-programs-too-deep'"})
    void subProgramsCallEachOtherEightDeep(int depth, String refusal) {
        StringBuilder text = new StringBuilder("M98 P1\nM30\n");
        for (int i = 1; i < depth; i++) {
            text.append("O").append(i).append("\nM98 P").append(i + 1).append("\nM99\n");
        }
        text.append("O").append(depth).append("\nM3\nG1 X5\nM5\nM99\n");
        String found = Refusals.of(
                () -> PartProgram.parse(text.toString(), ProgramCodes.defaults().withOpenContours()));
        assertThat(found.replaceAll("line [0-9]+", "line")).isEqualTo(refusal.replaceAll("line [0-9]+", "line"));
    }
}
