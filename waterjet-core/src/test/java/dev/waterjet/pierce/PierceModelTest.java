package dev.waterjet.pierce;

import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.ThresholdFeed;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.WaterjetException;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.quantity.Time;
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

    /** d ln h/d ln t from the depths at two near times; the uncertainty of a depth follows from it. */
    @ParameterizedTest
    @ValueSource(doubles = {0.2, 2, 7.5, 30, 400})
    void theExponentIsTheSlopeOfTheDepthOverTheTime(double mm) {
        for (PierceModel model :
                List.of(damped(2, 7.5), damped(0.3, 40), PierceModel.of(millimetres(2), 0.7, 0.1, OWN))) {
            double time = model.time(millimetres(mm)).si();
            double step = 1e-4;
            double slope = Math.log(model.depth(seconds(time * (1 + step))).si()
                            / model.depth(seconds(time * (1 - step))).si())
                    / (Math.log1p(step) - Math.log1p(-step));

            assertThat(model.exponentAt(millimetres(mm))).isCloseTo(slope, within(1e-7));
            assertThat(model.depth(seconds(time)).relativeUncertainty()).isCloseTo(0.1 * slope, within(1e-8));
        }
    }

    /** The rate is halved at the damping length, where t = l/r + l/(2 r); so the exponent is 3/4 there. */
    @Test
    void theDampingLengthIsTheDepthOfHalfTheRate() {
        PierceModel model = damped(2, 7.5);
        double step = 1e-3;
        double time = 1.5 * 7.5 / 2;
        double rate = (model.depth(seconds(time + step)).si()
                        - model.depth(seconds(time - step)).si())
                / (2 * step);

        assertThat(model.time(millimetres(7.5)).si()).isCloseTo(time, within(1e-12));
        assertThat(rate).isCloseTo(1e-3, within(1e-9));
        assertThat(model.exponentAt(millimetres(7.5))).isCloseTo(0.75, within(1e-12));
    }

    /** Machinability numbers of 75 to 95 and pressures of 300 MPa to 420 MPa are those of the ranges of practice. */
    @ParameterizedTest
    @CsvSource({
        "75, 360, true", "74.99, 360, false", "95, 360, true", "95.01, 360, false",
        "85, 300, true", "85, 299.99, false", "85, 420, true", "85, 420.01, false"
    })
    void timesAreKnownBestInSteelNearThePressuresOfPractice(double machinability, double mpa, boolean isNear) {
        CutConditions steel = Pierces.ductile(machinability, 10);
        CutConditions cut = steel.withJet(steel.jet().withPressure(megapascals(mpa)));
        PierceModel model = PierceModel.derived(cut, PierceMethod.STATIONARY);
        double expected = isNear ? 0.5 : Math.sqrt(0.64 + Math.pow(cut.relativeUncertainty(), 2));

        assertThat(model.relativeUncertainty()).isCloseTo(expected, within(1e-12));
        assertThat(model.time(millimetres(10)).relativeUncertainty()).isCloseTo(expected, within(1e-12));
    }

    /** Half the width of a 95 % interval of the logarithm is 1.96 standard uncertainties; the factor has one decimal. */
    @Test
    void theCautionOfADerivedTimeNamesTheFactorOfIts95PercentInterval() {
        for (CutConditions cut : List.of(Pierces.cut("mild-steel-a36", 10), Pierces.cut("granite", 10))) {
            Estimate<Time> time =
                    PierceModel.derived(cut, PierceMethod.CIRCULAR).time(millimetres(10));
            double factor = time.upper(0.95, Units.SECOND) / time.si();
            Object named = time.cautions().get(0).message().parameters().get("factor");

            assertThat(time.cautions()).hasSize(1);
            assertThat((double) Objects.requireNonNull(named)).isCloseTo(factor, within(0.0501));
        }
    }

    @Test
    void aJetBelowTheThresholdOfTheMaterialDoesNotPierce() {
        CutConditions cut = Pierces.brittle(5);
        ThresholdFeed threshold =
                ThresholdFeed.of(cut.material(), cut.jet(), 1, megapascals(400), millimetresPerMinute(100));
        WaterjetException refusal = Refusals.assertRefused(
                () -> PierceModel.derived(cut.withFeedModel(threshold), PierceMethod.MOVING), "no-pierce");

        assertThat(refusal).isInstanceOf(NoSolutionException.class);
        assertThat(refusal.parameters()).containsEntry("pressure_Pa", 380e6);
    }

    @Test
    void eachFormNamesItsOwnNumbers() {
        PierceModel power = PierceModel.of(millimetres(2), 0.7, 0.1, OWN);

        assertThat(damped(2, 7.5).describe())
                .containsKeys("rate_m_per_s", "damping_m")
                .doesNotContainKeys("depth_after_one_second_m", "exponent");
        assertThat(power.describe())
                .containsKeys("depth_after_one_second_m", "exponent")
                .doesNotContainKeys("rate_m_per_s", "damping_m");
        assertThat(damped(2, 7.5)).asString().contains("7.5 mm").doesNotContain("t/s");
        assertThat(power).asString().contains("2 mm", "0.7");
        Refusals.assertRefused(() -> damped(0, 7.5), "must-be-above", "rate of the pierce", 0);
        Refusals.assertRefused(() -> damped(2, 0), "must-be-above", "damping length of the pierce", 0);
        Refusals.assertRefused(
                () -> PierceModel.of(millimetres(0), 0.5, 0.1, OWN),
                "must-be-above",
                "pierced depth after one second",
                0);
        Refusals.assertRefused(
                () -> PierceModel.of(millimetres(2), 0, 0.1, OWN), "must-be-above", "exponent of the pierce model", 0);
    }

    private static PierceModel damped(double rateMmPerS, double dampingMm) {
        return PierceModel.damped(Kind.SPEED.of(rateMmPerS * 1e-3), millimetres(dampingMm), 0.1, OWN);
    }
}
