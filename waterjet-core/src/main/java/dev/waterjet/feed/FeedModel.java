package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.JetSettings;
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
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * How fast a jet may be led through a material. One implementation per published model; all are immutable.
 *
 * <p>An implementation gives the two numbers of a cut that just separates, each the inverse of the other; the questions
 * of the trade follow from them. The quality index {@code q} is the depth that the jet could just separate over the
 * thickness that it is asked to cut: 1 just separates, a higher index leaves a better face.
 */
public interface FeedModel extends HasEvidence, Serializable {

    /**
     * Feed beyond which no model's answer is passed on, 25 m/min: about as fast as a cutting table travels (common
     * practice, no source). The formulas know no limit and grow without bound in thin sheet; {@link LimitedFeed} sets
     * another.
     */
    double USUAL_HIGHEST_FEED_M_PER_S = 25 / 60.0;

    /**
     * Name of the model, for tables and legends.
     *
     * @return a short name
     */
    String name();

    /**
     * Feed at which the jet just separates a depth, on SI numbers.
     *
     * @param jet the jet
     * @param material the material
     * @param depthM depth in m, above zero
     * @return feed in m/s as the formula gives it, without limit; falls as the depth grows; zero if the jet does not
     *     cut at all
     */
    double separationFeedSi(JetSettings jet, Material material, double depthM);

    /**
     * Depth that the jet just separates at a feed, on SI numbers: the inverse of {@link #separationFeedSi}.
     *
     * @param jet the jet
     * @param material the material
     * @param feedMPerS feed in m/s, above zero
     * @return depth in m; falls as the feed grows; zero if the jet does not cut at all
     */
    double separationDepthSi(JetSettings jet, Material material, double feedMPerS);

    /**
     * Relative standard uncertainty of a feed in a material: that of the model and that of the material together.
     *
     * @param material the material
     * @return the ratio
     */
    double relativeUncertainty(Material material);

    /**
     * Feed at an index, on SI numbers, without limit. A model that grades by another rule than depth says so here.
     *
     * @param jet the jet
     * @param material the material
     * @param thicknessM thickness in m, above zero
     * @param index quality index, 1 or more
     * @return feed in m/s; zero if the jet does not cut at all
     */
    default double feedSi(JetSettings jet, Material material, double thicknessM, double index) {
        return separationFeedSi(jet, material, Settings.index(index) * thicknessM);
    }

    /**
     * Index at a feed, on SI numbers: the inverse of {@link #feedSi}.
     *
     * @param jet the jet
     * @param material the material
     * @param thicknessM thickness in m, above zero
     * @param feedMPerS feed in m/s, above zero
     * @return quality index; below 1 the jet does not separate
     */
    default double indexSi(JetSettings jet, Material material, double thicknessM, double feedMPerS) {
        return separationDepthSi(jet, material, feedMPerS) / thicknessM;
    }

    /**
     * The highest feed that this model passes on: the limit for thin sheet.
     *
     * @return feed in m/s
     */
    default double maximumFeedSi() {
        return USUAL_HIGHEST_FEED_M_PER_S;
    }

    /**
     * What the reader of a feed must know beyond what jet and material say of themselves.
     *
     * @param jet the jet
     * @param material the material
     * @param depthM depth separated, in m: thickness times index
     * @param feedMPerS the feed, in m/s
     * @return the cautions; empty if there are none
     */
    default List<Caution> cautions(JetSettings jet, Material material, double depthM, double feedMPerS) {
        return List.of();
    }

    /**
     * Feed for a face grade, by the standard table of indices.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param grade grade of the face
     * @return the feed
     */
    default Estimate<Speed> feed(AbrasiveJet jet, Workpiece piece, CutQuality grade) {
        return feed(jet, piece, QualityIndexTable.standard().index(grade));
    }

    /**
     * Feed for a quality index.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param index quality index, 1 or more: 1 just separates
     * @return the feed, no higher than {@link #maximumFeedSi}
     * @throws CannotReachException if the jet does not cut the material at all
     */
    default Estimate<Speed> feed(AbrasiveJet jet, Workpiece piece, double index) {
        Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
        Material material = piece.material();
        double unlimited = feedSi(jet, material, piece.thicknessSi(), index);
        if (unlimited == 0) {
            throw new CannotReachException(0, 0, "this jet in " + material.name(), "");
        }
        double feed = Math.min(unlimited, maximumFeedSi());
        Estimate<Speed> estimate = Estimate.withinFactor(
                        Kind.SPEED, feed, relativeUncertainty(material), jet.cautions())
                .with(material.cautions())
                .with(cautions(jet, material, index * piece.thicknessSi(), feed));
        return feed < unlimited ? estimate.with(List.of(LimitedFeed.caution(unlimited, feed))) : estimate;
    }

    /**
     * Depth that the jet just separates at a feed.
     *
     * @param jet the jet
     * @param material the material
     * @param feed the feed, above zero
     * @return the depth
     * @throws CannotReachException if the jet does not cut the material at all
     */
    default Estimate<Length> depth(AbrasiveJet jet, Material material, Quantity<Speed> feed) {
        double feedSi = Require.positive("feed", Kind.SPEED.si(feed), Units.MILLIMETRE_PER_MINUTE);
        double depth = separationDepthSi(jet, material, feedSi);
        if (depth == 0) {
            throw new CannotReachException(feedSi, 0, "this jet in " + material.name(), "");
        }
        // the depth is off by as much as the feed that the model would give for it, in proportion to their slopes
        double slope = relativeSlope(jet, material, feedSi, depth);
        return Estimate.withinFactor(Kind.LENGTH, depth, relativeUncertainty(material) * slope, jet.cautions())
                .with(material.cautions())
                .with(cautions(jet, material, depth, feedSi));
    }

    private double relativeSlope(JetSettings jet, Material material, double feedMPerS, double depthM) {
        double step = 1e-4;
        double faster = separationDepthSi(jet, material, feedMPerS * (1 + step));
        return Math.abs(faster - depthM) / (depthM * step);
    }

    /**
     * Quality index at which a feed cuts a workpiece.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param feed the feed, above zero
     * @return the index; below 1 the jet does not separate the workpiece
     * @throws CannotReachException if the jet does not cut the material at all
     */
    default double index(AbrasiveJet jet, Workpiece piece, Quantity<Speed> feed) {
        double feedSi = Require.positive("feed", Kind.SPEED.si(feed), Units.MILLIMETRE_PER_MINUTE);
        double index = indexSi(jet, piece.material(), piece.thicknessSi(), feedSi);
        if (index == 0) {
            throw new CannotReachException(
                    feedSi, 0, "this jet in " + piece.material().name(), "");
        }
        return Require.finite("quality index", index, Units.ONE);
    }

    /**
     * Feeds over a range of thicknesses.
     *
     * @param jet the jet
     * @param material the material
     * @param index quality index, 1 or more
     * @param thicknesses the thicknesses, each above zero
     * @return the curve, no feed higher than {@link #maximumFeedSi}
     */
    default FeedCurve curve(AbrasiveJet jet, Material material, double index, QuantityArray<Length> thicknesses) {
        Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
        return FeedCurve.of(
                thicknesses,
                thicknesses.map(
                        Kind.SPEED,
                        thickness -> Math.min(
                                feedSi(
                                        jet,
                                        material,
                                        Require.positive("thickness", thickness, Units.MILLIMETRE),
                                        index),
                                maximumFeedSi())),
                relativeUncertainty(material));
    }
}
