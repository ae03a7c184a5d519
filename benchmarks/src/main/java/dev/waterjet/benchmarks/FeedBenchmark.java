package dev.waterjet.benchmarks;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.FeedCurve;
import dev.waterjet.feed.FeedSweep;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import java.util.concurrent.TimeUnit;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.quantity.Quantities;

/** One feed, a curve of feeds and a sweep of them by the machinability model, beside plain doubles and Indriya. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
public class FeedBenchmark {

    private static final int CURVE_POINTS = 10_000;

    private final MachinabilityFeed model = MachinabilityFeed.published();
    private final AbrasiveJet jet = CuttingHead.of(
                    Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(76)))
            .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(300));
    private final Workpiece plate = Workpiece.of(Materials.standard().get("titanium"), millimetres(6));
    private final QuantityArray<Length> thicknesses =
            QuantityArray.evenly(Kind.LENGTH, millimetres(2), millimetres(80), CURVE_POINTS);
    private final double[] thicknessesMm = thicknesses.to(Units.MILLIMETRE);
    private final FeedSweep sweep = FeedSweep.of(model, jet, plate, 3)
            .overPressure(QuantityArray.evenly(Kind.PRESSURE, megapascals(200), megapascals(600), 100))
            .overAbrasiveFlow(QuantityArray.evenly(Kind.MASS_FLOW, gramsPerMinute(100), gramsPerMinute(800), 100))
            .overThickness(QuantityArray.evenly(Kind.LENGTH, millimetres(2), millimetres(80), 100));

    private double machinability = 115;
    private double pressureMpa = 380;
    private double orificeMm = 0.25;
    private double tubeMm = 0.76;
    private double flowGPerMin = 300;
    private double thicknessMm = 6;
    private double index = 3;

    private final Quantity<Pressure> pressure = megapascals(380);
    private final Quantity<Length> orifice = millimetres(0.25);
    private final Quantity<Length> tube = millimetres(0.76);
    private final Quantity<MassFlow> flow = gramsPerMinute(300);
    private final Quantity<Length> thickness = millimetres(6);

    /**
     * The metric equation in its own units, as a caller would write it.
     *
     * @return feed in mm/min
     */
    @Benchmark
    public double onePlain() {
        return Math.pow(
                machinability
                        * Math.pow(pressureMpa, 1.594)
                        * Math.pow(orificeMm, 1.374)
                        * Math.pow(flowGPerMin, 0.343)
                        / (788 * index * thicknessMm * Math.pow(tubeMm, 0.618)),
                1.15);
    }

    /**
     * The same feed by the library, with its uncertainty and cautions.
     *
     * @return the estimate
     */
    @Benchmark
    public Estimate<Speed> oneByLibrary() {
        return model.feed(jet, plate, index);
    }

    /**
     * The same feed with quantities of Indriya throughout: every factor a quantity, converted to the unit of the
     * equation, and raised to its power by hand, as quantities have no fractional power.
     *
     * @return the feed
     */
    @Benchmark
    public Quantity<Speed> oneByIndriya() {
        Quantity<Dimensionless> ability = power(pressure.to(Units.MEGAPASCAL), 1.594)
                .multiply(power(orifice.to(Units.MILLIMETRE), 1.374))
                .multiply(power(flow.to(Units.GRAM_PER_MINUTE), 0.343))
                .divide(power(tube.to(Units.MILLIMETRE), 0.618))
                .divide(Quantities.getQuantity(thickness.to(Units.MILLIMETRE).getValue(), AbstractUnit.ONE))
                .multiply(machinability / (788 * index))
                .asType(Dimensionless.class);
        return Quantities.getQuantity(Math.pow(ability.getValue().doubleValue(), 1.15), Units.MILLIMETRE_PER_MINUTE)
                .to(Units.METRE_PER_SECOND);
    }

    private static Quantity<Dimensionless> power(Quantity<?> quantity, double exponent) {
        return Quantities.getQuantity(Math.pow(quantity.getValue().doubleValue(), exponent), AbstractUnit.ONE);
    }

    /**
     * A curve of 10,000 thicknesses in a plain loop, the ability of the jet found once.
     *
     * @return feeds in mm/min
     */
    @Benchmark
    public double[] curvePlain() {
        double ability = machinability
                * Math.pow(pressureMpa, 1.594)
                * Math.pow(orificeMm, 1.374)
                * Math.pow(flowGPerMin, 0.343)
                / (788 * index * Math.pow(tubeMm, 0.618));
        double[] feeds = new double[thicknessesMm.length];
        for (int i = 0; i < feeds.length; i++) {
            feeds[i] = Math.pow(ability / thicknessesMm[i], 1.15);
        }
        return feeds;
    }

    /**
     * The same curve by the library.
     *
     * @return the curve
     */
    @Benchmark
    public FeedCurve curveByLibrary() {
        return model.curve(jet, plate.material(), index, thicknesses);
    }

    /**
     * A sweep of a million points: pressure, flow of abrasive and thickness, 100 values each.
     *
     * @return sum of all feeds
     */
    @Benchmark
    @OutputTimeUnit(TimeUnit.MILLISECONDS)
    public double millionPoints() {
        double[] sum = new double[1];
        sweep.each((p, o, t, m, h, q, feed) -> sum[0] += feed);
        return sum[0];
    }
}
