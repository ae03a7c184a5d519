package dev.waterjet.water;

/**
 * Finds temperature and density of the liquid from other pairs: pressure and temperature, pressure and entropy, pressure
 * and enthalpy. One instance, one solve at a time.
 *
 * <p>Each step is Newton's, with the density moved along a line of bulk modulus K = K_i + 6 (p - p_i) instead of a straight
 * one: liquid water stays so close to it that three steps reach the last figure from anywhere below 1000 MPa.
 */
final class LiquidKernel {

    /** Slope dK/dp of the bulk modulus along which a step moves. It decides how fast the search is, not what it finds. */
    private static final double MODULUS_SLOPE = 6;

    /** A step of Newton this small leaves an error of about its square. */
    private static final double LAST_STEP = 1e-8;

    /** Part of c_p by which entropy may miss, or of c_p T for enthalpy. */
    private static final double AGREEMENT = 1e-9;

    /** Factor of density that leads out of the gap between liquid and vapour. */
    private static final double OUT_OF_THE_GAP = 1.05;

    private static final int MOST_STEPS = 60;
    private static final double LEAST_STRETCH = 0.05;
    private static final double WIDEST_LOG_TEMPERATURE_STEP = 0.15;
    private static final double WARM_K = 353.15;
    private static final double START_K = 300;

    private final Iapws95Kernel sheet = new Iapws95Kernel();

    private double temperatureK;
    private double densityKgPerM3;

    double temperatureK() {
        return temperatureK;
    }

    double densityKgPerM3() {
        return densityKgPerM3;
    }

    /** The sheet with everything evaluated at what was found. */
    Iapws95Kernel found() {
        return sheet;
    }

    /** Density from pressure and temperature; false if the liquid branch has none. */
    boolean solve(double pressurePa, double temperatureK) {
        this.temperatureK = temperatureK;
        densityKgPerM3 = start(pressurePa, temperatureK);
        for (int i = 0; i < MOST_STEPS; i++) {
            sheet.residualAt(temperatureK, densityKgPerM3);
            double modulus = densityKgPerM3 * sheet.pressureByDensity();
            double squeeze = (pressurePa - sheet.pressurePa()) / modulus;
            densityKgPerM3 *= modulus > 0 ? stretch(squeeze) : OUT_OF_THE_GAP;
            if (Math.abs(squeeze) < LAST_STEP && modulus > 0) {
                sheet.at(temperatureK, densityKgPerM3);
                return true;
            }
        }
        return false;
    }

    /** Temperature and density from pressure and entropy or enthalpy; false where Newton's method is led astray. */
    boolean newton(HeatKind kind, double pressurePa, double target) {
        temperatureK = START_K;
        densityKgPerM3 = start(pressurePa, START_K);
        for (int i = 0; i < MOST_STEPS; i++) {
            sheet.at(temperatureK, densityKgPerM3);
            double modulus = densityKgPerM3 * sheet.pressureByDensity();
            if (!(modulus > 0)) {
                return false;
            }
            double lacking = pressurePa - sheet.pressurePa();
            double heat = target - kind.value(sheet) - kind.perPressure(sheet) * lacking;
            double log = limited(heat / kind.perLogTemperature(sheet));
            double squeeze = lacking / modulus;
            double warming = temperatureK * Math.expm1(log);
            densityKgPerM3 *= stretch(squeeze) * Math.exp(-sheet.expansionPerK() * warming);
            temperatureK += warming;
            if (Math.abs(squeeze) < LAST_STEP && Math.abs(log) < LAST_STEP) {
                sheet.at(temperatureK, densityKgPerM3);
                return Math.abs(kind.value(sheet) - target) < AGREEMENT * kind.perLogTemperature(sheet);
            }
        }
        return false;
    }

    /** The same by halving, between two temperatures that enclose the answer: slow, and safe at the critical point. */
    void halve(HeatKind kind, double pressurePa, double target, double coldestK, double hottestK) {
        double cold = coldestK;
        double hot = hottestK;
        for (int i = 0; i < MOST_STEPS; i++) {
            if (valueAt(kind, pressurePa, (cold + hot) / 2) < target) {
                cold = temperatureK;
            } else {
                hot = temperatureK;
            }
        }
    }

    /** Entropy or enthalpy of the liquid at a pressure and a temperature. */
    double valueAt(HeatKind kind, double pressurePa, double temperatureK) {
        solve(pressurePa, temperatureK);
        return kind.value(sheet);
    }

    private static double limited(double log) {
        return Math.max(-WIDEST_LOG_TEMPERATURE_STEP, Math.min(WIDEST_LOG_TEMPERATURE_STEP, log));
    }

    /** Ratio of densities for a change of pressure, told in bulk moduli: (1 + K' dp/K)^(1/K'). */
    private static double stretch(double squeeze) {
        if (Math.abs(squeeze) < LAST_STEP) {
            return 1 + squeeze;
        }
        return Math.pow(Math.max(LEAST_STRETCH, 1 + MODULUS_SLOPE * squeeze), 1 / MODULUS_SLOPE);
    }

    /** A density to start from: within half a per cent for cold water, within a few for hot water. */
    static double start(double pressurePa, double temperatureK) {
        if (temperatureK < WARM_K) {
            double off = temperatureK - 277;
            return (1000 - 0.0045 * off * off) * stretch(pressurePa / 2.2e9);
        }
        double modulus = 2.2e9 * Math.max(0.02, 1 - (temperatureK - WARM_K) / 300);
        return SaturationKernel.liquidDensityStart(temperatureK) * stretch(pressurePa / modulus);
    }
}
