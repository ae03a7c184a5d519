package dev.waterjet.uncertainty;

import java.util.HashMap;
import java.util.Map;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.random.AbstractRandomGenerator;

/**
 * Random numbers of one batch, for one thread. Each batch has a separate generator with a mixed seed, so that results depend
 * neither on the number of threads nor on their order; no generator of Commons Math can be split like that.
 */
final class BatchRandom extends AbstractRandomGenerator {

    /** Odd constant of the golden ratio: separates the seeds of neighbouring batches. */
    private static final long GOLDEN = 0x9E3779B97F4A7C15L;

    private final SplittableRandom random;
    private final Map<Double, GammaDistribution> chiSquares = new HashMap<>();

    private BatchRandom(SplittableRandom random) {
        this.random = random;
    }

    static BatchRandom of(long seed, int batch) {
        return new BatchRandom(new SplittableRandom(mixed(mixed(seed) + (batch + 1) * GOLDEN)));
    }

    /** Mixes the bits of a number (Steele, Lea, Flood 2014), by hand as the JDK keeps its own method private. */
    static long mixed(long number) {
        long z = (number ^ (number >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    /** The seed is given once. */
    @Override
    public void setSeed(long seed) {
        throw new AssertionError("a batch has one seed");
    }

    /** Above 0, by half a step, and below 1. */
    @Override
    public double nextDouble() {
        return random.nextDouble() + 0x1p-54;
    }

    /** Chi-square with any degrees of freedom: a gamma distribution of shape n/2 and scale 2. */
    double chiSquare(double degreesOfFreedom) {
        return chiSquares
                .computeIfAbsent(degreesOfFreedom, n -> new GammaDistribution(this, n / 2, 2))
                .sample();
    }
}
