package dev.waterjet.cost;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;

/**
 * Settings of minimum cost of a cut. Immutable.
 *
 * <p>The cost of a metre has a minimum over the abrasive flow rate even if a model has no optimum: with a feed rate
 * proportional to the flow rate to the power e it is at {@code m_a = (c_h / c_a) e/(1 - e)}, c_h being the cost per time and c_a
 * that per mass. A mixing efficiency that falls with loading moves it lower.
 */
public final class CuttingCost {

    private static final double LOWEST_FLOW_KG_PER_S = 1e-5;
    private static final double USUAL_HIGHEST_FLOW_KG_PER_S = 2 / 60.0;

    private final FeedModel model;
    private final CostRates rates;
    private final double highestFlowKgPerS;

    private CuttingCost(FeedModel model, CostRates rates, double highestFlowKgPerS) {
        this.model = Objects.requireNonNull(model, "model");
        this.rates = Objects.requireNonNull(rates, "rates");
        this.highestFlowKgPerS = Require.above(
                "highest flow of abrasive", highestFlowKgPerS, LOWEST_FLOW_KG_PER_S, Units.GRAM_PER_MINUTE, "");
    }

    /**
     * Returns the economy of cuts by a model, with abrasive flow rates up to 2 kg/min.
     *
     * @param model the model
     * @param rates cost rates of the jet
     * @return the economy
     */
    public static CuttingCost of(FeedModel model, CostRates rates) {
        return new CuttingCost(model, rates, USUAL_HIGHEST_FLOW_KG_PER_S);
    }

    /**
     * Returns this economy with another maximum abrasive flow rate.
     *
     * @param highest maximum abrasive flow rate
     * @return the economy within that limit
     */
    public CuttingCost withMaximumAbrasiveFlow(Quantity<MassFlow> highest) {
        return new CuttingCost(model, rates, Kind.MASS_FLOW.si(highest));
    }

    /**
     * Returns feed rate and cost of a cut.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param index quality index, 1 or more
     * @return feed and cost
     */
    public CutPoint at(AbrasiveJet jet, Workpiece piece, double index) {
        Estimate<Speed> feed = model.feed(jet, piece, index);
        return new CutPoint(jet, feed, rates.perMetreSi(feed.si(), jet.abrasiveFlowSi()));
    }

    /**
     * Returns the cut with the abrasive flow rate of minimum cost per metre.
     *
     * @param jet the jet, of which all but the abrasive flow rate is kept
     * @param piece the workpiece
     * @param index quality index, 1 or more
     * @return the cheapest cut; at the highest flow where the cost still falls there
     */
    public CutPoint cheapestAbrasiveFlow(AbrasiveJet jet, Workpiece piece, double index) {
        double best = LeastCost.setting(
                flow -> at(withAbrasiveFlow(jet, flow), piece, index).costPerMetre(),
                LOWEST_FLOW_KG_PER_S,
                highestFlowKgPerS);
        return at(withAbrasiveFlow(jet, best), piece, index);
    }

    /**
     * Pressure against orifice: the cuts at some pressures with the hydraulic power of this jet, the orifice narrower as the
     * pressure rises, with {@code d_o^2 p^1.5} kept. The loading ratio is kept, so that less water carries less abrasive;
     * the focusing tube is kept as well.
     *
     * @param jet the jet that sets the power, the loading ratio and all else
     * @param piece the workpiece
     * @param index quality index, 1 or more
     * @param pressures gauge pressures at the orifice
     * @return a cut for each pressure
     * @throws dev.waterjet.measure.DomainException if a pressure needs an orifice wider than the focusing tube
     */
    public List<CutPoint> atEqualPower(
            AbrasiveJet jet, Workpiece piece, double index, QuantityArray<Pressure> pressures) {
        List<CutPoint> points = new ArrayList<>();
        for (int i = 0; i < pressures.size(); i++) {
            double ratio = Require.positive("pressure at the orifice", pressures.si(i), Units.MEGAPASCAL)
                    / jet.water().pressureSi();
            double bore = jet.head().orifice().boreSi() * Math.pow(ratio, -0.75);
            // p q is kept, so the flow of water, and with it that of abrasive, goes with 1/p
            AbrasiveJet other = jet.withHead(
                            jet.head().withOrifice(jet.head().orifice().withBore(Kind.LENGTH.of(bore))))
                    .withPressure(pressures.get(i));
            points.add(at(withAbrasiveFlow(other, jet.abrasiveFlowSi() / ratio), piece, index));
        }
        return List.copyOf(points);
    }

    private static AbrasiveJet withAbrasiveFlow(AbrasiveJet jet, double kgPerS) {
        return jet.withAbrasiveFlow(Kind.MASS_FLOW.of(kgPerS));
    }
}
