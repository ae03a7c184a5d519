package dev.waterjet.cost;

import static dev.waterjet.measure.Measures.kilograms;
import static dev.waterjet.measure.Measures.minutes;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.measure.Kind;
import dev.waterjet.plan.Jobs;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import javax.measure.quantity.Time;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Each item of cost by itself, and the least of a cost. */
class CostItemsTest {

    private static final PartWork WORK =
            PartWork.of(Estimate.of(Kind.TIME, 90, 0)).withIdle(seconds(15)).withRemoved(kilograms(0.2));

    private static Batch batch(int parts) {
        return Batch.of(Jobs.JET, WORK, parts).withSheets(4, minutes(3)).withSetUp(minutes(12));
    }

    private static double item(Map<CostItem, Double> items, CostItem item) {
        return Objects.requireNonNull(items.get(item));
    }

    /** The mean of a log-normal price is its median times exp(s^2/2); it moves its own item only. */
    @ParameterizedTest
    @EnumSource
    void aPriceActsOnItsItem(CostItem item) {
        Map<CostItem, Double> plain = batch(10).expectedItems(Jobs.RATES);
        double price = Jobs.RATES.price(item);
        Map<CostItem, Double> dear = batch(10).expectedItems(Jobs.RATES.with(item, 3 * price, 0.4));
        for (CostItem other : CostItem.values()) {
            double factor = other == item ? 3 * Math.exp(0.08) : 1;
            assertThat(item(dear, other)).isEqualTo(factor * item(plain, other), within(1e-9 * item(dear, other)));
        }
        assertThat(item(plain, item)).isPositive();
    }

    @Test
    void itemsFollowPartsSheetsAndSetUp() {
        Map<CostItem, Double> items = batch(10).expectedItems(Jobs.RATES);
        double jetHours = 10 * 90 / 3600.0;
        assertThat(item(items, CostItem.MACHINE)).isEqualTo(90 * (10 * 105 + 3 * 180 + 720) / 3600.0, within(1e-9));
        assertThat(item(items, CostItem.SHEET)).isEqualTo(3 * 75, within(1e-9));
        assertThat(item(items, CostItem.SLUDGE)).isEqualTo(0.15 * (18 * jetHours + 10 * 0.2), within(1e-9));
        for (CostItem item : List.of(CostItem.WATER, CostItem.ABRASIVE, CostItem.ENERGY, CostItem.TUBE)) {
            double hourly = Objects.requireNonNull(Jobs.RATES.jetItems(Jobs.JET).get(item));
            assertThat(item(items, item)).isEqualTo(hourly * jetHours, within(1e-9));
        }
    }

    /** Ten parts of 90 s known to 20 % and 15 s known exactly, and 21 min for sheets and set-up. */
    @Test
    void theTimeIsAsUncertainAsItsCutting() {
        PartWork unsure = PartWork.of(Estimate.withinFactor(Kind.TIME, 90, 0.2, List.of()))
                .withIdle(seconds(15));
        Estimate<Time> time = Batch.of(Jobs.JET, unsure, 10)
                .withSheets(4, minutes(3))
                .withSetUp(minutes(12))
                .cost(Jobs.RATES)
                .time();
        double total = 10 * 105 + 3 * 180 + 720;
        assertThat(time.si()).isEqualTo(total, within(1e-9));
        // a log-normal factor spreads a little more than its logarithm
        assertThat(time.relativeUncertainty()).isEqualTo(0.2 * 900 / total, within(0.05 * 0.2 * 900 / total));
    }

    /** Lives are described where the shop has stated them. */
    @Test
    void pricesDescribeTheLivesOfTheShop() {
        assertThat(Jobs.RATES.describe()).doesNotContainKeys("orifice_life", "tube_life");
        Prices own = Jobs.RATES.withLives(Jobs.RATES.orificeLife(Orifice.Jewel.DIAMOND), Jobs.RATES.tubeLife());
        assertThat(own.describe())
                .containsEntry("tube_life", Jobs.RATES.tubeLife().describe())
                .containsEntry(
                        "orifice_life",
                        Jobs.RATES.orificeLife(Orifice.Jewel.DIAMOND).describe());
    }

    @Test
    void anAmountUsedIsWrittenInTheUnitsOfTheTrade() {
        Consumption hour = Consumption.of(Jobs.JET, minutes(60), 0.65);
        String[] numbers = hour.toString().split("[^0-9.]+", -1);
        assertThat(Double.parseDouble(numbers[0])).isEqualTo(Kind.VOLUME.si(hour.water()) * 1e3, within(0.5));
        assertThat(Double.parseDouble(numbers[1])).isEqualTo(18);
        assertThat(Double.parseDouble(numbers[2])).isEqualTo(Kind.ENERGY.si(hour.energy()) / 3.6e6, within(0.05));
        assertThat(hour.withRemoved(kilograms(2)).describe())
                .containsEntry("time_s", 3600.0)
                .containsEntry("abrasive_kg", Kind.MASS.si(hour.abrasive()))
                .containsEntry("sludge_kg", Kind.MASS.si(hour.abrasive()) + 2)
                .containsEntry("water_m3", Kind.VOLUME.si(hour.water()))
                .containsEntry("energy_J", Kind.ENERGY.si(hour.energy()));
    }

    /** Costs with one minimum, with and without a kink, against a fine grid. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void theLeastCostIsThatOfAFineGrid(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double minimum = random.nextDouble(0.001, 1);
        double maximum = minimum * random.nextDouble(1.5, 1000);
        double exponent = random.nextDouble(0.1, 0.9);
        double perSetting = random.nextDouble(0.01, 30);
        double kink = random.nextDouble(minimum, maximum);
        double found = LeastCost.setting(x -> cost(x, exponent, perSetting, kink), minimum, maximum);
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= 100_000; i++) {
            double x = minimum * Math.pow(maximum / minimum, i / 100_000.0);
            least = Math.min(least, cost(x, exponent, perSetting, kink));
        }
        assertThat(found).isBetween(minimum, maximum);
        assertThat(cost(found, exponent, perSetting, kink)).isLessThanOrEqualTo(least * (1 + 1e-9));
    }

    private static double cost(double x, double exponent, double perSetting, double kink) {
        return (1 + perSetting * x) / Math.pow(Math.min(x, kink), exponent);
    }
}
