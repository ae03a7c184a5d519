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
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;

/**
 * Water of one temperature and one pressure, with everything the equation of state says of it. Made by {@link Water}.
 */
public final class WaterState implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final double temperatureK;
    private final double pressurePa;
    private final boolean metastable;
    private final double densityKgPerM3;
    private final double enthalpyJPerKg;
    private final double entropyJPerKgK;
    private final double isobaricHeatCapacityJPerKgK;
    private final double isochoricHeatCapacityJPerKgK;
    private final double soundSpeedMPerS;
    private final double compressibilityPerPa;
    private final double expansionPerK;

    private WaterState(Iapws95Kernel sheet, double pressurePa, boolean metastable) {
        this.temperatureK = sheet.temperatureK;
        this.pressurePa = pressurePa;
        this.metastable = metastable;
        this.densityKgPerM3 = sheet.densityKgPerM3;
        this.enthalpyJPerKg = sheet.enthalpyJPerKg();
        this.entropyJPerKgK = sheet.entropyJPerKgK();
        this.isobaricHeatCapacityJPerKgK = sheet.isobaricHeatCapacityJPerKgK();
        this.isochoricHeatCapacityJPerKgK = sheet.isochoricHeatCapacityJPerKgK();
        this.soundSpeedMPerS = sheet.soundSpeedMPerS();
        this.compressibilityPerPa = 1 / (densityKgPerM3 * sheet.pressureByDensity());
        this.expansionPerK = sheet.pressureByTemperature() * compressibilityPerPa;
    }

    /** Reads a sheet on which everything stands. */
    static WaterState read(Iapws95Kernel sheet, double pressurePa, boolean metastable) {
        return new WaterState(sheet, pressurePa, metastable);
    }

    /**
     * Temperature.
     *
     * @return the temperature, in K
     */
    public Quantity<Temperature> temperature() {
        return Kind.TEMPERATURE.of(temperatureK);
    }

    /**
     * Temperature as a number.
     *
     * @return the temperature in K
     */
    public double temperatureSi() {
        return temperatureK;
    }

    /**
     * Pressure.
     *
     * @return absolute pressure, in Pa
     */
    public Quantity<Pressure> pressure() {
        return Kind.PRESSURE.of(pressurePa);
    }

    /**
     * Pressure as a number.
     *
     * @return absolute pressure in Pa
     */
    public double pressureSi() {
        return pressurePa;
    }

    /**
     * Whether this water should have frozen, boiled or condensed, and only has not had the time.
     *
     * @return true if it is not stable
     */
    public boolean isMetastable() {
        return metastable;
    }

    /**
     * Density.
     *
     * @return the density, in kg/m3
     */
    public Quantity<Density> density() {
        return Kind.DENSITY.of(densityKgPerM3);
    }

    /**
     * Density as a number.
     *
     * @return the density in kg/m3
     */
    public double densitySi() {
        return densityKgPerM3;
    }

    /**
     * Enthalpy; internal energy is zero in the liquid at the triple point.
     *
     * @return the enthalpy, in J/kg
     */
    public Quantity<SpecificEnergy> enthalpy() {
        return Kind.SPECIFIC_ENERGY.of(enthalpyJPerKg);
    }

    /**
     * Enthalpy as a number.
     *
     * @return the enthalpy in J/kg
     */
    public double enthalpySi() {
        return enthalpyJPerKg;
    }

    /**
     * Entropy; zero in the liquid at the triple point.
     *
     * @return the entropy, in J/(kg K)
     */
    public Quantity<SpecificHeat> entropy() {
        return Kind.SPECIFIC_HEAT.of(entropyJPerKgK);
    }

    /**
     * Entropy as a number.
     *
     * @return the entropy in J/(kg K)
     */
    public double entropySi() {
        return entropyJPerKgK;
    }

    /**
     * Heat capacity at constant pressure, c_p.
     *
     * @return the isobaric heat capacity, in J/(kg K)
     */
    public Quantity<SpecificHeat> isobaricHeatCapacity() {
        return Kind.SPECIFIC_HEAT.of(isobaricHeatCapacityJPerKgK);
    }

    /**
     * Isobaric heat capacity as a number.
     *
     * @return the isobaric heat capacity in J/(kg K)
     */
    public double isobaricHeatCapacitySi() {
        return isobaricHeatCapacityJPerKgK;
    }

    /**
     * Heat capacity at constant volume, c_v.
     *
     * @return the isochoric heat capacity, in J/(kg K)
     */
    public Quantity<SpecificHeat> isochoricHeatCapacity() {
        return Kind.SPECIFIC_HEAT.of(isochoricHeatCapacityJPerKgK);
    }

    /**
     * Isochoric heat capacity as a number.
     *
     * @return the isochoric heat capacity in J/(kg K)
     */
    public double isochoricHeatCapacitySi() {
        return isochoricHeatCapacityJPerKgK;
    }

    /**
     * Speed of sound.
     *
     * @return the sound speed, in m/s
     */
    public Quantity<Speed> soundSpeed() {
        return Kind.SPEED.of(soundSpeedMPerS);
    }

    /**
     * Sound speed as a number.
     *
     * @return the sound speed in m/s
     */
    public double soundSpeedSi() {
        return soundSpeedMPerS;
    }

    /**
     * Compressibility at constant temperature, {@code (drho/dp) / rho}.
     *
     * @return the compressibility, in 1/Pa
     */
    public Quantity<Compressibility> compressibility() {
        return Kind.COMPRESSIBILITY.of(compressibilityPerPa);
    }

    /**
     * Compressibility as a number.
     *
     * @return the compressibility in 1/Pa
     */
    public double compressibilitySi() {
        return compressibilityPerPa;
    }

    /**
     * Thermal expansion at constant pressure, {@code -(drho/dT) / rho}; below zero in cold water of low pressure.
     *
     * @return the expansion, in 1/K
     */
    public Quantity<ThermalExpansion> expansion() {
        return Kind.THERMAL_EXPANSION.of(expansionPerK);
    }

    /**
     * Expansion as a number.
     *
     * @return the expansion in 1/K
     */
    public double expansionSi() {
        return expansionPerK;
    }

    /**
     * Viscosity by IAPWS R12-08.
     *
     * @return the dynamic viscosity, in Pa s
     * @throws dev.waterjet.measure.DomainException if the water is hotter than that formulation reaches at its pressure:
     *     900 C up to 300 MPa, 600 C to 350 MPa, 160 C to 500 MPa, 100 C to 1000 MPa
     */
    public Quantity<DynamicViscosity> viscosity() {
        return Kind.DYNAMIC_VISCOSITY.of(viscositySi());
    }

    /**
     * Viscosity as a number.
     *
     * @return the dynamic viscosity in Pa s
     * @throws dev.waterjet.measure.DomainException as {@link #viscosity()}
     */
    public double viscositySi() {
        Require.atMost(
                "temperature of water",
                temperatureK,
                ViscosityKernel.highestTemperatureK(pressurePa),
                Units.CELSIUS,
                "the formula of viscosity ends there at that pressure");
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
                + QuantityText.print(Kind.PRESSURE, pressure(), Units.MEGAPASCAL, 6) + " and "
                + QuantityText.print(Kind.TEMPERATURE, temperature(), Units.CELSIUS, 6);
    }
}
