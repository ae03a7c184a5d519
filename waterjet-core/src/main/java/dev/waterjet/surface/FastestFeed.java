package dev.waterjet.surface;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import java.io.Serializable;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import javax.measure.quantity.Speed;

/** The fastest feed that meets a demand, and which part of the demand governs it. */
public final class FastestFeed implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** A demand that no feed meets has no entry here but stands in {@code outOfReach}. */
    private final EnumMap<FaceDemand.Item, Estimate<Speed>> limits;

    private final EnumMap<FaceDemand.Item, Boolean> outOfReach;

    private FastestFeed(
            EnumMap<FaceDemand.Item, Estimate<Speed>> limits, EnumMap<FaceDemand.Item, Boolean> outOfReach) {
        this.limits = limits;
        this.outOfReach = outOfReach;
    }

    static FastestFeed of(Map<FaceDemand.Item, Optional<Estimate<Speed>>> found) {
        EnumMap<FaceDemand.Item, Estimate<Speed>> limits = new EnumMap<>(FaceDemand.Item.class);
        EnumMap<FaceDemand.Item, Boolean> outOfReach = new EnumMap<>(FaceDemand.Item.class);
        found.forEach((item, feed) ->
                feed.ifPresentOrElse(limit -> limits.put(item, limit), () -> outOfReach.put(item, true)));
        return new FastestFeed(limits, outOfReach);
    }

    /**
     * The feed.
     *
     * @return the slowest of all limits; nothing if one demand is out of reach at any feed
     */
    public Optional<Estimate<Speed>> feed() {
        return outOfReach.isEmpty() ? Optional.of(slowest().getValue()) : Optional.empty();
    }

    /**
     * What governs.
     *
     * @return the demand that allows the slowest feed, or the first that no feed meets
     */
    public FaceDemand.Item governing() {
        return outOfReach.isEmpty()
                ? slowest().getKey()
                : outOfReach.keySet().iterator().next();
    }

    private Map.Entry<FaceDemand.Item, Estimate<Speed>> slowest() {
        return Collections.min(
                limits.entrySet(),
                (one, other) ->
                        Double.compare(one.getValue().si(), other.getValue().si()));
    }

    /**
     * Fastest feed for each demand that can be met.
     *
     * @return a feed for each, unmodifiable
     */
    public Map<FaceDemand.Item, Estimate<Speed>> limits() {
        return Collections.unmodifiableMap(limits);
    }

    @Override
    public Map<String, Object> describe() {
        Description description =
                Description.of("fastest feed").put("governing", governing()).put("feed", feed());
        limits.forEach(
                (item, limit) -> description.put("limit_by_" + item.words().replace(' ', '_'), limit));
        return description.map();
    }

    @Override
    public String toString() {
        return feed().map(feed -> feed + ", governed by ").orElse("out of reach: ")
                + governing().words();
    }
}
