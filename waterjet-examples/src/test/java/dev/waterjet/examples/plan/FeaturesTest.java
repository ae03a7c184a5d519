package dev.waterjet.examples.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FeaturesTest {

    private static Contour loop(String program) {
        return PartProgram.parse(program)
                .cuts()
                .get(0)
                .loop(EdgeRequirement.defaults())
                .orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 1.0, 2.4, 7})
    void findsTheWidthOfASlot(double widthMm) {
        Contour slot = loop("M3\nG1 X30\nY" + widthMm + "\nX0\nY0\nM5");
        assertThat(SlotWidth.narrowest(slot, true, 0.001).orElseThrow() * 1000)
                .isCloseTo(widthMm, within(0.01 * widthMm));
    }

    @Test
    void findsTheNotchInAnOutline() {
        // a plate of 60 by 40 mm with a notch 1.5 mm wide and 20 mm deep
        Contour plate = loop("M3\nG1 Y40\nX30\nY20\nX31.5\nY40\nX60\nY0\nX0\nM5");
        assertThat(SlotWidth.narrowest(plate, false, 0.001).orElseThrow()).isCloseTo(0.0015, within(2e-5));
    }

    @Test
    void aWideOpeningAndAcuteCornersAreNotNarrow() {
        assertThat(SlotWidth.narrowest(loop("M3\nG1 X80\nY60\nX0\nY0\nM5"), true, 0.001))
                .isEmpty();
        // a triangle with corners of 30 degrees: a disc misses its corners, but no passage
        assertThat(SlotWidth.narrowest(loop("M3\nG1 X100\nX50 Y28.8675\nX0 Y0\nM5"), true, 0.001))
                .isEmpty();
    }

    @Test
    void countsHollowCornersOnTheSideOfThePart() {
        Contour square = loop("M3\nG1 X10\nY10\nX0\nY0\nM5");
        assertThat(SharpCorners.count(square, Side.LEFT)).isZero();
        assertThat(SharpCorners.count(square, Side.RIGHT)).isEqualTo(4);
    }

    @Test
    void loopsWithinLoopsAreHolesUnlessTheProgramSaysTheSide() {
        List<ProgramCut> cuts = PartProgram.parse("""
                        M3
                        G1 X50
                        Y50
                        X0
                        Y0
                        M5
                        G0 X20 Y20
                        M3
                        G3 I5
                        M5
                        M3
                        G42 G3 I5
                        M5
                        """).cuts();
        assertThat(PartSides.of(cuts)).containsExactly(Side.LEFT, Side.RIGHT, Side.LEFT);
    }
}
