package dev.waterjet.quality;

import static dev.waterjet.measure.Measures.inches;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import java.math.BigDecimal;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class Iso9013Test {

    @Test
    void aLimitBelongsToItsRangeAndTheNextDoubleDoesNot() {
        for (int tenths = 1; tenths <= 3000; tenths++) {
            Iso9013 standard = Iso9013.forThickness(
                    millimetres(BigDecimal.valueOf(tenths, 1).doubleValue()));
            for (int range = 1; range <= Iso9013.perpendicularityRanges(); range++) {
                double limit = standard.perpendicularityLimit(range).getValue().doubleValue();
                OptionalInt next =
                        range < Iso9013.perpendicularityRanges() ? OptionalInt.of(range + 1) : OptionalInt.empty();
                assertThat(standard.perpendicularityRange(millimetres(limit))).hasValue(range);
                assertThat(standard.perpendicularityRange(millimetres(Math.nextUp(limit))))
                        .isEqualTo(next);
            }
            for (int range = 1; range <= Iso9013.profileHeightRanges(); range++) {
                double limit = standard.profileHeightLimit(range).getValue().doubleValue();
                OptionalInt next =
                        range < Iso9013.profileHeightRanges() ? OptionalInt.of(range + 1) : OptionalInt.empty();
                assertThat(standard.profileHeightRange(micrometres(limit))).hasValue(range);
                assertThat(standard.profileHeightRange(micrometres(Math.nextUp(limit))))
                        .isEqualTo(next);
            }
        }
    }

    /** ISO 9013:2017, u = 0.05 + 0.003 a and 0.15 + 0.007 a at 10 mm: 0.08 mm and 0.22 mm. */
    @Test
    void unitsDoNotMatterOnALimit() {
        Iso9013 standard = Iso9013.forThickness(metres(0.01));

        assertThat(standard).isEqualTo(Iso9013.forThickness(millimetres(10)));
        assertThat(standard.perpendicularityRange(metres(8e-5))).hasValue(1);
        assertThat(standard.perpendicularityRange(micrometres(80))).hasValue(1);
        assertThat(standard.perpendicularityRange(metres(Math.nextUp(8e-5)))).hasValue(2);
        assertThat(standard.perpendicularityRange(millimetres(0.22))).hasValue(2);
        assertThat(standard.perpendicularityRange(inches(0.0087))).hasValue(3);
        assertThat(standard.perpendicularityRange(millimetres(0))).hasValue(1);
        assertThat(standard.perpendicularityRange(millimetres(2))).isEmpty();
    }

    @Test
    void theEdgesOfTheTableOfEdgeHeights() {
        assertThat(Iso9013.forThickness(millimetres(Math.nextUp(3.0)))
                        .edgeHeight()
                        .getValue()
                        .doubleValue())
                .isEqualTo(0.3);
        assertThat(Iso9013.forThickness(millimetres(Math.nextUp(10.0)))
                        .edgeHeight()
                        .getValue()
                        .doubleValue())
                .isEqualTo(1);
        assertThatThrownBy(() -> Iso9013.forThickness(millimetres(301)).edgeHeight())
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("thickness is 301 mm; it must be at most 300 mm");
    }

    @Test
    void badInputIsRefused() {
        assertThatThrownBy(() -> Iso9013.forThickness(millimetres(0)))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("thickness is 0 mm");
        Iso9013 standard = Iso9013.forThickness(millimetres(10));
        assertThatThrownBy(() -> standard.perpendicularityRange(millimetres(-0.1)))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("perpendicularity is -0.1 mm");
        assertThatThrownBy(() -> standard.profileHeightLimit(5))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("range of profile height is 5; it must be at most 4");
    }

    /** Half of a normal spread about a limit lies below it. */
    @Test
    void oddsOfRangesAddUp() {
        Iso9013 standard = Iso9013.forThickness(millimetres(10));
        var odds = standard.perpendicularityProbabilities(Estimate.of(Kind.LENGTH, 0.22e-3, 0.05e-3));

        assertThat(odds).hasSize(6);
        assertThat(odds.stream().mapToDouble(Double::doubleValue).sum()).isCloseTo(1, within(1e-12));
        assertThat(odds.get(0) + odds.get(1)).isCloseTo(0.5, within(1e-9));
        // 0.08 mm is 2.8 standard deviations below: normal table, 0.002555
        assertThat(odds.get(0)).isCloseTo(0.002555, within(1e-6));
    }
}
