package dev.waterjet.measure;

import javax.measure.Quantity;

/** Energy per unit of volume, as the energy that removes a volume of material. SI unit: J/m3. */
public interface EnergyDensity extends Quantity<EnergyDensity> {}
