package dev.waterjet.kerf;

import java.io.Serializable;

/**
 * Lag at the exit over feed rate, for one jet in one workpiece. It does not fall as the feed rate rises. A lambda will do;
 * {@link LagModel#function} returns the one that follows from a model of the cut front.
 *
 * <pre>{@code
 * LagFunction measured = feed -> 0.0021 * feed / 0.01;   // 2.1 mm at 600 mm/min
 * }</pre>
 */
@FunctionalInterface
public interface LagFunction extends Serializable {

    /**
     * Returns the lag at a feed rate.
     *
     * @param feedMPerS feed rate in m/s, 0 or more
     * @return lag at the exit in m
     */
    double lagSi(double feedMPerS);

    /**
     * Returns the maximum feed rate at which the lag stays within a length. The default finds it by bisection; a function
     * with an inverse in closed form overrides it.
     *
     * @param lagM lag in m, above 0
     * @return feed rate in m/s; infinite if no feed rate has that lag
     */
    default double feedSi(double lagM) {
        double high = 1e-6;
        while (lagSi(high) < lagM) {
            high *= 4;
            if (high > 1e3) {
                return Double.POSITIVE_INFINITY;
            }
        }
        // halving 60 times leaves no digit to find; a solver of the library would stop at a tolerance in m/s
        double low = 0;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (lagSi(middle) <= lagM) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /**
     * Returns the function of a jet without lag.
     *
     * @return a function that is 0 at every feed rate
     */
    static LagFunction none() {
        return feedMPerS -> 0;
    }
}
