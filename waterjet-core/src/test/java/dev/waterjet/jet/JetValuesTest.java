package dev.waterjet.jet;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.kilogramsPerCubicMetre;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.hydraulics.JetSpeedModel;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.measure.Kind;
import org.junit.jupiter.api.Test;

class JetValuesTest {

    private static final Evidence OWN = Evidence.of(EvidenceGrade.ASSUMED, Source.of("logbook of Hollow Ridge"));

    private static CuttingHead head() {
        return CuttingHead.of(Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(76)));
    }

    private static AbrasiveJet jet() {
        return head().jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(300));
    }

    @Test
    void aMeshIsItsNameAndItsGrains() {
        ValueContract.of(() -> Mesh.ofGrainSizes(micrometres(100), micrometres(180), micrometres(300)))
                .has("name", Mesh::name, "measured grain sizes")
                .has("minimum grain size", Mesh::minimumGrainSize, micrometres(100))
                .has("mean grain size", Mesh::meanGrainSize, micrometres(180))
                .has("mean grain size in SI", Mesh::meanGrainSizeSi, 180e-6)
                .has("maximum grain size", Mesh::maximumGrainSize, micrometres(300))
                .has("maximum grain size in SI", Mesh::maximumGrainSizeSi, 300e-6)
                .differs("smallest", Mesh.ofGrainSizes(micrometres(90), micrometres(180), micrometres(300)))
                .differs("mean", Mesh.ofGrainSizes(micrometres(100), micrometres(190), micrometres(300)))
                .differs("largest", Mesh.ofGrainSizes(micrometres(100), micrometres(180), micrometres(310)))
                .prints("measured grain sizes")
                .check();
        ValueContract.of(() -> Mesh.of(80))
                .has("name", Mesh::name, "80 mesh")
                .differs("name", Mesh.ofGrainSizes(micrometres(150), micrometres(180), micrometres(300)))
                .check();
    }

    @Test
    void anAbrasiveIsItsNameDensityMeshAndFactor() {
        ValueContract.of(() -> Abrasive.of("olivine", kilogramsPerCubicMetre(3300), Mesh.of(80), 0.7))
                .has("name", Abrasive::name, "olivine")
                .has("density", Abrasive::density, kilogramsPerCubicMetre(3300))
                .has("cutting factor", Abrasive::cuttingFactor, 0.7)
                .change("mesh", grain -> grain.withMesh(Mesh.of(120)), Abrasive::mesh, Mesh.of(120))
                .differs("name", Abrasive.of("garnet", kilogramsPerCubicMetre(3300), Mesh.of(80), 0.7))
                .differs("density", Abrasive.of("olivine", kilogramsPerCubicMetre(3200), Mesh.of(80), 0.7))
                .differs("factor", Abrasive.of("olivine", kilogramsPerCubicMetre(3300), Mesh.of(80), 0.8))
                .prints("olivine", "80 mesh")
                .check();
        assertThat(Abrasive.garnet(Mesh.of(80)).cuttingFactor()).isEqualTo(1);
        assertThat(Kind.DENSITY.si(Abrasive.garnet(Mesh.of(80)).density())).isBetween(4000.0, 4200.0);
    }

    @Test
    void aTubeIsItsBoresAndItsLength() {
        ValueContract.of(() -> FocusingTube.of(millimetres(0.76), millimetres(76)))
                .has("bore", FocusingTube::bore, millimetres(0.76))
                .has("bore as a number", FocusingTube::boreSi, 0.76e-3)
                .has("length", FocusingTube::length, millimetres(76))
                .has("length as a number", FocusingTube::lengthSi, 0.076)
                .change(
                        "exit bore",
                        tube -> tube.withExitBore(millimetres(0.9)),
                        FocusingTube::exitBore,
                        millimetres(0.9))
                .differs("bore", FocusingTube.of(millimetres(0.8), millimetres(76)))
                .differs("length", FocusingTube.of(millimetres(0.76), millimetres(80)))
                .check();
    }

    @Test
    void aHeadIsItsOrificeTubeStandOffAndMixing() {
        Orifice wide = Orifice.sapphire(millimetres(0.3));
        FocusingTube wideTube = FocusingTube.of(millimetres(0.9), millimetres(76));
        MixingEfficiency own = MixingEfficiency.of(0.7, 0.05, OWN);
        ValueContract.of(JetValuesTest::head)
                .change("orifice", head -> head.withOrifice(wide), CuttingHead::orifice, wide)
                .change("tube", head -> head.withTube(wideTube), CuttingHead::tube, wideTube)
                .change("stand-off", head -> head.withStandOff(millimetres(3)), CuttingHead::standOff, millimetres(3))
                .change("mixing", head -> head.withMixing(own), CuttingHead::mixing, own)
                .prints("0.25 mm", "0.76 mm", "2 mm")
                .check();
        assertThat(head().standOffSi()).isEqualTo(0.002);
    }

    @Test
    void aMixingEfficiencyIsItsNumbersAndTheirEvidence() {
        ValueContract.of(() -> MixingEfficiency.decreasing(0.8, 0.05, 0.6, OWN))
                .has("evidence", MixingEfficiency::evidence, OWN)
                .has("value", mixing -> mixing.value().si(), 0.8)
                .has("uncertainty", mixing -> mixing.value().standardUncertaintySi(), 0.05)
                .differs("value", MixingEfficiency.decreasing(0.7, 0.05, 0.6, OWN))
                .differs("uncertainty", MixingEfficiency.decreasing(0.8, 0.06, 0.6, OWN))
                .differs("scale", MixingEfficiency.decreasing(0.8, 0.05, 0.7, OWN))
                .differs("no scale", MixingEfficiency.of(0.8, 0.05, OWN))
                .differs(
                        "evidence",
                        MixingEfficiency.decreasing(
                                0.8, 0.05, 0.6, Evidence.of(EvidenceGrade.ASSUMED, Source.of("a guess"))))
                .check();
    }

    @Test
    void aJetIsItsHeadWaterAbrasiveAndFlow() {
        CuttingHead longer = head().withTube(FocusingTube.of(millimetres(0.8), millimetres(80)));
        ValueContract.of(JetValuesTest::jet)
                .has("abrasive", AbrasiveJet::abrasive, Abrasive.garnet(Mesh.of(80)))
                .change(
                        "pressure",
                        jet -> jet.withPressure(megapascals(350)),
                        jet -> jet.water().pressure(),
                        megapascals(350))
                .change(
                        "abrasive flow",
                        jet -> jet.withAbrasiveFlow(gramsPerMinute(250)),
                        AbrasiveJet::abrasiveFlow,
                        gramsPerMinute(250))
                .change("head", jet -> jet.withHead(longer), AbrasiveJet::head, longer)
                .differs("water", jet().withWater(jet().water().withSpeedModel(JetSpeedModel.TAIT)))
                .differs("abrasive", head().jet(megapascals(380), Abrasive.garnet(Mesh.of(100)), gramsPerMinute(300)))
                .prints("380 MPa", "0.25 mm", "0.76 mm", "300 g/min", "garnet 80 mesh")
                .check();
        assertThat(jet().abrasiveFlowSi()).isEqualTo(0.005);
    }
}
