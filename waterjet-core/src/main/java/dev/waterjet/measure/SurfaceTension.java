package dev.waterjet.measure;

import javax.measure.Quantity;

/** Force per length of a surface between two fluids, or energy per area. SI unit: N/m. */
public interface SurfaceTension extends Quantity<SurfaceTension> {}
