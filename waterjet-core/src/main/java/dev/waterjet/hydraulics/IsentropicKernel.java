package dev.waterjet.hydraulics;

import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;

/** Lossless jet: from rest at the supply to the standard atmosphere at constant entropy. */
final class IsentropicKernel {

    /** Standard atmosphere, the pressure downstream of every orifice, in Pa. */
    static final double ATMOSPHERE_PA = 101_325;

    /** Pressure above the atmosphere below which enthalpies are not subtracted. */
    private static final double SMALL_PA = 1e4;

    private IsentropicKernel() {}

    /** Liquid downstream of the orifice, stable or metastable. */
    static WaterState exit(WaterState supply) {
        return Water.metastable().atEntropySi(ATMOSPHERE_PA, supply.entropySi());
    }

    /**
     * Energy balance: v = sqrt(2 (h_supply - h_exit)). A small difference of two enthalpies would be rounding; it is the
     * pressure over the mean density, within 1e-11 of the energy balance up to 0.01 MPa.
     */
    static double speed(WaterState supply, WaterState exit) {
        double pressure = supply.pressureSi() - ATMOSPHERE_PA;
        double drop = Math.abs(pressure) < SMALL_PA
                ? Math.max(0, pressure) * 2 / (supply.densitySi() + exit.densitySi())
                : supply.enthalpySi() - exit.enthalpySi();
        return Math.sqrt(2 * drop);
    }
}
