package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.DeclinationFeed;
import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.FlowStrengths;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.feed.SpecificEnergyFeed;
import dev.waterjet.feed.ThresholdFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.NoSolutionException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CalibrationTest {

    private static final double TRUE_MACHINABILITY = 137;

    private static final Material TRUTH =
            Material.of("mirror-mount-alloy", TRUE_MACHINABILITY, 0, MaterialClass.DUCTILE);

    private static final Material GUESS = Material.of("mirror-mount-alloy", 90, 0.5, MaterialClass.DUCTILE);

    static AbrasiveJet jet(double pressureMpa, double flow) {
        return CuttingHead.of(Orifice.sapphire(millimetres(0.3)), FocusingTube.of(millimetres(0.9), millimetres(76)))
                .jet(megapascals(pressureMpa), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(flow));
    }

    /** Cuts of every kind that a true model would give, with relative noise. */
    private static List<TestCut> cuts(FeedModel truth, Random random, double noise) {
        List<TestCut> cuts = new ArrayList<>();
        for (double pressure : new double[] {250, 320, 390}) {
            for (double flow : new double[] {250, 450}) {
                AbrasiveJet jet = jet(pressure, flow);
                for (double thickness : new double[] {6, 20}) {
                    double separation = truth.separationFeedSi(jet, TRUTH, thickness / 1000)
                            * Math.exp(noise * random.nextGaussian());
                    cuts.add(TestCut.separated(jet, millimetres(thickness), Kind.SPEED.of(separation)));
                }
                double graded = truth.feedSi(jet, TRUTH, 0.010, 3) * Math.exp(noise * random.nextGaussian());
                cuts.add(TestCut.graded(jet, millimetres(10), 3, Kind.SPEED.of(graded)));
                double depth = truth.separationDepthSi(jet, TRUTH, 0.004) * Math.exp(noise * random.nextGaussian());
                cuts.add(TestCut.groove(jet, Kind.LENGTH.of(depth), Kind.SPEED.of(0.004)));
            }
        }
        return cuts;
    }

    @Test
    void cutsWithoutNoiseGiveTheTruthBack() {
        MachinabilityFeed truth = MachinabilityFeed.published()
                .withExponent(FeedExponent.PRESSURE, 1.4)
                .withExponent(FeedExponent.FEED, 1.05)
                .withExponent(FeedExponent.ABRASIVE_FLOW, 0.4);
        CalibratedFeed own = Calibration.ofMachinability(
                        GUESS,
                        MachinabilityFeed.published(),
                        FeedExponent.PRESSURE,
                        FeedExponent.FEED,
                        FeedExponent.ABRASIVE_FLOW)
                .fit(cuts(truth, new Random(1), 0));

        assertThat(own.material().machinabilitySi()).isCloseTo(TRUE_MACHINABILITY, within(1e-5));
        assertThat(own.fit().value("pressure exponent")).isCloseTo(1.4, within(1e-6));
        assertThat(own.fit().value("feed exponent")).isCloseTo(1.05, within(1e-6));
        assertThat(own.fit().value("abrasive-flow exponent")).isCloseTo(0.4, within(1e-6));
        assertThat(own.scatter()).isLessThan(1e-6);
    }

    /** Intervals of 95 percent hold the truth in 93 to 97 percent of 2,000 repeats. */
    @Test
    void intervalsCoverTheTruthAsOftenAsTheyClaim() {
        int repeats = 2000;
        Random random = new Random(2026);
        Calibration calibration =
                Calibration.ofMachinability(GUESS, MachinabilityFeed.published(), FeedExponent.PRESSURE);
        int machinability = 0;
        int exponent = 0;
        for (int i = 0; i < repeats; i++) {
            CalibratedFeed own = calibration.fit(cuts(MachinabilityFeed.published(), random, 0.05));
            machinability += covers(own, "machinability", TRUE_MACHINABILITY);
            exponent += covers(own, "pressure exponent", 1.594);
        }

        assertThat(machinability / (double) repeats).isBetween(0.93, 0.97);
        assertThat(exponent / (double) repeats).isBetween(0.93, 0.97);
    }

    /** The end on the side of the truth decides; that of the other side costs as much and says nothing. */
    private static int covers(CalibratedFeed own, String parameter, double truth) {
        boolean isInside = truth < own.fit().value(parameter)
                ? own.fit().lower(parameter, 0.95) <= truth
                : truth <= own.fit().upper(parameter, 0.95);
        return isInside ? 1 : 0;
    }

    @Test
    void theFittedMaterialCanBeUsedWithAnyModel() {
        CalibratedFeed own = Calibration.ofMachinability(GUESS, MachinabilityFeed.published())
                .fit(cuts(MachinabilityFeed.published(), new Random(3), 0.05));
        Workpiece piece = Workpiece.of(own.material(), millimetres(12));
        AbrasiveJet jet = jet(350, 300);

        assertThat(own.material().evidence().grade()).isEqualTo(EvidenceGrade.FITTED);
        assertThat(own.material().evidence().source().citation()).isEqualTo("fitted from 24 cuts");
        assertThat(own.material().relativeUncertainty()).isBetween(0.004, 0.02);
        // the published model takes the material, and the fitted model the piece
        assertThat(MachinabilityFeed.published().feed(jet, piece, 2).si())
                .isCloseTo(own.feed(jet, piece, 2).si(), within(1e-5));
        assertThat(own.feed(jet, piece, 2).relativeUncertainty()).isBetween(0.03, 0.08);
        assertThat(own.feed(jet, piece, 2).cautions()).isEmpty();
        assertThat(own.remarks()).isEmpty();
    }

    @Test
    void farFromTheCutsTheFeedIsLessCertain() {
        CalibratedFeed own = Calibration.ofMachinability(GUESS, MachinabilityFeed.published(), FeedExponent.PRESSURE)
                .fit(cuts(MachinabilityFeed.published(), new Random(4), 0.05));
        Workpiece piece = Workpiece.of(own.material(), millimetres(12));
        var near = own.feed(jet(320, 350), piece, 1);
        var far = own.feed(jet(600, 350), piece, 1);

        assertThat(far.relativeUncertainty()).isGreaterThan(1.1 * near.relativeUncertainty());
        assertThat(far.cautions())
                .filteredOn(caution -> caution.code().equals("outside-test-cuts"))
                .extracting(caution -> caution.message().parameters().get("value_Pa"))
                .containsExactly(600e6);
    }

    @Test
    void anOutlierIsNamedAndLosesItsWeightInARobustFit() {
        List<TestCut> cuts = cuts(MachinabilityFeed.published(), new Random(5), 0.03);
        TestCut wrong = cuts.get(7);
        cuts.set(
                7,
                TestCut.groove(wrong.jet(), wrong.thickness().multiply(2), wrong.feed())
                        .withLabel("mistyped"));
        Calibration plain = Calibration.ofMachinability(GUESS, MachinabilityFeed.published());
        CalibratedFeed robust = plain.withStudentErrors(4).fit(cuts);

        assertThat(plain.fit(cuts).remarks())
                .filteredOn(remark -> remark.code().equals("outlier"))
                .extracting(remark -> remark.message().parameters().get("cut"))
                .contains("mistyped");
        assertThat(robust.material().machinabilitySi()).isCloseTo(TRUE_MACHINABILITY, within(2.5));
        assertThat(robust.fit().weights()[7]).isLessThan(0.05);
        assertThat(robust.scatter()).isLessThan(0.06);
    }

    @Test
    void rivalModelsAreCalibratedToo() {
        FeedModel energy = SpecificEnergyFeed.of(
                TRUTH, Kind.ENERGY_DENSITY.of(9e9), 0, Evidence.of(EvidenceGrade.ASSUMED, Source.of("test")));
        assertThat(Calibration.ofSpecificEnergy(GUESS)
                        .fit(cuts(energy, new Random(6), 0))
                        .fit()
                        .values()[0])
                .isCloseTo(9e9, within(1e3));

        FeedModel erosion =
                ErosionFeed.standard().withStrengths(FlowStrengths.standard().with(TRUTH, megapascals(6000)));
        assertThat(Calibration.ofErosion(GUESS, ErosionFeed.standard())
                        .fit(cuts(erosion, new Random(6), 0))
                        .fit()
                        .values()[0])
                .isCloseTo(6e9, within(1e4));

        FeedModel declination =
                DeclinationFeed.linear(MachinabilityFeed.published()).withExponent(1.3);
        CalibratedFeed own = Calibration.ofDeclination(GUESS).fit(cuts(declination, new Random(6), 0));
        assertThat(own.fit().values()).containsExactly(new double[] {TRUE_MACHINABILITY, 1.3}, within(1e-4));
    }

    @Test
    void theThresholdModelIsCalibratedFromOneJetAtManyPressures() {
        AbrasiveJet reference = jet(350, 400);
        ThresholdFeed truth = ThresholdFeed.of(TRUTH, reference, 9e-9, megapascals(70), millimetresPerMinute(1));
        List<TestCut> cuts = new ArrayList<>();
        for (double pressure = 150; pressure <= 400; pressure += 50) {
            AbrasiveJet jet = jet(pressure, 400);
            for (double thickness : new double[] {5, 15}) {
                cuts.add(TestCut.separated(
                        jet,
                        millimetres(thickness),
                        Kind.SPEED.of(truth.separationFeedSi(jet, TRUTH, thickness / 1000))));
            }
        }
        CalibratedFeed own = Calibration.ofThreshold(GUESS, reference, millimetresPerMinute(1))
                .fit(cuts);

        assertThat(own.fit().value("threshold pressure in Pa")).isCloseTo(70e6, within(70.0));
        assertThat(own.fit().value("coefficient in m/Pa")).isCloseTo(9e-9, within(1e-14));
        assertThat(own.separationFeedSi(jet(270, 400), own.material(), 0.01))
                .isCloseTo(truth.separationFeedSi(jet(270, 400), TRUTH, 0.01), within(1e-8));
    }

    @Test
    void parametersThatTheCutsDoNotDetermineAreRefused() {
        List<TestCut> onePressure = new ArrayList<>();
        for (double thickness : new double[] {4, 8, 16, 32}) {
            AbrasiveJet jet = jet(380, 300);
            onePressure.add(TestCut.separated(
                    jet,
                    millimetres(thickness),
                    Kind.SPEED.of(MachinabilityFeed.published().separationFeedSi(jet, TRUTH, thickness / 1000))));
        }
        Calibration withExponent =
                Calibration.ofMachinability(GUESS, MachinabilityFeed.published(), FeedExponent.PRESSURE);
        isUndetermined(withExponent, onePressure, "machinability, pressure exponent");
        isUndetermined(
                Calibration.ofMachinability(GUESS, MachinabilityFeed.published()),
                onePressure.subList(0, 1),
                "machinability");
        isUndetermined(Calibration.ofDeclination(GUESS), onePressure, "declination exponent");
        assertThatExceptionOfType(NoSolutionException.class)
                .isThrownBy(() -> Calibration.ofSpecificEnergy(GUESS).fit(List.of()))
                .satisfies(e -> assertThat(e.code()).isEqualTo("no-test-cuts"));

        Random random = new Random(8);
        List<TestCut> hardlyVaried = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            AbrasiveJet jet = jet(380 + 0.05 * i, 300);
            double feed = MachinabilityFeed.published().separationFeedSi(jet, TRUTH, 0.01)
                    * Math.exp(0.05 * random.nextGaussian());
            hardlyVaried.add(TestCut.separated(jet, millimetres(10), Kind.SPEED.of(feed)));
        }
        isUndetermined(withExponent, hardlyVaried, "pressure exponent");
    }

    private static void isUndetermined(Calibration calibration, List<TestCut> cuts, String parameters) {
        assertThatExceptionOfType(NoSolutionException.class)
                .isThrownBy(() -> calibration.fit(cuts))
                .satisfies(e -> assertThat(e.code()).isEqualTo("undetermined-parameters"))
                .satisfies(e -> assertThat(e.parameters()).containsEntry("parameters", parameters));
    }
}
