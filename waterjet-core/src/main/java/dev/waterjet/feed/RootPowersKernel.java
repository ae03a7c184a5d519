package dev.waterjet.feed;

/**
 * The power x^1.15 = x^(23/20) of many numbers, without tables and without the function {@code pow}.
 *
 * <p>x^0.15 is the twentieth root of x^3: a linear function of the bits of x gives x^-0.6 within 4 percent, two steps of a Newton
 * iteration of higher order without division make it r, exact to nine figures, and p = sqrt(sqrt(x^3) r^2). Cut to 26 bits, p has
 * an exact square, so that 1 - p^20/x^3 is the deviation of p to about 1e-16; its series gives the rest c of the root, and
 * x p + x c is rounded once. The result is within one unit in the last place, against 23/20 in exact arithmetic in a test,
 * and the same on every machine. Each step is a loop of its own over a block, which the compiler makes into vector
 * instructions: half the time of {@code Math.pow} for each.
 *
 * <p>The double 1.15 is less than 23/20 by 9e-17, which makes {@code Math.pow(x, 1.15)} differ by that times the logarithm of x.
 *
 * <p>Own code in place of {@code Math.pow} for bulk alone: a single power takes longer this way.
 */
final class RootPowersKernel {

    /** The block stays in the first cache. */
    private static final int BLOCK = 256;

    /** Beyond them x^3 and p^20 could leave the range of a double; such numbers go to {@code Math.pow}. */
    private static final double SMALLEST = 1e-90;

    private static final double LARGEST = 1e90;

    /** 0.6 in units of 2^-16. */
    private static final long SLOPE = 39322;

    /** The bits of 1 and of its root, moved so that the deviation of r^5 x^3 from 1 is as large above as below: 0.2. */
    private static final long OFFSET = 0x664b882ac083126fL;

    /** 2^27 + 1: cuts a double to its upper 26 bits (Veltkamp; Dekker, Numerische Mathematik 18 (1971) 224-242). */
    private static final double SPLITTER = 134217729;

    private final double[] x = new double[BLOCK];
    private final double[] cube = new double[BLOCK];
    private final double[] root = new double[BLOCK];

    /** The numbers a/b of an array of b, each above 0, to the power 1.15. */
    static double[] powersOfRatios(double numerator, double[] denominators) {
        double[] powers = new double[denominators.length];
        RootPowersKernel block = new RootPowersKernel();
        for (int from = 0; from < powers.length; from += BLOCK) {
            block.fill(numerator, denominators, from, powers);
        }
        return powers;
    }

    private void fill(double numerator, double[] denominators, int from, double[] powers) {
        int count = Math.min(BLOCK, denominators.length - from);
        for (int i = 0; i < count; i++) {
            x[i] = numerator / denominators[from + i];
        }
        for (int i = 0; i < count; i++) {
            root[i] = Double.longBitsToDouble(OFFSET - (Double.doubleToRawLongBits(x[i]) >>> 16) * SLOPE);
        }
        cubesAndFifthRoots(x, cube, root, count);
        twentiethRoots(cube, root, count);
        products(x, cube, root, count);
        for (int i = 0; i < count; i++) {
            double number = x[i];
            powers[from + i] = number > SMALLEST && number < LARGEST
                    ? root[i]
                    : Math.pow(number, MachinabilityKernel.FEED_EXPONENT);
        }
    }

    /** Two steps r <- r (1 - e)^(-1/5) with e = 1 - x^3 r^5, by four and by two terms of the series. */
    private static void cubesAndFifthRoots(double[] x, double[] cube, double[] root, int count) {
        for (int i = 0; i < count; i++) {
            double w = x[i] * x[i] * x[i];
            double r = root[i];
            double square = r * r;
            double e = 1 - w * (square * square * r);
            r = r + r * e * (0.2 + e * (0.12 + e * (0.088 + e * 0.0704)));
            square = r * r;
            e = 1 - w * (square * square * r);
            root[i] = r + r * e * (0.2 + e * 0.12);
            cube[i] = w;
        }
    }

    /** p = (x^3 sqrt)(r^2) under the root, cut to 26 bits. */
    private static void twentiethRoots(double[] cube, double[] root, int count) {
        for (int i = 0; i < count; i++) {
            double p = Math.sqrt(Math.sqrt(cube[i]) * (root[i] * root[i]));
            double split = SPLITTER * p;
            root[i] = split - (split - p);
        }
    }

    /** x (p + c) with c = p ((1 - e)^(-1/20) - 1) and e = 1 - p^20/x^3; the product of the upper halves is exact. */
    private static void products(double[] x, double[] cube, double[] root, int count) {
        for (int i = 0; i < count; i++) {
            double p = root[i];
            double fourth = p * p * (p * p);
            double fifth = fourth * p;
            double tenth = fifth * fifth;
            double e = 1 - tenth * tenth / cube[i];
            double c = p * e * (0.05 + e * 0.02625);
            double number = x[i];
            double split = SPLITTER * number;
            double upper = split - (split - number);
            root[i] = upper * p + ((number - upper) * p + number * c);
        }
    }
}
