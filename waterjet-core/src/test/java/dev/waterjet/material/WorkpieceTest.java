package dev.waterjet.material;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.measure.Kind;
import java.util.List;
import org.junit.jupiter.api.Test;

class WorkpieceTest {

    private static final Material TITANIUM = Materials.standard().get("titanium");
    private static final Material GRAPHITE = Materials.standard().get("graphite");

    @Test
    void isAValue() {
        ValueContract.of(() -> Workpiece.of(TITANIUM, millimetres(6)))
                .change(
                        "thickness",
                        workpiece -> workpiece.withThickness(millimetres(9)),
                        Workpiece::thicknessSi,
                        0.009)
                .differs("material", Workpiece.of(GRAPHITE, millimetres(6)))
                .has("material", Workpiece::material, TITANIUM)
                .has("thickness", Workpiece::thickness, millimetres(6))
                .prints("6 mm", TITANIUM.name())
                .check();
    }

    @Test
    void thicknessIsAbove0AndAtMost1Metre() {
        assertThat(Workpiece.of(TITANIUM, metres(1)).thicknessSi()).isEqualTo(1);
        assertRefused(() -> Workpiece.of(TITANIUM, millimetres(0)), "must-be-above", "thickness", 0);
        assertRefused(() -> Workpiece.of(TITANIUM, metres(1.001)), "must-be-at-most", "thickness", 1);
    }

    @Test
    void aStackIsAValue() {
        Workpiece sheet = Workpiece.of(TITANIUM, millimetres(2));
        ValueContract.of(() -> Workpiece.sheets(sheet, 3))
                .has("material", Workpiece::material, TITANIUM)
                .has("layers", Workpiece::layers, List.of(sheet, sheet, sheet))
                .has("several", Workpiece::hasSeveralMaterials, false)
                .differs("count", Workpiece.sheets(sheet, 4))
                .differs("plate", Workpiece.of(TITANIUM, millimetres(6)))
                .prints("6 mm", "3 sheets")
                .check();
        assertThat(Workpiece.sheets(sheet, 1)).isEqualTo(sheet);
        assertThat(Workpiece.sheets(sheet, 3).thicknessSi()).isEqualTo(0.006);
    }

    @Test
    void layersAreAValue() {
        ValueContract.of(WorkpieceTest::clad)
                .has("several", Workpiece::hasSeveralMaterials, true)
                .differs(
                        "order",
                        Workpiece.layers(
                                List.of(clad().layers().get(1), clad().layers().get(0))))
                .change(
                        "thickness",
                        clad -> clad.withThickness(millimetres(18)),
                        clad -> Math.round(1e6 * clad.thicknessSi()),
                        18_000L)
                .prints("9 mm", "2 layers")
                .check();
    }

    private static Workpiece clad() {
        return Workpiece.layers(
                List.of(Workpiece.of(TITANIUM, millimetres(6)), Workpiece.of(GRAPHITE, millimetres(3))));
    }

    /** H/N = sum h_i/N_i, mass by thickness, and the most delicate class. */
    @Test
    void theMaterialOfLayersIsTheirCommonOne() {
        Material common = clad().material();

        assertThat(9 / common.machinabilitySi()).isCloseTo(6 / 115.0 + 3 / 893.0, within(1e-12));
        assertThat(Kind.DENSITY.si(common.density().orElseThrow())).isCloseTo((2 * 4510 + 1780) / 3.0, within(1e-9));
        assertThat(common.materialClass()).isEqualTo(MaterialClass.BRITTLE);
        assertThat(common.evidence().grade()).isEqualTo(EvidenceGrade.DERIVED);
    }

    @Test
    void layersKeepTheirProportions() {
        Workpiece thicker = clad().withThickness(millimetres(18));

        assertThat(thicker.layers().get(0).thicknessSi()).isCloseTo(0.012, within(1e-15));
        assertThat(thicker.layers().get(1).thicknessSi()).isCloseTo(0.006, within(1e-15));
    }

    @Test
    void impossibleLayersAreRefused() {
        Workpiece sheet = Workpiece.of(TITANIUM, millimetres(2));

        assertRefused(() -> Workpiece.sheets(sheet, 0), "must-be-at-least", "number of layers", 1);
        assertRefused(() -> Workpiece.sheets(sheet, 1001), "must-be-at-most", "number of layers", 1000);
        assertRefused(() -> Workpiece.sheets(sheet, 501), "must-be-at-most", "thickness", 1);
        assertRefused(() -> Workpiece.layers(List.of()), "must-be-at-least", "number of layers", 1);
    }
}
