/**
 * Water as exact as the published standards know it: density, heat, sound, viscosity and freezing up to 1000 MPa.
 *
 * <p>At 400 MPa water is a tenth denser than in the tap, sound runs through it at 2100 m/s, and at 20 C it freezes
 * before 900 MPa. Two constants do not tell that; the international equation of state does. {@link
 * dev.waterjet.water.Water} answers with a {@link dev.waterjet.water.WaterState} for a pressure and a temperature, a
 * density and a temperature, or a pressure and an entropy or enthalpy:
 *
 * <pre>{@code
 * WaterState supply = Water.stable().at(megapascals(400), celsius(20));
 * supply.density();                                            // 1129.06 kg/m3
 * WaterState jet = Water.metastable().atEntropy(pascals(101325), supply.entropy());
 * jet.temperature();                                           // 10.5 C: the jet is colder than its supply
 * }</pre>
 *
 * <p>Where the numbers come from:
 *
 * <ul>
 *   <li>equation of state: IAPWS R6-95(2018), all 56 residual terms, from the melting line to 1273 K and 1000 MPa. Its
 *       density is uncertain by about one part in ten thousand near 400 MPa;
 *   <li>viscosity: IAPWS R12-08, without the enhancement at the critical point;
 *   <li>melting: IAPWS R14-08(2011), the lines of ice Ih, III, V, VI and VII, see {@link dev.waterjet.water.Ice};
 *   <li>boiling: {@link dev.waterjet.water.Saturation}, where liquid and vapour of the equation of state are in balance.
 * </ul>
 *
 * <p>Every pressure in this package is absolute. {@link dev.waterjet.water.Water#stable()} refuses water that would
 * freeze or boil, and names the limit; {@link dev.waterjet.water.Water#metastable()} answers with the liquid that has not
 * yet done so, and the answer says {@link dev.waterjet.water.WaterState#isMetastable()}.
 */
@NullMarked
package dev.waterjet.water;

import org.jspecify.annotations.NullMarked;
