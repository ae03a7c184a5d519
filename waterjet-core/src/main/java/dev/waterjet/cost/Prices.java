package dev.waterjet.cost;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

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

    private final String currency;
    private final EnumMap<CostItem, Double> prices;
    private final EnumMap<CostItem, Double> uncertainties;
    private final double pumpEfficiency;
    private final List<Consumable> ownParts;

    private Prices(
            String currency,
            Map<CostItem, Double> prices,
            Map<CostItem, Double> uncertainties,
            double pumpEfficiency,
            List<Consumable> ownParts) {
        this.currency = Objects.requireNonNull(currency, "currency");
        this.prices = new EnumMap<>(CostItem.class);
        this.prices.putAll(prices);
        this.uncertainties = new EnumMap<>(CostItem.class);
        this.uncertainties.putAll(uncertainties);
        this.pumpEfficiency = Require.positive("efficiency of the pump", pumpEfficiency, Units.ONE);
        Require.atMost("efficiency of the pump", pumpEfficiency, 1, Units.ONE, "efficiency cannot exceed 1");
        this.ownParts = List.copyOf(ownParts);
    }

    /**
     * Returns an empty list of prices.
     *
     * @param currency name or sign of the currency, for reports
     * @return the prices
     */
    public static Prices of(String currency) {
        return new Prices(currency, Map.of(), Map.of(), DEFAULT_PUMP_EFFICIENCY, List.of());
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
        Map<CostItem, Double> more = new EnumMap<>(prices);
        String name = "price of " + item.label();
        Require.atMost(name, price, MAX_PRICE, Units.ONE, "");
        more.put(item, Require.notNegative(name, price, Units.ONE));
        Map<CostItem, Double> spread = new EnumMap<>(uncertainties);
        spread.put(
                item,
                Require.notNegative("uncertainty of the price of " + item.label(), relativeUncertainty, Units.PERCENT));
        return new Prices(currency, more, spread, pumpEfficiency, ownParts);
    }

    /**
     * Returns these prices with another pump efficiency; the default is 0.65.
     *
     * @param efficiency hydraulic power over power from the mains, above 0 to 1
     * @return the prices with that efficiency
     */
    public Prices withPumpEfficiency(double efficiency) {
        return new Prices(currency, prices, uncertainties, efficiency, ownParts);
    }

    /**
     * Returns these prices with service lives measured in the shop.
     *
     * @param orifice orifice with its life
     * @param tube focusing tube with its life
     * @return the prices with those lives
     */
    public Prices withLives(Consumable orifice, Consumable tube) {
        return new Prices(currency, prices, uncertainties, pumpEfficiency, List.of(orifice, tube));
    }

    /**
     * Returns the currency.
     *
     * @return its name or sign
     */
    public String currency() {
        return currency;
    }

    /**
     * Returns the price of an item.
     *
     * @param item item of cost
     * @return the price per {@link CostItem#measure()}; 0 if none was given
     */
    public double price(CostItem item) {
        return Optional.ofNullable(prices.get(item)).orElse(0.0);
    }

    /**
     * Returns the items without a price.
     *
     * @return the items; empty if all have one
     */
    public List<CostItem> unpriced() {
        List<CostItem> open = new ArrayList<>(List.of(CostItem.values()));
        open.removeAll(prices.keySet());
        return List.copyOf(open);
    }

    /**
     * Returns the orifice with its life: measured in the shop if given, otherwise from the literature.
     *
     * @param jewel jewel of the orifice
     * @return the consumable
     */
    public Consumable orificeLife(Orifice.Jewel jewel) {
        return ownParts.isEmpty() ? Consumable.orifice(jewel) : ownParts.get(0);
    }

    /**
     * Returns the focusing tube with its life: measured in the shop if given, otherwise from the literature.
     *
     * @return the consumable
     */
    public Consumable tubeLife() {
        return ownParts.isEmpty() ? Consumable.focusingTube() : ownParts.get(1);
    }

    /**
     * Returns the cost of one jet-on hour without the machine: water, abrasive, energy, sludge of the abrasive, wear. A
     * consumable is replaced on failure; its price is divided by the median of its life.
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
        double abrasiveKg = jet.abrasiveFlowSi() * S_PER_HOUR;
        double energyJ = Kind.POWER.si(jet.water().ratedHydraulicPower()) / pumpEfficiency * S_PER_HOUR;
        Map<CostItem, Double> hourly = new EnumMap<>(CostItem.class);
        hourly.put(CostItem.WATER, price(CostItem.WATER) * jet.water().volumeFlowSi() * S_PER_HOUR);
        hourly.put(CostItem.ABRASIVE, price(CostItem.ABRASIVE) * abrasiveKg);
        hourly.put(CostItem.ENERGY, price(CostItem.ENERGY) * energyJ / J_PER_KILOWATT_HOUR);
        hourly.put(CostItem.SLUDGE, price(CostItem.SLUDGE) * abrasiveKg);
        hourly.put(
                CostItem.ORIFICE,
                price(CostItem.ORIFICE)
                        * S_PER_HOUR
                        / orificeLife(jet.head().orifice().jewel()).medianSi());
        hourly.put(CostItem.TUBE, price(CostItem.TUBE) * S_PER_HOUR / tubeLife().medianSi());
        return hourly;
    }

    double uncertainty(CostItem item) {
        return Optional.ofNullable(uncertainties.get(item)).orElse(0.0);
    }

    double pumpEfficiency() {
        return pumpEfficiency;
    }

    @Override
    public Map<String, Object> describe() {
        Description description =
                Description.of("rates").put("currency", currency).put("pump_efficiency", pumpEfficiency);
        prices.forEach((item, price) -> {
            String label = "price_of_" + item.name().toLowerCase(Locale.ROOT);
            description.put(label + "_per_" + item.measure().replaceAll("[ -]", "_"), price);
            description.put("uncertainty_of_" + label, uncertainty(item));
        });
        if (!ownParts.isEmpty()) {
            description.put("orifice_life", ownParts.get(0)).put("tube_life", ownParts.get(1));
        }
        return description.map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Prices that
                && currency.equals(that.currency)
                && prices.equals(that.prices)
                && uncertainties.equals(that.uncertainties)
                && pumpEfficiency == that.pumpEfficiency
                && ownParts.equals(that.ownParts);
    }

    @Override
    public int hashCode() {
        return Objects.hash(currency, prices, uncertainties, pumpEfficiency, ownParts);
    }

    @Override
    public String toString() {
        return "rates in " + currency + " " + prices;
    }
}
