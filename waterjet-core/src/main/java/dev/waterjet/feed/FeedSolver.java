package dev.waterjet.feed;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
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
 * Solver for the pressure, the abrasive flow rate or the orifice that a feed rate requires, for any feed model. Immutable.
 *
 * <pre>{@code
 * FeedSolver pump = FeedSolver.of(cut).withMaximumPressure(megapascals(400));
 * Estimate<Pressure> pressure = pump.pressureFor(3, millimetresPerMinute(150));
 * Estimate<MassFlow> flow = pump.abrasiveFlowFor(3, millimetresPerMinute(150));
 * Estimate<Length> orifice = pump.orificeFor(3, millimetresPerMinute(150));
 * }</pre>
 *
 * <p>The solution is the minimum setting between limits that gives the feed rate; all else of the jet is kept. If none does,
 * a {@link NoSolutionException} has the best feed rate within the limits. Where a model has an optimum of the abrasive flow
 * rate, the solution is below it.
 *
 * <p>Default limits: pressure to 600 MPa, the maximum of commercial pumps (common practice, no source); abrasive flow rate to
 * 2 kg/min; orifice to half the bore of the focusing tube, as 2.5 to 4 bores are typical.
 */
public final class FeedSolver {

    private static final double MIN_PRESSURE_PA = 1e6;
    private static final double DEFAULT_MAX_PRESSURE_PA = 600e6;
    private static final double MIN_FLOW_KG_PER_S = 1e-6;
    private static final double DEFAULT_MAX_FLOW_KG_PER_S = 2 / 60.0;
    private static final double MIN_ORIFICE_M = 1e-5;
    private static final double MAX_SHARE_OF_TUBE = 0.5;

    private final CutConditions cut;
    private final double maximumPressurePa;
    private final double maximumFlowKgPerS;

    private FeedSolver(CutConditions cut, double maximumPressurePa, double maximumFlowKgPerS) {
        this.cut = Objects.requireNonNull(cut, "cut");
        this.maximumPressurePa =
                Require.above("maximum pressure", maximumPressurePa, MIN_PRESSURE_PA, Units.MEGAPASCAL, "");
        this.maximumFlowKgPerS = Require.above(
                "maximum abrasive flow rate", maximumFlowKgPerS, MIN_FLOW_KG_PER_S, Units.GRAM_PER_MINUTE, "");
    }

    /**
     * Returns a solver for a cut within the default limits.
     *
     * @param cut conditions of the cut
     * @return the solver
     */
    public static FeedSolver of(CutConditions cut) {
        return new FeedSolver(cut, DEFAULT_MAX_PRESSURE_PA, DEFAULT_MAX_FLOW_KG_PER_S);
    }

    /**
     * Returns this solver with the maximum pressure of a pump.
     *
     * @param maximum maximum gauge pressure at the orifice, above 1 MPa
     * @return the solver with that limit
     */
    public FeedSolver withMaximumPressure(Quantity<Pressure> maximum) {
        return new FeedSolver(cut, Kind.PRESSURE.si(Objects.requireNonNull(maximum, "maximum")), maximumFlowKgPerS);
    }

    /**
     * Returns this solver with the maximum abrasive flow rate of a feeder.
     *
     * @param maximum maximum mass flow, above 0.06 g/min
     * @return the solver with that limit
     */
    public FeedSolver withMaximumAbrasiveFlow(Quantity<MassFlow> maximum) {
        return new FeedSolver(cut, maximumPressurePa, Kind.MASS_FLOW.si(Objects.requireNonNull(maximum, "maximum")));
    }

    /**
     * Returns the minimum pressure that gives a feed rate.
     *
     * @param index quality index, 1 or more
     * @param feed required feed rate, above 0
     * @return the gauge pressure at the orifice
     * @throws NoSolutionException if no pressure gives it; with the best feed rate
     */
    public Estimate<Pressure> pressureFor(double index, Quantity<Speed> feed) {
        return solve(
                new Range<>("pressure", Kind.PRESSURE, Units.MEGAPASCAL, MIN_PRESSURE_PA, maximumPressurePa),
                pressure -> cut.jet().withPressure(Kind.PRESSURE.of(pressure)),
                index,
                feed);
    }

    /**
     * Returns the minimum abrasive flow rate that gives a feed rate.
     *
     * @param index quality index, 1 or more
     * @param feed required feed rate, above 0
     * @return the mass flow
     * @throws NoSolutionException if no flow rate gives it; with the best feed rate
     */
    public Estimate<MassFlow> abrasiveFlowFor(double index, Quantity<Speed> feed) {
        return solve(
                new Range<>(
                        "abrasive flow rate",
                        Kind.MASS_FLOW,
                        Units.GRAM_PER_MINUTE,
                        MIN_FLOW_KG_PER_S,
                        maximumFlowKgPerS),
                flow -> cut.jet().withAbrasiveFlow(Kind.MASS_FLOW.of(flow)),
                index,
                feed);
    }

    /**
     * Returns the smallest orifice that gives a feed rate with the same focusing tube.
     *
     * @param index quality index, 1 or more
     * @param feed required feed rate, above 0
     * @return the bore of the orifice, whatever the power of the pump
     * @throws NoSolutionException if no orifice of this tube gives it; with the best feed rate
     */
    public Estimate<Length> orificeFor(double index, Quantity<Speed> feed) {
        double maximum = MAX_SHARE_OF_TUBE * cut.jet().tubeBoreSi();
        return solve(
                new Range<>("orifice", Kind.LENGTH, Units.MILLIMETRE, MIN_ORIFICE_M, maximum),
                bore -> withOrifice(cut.jet(), bore),
                index,
                feed);
    }

    private static AbrasiveJet withOrifice(AbrasiveJet jet, double boreM) {
        return jet.withHead(jet.head().withOrifice(jet.head().orifice().withBore(Kind.LENGTH.of(boreM))));
    }

    /** A setting between its limits. */
    private record Range<Q extends Quantity<Q>>(
            String name, Kind<Q> kind, Unit<Q> unit, double minimum, double maximum) {

        NoSolutionException unreachable(double required, double bestFeed, double bestSetting) {
            return new NoSolutionException(
                    Message.of(
                                    "feed-out-of-reach",
                                    "{feed} cannot be achieved by {setting} up to {limit}; the best is {best} at"
                                            + " {optimum}")
                            .with("feed", Kind.SPEED, required, Units.MILLIMETRE_PER_MINUTE)
                            .with("setting", name)
                            .with("limit", kind, maximum, unit)
                            .with("best", Kind.SPEED, bestFeed, Units.MILLIMETRE_PER_MINUTE)
                            .with("optimum", kind, bestSetting, unit),
                    Kind.SPEED,
                    bestFeed);
        }
    }

    private <Q extends Quantity<Q>> Estimate<Q> solve(
            Range<Q> range, DoubleFunction<AbrasiveJet> jets, double index, Quantity<Speed> feed) {
        Settings.index(index);
        double required = Settings.feed(feed);
        FeedModel model = cut.feedModel();
        DoubleUnaryOperator feeds =
                setting -> model.feedSi(jets.apply(setting), cut.material(), cut.thicknessSi(), index);
        double best = LogRoot.maximum(feeds, range.minimum(), range.maximum());
        double bestFeed = feeds.applyAsDouble(best);
        if (bestFeed < required) {
            throw bestFeed > 0 ? range.unreachable(required, bestFeed, best) : FeedCautions.noCut(cut.material());
        }
        double setting = LogRoot.smallest(feeds, required, range.minimum(), best);
        double slope = LogRoot.slope(feeds, setting);
        CutConditions solved = cut.withJet(jets.apply(setting));
        return Estimate.withinFactor(
                        range.kind(),
                        setting,
                        cut.relativeUncertainty() / slope,
                        solved.jet().cautions())
                .with(cut.material().cautions())
                .with(solved.feedCautions(index * cut.thicknessSi(), required));
    }
}
