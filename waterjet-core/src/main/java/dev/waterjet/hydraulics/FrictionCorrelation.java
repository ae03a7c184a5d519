package dev.waterjet.hydraulics;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;

/**
 * Friction correlation: Darcy friction factor of turbulent flow as a function of Reynolds number and relative roughness. Up to
 * a Reynolds number of 2300 each but Churchill's gives the laminar 64/<i>Re</i>; up to 4000 the factor changes linearly to the
 * turbulent one (common practice, no source), so that nothing that balances a flow meets a step.
 */
public enum FrictionCorrelation {
    /** Colebrook (1939), solved to the last digit. The others approximate it. */
    COLEBROOK("Colebrook") {
        @Override
        double turbulent(double reynolds, double relativeRoughness) {
            return FrictionKernel.colebrook(reynolds, relativeRoughness);
        }
    },

    /** Churchill (1977), one formula for laminar, critical and turbulent flow, without a step. */
    CHURCHILL("Churchill") {
        @Override
        double turbulent(double reynolds, double relativeRoughness) {
            return FrictionKernel.churchill(reynolds, relativeRoughness);
        }
    },

    /** Haaland (1983), explicit. */
    HAALAND("Haaland") {
        @Override
        double turbulent(double reynolds, double relativeRoughness) {
            return FrictionKernel.haaland(reynolds, relativeRoughness);
        }
    },

    /** Swamee and Jain (1976), explicit. */
    SWAMEE_JAIN("Swamee-Jain") {
        @Override
        double turbulent(double reynolds, double relativeRoughness) {
            return FrictionKernel.swameeJain(reynolds, relativeRoughness);
        }
    };

    private final String label;

    FrictionCorrelation(String label) {
        this.label = label;
    }

    abstract double turbulent(double reynolds, double relativeRoughness);

    /** {@return the name for people} */
    public String label() {
        return label;
    }

    /**
     * Returns the Darcy friction factor.
     *
     * @param reynolds Reynolds number, above 0
     * @param relativeRoughness roughness over bore, 0 to 0.05
     * @return the factor
     * @throws dev.waterjet.measure.DomainException if an argument is out of range
     */
    public double factor(double reynolds, double relativeRoughness) {
        Require.positive("Reynolds number", reynolds, Units.ONE);
        Require.between("relative roughness", relativeRoughness, 0, 0.05, Units.ONE, "range of the correlations");
        return factorSi(reynolds, relativeRoughness);
    }

    double factorSi(double reynolds, double relativeRoughness) {
        if (reynolds >= FrictionKernel.TURBULENT_REYNOLDS || this == CHURCHILL) {
            return turbulent(reynolds, relativeRoughness);
        }
        if (reynolds <= FrictionKernel.LAMINAR_REYNOLDS) {
            return FrictionKernel.laminar(reynolds);
        }
        double share = (reynolds - FrictionKernel.LAMINAR_REYNOLDS)
                / (FrictionKernel.TURBULENT_REYNOLDS - FrictionKernel.LAMINAR_REYNOLDS);
        return (1 - share) * FrictionKernel.laminar(FrictionKernel.LAMINAR_REYNOLDS)
                + share * turbulent(FrictionKernel.TURBULENT_REYNOLDS, relativeRoughness);
    }
}
