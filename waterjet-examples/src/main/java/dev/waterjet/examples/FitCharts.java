package dev.waterjet.examples;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.CutFit;
import dev.waterjet.examples.chart.Chart;
import dev.waterjet.uncertainty.Distribution;
import java.util.Arrays;

/** Quantile and profile plots of a fit to test cuts. */
final class FitCharts {

    private static final int WIDTH = 820;
    private static final int HEIGHT = 460;
    private static final double WIDEST = 0.99;
    private static final int POINTS = 33;

    private FitCharts() {}

    /** Sorted residuals over those expected of a normal scatter (plotting positions of Blom 1958, from memory). */
    static String quantiles(CalibratedFeed own) {
        double[] residuals =
                Arrays.stream(own.fit().residuals()).map(r -> 100 * r).sorted().toArray();
        Distribution normal = Distribution.normal(0, 1);
        double[] expected = new double[residuals.length];
        Arrays.setAll(expected, i -> normal.quantile((i + 1 - 0.375) / (residuals.length + 0.25)));
        double end = Math.max(2, expected[expected.length - 1]);
        double scatter = 100 * own.scatter();
        return Chart.of(
                        "Quantiles of the residuals",
                        "Sorted residuals of the test cuts in percent over the quantiles of a normal distribution.")
                .x("expected of a normal scatter [standard deviations]")
                .y("measured over fitted [%]")
                .line("scatter of the fit", new double[] {-end, end}, new double[] {-end * scatter, end * scatter})
                .points("test cuts", expected, residuals)
                .svg(WIDTH, HEIGHT);
    }

    /** Ends of the interval of the first parameter over its coverage: a profile, of any method of the fit. */
    static String profile(CutFit fit) {
        String name = fit.names().get(0);
        double[] values = new double[2 * POINTS + 1];
        double[] coverages = new double[2 * POINTS + 1];
        values[POINTS] = fit.value(name);
        for (int k = 1; k <= POINTS; k++) {
            double coverage = WIDEST * k / POINTS;
            values[POINTS - k] = fit.lower(name, coverage);
            values[POINTS + k] = fit.upper(name, coverage);
            coverages[POINTS - k] = 100 * coverage;
            coverages[POINTS + k] = 100 * coverage;
        }
        double[] ends = {values[0], values[2 * POINTS]};
        return Chart.of("Profile of a parameter", "Ends of the interval of " + name + " over its coverage in percent.")
                .x(name)
                .y("coverage of the interval [%]")
                .line("ends of the interval", values, coverages)
                .line("95 %", ends, new double[] {95, 95})
                .svg(WIDTH, HEIGHT);
    }
}
