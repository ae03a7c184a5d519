package dev.waterjet.benchmarks;

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
import dev.waterjet.measure.WaterjetException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javax.measure.quantity.Speed;

/**
 * Share of new cuts inside their interval of 95 %, by simulation: the tables of the guide to calibration.
 *
 * <p>With a prior the shops are as different as the prior states: machinability by the catalogue's spread and the shop factor,
 * scatter and spread between plates log-normal with the medians of the prior and a factor of 2. The prior itself has heavier tails, so that its
 * intervals are a little wide for them; where the shops are drawn from the prior, the share must be 95 %. Without a prior the machinability is of no
 * account, and the scatter is fixed: 5 % of depth, or 3 % within and 6 % between plates. Every cut of a ladder has a ladder of its own,
 * whose first rung is anywhere in a step.
 *
 * <p>Ladders without a prior that never disagree are refused. Those that are not refused have a larger scatter than the
 * others, so the share among them is too large where many are refused: it is printed with the share of refusals.
 */
final class CutCoverage {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final double FEED_EXPONENT = 1.15;
    private static final double FACTOR = 2;
    private static final Material CATALOGUE = Material.of("alloy", 115, 0.1, MaterialClass.DUCTILE);
    private static final CutPrior PRIOR = CutPrior.catalogue(CATALOGUE);
    private static final AbrasiveJet JET = CuttingHead.of(
                    Orifice.sapphire(millimetres(0.3)), FocusingTube.of(millimetres(0.9), millimetres(72)))
            .jet(megapascals(360), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(400));
    private static final double FEED = MODEL.separationFeedSi(JET, CATALOGUE, 0.012);

    /**
     * Design of the cuts of a shop.
     *
     * @param cuts number of cuts
     * @param ladder step of a ladder of feed rates; 0 for measured ones
     * @param plates number of plates; 0 if each cut has its own
     * @param hasPrior whether the fit has the prior of the catalogue
     * @param isOfPrior whether scatter and spread are drawn from that prior itself
     */
    record Design(int cuts, double ladder, int plates, boolean hasPrior, boolean isOfPrior) {

        Design(int cuts, double ladder, int plates, boolean hasPrior) {
            this(cuts, ladder, plates, hasPrior, false);
        }

        Design ofPrior() {
            return new Design(cuts, ladder, plates, hasPrior, true);
        }

        /** A shop with its own ability, scatter and spread. */
        Shop shop(Random random) {
            if (!hasPrior) {
                return new Shop(0, plates == 0 ? 0.05 : 0.03, plates == 0 ? 0 : 0.06);
            }
            double ability = Math.hypot(PRIOR.material(), PRIOR.shop()) * random.nextGaussian();
            double scatter = PRIOR.scatter() * ratio(PRIOR.scatterFreedom(), random);
            double spread = PRIOR.plateSpread() * ratio(PRIOR.plateFreedom(), random);
            return new Shop(ability, scatter, plates == 0 ? 0 : spread);
        }

        /** Deviation of a shop over that of the prior. */
        private double ratio(double freedom, Random random) {
            if (!isOfPrior) {
                return Math.exp(Math.log(FACTOR) * random.nextGaussian());
            }
            double squares = 0;
            for (int k = 0; k < freedom; k++) {
                double normal = random.nextGaussian();
                squares += normal * normal;
            }
            return Math.sqrt(freedom / squares);
        }

        Calibration calibration() {
            Calibration plain = Calibration.ofMachinability(CATALOGUE, MODEL);
            Calibration grouped = plates > 0 ? plain.withPlates() : plain;
            return hasPrior ? grouped.withPrior(PRIOR) : grouped;
        }

        List<TestCut> draw(Shop shop, Random random) {
            double[] plate = new double[Math.max(1, plates)];
            for (int g = 0; g < plate.length; g++) {
                plate[g] = shop.spread * random.nextGaussian();
            }
            List<TestCut> drawn = new ArrayList<>();
            for (int i = 0; i < cuts; i++) {
                int g = i % plate.length;
                TestCut cut = cut(shop.feed(plate[g] + shop.scatter * random.nextGaussian()), random);
                drawn.add(plates == 0 ? cut : cut.withPlate("P" + g));
            }
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

    private record Shop(double ability, double scatter, double spread) {

        double feed(double deviation) {
            return FEED * Math.exp(FEED_EXPONENT * (ability + deviation));
        }
    }

    /** Share of new cuts inside the interval, and share of the shops whose cuts were refused. */
    record Coverage(double inside, double refused) {

        static Coverage of(Design design, int repeats, long seed) {
            Random random = new Random(seed);
            int inside = 0;
            int refused = 0;
            for (int r = 0; r < repeats; r++) {
                Shop shop = design.shop(random);
                List<TestCut> cuts = design.draw(shop, random);
                double next = shop.feed(Math.hypot(shop.scatter, shop.spread) * random.nextGaussian());
                try {
                    CalibratedFeed own = design.calibration().fit(cuts);
                    Estimate<Speed> feed = own.feed(JET, Workpiece.of(own.material(), millimetres(12)), 1);
                    boolean isInside =
                            Kind.SPEED.si(feed.lower(0.95)) <= next && next <= Kind.SPEED.si(feed.upper(0.95));
                    inside += isInside ? 1 : 0;
                } catch (WaterjetException e) {
                    // a prior allows scatters so large that no interval is of use
                    refused++;
                }
            }
            return new Coverage(inside / (double) (repeats - refused), refused / (double) repeats);
        }

        String text() {
            if (Double.isNaN(inside)) {
                return "-";
            }
            String share = String.format(Locale.ROOT, "%.3f", inside);
            return refused > 0.005 ? share + String.format(Locale.ROOT, " (%.0f %% refused)", 100 * refused) : share;
        }
    }

    private CutCoverage() {}

    private static void row(String name, int repeats, Design... designs) {
        StringBuilder row = new StringBuilder("| " + name + " |");
        for (int k = 0; k < designs.length; k++) {
            row.append(' ')
                    .append(Coverage.of(designs[k], repeats, k + 1).text())
                    .append(" |");
        }
        System.out.println(row);
    }

    private static void printOfPrior(int repeats) {
        System.out.println("| cuts | measured | ladder of 10 % | ladder of 20 % | measured, on three plates |");
        System.out.println("|---|---|---|---|---|");
        for (int n : new int[] {3, 6, 12}) {
            row(
                    String.valueOf(n),
                    repeats,
                    new Design(n, 0, 0, true).ofPrior(),
                    new Design(n, 0.1, 0, true).ofPrior(),
                    new Design(n, 0.2, 0, true).ofPrior(),
                    new Design(n, 0, 3, true).ofPrior());
        }
    }

    /**
     * Prints the tables.
     *
     * @param arguments number of repeats; 2000 if there is none
     */
    public static void main(String[] arguments) {
        int repeats = arguments.length == 0 ? 2000 : Integer.parseInt(arguments[0]);
        System.out.println(
                "| cuts | measured, no prior | measured, prior | ladder of 10 %, prior | ladder of 20 %, prior |");
        System.out.println("|---|---|---|---|---|");
        for (int n : new int[] {2, 3, 5, 8, 12, 20}) {
            row(
                    String.valueOf(n),
                    repeats,
                    new Design(n, 0, 0, false),
                    new Design(n, 0, 0, true),
                    new Design(n, 0.1, 0, true),
                    new Design(n, 0.2, 0, true));
        }
        System.out.println();
        printOfPrior(repeats);
        System.out.println();
        System.out.println("| cuts on three plates | measured, no prior | measured, prior |");
        System.out.println("|---|---|---|");
        for (int n : new int[] {6, 9, 15}) {
            row(String.valueOf(n), repeats, new Design(n, 0, 3, false), new Design(n, 0, 3, true));
        }
        System.out.println();
        System.out.println("| cuts | ladder of 10 %, no prior | ladder of 20 %, no prior |");
        System.out.println("|---|---|---|");
        for (int n : new int[] {5, 10, 20}) {
            row(String.valueOf(n), repeats, new Design(n, 0.1, 0, false), new Design(n, 0.2, 0, false));
        }
    }
}
