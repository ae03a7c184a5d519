package dev.waterjet.head;

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
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;

/** A head that serves a part: its jet, the feed, and what one part takes and costs with it. */
public final class HeadCandidate implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final AbrasiveJet jet;
    private final Estimate<Speed> feed;
    private final Pierce pierce;
    private final double kerfM;
    private final double timeS;
    private final double timeUncertainty;
    private final double cost;

    private HeadCandidate(
            AbrasiveJet jet,
            Estimate<Speed> feed,
            Pierce pierce,
            double kerfM,
            double timeS,
            double timeUncertainty,
            double cost) {
        this.jet = jet;
        this.feed = feed;
        this.pierce = pierce;
        this.kerfM = kerfM;
        this.timeS = timeS;
        this.timeUncertainty = timeUncertainty;
        this.cost = cost;
    }

    public static HeadCandidate of(
            AbrasiveJet jet, Estimate<Speed> feed, Pierce pierce, double kerfM, PartWork work, Prices rates) {
        double jetS = work.jetTimeSi();
        double timeS = jetS + work.idleSi();
        double cost = (rates.jetHour(jet) * jetS + rates.price(CostItem.MACHINE) * timeS) / 3600;
        return new HeadCandidate(jet, feed, pierce, kerfM, timeS, work.jetTime().standardUncertaintySi() / timeS, cost);
    }

    /**
     * The jet, and with it head, abrasive and flow.
     *
     * @return the jet
     */
    public AbrasiveJet jet() {
        return jet;
    }

    /**
     * Feed for the grade of the part.
     *
     * @return the feed on a straight
     */
    public Estimate<Speed> feed() {
        return feed;
    }

    /**
     * How it pierces.
     *
     * @return the pierce
     */
    public Pierce pierce() {
        return pierce;
    }

    /**
     * Greatest width of its kerf at that feed.
     *
     * @return the width in m
     */
    public double kerfSi() {
        return kerfM;
    }

    /**
     * Time of one part: length over feed, and the pierces. Corners and moves come on top.
     *
     * @return the time
     */
    public Estimate<Time> time() {
        return Estimate.withinFactor(Kind.TIME, timeS, timeUncertainty, feed.cautions());
    }

    /**
     * Time of one part as a number.
     *
     * @return the time in s
     */
    public double timeSi() {
        return timeS;
    }

    /**
     * Cost of one part without its material.
     *
     * @return amount of the shop's currency; 0 without prices
     */
    public double cost() {
        return cost;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("trial of a head")
                .put("jet", jet)
                .put("feed", feed)
                .put("pierce", pierce)
                .put("kerf", Kind.LENGTH, kerfM)
                .put("time", time())
                .put("cost", cost)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof HeadCandidate that
                && jet.equals(that.jet)
                && feed.equals(that.feed)
                && pierce.equals(that.pierce)
                && kerfM == that.kerfM
                && timeS == that.timeS
                && cost == that.cost;
    }

    @Override
    public int hashCode() {
        return Objects.hash(jet, feed, kerfM, timeS, cost);
    }

    @Override
    public String toString() {
        return jet + ": " + QuantityText.round(timeS, 3) + " s, " + QuantityText.round(cost, 3);
    }
}
