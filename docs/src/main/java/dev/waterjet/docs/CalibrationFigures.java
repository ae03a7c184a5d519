package dev.waterjet.docs;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.Calibration;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.examples.chart.Chart;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import java.util.Arrays;
import java.util.List;
import javax.measure.quantity.Speed;

/** Figures of the walk through a calibration. */
final class CalibrationFigures {

    /** The cuts that the page shows, invented for it. */
    private static final String CUTS = """
        label,test,thickness_mm,index,feed_mm_per_min,pressure_MPa,orifice_mm,tube_mm,abrasive_flow_g_per_min
        A1,separation,6,,1214,360,0.30,0.90,400
        A2,separation,12,,602,360,0.30,0.90,400
        A3,separation,20,,347,360,0.30,0.90,400
        B1,graded,12,3,161,360,0.30,0.90,400
        B2,graded,8,4,176,360,0.30,0.90,400
        C1,depth,39.2,,150,360,0.30,0.90,400
        C2,depth,21.2,,200,280,0.30,0.90,400
        D1,separation,12,,397,280,0.30,0.90,400
        D2,separation,6,,766,280,0.30,0.90,400
        E1,separation,12,,439,320,0.30,0.90,400
        E2,graded,12,3,140,320,0.30,0.90,400
        F1,separation,12,,1211,360,0.30,0.90,400
        """;

    private CalibrationFigures() {}

    static List<Figure> all() {
        return List.of(
                new Figure("calibration-curve", CalibrationFigures::curve),
                new Figure("calibration-residuals", CalibrationFigures::residuals));
    }

    private static Calibration calibration() {
        Material start = Material.of("bracket-alloy", 100, 0.5, MaterialClass.DUCTILE);
        return Calibration.ofMachinability(start, MachinabilityFeed.published());
    }

    private static String curve() {
        CalibratedFeed own = calibration().withStudentErrors(4).fit(TestCut.parse(CUTS));
        AbrasiveJet jet = CuttingHead.of(
                        Orifice.sapphire(millimetres(0.3)), FocusingTube.of(millimetres(0.9), millimetres(72)))
                .jet(megapascals(360), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(400));
        double[] depths = new double[91];
        double[] feeds = new double[depths.length];
        double[] lower = new double[depths.length];
        double[] upper = new double[depths.length];
        for (int i = 0; i < depths.length; i++) {
            depths[i] = 5 + 0.5 * i;
            Estimate<Speed> feed = own.feed(jet, Workpiece.of(own.material(), millimetres(depths[i])), 1);
            feeds[i] = 60e3 * feed.si();
            lower[i] = 60e3 * Kind.SPEED.si(feed.lower(0.95));
            upper[i] = 60e3 * Kind.SPEED.si(feed.upper(0.95));
        }
        List<TestCut> drawn = own.cuts().stream()
                .filter(cut -> cut.jet().water().pressureSi() == 360e6)
                .toList();
        return Chart.of(
                        "Fitted feed rate over depth",
                        "Test cuts at 360 MPa lie along the fitted curve and in its 95 % band, except one cut at"
                                + " 12 mm far above it.")
                .x("thickness times index [mm]")
                .y("feed rate [mm/min]")
                .logX()
                .logY()
                .band("95 % interval of one more cut", depths, lower, upper)
                .line("fitted", depths, feeds)
                .points(
                        "test cuts at 360 MPa",
                        drawn.stream()
                                .mapToDouble(cut -> 1000 * Kind.LENGTH.si(cut.thickness()) * cut.index())
                                .toArray(),
                        drawn.stream()
                                .mapToDouble(cut -> 60e3 * Kind.SPEED.si(cut.feed()))
                                .toArray())
                .svg(720, 420);
    }

    private static String residuals() {
        List<TestCut> cuts = TestCut.parse(CUTS);
        double[] numbers = new double[cuts.size()];
        Arrays.setAll(numbers, i -> i + 1);
        return Chart.of(
                        "Residuals of a plain and a robust fit",
                        "Residuals of twelve cuts. The last cut raises the plain fit, so that the others are below"
                                + " zero; with the robust fit they scatter about zero and the last one is an outlier.")
                .x("cut")
                .y("measured over fitted [%]")
                .points("plain fit", numbers, percent(calibration().fit(cuts)))
                .points(
                        "robust fit",
                        numbers,
                        percent(calibration().withStudentErrors(4).fit(cuts)))
                .svg(720, 360);
    }

    private static double[] percent(CalibratedFeed own) {
        return Arrays.stream(own.fit().residuals()).map(r -> 100 * r).toArray();
    }
}
