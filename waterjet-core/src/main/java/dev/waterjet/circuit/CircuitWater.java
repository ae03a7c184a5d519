package dev.waterjet.circuit;

import dev.waterjet.water.WaterState;

/**
 * Water of a circuit.
 *
 * @param atRest water at the intake
 * @param referencePa reference pressure, absolute
 * @param isentrope isentrope through the water at rest
 */
record CircuitWater(WaterState atRest, double referencePa, IsentropeKernel isentrope) {

    CircuitWater(WaterState atRest, double gaugePa) {
        this(atRest, gaugePa + IsentropeKernel.ATMOSPHERE_PA, new IsentropeKernel(atRest));
    }
}
