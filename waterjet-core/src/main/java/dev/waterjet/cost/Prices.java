package dev.waterjet.cost;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Prices of a shop: plain numbers in a named currency.
 *
 * <p>An item without a price costs nothing and is listed by {@link #unpriced()}.
 */
public final class Prices implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Middle of 0.6 to 0.7, which is typical of intensifiers (common practice, no source). */
    private static final double DEFAULT_PUMP_EFFICIENCY = 0.65;

    /** Larger prices are refused, so that sums stay finite. */
    private static final double MAX_PRICE = 1e12;

    private static final double S_PER_HOUR = 3600;
    private static final double J_PER_KILOWATT_HOUR = 3.6e6;

    /** Checked content, and the serial form; the lives of the literature where none are given. */
    private record Values(
            String currency,
            Map<CostItem, Double> prices,
            Map<CostItem, Double> uncertainties,
            double pumpEfficiency,
            @Nullable Consumable orifice,
            @Nullable Consumable tube)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(currency, "currency");
            Map<CostItem, Double> amounts = new EnumMap<>(CostItem.class);
            prices.forEach((item, price) ->
                    amounts.put(item, Require.between("price of " + item.label(), price, 0, MAX_PRICE, Units.ONE, "")));
            prices = Collections.unmodifiableMap(amounts);
            Map<CostItem, Double> spreads = new EnumMap<>(CostItem.class);
            uncertainties.forEach((item, spread) ->
                    spreads.put(item, Require.relativeUncertainty("price of " + item.label(), spread, "")));
            uncertainties = Collections.unmodifiableMap(spreads);
            pumpEfficiency = requireEfficiency(pumpEfficiency);
        }

        private Object readResolve() {
            return new Prices(this);
        }
    }

    private final transient Values values;

    private Prices(Values values) {
        this.values = values;
    }

    static double requireEfficiency(double efficiency) {
        Require.positive("efficiency of the pump", efficiency, Units.ONE);
        return Require.atMost("efficiency of the pump", efficiency, 1, Units.ONE, "efficiency cannot exceed 1");
    }

    /**
     * Returns an empty list of prices.
     *
     * @param currency name or sign of the currency, for reports
     * @return the prices
     */
    public static Prices of(String currency) {
        return new Prices(new Values(currency, Map.of(), Map.of(), DEFAULT_PUMP_EFFICIENCY, null, null));
    }

    /**
     * Returns these prices with an exact price.
     *
     * @param item item of cost
     * @param price price per {@link CostItem#measure()}, 0 to 1e12
     * @return the prices with that price
     */
    public Prices with(CostItem item, double price) {
        return with(item, price, 0);
    }

    /**
     * Returns these prices with a price and its uncertainty.
     *
     * @param item item of cost
     * @param price price per {@link CostItem#measure()}, 0 to 1e12
     * @param relativeUncertainty relative standard uncertainty of the price, zero or more
     * @return the prices with that price
     */
    public Prices with(CostItem item, double price, double relativeUncertainty) {
        Objects.requireNonNull(item, "item");
        Map<CostItem, Double> more = new LinkedHashMap<>(values.prices);
        more.put(item, price);
        Map<CostItem, Double> spread = new LinkedHashMap<>(values.uncertainties);
        spread.put(item, relativeUncertainty);
        return new Prices(
                new Values(values.currency, more, spread, values.pumpEfficiency, values.orifice, values.tube));
    }

    /**
     * Returns these prices with another pump efficiency; the default is 0.65.
     *
     * @param efficiency hydraulic power over power from the mains, above 0 to 1
     * @return the prices with that efficiency
     */
    public Prices withPumpEfficiency(double efficiency) {
        return new Prices(new Values(
                values.currency, values.prices, values.uncertainties, efficiency, values.orifice, values.tube));
    }

    /**
     * Returns these prices with service lives measured in the shop.
     *
     * @param orifice orifice with its life
     * @param tube focusing tube with its life
     * @return the prices with those lives
     */
    public Prices withLives(Consumable orifice, Consumable tube) {
        Objects.requireNonNull(orifice, "orifice");
        Objects.requireNonNull(tube, "tube");
        return new Prices(
                new Values(values.currency, values.prices, values.uncertainties, values.pumpEfficiency, orifice, tube));
    }

    /**
     * Returns the currency.
     *
     * @return its name or sign
     */
    public String currency() {
        return values.currency;
    }

    /**
     * Returns the price of an item.
     *
     * @param item item of cost
     * @return the price per {@link CostItem#measure()}; 0 if none was given
     */
    public double price(CostItem item) {
        return values.prices.getOrDefault(Objects.requireNonNull(item, "item"), 0.0);
    }

    /**
     * Returns the items without a price.
     *
     * @return the items; empty if all have one
     */
    public List<CostItem> unpriced() {
        List<CostItem> open = new ArrayList<>(List.of(CostItem.values()));
        open.removeAll(values.prices.keySet());
        return List.copyOf(open);
    }

    /**
     * Returns the orifice with its life: measured in the shop if given, otherwise from the literature.
     *
     * @param jewel jewel of the orifice
     * @return the consumable
     */
    public Consumable orificeLife(Orifice.Jewel jewel) {
        Objects.requireNonNull(jewel, "jewel");
        return values.orifice == null ? Consumable.orifice(jewel) : values.orifice;
    }

    /**
     * Returns the focusing tube with its life: measured in the shop if given, otherwise from the literature.
     *
     * @return the consumable
     */
    public Consumable tubeLife() {
        return values.tube == null ? Consumable.focusingTube() : values.tube;
    }

    /**
     * Returns the cost of one jet-on hour without the machine: water, abrasive, energy, sludge of the abrasive, wear. The
     * price of a consumable is divided by its mean life ({@link Consumable#meanLife}), the expected cost of its wear.
     *
     * @param jet the jet
     * @return amount of the currency per hour
     */
    public double jetHour(AbrasiveJet jet) {
        double hourly = 0;
        for (double amount : jetItems(jet).values()) {
            hourly += amount;
        }
        return hourly;
    }

    /**
     * Returns the cost of one hour of jet-on time by item.
     *
     * @param jet the jet
     * @return cost by item, in the currency of the prices
     */
    public Map<CostItem, Double> jetItems(AbrasiveJet jet) {
        Objects.requireNonNull(jet, "jet");
        double abrasiveKg = jet.abrasiveFlowSi() * S_PER_HOUR;
        double energyJ = Kind.POWER.si(jet.water().ratedHydraulicPower()) / values.pumpEfficiency * S_PER_HOUR;
        Map<CostItem, Double> hourly = new EnumMap<>(CostItem.class);
        hourly.put(CostItem.WATER, price(CostItem.WATER) * jet.water().volumeFlowSi() * S_PER_HOUR);
        hourly.put(CostItem.ABRASIVE, price(CostItem.ABRASIVE) * abrasiveKg);
        hourly.put(CostItem.ENERGY, price(CostItem.ENERGY) * energyJ / J_PER_KILOWATT_HOUR);
        hourly.put(CostItem.SLUDGE, price(CostItem.SLUDGE) * abrasiveKg);
        hourly.put(
                CostItem.ORIFICE,
                price(CostItem.ORIFICE)
                        * S_PER_HOUR
                        / orificeLife(jet.head().orifice().jewel()).meanLifeSi());
        hourly.put(CostItem.TUBE, price(CostItem.TUBE) * S_PER_HOUR / tubeLife().meanLifeSi());
        return hourly;
    }

    double uncertainty(CostItem item) {
        return values.uncertainties.getOrDefault(item, 0.0);
    }

    double pumpEfficiency() {
        return values.pumpEfficiency;
    }

    @Override
    public Map<String, Object> describe() {
        Description description =
                Description.of("prices").put("currency", values.currency).put("pump_efficiency", values.pumpEfficiency);
        values.prices.forEach((item, price) -> {
            String label = "price_of_" + item.name().toLowerCase(Locale.ROOT);
            description.put(label + "_per_" + item.measure().replaceAll("[ -]", "_"), price);
            description.put("uncertainty_of_" + label, uncertainty(item));
        });
        if (values.orifice != null && values.tube != null) {
            description.put("orifice_life", values.orifice).put("tube_life", values.tube);
        }
        return description.map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Prices that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "prices in " + values.currency + " " + values.prices;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
