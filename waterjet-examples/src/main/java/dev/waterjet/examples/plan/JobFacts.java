package dev.waterjet.examples.plan;

import dev.waterjet.cost.Batch;
import dev.waterjet.cost.BatchCost;
import dev.waterjet.cost.Consumable;
import dev.waterjet.cost.PartWork;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.program.DwellForm;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.measure.quantity.Time;

/** Piercing, support on the slats, wear and cost of a plan. */
public final class JobFacts {

    /** Failure probability at which a consumable is replaced. */
    private static final double FAILURE_PROBABILITY = 0.1;

    private static final int MAX_CONTRIBUTIONS = 3;

    private final Shop shop;
    private final PlanReport report;
    private final AbrasiveJet jet;
    private final Pierce pierce;
    private final PartWork work;
    private final BatchCost cost;
    private final Support support;
    private final Consumable orifice;

    private JobFacts(PlanReport report, Shop shop) {
        this.shop = shop;
        this.report = report;
        this.jet = report.jet();
        this.pierce = report.plan().cuts().get(0).pierce();
        this.work = report.plan().work();
        this.cost = Batch.of(jet, work, shop.parts()).cost(shop.rates());
        this.support = Support.of(report, shop);
        this.orifice = shop.rates().orificeLife(jet.head().orifice().jewel());
    }

    /**
     * Returns the facts of a plan in a shop.
     *
     * @param report the plan
     * @param shop prices, pierce settings, slats
     * @return the facts
     */
    public static JobFacts of(PlanReport report, Shop shop) {
        return new JobFacts(report, shop);
    }

    /**
     * Returns the facts as text, in reading order.
     *
     * @return value by label
     */
    public Map<String, String> facts() {
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put(
                "Head", head() + shop.headSelection().map(found -> "; " + found).orElse(", as given"));
        facts.put(
                "Pierces",
                report.plan().pierces() + ", " + methods() + " at "
                        + ReportText.of(
                                Kind.PRESSURE, pierce.pressure(), report.units().pressure()) + ": "
                        + pierce.reason().text(report.units().replaced()));
        if (pierce.time().si() > 0) {
            facts.put("Pierce time", interval(pierce.time()) + " each");
        }
        facts.put("Jet-on time", ReportText.time(work.jetTime()));
        facts.putAll(support.facts());
        facts.put(
                "Cost",
                ReportText.of(cost.perPart().si(), cost.perPart().standardUncertaintySi(), "") + " " + cost.currency()
                        + " per part" + (shop.hasExamplePrices() ? " (example prices)" : "") + ", batch of "
                        + shop.parts());
        facts.put("Main contributions", contributions());
        facts.put(
                "Replace",
                "orifice after " + hours(orifice) + ", focusing tube after "
                        + hours(shop.rates().tubeLife()) + " of jet-on time (10 % failure probability)");
        return facts;
    }

    /** Method of the pierces; the number of each where they differ. */
    private String methods() {
        Map<String, Integer> counts = new LinkedHashMap<>();
        report.plan()
                .cuts()
                .forEach(cut ->
                        counts.merge(cut.pierce().method().label(), cut.feeds().size(), Integer::sum));
        if (counts.size() == 1) {
            return pierce.method().label();
        }
        List<String> parts = new ArrayList<>();
        counts.forEach((label, count) -> parts.add(count + " " + label));
        return String.join(", ", parts);
    }

    private String head() {
        CuttingHead head = jet.head();
        return ReportText.of(Kind.LENGTH, head.orifice().bore(), report.units().length()) + " orifice, "
                + ReportText.of(Kind.LENGTH, head.tube().bore(), report.units().length()) + " focusing tube, "
                + ReportText.of(
                        Kind.MASS_FLOW, jet.abrasiveFlow(), report.units().abrasiveFlow());
    }

    private static String interval(Estimate<Time> time) {
        return QuantityText.round(time.si(), 2) + " s (95 % interval "
                + QuantityText.round(Kind.TIME.si(time.lower(0.95)), 2) + " s to "
                + QuantityText.round(Kind.TIME.si(time.upper(0.95)), 2) + " s)";
    }

    private static String hours(Consumable part) {
        return ReportText.of(Kind.TIME, part.replacementTime(FAILURE_PROBABILITY), Units.HOUR);
    }

    private String contributions() {
        List<String> main = new ArrayList<>();
        for (Map.Entry<String, Double> driver : cost.drivers().entrySet()) {
            if (main.size() < MAX_CONTRIBUTIONS) {
                main.add(driver.getKey() + " " + QuantityText.round(100 * driver.getValue(), 2) + " %");
            }
        }
        return main.isEmpty() ? "none" : String.join(", ", main) + " of the cost variance";
    }

    /**
     * Returns time and cost of the batch.
     *
     * @return the cost
     */
    public BatchCost cost() {
        return cost;
    }

    /**
     * Returns the cautions.
     *
     * @return the cautions
     */
    public List<Caution> cautions() {
        List<Caution> all = new ArrayList<>(pierce.cautions());
        if (report.program().codes().dwell() == DwellForm.MACHINE
                && pierce.time().si() > 0) {
            all.add(Caution.warning(Message.of(
                            "machine-waits",
                            "the program has no dwell: the machine must wait after each jet on until the"
                                    + " jet is through, {time}, up to {longest} (95 %)")
                    .with("time", Kind.TIME, pierce.time().si(), Units.SECOND)
                    .with("longest", Kind.TIME, Kind.TIME.si(pierce.time().upper(0.95)), Units.SECOND)));
        }
        all.addAll(cost.total().cautions());
        all.addAll(support.cautions());
        return all;
    }
}
