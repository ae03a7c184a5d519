/**
 * Workpiece material and thickness.
 *
 * <p>A {@link dev.waterjet.material.Material} has a machinability number with its uncertainty and evidence. A {@link
 * dev.waterjet.material.Workpiece} is a plate or sheet of a material:
 *
 * <pre>{@code
 * Material titanium = Materials.standard().get("titanium");
 * Workpiece plate = Workpiece.of(titanium, millimetres(6));
 * Estimate<Dimensionless> machinability = titanium.machinability();
 * }</pre>
 *
 * <p>{@link dev.waterjet.material.Materials} is a catalogue. The standard one is a data file of the library; a shop adds its own
 * materials in code or from text of the same form.
 */
@NullMarked
package dev.waterjet.material;

import org.jspecify.annotations.NullMarked;
