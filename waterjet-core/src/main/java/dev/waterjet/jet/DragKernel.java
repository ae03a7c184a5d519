package dev.waterjet.jet;

/**
 * Drag of single particles, and round jets that spread in the fluid around them.
 *
 * <p>Drag coefficient by Haider and Levenspiel, Powder Technol. 58 (1989) 63: C_D = 24/Re (1 + A Re^B) + C/(1 + D/Re). Angular grains
 * have a sphericity of 0.7 to 0.8.
 */
final class DragKernel {

    /** Axis speed of a round turbulent jet times distance over the root of 4 M/(pi rho), Albertson et al. 1950; from memory. */
    private static final double AXIS_DECAY = 6.2;

    private DragKernel() {}

    static double sphere(double reynolds) {
        return coefficient(reynolds, 0.1806, 0.6459, 0.4251, 6880.95);
    }

    /** Of a particle with the surface of a sphere of equal volume over its own, 0.5 to 1. */
    static double ofSphericity(double sphericity, double reynolds) {
        double f = sphericity;
        return coefficient(
                reynolds,
                Math.exp(2.3288 - 6.4581 * f + 2.4486 * f * f),
                0.0964 + 0.5565 * f,
                Math.exp(4.905 - 13.8944 * f + 18.4222 * f * f - 10.2599 * f * f * f),
                Math.exp(1.4681 + 12.2584 * f - 20.7322 * f * f + 15.8855 * f * f * f));
    }

    private static double coefficient(double reynolds, double a, double b, double c, double d) {
        return 24 / reynolds * (1 + a * Math.pow(reynolds, b)) + c / (1 + d / reynolds);
    }

    /** Distance at which the axis speed of a submerged jet of a thrust has fallen to a speed, in m. */
    static double submergedDistance(double thrustN, double densityKgPerM3, double speedMPerS) {
        return AXIS_DECAY * Math.sqrt(4 * thrustN / (Math.PI * densityKgPerM3)) / speedMPerS;
    }

    /** Distance in which drag takes the factor e off the speed of a particle, in m. */
    static double flightLength(double sizeM, double densityKgPerM3, double coefficient, double fluidKgPerM3) {
        return 4.0 / 3 * densityKgPerM3 * sizeM / (coefficient * fluidKgPerM3);
    }
}
