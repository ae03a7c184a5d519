package dev.waterjet.water;

import java.util.Locale;

/** What a state is searched by, beside its pressure. */
enum HeatKind {
    /** ds = c_p dT/T - alpha/rho dp. */
    ENTROPY {
        @Override
        double value(Iapws95Kernel sheet) {
            return sheet.entropyJPerKgK();
        }

        @Override
        double perPressure(Iapws95Kernel sheet) {
            return -sheet.expansionPerK() / sheet.densityKgPerM3;
        }

        @Override
        double perLogTemperature(Iapws95Kernel sheet) {
            return sheet.isobaricHeatCapacityJPerKgK();
        }
    },

    /** dh = c_p dT + (1 - alpha T)/rho dp. */
    ENTHALPY {
        @Override
        double value(Iapws95Kernel sheet) {
            return sheet.enthalpyJPerKg();
        }

        @Override
        double perPressure(Iapws95Kernel sheet) {
            return (1 - sheet.expansionPerK() * sheet.temperatureK) / sheet.densityKgPerM3;
        }

        @Override
        double perLogTemperature(Iapws95Kernel sheet) {
            return sheet.temperatureK * sheet.isobaricHeatCapacityJPerKgK();
        }
    };

    String words() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Entropy in J/(kg K) or enthalpy in J/kg. */
    abstract double value(Iapws95Kernel sheet);

    /** Its change with pressure at constant temperature. */
    abstract double perPressure(Iapws95Kernel sheet);

    /** Its change with ln T at constant pressure. */
    abstract double perLogTemperature(Iapws95Kernel sheet);
}
