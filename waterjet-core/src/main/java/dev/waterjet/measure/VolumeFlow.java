package dev.waterjet.measure;

import javax.measure.Quantity;

/** Volume that passes per unit of time, as water through an orifice. SI unit: m3/s. */
public interface VolumeFlow extends Quantity<VolumeFlow> {}
