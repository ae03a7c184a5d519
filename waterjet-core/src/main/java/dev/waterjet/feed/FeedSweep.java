package dev.waterjet.feed;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.IOException;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleBinaryOperator;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;

/**
 * Feed rates over a grid of inputs: every value of every swept input with every value of the others. Immutable.
 *
 * <p>The points have a fixed order, as the digits of a counter: the quality index runs fastest, then thickness, abrasive flow
 * rate, focusing tube, orifice, and pressure slowest. They are computed one after another and passed on, so that a sweep of
 * any size needs no memory. Models of closed form make no object per point. A part of a sweep, {@link #each(long, long, Row)
 * from one point to another}, gives the bits that the whole sweep gives there, on any machine.
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

    /** Receiver of the points of a sweep, one by one, as SI numbers. */
    @FunctionalInterface
    public interface Row {

        /**
         * Receives one point.
         *
         * @param pressurePa gauge pressure at the orifice in Pa
         * @param orificeM bore of the orifice in m
         * @param tubeM bore of the focusing tube in m
         * @param abrasiveKgPerS abrasive flow rate in kg/s
         * @param thicknessM thickness in m
         * @param index quality index
         * @param feedMPerS feed rate in m/s
         */
        void take(
                double pressurePa,
                double orificeM,
                double tubeM,
                double abrasiveKgPerS,
                double thicknessM,
                double index,
                double feedMPerS);
    }

    private static final int MAX_FEEDS = 1_000_000_000;

    /** Checked content, and the serial form. */
    private record Values(FeedModel model, AbrasiveJet jet, Material material, List<QuantityArray<?>> inputs)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(model, "model");
            Objects.requireNonNull(jet, "jet");
            Objects.requireNonNull(material, "material");
            inputs = List.copyOf(inputs);
            int count = SweepAxis.ALL.size();
            Require.between("number of inputs", inputs.size(), count, count, Units.ONE, "");
            for (int i = 0; i < count; i++) {
                SweepAxis.ALL.get(i).require(inputs.get(i));
            }
        }

        private Object readResolve() {
            return new FeedSweep(this);
        }
    }

    private final transient Values values;
    private final transient double[][] inputs;

    private FeedSweep(Values values) {
        this.values = values;
        this.inputs = values.inputs.stream().map(QuantityArray::toSi).toArray(double[][]::new);
    }

    /**
     * Returns a sweep of a single point, to which swept inputs are added.
     *
     * @param model feed model
     * @param jet jet, whose settings hold where none are swept
     * @param workpiece workpiece, whose thickness holds where none is swept
     * @param index quality index, 1 or more, which holds where none is swept
     * @return the sweep
     */
    public static FeedSweep of(FeedModel model, AbrasiveJet jet, Workpiece workpiece, double index) {
        Objects.requireNonNull(model, "model");
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(workpiece, "workpiece");
        return new FeedSweep(new Values(
                model,
                jet,
                workpiece.material(),
                List.of(
                        QuantityArray.ofSi(Kind.PRESSURE, jet.pressureSi()),
                        QuantityArray.ofSi(Kind.LENGTH, jet.orificeBoreSi()),
                        QuantityArray.ofSi(Kind.LENGTH, jet.tubeBoreSi()),
                        QuantityArray.ofSi(Kind.MASS_FLOW, jet.abrasiveFlowSi()),
                        QuantityArray.ofSi(Kind.LENGTH, workpiece.thicknessSi()),
                        QuantityArray.ofSi(Kind.RATIO, index))));
    }

    private FeedSweep with(int place, QuantityArray<?> swept) {
        List<QuantityArray<?>> changed = new ArrayList<>(values.inputs);
        changed.set(place, swept);
        return new FeedSweep(new Values(values.model, values.jet, values.material, changed));
    }

    /**
     * Returns this sweep over pressures.
     *
     * @param pressures gauge pressures at the orifice, each above 0
     * @return the sweep
     */
    public FeedSweep overPressure(QuantityArray<Pressure> pressures) {
        return with(SweepAxis.PRESSURE, Objects.requireNonNull(pressures, "pressures"));
    }

    /**
     * Returns this sweep over orifices.
     *
     * @param bores bores of the orifice, each above 0 and below every bore of a focusing tube
     * @return the sweep
     */
    public FeedSweep overOrifice(QuantityArray<Length> bores) {
        return with(SweepAxis.ORIFICE, Objects.requireNonNull(bores, "bores"));
    }

    /**
     * Returns this sweep over focusing tubes.
     *
     * @param bores bores of the focusing tube, each above every bore of an orifice
     * @return the sweep
     */
    public FeedSweep overTube(QuantityArray<Length> bores) {
        return with(SweepAxis.TUBE, Objects.requireNonNull(bores, "bores"));
    }

    /**
     * Returns this sweep over abrasive flow rates.
     *
     * @param flows mass flows, each above 0
     * @return the sweep
     */
    public FeedSweep overAbrasiveFlow(QuantityArray<MassFlow> flows) {
        return with(SweepAxis.FLOW, Objects.requireNonNull(flows, "flows"));
    }

    /**
     * Returns this sweep over thicknesses.
     *
     * @param thicknesses thicknesses, each above 0
     * @return the sweep
     */
    public FeedSweep overThickness(QuantityArray<Length> thicknesses) {
        return with(SweepAxis.THICKNESS, Objects.requireNonNull(thicknesses, "thicknesses"));
    }

    /**
     * Returns this sweep over quality indices.
     *
     * @param indices indices, each 1 or more
     * @return the sweep
     */
    public FeedSweep overIndex(QuantityArray<Dimensionless> indices) {
        return with(SweepAxis.INDEX, Objects.requireNonNull(indices, "indices"));
    }

    /**
     * {@return the number of points}
     *
     * @throws DomainException if there are more than 9.2e18
     */
    public long size() {
        long size = 1;
        for (double[] axis : inputs) {
            if (Math.multiplyHigh(size, axis.length) != 0 || size * axis.length < 0) {
                throw new DomainException(
                        Message.of("sweep-too-large", "the sweep has more than {limit} points")
                                .with("limit", Long.MAX_VALUE),
                        "number of points");
            }
            size *= axis.length;
        }
        return size;
    }

    /**
     * Passes on every point.
     *
     * @param row receiver of the points
     * @throws DomainException if a swept orifice is not smaller than a focusing tube
     */
    public void each(Row row) {
        each(0, size(), row);
    }

    /**
     * Passes on a part of the points.
     *
     * @param from first point, from 0
     * @param to end of the part, not included; from the first point to the number of points
     * @param row receiver of the points
     * @throws DomainException if there are no such points, or a swept orifice is not smaller than a focusing tube
     */
    public void each(long from, long to, Row row) {
        Objects.requireNonNull(row, "row");
        if (from < 0 || to < from || to > size()) {
            throw new DomainException(
                    Message.of("no-such-points", "there are no points {from} to {to}; the sweep has {points}")
                            .with("from", from)
                            .with("to", to)
                            .with("points", size()),
                    "point");
        }
        requireTubesAboveOrifices();
        int[] digits = digits(from);
        FeedModel model = values.model;
        Material material = values.material;
        Settings settings = new Settings(values.jet);
        double maximum = model.maximumFeedSi();
        boolean isOneFeedForEachJet = inputs[SweepAxis.THICKNESS].length == 1 && inputs[SweepAxis.INDEX].length == 1;
        DoubleBinaryOperator feeds = null;
        for (long at = from; at < to; at++) {
            double pressurePa = inputs[SweepAxis.PRESSURE][digits[SweepAxis.PRESSURE]];
            double orificeM = inputs[SweepAxis.ORIFICE][digits[SweepAxis.ORIFICE]];
            double tubeM = inputs[SweepAxis.TUBE][digits[SweepAxis.TUBE]];
            double flowKgPerS = inputs[SweepAxis.FLOW][digits[SweepAxis.FLOW]];
            double thicknessM = inputs[SweepAxis.THICKNESS][digits[SweepAxis.THICKNESS]];
            double index = inputs[SweepAxis.INDEX][digits[SweepAxis.INDEX]];
            settings.pressure(pressurePa).orifice(orificeM).tube(tubeM).abrasiveFlow(flowKgPerS);
            double feed;
            if (isOneFeedForEachJet) {
                feed = model.feedSi(settings, material, thicknessM, index);
            } else {
                if (feeds == null || (digits[SweepAxis.THICKNESS] == 0 && digits[SweepAxis.INDEX] == 0)) {
                    feeds = model.feedsSi(settings, material);
                }
                feed = feeds.applyAsDouble(thicknessM, index);
            }
            row.take(pressurePa, orificeM, tubeM, flowKgPerS, thicknessM, index, Math.min(feed, maximum));
            increment(digits);
        }
    }

    private void requireTubesAboveOrifices() {
        for (double tubeM : inputs[SweepAxis.TUBE]) {
            for (double orificeM : inputs[SweepAxis.ORIFICE]) {
                Require.above(
                        "focusing tube bore",
                        tubeM,
                        orificeM,
                        Units.MILLIMETRE,
                        "the bore of the orifice: the water would strike the tube");
            }
        }
    }

    /** The place of each input at a point. */
    private int[] digits(long point) {
        int[] digits = new int[inputs.length];
        long remainder = point;
        for (int i = inputs.length - 1; i >= 0 && remainder > 0; i--) {
            digits[i] = (int) (remainder % inputs[i].length);
            remainder /= inputs[i].length;
        }
        return digits;
    }

    private void increment(int[] digits) {
        for (int i = inputs.length - 1; i >= 0; i--) {
            if (++digits[i] < inputs[i].length) {
                return;
            }
            digits[i] = 0;
        }
    }

    /**
     * Returns all feed rates, for a sweep that fits into memory.
     *
     * @return the feed rates in the order of the points
     * @throws DomainException if there are more than 10<sup>9</sup> points
     */
    public QuantityArray<Speed> feeds() {
        Require.atMost(
                "number of points",
                (double) size(),
                MAX_FEEDS,
                Units.ONE,
                "an array holds no more; take the points one by one");
        double[] feeds = new double[(int) size()];
        each(new Filler(feeds));
        return QuantityArray.ofSi(Kind.SPEED, feeds);
    }

    private static final class Filler implements Row {

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
     * Writes every point as a row of comma-separated values, in SI and full precision, below a header.
     *
     * @param out destination
     * @throws UncheckedIOException if {@code out} fails
     */
    public void writeCsv(Appendable out) {
        Objects.requireNonNull(out, "out");
        StringBuilder line = new StringBuilder(160);
        append(out, line.append(HEADER).append('\n'));
        each((p, o, t, m, h, q, feed) -> {
            line.setLength(0);
            for (double cell : new double[] {p, o, t, m, h, q}) {
                line.append(cell).append(',');
            }
            append(out, line.append(feed).append('\n'));
        });
    }

    private static void append(Appendable out, CharSequence line) {
        try {
            out.append(line);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FeedSweep that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "sweep of " + size() + " feed rates of " + values.material.name() + " by " + values.model.name();
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
