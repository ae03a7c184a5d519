/**
 * Shop file: machine, pump, head, inventory, prices, materials and calibrations of a workshop in one JSON text, which gives the
 * programs their default values.
 */
@NullMarked
package dev.waterjet.examples.shop;

import org.jspecify.annotations.NullMarked;
