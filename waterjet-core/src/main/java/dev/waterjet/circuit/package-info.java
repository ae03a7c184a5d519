/**
 * Pressure and flow over time between pump and heads: ripple, surge, recovery after a valve has moved.
 *
 * <p>A {@link dev.waterjet.circuit.Circuit} joins pumps, attenuators, supply lines, heads and valves at named nodes:
 *
 * <pre>{@code
 * Circuit circuit = Circuit.around(megapascals(380), Water.stable().at(megapascals(0.101325), celsius(20)))
 *         .vessel("attenuator", Attenuator.of(Kind.VOLUME.of(1e-3)))
 *         .pump("attenuator", PumpDrive.of(triplex))
 *         .line("attenuator", "head", SupplyLine.Section.ofBore(millimetres(4.8)).withLength(metres(20)))
 *         .head("head", orifice, ValveEvent.closing(seconds(0.5), seconds(0.02)))
 *         .build();
 * PressureHistory history = circuit.run(seconds(1));
 * Quantity<Pressure> highest = history.highest("head");
 * }</pre>
 *
 * <p>Water is compressed and relaxed quickly, so pressure alone determines its density: along the isentrope through the water at
 * rest. Lines carry waves, computed by the method of characteristics about the reference pressure; vessels follow the isentrope
 * and their wall; plungers compress the water before they deliver. A run starts from the steady state of mean flows.
 * {@link dev.waterjet.circuit.Circuit#ripple()} gives the ripple of the settled circuit without steps in time.
 *
 * <p>Friction is that of steady flow, which damps waves too little; heat exchange with walls, cavitation and the motion of
 * check valves are left out. Every result carries the caution {@code ideal-circuit}: nothing here sizes a relief valve or judges
 * a part.
 */
@Experimental
@NullMarked
package dev.waterjet.circuit;

import dev.waterjet.measure.Experimental;
import org.jspecify.annotations.NullMarked;
