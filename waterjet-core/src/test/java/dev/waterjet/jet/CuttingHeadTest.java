package dev.waterjet.jet;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.measure.Kind;
import org.junit.jupiter.api.Test;

class CuttingHeadTest {

    private static CuttingHead head(double orificeMm, double tubeMm, double lengthMm) {
        return CuttingHead.of(
                Orifice.sapphire(millimetres(orificeMm)), FocusingTube.of(millimetres(tubeMm), millimetres(lengthMm)));
    }

    @Test
    void aUsualHeadDrawsNoCaution() {
        assertThat(head(0.25, 0.76, 76).cautions()).isEmpty();
    }

    @Test
    void rulesOfTheTradeDrawCautions() {
        assertThat(head(0.25, 0.5, 76).withStandOff(millimetres(6)).cautions())
                .extracting(Caution::code)
                .containsExactlyInAnyOrder("bore-ratio", "tube-length", "stand-off");
    }

    @Test
    void aTubeNoWiderThanItsOrificeIsRefused() {
        assertRefused(() -> head(0.3, 0.3, 76), "must-be-above", "focusing tube bore", 0.0003);
    }

    @Test
    void grainsThatClogAreRefusedAndLargeOnesCautioned() {
        CuttingHead fine = head(0.08, 0.24, 24);

        assertRefused(
                () -> fine.jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(30)),
                "must-be-at-most",
                "maximum grain size of the abrasive",
                0.24e-3);
        assertThat(fine.jet(megapascals(380), Abrasive.garnet(Mesh.of(120)), gramsPerMinute(5))
                        .cautions())
                .extracting(Caution::code)
                .contains("grain-to-bore");
    }

    @Test
    void powerOfTheAbrasiveGoesWithTheSquareOfItsSpeed() {
        AbrasiveJet jet = head(0.25, 0.76, 76).jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(300));
        double speed = jet.particleSpeed().si();

        assertThat(jet.abrasivePower().si()).isCloseTo(0.005 * speed * speed / 2, within(1e-9));
        assertThat(jet.abrasivePower().relativeUncertainty())
                .isCloseTo(2 * jet.particleSpeed().relativeUncertainty(), within(1e-12));
    }

    @Test
    void theJetHasLessPowerThanThePumpGives() {
        AbrasiveJet jet = head(0.25, 0.76, 76).jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(300));

        assertThat(jet.abrasivePower().si())
                .isLessThan(Kind.POWER.si(jet.water().kineticPower()));
        assertThat(Kind.POWER.si(jet.water().kineticPower()))
                .isLessThan(Kind.POWER.si(jet.water().ratedHydraulicPower()));
    }

    @Test
    void meshesOutsideTheSeriesAreRefusedWithTheNearest() {
        assertRefused(() -> Mesh.of(85), "not-in-series", "sieve number", 80);
        assertRefused(
                () -> Mesh.ofGrainSizes(micrometres(200), micrometres(100), micrometres(300)),
                "must-be-at-least",
                "mean grain size",
                2e-4);
    }

    @Test
    void aWornTubeIsWiderAtItsExitOnly() {
        FocusingTube worn = FocusingTube.of(millimetres(0.76), millimetres(76)).withExitBore(millimetres(0.85));

        assertThat(worn.boreSi()).isEqualTo(0.00076);
        assertThat(worn.exitBoreSi()).isEqualTo(0.00085);
        assertRefused(
                () -> worn.withExitBore(millimetres(0.7)),
                "must-be-at-least",
                "exit bore of the focusing tube",
                0.76e-3);
    }
}
