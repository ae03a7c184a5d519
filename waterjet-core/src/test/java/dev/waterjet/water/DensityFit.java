package dev.waterjet.water;

/**
 * Makes the coefficients of {@link DensityKernel} from the equation of state: a Chebyshev series on 40 pressures and 40
 * temperatures without its terms below 5e-7 kg/m3, then written in powers. Run it with {@code DensityFit.main} to print them.
 */
final class DensityFit {

    private static final int NODES = 40;
    private static final int X_TERMS = 14;
    private static final double NEGLIGIBLE_KG_PER_M3 = 5e-7;

    /** Length of each row of the kernel, from y^0. */
    private static final int[] ROWS = {14, 14, 14, 14, 14, 14, 10, 10, 10, 8, 8, 4, 4};

    private DensityFit() {}

    /** Prints the powers of x, the rows for the powers of y one after the other. */
    public static void main(String[] arguments) {
        StringBuilder text = new StringBuilder();
        double[][] powers = powers();
        for (int j = 0; j < ROWS.length; j++) {
            for (int i = 0; i < ROWS[j]; i++) {
                text.append("        ").append(powers[j][i]).append(",\n");
            }
        }
        System.out.print(text);
    }

    /** Coefficients of powers of x, a row for each power of y. */
    static double[][] powers() {
        double[][] series = series(samples());
        double[][] chebyshev = chebyshev();
        double[][] powers = new double[ROWS.length][X_TERMS];
        for (int k = 0; k < X_TERMS; k++) {
            for (int l = 0; l < ROWS.length; l++) {
                if (Math.abs(series[k][l]) < NEGLIGIBLE_KG_PER_M3) {
                    continue;
                }
                for (int i = 0; i <= k; i++) {
                    for (int j = 0; j <= l; j++) {
                        powers[j][i] += series[k][l] * chebyshev[k][i] * chebyshev[l][j];
                    }
                }
            }
        }
        return powers;
    }

    private static double[][] samples() {
        double[][] samples = new double[NODES][NODES];
        for (int i = 0; i < NODES; i++) {
            double u = (node(i) + 1) / 4;
            double pressurePa = 1e9 * u / (1 - u);
            for (int j = 0; j < NODES; j++) {
                samples[i][j] = Water.metastable()
                        .atSi(pressurePa, 323.15 + 50 * node(j))
                        .densitySi();
            }
        }
        return samples;
    }

    private static double node(int i) {
        return Math.cos(Math.PI * (i + 0.5) / NODES);
    }

    private static double[][] series(double[][] samples) {
        double[][] series = new double[X_TERMS][ROWS.length];
        for (int k = 0; k < X_TERMS; k++) {
            for (int l = 0; l < ROWS.length; l++) {
                double sum = 0;
                for (int i = 0; i < NODES; i++) {
                    for (int j = 0; j < NODES; j++) {
                        sum += samples[i][j]
                                * Math.cos(k * Math.PI * (i + 0.5) / NODES)
                                * Math.cos(l * Math.PI * (j + 0.5) / NODES);
                    }
                }
                series[k][l] = sum * (k == 0 ? 1 : 2) * (l == 0 ? 1 : 2) / (NODES * NODES);
            }
        }
        return series;
    }

    /** Coefficients of the powers in each Chebyshev polynomial. */
    private static double[][] chebyshev() {
        double[][] all = new double[X_TERMS][X_TERMS];
        all[0][0] = 1;
        all[1][1] = 1;
        for (int k = 2; k < X_TERMS; k++) {
            for (int i = 0; i < X_TERMS; i++) {
                all[k][i] = (i > 0 ? 2 * all[k - 1][i - 1] : 0) - all[k - 2][i];
            }
        }
        return all;
    }
}
