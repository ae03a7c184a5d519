package dev.waterjet.measure;

import javax.measure.Quantity;

/** Energy per unit of mass and temperature: heat capacities and entropy. SI unit: J/(kg K). */
public interface SpecificHeat extends Quantity<SpecificHeat> {}
