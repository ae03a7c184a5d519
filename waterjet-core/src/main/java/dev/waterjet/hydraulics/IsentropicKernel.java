package dev.waterjet.hydraulics;

import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;

/** The jet without loss: from rest at the supply to the atmosphere at constant entropy. */
final class IsentropicKernel {

    /** The standard atmosphere, into which every jet leaves, in Pa. */
    static final double ATMOSPHERE_PA = 101_325;

    private IsentropicKernel() {}

    /** Water behind the orifice. It stays liquid, though it may be colder than ice. */
    static WaterState exit(WaterState supply) {
        return Water.metastable().atEntropySi(ATMOSPHERE_PA, supply.entropySi());
    }

    /** Balance of energy: v = sqrt(2 (h_supply - h_exit)). */
    static double speed(WaterState supply, WaterState exit) {
        return Math.sqrt(2 * (supply.enthalpySi() - exit.enthalpySi()));
    }
}
