package dev.waterjet.water;

/**
 * Temperature and density of the liquid from other pairs: pressure and temperature, pressure and entropy, pressure and
 * enthalpy. An instance is for one search at a time.
 *
 * <p>Where the fast density holds, the equation of state is evaluated there once, and all properties move to the solution to first
 * order: the error is of the square of 1e-8. Elsewhere Newton's method, with the density moved along a curve of bulk modulus
 * K = K_i + 6 (p - p_i) instead of a straight line: liquid water is so close to it that three steps reach the last digit.
 */
final class LiquidKernel {

    /** Slope dK/dp of the bulk modulus along which a step moves. It determines the speed of the search, not its result. */
    private static final double MODULUS_SLOPE = 6;

    /** A Newton step of this size leaves an error of about its square. */
    private static final double LAST_STEP = 1e-8;

    /** Tolerance of entropy relative to c_p, and of enthalpy relative to c_p T. */
    private static final double AGREEMENT = 1e-9;

    /** Factor of density that leads from the unstable region between liquid and vapour towards the liquid. */
    private static final double OUT_OF_THE_GAP = 1.05;

    private static final int MAX_STEPS = 60;
    private static final double MIN_STRETCH = 0.05;
    private static final double MAX_LOG_TEMPERATURE_STEP = 0.15;
    private static final double WARM_K = 353.15;
    private static final double START_K = 300;

    private final Iapws95Kernel equation = new Iapws95Kernel();

    private double temperatureK;
    private double densityKgPerM3;

    double temperatureK() {
        return temperatureK;
    }

    double densityKgPerM3() {
        return densityKgPerM3;
    }

    /** The equation with everything evaluated at what was found. */
    Iapws95Kernel found() {
        return equation;
    }

    /** Density from pressure and temperature; false if the liquid branch has none. */
    boolean solve(double pressurePa, double temperatureK) {
        this.temperatureK = temperatureK;
        densityKgPerM3 = start(pressurePa, temperatureK);
        return isCloseAfterStart(pressurePa) || iterate(pressurePa);
    }

    /** One evaluation at the fast density, whose error is so small that all properties move to the solution at first order. */
    private boolean isCloseAfterStart(double pressurePa) {
        if (!DensityKernel.covers(pressurePa, temperatureK)) {
            return false;
        }
        equation.nearAt(temperatureK, densityKgPerM3);
        double strain = (pressurePa - equation.pressurePa()) / (densityKgPerM3 * equation.pressureByDensity());
        if (!(Math.abs(strain) < LAST_STEP)) {
            return false;
        }
        equation.moveBy(strain);
        densityKgPerM3 = equation.densityKgPerM3;
        return true;
    }

    private boolean iterate(double pressurePa) {
        for (int i = 0; i < MAX_STEPS; i++) {
            equation.pressureAt(temperatureK, densityKgPerM3);
            double modulus = densityKgPerM3 * equation.pressureByDensity();
            double strain = (pressurePa - equation.pressurePa()) / modulus;
            densityKgPerM3 *= modulus > 0 ? stretch(strain) : OUT_OF_THE_GAP;
            if (Math.abs(strain) < LAST_STEP && modulus > 0) {
                equation.at(temperatureK, densityKgPerM3);
                return true;
            }
        }
        return false;
    }

    /** Temperature and density from pressure and entropy or enthalpy; false if Newton's method fails. */
    boolean newton(CaloricProperty property, double pressurePa, double target) {
        temperatureK = START_K;
        densityKgPerM3 = start(pressurePa, START_K);
        for (int i = 0; i < MAX_STEPS; i++) {
            equation.at(temperatureK, densityKgPerM3);
            double modulus = densityKgPerM3 * equation.pressureByDensity();
            if (!(modulus > 0)) {
                return false;
            }
            double missing = pressurePa - equation.pressurePa();
            double heat = target - property.value(equation) - property.perPressure(equation) * missing;
            double log = limited(heat / property.perLogTemperature(equation));
            double strain = missing / modulus;
            double warming = temperatureK * Math.expm1(log);
            densityKgPerM3 *= stretch(strain) * Math.exp(-equation.expansionPerK() * warming);
            temperatureK += warming;
            if (Math.abs(strain) < LAST_STEP && Math.abs(log) < LAST_STEP) {
                equation.at(temperatureK, densityKgPerM3);
                return Math.abs(property.value(equation) - target) < AGREEMENT * property.perLogTemperature(equation);
            }
        }
        return false;
    }

    /**
     * The same by bisection between two temperatures that enclose the solution: slow, and safe near the critical point. A
     * plain loop instead of a solver of Commons Math: the equation of state is left evaluated at the last point.
     */
    void bisect(CaloricProperty property, double pressurePa, double target, double coldestK, double hottestK) {
        double cold = coldestK;
        double hot = hottestK;
        for (int i = 0; i < MAX_STEPS; i++) {
            if (valueAt(property, pressurePa, (cold + hot) / 2) < target) {
                cold = temperatureK;
            } else {
                hot = temperatureK;
            }
        }
        equation.at(temperatureK, densityKgPerM3);
    }

    /** Entropy or enthalpy of the liquid at a pressure and a temperature. */
    double valueAt(CaloricProperty property, double pressurePa, double temperatureK) {
        solve(pressurePa, temperatureK);
        return property.value(equation);
    }

    private static double limited(double log) {
        return Math.max(-MAX_LOG_TEMPERATURE_STEP, Math.min(MAX_LOG_TEMPERATURE_STEP, log));
    }

    /** Ratio of densities for a change of pressure divided by the bulk modulus: (1 + K' dp/K)^(1/K'). */
    private static double stretch(double strain) {
        if (Math.abs(strain) < LAST_STEP) {
            return 1 + strain;
        }
        return Math.pow(Math.max(MIN_STRETCH, 1 + MODULUS_SLOPE * strain), 1 / MODULUS_SLOPE);
    }

    /**
     * Starting density: within 1e-8 where the fast density holds, so that one step reaches the last digit; otherwise within 0.5 %
     * for cold water and within a few % for hot water.
     */
    static double start(double pressurePa, double temperatureK) {
        if (DensityKernel.covers(pressurePa, temperatureK)) {
            return DensityKernel.density(pressurePa, temperatureK);
        }
        return roughStart(pressurePa, temperatureK);
    }

    static double roughStart(double pressurePa, double temperatureK) {
        if (temperatureK < WARM_K) {
            double off = temperatureK - 277;
            return (1000 - 0.0045 * off * off) * stretch(pressurePa / 2.2e9);
        }
        double modulus = 2.2e9 * Math.max(0.02, 1 - (temperatureK - WARM_K) / 300);
        return SaturationKernel.liquidDensityStart(temperatureK) * stretch(pressurePa / modulus);
    }
}
