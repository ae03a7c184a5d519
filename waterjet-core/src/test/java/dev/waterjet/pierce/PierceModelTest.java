package dev.waterjet.pierce;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.plan.Jobs;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

class PierceModelTest {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();

    @Test
    void depthAndTimeAreEachOthersInverse() {
        PierceModel law = PierceModel.of(
                millimetres(2),
                0.5,
                0.1,
                Evidence.of(EvidenceGrade.ASSUMED, Source.of("pierce log of the Hollow Ridge workshop")));

        assertThat(law.time(millimetres(2)).si()).isCloseTo(1, within(1e-12));
        assertThat(law.time(millimetres(4)).si()).isCloseTo(4, within(1e-12));
        assertThat(law.depth(seconds(9)).si()).isCloseTo(0.006, within(1e-15));
        assertThat(law.depth(seconds(9)).relativeUncertainty()).isCloseTo(0.05, within(1e-12));
    }

    @Test
    void aLawIsFoundAgainFromItsOwnPierces() {
        double[] times = {0.5, 1, 2, 4, 8, 16};
        double[] depths = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            // a scatter of ten per cent in time, alternating, so that slope and level stay put but for a little
            depths[i] = 0.003 * Math.pow(times[i] * (i % 2 == 0 ? 1.1 : 1 / 1.1), 0.6);
        }
        PierceModel law = PierceModel.fitted(QuantityArray.ofSi(Kind.TIME, times), QuantityArray.ofSi(Kind.LENGTH, depths));

        assertThat(law.exponent()).isCloseTo(0.6, within(0.03));
        assertThat(Kind.LENGTH.si(law.depthAfterOneSecond())).isCloseTo(0.003, within(0.0001));
        assertThat(law.relativeUncertainty()).isBetween(0.05, 0.2);
        assertThat(law.evidence().grade()).isEqualTo(EvidenceGrade.FITTED);
        assertThat(law.time(millimetres(5)).cautions()).isEmpty();
    }

    @Test
    void aDerivedLawGoesOnFromEveryDepthAsItsRateSays() {
        PierceModel law = PierceModel.derived(MODEL, Jobs.JET, Jobs.plate("mild-steel-a36", 10), false);

        // the model's feed goes with depth to the power -1.15
        assertThat(law.exponent()).isCloseTo(1 / 1.15, within(1e-9));
        // integrated in small steps of depth, with the share and the width that the class documents
        double seconds = 0;
        double step = 1e-6;
        for (double z = step / 2; z < 0.010; z += step) {
            double feed = MODEL.separationFeedSi(
                    Jobs.JET, Jobs.plate("mild-steel-a36", 10).material(), z);
            double removal = 0.02 * feed * z * 0.00076;
            seconds += step * Math.PI * 0.00076 * 0.00076 / 4 / removal;
        }
        assertThat(law.time(millimetres(10)).si()).isCloseTo(seconds, within(1e-3 * seconds));
        assertThat(law.time(millimetres(10)).relativeUncertainty()).isGreaterThan(0.7);
        assertThat(law.time(millimetres(10)).cautions()).isNotEmpty();
    }

    @Test
    void harderAndThickerPlatesTakeLonger() {
        double soft = time("aluminium", 10);

        assertThat(time("stainless-304", 10)).isGreaterThan(soft);
        assertThat(time("aluminium", 20)).isGreaterThan(2 * soft);
    }

    private static double time(String material, double mm) {
        return PierceModel.derived(MODEL, Jobs.JET, Jobs.plate(material, mm), false)
                .time(millimetres(mm))
                .si();
    }

    @Test
    void badPiercesAreRefusedByName() {
        QuantityArray<Time> two = QuantityArray.ofSi(Kind.TIME, 1, 2);
        QuantityArray<Length> depths = QuantityArray.ofSi(Kind.LENGTH, 1e-3, 2e-3);
        assertThatThrownBy(() -> PierceModel.fitted(two, depths))
                .isInstanceOf(DomainException.class)
                .hasMessage("number of pierces is 2; it must be at least 3 (a line and its scatter need three)");
        assertThatThrownBy(() -> PierceModel.fitted(
                        QuantityArray.ofSi(Kind.TIME, 1, 2, 3), QuantityArray.ofSi(Kind.LENGTH, 3e-3, 2e-3, 1e-3)))
                .hasMessageContaining("slope of pierce time over depth");
        assertThatThrownBy(() -> PierceModel.fitted(
                        QuantityArray.ofSi(Kind.TIME, 1, 2, 3), QuantityArray.ofSi(Kind.LENGTH, 1e-3, 0, 1e-3)))
                .hasMessageContaining("pierced depth is 0 mm; it must be above 0 mm");
    }
}
