package dev.waterjet.hydraulics;

import dev.waterjet.measure.Density;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.io.Serializable;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;

/**
 * The fastest jet that a supply of water can make: from rest at the supply to the standard atmosphere without loss, heat
 * or change of entropy, by the equation of state.
 *
 * <p>{@code v = sqrt(2 (h_supply - h_exit))}. From 400 MPa and 20 C that is 864.1 m/s, and the water leaves at 10.5 C.
 * What leaves is liquid: it never boils, and where it is colder than ice it has no time to freeze; such an exit says that it
 * is metastable.
 */
public final class IsentropicJet implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final WaterState supply;
    private final WaterState exit;

    private IsentropicJet(WaterState supply) {
        Require.above(
                "absolute pressure at the orifice",
                supply.pressureSi(),
                IsentropicKernel.ATMOSPHERE_PA,
                Units.MEGAPASCAL,
                "the atmosphere into which the jet leaves");
        this.supply = supply;
        this.exit = IsentropicKernel.exit(supply);
    }

    /**
     * The jet from a supply.
     *
     * @param supply water at rest before the orifice, above atmospheric pressure
     * @return the jet
     * @throws DomainException if the supply is at or below atmospheric pressure, or so hot that its jet would boil
     */
    public static IsentropicJet from(WaterState supply) {
        return new IsentropicJet(supply);
    }

    /**
     * The jet from a pressure and a temperature.
     *
     * @param pressure absolute pressure before the orifice, above atmospheric to 1000 MPa
     * @param temperature temperature before the orifice
     * @return the jet
     * @throws DomainException if water is not liquid there; the message names the limit
     */
    public static IsentropicJet of(Quantity<Pressure> pressure, Quantity<Temperature> temperature) {
        return new IsentropicJet(Water.stable().at(pressure, temperature));
    }

    /**
     * Speed of the jet from a supply of 20 to 1000 MPa and 1 to 60 C, within 1e-8 of {@link #speedSi()}, in the time of a
     * few multiplications: for inner loops.
     *
     * @param pressurePa absolute pressure before the orifice in Pa, 20e6 to 1000e6
     * @param temperatureK temperature before the orifice in K, 274.15 to 333.15
     * @return the speed in m/s
     * @throws DomainException if the supply is out of that range or frozen; the message names the limit
     */
    public static double fastSpeedSi(double pressurePa, double temperatureK) {
        if (!JetSpeedKernel.covers(pressurePa, temperatureK)) {
            throw outOfRange(pressurePa, temperatureK);
        }
        Water.checkNotFrozenSi(pressurePa, temperatureK);
        return JetSpeedKernel.speed(pressurePa, temperatureK);
    }

    private static DomainException outOfRange(double pressurePa, double temperatureK) {
        String reason = "the fast formula ends there";
        Require.between(
                "absolute pressure at the orifice",
                pressurePa,
                JetSpeedKernel.LOWEST_PRESSURE_PA,
                JetSpeedKernel.HIGHEST_PRESSURE_PA,
                Units.MEGAPASCAL,
                reason);
        boolean cold = !(temperatureK > JetSpeedKernel.HIGHEST_TEMPERATURE_K);
        return new DomainException(
                "temperature of water",
                temperatureK,
                cold ? "at least" : "at most",
                cold ? JetSpeedKernel.LOWEST_TEMPERATURE_K : JetSpeedKernel.HIGHEST_TEMPERATURE_K,
                Units.CELSIUS,
                reason);
    }

    /**
     * Water at rest before the orifice.
     *
     * @return its state
     */
    public WaterState supply() {
        return supply;
    }

    /**
     * Water in the jet.
     *
     * @return its state, at standard atmospheric pressure
     */
    public WaterState exit() {
        return exit;
    }

    /**
     * Speed of the jet.
     *
     * @return the speed, in m/s
     */
    public Quantity<Speed> speed() {
        return Kind.SPEED.of(speedSi());
    }

    /**
     * Speed of the jet as a number.
     *
     * @return the speed in m/s
     */
    public double speedSi() {
        return IsentropicKernel.speed(supply, exit);
    }

    /**
     * Temperature of the jet.
     *
     * @return the temperature, in K
     */
    public Quantity<Temperature> exitTemperature() {
        return exit.temperature();
    }

    /**
     * Density of the water in the jet.
     *
     * @return the density, in kg/m3
     */
    public Quantity<Density> exitDensity() {
        return exit.density();
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("isentropic jet")
                .put("supply", supply)
                .put("exit", exit)
                .put("speed", Kind.SPEED, speedSi())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof IsentropicJet that && supply.equals(that.supply);
    }

    @Override
    public int hashCode() {
        return supply.hashCode();
    }

    @Override
    public String toString() {
        return "isentropic jet of " + QuantityText.print(Kind.SPEED, speed(), Units.METRE_PER_SECOND, 6) + " from "
                + supply;
    }
}
