package dev.waterjet.water;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;

/**
 * Boiling water: liquid and vapour in balance at one temperature, as the equation of state has them, without a formula
 * of its own.
 */
public final class Saturation implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** So close to the critical point liquid and vapour cannot be told apart by doubles. */
    static final double HIGHEST_TEMPERATURE_K = 647.09;

    private final WaterState liquid;
    private final WaterState vapour;

    private Saturation(WaterState liquid, WaterState vapour) {
        this.liquid = liquid;
        this.vapour = vapour;
    }

    /**
     * Liquid and vapour at a temperature.
     *
     * @param temperature 273.16 K to 647.09 K
     * @return both states
     * @throws DomainException if the temperature is out of that range
     */
    public static Saturation at(Quantity<Temperature> temperature) {
        return atSi(Kind.TEMPERATURE.si(temperature));
    }

    static Saturation atSi(double temperatureK) {
        Require.between(
                "temperature of boiling",
                temperatureK,
                SaturationKernel.TRIPLE_TEMPERATURE_K,
                HIGHEST_TEMPERATURE_K,
                Units.KELVIN,
                "water boils between its triple point and its critical point");
        SaturationKernel kernel = new SaturationKernel();
        if (!kernel.solve(temperatureK)) {
            throw new DomainException(
                    "temperature of boiling",
                    temperatureK,
                    "below",
                    Iapws95Constants.CRITICAL_TEMPERATURE_K,
                    Units.KELVIN,
                    "liquid and vapour are one there");
        }
        double pressurePa = kernel.vapour().pressurePa();
        return new Saturation(
                WaterState.read(kernel.liquid(), pressurePa, false),
                WaterState.read(kernel.vapour(), pressurePa, false));
    }

    /** Pressure of boiling in Pa, zero below the triple point and endless above the critical one. */
    static double pressurePa(double temperatureK) {
        if (temperatureK < SaturationKernel.TRIPLE_TEMPERATURE_K) {
            return 0;
        }
        return temperatureK > HIGHEST_TEMPERATURE_K
                ? SaturationKernel.CRITICAL_PRESSURE_PA
                : atSi(temperatureK).liquid.pressureSi();
    }

    /**
     * Pressure at which water of this temperature boils.
     *
     * @return absolute pressure, in Pa
     */
    public Quantity<Pressure> pressure() {
        return liquid.pressure();
    }

    /**
     * The boiling liquid.
     *
     * @return its state
     */
    public WaterState liquid() {
        return liquid;
    }

    /**
     * The vapour above it.
     *
     * @return its state
     */
    public WaterState vapour() {
        return vapour;
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
        return other instanceof Saturation that && liquid.equals(that.liquid) && vapour.equals(that.vapour);
    }

    @Override
    public int hashCode() {
        return 31 * liquid.hashCode() + vapour.hashCode();
    }

    @Override
    public String toString() {
        return "water boiling at " + QuantityText.print(Kind.PRESSURE, pressure(), Units.MEGAPASCAL, 6) + " and "
                + QuantityText.print(Kind.TEMPERATURE, liquid.temperature(), Units.CELSIUS, 6);
    }
}
