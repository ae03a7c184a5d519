package dev.waterjet.hydraulics;

import dev.waterjet.water.Water;

/** How the speed of a water jet follows from the supply pressure. */
public enum JetSpeedModel {
    /**
     * Real water, by the international equation of state and the balance of energy: see {@link IsentropicJet}. From 20 to
     * 1000 MPa and 1 to 60 C by the fast formula, which is within 1e-8 of it.
     */
    ISENTROPIC {
        @Override
        double speed(double pressurePa, double temperatureK, double densityKgPerM3) {
            double absolutePa = pressurePa + IsentropicKernel.ATMOSPHERE_PA;
            if (JetSpeedKernel.covers(absolutePa, temperatureK)) {
                return IsentropicJet.fastSpeedSi(absolutePa, temperatureK);
            }
            return IsentropicJet.from(Water.stable().atSi(absolutePa, temperatureK))
                    .speedSi();
        }
    },

    /** Bernoulli with constant density: {@code v = sqrt(2 p / rho)}. About 3.6 percent too fast at 400 MPa. */
    INCOMPRESSIBLE {
        @Override
        double speed(double pressurePa, double temperatureK, double densityKgPerM3) {
            return WaterJetKernel.incompressibleSpeed(pressurePa, densityKgPerM3);
        }
    },

    /**
     * Density by a Tait-type power law, in closed form (Hashish, J. Eng. Mater. Technol. 111 (1989) 221-228; constants
     * from memory). About 0.25 percent too fast at 400 MPa.
     */
    TAIT {
        @Override
        double speed(double pressurePa, double temperatureK, double densityKgPerM3) {
            return WaterJetKernel.taitFactor(pressurePa)
                    * WaterJetKernel.incompressibleSpeed(pressurePa, densityKgPerM3);
        }
    };

    /**
     * Speed in m/s of an ideal jet from gauge pressure in Pa, temperature of the supply in K, and the density of water at
     * rest in the atmosphere.
     */
    abstract double speed(double pressurePa, double temperatureK, double densityKgPerM3);
}
