/**
 * From pump to orifice: what pressure makes of water.
 *
 * <p>An {@link dev.waterjet.hydraulics.Orifice} turns supply pressure into a {@link dev.waterjet.hydraulics.WaterJet}.
 * Bernoulli gives its speed as {@code sqrt(2 p / rho)}; real water gives way by a tenth of its volume at 400 MPa, so that
 * the jet is a few per cent slower. The {@linkplain dev.waterjet.hydraulics.JetSpeedModel laws of jet speed} differ in how
 * they account for that; the usual one is the {@link dev.waterjet.hydraulics.IsentropicJet}, exact by the equation of state
 * of {@link dev.waterjet.water}. A {@link dev.waterjet.hydraulics.PumpSetting} says which orifices a pump can feed.
 *
 * <p>Before the orifice stand a pump, {@link dev.waterjet.hydraulics.Intensifier} or {@link
 * dev.waterjet.hydraulics.DirectDrivePump}, whose work on the water is a {@link dev.waterjet.hydraulics.Compression}; an {@link
 * dev.waterjet.hydraulics.Attenuator} that smooths it; and a {@link dev.waterjet.hydraulics.SupplyLine} that takes its toll. Where
 * they all agree is the {@link dev.waterjet.hydraulics.OperatingPoint}: it gives the pressure that is really there at the
 * head. {@link dev.waterjet.hydraulics.OrificeWear} reads a used jewel from flow and pressure.
 *
 * <p>Every pressure in this package is gauge pressure at the orifice unless a method says otherwise: the jet leaves into
 * the atmosphere. States of water, and what is made of them alone, carry absolute pressure and say so.
 */
@NullMarked
package dev.waterjet.hydraulics;

import org.jspecify.annotations.NullMarked;
