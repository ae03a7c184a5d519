package dev.waterjet.cost;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.uncertainty.Distribution;
import dev.waterjet.uncertainty.UncertainInputs;
import dev.waterjet.uncertainty.UncertaintyBudget;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Time;

/**
 * Batch of equal parts, cut by one or more equal heads from one or more sheets.
 *
 * <pre>{@code
 * Batch batch = Batch.of(jet, work, 36).withHeads(2).withSheets(12, minutes(4)).withSetUp(minutes(20));
 * Consumption consumption = batch.consumption(0.9);
 * BatchCost cost = batch.cost(prices);
 * Estimate<Dimensionless> perPart = cost.perPart();
 * }</pre>
 */
public final class Batch implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final String CUTTING = "cutting feed";
    private static final String PIERCING = "pierce time";
    private static final String ORIFICE = "life of the orifice";
    private static final String TUBE = "life of the focusing tube";
    /** Index of the first price among the inputs, behind the four above. */
    private static final int FIRST_PRICE = 4;

    private static final double S_PER_HOUR = 3600;

    /** Checked content, and the serial form. */
    private record Values(
            AbrasiveJet jet, PartWork work, int parts, int heads, int partsPerSheet, double sheetChangeS, double setUpS)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(jet, "jet");
            Objects.requireNonNull(work, "work");
            Require.atLeast("number of parts", parts, 1, Units.ONE, "");
            Require.atLeast("number of heads", heads, 1, Units.ONE, "");
            Require.atLeast("number of parts on a sheet", partsPerSheet, 1, Units.ONE, "");
            sheetChangeS = Require.notNegative("time to change a sheet", sheetChangeS, Units.MINUTE);
            setUpS = Require.notNegative("set-up time", setUpS, Units.MINUTE);
        }

        private Object readResolve() {
            return new Batch(this);
        }
    }

    private final transient Values values;

    private Batch(Values values) {
        this.values = values;
    }

    /**
     * Returns a batch cut by one head from one sheet, without set-up time.
     *
     * @param jet the jet of each head
     * @param work the work on one part
     * @param parts number of parts, 1 or more
     * @return the batch
     */
    public static Batch of(AbrasiveJet jet, PartWork work, int parts) {
        return new Batch(new Values(jet, work, parts, 1, Integer.MAX_VALUE, 0, 0));
    }

    /**
     * Returns this batch with another number of heads that cut at the same time.
     *
     * @param heads number of heads, 1 or more
     * @return the batch with those heads
     */
    public Batch withHeads(int heads) {
        return new Batch(new Values(
                values.jet,
                values.work,
                values.parts,
                heads,
                values.partsPerSheet,
                values.sheetChangeS,
                values.setUpS));
    }

    /**
     * Returns this batch with a number of parts per sheet.
     *
     * @param partsPerSheet number of parts on a sheet, 1 or more
     * @param change time to change a sheet, zero or more
     * @return the batch from those sheets
     */
    public Batch withSheets(int partsPerSheet, Quantity<Time> change) {
        return new Batch(new Values(
                values.jet,
                values.work,
                values.parts,
                values.heads,
                partsPerSheet,
                Kind.TIME.si(Objects.requireNonNull(change, "change")),
                values.setUpS));
    }

    /**
     * Returns this batch with a set-up time before the first part.
     *
     * @param setUp the time, zero or more
     * @return the batch with that time
     */
    public Batch withSetUp(Quantity<Time> setUp) {
        return new Batch(new Values(
                values.jet,
                values.work,
                values.parts,
                values.heads,
                values.partsPerSheet,
                values.sheetChangeS,
                Kind.TIME.si(Objects.requireNonNull(setUp, "setUp"))));
    }

    /**
     * Returns the number of sheets.
     *
     * @return the count, 1 or more
     */
    public int sheets() {
        return ceilDiv(values.parts, values.partsPerSheet);
    }

    /**
     * Returns the consumption of all heads for the whole batch.
     *
     * @param pumpEfficiency hydraulic power over power from the mains, above 0 to 1
     * @return the consumption
     */
    public Consumption consumption(double pumpEfficiency) {
        return Consumption.of(values.jet, Kind.TIME.of(values.work.jetTimeSi()), pumpEfficiency)
                .withRemoved(Kind.MASS.of(values.work.removedSi()))
                .times(values.parts);
    }

    /**
     * Returns time and cost with their standard uncertainties and main contributions, by the law of propagation of
     * uncertainty (JCGM 100). Feed rate, pierce time, service lives and prices are independent log-normal inputs.
     *
     * <p>The time is that at the medians of the inputs. The cost is the expectation, the mean of many such batches: feed rate,
     * pierce time and prices are medians with a standard deviation s of their logarithm, and the mean of such a factor is
     * exp(s<sup>2</sup>/2) (derived). Wear has the expected cost of {@link Prices#jetItems}.
     *
     * @param prices prices of the shop
     * @return time and cost
     */
    public BatchCost cost(Prices prices) {
        Objects.requireNonNull(prices, "prices");
        UncertaintyBudget time = UncertaintyBudget.of(
                x -> hours(1 / x[0], x[1]) * S_PER_HOUR,
                UncertainInputs.none()
                        .with(CUTTING, Distribution.logNormal(1, values.work.cuttingUncertainty()))
                        .with(PIERCING, Distribution.logNormal(1, values.work.pierceUncertainty())));
        UncertainInputs inputs = inputs(prices);
        UncertaintyBudget total = UncertaintyBudget.of(x -> sum(items(prices, x)), inputs);
        return BatchCost.of(prices, values.parts, expectedItems(prices), BatchCost.Budgets.of(time, total));
    }

    /**
     * Returns the expected cost of each item, as {@link #cost} states it, without the uncertainty.
     *
     * @param prices prices of the shop
     * @return the cost by item
     */
    public Map<CostItem, Double> expectedItems(Prices prices) {
        Objects.requireNonNull(prices, "prices");
        double[] factors = new double[FIRST_PRICE + CostItem.values().length];
        Arrays.fill(factors, 1);
        factors[0] = mean(values.work.cuttingUncertainty());
        factors[1] = mean(values.work.pierceUncertainty());
        int at = FIRST_PRICE;
        for (CostItem item : CostItem.values()) {
            factors[at++] = mean(prices.uncertainty(item));
        }
        return items(prices, factors);
    }

    /**
     * Factors on cutting time, pierce time, cost of wear and prices, with their means and standard deviations. The cost is
     * linear in each factor, so its value at the means is its mean.
     */
    private UncertainInputs inputs(Prices prices) {
        double ofOrifice =
                prices.orificeLife(values.jet.head().orifice().jewel()).logDeviation();
        UncertainInputs inputs = UncertainInputs.none()
                .with(CUTTING, factor(values.work.cuttingUncertainty()))
                .with(PIERCING, factor(values.work.pierceUncertainty()))
                .with(ORIFICE, Distribution.normal(1, relativeDeviation(ofOrifice)))
                .with(
                        TUBE,
                        Distribution.normal(
                                1, relativeDeviation(prices.tubeLife().logDeviation())));
        for (CostItem item : CostItem.values()) {
            inputs = inputs.with("price of " + item.label(), factor(prices.uncertainty(item)));
        }
        return inputs;
    }

    /** Mean and standard deviation of a log-normal factor of median 1. */
    private static Distribution factor(double logDeviation) {
        double mean = mean(logDeviation);
        return Distribution.normal(mean, mean * relativeDeviation(logDeviation));
    }

    private static double mean(double logDeviation) {
        return Math.exp(logDeviation * logDeviation / 2);
    }

    /** Standard deviation over mean of a log-normal distribution. */
    private static double relativeDeviation(double logDeviation) {
        return Math.sqrt(Math.expm1(logDeviation * logDeviation));
    }

    /** Hours from set-up to the last part. */
    private double hours(double cuttingFactor, double pierceFactor) {
        PartWork work = values.work;
        double jetS = work.cuttingSi() * cuttingFactor + work.piercingSi() * pierceFactor;
        double strokes = ceilDiv(values.parts, values.heads);
        return (values.setUpS + sheets() * values.sheetChangeS + strokes * (jetS + work.idleSi())) / S_PER_HOUR;
    }

    private Map<CostItem, Double> items(Prices prices, double[] factors) {
        PartWork work = values.work;
        double jetHours = values.parts * (work.cuttingSi() * factors[0] + work.piercingSi() * factors[1]) / S_PER_HOUR;
        Map<CostItem, Double> amounts = new EnumMap<>(CostItem.class);
        prices.jetItems(values.jet).forEach((item, hourly) -> amounts.put(item, hourly * jetHours));
        amounts.computeIfPresent(CostItem.ORIFICE, (item, amount) -> amount * factors[2]);
        amounts.computeIfPresent(CostItem.TUBE, (item, amount) -> amount * factors[3]);
        amounts.merge(CostItem.SLUDGE, prices.price(CostItem.SLUDGE) * work.removedSi() * values.parts, Double::sum);
        amounts.put(CostItem.MACHINE, prices.price(CostItem.MACHINE) * hours(factors[0], factors[1]));
        amounts.put(CostItem.SHEET, prices.price(CostItem.SHEET) * sheets());
        int at = FIRST_PRICE;
        for (CostItem item : CostItem.values()) {
            double price = factors[at++];
            amounts.computeIfPresent(item, (same, amount) -> amount * price);
        }
        return amounts;
    }

    private static double sum(Map<CostItem, Double> amounts) {
        double sum = 0;
        for (double amount : amounts.values()) {
            sum += amount;
        }
        return sum;
    }

    private static int ceilDiv(int number, int by) {
        return (int) ((number + (long) by - 1) / by);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Batch that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.parts + " parts by " + values.heads + " heads";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
