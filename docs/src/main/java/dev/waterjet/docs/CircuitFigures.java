package dev.waterjet.docs;

import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.seconds;

import dev.waterjet.circuit.Circuit;
import dev.waterjet.circuit.CircuitBuilder;
import dev.waterjet.circuit.PressureHistory;
import dev.waterjet.circuit.PumpDrive;
import dev.waterjet.circuit.ValveEvent;
import dev.waterjet.examples.chart.Chart;
import dev.waterjet.hydraulics.Attenuator;
import dev.waterjet.hydraulics.DirectDrivePump;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.jet.TubeMixing;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import dev.waterjet.vessel.Ends;
import dev.waterjet.vessel.ThickTube;
import dev.waterjet.vessel.WallStress;
import dev.waterjet.water.Water;
import java.util.List;
import java.util.stream.IntStream;

/** Figures of pressure over time, of stress in the walls that hold it, and of mixing in the focusing tube. */
final class CircuitFigures {

    private static final DirectDrivePump TRIPLEX = DirectDrivePump.of(3, Kind.VOLUME.of(1.72e-6), Kind.FREQUENCY.of(10))
            .withDeadVolume(0.5);

    private static final Orifice ORIFICE = Orifice.sapphire(millimetres(0.33));
    private static final int THINNING = 3;
    private static final int LENGTHS = 60;
    private static final double LONGEST_M = 40;

    private CircuitFigures() {}

    static List<Figure> all() {
        return List.of(
                new Figure("circuit-ripple", CircuitFigures::ripple),
                new Figure("circuit-closing", CircuitFigures::closing),
                new Figure("circuit-line-length", CircuitFigures::lineLength),
                new Figure("wall-stress", CircuitFigures::wallStress),
                new Figure("tube-mixing", CircuitFigures::tubeMixing));
    }

    private static CircuitBuilder around380() {
        return Circuit.around(megapascals(380), Water.stable().at(megapascals(0.101325), celsius(20)));
    }

    private static Attenuator litre() {
        return Attenuator.of(Kind.VOLUME.of(1e-3)).withDiameterRatio(2.5, megapascals(200_000), 0.29);
    }

    private static SupplyLine.Section line(double lengthM) {
        ThickTube wall = ThickTube.of(millimetres(4.8), millimetres(14.4)).withElasticity(megapascals(200_000), 0.29);
        return SupplyLine.Section.ofBore(millimetres(4.8))
                .withLength(metres(lengthM))
                .withWall(wall, Ends.OPEN);
    }

    private static String ripple() {
        Chart chart = Chart.of(
                        "Pressure at the head",
                        "Gauge pressure at the head behind 5 m of line over a tenth of a second: with an attenuator of"
                                + " one litre it stays within 1 MPa, without one it swings by 18 MPa.")
                .x("time [s]")
                .y("gauge pressure [MPa]");
        PressureHistory with = settled(around380().vessel("pump", litre()));
        PressureHistory without = settled(around380());
        return add(add(chart, "attenuator of 1 L", with, "head"), "no attenuator", without, "head")
                .svg(720, 420);
    }

    /** The last tenth of a second of one, behind the pump and 5 m of line. */
    private static PressureHistory settled(CircuitBuilder circuit) {
        return circuit.pump("pump", PumpDrive.of(TRIPLEX))
                .line("pump", "head", line(5))
                .head("head", ORIFICE)
                .build()
                .run(seconds(1))
                .between(seconds(0.9), seconds(1));
    }

    private static String closing() {
        Chart chart = Chart.of(
                        "A head that shuts",
                        "Gauge pressure at the head and at the attenuator: the head shuts within 20 ms from 0.1 s on; a"
                                + " surge, waves that go back and forth, and the rise until the relief valve holds.")
                .x("time [s]")
                .y("gauge pressure [MPa]");
        PressureHistory history = around380()
                .vessel("attenuator", litre())
                .pump("attenuator", PumpDrive.of(TRIPLEX))
                .line("attenuator", "head", line(20))
                .head("head", ORIFICE, ValveEvent.closing(seconds(0.1), seconds(0.02)))
                .reliefValve("attenuator", Orifice.sapphire(millimetres(0.6)), megapascals(400), seconds(0.005))
                .build()
                .run(seconds(0.5));
        return add(add(chart, "head", history, "head"), "attenuator", history, "attenuator")
                .svg(720, 420);
    }

    private static Chart add(Chart chart, String label, PressureHistory history, String node) {
        return chart.line(
                label,
                thinned(history.times().toSi()),
                thinned(history.pressure(node).to(Units.MEGAPASCAL)));
    }

    private static double[] thinned(double[] samples) {
        return IntStream.range(0, samples.length / THINNING)
                .mapToDouble(i -> samples[THINNING * i])
                .toArray();
    }

    private static String lineLength() {
        double[] lengths = new double[LENGTHS];
        double[] atHead = new double[LENGTHS];
        double[] atAttenuator = new double[LENGTHS];
        for (int i = 0; i < LENGTHS; i++) {
            lengths[i] = LONGEST_M * (i + 1) / LENGTHS;
            var ripple = around380()
                    .vessel("attenuator", litre())
                    .pump("attenuator", PumpDrive.of(TRIPLEX))
                    .line("attenuator", "head", line(lengths[i]))
                    .head("head", ORIFICE)
                    .build()
                    .ripple();
            atHead[i] = Kind.PRESSURE.si(ripple.at("head")) / 1e6;
            atAttenuator[i] = Kind.PRESSURE.si(ripple.at("attenuator")) / 1e6;
        }
        return Chart.of(
                        "Ripple over the length of the line",
                        "Pressure ripple, peak to peak, at head and attenuator over the length of the supply line: it"
                                + " peaks at the head where a quarter of a wave fits into the line, near 19 m.")
                .x("length of the supply line [m]")
                .y("pressure ripple [MPa]")
                .line("head", lengths, atHead)
                .line("attenuator", lengths, atAttenuator)
                .svg(720, 420);
    }

    private static String tubeMixing() {
        double[] lengths = new double[LENGTHS];
        double[] fresh = new double[LENGTHS];
        double[] worn = new double[LENGTHS];
        for (int i = 0; i < LENGTHS; i++) {
            lengths[i] = 10 + 4.0 * i;
            FocusingTube tube = FocusingTube.of(millimetres(0.76), millimetres(lengths[i]));
            fresh[i] = efficiency(tube);
            worn[i] = efficiency(tube.withExitBore(millimetres(0.95)));
        }
        return Chart.of(
                        "Mixing over the length of the focusing tube",
                        "Mixing efficiency over the length of a focusing tube of 0.76 mm: steep up to 50 mm, flat"
                                + " beyond 150 mm; a tube worn to 0.95 mm at its exit is lower throughout.")
                .x("length of the focusing tube [mm]")
                .y("mixing efficiency")
                .line("new tube", lengths, fresh)
                .line("worn to 0.95 mm at the exit", lengths, worn)
                .svg(720, 420);
    }

    private static double efficiency(FocusingTube tube) {
        AbrasiveJet jet = CuttingHead.of(Orifice.sapphire(millimetres(0.25)), tube)
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(250));
        return TubeMixing.of(jet).efficiency().si();
    }

    private static String wallStress() {
        ThickTube tube = ThickTube.of(millimetres(50), millimetres(125));
        double[] radii = new double[LENGTHS];
        double[] hoop = new double[LENGTHS];
        double[] radial = new double[LENGTHS];
        double[] axial = new double[LENGTHS];
        for (int i = 0; i < LENGTHS; i++) {
            radii[i] = 25 + 37.5 * i / (LENGTHS - 1);
            WallStress stress = tube.stressAt(megapascals(380), Ends.CLOSED, millimetres(radii[i]));
            hoop[i] = Kind.PRESSURE.si(stress.hoop()) / 1e6;
            radial[i] = Kind.PRESSURE.si(stress.radial()) / 1e6;
            axial[i] = Kind.PRESSURE.si(stress.axial()) / 1e6;
        }
        return Chart.of(
                        "Stress over a wall",
                        "Hoop, axial and radial stress over the radius of a tube of 50 mm by 125 mm at 380 MPa: the"
                                + " hoop stress is 525 MPa at the bore and 145 MPa outside.")
                .x("radius [mm]")
                .y("stress [MPa]")
                .line("hoop", radii, hoop)
                .line("axial", radii, axial)
                .line("radial", radii, radial)
                .svg(720, 420);
    }
}
