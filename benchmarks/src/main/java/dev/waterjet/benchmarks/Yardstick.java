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
import java.util.Locale;
import javax.measure.quantity.Length;

/** The curve of {@code benchmarks/c/yardstick.c} by the library, timed in the same way: best of many rounds. */
public final class Yardstick {

    private static final int POINTS = 10_000;
    private static final int ROUNDS = 40;
    private static final int REPEATS = 50;

    private Yardstick() {}

    /**
     * Prints the best time of a curve.
     *
     * @param args none
     */
    public static void main(String... args) {
        MachinabilityFeed model = MachinabilityFeed.published();
        AbrasiveJet jet = CuttingHead.of(
                        Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(76)))
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(300));
        Material titanium = Materials.standard().get("titanium");
        QuantityArray<Length> thicknesses = QuantityArray.evenly(Kind.LENGTH, millimetres(2), millimetres(80), POINTS);
        double best = Double.MAX_VALUE;
        double sum = 0;
        for (int round = 0; round < ROUNDS; round++) {
            long start = System.nanoTime();
            for (int repeat = 0; repeat < REPEATS; repeat++) {
                sum += model.curve(jet, titanium, 3, thicknesses).feeds().si(repeat);
            }
            best = Math.min(best, (System.nanoTime() - start) / (double) REPEATS);
        }
        System.out.printf(
                Locale.ROOT,
                "curve of %d feeds by the library: %.0f ns (best of %d rounds; check %g)%n",
                POINTS,
                best,
                ROUNDS,
                sum);
    }
}
