package dev.waterjet.cost;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.uncertainty.UncertaintyBudget;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Time;

/** Time and cost of a batch. Amounts of money are plain numbers in the currency of the prices. */
public final class BatchCost implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final String currency;
    private final int parts;
    private final EnumMap<CostItem, Double> items;
    private final Estimate<Time> time;
    private final Estimate<Dimensionless> total;
    private final LinkedHashMap<String, Double> drivers;

    private BatchCost(
            String currency,
            int parts,
            Map<CostItem, Double> items,
            Estimate<Time> time,
            Estimate<Dimensionless> total,
            Map<String, Double> drivers) {
        this.currency = currency;
        this.parts = parts;
        this.items = new EnumMap<>(items);
        this.time = time;
        this.total = total;
        this.drivers = new LinkedHashMap<>(drivers);
    }

    static BatchCost of(
            Prices rates, int parts, Map<CostItem, Double> items, UncertaintyBudget time, UncertaintyBudget total) {
        return new BatchCost(
                rates.currency(),
                parts,
                items,
                Estimate.withinFactor(Kind.TIME, time.value(), time.standardUncertainty() / time.value(), List.of()),
                money(total.value(), total.standardUncertainty(), rates.unpriced()),
                drivers(total));
    }

    private static Estimate<Dimensionless> money(double value, double uncertainty, List<CostItem> unpriced) {
        List<Caution> cautions = unpriced.isEmpty()
                ? List.of()
                : List.of(Caution.notice(
                        "unpriced",
                        "no price was given for "
                                + String.join(
                                        ", ",
                                        unpriced.stream().map(CostItem::label).toList())));
        return Estimate.of(Kind.RATIO, value, uncertainty).with(cautions);
    }

    private static Map<String, Double> drivers(UncertaintyBudget total) {
        List<String> names = new ArrayList<>(total.names());
        names.removeIf(name -> total.share(name) == 0);
        names.sort(Comparator.comparingDouble(total::share).reversed());
        Map<String, Double> shares = new LinkedHashMap<>();
        names.forEach(name -> shares.put(name, total.share(name)));
        return shares;
    }

    /**
     * Returns the time from set-up to the last part.
     *
     * @return the time
     */
    public Estimate<Time> time() {
        return time;
    }

    /**
     * Returns the cost of the batch.
     *
     * @return an amount of the currency
     */
    public Estimate<Dimensionless> total() {
        return total;
    }

    /**
     * Returns the cost of one part.
     *
     * @return an amount of the currency
     */
    public Estimate<Dimensionless> perPart() {
        return Estimate.of(Kind.RATIO, total.si() / parts, total.standardUncertaintySi() / parts)
                .with(total.cautions());
    }

    /**
     * Returns the cost of the batch by item.
     *
     * @return an amount of the currency for each item, unmodifiable
     */
    public Map<CostItem, Double> items() {
        return Collections.unmodifiableMap(items);
    }

    /**
     * Returns the main contributions to the uncertainty of the cost: share of its variance by input, in descending order.
     *
     * @return shares from 0 to 1 by name of the input, unmodifiable; empty if nothing is uncertain
     */
    public Map<String, Double> drivers() {
        return Collections.unmodifiableMap(drivers);
    }

    /**
     * Returns the name or sign of the currency.
     *
     * @return the currency
     */
    public String currency() {
        return currency;
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("cost of a batch")
                .put("currency", currency)
                .put("parts", parts)
                .put("time", time)
                .put("total", total)
                .put("per_part", perPart());
        items.forEach((item, amount) -> description.put(item.name().toLowerCase(Locale.ROOT), amount));
        drivers.forEach((name, share) -> description.put("share_of_" + name.replaceAll("[ -]", "_"), share));
        return description.map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof BatchCost that
                && currency.equals(that.currency)
                && parts == that.parts
                && items.equals(that.items)
                && time.equals(that.time)
                && total.equals(that.total)
                && drivers.equals(that.drivers);
    }

    @Override
    public int hashCode() {
        return Objects.hash(currency, parts, items, time, total, drivers);
    }

    @Override
    public String toString() {
        return parts + " parts in " + QuantityText.round(time.si() / 3600, 3) + " h for "
                + QuantityText.round(total.si(), 4) + " +/- " + QuantityText.round(total.standardUncertaintySi(), 2)
                + " " + currency;
    }
}
