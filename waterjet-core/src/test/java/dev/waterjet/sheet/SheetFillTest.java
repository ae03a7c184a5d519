package dev.waterjet.sheet;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class SheetFillTest {

    private static SheetFill.Sheet sheet(double widthMm, double heightMm) {
        return SheetFill.sheet(millimetres(widthMm), millimetres(heightMm));
    }

    private static SheetFill square(double sheetMm, double partMm, double borderMm, double gapMm) {
        return sheet(sheetMm, sheetMm)
                .withBorder(millimetres(borderMm))
                .withGap(millimetres(gapMm))
                .square(millimetres(partMm), millimetres(partMm));
    }

    @Test
    void values() {
        SheetFill.Sheet sheet = sheet(1000, 500).withBorder(millimetres(10)).withGap(millimetres(5));
        ValueContract.of(() -> sheet.square(millimetres(100), millimetres(100)))
                .has("parts", SheetFill::parts, 36)
                .has("rows", SheetFill::rows, 4)
                .has("pitch", SheetFill::rowPitch, millimetres(105))
                .has("share", SheetFill::coveredShare, 36 * 0.01 / 0.5)
                .differs("grid", sheet.staggered(millimetres(100)))
                .differs("gap", sheet.withGap(millimetres(60)).square(millimetres(100), millimetres(100)))
                .differs("width", sheet.square(millimetres(60), millimetres(100)))
                .prints("36 parts in 4 rows")
                .check();
        ValueContract.of(() -> sheet(1000, 500))
                .differs("width", sheet(1001, 500))
                .differs("height", sheet(1000, 501))
                .differs("border", sheet(1000, 500).withBorder(millimetres(1)))
                .differs("gap", sheet(1000, 500).withGap(millimetres(1)))
                .check();
    }

    @Test
    void staggeredRowsHoldMoreSmallRoundParts() {
        assertThat(square(500, 10, 0, 0).parts()).isEqualTo(2500);
        // 57 rows (1 + 490 / 8.660), 29 of 50 and 28 of 49
        assertThat(sheet(500, 500).staggered(millimetres(10)).parts()).isEqualTo(29 * 50 + 28 * 49);
    }

    @Test
    void bordersAndGapsTakeTheirWidth() {
        assertThat(square(500, 9, 0, 1).parts()).isEqualTo(2500);
        assertThat(square(500, 9, 10, 1).parts()).isEqualTo(48 * 48);
        assertThat(square(10, 10, 0, 5).parts()).isEqualTo(1);
        assertThat(square(500, 10, 0, 0).coveredShare()).isCloseTo(1, within(1e-12));
    }

    /** A strip that is one and a half parts wide: rows along it hold the zigzag, rows across it one part each. */
    @Test
    void rowsRunInTheDirectionThatHoldsMore() {
        SheetFill lying = sheet(200, 19).staggered(millimetres(10));
        SheetFill standing = sheet(19, 200).staggered(millimetres(10));

        assertThat(lying.parts()).isEqualTo(standing.parts());
        assertThat(lying.direction()).isNotEqualTo(standing.direction());
        assertThat(lying.x().toSi()).containsExactly(standing.y().toSi());
        assertThat(lying.y().toSi()).containsExactly(standing.x().toSi());
    }

    @Property(tries = 200, seed = "20261127")
    void aTurnedSheetHoldsAsMany(
            @ForAll @DoubleRange(min = 60, max = 300) double width,
            @ForAll @DoubleRange(min = 60, max = 300) double height,
            @ForAll @DoubleRange(min = 8, max = 40) double part) {
        assertThat(sheet(width, height).staggered(millimetres(part)).parts())
                .isEqualTo(sheet(height, width).staggered(millimetres(part)).parts());
    }

    @Property(tries = 100, seed = "20261125")
    void partsKeepTheirGapAndStayWithinTheBorder(
            @ForAll @DoubleRange(min = 60, max = 300) double width,
            @ForAll @DoubleRange(min = 60, max = 300) double height,
            @ForAll @DoubleRange(min = 8, max = 40) double part,
            @ForAll @DoubleRange(min = 0, max = 9) double border,
            @ForAll @DoubleRange(min = 0, max = 6) double gap,
            @ForAll boolean isStaggered) {
        SheetFill.Sheet sheet =
                sheet(width, height).withBorder(millimetres(border)).withGap(millimetres(gap));
        SheetFill fill =
                isStaggered ? sheet.staggered(millimetres(part)) : sheet.square(millimetres(part), millimetres(part));
        double[] x = fill.x().toSi();
        double[] y = fill.y().toSi();

        assertThat(fill.parts()).isEqualTo(x.length).isEqualTo(y.length);
        double from = (border + part / 2) / 1000 - 1e-9;
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < x.length; i++) {
            assertThat(x[i]).isBetween(from, width / 1000 - from);
            assertThat(y[i]).isBetween(from, height / 1000 - from);
            for (int j = 0; j < i; j++) {
                double apart = isStaggered
                        ? Math.hypot(x[i] - x[j], y[i] - y[j])
                        : Math.max(Math.abs(x[i] - x[j]), Math.abs(y[i] - y[j]));
                nearest = Math.min(nearest, apart);
            }
        }
        assertThat(nearest).isGreaterThanOrEqualTo((part + gap) / 1000 - 1e-9);
    }

    /** By hand: 500 x 300 holds 3 x 3 of 140 x 90, and 5 x 2 when turned; a part of 350 x 100 fits only lying. */
    @Test
    void turnedPartsAreTakenWhereTheyHoldMore() {
        SheetFill.Sheet sheet = sheet(500, 300);

        assertThat(sheet.square(millimetres(140), millimetres(90)).parts()).isEqualTo(9);
        SheetFill turned = sheet.squareEitherWay(millimetres(140), millimetres(90));
        assertThat(turned.parts()).isEqualTo(10);
        assertThat(Kind.LENGTH.si(turned.partWidth())).isCloseTo(0.090, within(1e-12));
        assertThat(sheet.squareEitherWay(millimetres(90), millimetres(140)).parts())
                .isEqualTo(10);
        assertThat(sheet.squareEitherWay(millimetres(100), millimetres(350)).parts())
                .isEqualTo(3);
        assertThat(sheet.squareEitherWay(millimetres(350), millimetres(100)).parts())
                .isEqualTo(3);
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> sheet.squareEitherWay(millimetres(350), millimetres(310)));
    }

    /** By hand; each part is as long as a side of the sheet, so that it just fits one way or both. */
    @Test
    void aPartAsLongAsTheSheetFits() {
        assertThat(either(300, 500, 300, 100)).isEqualTo(5); // turned: 3
        assertThat(either(500, 300, 100, 300)).isEqualTo(5); // turned: 3
        assertThat(either(300, 200, 200, 300)).isEqualTo(1); // turned only
        assertThat(either(500, 600, 100, 500)).isEqualTo(6); // upright: 5
        assertThat(either(600, 500, 500, 100)).isEqualTo(6); // upright: 5
    }

    private static int either(double sheetWidth, double sheetHeight, double width, double height) {
        return sheet(sheetWidth, sheetHeight)
                .squareEitherWay(millimetres(width), millimetres(height))
                .parts();
    }

    @Test
    void partsStayUprightWhereATurnGainsNothing() {
        SheetFill fill = sheet(400, 400).squareEitherWay(millimetres(100), millimetres(200));

        assertThat(fill.parts()).isEqualTo(8);
        assertThat(Kind.LENGTH.si(fill.partWidth())).isCloseTo(0.1, within(1e-15));
    }

    /** A sheet that is 10 nm short of fifty parts holds 49; rounding in the last digits loses none. */
    @Test
    void onlyRoundingIsForgiven() {
        assertThat(square(500 - 1e-5, 10, 0, 0).parts()).isEqualTo(49 * 49);
        assertThat(square(500 - 1e-12, 10, 0, 0).parts()).isEqualTo(2500);
    }

    /** Gaps take room, so that 3158 = 1 + 5999 / 1.9 small parts in a row are within ten million on the sheet. */
    @Test
    void theLimitCountsPartsWithTheirGaps() {
        assertThat(square(6000, 1, 0, 0.9).parts()).isEqualTo(3158 * 3158);
    }

    @Test
    void discsCoverTheirAreaAndTheGridIsNamed() {
        SheetFill round = sheet(1000, 500).staggered(millimetres(100));

        assertThat(round.coveredShare()).isCloseTo(round.parts() * Math.PI * 0.0025 / 0.5, within(1e-12));
        assertThat(round.describe()).containsEntry("grid", "staggered");
        assertThat(square(500, 10, 0, 0).describe()).containsEntry("grid", "square");
    }

    @Test
    void whatDoesNotFitIsRefused() {
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> square(100, 90, 10, 0))
                .satisfies(e -> {
                    assertThat(e.quantity()).isEqualTo("width of the part");
                    assertThat((double) java.util.Objects.requireNonNull(
                                    e.parameters().get("limit_m")))
                            .isCloseTo(0.08, within(1e-12));
                });
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> square(1e6, 0.01, 0, 0))
                .satisfies(e -> assertThat(e.quantity()).isEqualTo("number of cells on the sheet"));
        assertThatExceptionOfType(DomainException.class).isThrownBy(() -> sheet(0, 1));
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> sheet(1, 1).withGap(millimetres(-1)));
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> sheet(1, 1).withBorder(millimetres(-1)));
    }
}
