package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.litresPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.examples.svg.SvgReader;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.plan.PartPlanner;
import dev.waterjet.plan.Setup;
import dev.waterjet.program.ProgramCodes;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Programs of drawings. */
class PlanInputTest {

    private static final PartPlanner PLANNER = PartPlanner.of(Setup.of(
            CuttingHead.of(Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(76))),
            PumpSetting.of(megapascals(380), litresPerMinute(3.5)),
            MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(0.5))));
    private static final Workpiece PLATE = Workpiece.of(Materials.standard().get("stainless-304"), millimetres(6));

    private static Drawing drawing(String body) {
        return SvgReader.read(
                "<svg width='200mm' height='100mm' viewBox='0 0 200 100'>" + body + "</svg>",
                DrawingSettings.defaults().withChordTolerance(micrometres(5)));
    }

    private static PlanInput.Read read(Drawing drawing) {
        ProgramCodes codes = ProgramCodes.defaults().withDecimals(5);
        return PlanInput.Read.of("Dome shutter, plate 4 (left)", drawing, PLANNER, PLATE, codes);
    }

    @Test
    void aDrawingIsReadBackAsTheSameContours() {
        Drawing drawing = drawing("<path id='rim' d='M10 10 h80 v40 c-20 20 -60 20 -80 0 z'/>"
                + "<circle id='bore' cx='40' cy='35' r='12' data-quality='fine'/>");
        List<ProgramCut> cuts = read(drawing).program().cuts();

        assertThat(cuts).extracting(ProgramCut::name).containsExactly("bore", "rim");
        assertThat(cuts.get(0).quality()).contains(CutQuality.FINE);
        for (int i = 0; i < 2; i++) {
            Contour drawn = drawing.contours().get(1 - i);
            Contour loop = cuts.get(i).loop(EdgeRequirement.defaults()).orElseThrow();
            assertThat(Kind.LENGTH.si(loop.length())).isCloseTo(Kind.LENGTH.si(drawn.length()), within(1e-5));
            assertThat(Kind.AREA.si(loop.signedArea())).isCloseTo(Kind.AREA.si(drawn.signedArea()), within(1e-6));
            assertThat(cuts.get(i).leadIn()).isGreaterThan(1);
        }
    }

    @Test
    void theJetRunsInTheScrap() {
        Drawing drawing = drawing("<rect width='100' height='80'/><circle cx='40' cy='35' r='12'/>");
        List<ProgramCut> cuts = read(drawing).program().cuts();
        Contour hole = cuts.get(0).loop(EdgeRequirement.defaults()).orElseThrow();
        Contour outline = cuts.get(1).loop(EdgeRequirement.defaults()).orElseThrow();

        assertThat(cuts.get(0).jetSide()).contains(hole.enclosedSide());
        assertThat(hole.isAround(cuts.get(0).start())).isTrue();
        assertThat(cuts.get(1).jetSide().map(Side::opposite)).contains(outline.enclosedSide());
        assertThat(outline.isAround(cuts.get(1).start())).isFalse();
    }

    @Test
    void openContoursAreRefusedByNameAndPinholesLeftOutWithAFinding() {
        assertThatThrownBy(() -> read(drawing("<path id='scratch' d='M0 0h9'/>")))
                .isInstanceOfSatisfying(TextException.class, refused -> {
                    assertThat(refused.code()).isEqualTo("open-contour");
                    assertThat(refused.parameters().get("entity")).asString().contains("scratch");
                });
        PlanInput.Read read =
                read(drawing("<rect width='100' height='80'/><circle id='pinhole' cx='40' cy='35' r='0.2'/>"));

        assertThat(read.program().cuts()).hasSize(1);
        assertThat(read.findings())
                .filteredOn(finding -> !finding.isSatisfied())
                .anySatisfy(finding -> {
                    assertThat(finding.code()).isEqualTo("jet-does-not-fit");
                    assertThat(finding.message().parameters().get("contour"))
                            .asString()
                            .contains("pinhole");
                });
    }
}
