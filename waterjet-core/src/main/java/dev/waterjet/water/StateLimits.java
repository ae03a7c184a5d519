package dev.waterjet.water;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;

/**
 * Limits of the states that are answered: range of the equation of state, melting lines, saturation line. Content and serial
 * form of {@link Water}.
 *
 * <p>A check returns whether the state is stable. A state that is not stable is rejected, unless metastable states are
 * allowed.
 */
record StateLimits(boolean isMetastableAllowed) implements Serializable {

    private static final long serialVersionUID = 1L;

    /** Saturated liquid is densest at 4 &deg;C, with 999.97 kg/m3: denser water does not boil and needs no check. */
    private static final double DENSER_THAN_BOILING_KG_PER_M3 = 1000;

    /**
     * The starting formula for the density of the saturated liquid is within 3.3e-4 of the balance up to this temperature: water
     * denser than that by {@link #PLAINLY_DENSER} does not boil.
     */
    private static final double DENSITY_START_TRUST_K = 620;

    private static final double PLAINLY_DENSER = 1.001;

    /** Up to this temperature that formula is within 7e-6, so that water at ambient pressure is plainly liquid too. */
    private static final double COOL_K = 450;

    private static final double PLAINLY_DENSER_COOL = 1.00002;
    private static final double MAX_PRESSURE_PA = 1000e6;
    private static final double MAX_TEMPERATURE_K = 1273;

    /** Below this even the cleanest supercooled water freezes (value from memory). */
    private static final double MIN_TEMPERATURE_K = 235;

    /** Relative rounding error of a computed pressure or density that lies on a limit. */
    private static final double ROUNDING = 1e-6;

    /** The same of a temperature found from entropy or enthalpy. */
    private static final double TEMPERATURE_ROUNDING = 1e-12;

    /** Bound of the relative error of the starting formula for the saturation pressure, which is below 0.001. */
    private static final double START_TRUST = 0.01;

    /** Range in which water is liquid if its pressure is above the saturation pressure, and a pressure above all of those. */
    private static final double ORDINARY_K = 373.15;

    private static final double ORDINARY_KG_PER_M3 = 900;

    private static final double ORDINARY_PA = 0.11e6;

    private static final int BISECTIONS = 50;

    private Object readResolve() {
        return Water.of(this);
    }

    void checkPressure(double pressurePa) {
        Require.positive("absolute pressure of water", pressurePa, Units.MEGAPASCAL);
        Require.atMost(
                "absolute pressure of water",
                pressurePa / (1 + ROUNDING) < MAX_PRESSURE_PA ? MAX_PRESSURE_PA : pressurePa,
                MAX_PRESSURE_PA,
                Units.MEGAPASCAL,
                "limit of the equation of state");
    }

    void checkTemperature(double temperatureK) {
        Require.between(
                "temperature of water",
                temperatureK,
                MIN_TEMPERATURE_K,
                MAX_TEMPERATURE_K,
                Units.KELVIN,
                "limit of the equation of state");
    }

    boolean checkLiquid(double pressurePa, double temperatureK) {
        checkTemperature(temperatureK);
        if (temperatureK > Iapws95Constants.CRITICAL_TEMPERATURE_K) {
            throw new DomainException(
                    Message.of(
                            "supercritical-water",
                            "{quantity} is {value}; it must be at most {limit} (above the critical temperature there is"
                                    + " no liquid; give density and temperature instead)"),
                    "temperature of water",
                    temperatureK,
                    Iapws95Constants.CRITICAL_TEMPERATURE_K,
                    Units.CELSIUS);
        }
        return checkFreezing(pressurePa, temperatureK) && checkBoiling(pressurePa, temperatureK);
    }

    /** Checks any state: liquid, vapour or supercritical. */
    boolean checkFluid(Iapws95Kernel equation) {
        double pressurePa = equation.pressurePa();
        double temperatureK = equation.temperatureK;
        boolean dense = equation.delta > 1;
        if (equation.densityKgPerM3 < DENSER_THAN_BOILING_KG_PER_M3
                && temperatureK >= SaturationKernel.TRIPLE_TEMPERATURE_K
                && temperatureK <= Saturation.MAX_TEMPERATURE_K
                && !isOrdinaryLiquid(equation, pressurePa)
                && !isPlainlyLiquid(temperatureK, equation.densityKgPerM3)) {
            double limit = dense
                    ? Saturation.atSi(temperatureK).liquid().densitySi() * (1 - ROUNDING)
                    : Saturation.atSi(temperatureK).vapour().densitySi() * (1 + ROUNDING);
            boolean between = dense ? equation.densityKgPerM3 < limit : equation.densityKgPerM3 > limit;
            if (between && !(isMetastableAllowed && pressurePa > 0 && isOfOnePhase(equation, limit))) {
                throw separates(equation.densityKgPerM3, dense, limit);
            }
            return checkFreezing(pressurePa, temperatureK) && !between;
        }
        checkPressure(pressurePa);
        if (!dense) {
            Require.atLeast(
                    "temperature of water vapour",
                    temperatureK,
                    SaturationKernel.TRIPLE_TEMPERATURE_K,
                    Units.CELSIUS,
                    "vapour below the triple point is left out");
        }
        boolean stable = checkFreezing(pressurePa, temperatureK);
        checkReal(equation);
        return stable;
    }

    /**
     * Below 100 &deg;C the pressure from 900 kg/m3 to the saturated liquid is below the saturation pressure, so that water above that
     * pressure is denser than the saturated liquid: cheaper to see than the density of the saturated liquid.
     */
    private static boolean isOrdinaryLiquid(Iapws95Kernel equation, double pressurePa) {
        double temperatureK = equation.temperatureK;
        return temperatureK >= SaturationKernel.TRIPLE_TEMPERATURE_K
                && temperatureK <= ORDINARY_K
                && equation.densityKgPerM3 > ORDINARY_KG_PER_M3
                && (pressurePa > ORDINARY_PA
                        || pressurePa > (1 + START_TRUST) * SaturationKernel.pressureStart(temperatureK));
    }

    private static boolean isPlainlyLiquid(double temperatureK, double densityKgPerM3) {
        return temperatureK >= SaturationKernel.TRIPLE_TEMPERATURE_K
                && temperatureK <= DENSITY_START_TRUST_K
                && densityKgPerM3
                        > (temperatureK <= COOL_K ? PLAINLY_DENSER_COOL : PLAINLY_DENSER)
                                * SaturationKernel.liquidDensityStart(temperatureK);
    }

    private static boolean isOfOnePhase(Iapws95Kernel equation, double saturatedKgPerM3) {
        return equation.pressureByDensity() > 0
                && new BranchKernel().isReached(equation.temperatureK, saturatedKgPerM3, equation.densityKgPerM3);
    }

    /** Rejects what the equation of state returns far below the melting line: heat capacity below 0, no speed of sound. */
    static void checkReal(Iapws95Kernel equation) {
        if (equation.isochoricHeatCapacityJPerKgK() > 0 && equation.soundSpeedMPerS() > 0) {
            return;
        }
        throw new DomainException(
                Message.of(
                                "water-unstable",
                                "temperature of water is {temperature}; at {pressure} the equation of state has no"
                                        + " stable or metastable liquid there")
                        .with("temperature", Kind.TEMPERATURE, equation.temperatureK, Units.CELSIUS)
                        .with("pressure", Kind.PRESSURE, equation.pressurePa(), Units.MEGAPASCAL),
                "temperature of water");
    }

    private static DomainException separates(double densityKgPerM3, boolean dense, double limit) {
        return new DomainException(
                Message.of(
                                "water-separates",
                                "{quantity} is {value}; it must be {relation} {limit} (at densities between saturated"
                                        + " liquid and saturated vapour water separates)")
                        .with("relation", dense ? "at least" : "at most"),
                "density of water",
                densityKgPerM3,
                limit,
                Units.KILOGRAM_PER_CUBIC_METRE);
    }

    boolean checkFreezing(double pressurePa, double temperatureK) {
        if (MeltingKernel.isPlainlyWarmer(pressurePa, temperatureK)) {
            return true;
        }
        double meltingK = MeltingKernel.temperatureK(pressurePa);
        if (temperatureK >= meltingK * (1 - TEMPERATURE_ROUNDING)) {
            return true;
        }
        if (isMetastableAllowed) {
            return false;
        }
        throw new DomainException(
                Message.of(
                                "water-freezes",
                                "{quantity} is {value}; it must be at least {limit} (at {pressure} absolute water"
                                        + " freezes to {ice} below that)")
                        .with("pressure", Kind.PRESSURE, pressurePa, Units.MEGAPASCAL)
                        .with("ice", Ice.at(pressurePa).label()),
                "temperature of water",
                temperatureK,
                meltingK,
                Units.CELSIUS);
    }

    private boolean checkBoiling(double pressurePa, double temperatureK) {
        if (pressurePa >= SaturationKernel.CRITICAL_PRESSURE_PA
                || pressurePa > (1 + START_TRUST) * SaturationKernel.pressureStart(temperatureK)) {
            return true;
        }
        if (pressurePa >= Saturation.pressurePa(temperatureK) * (1 - ROUNDING)) {
            return true;
        }
        if (isMetastableAllowed) {
            return false;
        }
        throw boils(pressurePa, temperatureK);
    }

    DomainException boils(double pressurePa, double temperatureK) {
        return new DomainException(
                Message.of(
                                "water-boils",
                                "{quantity} is {value}; it must be at least {limit} (at {temperature} water boils below"
                                        + " that)")
                        .with("temperature", Kind.TEMPERATURE, temperatureK, Units.CELSIUS),
                "absolute pressure of water",
                pressurePa,
                Saturation.pressurePa(temperatureK),
                Units.MEGAPASCAL);
    }

    /** Rejects a pressure below that at which liquid ends, superheated liquid too. */
    DomainException ends(double pressurePa, double temperatureK) {
        if (!isMetastableAllowed || temperatureK > Saturation.MAX_TEMPERATURE_K) {
            return boils(pressurePa, temperatureK);
        }
        double saturatedKgPerM3 = Saturation.atSi(temperatureK).liquid().densitySi();
        return new DomainException(
                Message.of(
                                "liquid-ends",
                                "{quantity} is {value}; it must be at least {limit} (at {temperature} there is no"
                                        + " liquid below that, not even superheated)")
                        .with("temperature", Kind.TEMPERATURE, temperatureK, Units.CELSIUS),
                "absolute pressure of water",
                pressurePa,
                new BranchKernel().lowestPressurePa(temperatureK, saturatedKgPerM3),
                Units.MEGAPASCAL);
    }

    /** Whether a solution is on the liquid branch: not on the vapour branch, and not on a false loop between the two. */
    boolean isDense(LiquidKernel kernel) {
        double temperatureK = kernel.temperatureK();
        double densityKgPerM3 = kernel.densityKgPerM3();
        if (!(densityKgPerM3 > Iapws95Constants.CRITICAL_DENSITY_KG_PER_M3
                && temperatureK <= Iapws95Constants.CRITICAL_TEMPERATURE_K
                && temperatureK >= MIN_TEMPERATURE_K)) {
            return false;
        }
        if (temperatureK < BranchKernel.SPINODAL_FROM_K
                || temperatureK > Saturation.MAX_TEMPERATURE_K
                || isPlainlyLiquid(temperatureK, densityKgPerM3)) {
            return true;
        }
        double saturatedKgPerM3 = Saturation.atSi(temperatureK).liquid().densitySi();
        return densityKgPerM3 >= saturatedKgPerM3
                || new BranchKernel().isReached(temperatureK, saturatedKgPerM3, densityKgPerM3);
    }

    double coldestLiquidK(double pressurePa) {
        return isMetastableAllowed ? MIN_TEMPERATURE_K : MeltingKernel.temperatureK(pressurePa);
    }

    /**
     * Boiling temperature, or the critical temperature. A plain bisection instead of a solver of Commons Math: it ends on the
     * side of the liquid, at the last digit, whatever the pressure.
     */
    double hottestLiquidK(double pressurePa) {
        if (pressurePa >= SaturationKernel.CRITICAL_PRESSURE_PA) {
            return Iapws95Constants.CRITICAL_TEMPERATURE_K;
        }
        double cold = SaturationKernel.TRIPLE_TEMPERATURE_K;
        double hot = Saturation.MAX_TEMPERATURE_K;
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = (cold + hot) / 2;
            if (Saturation.pressurePa(middle) < pressurePa) {
                cold = middle;
            } else {
                hot = middle;
            }
        }
        return cold;
    }
}
