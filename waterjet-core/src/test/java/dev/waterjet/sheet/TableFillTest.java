package dev.waterjet.sheet;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

class TableFillTest {

    private static SheetRoom room(double sheetMm, double partMm, double borderMm, double gapMm) {
        return SheetRoom.sheet(millimetres(sheetMm), millimetres(sheetMm))
                .withBorder(millimetres(borderMm))
                .withGap(millimetres(gapMm))
                .parts(millimetres(partMm), millimetres(partMm));
    }

    @Test
    void staggeredRowsHoldMoreSmallRoundParts() {
        int square = TableFill.square(room(500, 10, 0, 0)).parts();
        int staggered = TableFill.staggered(room(500, 10, 0, 0)).parts();

        assertThat(square).isEqualTo(2500);
        // 57 rows (1 + 490 / 8.660), 29 of 50 and 28 of 49
        assertThat(staggered).isEqualTo(29 * 50 + 28 * 49);
    }

    @Test
    void bordersAndGapsTakeTheirRoom() {
        assertThat(TableFill.square(room(500, 9, 0, 1)).parts()).isEqualTo(2500);
        assertThat(TableFill.square(room(500, 9, 10, 1)).parts()).isEqualTo(48 * 48);
        assertThat(TableFill.square(room(10, 10, 0, 5)).parts()).isEqualTo(1);
    }

    @Property(tries = 200, seed = "20261125")
    void partsKeepTheirGapAndStayWithinTheBorder(
            @ForAll @DoubleRange(min = 60, max = 300) double sheet,
            @ForAll @DoubleRange(min = 8, max = 40) double part,
            @ForAll @DoubleRange(min = 0, max = 9) double border,
            @ForAll @DoubleRange(min = 0, max = 6) double gap,
            @ForAll boolean isStaggered) {
        SheetRoom room = room(sheet, part, border, gap);
        TableFill fill = isStaggered ? TableFill.staggered(room) : TableFill.square(room);
        double[] x = fill.x().toSi();
        double[] y = fill.y().toSi();

        assertThat(fill.parts()).isEqualTo(x.length).isEqualTo(y.length);
        assertThat(fill.coveredShare()).isBetween(0.0, 1.0);
        double from = (border + part / 2) / 1000 - 1e-9;
        for (int i = 0; i < x.length; i++) {
            assertThat(x[i]).isBetween(from, sheet / 1000 - from);
            assertThat(y[i]).isBetween(from, sheet / 1000 - from);
            for (int j = 0; j < i; j++) {
                double apart = isStaggered
                        ? Math.hypot(x[i] - x[j], y[i] - y[j])
                        : Math.max(Math.abs(x[i] - x[j]), Math.abs(y[i] - y[j]));
                assertThat(apart).isGreaterThanOrEqualTo((part + gap) / 1000 - 1e-9);
            }
        }
    }

    @Test
    void whatDoesNotFitIsRefused() {
        assertThatThrownBy(() -> room(100, 90, 10, 0))
                .hasMessage("width of the part is 90 mm; it must be at most 80 mm"
                        + " (what the sheet leaves within its borders)");
        assertThatThrownBy(() -> room(1e6, 0.01, 0, 0)).hasMessageContaining("number of cells on the sheet");
        assertThatThrownBy(() -> TableFill.staggered(
                        SheetRoom.sheet(millimetres(100), millimetres(100)).parts(millimetres(10), millimetres(20))))
                .hasMessageContaining("others go on a square grid");
        assertThat(TableFill.square(room(500, 10, 0, 0)).coveredShare()).isCloseTo(1, within(1e-12));
    }
}
