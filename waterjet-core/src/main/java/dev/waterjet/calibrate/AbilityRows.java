package dev.waterjet.calibrate;

import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleBinaryOperator;

/**
 * Test cuts as rows of the machinability model with a given feed exponent. What a cut says of the logarithm of machinability is
 * the logarithm of its depth over that of a material of machinability 1; a changed exponent of a setting is a coefficient of
 * the logarithm of the setting over its reference.
 */
final class AbilityRows {

    private static final Material UNIT = Material.of("unit", 1, 0, MaterialClass.DUCTILE);

    private AbilityRows() {}

    static CutRows of(MachinabilityFeed model, List<FeedExponent> freed, List<TestCut> cuts) {
        int n = cuts.size();
        double[] lo = new double[n];
        double[] up = new double[n];
        double[] delta = new double[n];
        double[][] x = new double[n][];
        double feedExponent = model.exponent(FeedExponent.FEED);
        for (int i = 0; i < n; i++) {
            TestCut cut = cuts.get(i);
            double[] ends =
                    ends(cut, (depth, feed) -> Math.log(depth / model.separationDepthSi(cut.jet(), UNIT, feed)));
            lo[i] = ends[0];
            up[i] = ends[1];
            delta[i] = delta(cut, feedExponent);
            x[i] = settings(cut.jet(), freed);
        }
        return new CutRows(lo, up, x, delta, new int[n], 0);
    }

    /** Ends between which a cut holds the ability that a depth at a feed rate would show. */
    static double[] ends(TestCut cut, DoubleBinaryOperator ability) {
        double lower = ability.applyAsDouble(cut.index() * cut.thicknessSi(), cut.feedSi());
        if (cut.test() == TestCut.Test.TRIAL) {
            return cut.isSeparated()
                    ? new double[] {lower, Double.POSITIVE_INFINITY}
                    : new double[] {Double.NEGATIVE_INFINITY, lower};
        }
        return new double[] {
            lower,
            cut.isMeasured()
                    ? lower
                    : ability.applyAsDouble(cut.upperIndex() * cut.upperThicknessSi(), cut.failedFeedSi())
        };
    }

    /** Known deviation of a cut on the scale of the logarithm of depth. */
    static double delta(TestCut cut, double feedExponent) {
        return cut.test() == TestCut.Test.DEPTH
                ? Math.hypot(cut.relativeDeviation(), cut.readingDeviationSi() / cut.thicknessSi())
                : cut.relativeDeviation() / feedExponent;
    }

    /** 1, and the logarithm of each setting whose exponent is free. */
    static double[] settings(JetSettings jet, List<FeedExponent> freed) {
        double[] settings = new double
                [1 + (int) freed.stream().filter(e -> e != FeedExponent.FEED).count()];
        int at = 0;
        settings[at++] = 1;
        for (FeedExponent exponent : freed) {
            if (exponent != FeedExponent.FEED) {
                settings[at++] = Math.log(setting(jet, exponent) / exponent.referenceSi());
            }
        }
        return settings;
    }

    private static double setting(JetSettings jet, FeedExponent exponent) {
        return switch (exponent) {
            case PRESSURE -> jet.pressureSi();
            case ORIFICE -> jet.orificeBoreSi();
            case ABRASIVE_FLOW -> jet.abrasiveFlowSi();
            case TUBE -> jet.tubeBoreSi();
            case FEED -> throw new AssertionError("the feed exponent is not that of a setting");
        };
    }

    /** Places of the plates, in the order in which they first appear; a cut without a plate is on one of its own. */
    static int[] places(List<String> plates) {
        int[] places = new int[plates.size()];
        List<String> distinct =
                plates.stream().filter(p -> !p.isBlank()).distinct().toList();
        int next = distinct.size();
        for (int i = 0; i < places.length; i++) {
            int known = distinct.indexOf(plates.get(i));
            places[i] = known >= 0 ? known : next++;
        }
        return places;
    }

    /** Measured cuts of which the feed rate, not the depth, is the measured quantity. */
    static long measuredFeeds(List<TestCut> cuts) {
        return cuts.stream()
                .filter(cut -> cut.isMeasured() && cut.test() != TestCut.Test.DEPTH)
                .count();
    }

    static boolean isOnePlate(int[] places) {
        return Arrays.stream(places).distinct().count() == 1;
    }
}
