package dev.waterjet.measure;

import javax.measure.Quantity;

/** Rate of change of acceleration. SI unit: m/s3. */
public interface Jerk extends Quantity<Jerk> {}
