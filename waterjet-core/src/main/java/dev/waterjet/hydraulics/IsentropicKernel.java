package dev.waterjet.hydraulics;

import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;

/** Lossless jet: from rest at the supply to the standard atmosphere at constant entropy. */
final class IsentropicKernel {

    /** Standard atmosphere, the pressure downstream of every orifice, in Pa. */
    static final double ATMOSPHERE_PA = 101_325;

    private IsentropicKernel() {}

    /** Liquid downstream of the orifice, stable or metastable. */
    static WaterState exit(WaterState supply) {
        return Water.metastable().atEntropySi(ATMOSPHERE_PA, supply.entropySi());
    }

    /** Energy balance: v = sqrt(2 (h_supply - h_exit)). */
    static double speed(WaterState supply, WaterState exit) {
        return Math.sqrt(2 * (supply.enthalpySi() - exit.enthalpySi()));
    }
}
