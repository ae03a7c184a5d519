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
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;

/**
 * Isentropic jet: expansion of water from rest at the supply to the standard atmosphere without loss or heat, by the equation
 * of state. It is the fastest jet that a supply can produce.
 *
 * <p><i>v</i> = &radic;(2 (<i>h</i><sub>supply</sub> - <i>h</i><sub>exit</sub>)). From 400 MPa and 20 &deg;C the speed is
 * 864.1 m/s and the exit temperature 10.5 &deg;C. The exit state is liquid. From a cold supply it can be below the freezing
 * temperature, from a hot one above the boiling temperature, where a real jet evaporates in part; such an exit state is
 * marked as metastable.
 */
public final class IsentropicJet implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values(WaterState supply) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Require.above(
                    "absolute pressure at the orifice",
                    supply.pressureSi(),
                    IsentropicKernel.ATMOSPHERE_PA,
                    Units.MEGAPASCAL,
                    "the standard atmosphere");
        }

        private Object readResolve() throws InvalidObjectException {
            try {
                return new IsentropicJet(this);
            } catch (DomainException e) {
                throw (InvalidObjectException) new InvalidObjectException(e.getMessage()).initCause(e);
            }
        }
    }

    private final transient Values values;
    private final transient WaterState exit;

    private IsentropicJet(Values values) {
        this.values = values;
        this.exit = IsentropicKernel.exit(values.supply);
    }

    /**
     * Returns the jet from a state of the supply.
     *
     * @param supply water at rest upstream of the orifice, above atmospheric pressure
     * @return the jet
     * @throws DomainException if the supply is not above atmospheric pressure, or no liquid at atmospheric pressure has its
     *     entropy
     */
    public static IsentropicJet from(WaterState supply) {
        Objects.requireNonNull(supply, "supply");
        return new IsentropicJet(new Values(supply));
    }

    /**
     * Returns the jet from a pressure and a temperature.
     *
     * @param pressure absolute pressure upstream of the orifice, above atmospheric to 1000 MPa
     * @param temperature temperature upstream of the orifice
     * @return the jet
     * @throws DomainException as {@link #from}, or if water is not liquid at the supply
     */
    public static IsentropicJet of(Quantity<Pressure> pressure, Quantity<Temperature> temperature) {
        Objects.requireNonNull(pressure, "pressure");
        Objects.requireNonNull(temperature, "temperature");
        return from(Water.stable().at(pressure, temperature));
    }

    /**
     * Returns the speed of the jet from a supply of 20 to 1000 MPa and 1 to 60 &deg;C, within 1e-8 of {@link #speedSi()}, by a
     * polynomial: for inner loops.
     *
     * @param pressurePa absolute pressure upstream of the orifice in Pa, 20e6 to 1000e6
     * @param temperatureK temperature upstream of the orifice in K, 274.15 to 333.15
     * @return the speed, in m/s
     * @throws DomainException if the supply is out of that range, or water freezes there
     */
    public static double fastSpeedSi(double pressurePa, double temperatureK) {
        if (!JetSpeedKernel.covers(pressurePa, temperatureK)) {
            requireCovered(pressurePa, temperatureK);
        }
        Water.checkNotFrozenSi(pressurePa, temperatureK);
        return JetSpeedKernel.speed(pressurePa, temperatureK);
    }

    private static void requireCovered(double pressurePa, double temperatureK) {
        Require.between(
                "absolute pressure at the orifice",
                pressurePa,
                JetSpeedKernel.MIN_PRESSURE_PA,
                JetSpeedKernel.MAX_PRESSURE_PA,
                Units.MEGAPASCAL,
                "range of the fast formula");
        Require.between(
                "temperature of water",
                temperatureK,
                JetSpeedKernel.MIN_TEMPERATURE_K,
                JetSpeedKernel.MAX_TEMPERATURE_K,
                Units.CELSIUS,
                "range of the fast formula");
    }

    /** {@return the water at rest upstream of the orifice} */
    public WaterState supply() {
        return values.supply;
    }

    /** {@return the water in the jet, at standard atmospheric pressure} */
    public WaterState exit() {
        return exit;
    }

    /** {@return the speed of the jet} */
    public Quantity<Speed> speed() {
        return Kind.SPEED.of(speedSi());
    }

    /** {@return the speed of the jet, in m/s} */
    public double speedSi() {
        return IsentropicKernel.speed(values.supply, exit);
    }

    /** {@return the temperature of the jet} */
    public Quantity<Temperature> exitTemperature() {
        return exit.temperature();
    }

    /** {@return the density of the water in the jet} */
    public Quantity<Density> exitDensity() {
        return exit.density();
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("isentropic jet")
                .put("supply", values.supply)
                .put("exit", exit)
                .put("speed", Kind.SPEED, speedSi())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof IsentropicJet that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "isentropic jet of " + QuantityText.forPeople(Kind.SPEED, speed()) + " from " + values.supply;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
