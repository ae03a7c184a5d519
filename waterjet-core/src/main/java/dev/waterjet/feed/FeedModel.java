package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.QualityIndexTable;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleBinaryOperator;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Feed rate model of an abrasive waterjet. One implementation per published model; all are immutable.
 *
 * <p>An implementation gives the feed rate and the depth of a cut that just separates, each the inverse of the other; the
 * rest follows from them. The quality index <i>q</i> is the depth that the jet could just separate over the thickness of the
 * workpiece: 1 just separates, a higher index leaves a better cut surface.
 *
 * <pre>{@code
 * FeedModel shop = MachinabilityFeed.published().capped(millimetresPerMinute(4000));
 * Estimate<Speed> feed = shop.feed(jet, plate, CutQuality.MEDIUM);
 * Estimate<Length> depth = shop.depth(jet, plate.material(), millimetresPerMinute(200));
 * List<Caution> cautions = feed.cautions();
 * }</pre>
 */
public interface FeedModel extends HasEvidence, Serializable {

    /**
     * Default maximum of a feed rate, 25 m/min in m/s: about the traverse speed of a cutting table (common practice, no
     * source). The formulas have no limit and grow without bound in thin sheet; {@link #capped} sets another.
     */
    double DEFAULT_MAXIMUM_FEED_M_PER_S = 25 / 60.0;

    /** {@return the name of the model, for tables and legends} */
    String name();

    /**
     * Returns the feed rate at which the jet just separates a depth, on SI numbers.
     *
     * @param jet jet
     * @param material material
     * @param depthM depth in m, above 0
     * @return feed rate in m/s as the formula gives it, without limit; decreases with the depth; 0 if the jet does not cut at
     *     all
     */
    double separationFeedSi(JetSettings jet, Material material, double depthM);

    /**
     * Returns the depth that the jet just separates at a feed rate, on SI numbers: the inverse of {@link #separationFeedSi}.
     *
     * @param jet jet
     * @param material material
     * @param feedMPerS feed rate in m/s, above 0
     * @return depth in m; decreases with the feed rate; 0 if the jet does not cut at all
     */
    double separationDepthSi(JetSettings jet, Material material, double feedMPerS);

    /**
     * Returns the relative standard uncertainty of a feed rate: that of the model and that of the material together.
     *
     * @param material material
     * @return the ratio
     */
    double relativeUncertainty(Material material);

    /**
     * Returns the feed rate for a quality index, on SI numbers, without limit. A model overrides it if its quality does not
     * follow from depth.
     *
     * @param jet jet
     * @param material material
     * @param thicknessM thickness in m, above 0
     * @param index quality index, 1 or more
     * @return feed rate in m/s; 0 if the jet does not cut at all
     */
    default double feedSi(JetSettings jet, Material material, double thicknessM, double index) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return separationFeedSi(jet, material, Settings.index(index) * thicknessM);
    }

    /**
     * Returns {@link #feedSi} of one jet and material as a function of thickness and quality index, for loops over these. A model
     * overrides it if a part of its formula depends on jet and material alone; the function gives the same digits.
     *
     * @param jet jet, whose settings do not change while the function is used
     * @param material material
     * @return feed rate in m/s of a thickness in m and a quality index
     */
    default DoubleBinaryOperator feedsSi(JetSettings jet, Material material) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return (thicknessM, index) -> feedSi(jet, material, thicknessM, index);
    }

    /**
     * Returns the quality index at a feed rate, on SI numbers: the inverse of {@link #feedSi}.
     *
     * @param jet jet
     * @param material material
     * @param thicknessM thickness in m, above 0
     * @param feedMPerS feed rate in m/s, above 0
     * @return quality index; below 1 the jet does not separate the workpiece
     */
    default double indexSi(JetSettings jet, Material material, double thicknessM, double feedMPerS) {
        return separationDepthSi(jet, material, feedMPerS) / thicknessM;
    }

    /** {@return the maximum feed rate that this model returns, in m/s: the limit for thin sheet} */
    default double maximumFeedSi() {
        return DEFAULT_MAXIMUM_FEED_M_PER_S;
    }

    /**
     * Returns the cautions of a feed rate beyond those of jet and material. By default: a feed rate above that of the known
     * test cuts, a worn focusing tube, a material harder than garnet. A model that overrides it adds its own to these.
     *
     * @param jet jet
     * @param material material
     * @param depthM depth separated in m: thickness times quality index
     * @param feedMPerS feed rate in m/s
     * @return the cautions; empty if there are none
     */
    default List<Caution> cautions(JetSettings jet, Material material, double depthM, double feedMPerS) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        return FeedCautions.of(jet, material, feedMPerS);
    }

    /**
     * Returns this model with a maximum feed rate, that of a machine or of a shop's experience with thin sheet. A feed rate
     * that is limited by it has a caution.
     *
     * @param maximum maximum feed rate, above 0
     * @return the model with that limit
     */
    default FeedModel capped(Quantity<Speed> maximum) {
        return new CappedFeed(this, Kind.SPEED.si(Objects.requireNonNull(maximum, "maximum")));
    }

    /**
     * Returns this model corrected for the loading of the jet: its depth is multiplied by the square of
     * &eta;(<i>R</i>)/&eta;(<i>R</i><sub>0</sub>), with &eta; a {@linkplain MixingEfficiency#decreasing mixing efficiency}
     * that decreases with the loading ratio <i>R</i>. For models without an optimum of the abrasive flow rate.
     *
     * <p>Derived: depth is proportional to the power of the abrasive, and that to the square of the efficiency. Models that
     * use the particle speed, as the erosion and the specific-energy model do, need no correction: give their head the
     * decreasing efficiency.
     *
     * @param mixing mixing efficiency
     * @param referenceLoading <i>R</i><sub>0</sub>, the loading ratio at which this model is right, such as 0.15
     * @return the corrected model
     */
    default FeedModel corrected(MixingEfficiency mixing, double referenceLoading) {
        return new CorrectedFeed(this, mixing, referenceLoading);
    }

    /**
     * Returns the feed rate for a cut quality, by the standard table of quality indices.
     *
     * @param jet jet
     * @param workpiece workpiece
     * @param quality cut quality
     * @return the feed rate
     * @throws dev.waterjet.measure.NoSolutionException if the jet does not cut the material at all
     */
    default Estimate<Speed> feed(AbrasiveJet jet, Workpiece workpiece, CutQuality quality) {
        return feed(jet, workpiece, QualityIndexTable.standard().index(quality));
    }

    /**
     * Returns the feed rate for a quality index.
     *
     * @param jet jet
     * @param workpiece workpiece
     * @param index quality index, 1 or more: 1 just separates
     * @return the feed rate, at most {@link #maximumFeedSi}
     * @throws dev.waterjet.measure.NoSolutionException if the jet does not cut the material at all
     */
    default Estimate<Speed> feed(AbrasiveJet jet, Workpiece workpiece, double index) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(workpiece, "workpiece");
        Settings.index(index);
        FeedModel layered = LayeredFeed.of(this, workpiece);
        if (layered != this && !layered.equals(this)) {
            return layered.feed(jet, workpiece, index);
        }
        Material material = workpiece.material();
        double unlimited = feedSi(jet, material, workpiece.thicknessSi(), index);
        if (unlimited == 0) {
            throw FeedCautions.noCut(material);
        }
        double feed = Math.min(unlimited, maximumFeedSi());
        Estimate<Speed> estimate = Estimate.withinFactor(
                        Kind.SPEED, feed, relativeUncertainty(material), jet.cautions())
                .with(material.cautions())
                .with(workpiece.cautions())
                .with(cautions(jet, material, index * workpiece.thicknessSi(), feed))
                .with(FeedCautions.ofThickness(workpiece.thicknessSi()));
        return feed < unlimited ? estimate.with(FeedCautions.ofLimit(unlimited, feed)) : estimate;
    }

    /**
     * Returns the depth that the jet just separates at a feed rate: the thickest plate, or the depth of a groove.
     *
     * @param jet jet
     * @param material material
     * @param feed feed rate, above 0
     * @return the depth
     * @throws dev.waterjet.measure.NoSolutionException if the jet does not cut the material at all
     */
    default Estimate<Length> depth(AbrasiveJet jet, Material material, Quantity<Speed> feed) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        double feedSi = Settings.feed(feed);
        double depth = separationDepthSi(jet, material, feedSi);
        if (depth == 0) {
            throw FeedCautions.noCut(material);
        }
        // the depth deviates by as much as the feed rate that the model would give for it, by the ratio of their slopes
        double slope = relativeSlope(jet, material, feedSi, depth);
        return Estimate.withinFactor(Kind.LENGTH, depth, relativeUncertainty(material) * slope, jet.cautions())
                .with(material.cautions())
                .with(cautions(jet, material, depth, feedSi))
                .with(FeedCautions.ofGroove(jet, depth));
    }

    private double relativeSlope(JetSettings jet, Material material, double feedMPerS, double depthM) {
        double step = 1e-4;
        double faster = separationDepthSi(jet, material, feedMPerS * (1 + step));
        return Math.abs(faster - depthM) / (depthM * step);
    }

    /**
     * Returns the quality index at which a feed rate cuts a workpiece.
     *
     * @param jet jet
     * @param workpiece workpiece
     * @param feed feed rate, above 0
     * @return the index; below 1 the jet does not separate the workpiece
     * @throws dev.waterjet.measure.NoSolutionException if the jet does not cut the material at all
     */
    default double index(AbrasiveJet jet, Workpiece workpiece, Quantity<Speed> feed) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(workpiece, "workpiece");
        double index = LayeredFeed.of(this, workpiece)
                .indexSi(jet, workpiece.material(), workpiece.thicknessSi(), Settings.feed(feed));
        if (index == 0) {
            throw FeedCautions.noCut(workpiece.material());
        }
        return Require.finite("quality index", index, Units.ONE);
    }

    /**
     * Returns the feed rates over a range of thicknesses.
     *
     * @param jet jet
     * @param material material
     * @param index quality index, 1 or more
     * @param thicknesses thicknesses, each above 0
     * @return the curve, each feed rate at most {@link #maximumFeedSi}
     */
    default FeedCurve curve(AbrasiveJet jet, Material material, double index, QuantityArray<Length> thicknesses) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(material, "material");
        Settings.index(index);
        Objects.requireNonNull(thicknesses, "thicknesses");
        double maximum = maximumFeedSi();
        DoubleBinaryOperator feeds = feedsSi(jet, material);
        return new FeedCurve(
                thicknesses,
                thicknesses.map(
                        Kind.SPEED,
                        thickness ->
                                Math.min(feeds.applyAsDouble(FeedCurve.requireThickness(thickness), index), maximum)),
                relativeUncertainty(material));
    }
}
