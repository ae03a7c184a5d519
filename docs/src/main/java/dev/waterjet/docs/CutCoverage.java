package dev.waterjet.docs;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.Calibration;
import dev.waterjet.calibrate.CutPrior;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.NoSolutionException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javax.measure.quantity.Speed;

/**
 * Share of new cuts inside their interval of 95 %, by simulation: measured cuts, ladders of feed rates and cuts on three
 * plates, as the guide to calibration prints it.
 */
final class CutCoverage {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final double FEED_EXPONENT = 1.15;
    private static final double TRUE_MACHINABILITY = 120;
    private static final Material CATALOGUE = Material.of("alloy", 115, 0.1, MaterialClass.DUCTILE);
    private static final AbrasiveJet JET = CuttingHead.of(
                    Orifice.sapphire(millimetres(0.3)), FocusingTube.of(millimetres(0.9), millimetres(72)))
            .jet(megapascals(360), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(400));
    private static final double FEED =
            MODEL.separationFeedSi(JET, Material.of("truth", TRUE_MACHINABILITY, 0, MaterialClass.DUCTILE), 0.012);

    /** One design: how the cuts of a shop come about. */
    private record Design(int cuts, double ladder, int plates, double scatter, double plateSpread) {

        /** With a scatter drawn from shops that differ: log-normal, median 0.06, factor 2. */
        Design ofSomeShop(Random random) {
            double drawn = 0.06 * Math.exp(Math.log(2) * random.nextGaussian());
            return new Design(cuts, ladder, plates, drawn, plateSpread);
        }

        List<TestCut> draw(Random random, double[] next) {
            double[] plate = new double[Math.max(1, plates)];
            for (int g = 0; g < plate.length; g++) {
                plate[g] = plateSpread * random.nextGaussian();
            }
            List<TestCut> drawn = new ArrayList<>();
            for (int i = 0; i < cuts; i++) {
                int g = i % plate.length;
                double log = plates == 0 ? scatter * random.nextGaussian() : plate[g] + scatter * random.nextGaussian();
                TestCut cut = cut(FEED * Math.exp(FEED_EXPONENT * log), random);
                drawn.add(plates == 0 ? cut : cut.withPlate("P" + g));
            }
            double spread = plates == 0 ? scatter : Math.hypot(scatter, plateSpread);
            next[0] = FEED * Math.exp(FEED_EXPONENT * spread * random.nextGaussian());
            return drawn;
        }

        private TestCut cut(double feed, Random random) {
            if (ladder == 0) {
                return TestCut.separated(JET, millimetres(12), Kind.SPEED.of(feed));
            }
            double step = Math.log1p(ladder);
            double phase = random.nextDouble();
            double rung = Math.floor(Math.log(feed) / step - phase) + phase;
            return TestCut.between(
                    JET,
                    millimetres(12),
                    Kind.SPEED.of(Math.exp(rung * step)),
                    Kind.SPEED.of(Math.exp((rung + 1) * step)));
        }
    }

    private CutCoverage() {}

    /** Share of new cuts inside the interval. */
    static double coverage(int cuts, double ladder, int plates, boolean hasPrior, int repeats, long seed) {
        Design design = new Design(cuts, ladder, plates, plates == 0 ? 0.05 : 0.03, 0.06);
        Random random = new Random(seed);
        Calibration plain = Calibration.ofMachinability(CATALOGUE, MODEL);
        Calibration grouped = plates > 0 ? plain.withPlates() : plain;
        Calibration calibration = hasPrior ? grouped.withPrior(CutPrior.catalogue(CATALOGUE)) : grouped;
        int inside = 0;
        int fitted = 0;
        for (int r = 0; r < repeats; r++) {
            double[] next = new double[1];
            Design shop = hasPrior && plates == 0 ? design.ofSomeShop(random) : design;
            try {
                CalibratedFeed own = calibration.fit(shop.draw(random, next));
                Estimate<Speed> feed = own.feed(JET, Workpiece.of(own.material(), millimetres(12)), 1);
                boolean isInside =
                        Kind.SPEED.si(feed.lower(0.95)) <= next[0] && next[0] <= Kind.SPEED.si(feed.upper(0.95));
                inside += isInside ? 1 : 0;
                fitted++;
            } catch (NoSolutionException refused) {
                // cuts that never disagree do not show a scatter: the fit is refused, not wrong
            }
        }
        return fitted < repeats / 2 ? Double.NaN : inside / (double) fitted;
    }

    /**
     * Prints the table.
     *
     * @param arguments number of repeats, 2000 if there is none; number of those with a prior, which take longer
     */
    public static void main(String[] arguments) {
        int repeats = arguments.length == 0 ? 2000 : Integer.parseInt(arguments[0]);
        int posteriors = arguments.length < 2 ? repeats : Integer.parseInt(arguments[1]);
        for (int n : new int[] {2, 3, 5, 8, 12, 20}) {
            System.out.printf(
                    Locale.ROOT,
                    "| %d | %.3f | %.3f | %.3f | %.3f |%n",
                    n,
                    coverage(n, 0, 0, false, repeats, 1),
                    n < 5 ? Double.NaN : coverage(n, 0.1, 0, false, repeats, 6),
                    coverage(n, 0, 0, true, posteriors, 2),
                    coverage(n, 0.2, 0, true, posteriors, 3));
        }
        for (int n : new int[] {6, 9, 15}) {
            System.out.printf(
                    Locale.ROOT,
                    "| %d on three plates | %.3f | %.3f |%n",
                    n,
                    coverage(n, 0, 3, false, repeats, 4),
                    coverage(n, 0, 3, true, posteriors, 5));
        }
    }
}
