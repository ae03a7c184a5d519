package dev.waterjet.water;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.SurfaceTension;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;

/**
 * Saturated water: liquid and vapour in equilibrium at one temperature, by equal pressure and equal Gibbs energy in the
 * equation of state.
 */
public final class Saturation implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Closer to the critical temperature the two densities differ by less than the rounding of a double resolves. */
    static final double MAX_TEMPERATURE_K = 647.09;

    /** Checked content, and the serial form. */
    private record Values(double temperatureK) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            temperatureK = Require.between(
                    "saturation temperature",
                    temperatureK,
                    SaturationKernel.TRIPLE_TEMPERATURE_K,
                    MAX_TEMPERATURE_K,
                    Units.KELVIN,
                    "triple point to critical point");
        }

        private Object readResolve() {
            return new Saturation(this);
        }
    }

    private final transient Values values;
    private final transient WaterState liquid;
    private final transient WaterState vapour;

    private Saturation(Values values) {
        this.values = values;
        SaturationKernel kernel = new SaturationKernel();
        if (!kernel.solve(values.temperatureK)) {
            throw new AssertionError("no saturated states at " + values.temperatureK + " K");
        }
        double pressurePa = kernel.vapour().pressurePa();
        this.liquid = WaterState.read(kernel.liquid(), pressurePa, false);
        this.vapour = WaterState.read(kernel.vapour(), pressurePa, false);
    }

    /**
     * Returns the saturated states at a temperature.
     *
     * @param temperature 273.16 K to 647.09 K
     * @return both states
     * @throws dev.waterjet.measure.DomainException if the temperature is out of that range
     */
    public static Saturation at(Quantity<Temperature> temperature) {
        Objects.requireNonNull(temperature, "temperature");
        return atSi(Kind.TEMPERATURE.si(temperature));
    }

    static Saturation atSi(double temperatureK) {
        return new Saturation(new Values(temperatureK));
    }

    /** Saturation pressure in Pa: zero below the triple point, the critical pressure above the critical point. */
    static double pressurePa(double temperatureK) {
        if (temperatureK < SaturationKernel.TRIPLE_TEMPERATURE_K) {
            return 0;
        }
        return temperatureK > MAX_TEMPERATURE_K
                ? SaturationKernel.CRITICAL_PRESSURE_PA
                : atSi(temperatureK).liquid.pressureSi();
    }

    /** {@return the saturation pressure, absolute} */
    public Quantity<Pressure> pressure() {
        return liquid.pressure();
    }

    /** {@return the saturated liquid} */
    public WaterState liquid() {
        return liquid;
    }

    /** {@return the saturated vapour} */
    public WaterState vapour() {
        return vapour;
    }

    /**
     * Returns the surface tension of water against its vapour, IAPWS R1-76(2014): 235.8 mN/m &tau;<sup>1.256</sup> (1 - 0.625
     * &tau;), &tau; = 1 - <i>T</i>/647.096 K; 72.74 mN/m at 20 &deg;C. Below the triple point the release extends it to undercooled
     * water (value from memory: reasonable down to -25 &deg;C).
     *
     * @param temperature temperature, -25 &deg;C to 647.096 K
     * @return the surface tension
     * @throws dev.waterjet.measure.DomainException if the temperature is out of range
     */
    public static Quantity<SurfaceTension> surfaceTension(Quantity<Temperature> temperature) {
        Objects.requireNonNull(temperature, "temperature");
        double temperatureK = Require.between(
                "temperature of water",
                Kind.TEMPERATURE.si(temperature),
                SurfaceTensionKernel.MIN_TEMPERATURE_K,
                Iapws95Constants.CRITICAL_TEMPERATURE_K,
                Units.CELSIUS,
                "range of the formula for surface tension");
        return Kind.SURFACE_TENSION.of(SurfaceTensionKernel.newtonsPerMetre(temperatureK));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("saturation")
                .put("liquid", liquid)
                .put("vapour", vapour)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Saturation that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "saturated water of " + QuantityText.forPeople(Kind.PRESSURE, pressure()) + " and "
                + QuantityText.forPeople(Kind.TEMPERATURE, liquid.temperature());
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
