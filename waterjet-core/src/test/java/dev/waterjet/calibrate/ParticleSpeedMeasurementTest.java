package dev.waterjet.calibrate;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.jet.MixingModel;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ParticleSpeedMeasurementTest {

    private static AbrasiveJet jet(double lengthMm, double flow) {
        return CuttingHead.of(
                        Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(lengthMm)))
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(flow));
    }

    private static ParticleSpeedMeasurement exact(MixingModel truth, AbrasiveJet jet) {
        return ParticleSpeedMeasurement.of(jet, Kind.SPEED.of(truth.particleSpeedSi(jet)));
    }

    private static MixingModel model(double drag, double wall) {
        return MixingModel.of(drag, wall, MixingModel.standard().evidence());
    }

    @Test
    void oneSpeedMovesTheContactDragAndKeepsTheWall() {
        AbrasiveJet jet = jet(76, 250);
        MixingModel own = ParticleSpeedMeasurement.fit(List.of(exact(model(0.12, 0.001), jet)), 0.03)
                .model();
        assertThat(own.contactDrag()).isCloseTo(0.12, within(0.012));
        assertThat(own.wallCoefficient()).isCloseTo(0.001, within(0.00015));
        assertThat(own.evidence().grade()).isEqualTo(EvidenceGrade.FITTED);
        // the efficiency of that head is now about as uncertain as the speed, that of the default model several times
        // as much
        double own76 = own.efficiency(jet).value().standardUncertaintySi();
        assertThat(own76).isBetween(0.01, 0.03);
        assertThat(MixingModel.standard().efficiency(jet).value().standardUncertaintySi())
                .isGreaterThan(3 * own76);
    }

    @Test
    void speedsAtLongAndShortTubesTellTheWallToo() {
        MixingModel truth = model(0.2, 0.003);
        List<ParticleSpeedMeasurement> speeds = new ArrayList<>();
        for (double length : new double[] {25, 76, 150, 300}) {
            speeds.add(exact(truth, jet(length, 250)));
        }
        MixingModel own = ParticleSpeedMeasurement.fit(speeds, 0.005).model();
        assertThat(own.contactDrag()).isCloseTo(0.2, within(0.004));
        assertThat(own.wallCoefficient()).isCloseTo(0.003, within(0.0001));
        assertThat(own.crowdingScale()).isEmpty();
        FittedModel<MixingModel> poor = ParticleSpeedMeasurement.fit(speeds, 0.5);
        assertThat(poor.fit().standardError("contact drag")).isGreaterThan(0.05);
        assertThat(poor.fit().observations()).isEqualTo(6);
    }

    @Test
    void speedsAtLightAndHeavyLoadingTellTheCrowding() {
        MixingModel truth = model(0.26, 0.001).withCrowding(0.4);
        List<ParticleSpeedMeasurement> speeds = new ArrayList<>();
        for (double flow : new double[] {60, 150, 300, 600}) {
            speeds.add(exact(truth, jet(76, flow)));
        }
        MixingModel own = ParticleSpeedMeasurement.fit(speeds, 0.005).model();
        assertThat(own.crowdingScale().orElseThrow()).isCloseTo(0.4, within(0.02));
        assertThat(own.contactDrag()).isCloseTo(0.26, within(0.01));
        assertThat(ParticleSpeedMeasurement.fit(speeds.subList(0, 3), 0.005)
                        .model()
                        .crowdingScale())
                .isEmpty();
    }

    /** Particles that do not crowd: their speeds fall with the loading by momentum alone. */
    @Test
    void speedsWithoutCrowdingGiveNone() {
        List<ParticleSpeedMeasurement> speeds = new ArrayList<>();
        for (double flow : new double[] {60, 150, 300, 600}) {
            speeds.add(exact(model(0.2, 0.001), jet(76, flow)));
        }
        MixingModel own = ParticleSpeedMeasurement.fit(speeds, 0.02).model();
        assertThat(own.crowdingScale()).isEmpty();
        assertThat(own.contactDrag()).isCloseTo(0.2, within(0.01));
    }

    @Test
    void speedsOutOfReachAreRefused() {
        AbrasiveJet jet = jet(76, 250);
        assertRefused(
                () -> ParticleSpeedMeasurement.of(jet, metresPerSecond(900)),
                "must-be-at-most",
                "particle speed",
                jet.waterSpeedSi() / (1 + jet.loadingRatioSi()));
        assertRefused(() -> ParticleSpeedMeasurement.of(jet, metresPerSecond(0)), "must-be-above", "particle speed", 0);
        assertThat(Refusals.of(() -> ParticleSpeedMeasurement.fit(List.of(), 0.05)))
                .isEqualTo("too-few-speeds");
        ParticleSpeedMeasurement measured = ParticleSpeedMeasurement.of(jet, metresPerSecond(500));
        assertRefused(
                () -> ParticleSpeedMeasurement.fit(List.of(measured), 2),
                "must-be-at-most",
                "relative deviation of a particle speed",
                1);
    }
}
