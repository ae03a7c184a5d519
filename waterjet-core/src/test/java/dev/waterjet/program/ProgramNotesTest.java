package dev.waterjet.program;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Contour;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Notes within a cut: cut quality and tolerance of a part of its blocks. */
class ProgramNotesTest {

    private static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);

    private static final String FRAME = """
        G21 G90
        (waterjet: name frame, tolerance 0.2 mm)
        G0 X-6 Y0
        M3
        G42 D1 G1 X0 Y0
        G1 X60
        (waterjet: quality fine)
        G1 Y40
        G1 X0 (waterjet: quality coarse, tolerance 0.05 mm)
        G1 Y0
        G40 G1 Y-6
        M5
        """;

    private static ProgramCut frame() {
        return PartProgram.parse(FRAME).cuts().get(0);
    }

    private static List<CutQuality> qualities(ProgramCut cut) {
        return IntStream.range(0, cut.size())
                .mapToObj(block -> cut.requirement(block, MEDIUM).quality())
                .toList();
    }

    @Test
    void aNoteHoldsFromItsBlockOrTheNextOneToTheNextNote() {
        assertThat(qualities(frame()))
                .containsExactly(
                        CutQuality.MEDIUM,
                        CutQuality.MEDIUM,
                        CutQuality.FINE,
                        CutQuality.COARSE,
                        CutQuality.COARSE,
                        CutQuality.COARSE);
        assertThat(frame().quality()).isEmpty();
        assertThat(frame().name()).isEqualTo("frame");
    }

    @Test
    void whatANoteDoesNotStateStays() {
        List<Double> tolerances = IntStream.range(0, 6)
                .mapToObj(block -> Kind.LENGTH.si(
                        frame().requirement(block, MEDIUM).lagTolerance().orElseThrow()))
                .toList();

        assertThat(tolerances).containsExactly(2e-4, 2e-4, 2e-4, 5e-5, 5e-5, 5e-5);
    }

    @Test
    void pathAndLoopHaveTheRequirementsOfTheNotes() {
        Contour path = frame().path(MEDIUM);
        Contour loop = frame().loop(MEDIUM).orElseThrow();

        assertThat(path.requirement(0).isLead()).isTrue();
        assertThat(path.requirement(2))
                .isEqualTo(EdgeRequirement.of(CutQuality.FINE).withLagTolerance(millimetres(0.2)));
        assertThat(IntStream.range(0, 4).mapToObj(edge -> loop.requirement(edge).quality()))
                .containsExactly(CutQuality.MEDIUM, CutQuality.FINE, CutQuality.COARSE, CutQuality.COARSE);
    }

    @Test
    void notesEndWithTheirCut() {
        PartProgram two = PartProgram.parse(FRAME
                + FRAME.replaceAll("\\(.*?\\)", "")
                        .replace("G0 X-6", "G0 X94")
                        .replace("X0", "X100")
                        .replace("X60", "X160"));

        assertThat(qualities(two.cuts().get(1))).containsOnly(CutQuality.MEDIUM);
    }

    @Test
    void aNoteAfterJetOnAndBeforeTheFirstMoveIsForTheWholeCut() {
        ProgramCut cut = PartProgram.parse("M3\n(waterjet: quality fine)\nG4 P500\nG1 X9\nG1 Y9\nG1 X0 Y0\nM5\n")
                .cuts()
                .get(0);

        assertThat(qualities(cut)).containsOnly(CutQuality.FINE);
        assertThat(cut.quality()).contains(CutQuality.FINE);
    }

    @Test
    void feedsAreWrittenBesideTheNotes() {
        PartProgram program = PartProgram.parse(FRAME);
        String written = program.withFeedsSi(0.001, 0.001, 0.002, 0.002, 0.001, 0.001);

        assertThat(PartProgram.parse(written).cuts().get(0).describe()).containsEntry("notes_within", 2L);
        assertThat(qualities(PartProgram.parse(written).cuts().get(0))).isEqualTo(qualities(frame()));
        assertThat(Kind.LENGTH.si(PartProgram.parse(written).cuttingLength())).isCloseTo(0.212, within(1e-12));
    }

    @Test
    void cutsWithOtherNotesDiffer() {
        ProgramCut other = PartProgram.parse(FRAME.replace("quality fine", "quality very fine"))
                .cuts()
                .get(0);

        assertThat(other).isNotEqualTo(frame());
        assertThat(frame()).isEqualTo(frame()).hasSameHashCodeAs(frame());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "(waterjet: quality fine)|(waterjet: name rim)|7|2|note-with-jet-on",
                "G1 X0 (waterjet: quality coarse,|G1 X0 (waterjet: open,|9|8|note-with-jet-on",
                "G40 G1 Y-6|G40 G1 Y-6~(waterjet: quality fine)|12|2|note-behind-last-block",
                "quality fine|quality shiny|7|12|unknown-cut-quality"
            })
    void notesThatCannotHoldAreRefused(String text, String by, int line, int column, String code) {
        String program = FRAME.replace(text, by.replace('~', '\n'));

        assertThatThrownBy(() -> PartProgram.parse(program)).isInstanceOfSatisfying(TextException.class, refused -> {
            assertThat(refused.code()).isEqualTo(code);
            assertThat(refused.line()).isEqualTo(line);
            assertThat(refused.column()).isEqualTo(column);
        });
    }
}
