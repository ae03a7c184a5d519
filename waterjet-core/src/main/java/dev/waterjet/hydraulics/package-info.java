/**
 * From pump to orifice: what pressure makes of water.
 *
 * <p>An {@link dev.waterjet.hydraulics.Orifice} turns supply pressure into a {@link dev.waterjet.hydraulics.WaterJet}.
 * Bernoulli gives its speed as {@code sqrt(2 p / rho)}; real water gives way by a tenth of its volume at 400 MPa, so that
 * the jet is a few per cent slower. The {@linkplain dev.waterjet.hydraulics.JetSpeedLaw laws of jet speed} differ in how
 * they account for that. A {@link dev.waterjet.hydraulics.PowerBudget} says which orifices a pump can feed.
 *
 * <p>Every pressure in this package is gauge pressure at the orifice unless a method says otherwise: the jet leaves into
 * the atmosphere, and one bar in four thousand does not matter to it.
 */
@NullMarked
package dev.waterjet.hydraulics;

import org.jspecify.annotations.NullMarked;
