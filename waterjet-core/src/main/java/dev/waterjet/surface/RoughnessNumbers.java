package dev.waterjet.surface;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.function.ToDoubleFunction;

/**
 * Numbers of a roughness model, or their relative standard uncertainties.
 *
 * @param textureRatio Ra at the entry over the mean grain size
 * @param fineGrowth growth of that texture from the entry to the separation depth, over its value at the entry
 * @param striationGrowth growth of Ra per separation depth in the striation zone, over the exit bore
 * @param rzOverRa Rz over Ra
 * @param paOverRa Pa over Ra
 * @param pzOverPa Pz over Pa
 */
record RoughnessNumbers(
        double textureRatio,
        double fineGrowth,
        double striationGrowth,
        double rzOverRa,
        double paOverRa,
        double pzOverPa)
        implements Serializable {

    private static final int COUNT = 6;

    RoughnessNumbers {
        textureRatio = Require.notNegative("Ra at the entry over the mean grain size", textureRatio, Units.ONE);
        fineGrowth = Require.notNegative("growth of the fine texture", fineGrowth, Units.ONE);
        striationGrowth = Require.notNegative("growth of the striations", striationGrowth, Units.ONE);
        rzOverRa = Require.notNegative("Rz over Ra", rzOverRa, Units.ONE);
        paOverRa = Require.notNegative("Pa over Ra", paOverRa, Units.ONE);
        pzOverPa = Require.notNegative("Pz over Pa", pzOverPa, Units.ONE);
    }

    RoughnessNumbers withTextureRatio(double ratio) {
        return new RoughnessNumbers(ratio, fineGrowth, striationGrowth, rzOverRa, paOverRa, pzOverPa);
    }

    RoughnessNumbers withStriationGrowth(double growth) {
        return new RoughnessNumbers(textureRatio, fineGrowth, growth, rzOverRa, paOverRa, pzOverPa);
    }

    RoughnessNumbers withRzOverRa(double ratio) {
        return new RoughnessNumbers(textureRatio, fineGrowth, striationGrowth, ratio, paOverRa, pzOverPa);
    }

    private RoughnessNumbers scaled(int which, double factor) {
        return new RoughnessNumbers(
                textureRatio * (which == 0 ? factor : 1),
                fineGrowth * (which == 1 ? factor : 1),
                striationGrowth * (which == 2 ? factor : 1),
                rzOverRa * (which == 3 ? factor : 1),
                paOverRa * (which == 4 ? factor : 1),
                pzOverPa * (which == 5 ? factor : 1));
    }

    private double get(int which) {
        return switch (which) {
            case 0 -> textureRatio;
            case 1 -> fineGrowth;
            case 2 -> striationGrowth;
            case 3 -> rzOverRa;
            case 4 -> paOverRa;
            default -> pzOverPa;
        };
    }

    /** Relative standard uncertainty of a positive result computed from these numbers, moving each up and down. */
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
