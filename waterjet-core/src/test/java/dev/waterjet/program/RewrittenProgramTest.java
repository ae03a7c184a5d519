package dev.waterjet.program;

import static dev.waterjet.program.ProgramWriterTest.OFF;
import static dev.waterjet.program.ProgramWriterTest.SQUARE;
import static dev.waterjet.program.ProgramWriterTest.WRITER;
import static dev.waterjet.program.ProgramWriterTest.middle;
import static dev.waterjet.program.ProgramWriterTest.on;
import static dev.waterjet.program.ProgramWriterTest.programmedS;
import static dev.waterjet.program.ProgramWriterTest.randomFeeds;
import static dev.waterjet.program.ProgramWriterTest.ring;
import static dev.waterjet.program.ProgramWriterTest.timeS;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Edge;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Programs written anew: dwells, calls unrolled, decimals, inches. */
class RewrittenProgramTest {

    @Test
    void aDwellIsAddedWhereThereIsNone() {
        String text = """
            G0 X1
            M3
            G3 I-1
            M5
            G0 X5
            M3
            G4 P10
            G1 X9
            Y9
            X5 Y0
            M5
            G0 X30
            M3 G1 X31
            G3 I-1
            M5
            """.replace("\n", "\r\n");
        PartProgram program = PartProgram.parse(text);
        List<CutFeeds> feeds = randomFeeds(program, 1, new Random(1));
        String written = WRITER.withPierceDwell(Measures.seconds(1.5)).rewrite(program, feeds);

        assertThat(written.replaceAll(" ?F[0-9.]+", "")).isEqualTo(text.replaceFirst("M3\r\n", "M3\r\nG4 P1500\r\n"));
        assertThat(PartProgram.parse(written).cuts().get(0).dwell()).isPresent();
    }

    @Test
    void callsAreUnrolledSoThatEachHasItsOwnFeeds() {
        PartProgram program = PartProgram.parse("G0 X5\nM98 P2 L2\nM30\nO2\nM3\nG91 G3 I-5\nM5\nG0 X40\nM99\n");
        List<CutFeeds> feeds = randomFeeds(program, 3, new Random(2));
        PartProgram again = PartProgram.parse(WRITER.rewrite(program, feeds));

        assertThat(again.cuts()).hasSize(2);
        assertThat(again.size()).isEqualTo(6);
        assertThat(programmedS(again)).isCloseTo(timeS(feeds), within(1.1e-3 * timeS(feeds)));
    }

    @Test
    void feedsMustFitTheCuts() {
        PartProgram program = PartProgram.parse(SQUARE);
        CutFeeds tooShort = CutFeeds.ofSi(new double[] {0.1}, new double[] {0.01});

        assertThat(Refusals.codeOf(() -> WRITER.rewrite(program, List.of(tooShort))))
                .isEqualTo("feeds-of-other-cut");
        assertThat(Refusals.codeOf(() -> WRITER.rewrite(program, List.of()))).isEqualTo("must-be-at-least");
        assertThat(Refusals.codeOf(() -> CutFeeds.ofSi(new double[] {0.2, 0.1}, new double[] {1, 1})))
                .isEqualTo("must-be-above");
        assertThat(Refusals.codeOf(() -> CutFeeds.ofSi(new double[] {0.1}, new double[] {0})))
                .isEqualTo("must-be-above");
    }

    @ParameterizedTest
    @CsvSource({
        "3, false, false",
        "4, true, false",
        "6, false, false",
        "9, true, false",
        "3, false, true",
        "6, true, true"
    })
    void whatIsWrittenIsReadBackWithinTheRounding(int decimals, boolean inches, boolean byRadius) {
        ProgramCodes codes = ProgramCodes.defaults().withDecimals(decimals).withRadiusArcs(byRadius);
        Random random = new Random(7);
        for (int n = 0; n < 40; n++) {
            Contour part = blob(random);
            List<ProgramMove> moves = new ArrayList<>(List.of(new ProgramMove.Rapid(part.start()), on(1)));
            for (int i = 0; i < part.size(); i++) {
                Edge edge = part.edge(i);
                moves.add(
                        edge.isArc()
                                ? new ProgramMove.Arc(
                                        edge.end(),
                                        edge.centre().orElseThrow(),
                                        edge.turn().orElseThrow(),
                                        Measures.millimetresPerMinute(200))
                                : new ProgramMove.Line(edge.end(), Measures.millimetresPerMinute(200)));
            }
            moves.add(OFF);
            String text = ProgramWriter.of(codes).withInches(inches).write("", moves);
            Contour read = PartProgram.parse(text, codes)
                    .cuts()
                    .get(0)
                    .loop(EdgeRequirement.defaults())
                    .orElseThrow();

            double rounding = Math.max(1e-9, (inches ? 0.00254 : 0.001) * Math.pow(10, -decimals));
            assertThat(read.lengthSi()).isCloseTo(part.lengthSi(), within(20 * rounding * part.size()));
            for (int i = 0; i < read.size(); i++) {
                assertThat(Kind.LENGTH.si(part.clearance(read.edge(i).start()))).isLessThan(rounding);
                assertThat(Kind.LENGTH.si(part.clearance(middle(read.edge(i))))).isLessThan(4 * rounding);
            }
        }
    }

    /** A rectangle with rounded corners and one hollow side, somewhere on the sheet. */
    private static Contour blob(Random random) {
        double x = random.nextDouble(-0.5, 0.5);
        double y = random.nextDouble(-0.5, 0.5);
        double w = random.nextDouble(0.02, 0.3);
        double h = random.nextDouble(0.02, 0.3);
        double r = random.nextDouble(0.001, 0.009);
        return Contour.fromSi(x + r, y)
                .lineToSi(x + w - r, y)
                .arcToSi(x + w, y + r, x + w - r, y + r, Side.LEFT)
                .lineToSi(x + w, y + h)
                .lineToSi(x + w / 2 + r, y + h)
                .arcToSi(x + w / 2 - r, y + h, x + w / 2, y + h, Side.RIGHT)
                .lineToSi(x, y + h)
                .lineToSi(x, y + r)
                .arcToSi(x + r, y, x + r, y + r, Side.LEFT)
                .close();
    }

    @Test
    void inchesAndMillimetresAreTheSameProgram() {
        ProgramCodes codes = ProgramCodes.defaults().withDecimals(9);
        PartProgram metric = PartProgram.parse(ProgramWriter.of(codes).write("", ring()));
        PartProgram inch =
                PartProgram.parse(ProgramWriter.of(codes).withInches(true).write("", ring()));

        assertThat(Kind.LENGTH.si(inch.cuttingLength()))
                .isCloseTo(Kind.LENGTH.si(metric.cuttingLength()), within(1e-11));
        assertThat(programmedS(inch)).isCloseTo(programmedS(metric), within(2e-3 * programmedS(metric)));
        for (int i = 0; i < metric.size(); i++) {
            Edge edge = metric.cuts().get(0).path(EdgeRequirement.defaults()).edge(i);
            Edge other = inch.cuts().get(0).path(EdgeRequirement.defaults()).edge(i);
            assertThat(Kind.LENGTH.si(edge.end().distance(other.end()))).isLessThan(1e-11);
        }
    }
}
