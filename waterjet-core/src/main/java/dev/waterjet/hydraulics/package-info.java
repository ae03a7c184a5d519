/**
 * Steady state from pump to orifice: pressure, flow, power and jet speed.
 *
 * <p>An {@link dev.waterjet.hydraulics.Orifice} turns pressure into a {@link dev.waterjet.hydraulics.WaterJet}:
 *
 * <pre>{@code
 * PumpSetting pump = PumpSetting.ofPower(kilowatts(22), megapascals(380));
 * Orifice orifice = pump.largestOrifice(Orifice.sapphire(millimetres(0.33)), 1);
 * WaterJet jet = WaterJet.of(orifice, megapascals(380));
 * Quantity<Speed> speed = jet.speed();
 * }</pre>
 *
 * <p>Bernoulli's equation gives the jet speed as &radic;(2 <i>p</i>/&rho;). Water loses 12 % of its volume at 400 MPa, which
 * makes the jet a few % slower. The {@linkplain dev.waterjet.hydraulics.JetSpeedModel jet speed models} differ in how
 * they treat the compressibility; the default is the {@link dev.waterjet.hydraulics.IsentropicJet} by the equation of state of
 * {@link dev.waterjet.water}.
 *
 * <p>Upstream of the orifice are a pump, {@link dev.waterjet.hydraulics.Intensifier} or {@link
 * dev.waterjet.hydraulics.DirectDrivePump}, whose work on the water is a {@link dev.waterjet.hydraulics.Compression}; an {@link
 * dev.waterjet.hydraulics.Attenuator}, which reduces the pressure ripple; and a {@link dev.waterjet.hydraulics.SupplyLine} with
 * its pressure loss. The {@link dev.waterjet.hydraulics.OperatingPoint} is their common solution: the pressure at the head for
 * the pressure set at the pump. {@link dev.waterjet.hydraulics.OrificeWear} evaluates a used orifice from its flow and pressure.
 *
 * <p>Every pressure in this package is gauge pressure unless a method states otherwise: the jet leaves into the atmosphere.
 * States of water, and what is computed from them alone, have absolute pressure and state it.
 */
@NullMarked
package dev.waterjet.hydraulics;

import org.jspecify.annotations.NullMarked;
