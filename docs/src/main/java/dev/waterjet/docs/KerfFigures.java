package dev.waterjet.docs;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.examples.chart.Chart;
import dev.waterjet.examples.chart.KerfDrawing;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.QualityIndexTable;
import dev.waterjet.surface.RoughnessModel;
import dev.waterjet.surface.SurfaceRoughness;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Figures about kerfs and faces. */
final class KerfFigures {

    private static final double[] INDICES = IntStream.rangeClosed(0, 120)
            .mapToDouble(i -> Math.pow(30, i / 120.0))
            .toArray();

    private KerfFigures() {}

    static List<Figure> all() {
        return List.of(
                new Figure("kerf-regimes", KerfFigures::regimes),
                new Figure("kerf-taper", KerfFigures::taper),
                new Figure("kerf-lag", KerfFigures::lag),
                new Figure("kerf-lag-on-arc", KerfFigures::lagOnArc),
                new Figure("grade-faces", KerfFigures::faces),
                new Figure("grade-roughness", KerfFigures::roughness));
    }

    private static AbrasiveJet jet() {
        return CuttingHead.of(Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(102)))
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450));
    }

    private static Kerf kerf(double thicknessMm, double index) {
        return KerfModel.standard()
                .kerf(
                        CutConditions.of(
                                jet(),
                                Workpiece.of(Materials.standard().get("mild-steel"), millimetres(thicknessMm)),
                                MachinabilityFeed.published()),
                        Estimate.withinFactor(Kind.LENGTH, index * thicknessMm / 1000, 0.15, List.of()));
    }

    private static String regimes() {
        return KerfDrawing.of(
                        "Regimes of a kerf",
                        "Four cross-sections: a V at index 1.3, nearly parallel walls at index 8, walls that widen downwards at"
                                + " index 60, each of 10 mm; and a barrel in 100 mm at index 6, widest near the entry.")
                .stretchedSection("V: 10 mm, index 1.3", kerf(10, 1.3))
                .stretchedSection("parallel: 10 mm, index 8", kerf(10, 8))
                .stretchedSection("reverse: 10 mm, index 60", kerf(10, 60))
                .stretchedSection("barrel: 100 mm, index 6", kerf(100, 6))
                .svg();
    }

    private static String taper() {
        Chart chart = Chart.of(
                        "Taper over index",
                        "Taper per side falls from several degrees at index 1, where the jet just separates, through zero near"
                                + " index 8, and is slightly below zero beyond; it is smaller the thicker the plate."
                                + " A wide band shows the uncertainty of the assumed numbers at 10 mm.")
                .x("quality index")
                .y("taper per side [deg]")
                .logX();
        chart.band("95 %, 10 mm", INDICES, bound(-1), bound(1));
        for (double thickness : new double[] {10, 5, 25}) {
            chart.line(
                    (int) thickness + " mm",
                    INDICES,
                    Arrays.stream(INDICES)
                            .map(index -> kerf(thickness, index).taperPerSide().to(Units.DEGREE))
                            .toArray());
        }
        return chart.svg(720, 420);
    }

    private static double[] bound(int side) {
        return Arrays.stream(INDICES)
                .map(index -> {
                    var taper = kerf(10, index).taperPerSide();
                    return Math.toDegrees(Kind.ANGLE.si(side < 0 ? taper.lower(0.95) : taper.upper(0.95)));
                })
                .toArray();
    }

    private static String lag() {
        return KerfDrawing.of(
                        "Front of the cut",
                        "The parabolic front in 20 mm, the head going right: the foot trails by 5 mm at index 1, by 2.6 mm at"
                                + " index 2 and by 1 mm at index 5.")
                .front("index 1, just separates", kerf(20, 1))
                .front("index 2", kerf(20, 2))
                .front("index 5", kerf(20, 5))
                .svg();
    }

    private static String lagOnArc() {
        double[] radii = IntStream.rangeClosed(0, 60)
                .mapToDouble(i -> 2 * Math.pow(25, i / 60.0))
                .toArray();
        Kerf kerf = kerf(20, 3);
        Chart chart = Chart.of(
                        "Error of the exit on an arc",
                        "For 20 mm at index 3 the exit is 0.6 mm off an arc of 2 mm and 0.03 mm off one of 50 mm. The pictures"
                                + " differ in direction, and in size only where the radius is near the lag.")
                .x("radius of the arc [mm]")
                .y("distance of the exit from the arc [mm]")
                .logX()
                .logY();
        for (LagGeometry picture : List.of(LagGeometry.TANGENT, LagGeometry.TRACTRIX)) {
            chart.line(
                    picture.label(),
                    radii,
                    Arrays.stream(radii)
                            .map(radius -> kerf.lag()
                                    .errorOnArc(millimetres(radius), picture)
                                    .to(Units.MILLIMETRE))
                            .toArray());
        }
        return chart.svg(720, 420);
    }

    private static String faces() {
        KerfDrawing drawing = KerfDrawing.of(
                "Face grades side by side",
                "Faces of 20 mm, square to the wall, the head going right: lag lines lean far back and grooves fill the lower"
                        + " half at parting; at the finer grades the lines stand steep and no grooves are left.");
        for (CutQuality grade : CutQuality.values()) {
            double index = QualityIndexTable.standard().index(grade);
            drawing.face(grade.label() + ", index " + (int) index, kerf(20, index));
        }
        return drawing.svg();
    }

    private static String roughness() {
        double[] depths =
                IntStream.rangeClosed(0, 100).mapToDouble(i -> i / 5.0).toArray();
        Chart chart = Chart.of(
                        "Roughness down the face",
                        "Ra in 20 mm with 80 mesh: alike for all feeds near the entry at about 4 um; at index 1 it climbs from half"
                                + " depth on to more than 50 um, at index 3 it stays near 5 um.")
                .x("depth below the entry [mm]")
                .y("Ra [um]")
                .logY();
        for (double index : new double[] {1, 1.5, 2, 3}) {
            SurfaceRoughness face = RoughnessModel.standard().roughness(kerf(20, index));
            chart.line(
                    "index " + index,
                    depths,
                    Arrays.stream(depths)
                            .map(depth -> 1e6 * face.raSi(Math.min(0.02, depth / 1000)))
                            .toArray());
        }
        return chart.svg(720, 420);
    }
}
