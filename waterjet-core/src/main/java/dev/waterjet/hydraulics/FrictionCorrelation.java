package dev.waterjet.hydraulics;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;

/**
 * How the Darcy friction factor of turbulent flow follows from Reynolds number and roughness. Up to a Reynolds number of
 * 2300 each law gives the laminar {@code 64/Re}.
 */
public enum FrictionCorrelation {
    /** Colebrook (1939), solved to the last figure. The law that the others approximate. */
    COLEBROOK {
        @Override
        double turbulent(double reynolds, double relativeRoughness) {
            return FrictionKernel.colebrook(reynolds, relativeRoughness);
        }
    },

    /** Churchill (1977), one formula through laminar, critical and turbulent flow without a step. */
    CHURCHILL {
        @Override
        double turbulent(double reynolds, double relativeRoughness) {
            return FrictionKernel.churchill(reynolds, relativeRoughness);
        }
    },

    /** Haaland (1983), explicit. */
    HAALAND {
        @Override
        double turbulent(double reynolds, double relativeRoughness) {
            return FrictionKernel.haaland(reynolds, relativeRoughness);
        }
    },

    /** Swamee and Jain (1976), explicit. */
    SWAMEE_JAIN {
        @Override
        double turbulent(double reynolds, double relativeRoughness) {
            return FrictionKernel.swameeJain(reynolds, relativeRoughness);
        }
    };

    abstract double turbulent(double reynolds, double relativeRoughness);

    /**
     * The Darcy friction factor.
     *
     * @param reynolds Reynolds number, above 0
     * @param relativeRoughness roughness over bore, 0 to 0.05
     * @return the factor
     * @throws dev.waterjet.measure.DomainException if an argument is out of range
     */
    public double factor(double reynolds, double relativeRoughness) {
        Require.positive("Reynolds number", reynolds, Units.ONE);
        Require.between(
                "roughness over bore",
                relativeRoughness,
                0,
                0.05,
                Units.ONE,
                "beyond the pipes from which friction laws were made");
        return factorSi(reynolds, relativeRoughness);
    }

    double factorSi(double reynolds, double relativeRoughness) {
        return reynolds <= FrictionKernel.LAMINAR_REYNOLDS && this != CHURCHILL
                ? FrictionKernel.laminar(reynolds)
                : turbulent(reynolds, relativeRoughness);
    }
}
