package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The closed loop within a cut, and its leads. */
class ProgramLoopTest {

    private static ProgramCut cut(String program, int index) {
        return PartProgram.parse(program).cuts().get(index);
    }

    private static double lengthMm(Contour contour) {
        return 1000 * Kind.LENGTH.si(contour.length());
    }

    @Test
    void eachCutHasItsOwnLeads() {
        String square = "X10\nY10\nX0\nY0\n";
        String program = "G0 X-2 Y0\nM3\nG1 X0\n" + square + "X-1\nY-1\nM5\nG0 X-5 Y-5\nM3\nG1 X-1\nX0 Y0\n" + square
                + "Y-3\nM5\n";

        ProgramCut first = cut(program, 0);
        assertThat(new int[] {first.leadIn(), first.leadOut(), first.size()}).containsExactly(1, 2, 7);
        ProgramCut second = cut(program, 1);
        assertThat(new int[] {second.leadIn(), second.leadOut(), second.size()}).containsExactly(2, 1, 7);
        for (ProgramCut cut : new ProgramCut[] {first, second}) {
            Contour path = cut.path(EdgeRequirement.defaults());
            assertThat(IntStream.range(0, path.size())
                            .filter(i -> path.edge(i).requirement().isLead())
                            .toArray())
                    .isEqualTo(IntStream.range(0, path.size())
                            .filter(i -> i < cut.leadIn() || i >= path.size() - cut.leadOut())
                            .toArray());
            Contour loop = cut.loop(EdgeRequirement.defaults()).orElseThrow();
            assertThat(loop.size()).isEqualTo(4);
            assertThat(lengthMm(loop)).isCloseTo(40, within(1e-9));
            assertThat(loop.start()
                            .distance(path.edge(cut.leadIn()).start())
                            .getValue()
                            .doubleValue())
                    .isZero();
        }
    }

    @ParameterizedTest
    @CsvSource({"G3, LEFT", "G2, RIGHT"})
    void aLoopMayEndWithAnArc(String word, Side turn) {
        String end = turn == Side.LEFT ? "Y2" : "Y-2";
        Contour loop = cut(
                        "G0 X1 Y0\nM3\nG1 X5\n" + end + "\nX3\n" + word + " X5 Y0 "
                                + (turn == Side.LEFT ? "I0 J-2" : "I0 J2") + "\nM5\n",
                        0)
                .loop(EdgeRequirement.defaults())
                .orElseThrow();

        // no loop by the lead-in: the arc, a quarter or three, ends where the lead-in did
        assertThat(loop.edge(loop.size() - 1).turn()).contains(turn);
        assertThat(loop.end().distance(loop.start()).getValue().doubleValue()).isZero();
    }

    @ParameterizedTest
    @CsvSource({
        "0.0004, 0, 0.0006, 0",
        "0.0006, 0, 0.0004, 0",
        "0, 0.0004, 0, 0.0006",
        "0, 0.0006, 0, 0.0004",
        "0.0004, 0.0004, 0.0006, 0.0006",
        "0.0006, 0.0006, 0.0004, 0.0004",
        "-0.0004, 0.0006, -0.0006, 0.0004",
    })
    void aMicrometreIsNoGap(String startX, String startY, String endX, String endY) {
        String program =
                String.format(Locale.ROOT, "G0 X%s Y%s\nM3\nG1 X9\nY9\nX%s Y%s\nM5\n", startX, startY, endX, endY);

        assertThat(cut(program, 0).isClosed()).isTrue();
        assertThat(cut(program, 0).leadIn()).isZero();
    }

    @ParameterizedTest
    @CsvSource({"0, 0.0015", "0.0015, 0"})
    void ofTwoPlacesThatFitTheEarlierBeginsTheLoop(String first, String second) {
        String program = "G0 X" + first + " Y0\nM3\nG1 X9\nY9\nX" + second + " Y0\nX-9\nY-9\nX0.00075 Y0\nM5\n";

        assertThat(cut(program, 0).leadIn()).isZero();
        assertThat(cut(program, 0)
                        .loop(EdgeRequirement.defaults())
                        .orElseThrow()
                        .size())
                .isEqualTo(6);
    }

    @Test
    void forthAndBackEnclosesNothing() {
        ProgramCut spur = cut("G0 X0 Y0\nM3\nG1 X5\nX0\nY5\nX5 Y5\nX0 Y0\nM5\n", 0);
        assertThat(spur.leadIn()).isZero();
        assertThat(spur.leadOut()).isZero();

        ProgramCut thenRound = cut("G0 X0 Y0\nM3\nG1 X5\nX0\nG3 I1\nM5\n", 0);
        assertThat(thenRound.leadOut()).isZero();
        assertThat(thenRound.loop(EdgeRequirement.defaults()).orElseThrow().size())
                .isEqualTo(3);
    }

    @Test
    void twoArcsEncloseAnArea() {
        ProgramCut lens = cut("G0 X0 Y0\nM3\nG2 X4 R3\nX0 R3\nM5\n", 0);

        assertThat(lens.isClosed()).isTrue();
        assertThat(lens.loop(EdgeRequirement.defaults()).orElseThrow().size()).isEqualTo(2);
        ProgramCut segment = cut("G0 X0 Y0\nM3\nG1 X4\nG2 X0 R3\nM5\n", 0);
        assertThat(segment.loop(EdgeRequirement.defaults()).orElseThrow().size())
                .isEqualTo(2);
    }

    @Test
    void aSpurInALaterCutEnclosesNothingEither() {
        String rings = "G0 X1\nM3\nG3 I-1\nI-1\nI-1\nM5\n";
        ProgramCut cut = cut(rings + "G0 X20 Y-2\nM3\nG1 Y0\nX25\nX20\nY5\nX30\nY0\nX20\nM5\n", 1);

        assertThat(cut.leadIn()).isEqualTo(1);
        assertThat(cut.leadOut()).isZero();
        assertThat(cut.loop(EdgeRequirement.defaults()).orElseThrow().size()).isEqualTo(6);
    }

    @Test
    void aCutDescribesWhatIsAskedOfIt() {
        String circle = "G0 X1\nM3\nG41 G3 I-1\nM5\n";

        assertThat(cut("(waterjet: name rim, quality fine, tolerance 0.05 mm)\n" + circle, 0)
                        .describe())
                .containsEntry("name", "rim")
                .containsEntry("tolerance_m", 5e-5)
                .containsEntry("closed", true)
                .containsEntry("blocks", 1L)
                .containsKeys("quality", "jet_side");
        assertThat(cut(circle.replace("G41 ", ""), 0).describe())
                .doesNotContainKeys("name", "quality", "tolerance_m", "jet_side");
    }
}
