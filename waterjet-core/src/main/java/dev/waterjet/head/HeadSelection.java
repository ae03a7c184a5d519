package dev.waterjet.head;

import dev.waterjet.jet.Abrasive;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Finding;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;

/**
 * Result of trying every head of an inventory on a part: feasible heads, and rejected heads with the reasons.
 *
 * @param requirement requirements of the part
 * @param feasible feasible heads, in the order of the inventory
 * @param rejected rejected heads, in the order of the inventory
 */
public record HeadSelection(PartRequirement requirement, List<HeadCandidate> feasible, List<Rejected> rejected)
        implements Described {

    /**
     * Keeps unmodifiable copies of the lists.
     *
     * @param requirement requirements of the part
     * @param feasible feasible heads
     * @param rejected rejected heads
     */
    public HeadSelection {
        Objects.requireNonNull(feasible, "feasible");
        Objects.requireNonNull(rejected, "rejected");
        Objects.requireNonNull(requirement, "requirement");
        feasible = List.copyOf(feasible);
        rejected = List.copyOf(rejected);
    }

    /** Rule that a head must satisfy. */
    @SuppressWarnings("ImmutableEnumChecker")
    public enum Rule {
        /** Bore of the focusing tube over that of the orifice. */
        BORE_RATIO(Kind.RATIO, Units.ONE),
        /** Length of the focusing tube over its bore. */
        TUBE_LENGTH(Kind.RATIO, Units.ONE),
        /** Maximum grain size over the bore of the focusing tube, against clogging. */
        GRAIN_SIZE(Kind.RATIO, Units.ONE),
        /** Loading ratio of abrasive to water. */
        LOADING(Kind.RATIO, Units.ONE),
        /** Rated hydraulic power of the jet, which the pump must deliver. */
        POWER(Kind.POWER, Units.KILOWATT),
        /** Minimum feed rate. */
        FEED(Kind.SPEED, Units.MILLIMETRE_PER_MINUTE),
        /** Inner radius that the kerf leaves. */
        INNER_RADIUS(Kind.LENGTH, Units.MILLIMETRE),
        /** Kerf width, which must not exceed the slot. */
        SLOT_WIDTH(Kind.LENGTH, Units.MILLIMETRE),
        /** Deviation of the walls from straight and square. */
        WALLS(Kind.LENGTH, Units.MILLIMETRE);

        private final Kind<?> kind;
        private final Unit<?> unit;

        Rule(Kind<?> kind, Unit<?> unit) {
            this.kind = kind;
            this.unit = unit;
        }

        /** {@return the name in words, such as "bore ratio"} */
        public String label() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }

        private Message message() {
            return switch (this) {
                case BORE_RATIO ->
                    Message.of("bore-ratio", "the focusing tube is {value} orifice bores wide; the limit is {limit}");
                case TUBE_LENGTH ->
                    Message.of("tube-length", "the focusing tube is {value} bores long; the limit is {limit}");
                case GRAIN_SIZE ->
                    Message.of(
                            "grain-size",
                            "the maximum grain size is {value} of the tube bore; above {limit} the tube can clog");
                case LOADING -> Message.of("loading-ratio", "the loading ratio is {value}; the limit is {limit}");
                case POWER -> Message.of("pump-power", "the jet requires {value}; the pump delivers {limit}");
                case FEED -> Message.of("feed-too-low", "the feed rate is {value}; the minimum is {limit}");
                case INNER_RADIUS ->
                    Message.of("inner-radius", "the kerf leaves an inner radius of {value}; the part has {limit}");
                case SLOT_WIDTH -> Message.of("slot-width", "the kerf is {value} wide; the slot width is {limit}");
                case WALLS -> Message.of("wall-tolerance", "the walls deviate by {value}; the tolerance is {limit}");
            };
        }
    }

    /** Violated rule with the value of the head and the limit, in SI. */
    record Violation(Rule rule, double valueSi, double limitSi) {

        Finding finding() {
            Message message = rule.message()
                    .with("value", rule.kind, valueSi, rule.unit)
                    .with("limit", rule.kind, limitSi, rule.unit);
            return new Finding(false, message, List.of(), null);
        }
    }

    /** Head that violates one or more rules. */
    public static final class Rejected implements Described {

        private record Values(
                double orificeM,
                double tubeM,
                double lengthM,
                Abrasive abrasive,
                double flowKgPerS,
                List<Violation> violations) {}

        private final Values values;

        Rejected(
                double orificeM,
                double tubeM,
                double lengthM,
                Abrasive abrasive,
                double flowKgPerS,
                List<Violation> violations) {
            this.values = new Values(orificeM, tubeM, lengthM, abrasive, flowKgPerS, List.copyOf(violations));
        }

        /** {@return the bore of the orifice} */
        public Quantity<Length> orificeBore() {
            return Kind.LENGTH.of(values.orificeM);
        }

        /** {@return the bore of the focusing tube} */
        public Quantity<Length> tubeBore() {
            return Kind.LENGTH.of(values.tubeM);
        }

        /** {@return the length of the focusing tube} */
        public Quantity<Length> tubeLength() {
            return Kind.LENGTH.of(values.lengthM);
        }

        /** {@return the abrasive} */
        public Abrasive abrasive() {
            return values.abrasive;
        }

        /** {@return the abrasive flow rate} */
        public Quantity<MassFlow> abrasiveFlow() {
            return Kind.MASS_FLOW.of(values.flowKgPerS);
        }

        /** {@return the violated rules, one or more} */
        public List<Rule> rules() {
            return values.violations.stream().map(Violation::rule).toList();
        }

        /** {@return a finding with value and limit for each violated rule} */
        public List<Finding> findings() {
            return values.violations.stream().map(Violation::finding).toList();
        }

        @Override
        public Map<String, Object> describe() {
            return Description.of("rejected head")
                    .put("orifice_bore", Kind.LENGTH, values.orificeM)
                    .put("tube_bore", Kind.LENGTH, values.tubeM)
                    .put("tube_length", Kind.LENGTH, values.lengthM)
                    .put("abrasive", values.abrasive)
                    .put("abrasive_flow", Kind.MASS_FLOW, values.flowKgPerS)
                    .put("findings", findings())
                    .map();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Rejected that && values.equals(that.values);
        }

        @Override
        public int hashCode() {
            return values.hashCode();
        }

        @Override
        public String toString() {
            return "rejected head: "
                    + String.join(", ", rules().stream().map(Rule::label).toList());
        }
    }

    /**
     * Returns the feasible heads, the best first.
     *
     * @param ranking ranking criterion
     * @return the heads; empty if none is feasible
     */
    public List<HeadCandidate> ranked(HeadSelector.Ranking ranking) {
        Objects.requireNonNull(ranking, "ranking");
        return feasible.stream().sorted(ranking.order()).toList();
    }

    /**
     * Returns the best head.
     *
     * @param ranking ranking criterion
     * @return the head that no other of the inventory surpasses
     * @throws NoSolutionException if none is feasible, with the rejections
     */
    public HeadCandidate best(HeadSelector.Ranking ranking) {
        Objects.requireNonNull(ranking, "ranking");
        return feasible.stream()
                .min(ranking.order())
                .orElseThrow(() -> new NoSolutionException(
                        Message.of("no-feasible-head", "no head of the inventory is feasible; rejections: {rejections}")
                                .with("rejections", rejections())));
    }

    /**
     * Returns the Pareto front of time and cost: heads of which none is both faster and cheaper than another, the fastest first.
     *
     * @return the front; empty if no head is feasible
     */
    public List<HeadCandidate> paretoFront() {
        List<HeadCandidate> front = new ArrayList<>();
        double cheapest = Double.POSITIVE_INFINITY;
        for (HeadCandidate candidate : ranked(HeadSelector.Ranking.TIME)) {
            if (candidate.cost() < cheapest) {
                front.add(candidate);
                cheapest = candidate.cost();
            }
        }
        return Collections.unmodifiableList(front);
    }

    /**
     * Returns the number of heads that violate each rule. A head that violates several counts for each.
     *
     * @return counts by rule; a rule that no head violates has no entry
     */
    public Map<Rule, Integer> rejectionCounts() {
        Map<Rule, Integer> counts = new EnumMap<>(Rule.class);
        for (Rejected head : rejected) {
            head.values.violations.forEach(violation -> counts.merge(violation.rule(), 1, Integer::sum));
        }
        return counts;
    }

    /**
     * Returns the reason for the best head, for people.
     *
     * @param ranking ranking criterion
     * @return one clause
     * @throws NoSolutionException if no head is feasible
     */
    public String explanation(HeadSelector.Ranking ranking) {
        Objects.requireNonNull(ranking, "ranking");
        best(ranking);
        return (ranking == HeadSelector.Ranking.TIME ? "fastest" : "cheapest") + " of " + feasible.size()
                + " feasible combinations (" + (feasible.size() + rejected.size()) + " tried)";
    }

    private String rejections() {
        List<String> counts = new ArrayList<>();
        rejectionCounts().forEach((rule, count) -> counts.add(rule.label() + " " + count));
        return counts.isEmpty() ? "none" : String.join(", ", counts);
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("head selection")
                .put("requirement", requirement)
                .put("feasible", feasible.size())
                .put("rejected", rejected.size())
                .put("pareto_front", paretoFront());
        rejectionCounts()
                .forEach((rule, count) ->
                        description.put("rejected_by_" + rule.name().toLowerCase(Locale.ROOT), (int) count));
        return description.map();
    }

    @Override
    public String toString() {
        return feasible.size() + " feasible heads, " + rejected.size() + " rejected";
    }
}
