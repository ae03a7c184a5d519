package dev.waterjet.measure;

import javax.measure.Quantity;

/** Shear stress per rate of shear of a fluid. SI unit: Pa s. */
public interface DynamicViscosity extends Quantity<DynamicViscosity> {}
