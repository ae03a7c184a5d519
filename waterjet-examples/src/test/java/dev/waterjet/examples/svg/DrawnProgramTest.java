package dev.waterjet.examples.svg;

import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Contour;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Side;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.toolpath.CuttingRules;
import java.util.List;
import org.junit.jupiter.api.Test;

class DrawnProgramTest {

    private static final CuttingRules RULES = CuttingRules.of(millimetres(1), millimetres(6));

    private static Drawing drawing(String body) {
        return SvgReader.read(
                "<svg width='200mm' height='100mm' viewBox='0 0 200 100'>" + body + "</svg>",
                DrawingSettings.defaults().withChordTolerance(micrometres(5)));
    }

    private static String program(Drawing drawing) {
        return DrawnProgram.of("Dome shutter, plate 4 (left)", drawing, RULES, 3, 5)
                .text();
    }

    @Test
    void aDrawingIsReadBackAsTheSameContours() {
        Drawing drawing = drawing("<path id='rim' d='M10 10 h80 v40 c-20 20 -60 20 -80 0 z'/>"
                + "<circle id='bore' cx='40' cy='35' r='12' data-quality='fine'/>");
        PartProgram program = PartProgram.parse(program(drawing));
        List<ProgramCut> cuts = program.cuts();

        assertThat(cuts).extracting(ProgramCut::name).containsExactly("bore", "rim");
        assertThat(cuts.get(0).quality()).contains(CutQuality.FINE);
        for (int i = 0; i < 2; i++) {
            Contour drawn = drawing.contours().get(1 - i);
            Contour loop = cuts.get(i).loop(EdgeRequirement.defaults()).orElseThrow();
            assertThat(Kind.LENGTH.si(loop.length())).isCloseTo(Kind.LENGTH.si(drawn.length()), within(1e-7));
            assertThat(Kind.AREA.si(loop.signedArea())).isCloseTo(Kind.AREA.si(drawn.signedArea()), within(1e-9));
            assertThat(cuts.get(i).leadIn()).isEqualTo(2);
        }
    }

    @Test
    void theJetRunsInTheScrap() {
        Drawing drawing = drawing("<rect width='100' height='80'/><circle cx='40' cy='35' r='12'/>");
        List<ProgramCut> cuts = PartProgram.parse(program(drawing)).cuts();
        Contour hole = cuts.get(0).loop(EdgeRequirement.defaults()).orElseThrow();
        Contour outline = cuts.get(1).loop(EdgeRequirement.defaults()).orElseThrow();

        assertThat(cuts.get(0).jetSide()).contains(hole.enclosedSide());
        assertThat(hole.isAround(cuts.get(0).start())).isTrue();
        assertThat(cuts.get(1).jetSide().map(Side::opposite)).contains(outline.enclosedSide());
        assertThat(outline.isAround(cuts.get(1).start())).isFalse();
    }

    @Test
    void whatCannotBeCutIsRefusedByName() {
        assertThatThrownBy(() -> program(drawing("<path id='scratch' d='M0 0h9'/>")))
                .isInstanceOfSatisfying(TextException.class, refused -> {
                    assertThat(refused.code()).isEqualTo("open-contour");
                    assertThat(refused.parameters().get("entity")).asString().contains("scratch");
                });
        assertThatThrownBy(() -> program(
                        drawing("<rect width='100' height='80'/>" + "<circle id='pinhole' cx='40' cy='35' r='0.4'/>")))
                .isInstanceOf(GeometryException.class);
    }
}
