/**
 * Properties of water by the international formulations: density, heat, sound speed, viscosity and freezing up to 1000 MPa.
 *
 * <p>At 400 MPa water is 13 % denser than at ambient pressure, its sound speed is 2100 m/s, and at 20 °C it freezes below
 * 900 MPa. Constant density and bulk modulus do not describe that. {@link dev.waterjet.water.Water} returns a {@link
 * dev.waterjet.water.WaterState} for pressure and temperature, density and temperature, pressure and entropy, or pressure and
 * enthalpy:
 *
 * <pre>{@code
 * WaterState supply = Water.stable().at(megapascals(400), celsius(20));
 * Quantity<Density> density = supply.density(); // 1129.06 kg/m3
 * WaterState jet = Water.metastable().atEntropy(pascals(101325), supply.entropy());
 * Quantity<Temperature> temperature = jet.temperature(); // 10.5 °C: the jet is colder than its supply
 * }</pre>
 *
 * <p>Sources:
 *
 * <ul>
 *   <li>equation of state: IAPWS R6-95(2018), all 56 residual terms, from the melting line to 1273 K and 1000 MPa. The
 *       relative uncertainty of its density is about 2 in 10 000 near 400 MPa (from memory of its figure 1);
 *   <li>viscosity: IAPWS R12-08, without the enhancement at the critical point;
 *   <li>melting: IAPWS R14-08(2011), the lines of ice Ih, III, V, VI and VII, see {@link dev.waterjet.water.Ice};
 *   <li>boiling: {@link dev.waterjet.water.Saturation}, equilibrium of liquid and vapour in the equation of state.
 * </ul>
 *
 * <p>Every pressure in this package is absolute. {@link dev.waterjet.water.Water#stable()} rejects states at which water
 * freezes or boils and gives the limit. {@link dev.waterjet.water.Water#metastable()} returns undercooled and superheated
 * liquid too; {@link dev.waterjet.water.WaterState#isMetastable()} is then true.
 */
@NullMarked
package dev.waterjet.water;

import org.jspecify.annotations.NullMarked;
