package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.quality.CutQuality;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Conditions of a cut: an abrasive jet, a workpiece and a feed model. Every model of the cut takes them together, so that
 * kerf, lag, surface, pierce and cost refer to the same cut. Immutable.
 *
 * <pre>{@code
 * CutConditions cut = CutConditions.of(jet, plate, MachinabilityFeed.published());
 * Estimate<Speed> feed = cut.feed(CutQuality.MEDIUM);
 * Estimate<Length> depth = cut.depth(feed.value());
 * double index = cut.index(feed.value());
 * List<Caution> cautions = feed.cautions();
 * }</pre>
 */
public final class CutConditions implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values(AbrasiveJet jet, Workpiece workpiece, FeedModel feedModel) implements Serializable {

        Values {
            Objects.requireNonNull(jet, "jet");
            Objects.requireNonNull(workpiece, "workpiece");
            feedModel = LayeredFeed.of(Objects.requireNonNull(feedModel, "feedModel"), workpiece);
        }

        private Object readResolve() {
            return new CutConditions(this);
        }
    }

    private final transient Values values;

    private CutConditions(Values values) {
        this.values = values;
    }

    /**
     * Makes the conditions of a cut.
     *
     * @param jet abrasive jet
     * @param workpiece workpiece
     * @param feedModel feed model
     * @return the conditions
     */
    public static CutConditions of(AbrasiveJet jet, Workpiece workpiece, FeedModel feedModel) {
        return new CutConditions(new Values(jet, workpiece, feedModel));
    }

    /**
     * Returns these conditions with another jet.
     *
     * @param jet abrasive jet
     * @return the conditions with that jet
     */
    public CutConditions withJet(AbrasiveJet jet) {
        return of(jet, workpiece(), feedModel());
    }

    /**
     * Returns these conditions with another workpiece.
     *
     * @param workpiece workpiece
     * @return the conditions with that workpiece
     */
    public CutConditions withWorkpiece(Workpiece workpiece) {
        return of(jet(), workpiece, feedModel());
    }

    /**
     * Returns these conditions with another feed model.
     *
     * @param feedModel feed model
     * @return the conditions with that model
     */
    public CutConditions withFeedModel(FeedModel feedModel) {
        return of(jet(), workpiece(), feedModel);
    }

    /** {@return the abrasive jet} */
    public AbrasiveJet jet() {
        return values.jet;
    }

    /** {@return the workpiece} */
    public Workpiece workpiece() {
        return values.workpiece;
    }

    /** {@return the feed model; for layers of several materials one that reckons with each of them} */
    public FeedModel feedModel() {
        return values.feedModel;
    }

    /** {@return the material of the workpiece} */
    public Material material() {
        return workpiece().material();
    }

    /**
     * Returns the feed rate for a cut quality, by the standard table of quality indices.
     *
     * @param quality cut quality
     * @return the feed rate, with its uncertainty and all cautions
     */
    public Estimate<Speed> feed(CutQuality quality) {
        return feedModel().feed(jet(), workpiece(), quality);
    }

    /**
     * Returns the feed rate for a quality index.
     *
     * @param index quality index, 1 or more: 1 just separates
     * @return the feed rate, with its uncertainty and all cautions
     */
    public Estimate<Speed> feed(double index) {
        return feedModel().feed(jet(), workpiece(), index);
    }

    /**
     * Returns the depth that the jet just separates at a feed rate.
     *
     * @param feed feed rate, above 0
     * @return the separation depth
     */
    public Estimate<Length> depth(Quantity<Speed> feed) {
        return feedModel().depth(jet(), material(), feed);
    }

    /**
     * Returns the quality index at which a feed rate cuts the workpiece.
     *
     * @param feed feed rate, above 0
     * @return the index; below 1 the jet does not separate the workpiece
     */
    public double index(Quantity<Speed> feed) {
        return feedModel().index(jet(), workpiece(), feed);
    }

    /**
     * Returns the feed rate over the thickness of a plate of this material.
     *
     * @param index quality index, 1 or more
     * @param thicknesses thicknesses, each above 0
     * @return the curve
     */
    public FeedCurve curve(double index, QuantityArray<Length> thicknesses) {
        return feedModel().curve(jet(), material(), index, thicknesses);
    }

    /** {@return the relative standard uncertainty of a feed rate: that of the model and of the material} */
    public double relativeUncertainty() {
        return feedModel().relativeUncertainty(material());
    }

    /** {@return the cautions of jet and material; those of a feed rate travel with its estimate} */
    public List<Caution> cautions() {
        Set<Caution> all = new LinkedHashSet<>(jet().cautions());
        all.addAll(material().cautions());
        all.addAll(workpiece().cautions());
        return List.copyOf(all);
    }

    /**
     * Returns the cautions of the feed model and of the thickness for one cut, on SI numbers.
     *
     * @param depthM depth separated in m: thickness times quality index
     * @param feedMPerS feed rate in m/s
     * @return the cautions
     */
    public List<Caution> feedCautions(double depthM, double feedMPerS) {
        Set<Caution> all = new LinkedHashSet<>(feedModel().cautions(jet(), material(), depthM, feedMPerS));
        all.addAll(FeedCautions.ofThickness(thicknessSi()));
        return List.copyOf(all);
    }

    /** {@return the thickness of the workpiece in m} */
    public double thicknessSi() {
        return workpiece().thicknessSi();
    }

    /**
     * Returns the feed rate at which the jet just separates a depth of this material, on SI numbers.
     *
     * @param depthM depth in m, above 0
     * @return feed rate in m/s, without limit; 0 if the jet does not cut at all
     */
    public double separationFeedSi(double depthM) {
        return feedModel().separationFeedSi(jet(), material(), depthM);
    }

    /**
     * Returns the depth that the jet just separates at a feed rate, on SI numbers.
     *
     * @param feedMPerS feed rate in m/s, above 0
     * @return depth in m; 0 if the jet does not cut at all
     */
    public double separationDepthSi(double feedMPerS) {
        return feedModel().separationDepthSi(jet(), material(), feedMPerS);
    }

    /**
     * Returns the feed rate for a quality index, on SI numbers.
     *
     * @param index quality index, 1 or more
     * @return feed rate in m/s, without limit; 0 if the jet does not cut at all
     */
    public double feedSi(double index) {
        return feedModel().feedSi(jet(), material(), thicknessSi(), index);
    }

    /**
     * Returns the quality index at a feed rate, on SI numbers.
     *
     * @param feedMPerS feed rate in m/s, above 0
     * @return quality index; below 1 the jet does not separate the workpiece
     */
    public double indexSi(double feedMPerS) {
        return feedModel().indexSi(jet(), material(), thicknessSi(), feedMPerS);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("cut conditions")
                .put("jet", jet())
                .put("workpiece", workpiece())
                .put("feed_model", feedModel().name())
                .put("evidence", feedModel().evidence())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CutConditions that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return workpiece() + ", " + jet() + ", feed model " + feedModel().name();
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}
