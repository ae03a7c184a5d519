package dev.waterjet.material;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.ValueContract;
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
}
