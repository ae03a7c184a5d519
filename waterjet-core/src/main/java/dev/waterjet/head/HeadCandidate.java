package dev.waterjet.head;

import dev.waterjet.cost.Batch;
import dev.waterjet.cost.CostItem;
import dev.waterjet.cost.PartWork;
import dev.waterjet.cost.Prices;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.pierce.Pierce;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;

/**
 * Feasible head for a part, with time and cost of one part.
 *
 * @param jet jet of the head, with its abrasive and flow rate
 * @param feed feed rate on straight edges for the cut quality of the part
 * @param pierce the pierce
 * @param kerfWidth maximum kerf width at that feed rate
 * @param time time of one part: cut length over feed rate, and the pierces; without corners and rapid traverse
 * @param cost expected cost of one part without its material, as a {@link Batch} of that work costs, in the currency of the
 *     prices; 0 without prices
 */
public record HeadCandidate(
        AbrasiveJet jet,
        Estimate<Speed> feed,
        Pierce pierce,
        Quantity<Length> kerfWidth,
        Estimate<Time> time,
        double cost)
        implements Described {

    /**
     * Checks the components.
     *
     * @param jet the jet
     * @param feed feed rate
     * @param pierce the pierce
     * @param kerfWidth kerf width
     * @param time time of one part
     * @param cost cost of one part
     */
    public HeadCandidate {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(feed, "feed");
        Objects.requireNonNull(pierce, "pierce");
        Objects.requireNonNull(kerfWidth, "kerfWidth");
        Objects.requireNonNull(time, "time");
    }

    static HeadCandidate of(
            AbrasiveJet jet, Estimate<Speed> feed, Pierce pierce, double kerfM, PartWork work, Prices prices) {
        Estimate<Time> jetTime = work.jetTime();
        double timeS = jetTime.si() + Kind.TIME.si(work.idleTime());
        Map<CostItem, Double> items = Batch.of(jet, work, 1).expectedItems(prices);
        items.remove(CostItem.SHEET);
        double cost = items.values().stream().mapToDouble(amount -> amount).sum();
        double relative = jetTime.standardUncertaintySi() / timeS;
        Estimate<Time> time = Estimate.withinFactor(Kind.TIME, timeS, relative, feed.cautions());
        return new HeadCandidate(jet, feed, pierce, Kind.LENGTH.of(kerfM), time, cost);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("head candidate")
                .put("jet", jet)
                .put("feed", feed)
                .put("pierce", pierce)
                .put("kerf_width", Kind.LENGTH, Kind.LENGTH.si(kerfWidth))
                .put("time", time)
                .put("cost", cost)
                .map();
    }

    @Override
    public String toString() {
        return jet + ": " + QuantityText.round(time.si(), 3) + " s, cost " + QuantityText.round(cost, 3);
    }
}
