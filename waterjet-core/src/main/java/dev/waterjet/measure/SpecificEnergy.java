package dev.waterjet.measure;

import javax.measure.Quantity;

/** Energy per unit of mass, as the enthalpy of water. SI unit: J/kg. */
public interface SpecificEnergy extends Quantity<SpecificEnergy> {}
