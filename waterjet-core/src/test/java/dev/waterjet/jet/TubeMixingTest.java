package dev.waterjet.jet;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
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
        assertThat(Kind.FORCE.si(model(0.26, 0).mixing(jet).thrust())).isCloseTo(ideal, within(1e-9 * ideal));
        assertRefused(() -> model(0, 0.001), "must-be-at-least", "contact drag", 0.001);
        assertRefused(() -> model(0.3, 0.2), "must-be-at-most", "wall coefficient", 0.1);
        assertRefused(
                () -> model(0.3, 0.01).withDeviations(-1, 0, 0),
                "must-be-at-least",
                "deviation of the contact drag",
                0);
        assertRefused(() -> model(0.3, 0.01).withCrowding(0), "must-be-above", "loading scale of the contact drag", 0);
    }

    private static MixingModel model(double contactDrag, double wall) {
        return MixingModel.of(
                contactDrag, wall, Evidence.of(EvidenceGrade.FITTED, Source.of("speeds of the Hollow Ridge workshop")));
    }

    /** Room at the exit of the base case, 0.76 mm: 18.66 L/min less 1.67 L/min of water and 0.06 L/min of garnet; half of it. */
    @Test
    void airFillsHalfOfTheRoomThatWaterAndParticlesLeave() {
        AbrasiveJet jet = jet(tube(76), 80);
        TubeMixing mixing = TubeMixing.of(jet);
        double roomM3PerS = Math.PI / 4 * 0.76e-3 * 0.76e-3 * Kind.SPEED.si(mixing.waterSpeed())
                - jet.waterVolumeFlowSi()
                - jet.abrasiveFlowSi() / 4100;
        assertThat(mixing.entrainedAir().si()).isCloseTo(roomM3PerS / 2, within(0.01 * roomM3PerS));
        assertThat(mixing.entrainedAir().si() * 60e3).isBetween(7.0, 10.0);
        assertThat(mixing.entrainedAir().upper(0.95, Units.LITRE_PER_MINUTE)
                        / mixing.entrainedAir().si()
                        / 60e3)
                .isBetween(3.5, 4.0);
        AbrasiveJet tight = CuttingHead.of(
                        Orifice.sapphire(millimetres(0.5)), FocusingTube.of(millimetres(0.51), millimetres(300)))
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(250));
        TubeMixing flooded = model(0.26, 0.002).mixing(tight);
        assertThat(flooded.entrainedAir().si()).isZero();
        assertThat(flooded.cautions()).extracting(Caution::code).containsExactly("tube-flooded");
    }

    /** Of a wall that takes most of the speed: against a tenth of the step. */
    @Test
    void strongFrictionIsIntegratedAsExactlyAsWeakOne() {
        for (double friction : new double[] {0.1, 0.7, 1.5, 3}) {
            TubeMixingKernel coarse = new TubeMixingKernel(20, 0.2, friction / 0.076, 0.076, 1);
            double particles = 0;
            double water = 1;
            double h = Math.sqrt(0.076) / 20_000;
            for (int i = 0; i < 20_000; i++) {
                double xi = (i + 0.5) * h;
                double halfP = particles + h / 2 * gain(xi - h / 2, particles, water);
                double halfW = water
                        - h / 2 * (0.2 * gain(xi - h / 2, particles, water) + (2 * xi - h) * friction / 0.076 * water);
                double gain = gain(xi, halfP, halfW);
                particles += h * gain;
                water -= h * (0.2 * gain + 2 * xi * friction / 0.076 * halfW);
            }
            assertThat(coarse.particles()).as("friction %s", friction).isCloseTo(particles, within(2e-6));
            assertThat(coarse.water()).as("friction %s", friction).isCloseTo(water, within(2e-6));
        }
        assertRefused(() -> model(0.26, 0.05).mixing(jet(tube(76), 80)), "must-be-at-most", "wall coefficient", 0.03);
    }

    private static double gain(double xi, double vp, double vw) {
        return xi <= 0 ? Math.sqrt(2 * 20 * vw) : 2 * xi * 20 / vw * (vw - vp) * Math.abs(vw - vp) / vp;
    }

    @Test
    void crowdingTakesSpeedFromLoadedJetsOnly() {
        AbrasiveJet light = jet(tube(76), 80).withAbrasiveFlow(gramsPerMinute(1));
        AbrasiveJet heavy = jet(tube(76), 80).withAbrasiveFlow(gramsPerMinute(500));
        MixingModel plain = model(0.3, 0.001);
        MixingModel crowded = plain.withCrowding(0.3);
        assertThat(crowded.particleSpeedSi(light) / plain.particleSpeedSi(light))
                .isCloseTo(1, within(2e-3));
        assertThat(crowded.particleSpeedSi(heavy) / plain.particleSpeedSi(heavy))
                .isBetween(0.7, 0.95);
        assertThat(crowded.crowdingScale()).hasValue(0.3);
        assertThat(plain.crowdingScale()).isEmpty();
    }

    @Test
    void deviationsOfTheCoefficientsGiveThatOfTheEfficiency() {
        AbrasiveJet jet = jet(tube(76), 80);
        assertThat(model(0.3, 0.001).mixing(jet).efficiency().standardUncertaintySi())
                .isZero();
        double drag = uncertainty(model(0.3, 0.001).withDeviations(0.2, 0, 0), jet);
        double wall = uncertainty(model(0.3, 0.001).withDeviations(0, 0.2, 0), jet);
        assertThat(uncertainty(model(0.3, 0.001).withDeviations(0.2, 0.2, 0), jet))
                .isCloseTo(Math.hypot(drag, wall), within(1e-12));
        // a drag and a wall coefficient that are too large together compensate
        assertThat(uncertainty(model(0.3, 0.001).withDeviations(0.2, 0.2, 1), jet))
                .isCloseTo(Math.abs(drag - wall), within(1e-12));
    }

    private static double uncertainty(MixingModel model, AbrasiveJet jet) {
        MixingEfficiency efficiency = model.efficiency(jet);
        assertThat(efficiency.atSi(0.1))
                .isCloseTo(model.mixing(jet).efficiency().si(), within(1e-15));
        assertThat(efficiency.evidence()).isEqualTo(model.evidence());
        return efficiency.value().standardUncertaintySi();
    }

    /** Drag coefficients of angular grains at Re 10 000 are 1.43 to 2.03 (Haider, Levenspiel 1989). */
    @Test
    void shareOfTheWaterIsTheContactDragOverThatOfAnAngularGrain() {
        assertThat(MixingModel.standard().waterShare().si()).isBetween(0.26 / 2.0271, 0.26 / 1.42603);
        assertThat(MixingModel.standard().waterShare().standardUncertaintySi()
                        / MixingModel.standard().waterShare().si())
                .isCloseTo(Math.hypot(0.9, 0.18), within(1e-12));
    }
}
