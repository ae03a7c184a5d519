package dev.waterjet.cost;

import static dev.waterjet.measure.Measures.kilograms;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.minutes;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.pierce.PierceMethod;
import dev.waterjet.plan.Jobs;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Mean and standard uncertainty of the cost of a batch against draws of all its inputs (JCGM 101), by plain loops. */
class BatchDrawsTest {

    private static final int DRAWS = 300_000;
    private static final int PARTS = 40;

    /** Logarithmic standard deviation of a life of which two of three lie between two times. */
    private static double spread(double shorter, double longer) {
        return Math.log(longer / shorter) / 2;
    }

    @ParameterizedTest
    @CsvSource({"0.05, 0.1", "0.2, 0.5", "0.35, 0.2", "0.5, 0.5"})
    void allInputsTogetherGiveTheCostAndItsUncertainty(double ofTimes, double ofPrices) {
        Prices prices = Jobs.RATES;
        for (CostItem item : CostItem.values()) {
            prices = prices.with(item, Jobs.RATES.price(item), ofPrices);
        }
        PartWork work = PartWork.of(Estimate.withinFactor(Kind.TIME, 90, ofTimes, List.of()))
                .withPierces(5, pierce(ofTimes))
                .withIdle(seconds(20))
                .withRemoved(kilograms(0.3));
        BatchCost cost = Batch.of(Jobs.JET, work, PARTS).withSetUp(minutes(8)).cost(prices);
        SummaryStatistics drawn = draws(ofTimes, ofPrices);

        assertThat(cost.total().si()).isCloseTo(drawn.getMean(), withinPercentage(1));
        assertThat(cost.total().standardUncertaintySi()).isCloseTo(drawn.getStandardDeviation(), withinPercentage(3));
        assertThat(cost.items().values().stream().mapToDouble(amount -> amount).sum())
                .isCloseTo(cost.total().si(), withinPercentage(1e-9));
    }

    private static Pierce pierce(double uncertainty) {
        return new Pierce(
                PierceMethod.STATIONARY,
                megapascals(380),
                Estimate.withinFactor(Kind.TIME, 9, uncertainty, List.of()),
                seconds(1),
                Message.of("timed", "timed by the shop"),
                List.of());
    }

    private static SummaryStatistics draws(double ofTimes, double ofPrices) {
        Map<CostItem, Double> hourly = new EnumMap<>(Jobs.RATES.jetItems(Jobs.JET));
        Random random = new Random(20_261_128);
        SummaryStatistics totals = new SummaryStatistics();
        double tube = spread(50, 150);
        double orifice = spread(50, 100);
        for (int i = 0; i < DRAWS; i++) {
            double jetS =
                    90 * Math.exp(ofTimes * random.nextGaussian()) + 45 * Math.exp(ofTimes * random.nextGaussian());
            double total = 0;
            for (CostItem item : CostItem.values()) {
                double amount = hourly.getOrDefault(item, 0.0) * PARTS * jetS / 3600;
                amount = switch (item) {
                    case MACHINE -> 90 * (480 + PARTS * (jetS + 25)) / 3600;
                    case SHEET -> 75;
                    case SLUDGE -> amount + 0.15 * 0.3 * PARTS;
                    case TUBE -> amount * Math.exp(tube * random.nextGaussian() - tube * tube / 2);
                    case ORIFICE -> amount * Math.exp(orifice * random.nextGaussian() - orifice * orifice / 2);
                    default -> amount;
                };
                total += amount * Math.exp(ofPrices * random.nextGaussian());
            }
            totals.addValue(total);
        }
        return totals;
    }
}
