package dev.waterjet.water;

import java.util.Locale;

/** Property by which a state is searched, beside its pressure. */
enum CaloricProperty {
    /** ds = c_p dT/T - alpha/rho dp. */
    ENTROPY {
        @Override
        double value(Iapws95Kernel equation) {
            return equation.entropyJPerKgK();
        }

        @Override
        double perPressure(Iapws95Kernel equation) {
            return -equation.expansionPerK() / equation.densityKgPerM3;
        }

        @Override
        double perLogTemperature(Iapws95Kernel equation) {
            return equation.isobaricHeatCapacityJPerKgK();
        }
    },

    /** dh = c_p dT + (1 - alpha T)/rho dp. */
    ENTHALPY {
        @Override
        double value(Iapws95Kernel equation) {
            return equation.enthalpyJPerKg();
        }

        @Override
        double perPressure(Iapws95Kernel equation) {
            return (1 - equation.expansionPerK() * equation.temperatureK) / equation.densityKgPerM3;
        }

        @Override
        double perLogTemperature(Iapws95Kernel equation) {
            return equation.temperatureK * equation.isobaricHeatCapacityJPerKgK();
        }
    };

    String label() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Entropy in J/(kg K) or enthalpy in J/kg. */
    abstract double value(Iapws95Kernel equation);

    /** Its derivative with respect to pressure at constant temperature. */
    abstract double perPressure(Iapws95Kernel equation);

    /** Its derivative with respect to ln T at constant pressure. */
    abstract double perLogTemperature(Iapws95Kernel equation);
}
