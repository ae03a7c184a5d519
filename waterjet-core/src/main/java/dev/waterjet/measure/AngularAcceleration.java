package dev.waterjet.measure;

import javax.measure.Quantity;

/** Rate of change of an angular speed. SI unit: rad/s2. */
public interface AngularAcceleration extends Quantity<AngularAcceleration> {}
