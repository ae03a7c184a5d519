package dev.waterjet.feed;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;

/**
 * What a feed needs: pressure, flow of abrasive or orifice, solved for any model. Immutable.
 *
 * <p>The least setting that gives the feed is sought between limits; all else of the jet is kept. If no setting gives it, a
 * {@link CannotReachException} tells the best feed that can be had and where. Where a model has a best flow of abrasive, the
 * answer lies below it.
 *
 * <p>Usual limits, each of which can be changed: pressure to 600 MPa, the highest that pumps of the trade are built for
 * (common practice, no source); flow of abrasive to 2 kg/min; orifice to half the bore of the focusing tube, as 2.5 to 4
 * bores are usual.
 */
public final class FeedSolver {

    private static final double LOWEST_PRESSURE_PA = 1e6;
    private static final double USUAL_HIGHEST_PRESSURE_PA = 600e6;
    private static final double LOWEST_FLOW_KG_PER_S = 1e-6;
    private static final double USUAL_HIGHEST_FLOW_KG_PER_S = 2 / 60.0;
    private static final double NARROWEST_ORIFICE_M = 1e-5;
    private static final double WIDEST_SHARE_OF_TUBE = 0.5;

    private final FeedModel model;
    private final double highestPressurePa;
    private final double highestFlowKgPerS;

    private FeedSolver(FeedModel model, double highestPressurePa, double highestFlowKgPerS) {
        this.model = Objects.requireNonNull(model, "model");
        this.highestPressurePa =
                Require.above("highest pressure", highestPressurePa, LOWEST_PRESSURE_PA, Units.MEGAPASCAL, "");
        this.highestFlowKgPerS = Require.above(
                "highest flow of abrasive", highestFlowKgPerS, LOWEST_FLOW_KG_PER_S, Units.GRAM_PER_MINUTE, "");
    }

    /**
     * The inverse questions to a model, within the usual limits.
     *
     * @param model the model
     * @return the questions
     */
    public static FeedSolver of(FeedModel model) {
        return new FeedSolver(model, USUAL_HIGHEST_PRESSURE_PA, USUAL_HIGHEST_FLOW_KG_PER_S);
    }

    /**
     * These questions for a pump of one's own.
     *
     * @param highest highest gauge pressure at the orifice, above 1 MPa
     * @return the questions within that limit
     */
    public FeedSolver withMaximumPressure(Quantity<Pressure> highest) {
        return new FeedSolver(model, Kind.PRESSURE.si(highest), highestFlowKgPerS);
    }

    /**
     * These questions for a feeder of one's own.
     *
     * @param highest highest flow of abrasive
     * @return the questions within that limit
     */
    public FeedSolver withMaximumAbrasiveFlow(Quantity<MassFlow> highest) {
        return new FeedSolver(model, highestPressurePa, Kind.MASS_FLOW.si(highest));
    }

    /**
     * Least pressure that gives a feed.
     *
     * @param jet the jet, of which all but the pressure is kept
     * @param piece the workpiece
     * @param index quality index, 1 or more
     * @param feed the feed wanted, above zero
     * @return the gauge pressure at the orifice
     * @throws CannotReachException if no pressure gives it
     */
    public Estimate<Pressure> pressureFor(AbrasiveJet jet, Workpiece piece, double index, Quantity<Speed> feed) {
        return solve(
                new Range<>("pressure", Kind.PRESSURE, Units.MEGAPASCAL, LOWEST_PRESSURE_PA, highestPressurePa),
                pressure -> jet.withPressure(Kind.PRESSURE.of(pressure)),
                piece,
                index,
                feed);
    }

    /**
     * Least flow of abrasive that gives a feed.
     *
     * @param jet the jet, of which all but the flow of abrasive is kept
     * @param piece the workpiece
     * @param index quality index, 1 or more
     * @param feed the feed wanted, above zero
     * @return the mass flow
     * @throws CannotReachException if no flow gives it
     */
    public Estimate<MassFlow> abrasiveFlowFor(AbrasiveJet jet, Workpiece piece, double index, Quantity<Speed> feed) {
        return solve(
                new Range<>(
                        "flow of abrasive",
                        Kind.MASS_FLOW,
                        Units.GRAM_PER_MINUTE,
                        LOWEST_FLOW_KG_PER_S,
                        highestFlowKgPerS),
                flow -> jet.withAbrasiveFlow(Kind.MASS_FLOW.of(flow)),
                piece,
                index,
                feed);
    }

    /**
     * Narrowest orifice that gives a feed, in the same focusing tube.
     *
     * @param jet the jet, of which all but the orifice is kept
     * @param piece the workpiece
     * @param index quality index, 1 or more
     * @param feed the feed wanted, above zero
     * @return the bore of the orifice, whatever the power of the pump
     * @throws CannotReachException if no orifice of this tube gives it
     */
    public Estimate<Length> orificeFor(AbrasiveJet jet, Workpiece piece, double index, Quantity<Speed> feed) {
        double widest = WIDEST_SHARE_OF_TUBE * jet.head().tube().boreSi();
        return solve(
                new Range<>("orifice", Kind.LENGTH, Units.MILLIMETRE, NARROWEST_ORIFICE_M, widest),
                bore -> withOrifice(jet, bore),
                piece,
                index,
                feed);
    }

    private static AbrasiveJet withOrifice(AbrasiveJet jet, double boreM) {
        return jet.withHead(jet.head().withOrifice(jet.head().orifice().withBore(Kind.LENGTH.of(boreM))));
    }

    /** A setting between its limits. */
    private record Range<Q extends Quantity<Q>>(
            String name, Kind<Q> kind, Unit<Q> unit, double lowest, double highest) {

        String text(double si) {
            return QuantityText.print(kind, kind.of(si), unit, 4);
        }
    }

    private <Q extends Quantity<Q>> Estimate<Q> solve(
            Range<Q> range, DoubleFunction<AbrasiveJet> jets, Workpiece piece, double index, Quantity<Speed> feed) {
        Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
        double wanted = Require.positive("feed", Kind.SPEED.si(feed), Units.MILLIMETRE_PER_MINUTE);
        DoubleUnaryOperator feeds =
                setting -> model.feedSi(jets.apply(setting), piece.material(), piece.thicknessSi(), index);
        double best = InverseKernel.best(feeds, range.lowest(), range.highest());
        double bestFeed = feeds.applyAsDouble(best);
        if (bestFeed < wanted) {
            throw new CannotReachException(
                    wanted, bestFeed, range.name() + " up to " + range.text(range.highest()), "at " + range.text(best));
        }
        double setting = InverseKernel.least(feeds, wanted, range.lowest(), best);
        double slope = InverseKernel.relativeSlope(feeds, setting);
        return Estimate.withinFactor(
                        range.kind(),
                        setting,
                        model.relativeUncertainty(piece.material()) / slope,
                        jets.apply(setting).cautions())
                .with(piece.material().cautions())
                .with(model.cautions(jets.apply(setting), piece.material(), index * piece.thicknessSi(), wanted));
    }
}
