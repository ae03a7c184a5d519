package dev.waterjet.cost;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.measure.Kind;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Setups;
import dev.waterjet.reference.Subjects;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/** Subjects of the reference suite in this package. */
public final class CostSubjects implements Subjects {

    @Override
    public Map<String, Subject> subjects() {
        return Map.of(
                "consumed-water", in -> Computed.of(Kind.VOLUME, consumption(in).water()),
                "consumed-abrasive",
                        in -> Computed.of(Kind.MASS, consumption(in).abrasive()),
                "consumed-energy",
                        in -> Computed.of(Kind.ENERGY, consumption(in).energy()),
                "cost-of-jet-hour", CostSubjects::hour,
                "life-failure-probability", in -> Computed.of(life(in).failureProbability(in.get("age", Kind.TIME))),
                "life-mean", in -> Computed.of(Kind.TIME, life(in).meanLife()),
                "life-replacement-time",
                        in -> Computed.of(Kind.TIME, life(in).replacementTime(in.number("probability"))),
                "life-mean-service", in -> Computed.of(Kind.TIME, life(in).meanService(in.get("age", Kind.TIME))),
                "life-remaining",
                        in -> Computed.of(
                                Kind.TIME, life(in).remainingLife(in.get("age", Kind.TIME), in.number("probability"))));
    }

    private static Consumption consumption(Inputs in) {
        return Consumption.of(Setups.abrasiveJet(in), in.get("time", Kind.TIME), in.number("pump-efficiency"));
    }

    /** Price of one item of an hour. */
    private static Computed hour(Inputs in) {
        CostItem item = CostItem.valueOf(in.text("item").toUpperCase(Locale.ROOT));
        Prices prices =
                Prices.of("units").with(item, in.number("price")).withPumpEfficiency(in.number("pump-efficiency"));
        return Computed.of(
                Objects.requireNonNull(prices.jetItems(Setups.abrasiveJet(in)).get(item), "item"));
    }

    private static Consumable life(Inputs in) {
        return Consumable.of(
                "part",
                in.get("shortest", Kind.TIME),
                in.get("longest", Kind.TIME),
                Evidence.of(EvidenceGrade.ASSUMED, Source.of("row of the suite")));
    }
}
