package dev.waterjet.program;

import static dev.waterjet.measure.Measures.degrees;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import dev.waterjet.placement.RigidMove;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** A part that lies elsewhere is cut where it lies: each edge of the moved program is the moved edge of the program. */
class MovedProgramTest {

    private static final List<RigidMove> MOVES = List.of(
            move(0, 120, 45),
            move(90, 0, 0),
            move(-180, 3.5, -7),
            move(30, -400, 250),
            move(0.3, 812.345, 96.1),
            move(-127.7, 0, 60));

    private static RigidMove move(double turnDegrees, double xMm, double yMm) {
        return RigidMove.of(degrees(turnDegrees), Point.millimetres(xMm, yMm));
    }

    /** A bar stands for the end of a line. */
    private static String lines(String text) {
        return text.replace('|', '\n');
    }

    static Stream<String> programs() {
        return Stream.of(
                // absolute, words left out where they do not change, a full circle and a semicircle by its radius
                "G21 G90|G0 X10 (waterjet: name ring)|M3|G41 D1 G1 X20 F200|G3 I-20 J0|G40 G1 X10|M5|G0 X40 Y-20"
                        + " Z5|M3|G4 P1200|G1 Y20|G3 X20 R10|G2 X40 Y20 R-15|G1 X50|M5|M30|",
                // incremental, without blanks, centre by absolute words
                "G21G91G90.1|G0X10Y10|M3|G1X5F100|Y7|G3X4Y0I17J17|G1X-9Y-7|M5|G0X30|M3|G1X3|X3|X-6Y2|Y-2|M5|M2",
                // inch with a point, a shift of the origin on the way, another unit afterwards
                "(PLATE)|G20 G90 G17 G94|G0 X1.0 Y.5|M3|G1 X2.0 F8.|G2 X3.0 Y-.5 I0. J-1.|G1 X1.0 Y.5|M5|G0 X4.|G92"
                        + " X0. Y0.|G0 X1.|M3|G1 X2. Y2. T4 (side)|G21 X76.2 Y0.|X25.4|M5|M30 (end)|",
                // sub-programs, a line before the words of the machine, a dwell in the X word
                "%|O1|N1 G21|G0 X5 Y5|M98 P7 L3|M30|O7|G91|M3|G4 X2|X9 G1 F50 Y1|G3 X2 Y2 R2|G1 X-11 Y-3|M5|G0"
                        + " X20|G90|M99|",
                // lines and arcs near the resolution of the words
                "G90|G0 X0 Y0|M3|G1 X10.001 Y0|X10.002|G3 X10.006 Y0.002 R5|X10.008 Y0.009 I-3 J4|G1 X10.1 Y5|X0"
                        + " Y0.3|Y0|M5|M30");
    }

    private static PartProgram parse(String text) {
        return PartProgram.parse(lines(text), ProgramCodes.defaults().withOpenContours());
    }

    private static Contour path(ProgramCut cut) {
        return cut.path(EdgeRequirement.defaults());
    }

    /** Every point of a cut, at equal shares of its edges. */
    private static void assertMoved(PartProgram program, PartProgram moved, RigidMove move, double toleranceM) {
        assertThat(moved.cuts()).hasSameSizeAs(program.cuts());
        EdgeCursor edge = new EdgeCursor();
        EdgeCursor other = new EdgeCursor();
        for (int i = 0; i < program.cuts().size(); i++) {
            Contour before = path(program.cuts().get(i));
            Contour after = path(moved.cuts().get(i));
            assertThat(after.size()).isEqualTo(before.size());
            for (int k = 0; k < before.size(); k++) {
                before.load(k, edge);
                after.load(k, other);
                for (double share = 0; share <= 1; share += 0.125) {
                    Point place = move.apply(Point.ofSi(edge.xAt(share), edge.yAt(share)));
                    double off = Math.hypot(other.xAt(share) - place.xSi(), other.yAt(share) - place.ySi());
                    assertThat(off).isLessThan(toleranceM);
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("programs")
    void everyEdgeLiesWhereThePartLies(String text) {
        PartProgram program = parse(text);
        for (RigidMove move : MOVES) {
            PartProgram moved = program.movedBy(move);

            assertMoved(program, moved, move, text.contains("G20") ? 8e-6 : 3e-6);
            assertThat(moved.hasUnit()).isEqualTo(program.hasUnit());
            assertThat(moved.feed(0)).isEqualTo(program.feed(0));
            assertThat(moved.spots()).isEqualTo(program.spots());
            assertMoved(program, moved.movedBy(move.inverse()), RigidMove.none(), text.contains("G20") ? 12e-6 : 5e-6);
        }
    }

    @Test
    void theTextChangesInThePlacesAlone() {
        String text = "%|O7 (PLATE; X1)|N10 G21 G90\r"
                + "|N20 G0 X10 Y0 Z5 (to start)\r"
                + "|N30 M3|G4 P500|N40 G41 D1 G1 Y20 F300 T2 ; X9|X30|Y0 M5|M30|X1 Y1 after the end";

        assertThat(parse(text).movedBy(move(90, 100, 50)).text())
                .isEqualTo(lines("%|O7 (PLATE; X1)|N10 G21 G90\r"
                        + "|N20 G0 X100 Y60 Z5 (to start)\r"
                        + "|N30 M3|G4 P500|N40 G41 D1 G1 X80 Y60 F300 T2 ; X9|X80 Y80|X100 Y80 M5|M30|X1"
                        + " Y1 after the end"));
        assertThat(parse(text).movedBy(RigidMove.none()).text()).isEqualTo(lines(text));
    }

    @Test
    void placesWithAPointKeepIt() {
        String text = "G21 G90|G0 X1. Y2.|M3|G1 X5. F90|Y4.5|X1. Y2.|M5|M30|";

        assertThat(parse(text).movedBy(move(180, 10, 10)).text())
                .isEqualTo(lines("G21 G90|G0 X9.0 Y8.0|M3|G1 X5.0 F90|Y5.5|X9.0 Y8.0|M5|M30|"));
    }

    /** Half a micrometre of rounding in the ends of a semicircle by its radius would move its middle by some 0.1 mm. */
    @Test
    void aWideArcByItsRadiusIsWrittenByItsCentre() {
        PartProgram program = parse("G90|G0 X0 Y0|M3|G3 X20 R10|G3 X0 R10|M5|M30");
        PartProgram moved = program.movedBy(move(30, 7, 11));

        assertThat(moved.text()).contains("I8.66 J5").doesNotContain("R");
        assertMoved(program, moved, move(30, 7, 11), 3e-6);
    }

    /** Rounding of thousands of increments does not add up. */
    @Test
    void incrementsDoNotDrift() {
        StringBuilder text = new StringBuilder("G21 G91|G0 X10 Y10|M3|G1");
        Random random = new Random(17);
        for (int i = 0; i < 5000; i++) {
            text.append(String.format(Locale.ROOT, " X%.3f Y%.3f%n", random.nextDouble(), random.nextDouble() - 0.5));
        }
        PartProgram program = parse(text.append("M5|M30").toString());
        RigidMove move = move(37.3, 5, 5);
        Point end = path(program.movedBy(move).cuts().get(0)).end();
        Point moved = move.apply(path(program.cuts().get(0)).end());

        assertThat(Kind.LENGTH.si(end.distance(moved))).isCloseTo(0, within(1e-6));
    }

    /** A line that ends in a carriage return and a line feed is one line. */
    @Test
    void linesAreCountedAsTheyAreRead() {
        PartProgram program = PartProgram.parse(
                "%\r\nG21 G90\r\n(plate)\r\nG92 X5 Y0\r\nG0 X1 Y1\r\nM3\r\nG1 X5\r\nY5\r\nX1 Y1\r\nM5\r\nM30\r\n");

        assertThatThrownBy(() -> program.movedBy(move(10, 1, 2)))
                .isInstanceOfSatisfying(
                        TextException.class,
                        refused -> assertThat(refused.line()).isEqualTo(4));
    }

    @ParameterizedTest
    @CsvSource({
        "G92 X5 Y0, 'line 2, column 8: origin-at-head'",
        "G92 X0 Y0, ''",
        "G92 Y-3, 'line 2, column 5: origin-at-head'"
    })
    void anOriginAtAnUnknownPlaceOfTheHeadIsRefused(String shift, String code) {
        PartProgram program = parse("G21 G90|" + shift + "|G0 X1 Y1|M3|G1 X5|Y5|X1 Y1|M5|M30|");

        if (code.isEmpty()) {
            assertMoved(program, program.movedBy(MOVES.get(3)), MOVES.get(3), 2e-6);
        } else {
            assertThat(Refusals.of(() -> program.movedBy(MOVES.get(3)))).isEqualTo(code);
        }
    }

    /**
     * Lines and arcs between random places, some a few steps of the words apart, in any unit and form. An arc of less than 10
     * micrometres becomes a line, which may differ by half of that.
     */
    @ParameterizedTest
    @CsvSource({"G21 G90, 1", "G21 G91, 1", "G20 G90 G90.1, 25.4", "G20 G91, 25.4", "G71 G90 G90.1, 1"})
    void randomProgramsAreCutWhereThePartLies(String start, double unitMm) {
        Random random = new Random(28);
        for (int i = 0; i < 100; i++) {
            PartProgram program = parse(randomProgram(random, start, unitMm));
            RigidMove move =
                    move(360 * random.nextDouble(), 900 * random.nextDouble() - 450, 900 * random.nextDouble() - 450);

            assertMoved(program, program.movedBy(move), move, unitMm > 1 ? 10e-6 : 6e-6);
        }
    }

    private static String randomProgram(Random random, String start, double unitMm) {
        boolean isIncremental = start.contains("G91");
        StringBuilder text = new StringBuilder(start + "|G0 X1 Y1|M3");
        int x = 1000;
        int y = 1000;
        for (int k = 0; k < 8; k++) {
            boolean isNear = random.nextInt(4) == 0;
            int toX = isNear ? x + random.nextInt(9) - 4 : random.nextInt((int) (200_000 / unitMm));
            int toY = isNear ? y + random.nextInt(9) + 1 : random.nextInt((int) (200_000 / unitMm));
            double chord = Math.hypot(toX - x, toY - y);
            double height = chord * (0.1 + random.nextDouble()) * (random.nextBoolean() ? 1 : -1);
            double centreX = (x + toX) / 2.0 - height * (toY - y) / chord;
            double centreY = (y + toY) / 2.0 + height * (toX - x) / chord;
            boolean isAbsolute = start.contains("G90.1");
            String centre = String.format(
                    Locale.ROOT,
                    " I%.6f J%.6f",
                    (isAbsolute ? centreX : centreX - x) / 1000,
                    (isAbsolute ? centreY : centreY - y) / 1000);
            String radius = String.format(Locale.ROOT, " R%.6f", Math.hypot(chord / 2, height) / 1000);
            int form = random.nextInt(3);
            String motion = form == 0 ? "G1" : random.nextBoolean() ? "G2" : "G3";
            text.append(String.format(
                    Locale.ROOT,
                    "|%s X%.3f Y%.3f%s",
                    motion,
                    (isIncremental ? toX - x : toX) / 1000.0,
                    (isIncremental ? toY - y : toY) / 1000.0,
                    form == 0 ? "" : form == 1 ? centre : radius));
            x = toX;
            y = toY;
        }
        return text.append("|M5|M30").toString();
    }
}
