/**
 * Quantities at the boundary, doubles inside.
 *
 * <p>A public method of this library takes and returns a JSR-385 {@code Quantity}, of any implementation, so that a number
 * never loses its unit. Formulas run on doubles in SI. {@link dev.waterjet.measure.Kind} converts between the two: it has the
 * SI unit of each kind of quantity and refuses units of another dimension. {@link dev.waterjet.measure.Units} are the units of
 * the trade, {@link dev.waterjet.measure.QuantityArray} is an array of quantities with one unit.
 *
 * <pre>{@code
 * Quantity<Pressure> pressure = megapascals(380);
 * double pa = Kind.PRESSURE.si(pressure);                 // 3.8e8
 * Kind.PRESSURE.of(pa, Units.KSI);                        // 55.11 ksi
 * Kind.LENGTH.parse("1-1/4 in");                          // in any locale
 * QuantityText.forPeople(Kind.SPEED, 0.0086667, 0.0016);  // 520 mm/min ± 100 mm/min
 * }</pre>
 *
 * <p>{@link dev.waterjet.measure.Require} checks arguments. What the library refuses, it refuses by a
 * {@link dev.waterjet.measure.WaterjetException}: its {@link dev.waterjet.measure.Message} has a stable code and named
 * parameters for programs and a sentence for people. {@link dev.waterjet.measure.Described} gives every result as plain
 * numbers and texts, for JSON or a log.
 */
@NullMarked
package dev.waterjet.measure;

import org.jspecify.annotations.NullMarked;
