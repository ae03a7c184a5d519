package dev.waterjet.measure;

import static dev.waterjet.Refusals.codeOf;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.ValueContract;
import java.util.List;
import javax.measure.quantity.Length;
import org.junit.jupiter.api.Test;

class QuantityArrayTest {

    private static final double[] MILLIMETRES = {2, 5, 10};

    private static QuantityArray<Length> plates() {
        return QuantityArray.of(Kind.LENGTH, MILLIMETRES, Units.MILLIMETRE);
    }

    @Test
    void isAValue() {
        ValueContract.of(QuantityArrayTest::plates)
                .has("kind", QuantityArray::kind, Kind.LENGTH)
                .has("size", QuantityArray::size, 3)
                .has("first", plates -> plates.get(0), millimetres(2))
                .has("last in SI", plates -> plates.si(2), 0.01)
                .differs("a value", QuantityArray.ofSi(Kind.LENGTH, 0.002, 0.005, 0.011))
                .differs("fewer values", QuantityArray.ofSi(Kind.LENGTH, 0.002, 0.005))
                .differs("kind", QuantityArray.ofSi(Kind.TIME, 0.002, 0.005, 0.01))
                .prints("3 values of length in m")
                .check();
    }

    @Test
    void tellsItsValuesInSiAndInAUnit() {
        assertThat(plates().toSi()).containsExactly(0.002, 0.005, 0.01);
        assertThat(plates().to(Units.MILLIMETRE)).containsExactly(2, 5, 10);
        assertThat(plates().stream().sum()).isEqualTo(0.002 + 0.005 + 0.01);
        assertThat(plates().describe())
                .containsEntry("kind", "length")
                .containsEntry("values_m", List.of(0.002, 0.005, 0.01));
    }

    @Test
    void nobodyChangesItFromOutside() {
        double[] si = {1, 2};
        QuantityArray<Length> array = QuantityArray.ofSi(Kind.LENGTH, si);
        si[0] = 7;
        array.toSi()[1] = 7;

        assertThat(array.toSi()).containsExactly(1, 2);
    }

    @Test
    void evenlySpacedValuesHaveBothEnds() {
        assertThat(QuantityArray.evenly(Kind.LENGTH, metres(1), metres(3), 5).toSi())
                .containsExactly(1, 1.5, 2, 2.5, 3);
        assertThat(QuantityArray.evenly(Kind.LENGTH, metres(3), metres(1), 2).toSi())
                .containsExactly(3, 1);
        assertThat(codeOf(() -> QuantityArray.evenly(Kind.LENGTH, metres(1), metres(3), 1)))
                .isEqualTo("must-be-at-least");
    }

    @Test
    void aFunctionIsOfEachValue() {
        QuantityArray<?> areas = QuantityArray.ofSi(Kind.LENGTH, 1, 2, 3).map(Kind.AREA, side -> side * side);

        assertThat(areas).isEqualTo(QuantityArray.ofSi(Kind.AREA, 1, 4, 9));
    }

    @Test
    void aRangeWithoutAStepHasElevenValues() {
        assertThat(QuantityArray.parse(Kind.LENGTH, "0 m..10 m").toSi())
                .containsExactly(0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10);
    }

    @Test
    void aSingleValueIsARangeToo() {
        assertThat(QuantityArray.parse(Kind.PRESSURE, "380 MPa"))
                .isEqualTo(QuantityArray.ofSi(Kind.PRESSURE, Kind.PRESSURE.si(megapascals(380))));
        assertThat(QuantityArray.parse(Kind.LENGTH, "2 mm..2 mm step 1 mm").to(Units.MILLIMETRE))
                .containsExactly(2);
    }

    @Test
    void theLastValueIsLeftOutWhereTheStepMissesIt() {
        assertThat(QuantityArray.parse(Kind.LENGTH, "1 m..6 m step 2 m").toSi()).containsExactly(1, 3, 5);
    }

    @Test
    void aRangeBeyondMemoryIsRefused() {
        assertThat(codeOf(() -> QuantityArray.parse(Kind.LENGTH, "0 m..10000000 m step 1 m")))
                .isEqualTo("range-too-long");
    }

    @Test
    void everyValueIsANumber() {
        assertThat(codeOf(() -> QuantityArray.ofSi(Kind.LENGTH, 1, Double.NaN))).isEqualTo("must-be-at-most");
        assertThat(codeOf(() -> plates().map(Kind.TIME, length -> 1 / (length - 0.005))))
                .isEqualTo("must-be-at-most");
    }

    @Test
    void anIndexBeyondTheEndIsRefused() {
        assertThat(codeOf(() -> plates().get(3))).isEqualTo("no-such-index");
        assertThat(codeOf(() -> plates().si(-1))).isEqualTo("no-such-index");
    }
}
