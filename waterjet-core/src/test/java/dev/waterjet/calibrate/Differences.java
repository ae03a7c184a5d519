package dev.waterjet.calibrate;

import java.util.function.ToDoubleFunction;

/** Derivatives by central differences. */
final class Differences {

    private Differences() {}

    /** Slope of a function of several numbers along one of them. */
    static double slope(ToDoubleFunction<double[]> function, double[] at, int j, double h) {
        double[] up = at.clone();
        double[] down = at.clone();
        up[j] += h;
        down[j] -= h;
        return (function.applyAsDouble(up) - function.applyAsDouble(down)) / (2 * h);
    }
}
