package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Workpieces that lie on each other and are cut in one pass: sheets of one kind, or layers of different materials.
 *
 * <p>Each layer uses up a share of what the jet can separate, its thickness over the depth that the jet would separate in
 * that layer's material alone; the stack is cut at index q where the shares add up to 1/q: {@code sum h_i / D_i(u) = 1/q}
 * (derived: the abrasive spends its power evenly over the depth). For layers of one material this is one plate of the
 * whole thickness. Gaps between the sheets, in which the jet spreads, are not in it.
 */
public final class MaterialStack implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final int MOST_SHEETS = 1000;
    private static final double GUESS_M_PER_S = 2e-3;

    private static final Caution CAUTION = Caution.notice(
            "stack",
            "clamp the stack without gaps: in a gap the jet spreads, and the sheets below are cut worse; pierce it with"
                    + " care, as water between sheets may part or bend them");

    private final List<Workpiece> layers;

    private MaterialStack(List<Workpiece> layers) {
        this.layers = List.copyOf(layers);
        Require.between("number of layers", layers.size(), 1, MOST_SHEETS, Units.ONE, "");
    }

    /**
     * A stack of layers.
     *
     * @param layers the layers, the uppermost first, 1 to 1000
     * @return the stack
     */
    public static MaterialStack of(Workpiece... layers) {
        return new MaterialStack(List.of(layers));
    }

    /**
     * A stack of like sheets.
     *
     * @param sheet one sheet
     * @param count how many, 1 to 1000
     * @return the stack
     */
    public static MaterialStack sheets(Workpiece sheet, int count) {
        Require.between("number of sheets", count, 1, MOST_SHEETS, Units.ONE, "");
        return new MaterialStack(Collections.nCopies(count, sheet));
    }

    /**
     * The layers.
     *
     * @return the layers, the uppermost first
     */
    public List<Workpiece> layers() {
        return layers;
    }

    /**
     * Thickness of the whole stack.
     *
     * @return the thickness, in m
     */
    public Quantity<Length> thickness() {
        return Kind.LENGTH.of(thicknessSi());
    }

    private double thicknessSi() {
        return layers.stream().mapToDouble(Workpiece::thicknessSi).sum();
    }

    /**
     * Feed for the whole stack.
     *
     * @param model the model
     * @param jet the jet
     * @param index quality index of the lowest face, 1 or more
     * @return the feed; its uncertainty is the mean of the layers', weighted by their shares, as if they were wrong together
     * @throws CannotReachException if the jet does not cut one of the materials at all
     */
    public Estimate<Speed> feed(FeedModel model, AbrasiveJet jet, double index) {
        Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
        double unlimited = FallingKernel.inverse(feed -> reach(model, jet, feed), index, GUESS_M_PER_S);
        if (unlimited == 0) {
            throw new CannotReachException(0, 0, "this jet in a layer of the stack", "");
        }
        double uncertainty = 0;
        for (Workpiece layer : layers) {
            double share = layer.thicknessSi() / model.separationDepthSi(jet, layer.material(), unlimited);
            uncertainty += share * index * model.relativeUncertainty(layer.material());
        }
        double feed = Math.min(unlimited, model.maximumFeedSi());
        Estimate<Speed> estimate = Estimate.withinFactor(Kind.SPEED, feed, uncertainty, jet.cautions());
        for (Workpiece layer : layers.stream().distinct().toList()) {
            estimate = estimate.with(layer.material().cautions());
        }
        estimate = layers.size() > 1 ? estimate.with(List.of(CAUTION)) : estimate;
        return feed < unlimited ? estimate.with(List.of(LimitedFeed.caution(unlimited, feed))) : estimate;
    }

    /** How many times over the jet could separate the stack: 1 / sum h_i / D_i(u). */
    private double reach(FeedModel model, AbrasiveJet jet, double feedMPerS) {
        double used = 0;
        for (Workpiece layer : layers) {
            used += layer.thicknessSi() / model.separationDepthSi(jet, layer.material(), feedMPerS);
        }
        return 1 / used;
    }

    /**
     * How much more length of sheet a pass through the stack yields in a time than sheets cut one by one: above 1 the stack
     * cuts faster. Piercing and handling, which a stack saves, come on top.
     *
     * @param model the model
     * @param jet the jet
     * @param index quality index, 1 or more
     * @return the ratio of the times
     */
    public double timeRatio(FeedModel model, AbrasiveJet jet, double index) {
        double oneByOne = 0;
        for (Workpiece layer : layers) {
            oneByOne += 1 / model.feed(jet, layer, index).si();
        }
        return oneByOne * feed(model, jet, index).si();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MaterialStack that && layers.equals(that.layers);
    }

    @Override
    public int hashCode() {
        return Objects.hash(layers);
    }

    @Override
    public String toString() {
        return "stack of " + layers.size() + " layers, " + layers;
    }
}
