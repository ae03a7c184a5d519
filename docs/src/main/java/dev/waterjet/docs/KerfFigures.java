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

/** Figures of kerfs and cut surfaces. */
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
                new Figure("surface-drag-lines", KerfFigures::dragLines),
                new Figure("surface-roughness", KerfFigures::roughness));
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
                        "Regimes of the kerf",
                        "Four cross-sections: a V at index 1.3, nearly parallel walls at index 8, walls that widen"
                                + " downwards at index 20, each of 10 mm; and a barrel in 100 mm at index 6, widest near"
                                + " the entry.")
                .stretchedSection("V: 10 mm, index 1.3", kerf(10, 1.3))
                .stretchedSection("parallel: 10 mm, index 8", kerf(10, 8))
                .stretchedSection("reverse: 10 mm, index 20", kerf(10, 20))
                .stretchedSection("barrel: 100 mm, index 6", kerf(100, 6))
                .svg();
    }

    private static String taper() {
        Chart chart = Chart.of(
                        "Taper over quality index",
                        "Taper per side falls from several degrees at index 1, where the jet just separates, through"
                                + " zero near index 8, and is slightly below zero beyond; it is smaller in thicker plate."
                                + " A wide band shows the uncertainty of the assumed numbers at 10 mm.")
                .x("quality index")
                .y("taper per side [°]")
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
                        "Cut front",
                        "The parabolic front in 20 mm, the head moving right: the exit lag is 5 mm at index 1, 2.6 mm"
                                + " at index 2 and 1 mm at index 5.")
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
                        "Error of the bottom edge on an arc",
                        "For 20 mm at index 3 the bottom edge is 0.6 mm off an arc of 2 mm and 0.03 mm off one of 50"
                                + " mm. The geometric models differ in direction, and in size only where the radius is"
                                + " near the lag.")
                .x("radius of the arc [mm]")
                .y("error of the bottom edge [mm]")
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

    private static String dragLines() {
        KerfDrawing drawing = KerfDrawing.of(
                "Drag lines at five levels of cut quality",
                "Cut surfaces of 20 mm, seen perpendicular to the wall, the head moving right: at very coarse the drag"
                        + " lines lean far back and striations fill the lower half; at finer levels they are steep,"
                        + " without striations.");
        for (CutQuality quality : CutQuality.values()) {
            double index = QualityIndexTable.standard().index(quality);
            drawing.surface(quality.label() + ", index " + (int) index, kerf(20, index));
        }
        return drawing.svg();
    }

    private static String roughness() {
        double[] depths =
                IntStream.rangeClosed(0, 100).mapToDouble(i -> i / 5.0).toArray();
        Chart chart = Chart.of(
                        "Roughness over depth",
                        "Ra in 20 mm with 80 mesh: about 4 µm near the entry at every feed rate; at index 1 it rises"
                                + " from half depth on to more than 50 µm, at index 3 it stays near 5 µm.")
                .x("depth below the entry [mm]")
                .y("Ra [µm]")
                .logY();
        for (double index : new double[] {1, 1.5, 2, 3}) {
            SurfaceRoughness surface = RoughnessModel.standard().roughness(kerf(20, index));
            chart.line(
                    "index " + index,
                    depths,
                    Arrays.stream(depths)
                            .map(depth -> 1e6 * surface.raSi(Math.min(0.02, depth / 1000)))
                            .toArray());
        }
        return chart.svg(720, 420);
    }
}
