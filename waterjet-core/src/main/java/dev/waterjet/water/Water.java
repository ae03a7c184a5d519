package dev.waterjet.water;

import dev.waterjet.measure.Density;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.SpecificEnergy;
import dev.waterjet.measure.SpecificHeat;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;

/**
 * Equation of state of ordinary water, IAPWS R6-95(2018): returns the {@link WaterState} for two given quantities.
 *
 * <pre>{@code
 * WaterState supply = Water.stable().at(megapascals(400), celsius(20));
 * Quantity<Density> density = supply.density(); // 1129.06 kg/m3
 * }</pre>
 *
 * <p>{@link #stable()} rejects states at which water freezes or boils. {@link #metastable()} also returns undercooled and
 * superheated liquid and marks it: the water of a jet, for one, is often colder than its freezing temperature when it leaves
 * the orifice.
 *
 * <p>Every pressure is absolute and at most 1000 MPa.
 */
public final class Water implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final Water STABLE = new Water(new StateLimits(false));
    private static final Water METASTABLE = new Water(new StateLimits(true));

    private final transient StateLimits limits;

    private Water(StateLimits limits) {
        this.limits = limits;
    }

    static Water of(StateLimits limits) {
        return limits.isMetastableAllowed() ? METASTABLE : STABLE;
    }

    static boolean isMetastableLiquid(double pressurePa, double temperatureK) {
        return temperatureK <= Iapws95Constants.CRITICAL_TEMPERATURE_K
                && !METASTABLE.limits.checkLiquid(pressurePa, temperatureK);
    }

    /**
     * Returns water in stable states only.
     *
     * @return water that rejects states at which it freezes or boils
     */
    public static Water stable() {
        return STABLE;
    }

    /**
     * Returns water in stable and metastable states: liquid below its melting temperature or above its boiling temperature,
     * down to 235 K.
     *
     * @return water that returns metastable states too, and marks them
     */
    public static Water metastable() {
        return METASTABLE;
    }

    /**
     * Returns the liquid at a pressure and a temperature.
     *
     * @param pressure absolute pressure, above 0 to 1000 MPa
     * @param temperature temperature, up to 647.096 K
     * @return the state
     * @throws DomainException if water is not liquid there; the limit is the melting temperature ({@code water-freezes}) or
     *     the boiling pressure ({@code water-boils}), for metastable water the pressure of the spinodal ({@code liquid-ends}).
     *     Also if the equation of state has no real water there ({@code water-unstable}: undercooled by far above 400 MPa)
     */
    public WaterState at(Quantity<Pressure> pressure, Quantity<Temperature> temperature) {
        Objects.requireNonNull(pressure, "pressure");
        Objects.requireNonNull(temperature, "temperature");
        return atSi(Kind.PRESSURE.si(pressure), Kind.TEMPERATURE.si(temperature));
    }

    /**
     * Returns the liquid at a pressure and a temperature, on SI numbers.
     *
     * @param pressurePa absolute pressure in Pa, above 0 to 1e9
     * @param temperatureK temperature in K, up to 647.096
     * @return the state
     * @throws DomainException as {@link #at(Quantity, Quantity)}
     */
    public WaterState atSi(double pressurePa, double temperatureK) {
        return at(pressurePa, temperatureK, new LiquidKernel());
    }

    private WaterState at(double pressurePa, double temperatureK, LiquidKernel kernel) {
        limits.checkPressure(pressurePa);
        boolean stable = limits.checkLiquid(pressurePa, temperatureK);
        if (!kernel.solve(pressurePa, temperatureK) || !limits.isDense(kernel)) {
            throw limits.ends(pressurePa, temperatureK);
        }
        StateLimits.checkReal(kernel.found());
        return WaterState.solved(kernel, pressurePa, !stable);
    }

    /**
     * Returns the liquid at several pressures and one temperature: an isotherm, with less work for each state.
     *
     * @param pressures absolute pressures, above 0 to 1000 MPa
     * @param temperature temperature, up to 647.096 K
     * @return the states, in the order of the pressures
     * @throws DomainException as {@link #at(Quantity, Quantity)}
     */
    public List<WaterState> at(QuantityArray<Pressure> pressures, Quantity<Temperature> temperature) {
        Objects.requireNonNull(pressures, "pressures");
        Objects.requireNonNull(temperature, "temperature");
        double temperatureK = Kind.TEMPERATURE.si(temperature);
        LiquidKernel kernel = new LiquidKernel();
        return pressures.stream()
                .mapToObj(pressurePa -> at(pressurePa, temperatureK, kernel))
                .toList();
    }

    /**
     * Rejects a pressure and a temperature at which water is ice. Takes a few nanoseconds well above the melting line.
     *
     * @param pressurePa absolute pressure in Pa
     * @param temperatureK temperature in K
     * @throws DomainException if the temperature is below the melting temperature, which is the limit
     */
    public static void checkNotFrozenSi(double pressurePa, double temperatureK) {
        STABLE.limits.checkFreezing(pressurePa, temperatureK);
    }

    /**
     * Returns the density of the liquid by a polynomial, for inner loops: within 1e-8 of the equation of state, several times
     * faster. Below the boiling pressure it continues the superheated liquid.
     *
     * @param pressurePa absolute pressure in Pa, 0 to 1e9
     * @param temperatureK temperature in K, 273.15 to 373.15
     * @return the density in kg/m<sup>3</sup>
     * @throws DomainException if pressure or temperature is out of range, or water is ice
     */
    public static double fastDensitySi(double pressurePa, double temperatureK) {
        if (!DensityKernel.covers(pressurePa, temperatureK)) {
            Require.between(
                    "absolute pressure of water",
                    pressurePa,
                    0,
                    DensityKernel.MAX_PRESSURE_PA,
                    Units.MEGAPASCAL,
                    "range of the fast formula");
            Require.between(
                    "temperature of water",
                    temperatureK,
                    DensityKernel.MIN_TEMPERATURE_K,
                    DensityKernel.MAX_TEMPERATURE_K,
                    Units.CELSIUS,
                    "range of the fast formula");
        }
        checkNotFrozenSi(pressurePa, temperatureK);
        return DensityKernel.density(pressurePa, temperatureK);
    }

    /**
     * Returns liquid, vapour or supercritical water at a density and a temperature. Between saturated liquid and saturated
     * vapour no state is stable.
     *
     * @param density density, above 0
     * @param temperature temperature, up to 1273 K
     * @return the state
     * @throws DomainException if the state is out of range, is ice, or separates into liquid and vapour
     */
    public WaterState atDensity(Quantity<Density> density, Quantity<Temperature> temperature) {
        Objects.requireNonNull(density, "density");
        Objects.requireNonNull(temperature, "temperature");
        return atDensitySi(Kind.DENSITY.si(density), Kind.TEMPERATURE.si(temperature));
    }

    /**
     * Returns water at a density and a temperature, on SI numbers.
     *
     * @param densityKgPerM3 density in kg/m3, above 0
     * @param temperatureK temperature in K, up to 1273
     * @return the state
     * @throws DomainException as {@link #atDensity(Quantity, Quantity)}
     */
    public WaterState atDensitySi(double densityKgPerM3, double temperatureK) {
        Require.positive("density of water", densityKgPerM3, Units.KILOGRAM_PER_CUBIC_METRE);
        limits.checkTemperature(temperatureK);
        Iapws95Kernel equation = new Iapws95Kernel();
        equation.at(temperatureK, densityKgPerM3);
        return WaterState.read(equation, equation.pressurePa(), !limits.checkFluid(equation));
    }

    /**
     * Returns the liquid at a pressure and an entropy: the state after a lossless adiabatic change of pressure.
     *
     * @param pressure absolute pressure, above 0 to 1000 MPa
     * @param entropy entropy, zero in the liquid at the triple point
     * @return the state
     * @throws DomainException if no liquid at that pressure has the entropy
     */
    public WaterState atEntropy(Quantity<Pressure> pressure, Quantity<SpecificHeat> entropy) {
        Objects.requireNonNull(entropy, "entropy");
        Objects.requireNonNull(pressure, "pressure");
        return atEntropySi(Kind.PRESSURE.si(pressure), Kind.SPECIFIC_HEAT.si(entropy));
    }

    /**
     * Returns the liquid at a pressure and an entropy, on SI numbers.
     *
     * @param pressurePa absolute pressure in Pa, above 0 to 1e9
     * @param entropyJPerKgK entropy in J/(kg K), zero in the liquid at the triple point
     * @return the state
     * @throws DomainException as {@link #atEntropy(Quantity, Quantity)}
     */
    public WaterState atEntropySi(double pressurePa, double entropyJPerKgK) {
        Require.finite("entropy of water", entropyJPerKgK, Units.KILOJOULE_PER_KILOGRAM_KELVIN);
        return searched(CaloricProperty.ENTROPY, pressurePa, entropyJPerKgK, Units.KILOJOULE_PER_KILOGRAM_KELVIN);
    }

    /**
     * Returns the liquid at a pressure and an enthalpy: the state after a throttle.
     *
     * @param pressure absolute pressure, above 0 to 1000 MPa
     * @param enthalpy enthalpy; the internal energy is zero in the liquid at the triple point
     * @return the state
     * @throws DomainException if no liquid at that pressure has the enthalpy
     */
    public WaterState atEnthalpy(Quantity<Pressure> pressure, Quantity<SpecificEnergy> enthalpy) {
        Objects.requireNonNull(enthalpy, "enthalpy");
        Objects.requireNonNull(pressure, "pressure");
        return atEnthalpySi(Kind.PRESSURE.si(pressure), Kind.SPECIFIC_ENERGY.si(enthalpy));
    }

    /**
     * Returns the liquid at a pressure and an enthalpy, on SI numbers.
     *
     * @param pressurePa absolute pressure in Pa, above 0 to 1e9
     * @param enthalpyJPerKg enthalpy in J/kg; the internal energy is zero in the liquid at the triple point
     * @return the state
     * @throws DomainException as {@link #atEnthalpy(Quantity, Quantity)}
     */
    public WaterState atEnthalpySi(double pressurePa, double enthalpyJPerKg) {
        Require.finite("enthalpy of water", enthalpyJPerKg, Units.KILOJOULE_PER_KILOGRAM);
        return searched(CaloricProperty.ENTHALPY, pressurePa, enthalpyJPerKg, Units.KILOJOULE_PER_KILOGRAM);
    }

    private WaterState searched(CaloricProperty property, double pressurePa, double target, Unit<?> unit) {
        limits.checkPressure(pressurePa);
        LiquidKernel kernel = new LiquidKernel();
        if (!kernel.newton(property, pressurePa, target) || !limits.isDense(kernel)) {
            searchedByBisection(kernel, property, pressurePa, target, unit);
        }
        StateLimits.checkReal(kernel.found());
        return WaterState.read(kernel.found(), pressurePa, !limits.checkLiquid(pressurePa, kernel.temperatureK()));
    }

    private void searchedByBisection(
            LiquidKernel kernel, CaloricProperty property, double pressurePa, double target, Unit<?> unit) {
        double coldestK = limits.coldestLiquidK(pressurePa);
        double hottestK = limits.hottestLiquidK(pressurePa);
        Require.between(
                property.label() + " of water",
                target,
                kernel.valueAt(property, pressurePa, coldestK),
                kernel.valueAt(property, pressurePa, hottestK),
                unit,
                "limit of the liquid at that pressure");
        kernel.bisect(property, pressurePa, target, coldestK, hottestK);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("water")
                .put("metastable_allowed", limits.isMetastableAllowed())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Water that && limits.equals(that.limits);
    }

    @Override
    public int hashCode() {
        return limits.hashCode();
    }

    @Override
    public String toString() {
        return limits.isMetastableAllowed() ? "stable and metastable water" : "stable water";
    }

    private Object writeReplace() {
        return limits;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its limits");
    }
}
