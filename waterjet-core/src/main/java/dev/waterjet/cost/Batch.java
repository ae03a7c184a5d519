package dev.waterjet.cost;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.uncertainty.Distribution;
import dev.waterjet.uncertainty.UncertainInputs;
import dev.waterjet.uncertainty.UncertaintyBudget;
import java.io.Serializable;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Time;

/** Batch of equal parts, cut by one or more equal heads from one or more sheets. */
public final class Batch implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final String CUTTING = "cutting feed";
    private static final String PIERCING = "pierce time";
    private static final String ORIFICE = "life of the orifice";
    private static final String TUBE = "life of the focusing tube";
    /** Index of the first price among the inputs, behind the four above. */
    private static final int FIRST_PRICE = 4;

    private static final double S_PER_HOUR = 3600;

    private final AbrasiveJet jet;
    private final PartWork work;
    private final int parts;
    private final int heads;
    private final int partsPerSheet;
    private final double sheetChangeS;
    private final double setUpS;

    private Batch(
            AbrasiveJet jet,
            PartWork work,
            int parts,
            int heads,
            int partsPerSheet,
            double sheetChangeS,
            double setUpS) {
        this.jet = Objects.requireNonNull(jet, "jet");
        this.work = Objects.requireNonNull(work, "work");
        this.parts = (int) Require.atLeast("number of parts", parts, 1, Units.ONE, "");
        this.heads = (int) Require.atLeast("number of heads", heads, 1, Units.ONE, "");
        this.partsPerSheet = (int) Require.atLeast("number of parts on a sheet", partsPerSheet, 1, Units.ONE, "");
        this.sheetChangeS = Require.notNegative("time to change a sheet", sheetChangeS, Units.MINUTE);
        this.setUpS = Require.notNegative("time to set up", setUpS, Units.MINUTE);
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
        return new Batch(jet, work, parts, 1, Integer.MAX_VALUE, 0, 0);
    }

    /**
     * Returns this batch with another number of heads that cut at the same time.
     *
     * @param heads number of heads, 1 or more
     * @return the batch with those heads
     */
    public Batch withHeads(int heads) {
        return new Batch(jet, work, parts, heads, partsPerSheet, sheetChangeS, setUpS);
    }

    /**
     * Returns this batch with a number of parts per sheet.
     *
     * @param partsPerSheet number of parts on a sheet, 1 or more
     * @param change time to change a sheet, zero or more
     * @return the batch from those sheets
     */
    public Batch withSheets(int partsPerSheet, Quantity<Time> change) {
        return new Batch(jet, work, parts, heads, partsPerSheet, Kind.TIME.si(change), setUpS);
    }

    /**
     * Returns this batch with a set-up time before the first part.
     *
     * @param setUp the time, zero or more
     * @return the batch with that time
     */
    public Batch withSetUp(Quantity<Time> setUp) {
        return new Batch(jet, work, parts, heads, partsPerSheet, sheetChangeS, Kind.TIME.si(setUp));
    }

    /**
     * Returns the number of sheets.
     *
     * @return the count, 1 or more
     */
    public int sheets() {
        return ceilDiv(parts, partsPerSheet);
    }

    /**
     * Returns the consumption of all heads for the whole batch.
     *
     * @param pumpEfficiency hydraulic power over power from the mains, above 0 to 1
     * @return the consumption
     */
    public Consumption consumption(double pumpEfficiency) {
        return Consumption.of(jet, Kind.TIME.of(work.jetTimeSi()), pumpEfficiency)
                .withRemoved(Kind.MASS.of(work.removedSi()))
                .times(parts);
    }

    /**
     * Returns time and cost with their standard uncertainties and main contributions, by the law of propagation of
     * uncertainty (JCGM 100). Feed rate, pierce time, service lives and prices are independent inputs.
     *
     * @param rates prices of the shop
     * @return time and cost
     */
    public BatchCost cost(Prices rates) {
        UncertainInputs inputs = inputs(rates);
        UncertaintyBudget time = UncertaintyBudget.of(x -> hours(x) * S_PER_HOUR, inputs);
        UncertaintyBudget total = UncertaintyBudget.of(x -> sum(items(rates, x)), inputs);
        return BatchCost.of(rates, parts, items(rates, ones()), time, total);
    }

    /** Inputs as factors with the median 1. */
    private UncertainInputs inputs(Prices rates) {
        UncertainInputs inputs = UncertainInputs.none()
                .with(CUTTING, Distribution.logNormal(1, work.cuttingUncertainty()))
                .with(PIERCING, Distribution.logNormal(1, work.pierceUncertainty()))
                .with(
                        ORIFICE,
                        Distribution.logNormal(
                                1,
                                rates.orificeLife(jet.head().orifice().jewel()).logDeviation()))
                .with(TUBE, Distribution.logNormal(1, rates.tubeLife().logDeviation()));
        for (CostItem item : CostItem.values()) {
            inputs = inputs.with("price of " + item.label(), Distribution.logNormal(1, rates.uncertainty(item)));
        }
        return inputs;
    }

    private static double[] ones() {
        double[] ones = new double[FIRST_PRICE + CostItem.values().length];
        Arrays.fill(ones, 1);
        return ones;
    }

    /** Hours from set-up to the last part. Cutting time is inversely proportional to the feed rate. */
    private double hours(double[] factors) {
        double jetS = work.cuttingSi() / factors[0] + work.piercingSi() * factors[1];
        double strokes = ceilDiv(parts, heads);
        return (setUpS + sheets() * sheetChangeS + strokes * (jetS + work.idleSi())) / S_PER_HOUR;
    }

    private Map<CostItem, Double> items(Prices rates, double[] factors) {
        double jetHours = parts * (work.cuttingSi() / factors[0] + work.piercingSi() * factors[1]) / S_PER_HOUR;
        Map<CostItem, Double> amounts = new EnumMap<>(CostItem.class);
        rates.jetItems(jet).forEach((item, hourly) -> amounts.put(item, hourly * jetHours));
        amounts.computeIfPresent(CostItem.ORIFICE, (item, amount) -> amount / factors[2]);
        amounts.computeIfPresent(CostItem.TUBE, (item, amount) -> amount / factors[3]);
        amounts.merge(CostItem.SLUDGE, rates.price(CostItem.SLUDGE) * work.removedSi() * parts, Double::sum);
        amounts.put(CostItem.MACHINE, rates.price(CostItem.MACHINE) * hours(factors));
        amounts.put(CostItem.SHEET, rates.price(CostItem.SHEET) * sheets());
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
        return other instanceof Batch that
                && jet.equals(that.jet)
                && work.equals(that.work)
                && parts == that.parts
                && heads == that.heads
                && partsPerSheet == that.partsPerSheet
                && sheetChangeS == that.sheetChangeS
                && setUpS == that.setUpS;
    }

    @Override
    public int hashCode() {
        return Objects.hash(jet, work, parts, heads, partsPerSheet, sheetChangeS, setUpS);
    }

    @Override
    public String toString() {
        return parts + " parts by " + heads + " heads";
    }
}
