package dev.waterjet.water;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;

/**
 * Where water is what was asked for: the range of the equation of state, the melting lines, the line of boiling.
 *
 * <p>Checks return whether the state is stable; a state that is not is refused, unless metastable ones are allowed.
 */
record StateLimits(boolean isMetastableAllowed) implements Serializable {

    /** Boiling water is densest at 4 C, with 999.97 kg/m3: whatever is denser does not boil, and need not be asked. */
    private static final double DENSER_THAN_BOILING_KG_PER_M3 = 1000;

    private static final double HIGHEST_PRESSURE_PA = 1000e6;
    private static final double HIGHEST_TEMPERATURE_K = 1273;

    /** Below this even the cleanest supercooled water freezes on its own (value from memory). */
    private static final double LOWEST_TEMPERATURE_K = 235;

    /** Part by which a computed pressure or density may miss a limit that it stands on. */
    private static final double ROUNDING = 1e-6;

    /** The starting formula of the boiling pressure is better than this by far. */
    private static final double START_TRUST = 0.01;

    void checkPressure(double pressurePa) {
        Require.positive("absolute pressure of water", pressurePa, Units.MEGAPASCAL);
        Require.atMost(
                "absolute pressure of water",
                pressurePa / (1 + ROUNDING) < HIGHEST_PRESSURE_PA ? HIGHEST_PRESSURE_PA : pressurePa,
                HIGHEST_PRESSURE_PA,
                Units.MEGAPASCAL,
                "the equation of state ends there");
    }

    void checkTemperature(double temperatureK) {
        Require.between(
                "temperature of water",
                temperatureK,
                LOWEST_TEMPERATURE_K,
                HIGHEST_TEMPERATURE_K,
                Units.KELVIN,
                "the equation of state ends there");
    }

    boolean checkLiquid(double pressurePa, double temperatureK) {
        checkTemperature(temperatureK);
        Require.atMost(
                "temperature of water",
                temperatureK,
                Iapws95Constants.CRITICAL_TEMPERATURE_K,
                Units.CELSIUS,
                "above its critical temperature water is no liquid; ask by density");
        return checkFreezing(pressurePa, temperatureK) && checkBoiling(pressurePa, temperatureK);
    }

    /** Any state of a sheet: liquid, vapour or what lies above the critical point. */
    boolean checkFluid(Iapws95Kernel sheet) {
        double pressurePa = sheet.pressurePa();
        double temperatureK = sheet.temperatureK;
        boolean dense = sheet.delta > 1;
        if (temperatureK >= SaturationKernel.TRIPLE_TEMPERATURE_K
                && temperatureK <= Saturation.HIGHEST_TEMPERATURE_K
                && sheet.densityKgPerM3 < DENSER_THAN_BOILING_KG_PER_M3) {
            double limit = dense
                    ? Saturation.atSi(temperatureK).liquid().densitySi() * (1 - ROUNDING)
                    : Saturation.atSi(temperatureK).vapour().densitySi() * (1 + ROUNDING);
            boolean between = dense ? sheet.densityKgPerM3 < limit : sheet.densityKgPerM3 > limit;
            if (between && !(isMetastableAllowed && sheet.pressureByDensity() > 0 && pressurePa > 0)) {
                throw new DomainException(
                        "density of water",
                        sheet.densityKgPerM3,
                        dense ? "at least" : "at most",
                        limit,
                        Units.KILOGRAM_PER_CUBIC_METRE,
                        "in between water parts into boiling liquid and vapour");
            }
            return checkFreezing(pressurePa, temperatureK) && !between;
        }
        checkPressure(pressurePa);
        return checkFreezing(pressurePa, temperatureK);
    }

    boolean checkFreezing(double pressurePa, double temperatureK) {
        if (MeltingKernel.isPlainlyWarmer(pressurePa, temperatureK)) {
            return true;
        }
        double meltingK = MeltingKernel.temperatureK(pressurePa);
        if (temperatureK >= meltingK) {
            return true;
        }
        if (isMetastableAllowed) {
            return false;
        }
        throw new DomainException(
                "temperature of water",
                temperatureK,
                "at least",
                meltingK,
                Units.CELSIUS,
                "at that pressure it freezes to " + Ice.at(pressurePa) + " below");
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
                "absolute pressure of water",
                pressurePa,
                "at least",
                Saturation.pressurePa(temperatureK),
                Units.MEGAPASCAL,
                "at that temperature it boils below");
    }

    /** Whether a solve ended on the liquid and not on the vapour. */
    boolean isDense(LiquidKernel kernel) {
        return kernel.densityKgPerM3() > Iapws95Constants.CRITICAL_DENSITY_KG_PER_M3
                && kernel.temperatureK() <= Iapws95Constants.CRITICAL_TEMPERATURE_K
                && kernel.temperatureK() >= LOWEST_TEMPERATURE_K;
    }

    double coldestLiquidK(double pressurePa) {
        return isMetastableAllowed ? LOWEST_TEMPERATURE_K : MeltingKernel.temperatureK(pressurePa);
    }

    /** Boiling point by halving, or the critical temperature. */
    double hottestLiquidK(double pressurePa) {
        if (pressurePa >= SaturationKernel.CRITICAL_PRESSURE_PA) {
            return Iapws95Constants.CRITICAL_TEMPERATURE_K;
        }
        double cold = SaturationKernel.TRIPLE_TEMPERATURE_K;
        double hot = Saturation.HIGHEST_TEMPERATURE_K;
        for (int i = 0; i < 50; i++) {
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
