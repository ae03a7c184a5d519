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
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Geometry at the rules of the trade and just beyond them, and the uncertainty of the mixing by differences. */
class HeadGeometryTest {

    /** A power of two, so that a ratio to it is exact. */
    private static final double BORE = Math.scalb(1.0, -12);

    private static CuttingHead head(double tubeM, double lengthM) {
        return CuttingHead.of(
                Orifice.sapphire(Kind.LENGTH.of(BORE)),
                FocusingTube.of(Kind.LENGTH.of(tubeM), Kind.LENGTH.of(lengthM)));
    }

    private static List<String> codes(CuttingHead head) {
        return head.cautions().stream().map(Caution::code).toList();
    }

    private static double parameter(CuttingHead head, String key) {
        return (double) Objects.requireNonNull(
                head.cautions().get(0).message().parameters().get(key));
    }

    @ParameterizedTest
    @CsvSource({"2.5, false", "4, true"})
    void boreRatioHasItsLimits(double ratio, boolean isMaximum) {
        double tube = ratio * BORE;
        assertThat(codes(head(tube, 75 * tube))).isEmpty();
        double beyond = isMaximum ? Math.nextUp(tube) : Math.nextDown(tube);
        CuttingHead cautioned = head(beyond, 75 * tube);
        assertThat(codes(cautioned)).containsExactly("bore-ratio");
        assertThat(parameter(cautioned, "ratio")).isEqualTo(beyond / BORE);
    }

    @ParameterizedTest
    @CsvSource({"50, false", "100.5, true"})
    void tubeLengthHasItsLimits(double ratio, boolean isMaximum) {
        double tube = 3 * BORE;
        assertThat(codes(head(tube, ratio * tube))).isEmpty();
        double beyond = ratio * tube * (isMaximum ? 1 + 1e-12 : 1 - 1e-12);
        CuttingHead cautioned = head(tube, beyond);
        assertThat(codes(cautioned)).containsExactly("tube-length");
        assertThat(parameter(cautioned, "ratio")).isEqualTo(beyond / tube);
    }

    /** 1.5 to 4 mm, and below a bore of 0.5 mm 3 to 8 bores; 2 mm or 4 bores where none is stated. */
    @ParameterizedTest
    @ValueSource(doubles = {0.0002, 0.00035, 0.0005, 0.00076, 0.001})
    void standOffGoesWithTheBoreOfMicroHeads(double tubeM) {
        CuttingHead head = CuttingHead.of(
                Orifice.sapphire(Kind.LENGTH.of(tubeM / 3)),
                FocusingTube.of(Kind.LENGTH.of(tubeM), Kind.LENGTH.of(75 * tubeM)));
        double least = Math.min(0.0015, 3 * tubeM);
        double most = Math.min(0.004, 8 * tubeM);
        assertThat(Kind.LENGTH.si(head.standOff())).isEqualTo(Math.min(0.002, 4 * tubeM), within(1e-15));
        for (double inside : new double[] {least * (1 + 1e-12), most * (1 - 1e-12)}) {
            assertThat(codes(head.withStandOff(Kind.LENGTH.of(inside)))).isEmpty();
        }
        for (double outside : new double[] {least * (1 - 1e-9), most * (1 + 1e-9)}) {
            CuttingHead cautioned = head.withStandOff(Kind.LENGTH.of(outside));
            assertThat(codes(cautioned)).containsExactly("stand-off");
            assertThat(parameter(cautioned, "stand_off_m")).isEqualTo(outside);
            assertThat(parameter(cautioned, "minimum_m")).isEqualTo(least, within(1e-15));
            assertThat(parameter(cautioned, "maximum_m")).isEqualTo(most, within(1e-15));
        }
        assertThat(codes(CuttingHead.of(
                                Orifice.sapphire(millimetres(0.25)),
                                FocusingTube.of(millimetres(0.76), millimetres(76)))
                        .withStandOff(millimetres(1.5))))
                .isEmpty();
        assertRefused(() -> head.withStandOff(millimetres(-1)), "must-be-at-least", "stand-off distance", 0);
    }

    @Test
    void onlyAWornTubeNamesItsExit() {
        FocusingTube tube = FocusingTube.of(millimetres(0.76), millimetres(76));
        assertThat(tube).hasToString("focusing tube 0.76 mm x 76 mm");
        assertThat(tube.withExitBore(millimetres(0.76))).hasToString("focusing tube 0.76 mm x 76 mm");
        assertThat(tube.withExitBore(millimetres(0.9))).hasToString("focusing tube 0.76 mm x 76 mm, exit bore 0.9 mm");
        assertThat(tube.withExitBore(millimetres(0.9)).describe())
                .containsEntry("bore_m", 0.76e-3)
                .containsEntry("exit_bore_m", 0.9e-3)
                .containsEntry("length_m", 0.076);
    }

    private static MixingModel model(double contactDrag, double wall) {
        return MixingModel.of(
                contactDrag, wall, Evidence.of(EvidenceGrade.FITTED, Source.of("speeds of the Hollow Ridge workshop")));
    }

    /** Half the difference between coefficients one deviation above and below, and the balances at the exit. */
    @ParameterizedTest
    @CsvSource({"250, 0.1, 0.2", "30, 0.3, 0.05", "500, 0, 0.3", "120, 0.25, 0"})
    void mixingMovesAsItsCoefficients(double gramsPerMinute, double dragDeviation, double wallDeviation) {
        AbrasiveJet jet = CuttingHead.of(
                        Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(76)))
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(gramsPerMinute));
        double loading = jet.abrasiveFlowSi() / jet.waterMassFlowSi();
        TubeMixing mixing = model(0.3, 0.001)
                .withDeviations(dragDeviation, wallDeviation, 0)
                .mixing(jet);
        double byDrag = (efficiency(0.3 * Math.exp(dragDeviation), 0.001, jet)
                        - efficiency(0.3 * Math.exp(-dragDeviation), 0.001, jet))
                / 2;
        double byWall = (efficiency(0.3, 0.001 * Math.exp(wallDeviation), jet)
                        - efficiency(0.3, 0.001 * Math.exp(-wallDeviation), jet))
                / 2;
        assertThat(mixing.efficiency().standardUncertaintySi()).isEqualTo(Math.hypot(byDrag, byWall), within(1e-12));
        double ideal = jet.waterSpeedSi() / (1 + loading);
        assertThat(mixing.particleSpeed().si()).isEqualTo(mixing.efficiency().si() * ideal, within(1e-9));
        assertThat(model(0.3, 0.001).particleSpeedSi(jet))
                .isEqualTo(mixing.particleSpeed().si(), within(1e-9));
        assertThat(mixing.particleSpeed().standardUncertaintySi())
                .isEqualTo(mixing.efficiency().standardUncertaintySi() * ideal, within(1e-9));
        assertThat(Kind.FORCE.si(mixing.thrust()))
                .isEqualTo(
                        jet.waterMassFlowSi() * Kind.SPEED.si(mixing.waterSpeed())
                                + jet.abrasiveFlowSi() * mixing.particleSpeed().si(),
                        within(1e-9));
        assertThat(mixing.describe())
                .containsEntry("water_speed_m_per_s", Kind.SPEED.si(mixing.waterSpeed()))
                .containsEntry("thrust_N", Kind.FORCE.si(mixing.thrust()))
                .containsKeys("efficiency", "particle_speed", "entrained_air", "cautions");
    }

    private static double efficiency(double drag, double wall, AbrasiveJet jet) {
        return model(drag, wall).mixing(jet).efficiency().si();
    }
}
