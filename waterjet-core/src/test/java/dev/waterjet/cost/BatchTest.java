package dev.waterjet.cost;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.kilograms;
import static dev.waterjet.measure.Measures.kilogramsPerCubicMetre;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.minutes;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.pierce.PierceMethod;
import dev.waterjet.plan.Jobs;
import dev.waterjet.uncertainty.Distribution;
import dev.waterjet.uncertainty.MonteCarlo;
import dev.waterjet.uncertainty.MonteCarloResult;
import dev.waterjet.uncertainty.UncertainInputs;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import javax.measure.quantity.Time;
import org.junit.jupiter.api.Test;

class BatchTest {

    private static final Estimate<Time> TWO_MINUTES = Estimate.withinFactor(Kind.TIME, 120, 0.2, List.of());

    private static final PartWork WORK = PartWork.of(TWO_MINUTES)
            .withPierces(
                    3,
                    new Pierce(
                            PierceMethod.LOW_PRESSURE,
                            megapascals(70),
                            Estimate.withinFactor(Kind.TIME, 10, 0.8, List.of()),
                            seconds(2),
                            Message.of("delicate", "a delicate plate"),
                            List.of()))
            .withIdle(seconds(24))
            .withRemoved(kilograms(0.05));

    @Test
    void timeAndCostAddUpByHand() {
        BatchCost cost = Batch.of(Jobs.JET, WORK, 10)
                .withSheets(4, minutes(5))
                .withSetUp(minutes(10))
                .cost(Jobs.RATES);

        // ten parts of 120 + 30 s of jet and 6 + 24 s idle, three sheets, the set-up
        double seconds = 10 * 180 + 3 * 300 + 600;
        assertThat(cost.time().si()).isCloseTo(seconds, within(1e-9));
        // the mean of a log-normal time is its median times exp(s^2/2)
        double jet = 10 * (120 * Math.exp(0.02) + 30 * Math.exp(0.32));
        assertThat(cost.items().get(CostItem.MACHINE)).isCloseTo(90 * (seconds - 1500 + jet) / 3600, within(1e-9));
        assertThat(cost.items().get(CostItem.ABRASIVE)).isCloseTo(0.45 * 0.3 * jet / 60, within(1e-9));
        assertThat(cost.items().get(CostItem.SLUDGE)).isCloseTo(0.15 * (0.3 * jet / 60 + 0.5), within(1e-9));
        assertThat(cost.items().get(CostItem.SHEET)).isEqualTo(225);
        // mean of a life of 50 h to 150 h: its geometric mean times exp((ln 3)^2/8)
        double life = Math.sqrt(7500) * Math.exp(Math.pow(Math.log(3) / 2, 2) / 2);
        assertThat(cost.items().get(CostItem.TUBE)).isCloseTo(110 * jet / 3600 / life, within(1e-9));
        assertThat(cost.total().si())
                .isCloseTo(cost.items().values().stream().mapToDouble(x -> x).sum(), within(1e-9));
        assertThat(cost.perPart().si()).isCloseTo(cost.total().si() / 10, within(1e-12));
    }

    @Test
    void theDriversShareTheVariance() {
        BatchCost cost = Batch.of(Jobs.JET, WORK, 10).cost(Jobs.RATES.with(CostItem.SHEET, 75, 0.3));

        assertThat(cost.drivers().values().stream().mapToDouble(x -> x).sum()).isCloseTo(1, within(1e-6));
        assertThat(cost.drivers())
                .containsOnlyKeys(
                        "cutting feed",
                        "pierce time",
                        "life of the orifice",
                        "life of the focusing tube",
                        "price of sheet");
        assertThat(List.copyOf(cost.drivers().values())).isSortedAccordingTo(Comparator.reverseOrder());
        // by hand: 1 200 s of cutting known to 20 per cent, 300 s of piercing to 80 per cent
        double rate = 90 + Jobs.RATES.jetHour(Jobs.JET);
        double ofCutting = deviation(0.2) * 1200 / 3600 * rate;
        double ofPiercing = deviation(0.8) * 300 / 3600 * rate;
        assertThat(share(cost, "cutting feed") / share(cost, "pierce time"))
                .isCloseTo(ofCutting * ofCutting / (ofPiercing * ofPiercing), within(1e-3));
    }

    /** Standard deviation of a log-normal factor of median 1. */
    private static double deviation(double s) {
        return Math.exp(s * s / 2) * Math.sqrt(Math.expm1(s * s));
    }

    /** Mean and standard deviation are those of draws of the same inputs (JCGM 101). */
    @Test
    void theCostIsTheMeanOfManyBatches() {
        Prices prices = Jobs.RATES
                .with(CostItem.MACHINE, 90, 0.1)
                .with(CostItem.TUBE, 0)
                .with(CostItem.ORIFICE, 0);
        double perHour = prices.jetHour(Jobs.JET);
        for (double uncertainty : new double[] {0.2, 0.5}) {
            PartWork work = PartWork.of(Estimate.withinFactor(Kind.TIME, 120, uncertainty, List.of()));
            BatchCost cost =
                    Batch.of(Jobs.JET, work, 100).withSetUp(minutes(10)).cost(prices);
            MonteCarloResult drawn = MonteCarlo.of(
                            x -> 75 + 90 * x[1] * (600 + 12000 / x[0]) / 3600 + perHour * 12000 / x[0] / 3600,
                            UncertainInputs.none()
                                    .with("feed", Distribution.logNormal(1, uncertainty))
                                    .with("machine", Distribution.logNormal(1, 0.1)))
                    .withTrials(400_000)
                    .run();

            assertThat(cost.total().si()).isCloseTo(drawn.mean(), within(0.004 * drawn.mean()));
            assertThat(cost.total().standardUncertaintySi())
                    .isCloseTo(drawn.standardUncertainty(), within(0.02 * drawn.standardUncertainty()));
        }
    }

    private static double share(BatchCost cost, String name) {
        return Objects.requireNonNull(cost.drivers().get(name), name);
    }

    @Test
    void moreHeadsSaveTimeNotAbrasive() {
        Batch one = Batch.of(Jobs.JET, WORK, 7);
        Batch two = one.withHeads(2);

        assertThat(two.cost(Jobs.RATES).time().si()).isCloseTo(4 * 180, within(1e-9));
        assertThat(two.consumption(0.65)).isEqualTo(one.consumption(0.65));
    }

    @Test
    void whatHasNoPriceIsNamed() {
        BatchCost cost = Batch.of(Jobs.JET, WORK, 1).cost(Prices.of("crowns").with(CostItem.MACHINE, 90));

        assertThat(cost.total().cautions()).extracting(Caution::code).containsExactly("unpriced");
        assertThat(cost.total().cautions().get(0).message().parameters())
                .containsEntry("items", "water, abrasive, energy, sludge, orifice, focusing tube, sheet");
        assertRefused(() -> Jobs.RATES.with(CostItem.WATER, -1), "must-be-at-least", "price of water", 0);
        assertRefused(() -> Batch.of(Jobs.JET, WORK, 0), "must-be-at-least", "number of parts", 1);
    }

    @Test
    void consumptionIsFlowTimesTime() {
        Consumption hour = Consumption.of(Jobs.JET, minutes(60), 0.65);

        assertThat(Kind.MASS.si(hour.abrasive())).isCloseTo(18, within(1e-9));
        assertThat(Kind.VOLUME.si(hour.water()))
                .isCloseTo(3600 * Jobs.JET.water().volumeFlowSi(), within(1e-12));
        assertThat(Kind.ENERGY.si(hour.energy()) * 0.65 / 3600)
                .isCloseTo(Kind.POWER.si(Jobs.JET.water().ratedHydraulicPower()), within(1e-6));
        assertThat(Kind.MASS.si(hour.withRemoved(kilograms(2)).sludge())).isCloseTo(20, within(1e-9));
        assertThat(hour.plus(hour)).isEqualTo(hour.times(2));
    }

    @Test
    void hopperAndCatcherLastAsLongAsTheyHold() {
        assertThat(Kind.TIME.si(Consumption.timeToEmptyHopper(
                        Jobs.JET.withAbrasiveFlow(gramsPerMinute(500)), 1, kilograms(250))))
                .isCloseTo(500 * 60, within(1e-6));
        assertThat(Kind.TIME.si(Consumption.timeToEmptyHopper(
                        Jobs.JET.withAbrasiveFlow(gramsPerMinute(500)), 2, kilograms(250))))
                .isCloseTo(250 * 60, within(1e-6));
        Consumption used = Consumption.of(Jobs.JET, minutes(60), 0.65).withRemoved(kilograms(3.9));
        // 18 kg of garnet and 3.9 kg of steel, 0.55 of their settled volume solid
        assertThat(used.catcherFillRatio(
                        Kind.VOLUME.of(1.5), kilogramsPerCubicMetre(4100), kilogramsPerCubicMetre(7800)))
                .isCloseTo((18 / 4100.0 + 0.0005) / 0.55 / 1.5, within(1e-12));
    }
}
