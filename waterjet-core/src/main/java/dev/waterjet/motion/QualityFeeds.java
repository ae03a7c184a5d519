package dev.waterjet.motion;

import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
import java.io.Serializable;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/** The feed that each grade of face allows on a straight cut of one workpiece. */
public final class QualityFeeds implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final EnumMap<CutQuality, Double> feedsMPerS;

    private QualityFeeds(EnumMap<CutQuality, Double> feedsMPerS) {
        this.feedsMPerS = feedsMPerS;
        feedsMPerS.forEach((grade, feed) ->
                Require.positive("feed for a face of grade " + grade.label(), feed, Units.MILLIMETRE_PER_MINUTE));
    }

    /**
     * The feeds that a model gives.
     *
     * @param model the model
     * @param jet the jet
     * @param piece what is cut
     * @return the feed for each grade
     */
    public static QualityFeeds of(FeedModel model, AbrasiveJet jet, Workpiece piece) {
        EnumMap<CutQuality, Double> feeds = new EnumMap<>(CutQuality.class);
        for (CutQuality grade : CutQuality.values()) {
            feeds.put(grade, model.feed(jet, piece, grade).si());
        }
        return new QualityFeeds(feeds);
    }

    /**
     * One feed for all grades.
     *
     * @param feed the feed, above 0
     * @return the same feed for each grade
     */
    public static QualityFeeds same(Quantity<Speed> feed) {
        EnumMap<CutQuality, Double> feeds = new EnumMap<>(CutQuality.class);
        for (CutQuality grade : CutQuality.values()) {
            feeds.put(grade, Kind.SPEED.si(feed));
        }
        return new QualityFeeds(feeds);
    }

    /**
     * These feeds with another one for a grade.
     *
     * @param grade the grade
     * @param feed its feed, above 0
     * @return the feeds with that one
     */
    public QualityFeeds with(CutQuality grade, Quantity<Speed> feed) {
        EnumMap<CutQuality, Double> feeds = new EnumMap<>(feedsMPerS);
        feeds.put(grade, Kind.SPEED.si(feed));
        return new QualityFeeds(feeds);
    }

    /**
     * The feed for a grade.
     *
     * @param grade the grade
     * @return the feed, in m/s
     */
    public Quantity<Speed> feed(CutQuality grade) {
        return Kind.SPEED.of(feedSi(grade));
    }

    double feedSi(CutQuality grade) {
        return Objects.requireNonNull(feedsMPerS.get(grade));
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("grade feeds");
        for (CutQuality grade : CutQuality.values()) {
            description.put(grade.name().toLowerCase(Locale.ROOT), Kind.SPEED, feedSi(grade));
        }
        return description.map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof QualityFeeds that && feedsMPerS.equals(that.feedsMPerS);
    }

    @Override
    public int hashCode() {
        return feedsMPerS.hashCode();
    }

    @Override
    public String toString() {
        return describe().toString();
    }
}
