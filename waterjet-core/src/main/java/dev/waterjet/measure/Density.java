package dev.waterjet.measure;

import javax.measure.Quantity;

/** Mass per unit of volume. SI unit: kg/m3. */
public interface Density extends Quantity<Density> {}
