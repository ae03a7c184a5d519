package dev.waterjet.water;

import dev.waterjet.measure.Density;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.SpecificEnergy;
import dev.waterjet.measure.SpecificHeat;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;

/**
 * Ordinary water by the international equation of state, IAPWS R6-95(2018): asked by two quantities, it answers with a
 * {@link WaterState}.
 *
 * <p>{@link #stable()} answers only where water stays what it is. {@link #metastable()} also answers for the liquid that
 * should have frozen or boiled, has not had the time, and is marked so: the water of a jet, for one, is often colder
 * than ice in the instant in which it leaves the orifice.
 *
 * <p>Every pressure is absolute and at most 1000 MPa.
 */
public final class Water implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final Water STABLE = new Water(new StateLimits(false));
    private static final Water METASTABLE = new Water(new StateLimits(true));

    private final StateLimits limits;

    private Water(StateLimits limits) {
        this.limits = limits;
    }

    /**
     * Water where it neither freezes nor boils.
     *
     * @return water that refuses other states
     */
    public static Water stable() {
        return STABLE;
    }

    /**
     * Water that may also be a liquid colder than its melting line or hotter than its boiling point, down to 235 K.
     *
     * @return water that answers for such states too, and marks them
     */
    public static Water metastable() {
        return METASTABLE;
    }

    /**
     * Liquid at a pressure and a temperature.
     *
     * @param pressure absolute pressure, above 0 to 1000 MPa
     * @param temperature temperature, up to 647.096 K
     * @return the state
     * @throws DomainException if water is no liquid there; the message names the temperature of melting or the pressure
     *     of boiling
     */
    public WaterState at(Quantity<Pressure> pressure, Quantity<Temperature> temperature) {
        return atSi(Kind.PRESSURE.si(pressure), Kind.TEMPERATURE.si(temperature));
    }

    /**
     * Liquid at a pressure and a temperature as numbers.
     *
     * @param pressurePa absolute pressure in Pa, above 0 to 1e9
     * @param temperatureK temperature in K, up to 647.096
     * @return the state
     * @throws DomainException as {@link #at(Quantity, Quantity)}
     */
    public WaterState atSi(double pressurePa, double temperatureK) {
        limits.checkPressure(pressurePa);
        boolean stable = limits.checkLiquid(pressurePa, temperatureK);
        LiquidKernel kernel = new LiquidKernel();
        if (!kernel.solve(pressurePa, temperatureK) || !limits.isDense(kernel)) {
            throw limits.boils(pressurePa, temperatureK);
        }
        return WaterState.read(kernel.found(), pressurePa, !stable);
    }

    /**
     * Refuses a pressure and a temperature at which water is ice. Costs next to nothing where it is plainly not.
     *
     * @param pressurePa absolute pressure in Pa
     * @param temperatureK temperature in K
     * @throws DomainException if the temperature is below that of melting, which the message names
     */
    public static void checkNotFrozenSi(double pressurePa, double temperatureK) {
        STABLE.limits.checkFreezing(pressurePa, temperatureK);
    }

    /**
     * Water, liquid or not, at a density and a temperature. Between boiling liquid and its vapour no state is stable.
     *
     * @param density density, above 0
     * @param temperature temperature, up to 1273 K
     * @return the state
     * @throws DomainException if the state is out of range, frozen, or neither liquid nor vapour
     */
    public WaterState atDensity(Quantity<Density> density, Quantity<Temperature> temperature) {
        return atDensitySi(Kind.DENSITY.si(density), Kind.TEMPERATURE.si(temperature));
    }

    /**
     * Water, liquid or not, at a density and a temperature as numbers.
     *
     * @param densityKgPerM3 density in kg/m3, above 0
     * @param temperatureK temperature in K, up to 1273
     * @return the state
     * @throws DomainException as {@link #atDensity(Quantity, Quantity)}
     */
    public WaterState atDensitySi(double densityKgPerM3, double temperatureK) {
        Require.positive("density of water", densityKgPerM3, Units.KILOGRAM_PER_CUBIC_METRE);
        limits.checkTemperature(temperatureK);
        Iapws95Kernel sheet = new Iapws95Kernel();
        sheet.at(temperatureK, densityKgPerM3);
        return WaterState.read(sheet, sheet.pressurePa(), !limits.checkFluid(sheet));
    }

    /**
     * Liquid at a pressure and an entropy, as behind a change of pressure without loss and without heat.
     *
     * @param pressure absolute pressure, above 0 to 1000 MPa
     * @param entropy entropy, zero in the liquid at the triple point
     * @return the state
     * @throws DomainException if no liquid of that pressure has the entropy
     */
    public WaterState atEntropy(Quantity<Pressure> pressure, Quantity<SpecificHeat> entropy) {
        return atEntropySi(Kind.PRESSURE.si(pressure), Kind.SPECIFIC_HEAT.si(entropy));
    }

    /**
     * Liquid at a pressure and an entropy as numbers.
     *
     * @param pressurePa absolute pressure in Pa, above 0 to 1e9
     * @param entropyJPerKgK entropy in J/(kg K), zero in the liquid at the triple point
     * @return the state
     * @throws DomainException as {@link #atEntropy(Quantity, Quantity)}
     */
    public WaterState atEntropySi(double pressurePa, double entropyJPerKgK) {
        Require.finite("entropy of water", entropyJPerKgK, Units.KILOJOULE_PER_KILOGRAM_KELVIN);
        return searched(HeatKind.ENTROPY, pressurePa, entropyJPerKgK, Units.KILOJOULE_PER_KILOGRAM_KELVIN);
    }

    /**
     * Liquid at a pressure and an enthalpy, as behind a throttle.
     *
     * @param pressure absolute pressure, above 0 to 1000 MPa
     * @param enthalpy enthalpy; zero internal energy is that of the liquid at the triple point
     * @return the state
     * @throws DomainException if no liquid of that pressure has the enthalpy
     */
    public WaterState atEnthalpy(Quantity<Pressure> pressure, Quantity<SpecificEnergy> enthalpy) {
        return atEnthalpySi(Kind.PRESSURE.si(pressure), Kind.SPECIFIC_ENERGY.si(enthalpy));
    }

    /**
     * Liquid at a pressure and an enthalpy as numbers.
     *
     * @param pressurePa absolute pressure in Pa, above 0 to 1e9
     * @param enthalpyJPerKg enthalpy in J/kg; zero internal energy is that of the liquid at the triple point
     * @return the state
     * @throws DomainException as {@link #atEnthalpy(Quantity, Quantity)}
     */
    public WaterState atEnthalpySi(double pressurePa, double enthalpyJPerKg) {
        Require.finite("enthalpy of water", enthalpyJPerKg, Units.KILOJOULE_PER_KILOGRAM);
        return searched(HeatKind.ENTHALPY, pressurePa, enthalpyJPerKg, Units.KILOJOULE_PER_KILOGRAM);
    }

    private WaterState searched(HeatKind kind, double pressurePa, double target, Unit<?> unit) {
        limits.checkPressure(pressurePa);
        LiquidKernel kernel = new LiquidKernel();
        if (!kernel.newton(kind, pressurePa, target) || !limits.isDense(kernel)) {
            searchedByHalving(kernel, kind, pressurePa, target, unit);
        }
        return WaterState.read(kernel.found(), pressurePa, !limits.checkLiquid(pressurePa, kernel.temperatureK()));
    }

    private void searchedByHalving(LiquidKernel kernel, HeatKind kind, double pressurePa, double target, Unit<?> unit) {
        double coldestK = limits.coldestLiquidK(pressurePa);
        double hottestK = limits.hottestLiquidK(pressurePa);
        String quantity = kind.words() + " of water";
        String reason = "the liquid of that pressure ends there";
        double least = kernel.valueAt(kind, pressurePa, coldestK);
        double most = kernel.valueAt(kind, pressurePa, hottestK);
        if (target < least) {
            throw new DomainException(quantity, target, "at least", least, unit, reason);
        }
        if (target > most) {
            throw new DomainException(quantity, target, "at most", most, unit, reason);
        }
        kernel.halve(kind, pressurePa, target, coldestK, hottestK);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("water")
                .put("metastable_allowed", limits.isMetastableAllowed())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Water that && limits.isMetastableAllowed() == that.limits.isMetastableAllowed();
    }

    @Override
    public int hashCode() {
        return Boolean.hashCode(limits.isMetastableAllowed());
    }

    @Override
    public String toString() {
        return limits.isMetastableAllowed() ? "metastable water" : "stable water";
    }
}
