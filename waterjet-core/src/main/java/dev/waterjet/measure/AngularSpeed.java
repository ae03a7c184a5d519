package dev.waterjet.measure;

import javax.measure.Quantity;

/** Rate of change of an angle. SI unit: rad/s. */
public interface AngularSpeed extends Quantity<AngularSpeed> {}
