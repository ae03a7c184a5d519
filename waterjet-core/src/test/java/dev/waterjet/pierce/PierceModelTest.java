package dev.waterjet.pierce;

import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.CutConditions;
import org.junit.jupiter.api.Test;

class PierceModelTest {

    private static final Evidence OWN =
            Evidence.of(EvidenceGrade.ASSUMED, Source.of("pierce log of the Hollow Ridge workshop"));

    @Test
    void depthAndTimeAreInverse() {
        PierceModel model = PierceModel.of(millimetres(2), 0.5, 0.1, OWN);

        assertThat(model.time(millimetres(2)).si()).isCloseTo(1, within(1e-12));
        assertThat(model.time(millimetres(4)).si()).isCloseTo(4, within(1e-12));
        assertThat(model.depth(seconds(9)).si()).isCloseTo(0.006, within(1e-15));
        assertThat(model.depth(seconds(9)).relativeUncertainty()).isCloseTo(0.05, within(1e-12));
    }

    /** Integrated in small steps of depth, with the share and the width that the class documents. */
    @Test
    void aDerivedModelDeepensFromEveryDepthAtItsRate() {
        CutConditions cut = Pierces.cut("mild-steel-a36", 10);
        PierceModel model = PierceModel.derived(cut, PierceMethod.STATIONARY);
        double time = 0;
        double step = 1e-6;
        for (double z = step / 2; z < 0.010; z += step) {
            double removal = 0.02 * cut.separationFeedSi(z) * z * 0.00076;
            time += step * Math.PI * 0.00076 * 0.00076 / 4 / removal;
        }

        // the feed rate of the model goes with depth to the power -1.15
        assertThat(model.exponent()).isCloseTo(1 / 1.15, within(1e-9));
        assertThat(model.time(millimetres(10)).si()).isCloseTo(time, within(1e-3 * time));
    }

    @Test
    void aDerivedTimeIsUncertainAndHasACaution() {
        PierceModel model = PierceModel.derived(Pierces.cut("mild-steel-a36", 10), PierceMethod.STATIONARY);

        assertThat(model.time(millimetres(10)).relativeUncertainty()).isGreaterThan(0.7);
        assertThat(model.time(millimetres(10)).cautions())
                .extracting(Caution::code)
                .contains("pierce-time");
        assertThat(model.evidence().grade()).isEqualTo(EvidenceGrade.DERIVED);
    }

    @Test
    void harderAndThickerPlatesTakeLonger() {
        double soft = time("aluminium", 10);

        assertThat(time("stainless-304", 10)).isGreaterThan(soft);
        assertThat(time("aluminium", 20)).isGreaterThan(2 * soft);
    }

    private static double time(String material, double mm) {
        return PierceModel.derived(Pierces.cut(material, mm), PierceMethod.STATIONARY)
                .time(millimetres(mm))
                .si();
    }

    @Test
    void aModelIsItsNumbersAndEvidence() {
        ValueContract.of(() -> PierceModel.of(millimetres(2), 0.5, 0.1, OWN))
                .has("depth", PierceModel::depthAfterOneSecond, millimetres(2))
                .has("exponent", PierceModel::exponent, 0.5)
                .has("uncertainty", PierceModel::relativeUncertainty, 0.1)
                .differs("depth", PierceModel.of(millimetres(3), 0.5, 0.1, OWN))
                .differs("exponent", PierceModel.of(millimetres(2), 0.6, 0.1, OWN))
                .differs("uncertainty", PierceModel.of(millimetres(2), 0.5, 0.2, OWN))
                .differs(
                        "evidence",
                        PierceModel.of(
                                millimetres(2), 0.5, 0.1, Evidence.of(EvidenceGrade.FITTED, Source.of("stop watch"))))
                .check();
        assertThat(Refusals.of(() -> PierceModel.of(millimetres(0), 0.5, 0.1, OWN)))
                .isEqualTo("must-be-above");
    }
}
