package dev.waterjet.surface;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.function.ToDoubleFunction;

/**
 * The numbers of a roughness model, or the relative standard uncertainties of them.
 *
 * @param textureRatio Ra at the entry over the mean grain
 * @param fineGrowth growth of that texture from entry to separation depth, over its value at the entry
 * @param grooveGrowth growth of Ra per separation depth in the grooved zone, over the exit bore
 * @param rzOverRa Rz over Ra
 * @param paOverRa Pa over Ra
 * @param pzOverPa Pz over Pa
 */
public record RoughnessNumbers(
        double textureRatio, double fineGrowth, double grooveGrowth, double rzOverRa, double paOverRa, double pzOverPa)
        implements Serializable {

    private static final int COUNT = 6;

    public RoughnessNumbers {
        Require.notNegative("Ra at the entry over the mean grain", textureRatio, Units.ONE);
        Require.notNegative("growth of the fine texture", fineGrowth, Units.ONE);
        Require.notNegative("growth of the grooves", grooveGrowth, Units.ONE);
        Require.notNegative("Rz over Ra", rzOverRa, Units.ONE);
        Require.notNegative("Pa over Ra", paOverRa, Units.ONE);
        Require.notNegative("Pz over Pa", pzOverPa, Units.ONE);
    }

    private RoughnessNumbers scaled(int which, double factor) {
        return new RoughnessNumbers(
                textureRatio * (which == 0 ? factor : 1),
                fineGrowth * (which == 1 ? factor : 1),
                grooveGrowth * (which == 2 ? factor : 1),
                rzOverRa * (which == 3 ? factor : 1),
                paOverRa * (which == 4 ? factor : 1),
                pzOverPa * (which == 5 ? factor : 1));
    }

    private double get(int which) {
        return switch (which) {
            case 0 -> textureRatio;
            case 1 -> fineGrowth;
            case 2 -> grooveGrowth;
            case 3 -> rzOverRa;
            case 4 -> paOverRa;
            default -> pzOverPa;
        };
    }

    /** Relative standard uncertainty of something positive computed from these numbers, moving each up and down. */
    double spread(RoughnessNumbers relative, ToDoubleFunction<RoughnessNumbers> computed) {
        double variance = 0;
        for (int which = 0; which < COUNT; which++) {
            double factor = Math.exp(relative.get(which));
            double change = Math.log(computed.applyAsDouble(scaled(which, factor))
                            / computed.applyAsDouble(scaled(which, 1 / factor)))
                    / 2;
            variance += change * change;
        }
        return Math.sqrt(variance);
    }
}
