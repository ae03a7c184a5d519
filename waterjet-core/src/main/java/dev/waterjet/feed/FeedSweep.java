package dev.waterjet.feed;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.IOException;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.util.Objects;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;

/**
 * Feeds over a grid of inputs: every value of every swept input with every value of the others. Immutable.
 *
 * <p>The points stand in a fixed order, as the digits of a counter: the index runs fastest, then thickness, flow of
 * abrasive, tube, orifice, and pressure slowest. They are computed one after another and handed on, so that a sweep of any
 * size needs no memory of its own. Models of closed form make no object per point. A part of a sweep, {@link #each(long,
 * long, SweepRow) from one point to another}, gives the bits that the whole sweep gives there, on whatever machine.
 *
 * <pre>{@code
 * FeedSweep.of(model, jet, plate, 3)
 *         .overPressure(QuantityArray.parse(Kind.PRESSURE, "200 MPa..600 MPa step 50 MPa"))
 *         .overThickness(QuantityArray.parse(Kind.LENGTH, "1 mm..50 mm step 1 mm"))
 *         .writeCsv(out);
 * }</pre>
 */
public final class FeedSweep implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final String HEADER = String.join(
            ",",
            Kind.PRESSURE.column("gauge_pressure"),
            Kind.LENGTH.column("orifice"),
            Kind.LENGTH.column("tube"),
            Kind.MASS_FLOW.column("abrasive_flow"),
            Kind.LENGTH.column("thickness"),
            "index",
            Kind.SPEED.column("feed"));

    /** Places of the inputs, the slowest first. */
    private static final int PRESSURE = 0;

    private static final int ORIFICE = 1;
    private static final int TUBE = 2;
    private static final int FLOW = 3;
    private static final int THICKNESS = 4;
    private static final int INDEX = 5;

    private final FeedModel model;
    private final AbrasiveJet jet;
    private final Material material;
    private final double[][] axes;

    private FeedSweep(FeedModel model, AbrasiveJet jet, Material material, double[][] axes) {
        this.model = Objects.requireNonNull(model, "model");
        this.jet = Objects.requireNonNull(jet, "jet");
        this.material = Objects.requireNonNull(material, "material");
        this.axes = axes;
    }

    /**
     * A sweep of a single point, to which inputs to sweep are added.
     *
     * @param model the model
     * @param jet the jet, whose settings stand where none are swept
     * @param piece the workpiece, whose thickness stands where none is swept
     * @param index quality index, 1 or more, which stands where none is swept
     * @return the sweep
     */
    public static FeedSweep of(FeedModel model, AbrasiveJet jet, Workpiece piece, double index) {
        Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
        return new FeedSweep(model, jet, piece.material(), new double[][] {
            {jet.water().pressureSi()},
            {jet.head().orifice().boreSi()},
            {jet.head().tube().boreSi()},
            {jet.abrasiveFlowSi()},
            {piece.thicknessSi()},
            {index}
        });
    }

    private FeedSweep with(int place, String name, QuantityArray<?> swept) {
        double[][] changed = axes.clone();
        changed[place] = swept.toSi();
        for (double value : changed[place]) {
            Require.positive(name, value, swept.kind().siUnit());
        }
        return new FeedSweep(model, jet, material, changed);
    }

    /**
     * This sweep over pressures.
     *
     * @param pressures gauge pressures at the orifice, each above zero
     * @return the sweep
     */
    public FeedSweep overPressure(QuantityArray<Pressure> pressures) {
        return with(PRESSURE, "pressure at the orifice", pressures);
    }

    /**
     * This sweep over orifices.
     *
     * @param bores bores of the orifice, each above zero and narrower than every tube
     * @return the sweep
     */
    public FeedSweep overOrifice(QuantityArray<Length> bores) {
        return with(ORIFICE, "orifice bore", bores);
    }

    /**
     * This sweep over focusing tubes.
     *
     * @param bores bores of the tube, each wider than every orifice
     * @return the sweep
     */
    public FeedSweep overTube(QuantityArray<Length> bores) {
        return with(TUBE, "focusing tube bore", bores);
    }

    /**
     * This sweep over flows of abrasive.
     *
     * @param flows mass flows, each above zero
     * @return the sweep
     */
    public FeedSweep overAbrasiveFlow(QuantityArray<MassFlow> flows) {
        return with(FLOW, "abrasive flow", flows);
    }

    /**
     * This sweep over thicknesses.
     *
     * @param thicknesses thicknesses, each above zero
     * @return the sweep
     */
    public FeedSweep overThickness(QuantityArray<Length> thicknesses) {
        return with(THICKNESS, "thickness", thicknesses);
    }

    /**
     * This sweep over quality indices.
     *
     * @param indices indices, each 1 or more
     * @return the sweep
     */
    public FeedSweep overIndex(QuantityArray<Dimensionless> indices) {
        for (double index : indices.toSi()) {
            Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
        }
        return with(INDEX, "quality index", indices);
    }

    /**
     * How many points the sweep has.
     *
     * @return the count
     * @throws ArithmeticException if there are more than 9.2e18
     */
    public long size() {
        long size = 1;
        for (double[] axis : axes) {
            size = Math.multiplyExact(size, axis.length);
        }
        return size;
    }

    /**
     * Hands on every point.
     *
     * @param row takes the points
     */
    public void each(SweepRow row) {
        each(0, size(), row);
    }

    /**
     * Hands on a part of the points.
     *
     * @param from first point, from 0
     * @param to end of the part, that point no longer included
     * @param row takes the points
     * @throws dev.waterjet.measure.DomainException if a swept orifice is no narrower than a tube
     */
    public void each(long from, long to, SweepRow row) {
        Objects.checkFromToIndex(from, to, size());
        for (double narrow : axes[TUBE]) {
            for (double wide : axes[ORIFICE]) {
                Require.above(
                        "focusing tube bore",
                        narrow,
                        wide,
                        Units.MILLIMETRE,
                        "the bore of the orifice: the water would strike the tube");
            }
        }
        int[] digits = digits(from);
        Settings settings = new Settings(jet);
        double highest = model.maximumFeedSi();
        for (long at = from; at < to; at++) {
            double pressurePa = axes[PRESSURE][digits[PRESSURE]];
            double orificeM = axes[ORIFICE][digits[ORIFICE]];
            double tubeM = axes[TUBE][digits[TUBE]];
            double flowKgPerS = axes[FLOW][digits[FLOW]];
            double thicknessM = axes[THICKNESS][digits[THICKNESS]];
            double index = axes[INDEX][digits[INDEX]];
            settings.pressure(pressurePa).orifice(orificeM).tube(tubeM).abrasiveFlow(flowKgPerS);
            double feed = model.feedSi(settings, material, thicknessM, index);
            row.take(pressurePa, orificeM, tubeM, flowKgPerS, thicknessM, index, Math.min(feed, highest));
            countOn(digits);
        }
    }

    /** Where each input stands at a point. */
    private int[] digits(long point) {
        int[] digits = new int[axes.length];
        long rest = point;
        for (int i = axes.length - 1; i >= 0 && rest > 0; i--) {
            digits[i] = (int) (rest % axes[i].length);
            rest /= axes[i].length;
        }
        return digits;
    }

    private void countOn(int[] digits) {
        for (int i = axes.length - 1; i >= 0; i--) {
            if (++digits[i] < axes[i].length) {
                return;
            }
            digits[i] = 0;
        }
    }

    /**
     * All feeds, for a sweep that fits into memory.
     *
     * @return the feeds in the order of the points
     * @throws ArithmeticException if there are more points than an array can hold
     */
    public QuantityArray<Speed> feeds() {
        double[] feeds = new double[Math.toIntExact(size())];
        Filler filler = new Filler(feeds);
        each(filler);
        return QuantityArray.ofSi(Kind.SPEED, feeds);
    }

    private static final class Filler implements SweepRow {

        private final double[] feeds;
        private int next;

        Filler(double[] feeds) {
            this.feeds = feeds;
        }

        @Override
        public void take(double p, double o, double t, double m, double h, double q, double feedMPerS) {
            feeds[next++] = feedMPerS;
        }
    }

    /**
     * Writes every point as a row of comma-separated values, in SI and full precision, under a header.
     *
     * @param out where to write
     * @throws UncheckedIOException if {@code out} fails
     */
    public void writeCsv(Appendable out) {
        try {
            out.append(HEADER).append('\n');
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        StringBuilder line = new StringBuilder(160);
        each((p, o, t, m, h, q, feed) -> {
            line.setLength(0);
            line.append(p)
                    .append(',')
                    .append(o)
                    .append(',')
                    .append(t)
                    .append(',')
                    .append(m);
            line.append(',')
                    .append(h)
                    .append(',')
                    .append(q)
                    .append(',')
                    .append(feed)
                    .append('\n');
            try {
                out.append(line);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    @Override
    public String toString() {
        return "sweep of " + size() + " feeds of " + material.name() + " by " + model.name();
    }
}
