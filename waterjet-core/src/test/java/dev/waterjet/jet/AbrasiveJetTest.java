package dev.waterjet.jet;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.hydraulics.JetSpeedModel;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.measure.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AbrasiveJetTest {

    private static final Abrasive GARNET = Abrasive.garnet(Mesh.of(80));

    private static CuttingHead head(double orificeMm, double tubeMm, double lengthMm) {
        return CuttingHead.of(
                Orifice.sapphire(millimetres(orificeMm)), FocusingTube.of(millimetres(tubeMm), millimetres(lengthMm)));
    }

    private final AbrasiveJet jet = head(0.25, 0.76, 76).jet(megapascals(380), GARNET, gramsPerMinute(300));

    /** v_a = eta v / (1 + R), R = m_a / m_w. */
    @Test
    void momentumIsShared() {
        double loading = 0.005 / jet.water().massFlowSi();

        assertThat(jet.loadingRatioSi()).isEqualTo(loading);
        assertThat(Kind.RATIO.si(jet.loadingRatio())).isEqualTo(loading);
        assertThat(jet.particleSpeed().si())
                .isEqualTo(jet.particleSpeedSi())
                .isCloseTo(0.75 * jet.water().speedSi() / (1 + loading), within(1e-9));
        assertThat(jet.particleSpeed().relativeUncertainty()).isCloseTo(0.1 / 0.75, within(1e-12));
    }

    @Test
    void aLoopOverSettingsSeesWhatAJetOfThoseSettingsSees() {
        AbrasiveJet other = head(0.3, 0.9, 76).jet(megapascals(350), GARNET, gramsPerMinute(420));

        assertThat(jet.particleSpeedAtSi(350e6, 0.0003, 0.007)).isEqualTo(other.particleSpeedSi());
        assertThat(jet.withHead(other.head()).withPressure(megapascals(350)).withAbrasiveFlow(gramsPerMinute(420)))
                .isEqualTo(other);
    }

    @Test
    void settingsAreThoseOfItsParts() {
        AbrasiveJet worn = jet.withHead(jet.head()
                .withTube(jet.head().tube().withExitBore(millimetres(0.9)))
                .withStandOff(millimetres(3)));
        JetSettings settings = worn;

        assertThat(settings.pressureSi()).isEqualTo(380e6);
        assertThat(settings.orificeBoreSi()).isEqualTo(0.25e-3);
        assertThat(settings.tubeBoreSi()).isEqualTo(0.76e-3);
        assertThat(settings.tubeExitBoreSi()).isEqualTo(0.9e-3);
        assertThat(settings.standOffSi()).isEqualTo(3e-3);
        assertThat(settings.abrasive()).isEqualTo(GARNET);
        assertThat(settings.abrasiveFlowSi()).isEqualTo(0.005);
        assertThat(settings.waterVolumeFlowSi()).isEqualTo(worn.water().volumeFlowSi());
        assertThat(settings.waterMassFlowSi()).isEqualTo(worn.water().massFlowSi());
        assertThat(settings.waterSpeedSi()).isEqualTo(worn.water().speedSi());
        assertThat(settings.loadingRatioSi()).isEqualTo(0.005 / worn.water().massFlowSi());
    }

    @Test
    void anotherWaterJetBringsItsOrificeAlong() {
        WaterJet wide = WaterJet.of(Orifice.diamond(millimetres(0.3)), megapascals(200))
                .withSpeedModel(JetSpeedModel.INCOMPRESSIBLE);
        AbrasiveJet changed = jet.withWater(wide);

        assertThat(changed.water()).isEqualTo(wide);
        assertThat(changed.head().orifice()).isEqualTo(wide.orifice());
        assertThat(changed.head().tube()).isEqualTo(jet.head().tube());
        assertThat(changed.abrasive()).isEqualTo(GARNET);
        assertThat(changed.abrasiveFlowSi()).isEqualTo(0.005);
    }

    @Test
    void anotherHeadFeedsItsOwnOrifice() {
        AbrasiveJet changed = jet.withHead(head(0.3, 0.9, 76));

        assertThat(changed.water().orifice().boreSi()).isEqualTo(0.0003);
        assertThat(changed.water().pressureSi()).isEqualTo(380e6);
    }

    /** Water of 0.25 mm at 380 MPa is about 1.67 kg/min: a quarter of it is about 0.42 kg/min. */
    @Test
    void moreThanAQuarterOfAbrasiveDrawsANotice() {
        AbrasiveJet fine = jet.head().jet(megapascals(380), Abrasive.garnet(Mesh.of(120)), gramsPerMinute(300));
        double quarter = 0.25 * fine.water().massFlowSi();

        assertThat(fine.withAbrasiveFlow(Kind.MASS_FLOW.of(0.99 * quarter)).cautions())
                .isEmpty();
        assertThat(fine.withAbrasiveFlow(Kind.MASS_FLOW.of(1.2 * quarter)).cautions())
                .singleElement()
                .satisfies(caution -> {
                    assertThat(caution.code()).isEqualTo("loading");
                    assertThat(caution.severity()).isEqualTo(Caution.Severity.NOTICE);
                    assertThat((double) java.util.Objects.requireNonNull(
                                    caution.message().parameters().get("ratio")))
                            .isCloseTo(0.3, within(1e-12));
                });
    }

    /** The maximum grain size of 80 mesh is 300 um: a third of 0.9 mm, and 0.6 of 0.5 mm. */
    @Test
    void grainsOfMoreThanAThirdOfTheBoreDrawAWarning() {
        assertThat(jet.withHead(head(0.25, 0.9, 76)).cautions()).isEmpty();
        assertThat(head(0.15, 0.5, 40)
                        .jet(megapascals(380), GARNET, gramsPerMinute(100))
                        .cautions())
                .singleElement()
                .satisfies(caution -> {
                    assertThat(caution.code()).isEqualTo("grain-to-bore");
                    assertThat((double) java.util.Objects.requireNonNull(
                                    caution.message().parameters().get("ratio")))
                            .isCloseTo(0.6, within(1e-12));
                });
    }

    @Test
    void cautionsOfTheHeadTravelWithTheJetAndItsEstimates() {
        AbrasiveJet far = jet.withHead(head(0.25, 0.91, 76).withStandOff(millimetres(5)));

        assertThat(far.cautions()).isEqualTo(far.head().cautions()).hasSize(1);
        assertThat(far.particleSpeed().cautions()).isEqualTo(far.cautions());
        assertThat(far.abrasivePower().cautions()).isEqualTo(far.cautions());
    }

    @Test
    void cautionsBeginAtTheLimitsOfCommonPractice() {
        // exactly 2.5 and 4 orifice bores, 50 tube bores, 1.5 and 4 mm
        assertThat(head(0.2, 0.5, 40).cautions()).isEmpty();
        assertThat(head(0.2, 0.8, 60).cautions()).isEmpty();
        assertThat(head(0.25, 1, 50).cautions()).isEmpty();
        assertThat(head(0.25, 1, 100).cautions()).isEmpty();
        assertThat(head(0.25, 1, 80).withStandOff(millimetres(1.5)).cautions()).isEmpty();
        assertThat(head(0.25, 1, 80).withStandOff(millimetres(4)).cautions()).isEmpty();
        // just beyond
        assertThat(code(head(0.2, 0.49, 40))).isEqualTo("bore-ratio");
        assertThat(code(head(0.2, 0.81, 60))).isEqualTo("bore-ratio");
        assertThat(code(head(0.25, 1, 49.9))).isEqualTo("tube-length");
        assertThat(code(head(0.25, 1, 101))).isEqualTo("tube-length");
        assertThat(code(head(0.25, 1, 80).withStandOff(millimetres(1.49)))).isEqualTo("stand-off");
        assertThat(code(head(0.25, 1, 80).withStandOff(millimetres(4.01)))).isEqualTo("stand-off");
    }

    @ParameterizedTest
    @CsvSource({"0.1, 0.3, 1.2", "0.07, 0.2, 0.8", "0.17, 0.5, 2", "0.33, 1.02, 2"})
    void theDefaultStandOffOfMicroHeadsIsFourBores(double orificeMm, double tubeMm, double expectedMm) {
        CuttingHead head = head(orificeMm, tubeMm, 80 * tubeMm);

        assertThat(head.standOffSi()).isCloseTo(expectedMm * 1e-3, within(1e-12));
        assertThat(head.cautions()).isEmpty();
        assertThat(code(head.withStandOff(millimetres(0.7 * expectedMm)))).isEqualTo("stand-off");
        assertThat(code(head.withStandOff(millimetres(2.1 * expectedMm)))).isEqualTo("stand-off");
    }

    @Test
    void aCautionGivesTheValueThatDrawsIt() {
        assertThat(parameter(head(0.25, 1, 80).withStandOff(millimetres(6)), "stand_off_m"))
                .isCloseTo(6e-3, within(1e-15));
        assertThat(parameter(head(0.2, 1, 80), "ratio")).isCloseTo(5, within(1e-12));
        assertThat(parameter(head(0.25, 1, 40), "ratio")).isCloseTo(40, within(1e-12));
    }

    private static double parameter(CuttingHead head, String key) {
        return (double) java.util.Objects.requireNonNull(
                head.cautions().get(0).message().parameters().get(key));
    }

    private static String code(CuttingHead head) {
        assertThat(head.cautions()).hasSize(1);
        return head.cautions().get(0).code();
    }

    @Test
    void impossibleSettingsAreRefused() {
        assertRefused(() -> jet.withAbrasiveFlow(gramsPerMinute(0)), "must-be-above", "abrasive flow rate", 0);
        assertRefused(() -> head(0.25, 0.76, 0.76), "must-be-above", "focusing tube length", 0.00076);
        assertRefused(() -> head(0.25, 0, 76), "must-be-above", "focusing tube bore", 0);
        assertRefused(() -> jet.head().withStandOff(millimetres(-1)), "must-be-at-least", "stand-off distance", 0);
        assertThat(jet.head().withStandOff(millimetres(0)).standOffSi()).isZero();
        assertRefused(
                () -> Abrasive.of("dust", Kind.DENSITY.of(0), Mesh.of(80), 1),
                "must-be-above",
                "density of the abrasive",
                0);
        assertRefused(
                () -> Abrasive.of("dust", Kind.DENSITY.of(4000), Mesh.of(80), 0),
                "must-be-above",
                "cutting factor of the abrasive",
                0);
    }
}
