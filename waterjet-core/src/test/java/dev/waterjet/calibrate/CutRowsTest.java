package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class CutRowsTest {

    private static final double INFINITE = Double.POSITIVE_INFINITY;

    private static CutRows rows() {
        return new CutRows(
                new double[] {1, 2, -INFINITE, 4, 5},
                new double[] {1, 2.5, 3, INFINITE, 5},
                new double[][] {{1, 10}, {1, 20}, {1, 30}, {1, 40}, {1, 50}},
                new double[] {0, 0.3, 0, 0, 0.1},
                new int[] {2, 0, 1, 2, 1},
                3);
    }

    @Test
    void whatIsKnownOfARowIsItsEnds() {
        CutRows rows = rows();

        assertThat(rows.size()).isEqualTo(5);
        assertThat(rows.width()).isEqualTo(2);
        assertThat(new double[] {rows.middle(0), rows.middle(1), rows.middle(2), rows.middle(3)})
                .containsExactly(1, 2.25, 3, 4);
        assertThat(rows.isExact(0)).isTrue();
        assertThat(rows.isExact(1)).isFalse();
        assertThat(rows.isExact()).isFalse();
        assertThat(rows.only(0, 4).isExact()).isTrue();
        assertThat(rows.hasDelta()).isTrue();
        assertThat(rows.only(0, 2).hasDelta()).isFalse();
        assertThat(rows.deviation(0, 0.4)).isEqualTo(0.4);
        assertThat(rows.deviation(1, 0.4)).isCloseTo(0.5, within(1e-15));
        assertThat(rows.predicted(2, new double[] {7, 0.1})).isCloseTo(10, within(1e-15));
        assertThat(CutRows.exact(new double[0], new double[0][]).width()).isZero();
    }

    @Test
    void aChoiceOfRowsKeepsTheirPlatesInOrder() {
        CutRows some = rows().only(4, 0, 2);

        assertThat(some.lo()).containsExactly(5, 1, -INFINITE);
        assertThat(some.up()).containsExactly(5, 1, 3);
        assertThat(some.delta()).containsExactly(0.1, 0, 0);
        assertThat(some.x()).isDeepEqualTo(new double[][] {{1, 50}, {1, 10}, {1, 30}});
        assertThat(some.plate()).containsExactly(0, 1, 0);
        assertThat(some.plates()).isEqualTo(2);
        assertThat(rows().without(1).lo()).containsExactly(1, -INFINITE, 4, 5);
        assertThat(rows().ofPlate(2, true).lo()).containsExactly(1, 4);
        assertThat(rows().ofPlate(2, false).lo()).containsExactly(2, -INFINITE, 5);
        assertThat(rows().byPlate()).isDeepEqualTo(new int[][] {{1}, {2, 4}, {0, 3}});
        CutRows plain = CutRows.exact(new double[] {1, 2, 3}, new double[][] {{1}, {1}, {1}});
        assertThat(plain.only(2, 1).plates()).isZero();
        assertThat(plain.only(2, 1).plate()).containsExactly(0, 0);
        assertThat(plain.withPlates(new int[] {1, 0, 1}).plates()).isEqualTo(2);
    }

    @Test
    void oneMoreRowIsOnAKnownPlateOrOnANewOne() {
        double[] settings = {1, 60};
        CutRows known = rows().with(settings, 1);
        CutRows fresh = rows().with(settings, 3);

        assertThat(known.plates()).isEqualTo(3);
        assertThat(known.plate()).containsExactly(2, 0, 1, 2, 1, 1);
        assertThat(fresh.plates()).isEqualTo(4);
        assertThat(fresh.plate()).endsWith(1, 3);
        assertThat(fresh.x()[5]).containsExactly(1, 60);
        assertThat(fresh.size()).isEqualTo(6);
        assertThat(fresh.delta()).endsWith(0);
        assertThat(fresh.isExact(5)).isTrue();
    }

    @Test
    void rowsAreShiftedAndScaledAsAWhole() {
        CutRows shifted = rows().shifted(new double[] {1, 2, 3, 4, 5});
        assertThat(shifted.lo()).containsExactly(0, 0, -INFINITE, 0, 0);
        assertThat(shifted.up()).containsExactly(0, 0.5, 0, INFINITE, 0);
        assertThat(rows().lo()).as("the rows themselves").startsWith(1, 2);

        CutRows scaled = rows().scaled(0.4);
        assertThat(scaled.lo())
                .containsExactly(new double[] {2.5, 4, -INFINITE, 10, 5 / Math.hypot(0.4, 0.1)}, within(1e-14));
        assertThat(scaled.up()[1]).isCloseTo(5, within(1e-14));
        assertThat(scaled.x()[1]).containsExactly(new double[] {2, 40}, within(1e-14));
        assertThat(scaled.hasDelta()).isFalse();
        assertThat(scaled.plates()).isEqualTo(3);
        assertThat(rows().withDelta(new double[5]).hasDelta()).isFalse();
        assertThat(rows().withX(new double[][] {{3}, {3}, {3}, {3}, {3}}).width())
                .isEqualTo(1);
    }

    /** The sum of squares and products of the settings of measured rows. */
    @Test
    void unitInformationIsTheCrossProductOfTheSettings() {
        CutRows rows = CutRows.exact(new double[] {4, 4, 4}, new double[][] {{1, 2}, {1, 3}, {1, 5}});

        assertThat(rows.unitInformation()[0]).containsExactly(3, 10);
        assertThat(rows.unitInformation()[1]).containsExactly(10, 4 + 9 + 25);
    }
}
