package dev.waterjet.uncertainty;

import java.util.SplittableRandom;
import org.apache.commons.math3.special.Erf;

/** Random numbers of one block. Not for use by more than one thread. */
final class Draws {

    /** Odd constant of the golden ratio: separates the seeds of neighbouring blocks. */
    private static final long GOLDEN = 0x9E3779B97F4A7C15L;

    private final SplittableRandom random;
    private double spare;
    private boolean hasSpare;

    private Draws(SplittableRandom random) {
        this.random = random;
    }

    static Draws of(long seed, int block) {
        return new Draws(new SplittableRandom(mixed(mixed(seed) + (block + 1) * GOLDEN)));
    }

    /** Stirs the bits of a number (Steele, Lea, Flood 2014). */
    static long mixed(long number) {
        long z = (number ^ (number >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    /** From 0, excluded by half a step, to 1. */
    double uniform() {
        return random.nextDouble() + 0x1p-54;
    }

    /** Standard normal (Box and Muller 1958). */
    double normal() {
        if (hasSpare) {
            hasSpare = false;
            return spare;
        }
        double radius = Math.sqrt(-2 * Math.log(uniform()));
        double angle = 2 * Math.PI * random.nextDouble();
        spare = radius * Math.sin(angle);
        hasSpare = true;
        return radius * Math.cos(angle);
    }

    /** Chi square with any degrees of freedom: twice a gamma draw (Marsaglia and Tsang 2000). */
    double chiSquare(double degreesOfFreedom) {
        double shape = degreesOfFreedom / 2;
        double boost = shape < 1 ? Math.pow(uniform(), 1 / shape) : 1;
        double d = (shape < 1 ? shape + 1 : shape) - 1 / 3.0;
        double c = 1 / Math.sqrt(9 * d);
        while (true) {
            double x = normal();
            double v = 1 + c * x;
            if (v > 0) {
                v = v * v * v;
                if (Math.log(uniform()) < x * x / 2 + d - d * v + d * Math.log(v)) {
                    return 2 * d * v * boost;
                }
            }
        }
    }

    /** Probability of a standard normal value below this one. */
    static double probability(double normal) {
        return Erf.erfc(-normal / Math.sqrt(2)) / 2;
    }
}
