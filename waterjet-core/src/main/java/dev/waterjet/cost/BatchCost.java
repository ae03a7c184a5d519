package dev.waterjet.cost;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
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
import java.util.stream.Collectors;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Time;

/**
 * Time and cost of a batch. Amounts of money are plain numbers in the currency of the shop.
 *
 * @param currency name or symbol of the currency
 * @param parts number of parts, 1 or more
 * @param items expected cost of the batch by item, unmodifiable
 * @param time time from set-up to the last part, at the medians of the inputs
 * @param total expected cost of the batch, with its standard uncertainty
 * @param drivers share of the variance of the cost by name of the input, 0 to 1, the largest first, unmodifiable; empty if
 *     nothing is uncertain
 */
public record BatchCost(
        String currency,
        int parts,
        Map<CostItem, Double> items,
        Estimate<Time> time,
        Estimate<Dimensionless> total,
        Map<String, Double> drivers)
        implements Described, Serializable {

    /**
     * Checks the numbers and copies the maps.
     *
     * @param currency name or symbol of the currency
     * @param parts number of parts, 1 or more
     * @param items expected cost of the batch by item, unmodifiable
     * @param time time from set-up to the last part, at the medians of the inputs
     * @param total expected cost of the batch, with its standard uncertainty
     * @param drivers share of the variance of the cost by name of the input, 0 to 1, the largest first, unmodifiable; empty if
     *     nothing is uncertain
     */
    public BatchCost {
        Objects.requireNonNull(currency, "currency");
        Require.atLeast("number of parts", parts, 1, Units.ONE, "");
        Objects.requireNonNull(items, "items");
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(total, "total");
        Objects.requireNonNull(drivers, "drivers");
        Map<CostItem, Double> amounts = new EnumMap<>(CostItem.class);
        items.forEach(
                (item, amount) -> amounts.put(item, Require.notNegative("cost of " + item.label(), amount, Units.ONE)));
        items = Collections.unmodifiableMap(amounts);
        Map<String, Double> shares = new LinkedHashMap<>();
        drivers.forEach((name, share) -> shares.put(
                Objects.requireNonNull(name, "name"), Require.notNegative("share of " + name, share, Units.ONE)));
        drivers = Collections.unmodifiableMap(shares);
    }

    /** Budgets of time and cost. */
    record Budgets(UncertaintyBudget time, UncertaintyBudget total) {

        static Budgets of(UncertaintyBudget time, UncertaintyBudget total) {
            return new Budgets(time, total);
        }
    }

    static BatchCost of(Prices prices, int parts, Map<CostItem, Double> items, Budgets budgets) {
        UncertaintyBudget time = budgets.time();
        UncertaintyBudget total = budgets.total();
        return new BatchCost(
                prices.currency(),
                parts,
                items,
                Estimate.withinFactor(Kind.TIME, time.value(), time.standardUncertainty() / time.value(), List.of()),
                money(total.value(), total.standardUncertainty(), prices.unpriced()),
                drivers(total));
    }

    private static Estimate<Dimensionless> money(double value, double uncertainty, List<CostItem> unpriced) {
        Estimate<Dimensionless> amount = Estimate.of(Kind.RATIO, value, uncertainty);
        return unpriced.isEmpty()
                ? amount
                : amount.with(List.of(Caution.notice(Message.of("unpriced", "no price was given for {items}")
                        .with("items", unpriced.stream().map(CostItem::label).collect(Collectors.joining(", "))))));
    }

    private static Map<String, Double> drivers(UncertaintyBudget total) {
        List<String> names = new ArrayList<>(total.names());
        names.removeIf(name -> total.share(name) == 0);
        names.sort(Comparator.comparingDouble(total::share).reversed());
        Map<String, Double> shares = new LinkedHashMap<>();
        names.forEach(name -> shares.put(name, total.share(name)));
        return shares;
    }

    /** {@return the expected cost of one part, an amount of the currency} */
    public Estimate<Dimensionless> perPart() {
        return Estimate.of(Kind.RATIO, total.si() / parts, total.standardUncertaintySi() / parts)
                .with(total.cautions());
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
    public String toString() {
        return parts + " parts in " + QuantityText.round(time.si() / 3600, 3) + " h for "
                + QuantityText.round(total.si(), 4) + " +/- " + QuantityText.round(total.standardUncertaintySi(), 2)
                + " " + currency;
    }
}
