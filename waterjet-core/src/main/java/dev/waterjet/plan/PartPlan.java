package dev.waterjet.plan;

import dev.waterjet.cost.Batch;
import dev.waterjet.cost.Consumption;
import dev.waterjet.cost.PartWork;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.motion.FeedLimit;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.pierce.Pierce;
import java.io.Serializable;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;

/** How one part is cut: its contours in their order with the feed along each, how each is pierced, the moves between. */
public final class PartPlan implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final AbrasiveJet jet;
    private final Workpiece piece;
    private final List<FeedPlan> cuts;
    private final Pierce pierce;
    private final double feedUncertainty;
    private final double moveM;
    private final double moveS;

    private PartPlan(
            AbrasiveJet jet,
            Workpiece piece,
            List<FeedPlan> cuts,
            Pierce pierce,
            double feedUncertainty,
            double moveM,
            double moveS) {
        this.jet = jet;
        this.piece = piece;
        this.cuts = List.copyOf(cuts);
        this.pierce = pierce;
        this.feedUncertainty = feedUncertainty;
        this.moveM = moveM;
        this.moveS = moveS;
    }

    static PartPlan of(
            AbrasiveJet jet,
            Workpiece piece,
            List<FeedPlan> cuts,
            Pierce pierce,
            double feedUncertainty,
            double moveM,
            double moveS) {
        return new PartPlan(jet, piece, cuts, pierce, feedUncertainty, moveM, moveS);
    }

    /**
     * The feed along each contour, in the order in which they are cut.
     *
     * @return the plans, one or more, unmodifiable
     */
    public List<FeedPlan> cuts() {
        return cuts;
    }

    /**
     * How each contour is pierced.
     *
     * @return the pierce
     */
    public Pierce pierce() {
        return pierce;
    }

    /**
     * The jet.
     *
     * @return the jet
     */
    public AbrasiveJet jet() {
        return jet;
    }

    /**
     * The plate.
     *
     * @return the workpiece
     */
    public Workpiece workpiece() {
        return piece;
    }

    /**
     * Length of all contours.
     *
     * @return the length of cut
     */
    public Quantity<Length> cutLength() {
        double length = 0;
        for (FeedPlan cut : cuts) {
            length += Kind.LENGTH.si(cut.contour().length());
        }
        return Kind.LENGTH.of(length);
    }

    /**
     * Length of the moves with the jet off, from the end of each contour to the start of the next.
     *
     * @return the length
     */
    public Quantity<Length> moveLength() {
        return Kind.LENGTH.of(moveM);
    }

    /**
     * Time along the contours. Where the machine sets the pace it is sure; where the jet does it is as sure as its feed.
     *
     * @return the time
     */
    public Estimate<Time> cuttingTime() {
        double time = 0;
        double ofJet = 0;
        for (Map.Entry<FeedLimit, Double> part : secondsByLimit().entrySet()) {
            time += part.getValue();
            ofJet += part.getKey().isOfFront() ? part.getValue() : 0;
        }
        return Estimate.withinFactor(Kind.TIME, time, feedUncertainty * ofJet / time, jet.cautions());
    }

    /**
     * What sets the pace: time along the contours by the limit that governs.
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
     * The work on the part, to be priced by a {@link Batch}.
     *
     * @return cutting, one pierce for each contour, and the moves
     */
    public PartWork work() {
        return PartWork.of(cuttingTime()).withPierces(cuts.size(), pierce).withIdle(Kind.TIME.of(moveS));
    }

    /**
     * What the part uses up.
     *
     * @param pumpEfficiency hydraulic power over power from the mains, above 0 to 1
     * @return the consumption while the jet is on
     */
    public Consumption consumption(double pumpEfficiency) {
        return Consumption.of(jet, work().jetTime().value(), pumpEfficiency);
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("plan of a part")
                .put("jet", jet)
                .put("piece", piece)
                .put("pierce", pierce)
                .put("contours", cuts.size())
                .put("cut_length", Kind.LENGTH, Kind.LENGTH.si(cutLength()))
                .put("move_length", Kind.LENGTH, moveM)
                .put("cutting_time", cuttingTime())
                .put("work", work());
        secondsByLimit()
                .forEach((limit, seconds) ->
                        description.put("time_under_" + limit.name().toLowerCase(Locale.ROOT), Kind.TIME, seconds));
        return description.map();
    }

    @Override
    public String toString() {
        return cuts.size() + " contours, " + QuantityText.round(Kind.LENGTH.si(cutLength()), 4) + " m in "
                + QuantityText.round(work().jetTime().si(), 3) + " s";
    }
}
