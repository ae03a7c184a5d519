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
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.quality.CutQuality;

/** The first feed rate of a virtual machine, for the time of a cold start. */
public final class FirstFeed {

    private FirstFeed() {}

    /**
     * Prints a feed rate in m/s and the time since the start of this method in ms, or a word alone.
     *
     * @param args {@code word} for the word
     */
    public static void main(String... args) {
        if (args.length > 0) {
            System.out.println("word");
            return;
        }
        long start = System.nanoTime();
        CuttingHead head = CuttingHead.of(
                Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(76)));
        AbrasiveJet jet = head.jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(300));
        Workpiece plate = Workpiece.of(Materials.standard().get("titanium"), millimetres(6));
        double feed =
                MachinabilityFeed.published().feed(jet, plate, CutQuality.FINE).si();
        System.out.println(feed + " " + (System.nanoTime() - start) / 1_000_000);
    }
}
