package dev.waterjet.water;

/** Constants of water, section 3 of IAPWS R6-95(2018). */
final class Iapws95Constants {

    /** Critical temperature, in K. */
    static final double CRITICAL_TEMPERATURE_K = 647.096;

    /** Critical density, in kg/m3. */
    static final double CRITICAL_DENSITY_KG_PER_M3 = 322;

    /** Specific gas constant, in J/(kg K). Other formulations of IAPWS use another one. */
    static final double GAS_CONSTANT_J_PER_KG_K = 461.51805;

    private Iapws95Constants() {}
}
