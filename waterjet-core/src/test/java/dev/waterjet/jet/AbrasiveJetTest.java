package dev.waterjet.jet;

import dev.waterjet.evidence.Caution;
import dev.waterjet.hydraulics.JetSpeedModel;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.measure.Kind;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

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
        AbrasiveJet worn = jet.withHead(
                jet.head().withTube(jet.head().tube().withExitBore(millimetres(0.9))).withStandOff(millimetres(3)));
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
                    assertThat(caution.text()).contains("loading ratio is 0.3;");
                });
    }

    /** The largest grains of 80 mesh have 300 um: a third of 0.9 mm, and 0.6 of 0.5 mm. */
    @Test
    void grainsOfMoreThanAThirdOfTheBoreDrawAWarning() {
        assertThat(jet.withHead(head(0.25, 0.9, 76)).cautions()).isEmpty();
        assertThat(head(0.15, 0.5, 40)
                        .jet(megapascals(380), GARNET, gramsPerMinute(100))
                        .cautions())
                .singleElement()
                .satisfies(caution -> {
                    assertThat(caution.code()).isEqualTo("grain-to-bore");
                    assertThat(caution.text()).contains("the largest grains are 0.6 of the focusing tube's bore");
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
    void usualHeadsEndWhereTheRulesSay() {
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
        assertThat(head(0.25, 1, 80)
                        .withStandOff(millimetres(6))
                        .cautions()
                        .get(0)
                        .text())
                .isEqualTo("stand-off is 6 mm; 1.5 to 4 mm is usual");
        assertThat(head(0.2, 1, 80).cautions().get(0).text())
                .isEqualTo("the focusing tube is 5 times as wide as the orifice; 2.5 to 4 is usual, about 3 best");
        assertThat(head(0.25, 1, 40).cautions().get(0).text())
                .isEqualTo("the focusing tube is 40 bores long; 50 to 100 is usual");
    }

    private static String code(CuttingHead head) {
        assertThat(head.cautions()).hasSize(1);
        return head.cautions().get(0).code();
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThatThrownBy(() -> jet.withAbrasiveFlow(gramsPerMinute(0)))
                .hasMessage("abrasive flow is 0 g/min; it must be above 0 g/min");
        assertThatThrownBy(() -> head(0.25, 0.76, 0.76))
                .hasMessage("focusing-tube length is 0.76 mm; it must be above 0.76 mm (a tube is longer than wide)");
        assertThatThrownBy(() -> head(0.25, 0, 76)).hasMessageContaining("focusing-tube bore is 0 mm");
        assertThatThrownBy(() -> jet.head().withStandOff(millimetres(-1))).hasMessageContaining("stand-off is -1 mm");
        assertThat(jet.head().withStandOff(millimetres(0)).standOffSi()).isZero();
        assertThatThrownBy(() -> Abrasive.of("dust", Kind.DENSITY.of(0), Mesh.of(80), 1))
                .hasMessageContaining("density of the abrasive is 0 kg/m3");
        assertThatThrownBy(() -> Abrasive.of("dust", Kind.DENSITY.of(4000), Mesh.of(80), 0))
                .hasMessageContaining("cutting factor of the abrasive is 0");
    }
}
