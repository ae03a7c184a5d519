package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.pierce.PierceModel;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** Fits of kerf and pierce, in which the readings of one cut or one plate are one specimen. */
class SpecimensTest {

    private static final KerfModel TRUTH =
            KerfModel.standard().withDoseSpread(0.31, 0.1, KerfModel.standard().evidence());

    private static CutConditions steel(double standOffMm) {
        return CutConditions.of(
                CuttingHead.of(Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(76)))
                        .withStandOff(millimetres(standOffMm))
                        .jet(megapascals(350), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(400)),
                Workpiece.of(Materials.standard().get("mild-steel"), millimetres(20)),
                MachinabilityFeed.published());
    }

    /** Cuts whose widths are all off by one number for each cut, with sections read at some depths, each several times. */
    private static List<KerfMeasurement> cuts(int times) {
        double[] offsetsMm = {0.03, -0.04, 0.02, -0.03, 0.05, -0.02};
        List<KerfMeasurement> cuts = new ArrayList<>();
        for (double standOff : new double[] {1.5, 3, 4.5}) {
            for (double depthMm : new double[] {28, 120}) {
                CutConditions cut = steel(standOff);
                KerfMeasurement measured = KerfMeasurement.of(cut, millimetres(depthMm));
                double offsetM = offsetsMm[cuts.size()] * 1e-3;
                for (int k = 0; k < times; k++) {
                    for (double at : new double[] {0, 0.005, 0.01, 0.015, 0.02}) {
                        double width = 2 * TRUTH.halfWidthSi(cut, depthMm * 1e-3, at) + offsetM;
                        measured = measured.withWidthAt(Kind.LENGTH.of(at), Kind.LENGTH.of(width));
                    }
                }
                cuts.add(measured);
            }
        }
        return cuts;
    }

    private static double uncertainty(KerfModel model, String of) {
        return ((Number) Objects.requireNonNull(model.describe().get(of + "_relative_uncertainty"))).doubleValue();
    }

    /** Widths read twice as finely say nothing new about other cuts. */
    @Test
    void aKerfReadMoreFinelyIsNoSurer() {
        KerfModel once = KerfMeasurement.fit(cuts(4)).model();
        KerfModel often = KerfMeasurement.fit(cuts(8)).model();

        assertThat(often.doseRatio()).isCloseTo(once.doseRatio(), within(1e-9));
        for (String of : List.of("dose", "half_angle")) {
            assertThat(uncertainty(often, of)).isCloseTo(uncertainty(once, of), within(1e-6));
        }
        assertThat(KerfMeasurement.fit(cuts(8)).fit().standardError("spread of the dose over the bore"))
                .isLessThan(0.5 * uncertainty(often, "dose") * often.doseRatio());
    }

    /** Two plates that differ by 40 % in time, each pierced three times within 2 %. */
    private static List<PierceMeasurement> pierces(boolean areNamed) {
        List<PierceMeasurement> pierces = new ArrayList<>();
        double[] noise = {1.02, 0.98, 1.0, 0.99, 1.0, 1.01};
        for (int i = 0; i < noise.length; i++) {
            double time = 4 * noise[i] * (i < 3 ? 1.2 : 1 / 1.2);
            PierceMeasurement pierce = PierceMeasurement.of(millimetres(12), seconds(time));
            pierces.add(areNamed ? pierce.withPlate(i < 3 ? "P1" : "P2") : pierce);
        }
        return pierces;
    }

    /**
     * Balanced design in closed form: of the logarithms within and between plates, {@code tau^2 + sigma^2 = MSW + (MSB - MSW) / 3}.
     */
    @Test
    void thePierceOfAnotherPlateHasTheSpreadBetweenPlates() {
        double[] logs =
                pierces(true).stream().mapToDouble(PierceMeasurement::logTime).toArray();
        double first = (logs[0] + logs[1] + logs[2]) / 3;
        double second = (logs[3] + logs[4] + logs[5]) / 3;
        double within = 0;
        for (int i = 0; i < 6; i++) {
            within += Math.pow(logs[i] - (i < 3 ? first : second), 2) / 4;
        }
        double between = 3 * Math.pow(first - second, 2) / 2;
        PierceModel plates = PierceMeasurement.fit(pierces(true)).model();
        PierceModel alike = PierceMeasurement.fit(pierces(false)).model();

        assertThat(plates.relativeUncertainty()).isCloseTo(Math.sqrt(within + (between - within) / 3), within(1e-4));
        assertThat(alike.relativeUncertainty()).isLessThan(0.85 * plates.relativeUncertainty());
        assertThat(plates.describe().get("rate")).isEqualTo(alike.describe().get("rate"));
    }

    /** A plate of its own for each pierce, or one for all, does not show the spread between them. */
    @Test
    void platesThatSayNothingChangeNothing() {
        List<PierceMeasurement> plain = pierces(false);
        List<PierceMeasurement> one =
                plain.stream().map(pierce -> pierce.withPlate("P")).toList();

        assertThat(PierceMeasurement.fit(one).model())
                .isEqualTo(PierceMeasurement.fit(plain).model());
    }
}
