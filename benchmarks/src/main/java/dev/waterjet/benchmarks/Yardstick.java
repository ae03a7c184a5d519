package dev.waterjet.benchmarks;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.Locale;
import java.util.function.IntToDoubleFunction;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;

/**
 * The two tasks of {@code benchmarks/c/yardstick.c} by the library, timed in the same way, best of many rounds; then other states
 * of water.
 */
public final class Yardstick {

    private static final int POINTS = 10_000;
    private static final int STATES = 1000;
    private static final int ROUNDS = 4000;

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final AbrasiveJet JET = CuttingHead.of(
                    Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(76)))
            .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(300));
    private static final Material TITANIUM = Materials.standard().get("titanium");
    private static final QuantityArray<Length> THICKNESSES =
            QuantityArray.evenly(Kind.LENGTH, millimetres(2), millimetres(80), POINTS);
    private static final double[] THICKNESSES_M = THICKNESSES.toSi();

    private Yardstick() {}

    /**
     * Prints the best time of a curve and of states.
     *
     * @param args none
     */
    public static void main(String... args) {
        report("curve of 10000 feeds by the library", Yardstick::curve, 1);
        report("curve of 10000 feeds in a plain loop of Java", Yardstick::plainCurve, 1);
        report("state of water by the library", round -> states(1129.057, round), STATES);
        report("state of ordinary water by the library", round -> states(998.3, round), STATES);
        report("state of water from pressure and temperature by the library", Yardstick::statesOfPressure, STATES);
        report("state on an isotherm by the library", Yardstick::isotherm, STATES);
        report("fast density by the library", Yardstick::fastDensities, STATES);
    }

    private static double curve(int round) {
        return MODEL.curve(JET, TITANIUM, 3, THICKNESSES).feeds().si(round % POINTS);
    }

    private static double plainCurve(int round) {
        double ability = 0.0005 + 1e-9 * round;
        double[] feeds = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            feeds[i] = Math.pow(ability / (3 * THICKNESSES_M[i]), 1.15);
        }
        return feeds[round % POINTS];
    }

    private static double states(double densityKgPerM3, int round) {
        double sum = 0;
        for (int i = 0; i < STATES; i++) {
            WaterState state = Water.metastable().atDensitySi(densityKgPerM3, temperatureK(i, round));
            sum += properties(state);
        }
        return sum / STATES;
    }

    private static double properties(WaterState state) {
        return state.enthalpySi()
                + state.soundSpeedSi()
                + state.compressibilitySi()
                + state.expansionSi()
                + state.entropySi()
                + state.pressureSi();
    }

    private static double temperatureK(int i, int round) {
        return 293.15 - 1e-4 * i - 1e-7 * round;
    }

    private static double statesOfPressure(int round) {
        double sum = 0;
        for (int i = 0; i < STATES; i++) {
            sum += properties(Water.stable().atSi(400e6, temperatureK(i, round)));
        }
        return sum / STATES;
    }

    private static double isotherm(int round) {
        double sum = 0;
        QuantityArray<Pressure> pressures =
                QuantityArray.evenly(Kind.PRESSURE, megapascals(1), megapascals(600), STATES);
        for (WaterState state : Water.stable().at(pressures, Kind.TEMPERATURE.of(temperatureK(0, round)))) {
            sum += properties(state);
        }
        return sum / STATES;
    }

    private static double fastDensities(int round) {
        double sum = 0;
        for (int i = 0; i < STATES; i++) {
            sum += Water.fastDensitySi(400e6 + 1e3 * i, temperatureK(i, round));
        }
        return sum / STATES;
    }

    private static void report(String what, IntToDoubleFunction work, int ofEach) {
        double best = Double.MAX_VALUE;
        double sum = 0;
        for (int round = 0; round < ROUNDS; round++) {
            long start = System.nanoTime();
            sum += work.applyAsDouble(round);
            best = Math.min(best, System.nanoTime() - start);
        }
        System.out.printf(
                Locale.ROOT, "%s: %.0f ns (best of %d rounds; check %g)%n", what, best / ofEach, ROUNDS, sum / ROUNDS);
    }
}
