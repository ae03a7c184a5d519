package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.QualityIndexTable;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Stack of workpieces that are cut in one pass: sheets of one kind, or layers of different materials.
 *
 * <pre>{@code
 * MaterialStack stack = MaterialStack.sheets(sheet, 4);
 * Estimate<Speed> feed = stack.feed(model, jet, CutQuality.MEDIUM);
 * double ratio = stack.timeRatio(model, jet, 3);
 * }</pre>
 *
 * <p>Each layer uses a share of what the jet can separate, its thickness over the depth that the jet would separate in that
 * layer's material alone; the stack is cut at index q where the shares add up to 1/q: {@code sum h_i / D_i(u) = 1/q}
 * (derived: the abrasive spends its power evenly over the depth). For layers of one material this is one plate of the
 * total thickness. Gaps between the sheets, in which the jet spreads, are not included.
 */
public final class MaterialStack implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final int MAX_LAYERS = 1000;
    private static final double GUESS_M_PER_S = 2e-3;

    private static final Caution CAUTION = Caution.notice(Message.of(
            "stack",
            "clamp the stack without gaps: in a gap the jet spreads, and the sheets below are cut worse; pierce it"
                    + " with care, as water between the sheets can separate or bend them"));

    /** Checked content, and the serial form. */
    private record Values(List<Workpiece> layers) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            layers = List.copyOf(layers);
            requireCount(layers.size());
        }

        private Object readResolve() {
            return new MaterialStack(this);
        }
    }

    private final transient Values values;

    private MaterialStack(Values values) {
        this.values = values;
    }

    private static void requireCount(int layers) {
        Require.between("number of layers", layers, 1, MAX_LAYERS, Units.ONE, "");
    }

    /**
     * Returns a stack of layers.
     *
     * @param layers layers, the top one first, 1 to 1000
     * @return the stack
     */
    public static MaterialStack of(Workpiece... layers) {
        Objects.requireNonNull(layers, "layers");
        return new MaterialStack(new Values(List.of(layers)));
    }

    /**
     * Returns a stack of equal sheets.
     *
     * @param sheet one sheet
     * @param count number of sheets, 1 to 1000
     * @return the stack
     */
    public static MaterialStack sheets(Workpiece sheet, int count) {
        Objects.requireNonNull(sheet, "sheet");
        requireCount(count);
        return new MaterialStack(new Values(Collections.nCopies(count, sheet)));
    }

    /**
     * {@return the layers, the top one first}
     */
    public List<Workpiece> layers() {
        return values.layers;
    }

    /**
     * {@return the total thickness}
     */
    public Quantity<Length> thickness() {
        return Kind.LENGTH.of(
                values.layers.stream().mapToDouble(Workpiece::thicknessSi).sum());
    }

    /**
     * Returns the feed rate for the whole stack and a cut quality, by the standard table of quality indices.
     *
     * @param model feed model
     * @param jet jet
     * @param quality cut quality at the bottom
     * @return the feed rate, as {@link #feed(FeedModel, AbrasiveJet, double)}
     */
    public Estimate<Speed> feed(FeedModel model, AbrasiveJet jet, CutQuality quality) {
        return feed(model, jet, QualityIndexTable.standard().index(quality));
    }

    /**
     * Returns the feed rate for the whole stack.
     *
     * @param model feed model
     * @param jet jet
     * @param index quality index at the bottom, 1 or more
     * @return the feed rate; its uncertainty is the mean of the layers', weighted by their shares, as if fully correlated
     * @throws dev.waterjet.measure.NoSolutionException if the jet does not cut one of the materials at all
     */
    public Estimate<Speed> feed(FeedModel model, AbrasiveJet jet, double index) {
        Objects.requireNonNull(model, "model");
        Objects.requireNonNull(jet, "jet");
        Settings.index(index);
        double unlimited = LogRoot.ofDecreasing(feed -> reach(model, jet, feed), index, GUESS_M_PER_S);
        if (unlimited == 0) {
            throw noCut(model, jet);
        }
        double uncertainty = 0;
        for (Workpiece layer : values.layers) {
            double share = layer.thicknessSi() / model.separationDepthSi(jet, layer.material(), unlimited);
            uncertainty += share * index * model.relativeUncertainty(layer.material());
        }
        double feed = Math.min(unlimited, model.maximumFeedSi());
        Estimate<Speed> estimate = Estimate.withinFactor(Kind.SPEED, feed, uncertainty, jet.cautions());
        for (Workpiece layer : values.layers.stream().distinct().toList()) {
            double depth = index * layer.thicknessSi();
            estimate =
                    estimate.with(layer.material().cautions()).with(model.cautions(jet, layer.material(), depth, feed));
        }
        estimate = values.layers.size() > 1 ? estimate.with(List.of(CAUTION)) : estimate;
        return feed < unlimited ? estimate.with(FeedCautions.ofLimit(unlimited, feed)) : estimate;
    }

    /** The refusal of the first layer that the jet does not cut. */
    private RuntimeException noCut(FeedModel model, AbrasiveJet jet) {
        Workpiece first = values.layers.get(0);
        return FeedCautions.noCut(values.layers.stream()
                .filter(layer -> model.separationDepthSi(jet, layer.material(), GUESS_M_PER_S) == 0)
                .findFirst()
                .orElse(first)
                .material());
    }

    /** Ratio of what the jet could separate to the stack: 1 / sum h_i / D_i(u). */
    private double reach(FeedModel model, AbrasiveJet jet, double feedMPerS) {
        double used = 0;
        for (Workpiece layer : values.layers) {
            used += layer.thicknessSi() / model.separationDepthSi(jet, layer.material(), feedMPerS);
        }
        return 1 / used;
    }

    /**
     * Returns the cutting time of the sheets one by one over that of the stack: above 1 the stack is faster. Pierces and
     * handling, which a stack saves, are not included.
     *
     * @param model feed model
     * @param jet jet
     * @param index quality index, 1 or more
     * @return the ratio of the times
     */
    public double timeRatio(FeedModel model, AbrasiveJet jet, double index) {
        Objects.requireNonNull(model, "model");
        Objects.requireNonNull(jet, "jet");
        double oneByOne = 0;
        for (Workpiece layer : values.layers) {
            oneByOne += 1 / model.feed(jet, layer, index).si();
        }
        return oneByOne * feed(model, jet, index).si();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MaterialStack that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "stack of " + values.layers.size() + " layers, " + values.layers;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
