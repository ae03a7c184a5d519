package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Feeds along one cut of a program: each holds up to a distance from jet on. A feed is that of its word. The time of a stretch is
 * the length that the control runs at that feed, over the feed: without a kerf offset by the machine that is the length of the
 * stretch.
 *
 * @param ends distances along the cut as written, leads included, at which each feed ends; rising, the last is the length of
 *     the cut
 * @param feeds the feeds, each above 0
 * @param paths lengths that the control runs at each feed, each above 0
 */
public record CutFeeds(QuantityArray<Length> ends, QuantityArray<Speed> feeds, QuantityArray<Length> paths) {

    /**
     * Checks the components.
     *
     * @param ends distances along the cut at which each feed ends
     * @param feeds the feeds
     * @param paths lengths that the control runs at each feed
     */
    public CutFeeds {
        Objects.requireNonNull(ends, "ends");
        Objects.requireNonNull(feeds, "feeds");
        Objects.requireNonNull(paths, "paths");
        int count = feeds.size();
        Require.atLeast("number of feeds of a cut", count, 1, Units.ONE, "");
        Require.between("number of ends of feeds", ends.size(), count, count, Units.ONE, "one for each feed");
        Require.between("number of lengths of feeds", paths.size(), count, count, Units.ONE, "one for each feed");
        for (int i = 0; i < count; i++) {
            double before = i == 0 ? 0 : ends.si(i - 1);
            Require.above("end of a feed", ends.si(i), before, Units.MILLIMETRE, "the end of the feed before");
            Require.positive("feed of a stretch", feeds.si(i), Units.MILLIMETRE_PER_MINUTE);
            Require.positive("length of a feed", paths.si(i), Units.MILLIMETRE);
        }
    }

    /**
     * Returns feeds from numbers, for a program of the jet axis.
     *
     * @param endsM distances along the cut at which each feed ends, in m
     * @param feedsMPerS the feeds, in m/s
     * @return the feeds
     */
    public static CutFeeds ofSi(double[] endsM, double[] feedsMPerS) {
        double[] paths = new double[endsM.length];
        for (int i = 0; i < paths.length; i++) {
            double before = i == 0 ? 0 : endsM[i - 1];
            paths[i] = Require.above("end of a feed", endsM[i], before, Units.MILLIMETRE, "the end of the feed before")
                    - before;
        }
        return new CutFeeds(
                QuantityArray.ofSi(Kind.LENGTH, endsM),
                QuantityArray.ofSi(Kind.SPEED, feedsMPerS),
                QuantityArray.ofSi(Kind.LENGTH, paths));
    }
}
