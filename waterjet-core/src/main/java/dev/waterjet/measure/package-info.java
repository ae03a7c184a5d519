/**
 * Quantities at the edge, doubles inside.
 *
 * <p>A public method of this library takes and returns a JSR-385 {@code Quantity}, so that nobody can hand it 55 of the
 * wrong unit. A formula runs on doubles in SI. {@link dev.waterjet.measure.Kind} stands between the two: it knows the SI
 * unit of each kind of quantity and refuses units of another dimension. {@link dev.waterjet.measure.Scale} is the
 * straight line from one unit to SI, {@link dev.waterjet.measure.QuantityArray} many quantities with one unit,
 * {@link dev.waterjet.measure.QuantityText} the written form, {@link dev.waterjet.measure.Require} the checks that
 * refuse impossible values in words. {@link dev.waterjet.measure.Described} is what every result can say of itself in
 * plain numbers: as JSON, say.
 *
 * <pre>{@code
 * Quantity<Pressure> pressure = megapascals(380);
 * double pa = Kind.PRESSURE.si(pressure);                     // 3.8e8
 * Kind.PRESSURE.of(pa, Units.KSI);                            // 55.1 ksi
 * Kind.PRESSURE.parse("55 ksi");                              // in any locale
 * }</pre>
 */
@NullMarked
package dev.waterjet.measure;

import org.jspecify.annotations.NullMarked;
