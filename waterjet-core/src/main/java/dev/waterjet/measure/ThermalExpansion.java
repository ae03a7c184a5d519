package dev.waterjet.measure;

import javax.measure.Quantity;

/** Relative gain of volume per unit of temperature. SI unit: 1/K. */
public interface ThermalExpansion extends Quantity<ThermalExpansion> {}
