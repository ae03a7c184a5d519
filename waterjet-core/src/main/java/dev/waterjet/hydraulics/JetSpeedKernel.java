package dev.waterjet.hydraulics;

/**
 * Fast formula for the speed of the isentropic jet: a polynomial in pressure and temperature of the supply, fitted to the
 * equation of state from 20 to 1000 MPa absolute and 1 to 60 &deg;C, within 1e-8 of it.
 *
 * <p>v = sqrt(2 (p - p0)) g(x, y), where g is the square root of the mean specific volume along the isentrope, x runs from
 * -1 to 1 with p/(p + 1 GPa) and y from -1 to 1 with the temperature. The coefficients are a Chebyshev series of g, truncated
 * at 3e-10 of its mean and written in powers of x and y; JetSpeedFit among the tests computes them. Where water is frozen
 * they represent metastable liquid; callers check that first.
 */
final class JetSpeedKernel {

    static final double MIN_PRESSURE_PA = 20e6;
    static final double MAX_PRESSURE_PA = 1000e6;
    static final double MIN_TEMPERATURE_K = 274.15;
    static final double MAX_TEMPERATURE_K = 333.15;
    static final double MAP_PRESSURE_PA = 1e9;

    private static final double MIN_U = mapped(MIN_PRESSURE_PA);
    private static final double MAX_U = mapped(MAX_PRESSURE_PA);
    private static final double MIDDLE_U = (MIN_U + MAX_U) / 2;
    private static final double PER_HALF_U = 2 / (MAX_U - MIN_U);
    private static final double MIDDLE_K = (MIN_TEMPERATURE_K + MAX_TEMPERATURE_K) / 2;
    private static final double PER_HALF_K = 2 / (MAX_TEMPERATURE_K - MIN_TEMPERATURE_K);

    /** Three rows for each power of y, from y^0 to y^9: coefficients of x^0 to x^3, x^4 to x^7 and x^8 to x^11. */
    private static final double[][] CUBIC = {
        {0.03071466398127026, -9.689132817954403E-4, -8.234894834437553E-5, -2.7855389160492812E-5},
        {-6.338882044066436E-6, -1.1511727553182149E-6, -2.816491386456058E-7, -1.9534300504307567E-7},
        {3.544451167649042E-8, -1.861852879489082E-8, -1.0353735031236917E-8, 0},
        {1.6177429268556263E-4, 9.233900706127248E-6, -1.1216114496332607E-5, -1.6543099894437774E-6},
        {1.7696931501849445E-6, -5.07849501074631E-7, 1.2394885651903895E-7, 5.1036880080853785E-8},
        {-7.693945676441011E-8, 4.185701167256996E-8, 1.3724834526028319E-8, -1.4028545715559306E-8},
        {2.15693884095455E-5, -2.0152548480279372E-5, 1.1867654403389247E-5, -3.142377682869132E-6},
        {-3.947202034310093E-7, 2.8142055386830844E-8, -4.256649168223246E-8, -5.626184918585052E-8},
        {4.073572259193676E-8, -2.273356974415362E-8, 0, 0},
        {-2.643545812654638E-6, 4.0957990943131297E-7, -3.2108619770834794E-6, 1.9156195356639927E-6},
        {9.049775802548257E-8, 1.919268343142375E-8, 4.220375996296813E-8, 3.7870432440761005E-9},
        {-2.1057131035665374E-8, 1.62070742096684E-8, 0, 0},
        {1.1430748397881142E-6, 6.519007134559281E-7, 6.743973109390218E-7, -9.946903867804772E-7},
        {1.870266995623078E-7, -4.338496929965988E-8, -6.64854056380599E-8, -2.6335875778573033E-8},
        {3.690334925262765E-8, 0, 0, 0},
        {-4.354709145988026E-7, -2.9123098637911275E-7, 3.4539353734240426E-9, 3.888460073423313E-7},
        {-1.486042843382559E-7, -2.3909258059110315E-8, 3.890108276140479E-8, 4.2789202987186015E-8},
        {-2.3969265987895075E-8, 0, 0, 0},
        {1.3317620364788104E-7, 5.818231173119034E-8, -6.064371408217743E-8, -1.0442854857993313E-7},
        {3.588134024821801E-8, 9.131653224057715E-9, 3.1321136262363324E-8, -2.6895718414315136E-8},
        {0, 0, 0, 0},
        {-2.6699045794062065E-8, 1.4876469045521638E-8, 4.17419653382061E-8, -2.4471640485452482E-8},
        {-2.299316421071142E-8, 4.470115259534525E-8, -1.9758876845799024E-8, 0},
        {0, 0, 0, 0},
        {-2.6262961963904476E-9, -2.14004419835894E-8, -9.200254412279818E-9, 2.2027441838799536E-8},
        {1.9270462406747618E-8, -2.1716542418305707E-8, 0, 0},
        {0, 0, 0, 0},
        {2.969167990838985E-9, 7.060032044695471E-9, -5.93833598167797E-9, 0},
        {0, 0, 0, 0},
        {0, 0, 0, 0}
    };

    private JetSpeedKernel() {}

    private static double mapped(double pressurePa) {
        return pressurePa / (pressurePa + MAP_PRESSURE_PA);
    }

    static boolean covers(double pressurePa, double temperatureK) {
        return pressurePa >= MIN_PRESSURE_PA
                && pressurePa <= MAX_PRESSURE_PA
                && temperatureK >= MIN_TEMPERATURE_K
                && temperatureK <= MAX_TEMPERATURE_K;
    }

    /** Speed in m/s of a jet into a pressure of p0 = 101325 Pa. */
    static double speed(double pressurePa, double temperatureK) {
        double x = (mapped(pressurePa) - MIDDLE_U) * PER_HALF_U;
        double y = (temperatureK - MIDDLE_K) * PER_HALF_K;
        return Math.sqrt(2 * (pressurePa - IsentropicKernel.ATMOSPHERE_PA)) * meanRootVolume(x, y);
    }

    /** g(x, y) in m^1.5/kg^0.5: Horner's rule in y over polynomials of x, each of three independent cubics. */
    private static double meanRootVolume(double x, double y) {
        double x2 = x * x;
        double x4 = x2 * x2;
        double sum = 0;
        for (int i = CUBIC.length - 3; i >= 0; i -= 3) {
            double high = cubic(CUBIC[i + 1], x, x2) + x4 * cubic(CUBIC[i + 2], x, x2);
            sum = sum * y + cubic(CUBIC[i], x, x2) + x4 * high;
        }
        return sum;
    }

    private static double cubic(double[] c, double x, double x2) {
        return c[0] + x * c[1] + x2 * (c[2] + x * c[3]);
    }
}
