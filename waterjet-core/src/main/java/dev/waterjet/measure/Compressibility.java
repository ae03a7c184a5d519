package dev.waterjet.measure;

import javax.measure.Quantity;

/** Relative loss of volume per unit of pressure. SI unit: 1/Pa. */
public interface Compressibility extends Quantity<Compressibility> {}
