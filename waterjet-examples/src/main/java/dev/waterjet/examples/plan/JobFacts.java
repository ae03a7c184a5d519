package dev.waterjet.examples.plan;

import dev.waterjet.cost.Batch;
import dev.waterjet.cost.BatchCost;
import dev.waterjet.cost.Consumable;
import dev.waterjet.cost.PartWork;
import dev.waterjet.evidence.Caution;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.pierce.PierceSelector;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What piercing, support on the slats, wear and prices add to a plan. */
public final class JobFacts {

    /** Chance that a wear part fails before it is changed. */
    private static final double WORN_CHANCE = 0.1;

    private static final int MOST_DRIVERS = 3;

    private final Shop shop;
    private final AbrasiveJet jet;
    private final Pierce pierce;
    private final int pierces;
    private final PartWork work;
    private final BatchCost cost;
    private final Support support;
    private final Consumable orifice;

    private JobFacts(PartPlan plan, Shop shop) {
        PlanRequest asked = plan.request();
        this.shop = shop;
        this.jet = asked.jet();
        this.pierce = PierceSelector.of(asked.feeds(), shop.practice()).choose(asked.jet(), asked.piece());
        this.pierces = plan.cuts().size();
        this.work = PartWork.of(plan.cuttingTime())
                .withPierces(pierces, pierce)
                .withIdle(Kind.TIME.of(plan.travelTimeSi()));
        this.cost = Batch.of(asked.jet(), work, shop.parts()).cost(shop.rates());
        this.support = Support.of(plan, shop);
        this.orifice = shop.rates().orificeLife(asked.jet().head().orifice().jewel());
    }

    /**
     * The facts of a plan in a shop.
     *
     * @param plan the plan
     * @param shop prices, practice, slats
     * @return the facts
     */
    public static JobFacts of(PartPlan plan, Shop shop) {
        return new JobFacts(plan, shop);
    }

    /**
     * The facts in words, in the order in which they are to be read.
     *
     * @return value by label
     */
    public Map<String, String> words() {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("head", head() + shop.whyHead().map(why -> ". " + why).orElse(", as given"));
        words.put(
                "pierces",
                pierces + ", " + pierce.method().label() + " at "
                        + Told.of(Kind.PRESSURE, pierce.pressure(), Units.MEGAPASCAL) + ": " + pierce.reason());
        if (pierce.time().si() > 0) {
            words.put("each pierce", range(pierce.time().si(), pierce.time().relativeUncertainty()));
        }
        words.put("jet on", Told.time(work.jetTime()));
        words.putAll(support.words());
        words.put(
                "cost",
                QuantityText.round(cost.perPart().si(), 3) + " \u00b1 "
                        + QuantityText.round(cost.perPart().standardUncertaintySi(), 1) + " " + cost.currency()
                        + " a part" + (shop.isInvented() ? ", at invented prices" : "") + ", batch of " + shop.parts());
        words.put("hangs on", drivers());
        words.put(
                "wear",
                "change the orifice at " + hours(orifice) + " and the tube at "
                        + hours(shop.rates().tubeLife()) + " of jet, before one in ten fails");
        return words;
    }

    private String head() {
        CuttingHead head = jet.head();
        return Told.of(Kind.LENGTH, head.orifice().bore(), Units.MILLIMETRE) + " orifice, "
                + Told.of(Kind.LENGTH, head.tube().bore(), Units.MILLIMETRE) + " tube, "
                + Told.of(Kind.MASS_FLOW, jet.abrasiveFlow(), Units.GRAM_PER_MINUTE);
    }

    private static String range(double seconds, double relative) {
        return QuantityText.round(seconds, 2) + " s, 95 % within "
                + QuantityText.round(seconds * Math.exp(-1.96 * relative), 2) + " s and "
                + QuantityText.round(seconds * Math.exp(1.96 * relative), 2) + " s";
    }

    private static String hours(Consumable part) {
        return Told.of(Kind.TIME, part.replacementTime(WORN_CHANCE), Units.HOUR);
    }

    private String drivers() {
        List<String> words = new ArrayList<>();
        for (Map.Entry<String, Double> driver : cost.drivers().entrySet()) {
            if (words.size() < MOST_DRIVERS) {
                words.add(driver.getKey() + " " + QuantityText.round(100 * driver.getValue(), 2) + " %");
            }
        }
        return words.isEmpty() ? "nothing uncertain" : String.join(", ", words) + " of its variance";
    }

    /**
     * Time and cost of the batch.
     *
     * @return the cost
     */
    public BatchCost cost() {
        return cost;
    }

    /**
     * What the reader must know.
     *
     * @return the cautions
     */
    public List<Caution> cautions() {
        List<Caution> all = new ArrayList<>(pierce.cautions());
        all.addAll(cost.total().cautions());
        all.addAll(support.cautions());
        return all;
    }
}
