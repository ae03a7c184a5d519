package dev.waterjet.motion;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/** Feed rate on straight edges for each cut quality, in one workpiece. */
public final class QualityFeeds implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values(Map<CutQuality, Double> feedsMPerS) implements Serializable {

        Values {
            Map<CutQuality, Double> checked = new EnumMap<>(CutQuality.class);
            for (CutQuality quality : CutQuality.values()) {
                Double feed = Objects.requireNonNull(feedsMPerS.get(quality), "feedsMPerS");
                checked.put(
                        quality,
                        Require.positive("feed rate for " + quality.label(), feed, Units.MILLIMETRE_PER_MINUTE));
            }
            feedsMPerS = Map.copyOf(checked);
        }

        private Object readResolve() {
            return new QualityFeeds(this);
        }
    }

    private final transient Values values;

    private QualityFeeds(Values values) {
        this.values = values;
    }

    /**
     * Returns the feed rates of a feed model.
     *
     * @param cut conditions of the cut
     * @return the feed rate for each cut quality
     */
    public static QualityFeeds of(CutConditions cut) {
        Objects.requireNonNull(cut, "cut");
        Map<CutQuality, Double> feeds = new EnumMap<>(CutQuality.class);
        for (CutQuality quality : CutQuality.values()) {
            feeds.put(quality, cut.feed(quality).si());
        }
        return new QualityFeeds(new Values(feeds));
    }

    /**
     * Returns one feed rate for all cut qualities.
     *
     * @param feed the feed rate, above 0
     * @return the feed rates
     */
    public static QualityFeeds same(Quantity<Speed> feed) {
        Objects.requireNonNull(feed, "feed");
        Map<CutQuality, Double> feeds = new EnumMap<>(CutQuality.class);
        for (CutQuality quality : CutQuality.values()) {
            feeds.put(quality, Kind.SPEED.si(feed));
        }
        return new QualityFeeds(new Values(feeds));
    }

    /**
     * Returns these feed rates with another one for a cut quality.
     *
     * @param quality the cut quality
     * @param feed its feed rate, above 0
     * @return the feed rates with that one
     */
    public QualityFeeds with(CutQuality quality, Quantity<Speed> feed) {
        Objects.requireNonNull(feed, "feed");
        Map<CutQuality, Double> feeds = new EnumMap<>(values.feedsMPerS);
        feeds.put(Objects.requireNonNull(quality, "quality"), Kind.SPEED.si(feed));
        return new QualityFeeds(new Values(feeds));
    }

    /**
     * Returns the feed rate for a cut quality.
     *
     * @param quality the cut quality
     * @return its feed rate
     */
    public Quantity<Speed> feed(CutQuality quality) {
        return Kind.SPEED.of(feedSi(quality));
    }

    double feedSi(CutQuality quality) {
        return Objects.requireNonNull(values.feedsMPerS.get(Objects.requireNonNull(quality, "quality")));
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("feed rates by cut quality");
        for (CutQuality quality : CutQuality.values()) {
            description.put(quality.name().toLowerCase(Locale.ROOT), Kind.SPEED, feedSi(quality));
        }
        return description.map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof QualityFeeds that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("feed rates");
        for (CutQuality quality : CutQuality.values()) {
            text.append(quality == CutQuality.VERY_COARSE ? " " : ", ")
                    .append(quality.label())
                    .append(' ')
                    .append(QuantityText.forPeople(Kind.SPEED, feed(quality)));
        }
        return text.toString();
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
