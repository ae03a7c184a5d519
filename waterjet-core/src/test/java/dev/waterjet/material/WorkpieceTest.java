package dev.waterjet.material;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.DomainException;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

class WorkpieceTest {

    private static final Material TITANIUM = Materials.standard().get("titanium");
    private static final Material GRAPHITE = Materials.standard().get("graphite");

    @Test
    void isAValue() {
        ValueContract.of(() -> Workpiece.of(TITANIUM, millimetres(6)))
                .change("thickness", piece -> piece.withThickness(millimetres(9)), Workpiece::thicknessSi, 0.009)
                .differs("material", Workpiece.of(GRAPHITE, millimetres(6)))
                .tells("material", Workpiece::material, TITANIUM)
                .tells("thickness", Workpiece::thickness, millimetres(6))
                .says("6 mm", TITANIUM.name())
                .check();
    }

    @Test
    void hasAThicknessThatAJetCanCut() {
        assertThat(Workpiece.of(TITANIUM, metres(1)).thicknessSi()).isEqualTo(1);
        assertThatThrownBy(() -> Workpiece.of(TITANIUM, millimetres(0)))
                .isInstanceOf(DomainException.class)
                .hasMessage("thickness is 0 mm; it must be above 0 mm");
        assertThatThrownBy(() -> Workpiece.of(TITANIUM, metres(1.001)))
                .isInstanceOf(DomainException.class)
                .hasMessage("thickness is 1001 mm; it must be at most 1000 mm (no jet cuts thicker)");
    }
}
