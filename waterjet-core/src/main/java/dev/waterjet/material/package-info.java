/**
 * What is cut.
 *
 * <p>A {@link dev.waterjet.material.Material} carries its machinability number, with its uncertainty and the evidence for
 * it; a {@link dev.waterjet.material.Workpiece} is a material of a thickness. {@link dev.waterjet.material.Materials} is a
 * catalogue: the standard one comes as a data file with the library, and a shop adds its own in code or from text of the
 * same form.
 */
@NullMarked
package dev.waterjet.material;

import org.jspecify.annotations.NullMarked;
