package dev.waterjet.measure;

import javax.measure.Quantity;

/** Mass that passes per unit of time, as abrasive through a metering valve. SI unit: kg/s. */
public interface MassFlow extends Quantity<MassFlow> {}
