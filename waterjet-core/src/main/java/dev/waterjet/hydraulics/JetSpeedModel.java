package dev.waterjet.hydraulics;

import dev.waterjet.water.Water;

/** Jet speed model: speed of a water jet as a function of the supply pressure. */
public enum JetSpeedModel {
    /**
     * Compressible water by the international equation of state and the energy balance: see {@link IsentropicJet}. From 20 to
     * 1000 MPa and 1 to 60 &deg;C by the fast formula, which agrees with it within 1e-8.
     */
    ISENTROPIC("isentropic") {
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

    /** Bernoulli with constant density, <i>v</i> = &radic;(2 <i>p</i>/&rho;): about 3.6 % too high at 400 MPa. */
    INCOMPRESSIBLE("incompressible") {
        @Override
        double speed(double pressurePa, double temperatureK, double densityKgPerM3) {
            return WaterJetKernel.incompressibleSpeed(pressurePa, densityKgPerM3);
        }
    },

    /**
     * Density by a Tait-type power law, in closed form (Hashish, J. Eng. Mater. Technol. 111 (1989) 221-228; constants
     * from memory): about 0.25 % too high at 400 MPa.
     */
    TAIT("Tait") {
        @Override
        double speed(double pressurePa, double temperatureK, double densityKgPerM3) {
            return WaterJetKernel.taitFactor(pressurePa)
                    * WaterJetKernel.incompressibleSpeed(pressurePa, densityKgPerM3);
        }
    };

    private final String label;

    JetSpeedModel(String label) {
        this.label = label;
    }

    /** {@return the name for people} */
    public String label() {
        return label;
    }

    /**
     * Speed in m/s of a lossless jet from gauge pressure in Pa, temperature of the supply in K, and the density of water at
     * ambient pressure.
     */
    abstract double speed(double pressurePa, double temperatureK, double densityKgPerM3);
}
