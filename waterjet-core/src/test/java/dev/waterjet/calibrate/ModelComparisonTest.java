package dev.waterjet.calibrate;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ModelComparisonTest {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final Material ALLOY = Material.of("dome-alloy", 115, 0.1, MaterialClass.DUCTILE);

    /** Cuts over a span of thickness, whose feed rates fall with the power of the machinability model. */
    private static List<TestCut> cuts(double scatter) {
        Random random = new Random(9);
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            AbrasiveJet jet = CalibrationTest.jet(350, 300);
            double thickness = 4 * Math.pow(10, i % 4 / 3.0);
            double feed = MODEL.separationFeedSi(jet, ALLOY, thickness / 1e3)
                    * Math.exp(1.15 * scatter * random.nextGaussian());
            cuts.add(TestCut.separated(jet, millimetres(thickness), Kind.SPEED.of(feed))
                    .withPlate("P" + i / 3));
        }
        return cuts;
    }

    private static CalibratedFeed machinability(List<TestCut> cuts) {
        return Calibration.ofMachinability(ALLOY, MODEL).fit(cuts);
    }

    private static CalibratedFeed energy(List<TestCut> cuts) {
        return Calibration.ofSpecificEnergy(ALLOY).fit(cuts);
    }

    /** Over a span of ten in thickness an exponent of 1.15 and one of 1 differ by 40 %. */
    @Test
    void cutsByOneModelPreferIt() {
        List<TestCut> cuts = cuts(0.02);

        assertThat(ModelComparison.of(machinability(cuts), energy(cuts)).verdict())
                .isEqualTo(ModelComparison.Verdict.FIRST);
        assertThat(ModelComparison.of(energy(cuts), machinability(cuts)).verdict())
                .isEqualTo(ModelComparison.Verdict.SECOND);
        assertThat(ModelComparison.byPlates(machinability(cuts), energy(cuts)).verdict())
                .isEqualTo(ModelComparison.Verdict.FIRST);
    }

    @Test
    void scatteredCutsCannotTell() {
        List<TestCut> cuts = cuts(0.4);

        assertThat(ModelComparison.of(machinability(cuts), energy(cuts)).verdict())
                .isEqualTo(ModelComparison.Verdict.CANNOT_TELL);
        assertThat(ModelComparison.byPlates(machinability(cuts), energy(cuts)).verdict())
                .isEqualTo(ModelComparison.Verdict.CANNOT_TELL);
    }

    /** A model compared with itself differs by nothing, and a swap changes the sign. */
    @Test
    void theComparisonIsAntisymmetric() {
        List<TestCut> cuts = cuts(0.1);
        CalibratedFeed one = machinability(cuts);
        CalibratedFeed other = energy(cuts);

        assertThat(ModelComparison.byPlates(one, one).difference()).isZero();
        assertThat(ModelComparison.byPlates(one, other).difference())
                .isCloseTo(-ModelComparison.byPlates(other, one).difference(), within(1e-12));
    }

    /** With a single cut on each plate both leave out the same. */
    @Test
    void onePlateForEachCutIsLeavingOutEachCut() {
        List<TestCut> cuts = new ArrayList<>();
        for (TestCut cut : cuts(0.1)) {
            cuts.add(cut.withPlate("Q" + cuts.size()));
        }
        ModelComparison byPlates = ModelComparison.byPlates(machinability(cuts), energy(cuts));
        ModelComparison byCuts = ModelComparison.of(machinability(cuts), energy(cuts));

        assertThat(byPlates.difference()).isCloseTo(byCuts.difference(), within(1e-9));
        assertThat(byPlates.standardError()).isCloseTo(byCuts.standardError(), within(1e-9));
    }

    @Test
    void otherCutsAndFewPlatesAreRefused() {
        List<TestCut> cuts = cuts(0.1);
        List<TestCut> onTwo = cuts.stream()
                .map(cut -> cut.withPlate(cut.plate().equals("P0") ? "P0" : "P1"))
                .toList();

        assertRefused(() -> ModelComparison.of(machinability(cuts), energy(onTwo)), "must-be-at-least");
        assertRefused(() -> ModelComparison.byPlates(machinability(onTwo), energy(onTwo)), "must-be-at-least");
    }
}
