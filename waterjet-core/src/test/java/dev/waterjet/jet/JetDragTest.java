package dev.waterjet.jet;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.hours;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.measure.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Drag of particles and jets, air in a tube, and what is written of them. */
class JetDragTest {

    private static final Evidence OWN = Evidence.of(EvidenceGrade.ASSUMED, Source.of("logbook of Hollow Ridge"));

    /** Stokes' 24/Re for creeping flow, about 0.4 to 0.5 for Re from 1 000 to 100 000 (textbook values, from memory). */
    @Test
    void dragOfASphereHasItsLimits() {
        for (double reynolds : new double[] {1e-6, 1e-5, 1e-4}) {
            assertThat(DragKernel.sphere(reynolds)).isEqualTo(24 / reynolds, within(1e-3 * 24 / reynolds));
        }
        for (double reynolds : new double[] {1e3, 1e4, 1e5}) {
            assertThat(DragKernel.sphere(reynolds)).isBetween(0.38, 0.52);
        }
        for (double reynolds : new double[] {0.1, 1, 10, 100, 1e3, 1e4}) {
            assertThat(DragKernel.ofSphericity(1, reynolds))
                    .isEqualTo(DragKernel.sphere(reynolds), within(0.08 * DragKernel.sphere(reynolds)));
            // fits of one paper to spheres alone and to all shapes; a less round grain has more drag
            assertThat(DragKernel.ofSphericity(0.8, reynolds)).isGreaterThan(DragKernel.ofSphericity(1, reynolds));
            assertThat(DragKernel.ofSphericity(0.6, reynolds)).isGreaterThan(DragKernel.ofSphericity(0.8, reynolds));
        }
    }

    /** Speed of a particle over its path by small steps, with the drag of its speed at the start: e-fold at the flight length. */
    @ParameterizedTest
    @CsvSource({"80, 500", "50, 200", "230, 50", "120, 5"})
    void speedFallsByTheFactorEWithinTheFlightLength(int mesh, double speed) {
        Abrasive garnet = Abrasive.garnet(Mesh.of(mesh));
        double size = Mesh.of(mesh).meanGrainSizeSi();
        double air = 1.204;
        // Haider and Levenspiel (1989) for a sphere; air of 20 °C: 1.204 kg/m3, 18.2 uPa s (handbook values, from
        // memory)
        double reynolds = speed * size * air / 18.2e-6;
        double drag = 24 / reynolds * (1 + 0.1806 * Math.pow(reynolds, 0.6459)) + 0.4251 / (1 + 6880.95 / reynolds);
        double mass = Math.PI / 6 * size * size * size * Kind.DENSITY.si(garnet.density());
        double now = speed;
        double path = 0;
        double step = 1e-4;
        while (now > speed / Math.E) {
            now -= step * drag * air / 2 * Math.PI / 4 * size * size * now / mass;
            path += step;
        }
        double flight = garnet.flightLength(metresPerSecond(speed)).si();
        assertThat(flight).isEqualTo(path, within(0.01 * path + step));
        assertRefused(() -> garnet.flightLength(metresPerSecond(0)), "must-be-above", "speed of the particle", 0);
    }

    /** Full up to 100 diameters, as 1/x up to 500, as 1/x^2 behind. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 50, 100, 101, 250, 500, 501, 3000})
    void pressureOnTheAxisFallsByZones(double diameters) {
        double expected = diameters <= 100 ? 1 : diameters <= 500 ? 100 / diameters : 50_000 / (diameters * diameters);
        double diameter = 0.2e-3;
        assertThat(PlainJet.axisPressureRatioSi(diameters * diameter, diameter)).isEqualTo(expected, within(1e-9));
        PlainJet jet = new PlainJet(
                WaterJet.of(Orifice.sapphire(millimetres(0.25)), megapascals(380)), Kind.LENGTH.of(diameter));
        assertThat(jet.corePressure(Kind.LENGTH.of(diameters * diameter)).si())
                .isEqualTo(expected * 380e6, within(1.0));
        assertThat(jet).hasToString("pure waterjet of 0.2 mm diameter");
        assertThat(jet.describe()).containsEntry("diameter_m", diameter).containsKeys("water", "coherent_length");
        assertRefused(() -> new PlainJet(jet.water(), millimetres(0)), "must-be-above", "diameter of the jet", 0);
    }

    /** Half of the room that water and particles leave at the exit, where the air moves as fast as the water. */
    @ParameterizedTest
    @CsvSource({"0.76, 250", "0.9, 600", "0.6, 100"})
    void airTakesHalfOfTheRoomAtTheExit(double tubeMm, double grams) {
        AbrasiveJet jet = CuttingHead.of(
                        Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(tubeMm), millimetres(70)))
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(120)), gramsPerMinute(grams));
        TubeMixing mixing = TubeMixing.of(jet);
        double area = Math.PI / 4 * tubeMm * tubeMm * 1e-6;
        double room = area * Kind.SPEED.si(mixing.waterSpeed())
                - jet.waterVolumeFlowSi()
                - jet.abrasiveFlowSi() / Kind.DENSITY.si(jet.abrasive().density());
        assertThat(mixing.entrainedAir().si()).isEqualTo(room / 2, within(1e-9 * room));
    }

    @Test
    void aMixingModelIsItsCoefficients() {
        ValueContract.of(() -> MixingModel.of(0.3, 0.01, OWN).withDeviations(0.1, 0.2, 0.3))
                .has("drag", MixingModel::contactDrag, 0.3)
                .has("wall", MixingModel::wallCoefficient, 0.01)
                .has("deviation of the drag", MixingModel::dragDeviation, 0.1)
                .has("deviation of the wall", MixingModel::wallDeviation, 0.2)
                .has("correlation", MixingModel::correlation, 0.3)
                .has("evidence", MixingModel::evidence, OWN)
                .change("crowding", model -> model.withCrowding(0.4), model -> model.contactDragAt(0.4), 0.3 / Math.E)
                .differs("drag", MixingModel.of(0.31, 0.01, OWN).withDeviations(0.1, 0.2, 0.3))
                .differs("wall", MixingModel.of(0.3, 0.011, OWN).withDeviations(0.1, 0.2, 0.3))
                .differs("deviations", MixingModel.of(0.3, 0.01, OWN).withDeviations(0.1, 0.2, 0.4))
                .differs("evidence", MixingModel.standard())
                .prints("contact drag of 0.3", "wall coefficient of 0.01")
                .check();
        assertThat(MixingModel.of(0.3, 0.01, OWN)
                        .withCrowding(0.4)
                        .withDeviations(0, 0, 0)
                        .crowdingScale())
                .hasValue(0.4);
    }

    @Test
    void textsNameWhatIsThere() {
        assertThat(MixingEfficiency.of(0.8, 0.05, OWN)).hasToString("mixing efficiency 0.8 ± 0.05");
        assertThat(MixingEfficiency.decreasing(0.8, 0.05, 0.6, OWN))
                .hasToString("mixing efficiency 0.8 ± 0.05, decreasing with loading over 0.6");
        assertThat(MixingEfficiency.of(0.8, 0.05, OWN).describe()).doesNotContainKey("loading_scale");
        assertThat(MixingEfficiency.decreasing(0.8, 0.05, 0.6, OWN).describe()).containsEntry("loading_scale", 0.6);
        FocusingTube tube = FocusingTube.of(millimetres(0.76), millimetres(76));
        TubeWear wear = TubeWear.measured(tube.withExitBore(millimetres(0.86)), hours(50));
        // 0.1 mm in 50 h
        assertThat(Kind.SPEED.si(wear.rate())).isEqualTo(1e-4 / 180_000, within(1e-18));
        assertThat(wear.toString()).startsWith("exit bore grows by ").hasSizeGreaterThan(20);
        assertThat(Kind.LENGTH.si(wear.after(tube, hours(25)).exitBore())).isEqualTo(0.81e-3, within(1e-12));
        assertThat(Kind.TIME.si(wear.until(tube, millimetres(0.96)))).isEqualTo(100 * 3600, within(1e-6));
        assertThat(Kind.TIME.si(wear.until(tube, millimetres(0.7)))).isZero();
        ValueContract.of(() -> TubeWear.of(Kind.SPEED.of(1e-9)))
                .differs("rate", TubeWear.of(Kind.SPEED.of(2e-9)))
                .check();
        assertRefused(() -> TubeWear.measured(tube, hours(50)), "must-be-above", "wear rate of the focusing tube", 0);
    }
}
