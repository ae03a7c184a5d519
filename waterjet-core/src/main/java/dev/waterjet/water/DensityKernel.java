package dev.waterjet.water;

/**
 * Fast density of liquid water: a polynomial in pressure and temperature, fitted to the equation of state from 0 to 1000 MPa
 * absolute and 0 to 100 &deg;C, within 1e-8 of it.
 *
 * <p>x runs from -1 to 1 with 4 p/(p + 1 GPa) - 1, y with the temperature. The coefficients are a Chebyshev series without its
 * terms below 5e-7 kg/m3, written in powers of x and y; DensityFit among the tests computes them. Where water freezes or boils
 * they represent metastable liquid.
 *
 * <p>The rows are written out rather than looped over: their chains of products then run side by side.
 */
final class DensityKernel {

    static final double MAX_PRESSURE_PA = 1e9;
    static final double MIN_TEMPERATURE_K = 273.15;
    static final double MAX_TEMPERATURE_K = 373.15;

    private static final double MAP_PRESSURE_PA = 1e9;
    private static final double MIDDLE_K = (MIN_TEMPERATURE_K + MAX_TEMPERATURE_K) / 2;
    private static final double HALF_K = (MAX_TEMPERATURE_K - MIN_TEMPERATURE_K) / 2;

    /**
     * Coefficients of the powers of x, in kg/m3, a row for each power of y from y^0: six rows of 14 (x^0 to x^13), three of 10,
     * two of 8, two of 4.
     */
    private static final double[] POWERS = {
        1097.5886224089859,
        113.8872251699449,
        8.524553944979127,
        4.822550848865298,
        0.6740151565006487,
        0.09617164261705743,
        0.07086031352422652,
        0.03869816740786519,
        -0.0062173434569740525,
        0.011340026919824591,
        -0.005175330674101128,
        0.001659268112707649,
        0.0011650679999729609,
        -6.395505915861577E-4,
        -25.10208494963155,
        -1.8057928042986475,
        1.7369118217829602,
        0.14623044122182013,
        -0.45384903397717136,
        0.37486104957969024,
        -0.11080715113385851,
        0.020361570436034527,
        0.01813393960903341,
        -0.04180749610139174,
        0.01096628698636776,
        0.01976652042474598,
        -0.004521737460745497,
        -0.00432504378259182,
        -1.0494325266391533,
        3.576071420046098,
        -2.845315885358929,
        1.0484315651754126,
        0.04127664322827514,
        -0.22810457562446573,
        0.14452222910313142,
        -0.012127642227606018,
        -0.08565161389953574,
        0.05935525978915395,
        0.01981766344164497,
        -0.026790441863122405,
        -0.004866203407291322,
        0.007256180897820742,
        -0.20844812384878486,
        -0.27190039049643594,
        1.0305784256004156,
        -0.7874318541238153,
        0.03414203284670294,
        0.21112042947201187,
        -0.17591531141421,
        0.0024584337614214635,
        0.061272227883746394,
        0.03206760156317613,
        -0.011195962899946607,
        -0.053627625871449716,
        0.0017054896382614967,
        0.019094016761519016,
        -0.012070936925688325,
        -0.1884946014780939,
        -0.25027008583886523,
        0.5531425953855614,
        -0.15512986933248615,
        -0.05480810506556738,
        0.049532627799271714,
        -0.06791456169186857,
        0.10595926405541833,
        0.004061399871134186,
        -0.10909624706371687,
        0.04924705684185028,
        0.03143404598813504,
        -0.021257858816534282,
        0.09858867177831143,
        0.14585219874642005,
        -0.07238932817016577,
        -0.25192970056006736,
        0.1754328846705175,
        -0.0483547209668177,
        -0.05041905167076037,
        0.10852874700620306,
        -0.08220804498530926,
        -0.06590354656567797,
        0.09452622451120987,
        0.013849134985357524,
        -0.027325116777792573,
        0.0,
        -0.07694209570775001,
        -0.054319947694775696,
        0.11975684237271708,
        0.0780046440895967,
        -0.13671227438688222,
        0.061935563624283534,
        0.06852000947954368,
        -0.040504594672820526,
        -0.023238254783209414,
        0.0088084632367827,
        0.03941722991218739,
        0.009773274607014173,
        -0.0802978008770151,
        -0.02295073590838001,
        0.060388753408042235,
        -0.03520470479212236,
        0.010294859604910021,
        0.017253127343719823,
        -0.01962442884221673,
        0.0,
        -0.016146102743823575,
        0.011566132662337626,
        0.03683176964514132,
        -0.012119760644272903,
        -0.015594853083020999,
        0.020461235671536994,
        -0.024442111386451873,
        -0.00485835500061512,
        0.01768354312516749,
        0.0,
        0.005968188942497362,
        -0.013955964687775121,
        -0.0065980776520154945,
        0.036036750175117045,
        -0.01651336114562582,
        -0.028335616191616283,
        0.02123087785905227,
        0.0,
        -0.0014515459549147636,
        0.002241283914481756,
        -0.0020217599009629333,
        -0.012459215708076954,
        0.015478062659967689,
        0.014524324112571776,
        -0.014353389609605074,
        0.0,
        0.0,
        4.399821255356073E-4,
        0.0,
        -0.0037459918472450226,
        0.0,
        0.0010839489375939592,
        0.0,
        0.0
    };

    private DensityKernel() {}

    static boolean covers(double pressurePa, double temperatureK) {
        return pressurePa >= 0
                && pressurePa <= MAX_PRESSURE_PA
                && temperatureK >= MIN_TEMPERATURE_K
                && temperatureK <= MAX_TEMPERATURE_K;
    }

    /** Density in kg/m3. */
    static double density(double pressurePa, double temperatureK) {
        double x = 4 * pressurePa / (pressurePa + MAP_PRESSURE_PA) - 1;
        double y = (temperatureK - MIDDLE_K) / HALF_K;
        double xx = x * x;
        double[] a = POWERS;
        double low = row14(a, 0, x, xx)
                + y
                        * (row14(a, 14, x, xx)
                                + y
                                        * (row14(a, 28, x, xx)
                                                + y
                                                        * (row14(a, 42, x, xx)
                                                                + y
                                                                        * (row14(a, 56, x, xx)
                                                                                + y * row14(a, 70, x, xx)))));
        double middle = row10(a, 84, x, xx) + y * (row10(a, 94, x, xx) + y * row10(a, 104, x, xx));
        double high =
                row8(a, 114, x, xx) + y * (row8(a, 122, x, xx) + y * (row4(a, 130, x, xx) + y * row4(a, 134, x, xx)));
        double yyy = y * y * y;
        return low + yyy * yyy * (middle + yyy * high);
    }

    private static double row14(double[] a, int i, double x, double xx) {
        double even = a[i + 4] + xx * (a[i + 6] + xx * (a[i + 8] + xx * (a[i + 10] + xx * a[i + 12])));
        double odd = a[i + 5] + xx * (a[i + 7] + xx * (a[i + 9] + xx * (a[i + 11] + xx * a[i + 13])));
        return a[i] + x * a[i + 1] + xx * (a[i + 2] + x * a[i + 3] + xx * (even + x * odd));
    }

    private static double row10(double[] a, int i, double x, double xx) {
        double even = a[i + 4] + xx * (a[i + 6] + xx * a[i + 8]);
        double odd = a[i + 5] + xx * (a[i + 7] + xx * a[i + 9]);
        return a[i] + x * a[i + 1] + xx * (a[i + 2] + x * a[i + 3] + xx * (even + x * odd));
    }

    private static double row8(double[] a, int i, double x, double xx) {
        double even = a[i] + xx * (a[i + 2] + xx * (a[i + 4] + xx * a[i + 6]));
        double odd = a[i + 1] + xx * (a[i + 3] + xx * (a[i + 5] + xx * a[i + 7]));
        return even + x * odd;
    }

    private static double row4(double[] a, int i, double x, double xx) {
        return a[i] + x * a[i + 1] + xx * (a[i + 2] + x * a[i + 3]);
    }
}
