package dev.waterjet.head;

import dev.waterjet.jet.Abrasive;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What came of trying every head of a list on a part: those that serve, and why the others do not. */
public final class HeadSelection implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final PartRequirement demand;
    private final List<HeadCandidate> fit;
    private final List<Refused> refused;

    private HeadSelection(PartRequirement demand, List<HeadCandidate> fit, List<Refused> refused) {
        this.demand = demand;
        this.fit = fit;
        this.refused = refused;
    }

    static HeadSelection of(PartRequirement demand, List<HeadCandidate> fit, List<Refused> refused) {
        return new HeadSelection(demand, Collections.unmodifiableList(fit), Collections.unmodifiableList(refused));
    }

    /**
     * A head that does not serve.
     *
     * @param orificeM bore of its orifice in m
     * @param tubeM bore of its focusing tube in m
     * @param lengthM length of the tube in m
     * @param abrasive its abrasive
     * @param flowKgPerS flow of abrasive in kg/s
     * @param faults why, one or more
     */
    public record Refused(
            double orificeM, double tubeM, double lengthM, Abrasive abrasive, double flowKgPerS, List<HeadFault> faults)
            implements Described, Serializable {

        /**
         * Keeps an unmodifiable copy of the faults.
         *
         * @param orificeM bore of its orifice in m
         * @param tubeM bore of its focusing tube in m
         * @param lengthM length of the tube in m
         * @param abrasive its abrasive
         * @param flowKgPerS flow of abrasive in kg/s
         * @param faults why, one or more
         */
        public Refused {
            faults = List.copyOf(faults);
        }

        @Override
        public Map<String, Object> describe() {
            return Description.of("refused head")
                    .put("orifice", Kind.LENGTH, orificeM)
                    .put("tube", Kind.LENGTH, tubeM)
                    .put("length", Kind.LENGTH, lengthM)
                    .put("abrasive", abrasive)
                    .put("abrasive_flow", Kind.MASS_FLOW, flowKgPerS)
                    .put("faults", faults)
                    .map();
        }
    }

    /**
     * The heads that serve, the best first.
     *
     * @param by what to rank them by
     * @return the heads; empty if none serves
     */
    public List<HeadCandidate> ranked(RankBy by) {
        return fit.stream().sorted(by.order()).toList();
    }

    /**
     * The best head.
     *
     * @param by what to rank them by
     * @return the head that no other of the list beats
     * @throws NoHeadException if none serves, with the reasons
     */
    public HeadCandidate best(RankBy by) {
        return fit.stream().min(by.order()).orElseThrow(() -> new NoHeadException(whyNot()));
    }

    /**
     * The trade-off between time and cost: heads of which none is both quicker and cheaper than another, the quickest first.
     *
     * @return the front; empty if no head serves
     */
    public List<HeadCandidate> paretoFront() {
        List<HeadCandidate> front = new ArrayList<>();
        double cheapest = Double.POSITIVE_INFINITY;
        for (HeadCandidate trial : ranked(RankBy.TIME)) {
            if (trial.cost() < cheapest) {
                front.add(trial);
                cheapest = trial.cost();
            }
        }
        return List.copyOf(front);
    }

    /**
     * The heads that do not serve, each with its faults, in the order of the list.
     *
     * @return the refused heads, unmodifiable
     */
    public List<Refused> refused() {
        return refused;
    }

    /**
     * How many heads break each rule. A head that breaks several counts for each.
     *
     * @return counts by rule; a rule that none breaks has no entry
     */
    public Map<HeadFault.Rule, Integer> rejectionCounts() {
        Map<HeadFault.Rule, Integer> counts = new EnumMap<>(HeadFault.Rule.class);
        for (Refused head : refused) {
            head.faults().forEach(fault -> counts.merge(fault.rule(), 1, Integer::sum));
        }
        return counts;
    }

    /**
     * Why the best head was chosen, for a person.
     *
     * @param by what it was ranked by
     * @return one or two sentences
     * @throws NoHeadException if none serves
     */
    public String explanation(RankBy by) {
        HeadCandidate best = best(by);
        String rank = by == RankBy.TIME ? "the quickest" : "the cheapest";
        return "Of " + (fit.size() + refused.size()) + " heads " + fit.size() + " serve; this is " + rank + ", at "
                + QuantityText.round(best.timeSi(), 3) + " s a part. " + whyNot();
    }

    private String whyNot() {
        if (refused.isEmpty()) {
            return "None was refused.";
        }
        List<String> reasons = new ArrayList<>();
        rejectionCounts()
                .forEach((rule, count) ->
                        reasons.add(rule.name().toLowerCase(Locale.ROOT).replace('_', ' ') + " " + count));
        return "Refused: " + String.join(", ", reasons) + ".";
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("selection of a head")
                .put("demand", demand)
                .put("serving", fit.size())
                .put("refused", refused.size())
                .put("front", paretoFront());
        rejectionCounts()
                .forEach((rule, count) ->
                        description.put("refused_for_" + rule.name().toLowerCase(Locale.ROOT), (int) count));
        return description.map();
    }

    @Override
    public String toString() {
        return fit.size() + " heads serve, " + refused.size() + " do not";
    }
}
