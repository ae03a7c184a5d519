package dev.waterjet.plan;

import dev.waterjet.cost.Consumption;
import dev.waterjet.cost.PartWork;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.motion.FeedLimit;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.pierce.Pierce;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;

/**
 * Plan of a part: its contours in cutting order with the feed rate along each, their pierces, and rapid traverse.
 *
 * @param conditions jet, workpiece and feed model
 * @param cuts feed rate along each contour, in cutting order; one or more
 * @param pierce pierce of each contour
 * @param rapidLength length of rapid traverse, from the end of each contour to the start of the next
 * @param rapidTime time of rapid traverse
 */
public record PartPlan(
        CutConditions conditions,
        List<FeedPlan> cuts,
        Pierce pierce,
        Quantity<Length> rapidLength,
        Quantity<Time> rapidTime)
        implements Described {

    /**
     * Keeps an unmodifiable copy of the cuts.
     *
     * @param conditions jet, workpiece and feed model
     * @param cuts feed rate along each contour
     * @param pierce pierce of each contour
     * @param rapidLength length of rapid traverse
     * @param rapidTime time of rapid traverse
     */
    public PartPlan {
        Objects.requireNonNull(conditions, "conditions");
        cuts = List.copyOf(cuts);
        Require.atLeast("number of cuts", cuts.size(), 1, Units.ONE, "a part has an outline");
        Objects.requireNonNull(pierce, "pierce");
        Objects.requireNonNull(rapidLength, "rapidLength");
        Objects.requireNonNull(rapidTime, "rapidTime");
    }

    /** {@return the length of all contours} */
    public Quantity<Length> cutLength() {
        double length = 0;
        for (FeedPlan cut : cuts) {
            length += Kind.LENGTH.si(cut.contour().length());
        }
        return Kind.LENGTH.of(length);
    }

    /**
     * Returns the time along the contours. Where the machine governs, the time is exact; where the jet governs, it has the
     * relative uncertainty of the feed rate.
     *
     * @return the time, with the cautions of the plan
     */
    public Estimate<Time> cuttingTime() {
        double time = 0;
        double ofJet = 0;
        for (Map.Entry<FeedLimit, Double> entry : secondsByLimit().entrySet()) {
            time += entry.getValue();
            ofJet += entry.getKey().isOfFront() ? entry.getValue() : 0;
        }
        return Estimate.withinFactor(
                Kind.TIME, time, conditions.relativeUncertainty() * ofJet / time, conditions.cautions());
    }

    /**
     * Returns the time along the contours by governing limit.
     *
     * @return times by limit, in the order of the limits; a limit that never governs has no entry
     */
    public Map<FeedLimit, Quantity<Time>> timeByLimit() {
        EnumMap<FeedLimit, Quantity<Time>> times = new EnumMap<>(FeedLimit.class);
        secondsByLimit().forEach((limit, seconds) -> times.put(limit, Kind.TIME.of(seconds)));
        return times;
    }

    private Map<FeedLimit, Double> secondsByLimit() {
        Map<FeedLimit, Double> seconds = new EnumMap<>(FeedLimit.class);
        for (FeedPlan cut : cuts) {
            cut.timeByLimit().forEach((limit, time) -> seconds.merge(limit, Kind.TIME.si(time), Double::sum));
        }
        return seconds;
    }

    /**
     * Returns the work on the part, to be priced by a {@link dev.waterjet.cost.Batch}.
     *
     * @return cutting, one pierce for each contour, and rapid traverse
     */
    public PartWork work() {
        return PartWork.of(cuttingTime()).withPierces(cuts.size(), pierce).withIdle(rapidTime);
    }

    /**
     * Returns the consumption of the part.
     *
     * @param pumpEfficiency hydraulic power over power from the mains, above 0 to 1
     * @return the consumption while the jet is on
     */
    public Consumption consumption(double pumpEfficiency) {
        return Consumption.of(conditions.jet(), work().jetTime().value(), pumpEfficiency);
    }

    /**
     * Returns the cautions of everything that the plan rests on: feed rate, jet, workpiece and pierce.
     *
     * @return the cautions, each once
     */
    public List<Caution> cautions() {
        Set<Caution> all = new LinkedHashSet<>(cuttingTime().cautions());
        all.addAll(conditions.cautions());
        all.addAll(pierce.cautions());
        return List.copyOf(all);
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("part plan")
                .put("conditions", conditions)
                .put("cuts", cuts)
                .put("pierce", pierce)
                .put("cut_length", Kind.LENGTH, Kind.LENGTH.si(cutLength()))
                .put("rapid_length", Kind.LENGTH, Kind.LENGTH.si(rapidLength))
                .put("rapid_time", Kind.TIME, Kind.TIME.si(rapidTime))
                .put("cutting_time", cuttingTime())
                .put("work", work())
                .put("cautions", cautions());
        secondsByLimit()
                .forEach((limit, seconds) -> description.put(
                        "time_limited_by_" + limit.name().toLowerCase(Locale.ROOT), Kind.TIME, seconds));
        return description.map();
    }

    @Override
    public String toString() {
        return cuts.size() + " contours, " + QuantityText.round(Kind.LENGTH.si(cutLength()), 4) + " m in "
                + QuantityText.round(work().jetTime().si(), 3) + " s";
    }
}
