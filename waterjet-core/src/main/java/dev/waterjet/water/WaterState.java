package dev.waterjet.water;

import dev.waterjet.measure.Compressibility;
import dev.waterjet.measure.Density;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DynamicViscosity;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.SpecificEnergy;
import dev.waterjet.measure.SpecificHeat;
import dev.waterjet.measure.ThermalExpansion;
import dev.waterjet.measure.Units;
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
 * State of water: one pressure and one temperature, with every property of the equation of state. Made by {@link Water}.
 *
 * <p>Methods that end in {@code Si} return the same property as a number in SI, for inner loops.
 */
public final class WaterState implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /**
     * Serial form: the coordinates of a state, from which all else is computed again. Its check is the equation of state
     * itself: the pressure at that density and temperature.
     */
    private record Coordinates(
            double temperatureK, double densityKgPerM3, double pressurePa, boolean metastable, boolean fromPressure)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        /** Relative error of density by which a pressure found by iteration can differ. */
        private static final double TOLERANCE = 1e-6;

        Coordinates {
            WaterState state = byDensity(temperatureK, densityKgPerM3);
            double tolerancePa = TOLERANCE / state.compressibilityPerPa;
            Require.between(
                    "absolute pressure of water",
                    pressurePa,
                    state.pressurePa - tolerancePa,
                    state.pressurePa + tolerancePa,
                    Units.MEGAPASCAL,
                    "equation of state at this density");
        }

        private static WaterState byDensity(double temperatureK, double densityKgPerM3) {
            return Water.metastable().atDensitySi(densityKgPerM3, temperatureK);
        }

        /** A state on a limit can be stable by its density and metastable by its pressure, or the reverse. */
        private Object readResolve() throws InvalidObjectException {
            if (metastable != byDensity(temperatureK, densityKgPerM3).metastable
                    && metastable != Water.isMetastableLiquid(pressurePa, temperatureK)) {
                throw new InvalidObjectException("metastable is " + metastable + " for the wrong state");
            }
            return fromPressure ? solved() : evaluated();
        }

        private WaterState evaluated() {
            Iapws95Kernel equation = new Iapws95Kernel();
            equation.at(temperatureK, densityKgPerM3);
            return new WaterState(equation, pressurePa, metastable, false);
        }

        private WaterState solved() throws InvalidObjectException {
            LiquidKernel kernel = new LiquidKernel();
            if (!kernel.solve(pressurePa, temperatureK) || kernel.densityKgPerM3() != densityKgPerM3) {
                throw new InvalidObjectException("no liquid of that density at that pressure and temperature");
            }
            return new WaterState(kernel.found(), pressurePa, metastable, true);
        }
    }

    private final transient double temperatureK;
    private final transient double pressurePa;
    private final transient boolean metastable;

    /** Whether density is the solution for the pressure: the last digits of the other properties depend on it. */
    private final transient boolean fromPressure;

    private final transient double densityKgPerM3;
    private final transient double enthalpyJPerKg;
    private final transient double entropyJPerKgK;
    private final transient double isobaricHeatCapacityJPerKgK;
    private final transient double isochoricHeatCapacityJPerKgK;
    private final transient double soundSpeedMPerS;
    private final transient double compressibilityPerPa;
    private final transient double expansionPerK;

    private WaterState(Iapws95Kernel equation, double pressurePa, boolean metastable, boolean fromPressure) {
        this.fromPressure = fromPressure;
        this.temperatureK = equation.temperatureK;
        this.pressurePa = pressurePa;
        this.metastable = metastable;
        this.densityKgPerM3 = equation.densityKgPerM3;
        this.enthalpyJPerKg = equation.enthalpyJPerKg();
        this.entropyJPerKgK = equation.entropyJPerKgK();
        this.isobaricHeatCapacityJPerKgK = equation.isobaricHeatCapacityJPerKgK();
        this.isochoricHeatCapacityJPerKgK = equation.isochoricHeatCapacityJPerKgK();
        this.soundSpeedMPerS = equation.soundSpeedMPerS();
        this.compressibilityPerPa = 1 / (densityKgPerM3 * equation.pressureByDensity());
        this.expansionPerK = equation.pressureByTemperature() * compressibilityPerPa;
    }

    /** Reads the state that an equation of state has evaluated. */
    static WaterState read(Iapws95Kernel equation, double pressurePa, boolean metastable) {
        return new WaterState(equation, pressurePa, metastable, false);
    }

    /** Reads the liquid that a kernel has solved for a pressure. */
    static WaterState solved(LiquidKernel kernel, double pressurePa, boolean metastable) {
        return new WaterState(kernel.found(), pressurePa, metastable, true);
    }

    /** {@return the temperature} */
    public Quantity<Temperature> temperature() {
        return Kind.TEMPERATURE.of(temperatureK);
    }

    /** {@return the temperature, in K} */
    public double temperatureSi() {
        return temperatureK;
    }

    /** {@return the absolute pressure} */
    public Quantity<Pressure> pressure() {
        return Kind.PRESSURE.of(pressurePa);
    }

    /** {@return the absolute pressure, in Pa} */
    public double pressureSi() {
        return pressurePa;
    }

    /** {@return whether this is undercooled or superheated liquid, or supersaturated vapour} */
    public boolean isMetastable() {
        return metastable;
    }

    /** {@return the density} */
    public Quantity<Density> density() {
        return Kind.DENSITY.of(densityKgPerM3);
    }

    /** {@return the density, in kg/m<sup>3</sup>} */
    public double densitySi() {
        return densityKgPerM3;
    }

    /** {@return the enthalpy; the internal energy is zero in the liquid at the triple point} */
    public Quantity<SpecificEnergy> enthalpy() {
        return Kind.SPECIFIC_ENERGY.of(enthalpyJPerKg);
    }

    /** {@return the enthalpy, in J/kg} */
    public double enthalpySi() {
        return enthalpyJPerKg;
    }

    /** {@return the internal energy, <i>h</i> - <i>p</i>/&rho;; it is zero in the liquid at the triple point} */
    public Quantity<SpecificEnergy> internalEnergy() {
        return Kind.SPECIFIC_ENERGY.of(internalEnergySi());
    }

    /** {@return the internal energy, in J/kg} */
    public double internalEnergySi() {
        return enthalpyJPerKg - pressurePa / densityKgPerM3;
    }

    /** {@return the entropy; it is zero in the liquid at the triple point} */
    public Quantity<SpecificHeat> entropy() {
        return Kind.SPECIFIC_HEAT.of(entropyJPerKgK);
    }

    /** {@return the entropy, in J/(kg K)} */
    public double entropySi() {
        return entropyJPerKgK;
    }

    /** {@return the heat capacity at constant pressure, <i>c<sub>p</sub></i>} */
    public Quantity<SpecificHeat> isobaricHeatCapacity() {
        return Kind.SPECIFIC_HEAT.of(isobaricHeatCapacityJPerKgK);
    }

    /** {@return the heat capacity at constant pressure, in J/(kg K)} */
    public double isobaricHeatCapacitySi() {
        return isobaricHeatCapacityJPerKgK;
    }

    /** {@return the heat capacity at constant volume, <i>c<sub>v</sub></i>} */
    public Quantity<SpecificHeat> isochoricHeatCapacity() {
        return Kind.SPECIFIC_HEAT.of(isochoricHeatCapacityJPerKgK);
    }

    /** {@return the heat capacity at constant volume, in J/(kg K)} */
    public double isochoricHeatCapacitySi() {
        return isochoricHeatCapacityJPerKgK;
    }

    /** {@return the speed of sound} */
    public Quantity<Speed> soundSpeed() {
        return Kind.SPEED.of(soundSpeedMPerS);
    }

    /** {@return the speed of sound, in m/s} */
    public double soundSpeedSi() {
        return soundSpeedMPerS;
    }

    /** {@return the isothermal compressibility, (dρ/d<i>p</i>)/ρ} */
    public Quantity<Compressibility> compressibility() {
        return Kind.COMPRESSIBILITY.of(compressibilityPerPa);
    }

    /** {@return the isothermal compressibility, in 1/Pa} */
    public double compressibilitySi() {
        return compressibilityPerPa;
    }

    /**
     * {@return the thermal expansion at constant pressure, −(dρ/d<i>T</i>)/ρ; negative in cold water at low pressure}
     */
    public Quantity<ThermalExpansion> expansion() {
        return Kind.THERMAL_EXPANSION.of(expansionPerK);
    }

    /** {@return the thermal expansion at constant pressure, in 1/K} */
    public double expansionSi() {
        return expansionPerK;
    }

    /**
     * Returns the dynamic viscosity by IAPWS R12-08.
     *
     * @return the dynamic viscosity
     * @throws dev.waterjet.measure.DomainException if the temperature is above the range of that formulation at this
     *     pressure: 900 °C up to 300 MPa, 600 °C to 350 MPa, 160 °C to 500 MPa, 100 °C to 1000 MPa
     */
    public Quantity<DynamicViscosity> viscosity() {
        return Kind.DYNAMIC_VISCOSITY.of(viscositySi());
    }

    /**
     * Returns the dynamic viscosity as a number.
     *
     * @return the dynamic viscosity, in Pa s
     * @throws dev.waterjet.measure.DomainException as {@link #viscosity()}
     */
    public double viscositySi() {
        Require.atMost(
                "temperature of water",
                temperatureK,
                ViscosityKernel.maximumTemperatureK(pressurePa),
                Units.CELSIUS,
                "limit of the viscosity formulation at this pressure");
        return ViscosityKernel.viscosityPaS(temperatureK, densityKgPerM3);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("water state")
                .put("temperature", Kind.TEMPERATURE, temperatureK)
                .put("pressure", Kind.PRESSURE, pressurePa)
                .put("metastable", metastable)
                .put("density", Kind.DENSITY, densityKgPerM3)
                .put("enthalpy", Kind.SPECIFIC_ENERGY, enthalpyJPerKg)
                .put("internal_energy", Kind.SPECIFIC_ENERGY, internalEnergySi())
                .put("entropy", Kind.SPECIFIC_HEAT, entropyJPerKgK)
                .put("isobaric_heat_capacity", Kind.SPECIFIC_HEAT, isobaricHeatCapacityJPerKgK)
                .put("isochoric_heat_capacity", Kind.SPECIFIC_HEAT, isochoricHeatCapacityJPerKgK)
                .put("sound_speed", Kind.SPEED, soundSpeedMPerS)
                .put("compressibility", Kind.COMPRESSIBILITY, compressibilityPerPa)
                .put("expansion", Kind.THERMAL_EXPANSION, expansionPerK)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof WaterState that
                && temperatureK == that.temperatureK
                && pressurePa == that.pressurePa
                && densityKgPerM3 == that.densityKgPerM3
                && metastable == that.metastable;
    }

    @Override
    public int hashCode() {
        return Objects.hash(temperatureK, pressurePa, densityKgPerM3, metastable);
    }

    @Override
    public String toString() {
        return (metastable ? "metastable water of " : "water of ")
                + QuantityText.forPeople(Kind.PRESSURE, pressure()) + " and "
                + QuantityText.forPeople(Kind.TEMPERATURE, temperature());
    }

    private Object writeReplace() {
        return new Coordinates(temperatureK, densityKgPerM3, pressurePa, metastable, fromPressure);
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its coordinates");
    }
}
