package dev.waterjet.cost;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/**
 * Cost rates of a running jet in any currency.
 *
 * <p>The rate per hour covers machine, staff, energy, water and wear; the rate per kilogram covers abrasive and its disposal.
 */
public final class CostRates implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final double SECONDS_PER_HOUR = 3600;

    private final double perHour;
    private final double perKilogram;

    private CostRates(double perHour, double perKilogram) {
        this.perHour = Require.notNegative("cost per hour", perHour, Units.ONE);
        this.perKilogram = Require.notNegative("cost per kilogram of abrasive", perKilogram, Units.ONE);
        Require.positive("cost of the running jet", perHour + perKilogram, Units.ONE);
    }

    /**
     * Returns cost rates.
     *
     * @param perHour cost of an hour of cutting without abrasive, zero or more
     * @param perKilogram cost of a kilogram of abrasive, zero or more; not both zero
     * @return the rates
     */
    public static CostRates of(double perHour, double perKilogram) {
        return new CostRates(perHour, perKilogram);
    }

    /**
     * Returns the cost of one hour of cutting without abrasive.
     *
     * @return the cost
     */
    public double perHour() {
        return perHour;
    }

    /**
     * Returns the cost of one kilogram of abrasive.
     *
     * @return the cost
     */
    public double perKilogram() {
        return perKilogram;
    }

    /**
     * Returns the cost of one metre of cut.
     *
     * @param feed feed rate, above 0
     * @param abrasiveFlow abrasive flow rate, 0 or more
     * @return the cost
     */
    public double perMetre(Quantity<Speed> feed, Quantity<MassFlow> abrasiveFlow) {
        double feedSi = Require.positive("feed", Kind.SPEED.si(feed), Units.MILLIMETRE_PER_MINUTE);
        return perMetreSi(feedSi, Kind.MASS_FLOW.si(abrasiveFlow));
    }

    double perMetreSi(double feedMPerS, double abrasiveKgPerS) {
        return (perHour / SECONDS_PER_HOUR + perKilogram * abrasiveKgPerS) / feedMPerS;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CostRates that && perHour == that.perHour && perKilogram == that.perKilogram;
    }

    @Override
    public int hashCode() {
        return Objects.hash(perHour, perKilogram);
    }

    @Override
    public String toString() {
        return perHour + " per hour, " + perKilogram + " per kg of abrasive";
    }
}
