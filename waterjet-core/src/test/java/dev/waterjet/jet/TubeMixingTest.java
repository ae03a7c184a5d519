package dev.waterjet.jet;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.measure.Kind;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class TubeMixingTest {

    private static AbrasiveJet jet(FocusingTube tube, int mesh) {
        return CuttingHead.of(Orifice.sapphire(millimetres(0.25)), tube)
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(mesh)), gramsPerMinute(250));
    }

    private static FocusingTube tube(double lengthMm) {
        return FocusingTube.of(millimetres(0.76), millimetres(lengthMm));
    }

    @Property(tries = 200, seed = "51")
    void withoutWallTheClosedFormHolds(
            @ForAll @DoubleRange(min = 0.01, max = 300) double drag,
            @ForAll @DoubleRange(min = 0, max = 1.5) double loading,
            @ForAll @DoubleRange(min = 0.01, max = 0.3) double lengthM) {
        TubeMixingKernel kernel = new TubeMixingKernel(drag, loading, 0, lengthM, 1);
        double closed = TubeMixingKernel.closed((1 + loading) * (1 + loading) * drag * lengthM, loading);
        assertThat(kernel.efficiency()).isCloseTo(closed, within(2e-6));
        // momentum
        assertThat(kernel.water() + loading * kernel.particles()).isCloseTo(1, within(1e-12));
    }

    @Test
    void longerTubesMixBetterAndWornOnesWorse() {
        double base = TubeMixing.of(jet(tube(76), 80)).efficiency().si();
        assertThat(TubeMixing.of(jet(tube(38), 80)).efficiency().si()).isLessThan(base);
        assertThat(TubeMixing.of(jet(tube(152), 80)).efficiency().si()).isGreaterThan(base);
        assertThat(TubeMixing.of(jet(tube(76).withExitBore(millimetres(0.95)), 80))
                        .efficiency()
                        .si())
                .isLessThan(base);
        assertThat(TubeMixing.of(jet(tube(76), 200)).efficiency().si()).isGreaterThan(base);
    }

    @Test
    void theDefaultMeetsTheStandardEfficiencyAndSaysThatItIsAssumed() {
        TubeMixing mixing = TubeMixing.of(jet(tube(76), 80));
        assertThat(mixing.efficiency().si()).isBetween(0.65, 0.85);
        assertThat(mixing.efficiency().standardUncertaintySi()).isBetween(0.03, 0.2);
        assertThat(mixing.cautions()).extracting(Caution::code).containsExactly("mixing-by-model");
        AbrasiveJet jet = jet(tube(76), 80);
        double ideal = jet.waterMassFlowSi() * jet.waterSpeedSi();
        assertThat(Kind.FORCE.si(mixing.thrust())).isBetween(0.8 * ideal, ideal);
        assertThat(Kind.SPEED.si(mixing.waterSpeed()))
                .isGreaterThan(mixing.particleSpeed().si());
        assertThat(Kind.FORCE.si(TubeMixing.of(jet, 0.26, 0).thrust())).isCloseTo(ideal, within(1e-9 * ideal));
        assertRefused(() -> TubeMixing.of(jet, 0, 0.001), "must-be-at-least", "contact drag", 0.001);
        assertRefused(() -> TubeMixing.of(jet, 0.3, 0.2), "must-be-at-most", "wall coefficient", 0.1);
    }
}
