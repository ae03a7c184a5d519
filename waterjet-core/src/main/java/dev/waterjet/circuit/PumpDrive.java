package dev.waterjet.circuit;

import dev.waterjet.hydraulics.DirectDrivePump;
import dev.waterjet.hydraulics.Intensifier;
import dev.waterjet.measure.Described;
import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Frequency;
import javax.measure.quantity.Pressure;

/** Pump of a circuit over time: its plungers compress the water before they deliver. */
public sealed interface PumpDrive extends Described, Serializable permits DirectDrive, IntensifierDrive {

    /**
     * Returns a direct-drive pump at its speed.
     *
     * @param pump the pump
     * @return the drive
     */
    static DirectDrive of(DirectDrivePump pump) {
        return new DirectDrive(pump);
    }

    /**
     * Returns an intensifier whose oil pump holds a pressure: within the last 2 % below it (assumed) the oil flow falls linearly
     * to zero.
     *
     * @param intensifier stroke volume and reversal time
     * @param pressure gauge pressure of the water at which the plunger stands, above 0
     * @param strokes strokes per time at full oil flow, those of both sides together, above 0
     * @return the drive, without dead volume
     */
    static IntensifierDrive of(Intensifier intensifier, Quantity<Pressure> pressure, Quantity<Frequency> strokes) {
        return IntensifierDrive.of(intensifier, pressure, strokes);
    }
}
