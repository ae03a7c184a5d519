package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Feeds along one cut of a program: each holds up to a distance from jet on.
 *
 * @param ends distances along the cut, leads included, at which each feed ends; rising, the last is the length of the cut
 * @param feeds the feeds, each above 0
 */
public record CutFeeds(QuantityArray<Length> ends, QuantityArray<Speed> feeds) {

    /**
     * Checks the components.
     *
     * @param ends distances along the cut at which each feed ends
     * @param feeds the feeds
     */
    public CutFeeds {
        Objects.requireNonNull(ends, "ends");
        Objects.requireNonNull(feeds, "feeds");
        int count = feeds.size();
        Require.atLeast("number of feeds of a cut", count, 1, Units.ONE, "");
        Require.between("number of ends of feeds", ends.size(), count, count, Units.ONE, "one for each feed");
        for (int i = 0; i < count; i++) {
            double before = i == 0 ? 0 : ends.si(i - 1);
            Require.above("end of a feed", ends.si(i), before, Units.MILLIMETRE, "the end of the feed before");
            Require.positive("feed of a stretch", feeds.si(i), Units.MILLIMETRE_PER_MINUTE);
        }
    }

    /**
     * Returns feeds from numbers.
     *
     * @param endsM distances along the cut at which each feed ends, in m
     * @param feedsMPerS the feeds, in m/s
     * @return the feeds
     */
    public static CutFeeds ofSi(double[] endsM, double[] feedsMPerS) {
        return new CutFeeds(QuantityArray.ofSi(Kind.LENGTH, endsM), QuantityArray.ofSi(Kind.SPEED, feedsMPerS));
    }
}
