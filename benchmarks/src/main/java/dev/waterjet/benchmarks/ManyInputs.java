package dev.waterjet.benchmarks;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.WaterjetException;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/** Random valid inputs through water jet, abrasive jet, feed models and kerf: every answer must be a finite number. */
public final class ManyInputs {

    private static final long SEED = 20261125;

    private long answers;
    private long refusals;

    private ManyInputs() {}

    /**
     * Runs and reports; ends with an exception at the first answer that is not finite.
     *
     * @param args how many inputs, ten million if not given
     */
    public static void main(String... args) {
        long inputs = args.length > 0 ? Long.parseLong(args[0]) : 10_000_000;
        ManyInputs run = new ManyInputs();
        SplittableRandom random = new SplittableRandom(SEED);
        long start = System.nanoTime();
        for (long i = 0; i < inputs; i++) {
            run.one(random);
        }
        System.out.printf(
                Locale.ROOT,
                "%d inputs, %d finite answers, %d named refusals, %.0f s%n",
                inputs,
                run.answers,
                run.refusals,
                (System.nanoTime() - start) / 1e9);
    }

    private void one(SplittableRandom random) {
        try {
            double boreM = between(random, 1e-4, 6e-4);
            double tubeM = boreM * between(random, 2, 5);
            AbrasiveJet jet = CuttingHead.of(
                            Orifice.sapphire(Kind.LENGTH.of(boreM)),
                            FocusingTube.of(Kind.LENGTH.of(tubeM), Kind.LENGTH.of(80 * tubeM)))
                    .jet(
                            Kind.PRESSURE.of(between(random, 50e6, 700e6)),
                            Abrasive.garnet(Mesh.of(random.nextBoolean() ? 80 : 120)),
                            Kind.MASS_FLOW.of(between(random, 5e-4, 0.02)));
            List<Material> all = List.copyOf(Materials.standard().all());
            Material material = all.get(random.nextInt(all.size()));
            Workpiece plate = Workpiece.of(material, Kind.LENGTH.of(between(random, 5e-4, 0.3)));
            double index = 1 + 4 * random.nextDouble();
            finite(jet.water().speedSi());
            finite(jet.abrasivePower().si());
            MachinabilityFeed model = MachinabilityFeed.published();
            double feed = finite(model.feed(jet, plate, index).si());
            finite(model.index(jet, plate, Kind.SPEED.of(feed)));
            if (random.nextInt(10) == 0) {
                Kerf kerf = KerfModel.standard().kerf(CutConditions.of(jet, plate, model), Kind.SPEED.of(feed));
                finite(kerf.taperPerSide().si());
                finite(kerf.lag().atExit().si());
                // refuses materials whose modulus it does not know
                FeedModel rival = ErosionFeed.standard();
                finite(rival.feed(jet, plate, index).si());
            }
        } catch (WaterjetException refused) {
            refusals++;
        }
    }

    private double finite(double answer) {
        if (!Double.isFinite(answer)) {
            throw new IllegalStateException("answer number " + answers + " is " + answer);
        }
        answers++;
        return answer;
    }

    private static double between(SplittableRandom random, double from, double to) {
        return from * Math.pow(to / from, random.nextDouble());
    }
}
