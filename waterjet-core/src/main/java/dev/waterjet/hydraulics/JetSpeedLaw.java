package dev.waterjet.hydraulics;

/** How the speed of a water jet follows from the supply pressure. */
public enum JetSpeedLaw {
    /** Bernoulli with constant density: {@code v = sqrt(2 p / rho)}. About 3.6 percent too fast at 400 MPa. */
    INCOMPRESSIBLE {
        @Override
        double speed(double pressurePa, double densityKgPerM3) {
            return WaterJetKernel.incompressibleSpeed(pressurePa, densityKgPerM3);
        }
    },

    /**
     * Density by a Tait-type power law, in closed form (Hashish, J. Eng. Mater. Technol. 111 (1989) 221-228; constants
     * from memory). About 0.25 percent too fast at 400 MPa.
     */
    TAIT {
        @Override
        double speed(double pressurePa, double densityKgPerM3) {
            return WaterJetKernel.taitFactor(pressurePa)
                    * WaterJetKernel.incompressibleSpeed(pressurePa, densityKgPerM3);
        }
    };

    /** Speed in m/s of an ideal jet from gauge pressure in Pa and the density of water at rest in the atmosphere. */
    abstract double speed(double pressurePa, double densityKgPerM3);
}
