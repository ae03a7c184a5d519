package dev.waterjet.cost;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;

/**
 * Cost of a metre of cut, and the settings with the minimum cost. Immutable.
 *
 * <pre>{@code
 * CuttingCost cost = CuttingCost.of(prices, cut);
 * double perMetre = cost.at(3).costPerMetre();
 * CuttingCost.Point cheapest = cost.cheapestAbrasiveFlow(3);
 * List<CuttingCost.Point> points = cost.atEqualPower(3, pressures);
 * }</pre>
 *
 * <p>The cost of an hour is that of machine and attendance and that of {@link Prices#jetHour}. It has a minimum over the
 * abrasive flow rate even where a model has no optimum of it: with a feed rate proportional to the flow rate to the power e
 * it is at m<sub>a</sub> = (c<sub>h</sub> / c<sub>a</sub>) e/(1 - e), c<sub>h</sub> being the cost per time and c<sub>a</sub> that per mass. A mixing efficiency that
 * decreases with loading lowers it.
 */
public final class CuttingCost {

    private static final double MIN_FLOW_KG_PER_S = 1e-5;
    private static final double DEFAULT_MAX_FLOW_KG_PER_S = 2 / 60.0;
    private static final double S_PER_HOUR = 3600;

    /**
     * Settings of a cut and its cost.
     *
     * @param jet jet
     * @param feed feed rate with its uncertainty
     * @param costPerMetre cost of a metre of cut, in the currency of the prices, 0 or more
     */
    public record Point(AbrasiveJet jet, Estimate<Speed> feed, double costPerMetre) implements Described, Serializable {

        /**
         * Checks the numbers.
         *
         * @param jet jet
         * @param feed feed rate with its uncertainty
         * @param costPerMetre cost of a metre of cut, in the currency of the prices, 0 or more
         */
        public Point {
            Objects.requireNonNull(jet, "jet");
            Objects.requireNonNull(feed, "feed");
            costPerMetre = Require.notNegative("cost of a metre", costPerMetre, Units.ONE);
        }

        @Override
        public Map<String, Object> describe() {
            return Description.of("cut point")
                    .put("jet", jet)
                    .put("feed", feed)
                    .put("cost_per_metre", costPerMetre)
                    .map();
        }
    }

    private final Prices prices;
    private final CutConditions cut;
    private final double maximumFlowKgPerS;

    private CuttingCost(Prices prices, CutConditions cut, double maximumFlowKgPerS) {
        this.prices = Objects.requireNonNull(prices, "prices");
        this.cut = Objects.requireNonNull(cut, "cut");
        this.maximumFlowKgPerS = Require.above(
                "maximum abrasive flow rate", maximumFlowKgPerS, MIN_FLOW_KG_PER_S, Units.GRAM_PER_MINUTE, "");
    }

    /**
     * Returns the cost of a cut, with abrasive flow rates up to 2 kg/min.
     *
     * @param prices prices of the shop
     * @param cut conditions of the cut
     * @return the cost
     */
    public static CuttingCost of(Prices prices, CutConditions cut) {
        return new CuttingCost(prices, cut, DEFAULT_MAX_FLOW_KG_PER_S);
    }

    /**
     * Returns this cost with the maximum abrasive flow rate of a feeder.
     *
     * @param maximum maximum mass flow, above 0.6 g/min
     * @return the cost with that limit
     */
    public CuttingCost withMaximumAbrasiveFlow(Quantity<MassFlow> maximum) {
        return new CuttingCost(prices, cut, Kind.MASS_FLOW.si(Objects.requireNonNull(maximum, "maximum")));
    }

    /**
     * Returns feed rate and cost of the cut with its jet.
     *
     * @param index quality index, 1 or more
     * @return feed rate and cost
     */
    public Point at(double index) {
        return at(cut.jet(), index);
    }

    private Point at(AbrasiveJet jet, double index) {
        Estimate<Speed> feed = cut.withJet(jet).feed(index);
        double perHour = prices.price(CostItem.MACHINE) + prices.jetHour(jet);
        return new Point(jet, feed, perHour / S_PER_HOUR / feed.si());
    }

    /**
     * Returns the cut with the abrasive flow rate of minimum cost; all else of the jet is kept.
     *
     * @param index quality index, 1 or more
     * @return feed rate and cost; at the maximum flow rate where the cost still decreases there
     */
    public Point cheapestAbrasiveFlow(double index) {
        double best = LeastCost.setting(
                flow -> at(withAbrasiveFlow(cut.jet(), flow), index).costPerMetre(),
                MIN_FLOW_KG_PER_S,
                maximumFlowKgPerS);
        return at(withAbrasiveFlow(cut.jet(), best), index);
    }

    /**
     * Returns the cuts at some pressures with the hydraulic power of the jet: the orifice becomes smaller as the pressure
     * rises, with d<sub>o</sub><sup>2</sup> p<sup>1.5</sup> kept. The loading ratio is kept, so that less water carries less abrasive; the focusing
     * tube is kept as well.
     *
     * @param index quality index, 1 or more
     * @param pressures gauge pressures at the orifice, each above 0
     * @return feed rate and cost for each pressure
     * @throws dev.waterjet.measure.DomainException if a pressure requires an orifice larger than the focusing tube
     */
    public List<Point> atEqualPower(double index, QuantityArray<Pressure> pressures) {
        Objects.requireNonNull(pressures, "pressures");
        AbrasiveJet jet = cut.jet();
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < pressures.size(); i++) {
            double ratio =
                    Require.positive("pressure at the orifice", pressures.si(i), Units.MEGAPASCAL) / jet.pressureSi();
            double bore = jet.orificeBoreSi() * Math.pow(ratio, -0.75);
            // p q is kept, so the water flow rate, and with it the abrasive flow rate, is proportional to 1/p
            AbrasiveJet other = jet.withHead(
                            jet.head().withOrifice(jet.head().orifice().withBore(Kind.LENGTH.of(bore))))
                    .withPressure(pressures.get(i));
            points.add(at(withAbrasiveFlow(other, jet.abrasiveFlowSi() / ratio), index));
        }
        return List.copyOf(points);
    }

    private static AbrasiveJet withAbrasiveFlow(AbrasiveJet jet, double kgPerS) {
        return jet.withAbrasiveFlow(Kind.MASS_FLOW.of(kgPerS));
    }
}
