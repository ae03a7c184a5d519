package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Edge;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ProgramWriterTest {

    static final ProgramWriter WRITER = ProgramWriter.of(ProgramCodes.defaults());
    static final String SQUARE =
            "%\nO7 (SPACER)\nG21 G90 G17 (safe start)\nN10 G0 X0 Y-5\nN20 M3\nN30 G41 D1 G1 X0 Y0 F100\nN40 G1 Y40"
                    + " (left side) F333\nN50 X40 T1\nN60 Y0\nN70 X0 M5\nM30\n%\n";

    private static ProgramMove line(double xMm, double yMm) {
        return new ProgramMove.Line(Point.millimetres(xMm, yMm), Measures.millimetresPerMinute(300));
    }

    private static ProgramMove.Arc arc(double xMm, double yMm, double atX, double atY, Side turn) {
        return new ProgramMove.Arc(
                Point.millimetres(xMm, yMm),
                Point.millimetres(atX, atY),
                turn,
                Measures.millimetresPerMinute(123.4567));
    }

    private static ProgramMove rapid(double xMm, double yMm) {
        return new ProgramMove.Rapid(Point.millimetres(xMm, yMm));
    }

    static ProgramMove on(double seconds) {
        return new ProgramMove.JetOn(Kind.TIME.of(seconds));
    }

    static final ProgramMove OFF = new ProgramMove.JetOff();

    static List<ProgramMove> ring() {
        return List.of(
                new ProgramMove.Comment("waterjet: name bore (fine); 1"),
                rapid(15, 0),
                on(1.2004),
                new ProgramMove.OffsetOn(Side.LEFT),
                line(20, 0),
                arc(20, 0, 0, 0, Side.LEFT),
                new ProgramMove.OffsetOff(),
                line(15, 1),
                OFF);
    }

    /** Feeds of random stretches along each cut. */
    static List<CutFeeds> randomFeeds(PartProgram program, int count, Random random) {
        List<CutFeeds> feeds = new ArrayList<>();
        for (ProgramCut cut : program.cuts()) {
            double length = Kind.LENGTH.si(cut.length());
            double[] ends = random.doubles(count, 0, length).sorted().toArray();
            ends[count - 1] = length;
            double[] speeds = random.doubles(count, 0.0005, 0.02).toArray();
            feeds.add(CutFeeds.ofSi(ends, speeds));
        }
        return feeds;
    }

    static double timeS(List<CutFeeds> feeds) {
        double sum = 0;
        for (CutFeeds cut : feeds) {
            for (int i = 0; i < cut.feeds().size(); i++) {
                double from = i == 0 ? 0 : cut.ends().si(i - 1);
                sum += (cut.ends().si(i) - from) / cut.feeds().si(i);
            }
        }
        return sum;
    }

    static double programmedS(PartProgram program) {
        return Kind.TIME.si(program.programmedTime().orElseThrow());
    }

    @Test
    void aNewProgramIsWrittenInTheWordsOfTheDialect() {
        assertThat(WRITER.write("RING", ring())).isEqualTo("""
            (RING)
            G21 G90
            (waterjet: name bore  fine   1)
            G0 X15 Y0
            M3
            G4 P1201
            G41 D1 G1 X20 Y0 F300
            G3 X20 Y0 I-20 J0 F123.4
            G40 G1 X15 Y1 F300
            M5
            M30
            """);
        ProgramCodes other = ProgramCodes.defaults()
                .withJet(62, 63)
                .withDwell(DwellForm.X_SECONDS)
                .withCarriageReturns(true)
                .withRadiusArcs(true)
                .withDecimals(2)
                .withStartLines(List.of("G17 G40", "G94"));
        assertThat(ProgramWriter.of(other)
                        .withInches(true)
                        .write(
                                "",
                                List.of(
                                        ring().get(1),
                                        ring().get(2),
                                        ring().get(3),
                                        ring().get(4),
                                        ring().get(5),
                                        OFF)))
                .isEqualTo(String.join(
                        "\r\n",
                        "G20 G90",
                        "G17 G40",
                        "G94",
                        "G0 X0.591 Y0",
                        "M62",
                        "G4 X1.201",
                        "G41 D1 G1 X0.787 Y0 F11.81",
                        "G3 X-0.394 Y0.682 R0.787 F4.86",
                        "G3 X-0.394 Y-0.682 R0.787 F4.86",
                        "G3 X0.787 Y0 R0.787 F4.86",
                        "M63",
                        "M30",
                        ""));
    }

    @Test
    void aMachineThatWaitsByItselfGetsARemark() {
        ProgramCodes codes = ProgramCodes.defaults().withDwell(DwellForm.MACHINE);

        assertThat(ProgramWriter.of(codes).write("", ring()))
                .contains("M3\n(the machine waits 1.201 s to pierce)\nG41")
                .doesNotContain("G4 ");
        assertThat(WRITER.write("", List.of(rapid(1, 0), on(0), arc(1, 0, 0, 0, Side.LEFT), OFF)))
                .contains("M3\nG3");
    }

    @Test
    void whatIsWrittenHasNoFindings() {
        for (DwellForm form : DwellForm.values()) {
            ProgramCodes codes = ProgramCodes.defaults().withDwell(form);
            String text = ProgramWriter.of(codes).write("RING", ring());
            assertThat(ProgramChecks.defaults()
                            .withPierceTime(Kind.TIME.of(1.2))
                            .check(text, codes))
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0, move-with-jet-on",
        "1, move-with-jet-off",
        "2, offset-change-on-arc",
        "3, arc-ends-differ",
        "4, moves-leave-jet-on",
        "5, offset-on-rapid",
        "6, move-with-jet-off"
    })
    void movesThatCannotBeWrittenAreRefused(int index, String code) {
        ProgramMove offset = new ProgramMove.OffsetOn(Side.RIGHT);
        List<List<ProgramMove>> wrong = List.of(
                List.of(on(0), rapid(5, 5)),
                List.of(line(5, 5)),
                List.of(rapid(1, 0), on(0), offset, arc(1, 0, 0, 0, Side.LEFT)),
                List.of(rapid(1, 0), on(0), arc(5, 0, 0, 0, Side.LEFT)),
                List.of(on(0), line(1, 1)),
                List.of(offset, rapid(1, 1)),
                List.of(OFF));

        assertThat(Refusals.codeOf(() -> WRITER.write("", wrong.get(index)))).isEqualTo(code);
    }

    @Test
    void anArcTooShortForItsDecimalsIsALine() {
        String text = WRITER.write(
                "",
                List.of(rapid(10, 0), on(0), arc(9.9999999, 0.0014, 0, 0, Side.LEFT), line(0, 0), line(10, 0), OFF));

        assertThat(text).contains("G1 X10 Y0.001 F").doesNotContain("G3");
    }

    @Test
    void anArcWhoseCentreIsBeyondTheLimitOfWordsIsWrittenAsChords() {
        String text = WRITER.write(
                "",
                List.of(
                        rapid(0, 0),
                        on(0),
                        arc(400, 0, 200, -1.362e6, Side.RIGHT),
                        line(400, -100),
                        line(0, -100),
                        line(0, 0),
                        OFF));

        // the arc rises by s^2/(2 r) = 0.0147 mm over 200 mm
        assertThat(text).contains("X200 Y0.015 F").doesNotContain("G2 X");
        assertThat(PartProgram.parse(text).cuts().get(0).isClosed()).isTrue();
    }

    @Test
    void feedsOfEachBlockStayInPlaceWhereNothingIsSplit() {
        PartProgram program = PartProgram.parse(SQUARE);
        CutFeeds feeds = CutFeeds.ofSi(new double[] {0.165}, new double[] {0.005});

        assertThat(WRITER.rewrite(program, List.of(feeds)))
                .isEqualTo(SQUARE.replace("F100", "F300")
                        .replace("F333", "F300")
                        .replace("X40 T1", "X40 T1 F300")
                        .replace("N60 Y0", "N60 Y0 F300")
                        .replace("X0 M5", "X0 M5 F300"));
    }

    @Test
    void blocksAreSplitWhereTheFeedChanges() {
        PartProgram program = PartProgram.parse(SQUARE);
        CutFeeds feeds = CutFeeds.ofSi(
                new double[] {0.002, 0.015, 0.0452, 0.0852, 0.135, 0.165},
                new double[] {0.005, 0.004, 0.002, 0.001, 0.005, 0.002});

        assertThat(WRITER.rewrite(program, List.of(feeds))).isEqualTo("""
            %
            O7 (SPACER)
            G21 G90 G17 (safe start)
            N10 G0 X0 Y-5
            N20 M3
            N30 G41 D1 G1 X0 Y0 F260.8
            N40 G1 Y10 (left side) F240
            G1 Y40 F120
            N50 X0.2 T1 F120
            G1 X40 F60
            N60 Y39.8 F60
            G1 Y0 F300
            N70 X30 F300
            G1 X0 F120 M5
            M30
            %
            """.replace(
                        "F260.8", "F" + feed(5, 2 / 300.0 + 3 / 240.0)));
    }

    private static String feed(double lengthMm, double minutes) {
        return ProgramNumbers.feed(lengthMm / minutes / 60000, 0.001);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "G21 G90\nG0 X20 Y0\nM3\nG1 X25 Y0\nG3 X25 Y0 I-25 J0\nG1 X20\nM5\n",
                "G21 G90\nG0 X20 Y0\nM3\nG1 X25 Y0\nG2 I-25\nG1 X20\nM5\n",
                "G21 G91 G0 X20 Y0\nM3\nG1 X5\nG3 I-25\nG1 X-5\nM5\n",
                "G20 G90 G0 X2 Y0\nM3\nG1 X2.5 Y0\nG3 X-2.5 I-2.5\nX2.5 I2.5\nG1 X2\nM5\n",
                "G20G91G0X2Y0\nM3\nG1X.5\nG3X-5I-2.5\nX5I2.5\nG1X-.5\nM5\n",
                "G90.1 G0 X20 Y0\nM3\nG1 X25 Y0\nG3 X25 Y0 I0 J0\nG1 X20\nM5\n",
                "G0 X20 Y0\nG92 X1 Y7\nM3\nG1 X6 Y7\nG2 X-44 Y7 R25\nG2 X6 R25\nG1 X1\nM5\n",
                "G0 X20 Y0\nM3\nG1 X25 Y0\nG3 X0 Y-25 R-25\nG3 X25 Y0 R25\nG1 X20\nM5\n",
                "G0 X0 Y0\nM3\nG1 X0 Y33.3333\nG1 X77.7777\nX10 Y-20\nX0 Y0\nM5\n",
            })
    void aSplitProgramHasTheSameWayAndTheTimeOfThePlan(String text) {
        PartProgram program = PartProgram.parse(text);
        Random random = new Random(5);
        for (int count : new int[] {1, 2, 3, 7, 25}) {
            List<CutFeeds> feeds = randomFeeds(program, count, random);
            String written = WRITER.rewrite(program, feeds);
            PartProgram again = PartProgram.parse(written);

            assertThat(programmedS(again)).as(written).isCloseTo(timeS(feeds), within(1.1e-3 * timeS(feeds)));
            assertThat(Kind.LENGTH.si(again.cuttingLength()))
                    .isCloseTo(Kind.LENGTH.si(program.cuttingLength()), within(1e-6 * (5 + again.size())));
            Contour before =
                    program.cuts().get(0).loop(EdgeRequirement.defaults()).orElseThrow();
            Contour after = again.cuts().get(0).loop(EdgeRequirement.defaults()).orElseThrow();
            assertThat(after.signedArea().getValue().doubleValue())
                    .isCloseTo(before.signedArea().getValue().doubleValue(), within(1e-6 * before.lengthSi()));
            for (int i = 0; i < after.size(); i++) {
                assertThat(Kind.LENGTH.si(before.clearance(after.edge(i).start())))
                        .isLessThan(1.5e-6);
                assertThat(Kind.LENGTH.si(before.clearance(middle(after.edge(i)))))
                        .isLessThan(3e-6);
            }
            assertThat(Kind.LENGTH.si(again.cuts()
                            .get(0)
                            .start()
                            .distance(program.cuts().get(0).start())))
                    .isZero();
            assertThat(ProgramChecks.defaults().check(again)).isEqualTo(Collections.emptyList());
        }
    }

    static Point middle(Edge edge) {
        return edge.pointAt(edge.length().multiply(0.5));
    }

    @Test
    void aBlockThatMovesZOrChangesTheOffsetIsNotSplit() {
        String text = "G0 X0 Y-9\nM3\nG41 D1 G1 Y0\nX9\nG1 Y9\nX0\nY0\nG40 Y-9\nM5\n";
        PartProgram program = PartProgram.parse(text);
        List<CutFeeds> feeds = randomFeeds(program, 40, new Random(3));
        String written = WRITER.withMinimumPiece(Measures.millimetres(0.01)).rewrite(program, feeds);

        assertThat(written.lines().filter(line -> line.contains("G4")).count()).isEqualTo(2);
        assertThat(written).containsPattern("G41 D1 G1 Y0 F[0-9.]+\nX").containsPattern("G40 Y-9 F[0-9.]+\nM5");
        assertThat(programmedS(PartProgram.parse(written))).isCloseTo(timeS(feeds), within(1.1e-3 * timeS(feeds)));
    }
}
