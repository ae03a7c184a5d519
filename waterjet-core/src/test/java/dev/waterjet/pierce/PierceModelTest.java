package dev.waterjet.pierce;

import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Kind;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

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

    @ParameterizedTest
    @ValueSource(doubles = {1e-4, 0.1, 1, 10, 100, 1e5})
    void depthAndTimeOfTheDampedFormAreInverse(double mm) {
        PierceModel model = PierceModel.damped(Kind.SPEED.of(2e-3), millimetres(7.5), 0.5, OWN);
        double time = model.time(millimetres(mm)).si();

        assertThat(model.depth(seconds(time)).si()).isCloseTo(mm * 1e-3, withinPercentage(1e-9));
        assertThat(model.exponentAt(millimetres(mm))).isBetween(0.5, 1.0);
    }

    /** Common practice, no source: mild steel at 380 MPa, 0.35/1.02 mm, 450 g/min garnet of 80 mesh. */
    @ParameterizedTest
    @CsvSource({"10, 5, 12", "25, 20, 50", "50, 70, 200", "100, 240, 900"})
    void stationaryPiercesOfMildSteelLieInTheBandsOfPractice(double mm, double from, double to) {
        CutConditions cut = Pierces.withPracticeHead("mild-steel-a36", mm);

        assertThat(PierceModel.derived(cut, PierceMethod.STATIONARY)
                        .time(millimetres(mm))
                        .si())
                .isBetween(from, to);
    }

    /** Ratio of the feeds by the published exponents; in lambda the pressure does not enter. */
    @Test
    void aWeakerJetPiercesSlowerByTheRatioOfTheFeeds() {
        CutConditions full = Pierces.cut("mild-steel-a36", 25);
        CutConditions low = full.withJet(full.jet().withPressure(megapascals(70)));
        double ratio = PierceModel.derived(low, PierceMethod.STATIONARY)
                        .time(millimetres(25))
                        .si()
                / PierceModel.derived(full, PierceMethod.STATIONARY)
                        .time(millimetres(25))
                        .si();

        assertThat(ratio).isCloseTo(Math.pow(380 / 70.0, 1.594 * 1.15), withinPercentage(1e-6));
    }

    @Test
    void aMovingJetPiercesFasterAndMoreSoInThickPlate() {
        PierceModel standing = PierceModel.derived(Pierces.cut("mild-steel-a36", 10), PierceMethod.STATIONARY);
        PierceModel moving = PierceModel.derived(Pierces.cut("mild-steel-a36", 10), PierceMethod.CIRCULAR);
        double thin =
                moving.time(millimetres(2)).si() / standing.time(millimetres(2)).si();
        double thick = moving.time(millimetres(100)).si()
                / standing.time(millimetres(100)).si();

        assertThat(thick).isLessThan(thin);
        assertThat(thick).isBetween(1 / 3.0, 0.5);
    }

    /** Integrated in small steps of depth, with the share, the width and the damping that the class documents. */
    @Test
    void aDerivedModelDeepensFromEveryDepthAtItsRate() {
        CutConditions cut = Pierces.cut("mild-steel-a36", 10);
        PierceModel model = PierceModel.derived(cut, PierceMethod.STATIONARY);
        double rate = 0.0174 * cut.separationFeedSi(0.010) * 0.010 * 0.00076 / (Math.PI * 0.00076 * 0.00076 / 4);
        double time = 0;
        double step = 1e-6;
        for (double z = step / 2; z < 0.025; z += step) {
            time += step * (1 + z / (7.35 * 0.00076)) / rate;
        }

        assertThat(model.time(millimetres(25)).si()).isCloseTo(time, within(1e-6 * time));
    }

    @Test
    void aDerivedTimeIsUncertainAndHasACaution() {
        PierceModel model = PierceModel.derived(Pierces.cut("aluminium", 10), PierceMethod.STATIONARY);

        assertThat(PierceModel.derived(Pierces.cut("mild-steel-a36", 10), PierceMethod.STATIONARY)
                        .relativeUncertainty())
                .isEqualTo(0.5);
        assertThat(model.time(millimetres(10)).relativeUncertainty()).isGreaterThan(0.8);
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
                .has("exponent", model -> model.exponentAt(millimetres(3)), 0.5)
                .has("rate", PierceModel::rate, Optional.empty())
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

    @Test
    void aDampedModelIsItsNumbersAndEvidence() {
        ValueContract.of(() -> damped(2, 7.5))
                .has("rate", model -> Kind.SPEED.si(model.rate().orElseThrow()), 2e-3)
                .has("damping", PierceModel::damping, Optional.of(millimetres(7.5)))
                .differs("rate", damped(3, 7.5))
                .differs("damping", damped(2, 8))
                .differs("form", PierceModel.of(millimetres(2), 7.5e-3, 0.1, OWN))
                .check();
        assertThat(Refusals.of(() -> damped(0, 7.5))).isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> damped(2, -1))).isEqualTo("must-be-above");
    }

    private static PierceModel damped(double rateMmPerS, double dampingMm) {
        return PierceModel.damped(Kind.SPEED.of(rateMmPerS * 1e-3), millimetres(dampingMm), 0.1, OWN);
    }
}
