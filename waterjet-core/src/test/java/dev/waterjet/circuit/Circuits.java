package dev.waterjet.circuit;

import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.seconds;

import dev.waterjet.hydraulics.Attenuator;
import dev.waterjet.hydraulics.DirectDrivePump;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.measure.Kind;
import dev.waterjet.vessel.Ends;
import dev.waterjet.vessel.ThickTube;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;

/** Parts of circuits for the tests of this package. */
final class Circuits {

    static final WaterState TAP = Water.stable().atSi(101_325, 293.15);

    private Circuits() {}

    static Orifice orifice(double boreMm) {
        return Orifice.sapphire(millimetres(boreMm)).withDischargeCoefficient(0.65);
    }

    static SupplyLine.Section line(double boreMm, double outerMm, double lengthM) {
        ThickTube wall =
                ThickTube.of(millimetres(boreMm), millimetres(outerMm)).withElasticity(megapascals(200_000), 0.29);
        return SupplyLine.Section.ofBore(millimetres(boreMm))
                .withLength(metres(lengthM))
                .withWall(wall, Ends.OPEN);
    }

    static Attenuator attenuator(double volumeL) {
        return Attenuator.of(Kind.VOLUME.of(1e-3 * volumeL)).withDiameterRatio(2.5, megapascals(200_000), 0.29);
    }

    /** Pump of 10 turns a second whose mean flow is that of a 0.33 mm orifice at 380 MPa. */
    static DirectDrivePump pump(int plungers, double deadVolume) {
        double flow = CircuitNode.effectiveArea(orifice(0.33)) * Math.sqrt(2 * TAP.densitySi() * 380e6);
        double out = Water.stable().atEntropySi(380.101325e6, TAP.entropySi()).densitySi();
        double perTurn = DirectDrivePump.of(plungers, Kind.VOLUME.of(1), Kind.FREQUENCY.of(10))
                        .withDeadVolume(deadVolume)
                        .deliveredVolumeSi(0, 2 * Math.PI, out / TAP.densitySi())
                * out;
        return DirectDrivePump.of(plungers, Kind.VOLUME.of(flow / (10 * perTurn)), Kind.FREQUENCY.of(10))
                .withDeadVolume(deadVolume);
    }

    static ValveEvent closing(double beginS, double durationS) {
        return ValveEvent.closing(seconds(beginS), seconds(durationS));
    }

    static CircuitBuilder around380() {
        return Circuit.around(megapascals(380), TAP);
    }

    static double megapascalsOf(Quantity<Pressure> pressure) {
        return Kind.PRESSURE.si(pressure) / 1e6;
    }
}
