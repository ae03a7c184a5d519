package dev.waterjet.hydraulics;

import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.ArrayList;
import java.util.List;

/**
 * Makes the coefficients of {@link JetSpeedKernel} from the equation of state: a Chebyshev series on 28 pressures and 20
 * temperatures, cut at 3e-10 of its mean, then written in powers. Run it with {@code JetSpeedFit.main} to print them.
 */
final class JetSpeedFit {

    private static final int PRESSURES = 28;
    private static final int TEMPERATURES = 20;
    private static final double CUT = 3e-10;
    private static final int X_POWERS = 12;

    private JetSpeedFit() {}

    /** Prints twelve powers of x, four to a line, for each power of y. */
    public static void main(String[] arguments) {
        for (List<Double> row : rows()) {
            for (int i = 0; i < X_POWERS; i++) {
                double coefficient = i < row.size() ? row.get(i) : 0;
                System.out.print(coefficient + (i % 4 == 3 ? ",\n" : ", "));
            }
        }
    }

    /** Coefficients of powers of x, a list for each power of y. */
    static List<List<Double>> rows() {
        double[][] series = series(samples());
        double mean = series[0][0];
        double[][] chebyshev = chebyshev();
        double[][] powers = new double[PRESSURES][TEMPERATURES];
        for (int k = 0; k < PRESSURES; k++) {
            for (int l = 0; l < TEMPERATURES; l++) {
                if (Math.abs(series[k][l]) < CUT * mean) {
                    continue;
                }
                for (int i = 0; i <= k; i++) {
                    for (int j = 0; j <= l; j++) {
                        powers[i][j] += series[k][l] * chebyshev[k][i] * chebyshev[l][j];
                    }
                }
            }
        }
        return trimmed(powers);
    }

    private static double[][] samples() {
        double lowest = JetSpeedKernel.MIN_PRESSURE_PA / (JetSpeedKernel.MIN_PRESSURE_PA + 1e9);
        double highest = JetSpeedKernel.MAX_PRESSURE_PA / (JetSpeedKernel.MAX_PRESSURE_PA + 1e9);
        double[][] samples = new double[PRESSURES][TEMPERATURES];
        for (int i = 0; i < PRESSURES; i++) {
            double u = (lowest + highest) / 2 + (highest - lowest) / 2 * node(i, PRESSURES);
            double pressurePa = 1e9 * u / (1 - u);
            for (int j = 0; j < TEMPERATURES; j++) {
                double middleK = (JetSpeedKernel.MIN_TEMPERATURE_K + JetSpeedKernel.MAX_TEMPERATURE_K) / 2;
                double halfK = (JetSpeedKernel.MAX_TEMPERATURE_K - JetSpeedKernel.MIN_TEMPERATURE_K) / 2;
                samples[i][j] = rootVolume(pressurePa, middleK + halfK * node(j, TEMPERATURES));
            }
        }
        return samples;
    }

    private static double rootVolume(double pressurePa, double temperatureK) {
        WaterState supply = Water.metastable().atSi(pressurePa, temperatureK);
        double speed = IsentropicKernel.speed(supply, IsentropicKernel.exit(supply));
        return speed / Math.sqrt(2 * (pressurePa - IsentropicKernel.ATMOSPHERE_PA));
    }

    private static double node(int index, int count) {
        return Math.cos(Math.PI * (index + 0.5) / count);
    }

    private static double[][] series(double[][] samples) {
        double[][] series = new double[PRESSURES][TEMPERATURES];
        for (int k = 0; k < PRESSURES; k++) {
            for (int l = 0; l < TEMPERATURES; l++) {
                double sum = 0;
                for (int i = 0; i < PRESSURES; i++) {
                    for (int j = 0; j < TEMPERATURES; j++) {
                        sum += samples[i][j]
                                * Math.cos(Math.PI * k * (i + 0.5) / PRESSURES)
                                * Math.cos(Math.PI * l * (j + 0.5) / TEMPERATURES);
                    }
                }
                series[k][l] = sum * (k == 0 ? 1 : 2) * (l == 0 ? 1 : 2) / PRESSURES / TEMPERATURES;
            }
        }
        return series;
    }

    /** Chebyshev polynomials in powers: T_n = 2 x T_(n-1) - T_(n-2). */
    private static double[][] chebyshev() {
        double[][] all = new double[PRESSURES][PRESSURES];
        all[0][0] = 1;
        all[1][1] = 1;
        for (int n = 2; n < PRESSURES; n++) {
            for (int i = 0; i < PRESSURES; i++) {
                all[n][i] = (i > 0 ? 2 * all[n - 1][i - 1] : 0) - all[n - 2][i];
            }
        }
        return all;
    }

    private static List<List<Double>> trimmed(double[][] powers) {
        List<List<Double>> rows = new ArrayList<>();
        for (int j = 0; j < TEMPERATURES; j++) {
            List<Double> row = new ArrayList<>();
            for (int i = 0; i < PRESSURES; i++) {
                row.add(powers[i][j]);
            }
            while (!row.isEmpty() && row.get(row.size() - 1) == 0) {
                row.remove(row.size() - 1);
            }
            if (!row.isEmpty()) {
                rows.add(row);
            }
        }
        return rows;
    }
}
